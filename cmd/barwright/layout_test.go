package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/lang/length"
)

// specList is the list that SPEC.md shows, the command, and what is printed.
var specList = regexp.MustCompile("(?s)\nFor a list `(boxes.csv)`:\n\n((?:    [^\n]*\n)+)\n    \\$ barwright (layout [^\n]*)\n((?:    [^\n]*\n|\n)*)")

// TestLayoutSpec lays out the list of SPEC.md 15.3, and compares what is printed.
func TestLayoutSpec(t *testing.T) {
	path, err := filepath.Abs(filepath.Join(root, "SPEC.md"))
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	at := specList.FindStringSubmatchIndex(string(text))
	if at == nil {
		t.Fatal("SPEC.md shows no list")
	}
	shown := func(i int) string { return string(text[at[2*i]:at[2*i+1]]) }
	t.Chdir(t.TempDir())
	if err := os.WriteFile(shown(1), []byte(strings.ReplaceAll("\n"+shown(2), "\n    ", "\n")), 0o666); err != nil {
		t.Fatal(err)
	}
	var out, errs bytes.Buffer
	if status := run(strings.Fields(shown(3)), streams{out: &out, err: &errs}); status != exitClean || errs.Len() > 0 {
		t.Fatalf("status %d: %s", status, errs.String())
	}
	have := strings.ReplaceAll("\n"+strings.TrimSpace(out.String()), "\n", "\n    ")
	have = strings.ReplaceAll(have, "\n    \n", "\n\n")[1:] + "\n"
	if *update {
		rest := strings.TrimLeft(string(text[at[9]:]), "\n")
		if rest != "" {
			rest = "\n" + rest
		}
		if err := os.WriteFile(path, []byte(string(text[:at[8]])+have+rest), 0o666); err != nil {
			t.Fatal(err)
		}
	} else if diff := cmp.Diff(strings.TrimRight(shown(4), "\n"), strings.TrimRight(have, "\n")); diff != "" {
		t.Errorf("SPEC.md 15.3 (-want +have):\n%s", diff)
	}
}

// TestLayoutReadme runs the command that README.md tells, in a copy of its list.
func TestLayoutReadme(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	line := regexp.MustCompile(`(?m)^    go run ./cmd/barwright (layout .*)$`).FindSubmatch(text)
	if line == nil {
		t.Fatal("README.md lays out no list")
	}
	lists, err := filepath.Abs(filepath.Join(root, "examples", "lists"))
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	if err := os.CopyFS(filepath.Join("examples", "lists"), os.DirFS(lists)); err != nil {
		t.Fatal(err)
	}
	var out, errs bytes.Buffer
	if status := run(strings.Fields(string(line[1])), streams{out: &out, err: &errs}); status != exitClean || errs.Len() > 0 {
		t.Fatalf("status %d: %s", status, errs.String())
	}
	if !strings.HasPrefix(out.String(), "48 pieces from ") || !strings.HasSuffix(out.String(), " files in racks\n") {
		t.Errorf("printed:\n%s", out.String())
	}
}

// FuzzSize reads any text as a size: what is taken has sizes above 0 and a price where it says so.
func FuzzSize(f *testing.F) {
	f.Add(0, "96x48=45.50")
	f.Add(1, `3ft 4in x 20"*2`)
	f.Add(2, "1.2m=7")
	flags := [...]string{"--sheet", "--offcut", "--stick"}
	f.Fuzz(func(t *testing.T, which int, text string) {
		flag := flags[uint(which)%3]
		s, wrong := readSize(flag, text, length.Inches)
		if wrong != "" {
			return
		}
		if s.length <= 0 || s.width <= 0 && flag != "--stick" || s.width != 0 && flag == "--stick" || s.count < 1 || s.priced != (s.price > 0) {
			t.Errorf("%s %q is read as %+v", flag, text, s)
		}
	})
}
