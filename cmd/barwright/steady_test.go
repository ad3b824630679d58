package main

import (
	"bytes"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"barwright/compile"
	"barwright/compile/view"
)

// A file that is changed while it is read is read again, whether it grows, shrinks or is
// written over.
func TestSteady(t *testing.T) {
	whole := bytes.Repeat([]byte("whole\n"), 1000)
	for name, meddle := range map[string]func(path string, f *os.File, time int) error{
		"grows":   func(path string, f *os.File, time int) error { return os.Truncate(path, int64(len(whole)+time)) },
		"shrinks": func(path string, f *os.File, time int) error { return os.Truncate(path, int64(len(whole)-time)) },
		"written over": func(path string, f *os.File, i int) error {
			at := time.Unix(int64(i), 0)
			return os.Chtimes(path, at, at)
		},
	} {
		for _, changes := range []int{0, 1, 3, mostReads} {
			path := filepath.Join(t.TempDir(), "bar.hcl")
			if err := os.WriteFile(path, whole, 0o666); err != nil {
				t.Fatal(err)
			}
			f, err := os.Open(path)
			if err != nil {
				t.Fatal(err)
			}
			defer f.Close()
			reads := 0
			text, err := steady("bar.hcl", f.Stat, func() ([]byte, error) {
				text, err := io.ReadAll(io.NewSectionReader(f, 0, 1<<20))
				if reads++; reads <= changes {
					err = meddle(path, f, reads)
				}
				return text, err
			})
			now, _ := os.ReadFile(path)
			switch {
			case changes == mostReads:
				if err == nil || err.Error() != "bar.hcl is changed again and again while it is read" {
					t.Errorf("%s for ever: %v", name, err)
				}
			case err != nil || reads != changes+1 || !bytes.Equal(text, now):
				t.Errorf("%s %d times: %d reads, %v", name, changes, reads, err)
			}
		}
	}
}

// Each file of a build is read once: what becomes of it after that changes nothing.
func TestReadOnce(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "bar")
	if err := os.CopyFS(dir, os.DirFS(filepath.Join(example("steps"), "1"))); err != nil {
		t.Fatal(err)
	}
	bar, taken := filepath.Join(dir, "bar.hcl"), filepath.Join(dir, "more")
	text, err := os.ReadFile(bar)
	if err == nil {
		err = os.WriteFile(bar, append(text, "\ninclude \"more/a.hcl\" {}\ninclude \"more/b.hcl\" {}\n"...), 0o666)
	}
	if err == nil {
		err = os.Mkdir(taken, 0o777)
	}
	for _, name := range []string{"a", "b"} { // both take in a third
		if err == nil {
			err = os.WriteFile(filepath.Join(taken, name+".hcl"), fmt.Appendf(nil, "include \"c.hcl\" {}\ngiven {\n  %s = 3\n}\n", name), 0o666)
		}
	}
	if err == nil {
		err = os.WriteFile(filepath.Join(taken, "c.hcl"), []byte("given {\n  spare = 3\n}\n"), 0o666)
	}
	if err != nil {
		t.Fatal(err)
	}

	build := func(after func(name string)) map[string]string {
		t.Helper()
		files, tree, err := readPath(dir)
		if err != nil {
			t.Fatal(err)
		}
		defer tree.close()
		for _, f := range files {
			after(f.Name)
		}
		src, findings, err := options{}.read(files, func(name string) ([]byte, error) {
			text, err := tree.open(name)
			after(name)
			return text, err
		})
		if err != nil {
			t.Fatal(err)
		}
		b := solved(dir, src, findings, compile.Compile)
		if b.model == nil {
			t.Fatal(b.findings)
		}
		out := map[string]string{}
		written, err := outputs(b.model, view.Drawings(b.model), "")
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range written {
			var text strings.Builder
			if err := f.Write(&text); err != nil {
				t.Fatal(err)
			}
			out[f.Name] = text.String()
		}
		return out
	}
	want := build(func(string) {})
	times := map[string]int{}
	got := build(func(name string) {
		times[name]++
		if err := os.WriteFile(filepath.Join(dir, name), []byte("run {"), 0o666); err != nil {
			t.Fatal(err)
		}
	})
	if !maps.Equal(got, want) {
		t.Error("what is written is not what was read first")
	}
	if once := map[string]int{"bar.hcl": 1, "stock.hcl": 1, "more/a.hcl": 1, "more/b.hcl": 1, "more/c.hcl": 1}; !maps.Equal(times, once) {
		t.Errorf("read are %v", times)
	}
}
