package folder

import (
	"errors"
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// tree is what a folder holds: file names and contents; a folder's name ends
// in "/" and has none.
type tree map[string]string

func read(t *testing.T, dir string) tree {
	t.Helper()
	got := tree{}
	err := fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil || name == ".":
			return err
		case d.IsDir():
			got[name+"/"] = ""
			return nil
		case d.Type()&fs.ModeSymlink != 0:
			got[name] = "(link)"
			return nil
		}
		data, err := os.ReadFile(filepath.Join(dir, name))
		got[name] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// without returns the tree less some names.
func (tr tree) without(names ...string) tree {
	rest := maps.Clone(tr)
	for _, n := range names {
		delete(rest, n)
	}
	return rest
}

func texts(content tree) []File {
	var files []File
	for _, name := range slices.Sorted(maps.Keys(content)) {
		files = append(files, File{name, func(w io.Writer) error {
			_, err := io.WriteString(w, content[name])
			return err
		}})
	}
	return files
}

func write(t *testing.T, path, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

func replace(t *testing.T, dir string, content tree) {
	t.Helper()
	if err := Replace(t.Context(), dir, texts(content)); err != nil {
		t.Fatal(err)
	}
}

func TestReplaceMakesExactlyTheFiles(t *testing.T) {
	parent := t.TempDir()
	out := filepath.Join(parent, "out")
	replace(t, out, tree{"bill.csv": "a", "parts/side.dxf": "b", "parts/back.dxf": "c"})
	replace(t, out, tree{"bill.csv": "abc", "router/x.ngc": ""})

	// The sums are those of sha256sum(1) of "abc" and of nothing, and the first
	// is also the test vector of FIPS 180-4 for "abc".
	want := tree{
		"out/": "", "out/router/": "", "out/router/x.ngc": "", "out/bill.csv": "abc",
		"out/manifest.json": `{"barwright_manifest": 1, "files": [
 {"name":"bill.csv","size":3,"sha256":"ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"},
 {"name":"router/x.ngc","size":0,"sha256":"e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"}
]}
`}
	if diff := cmp.Diff(want, read(t, parent)); diff != "" {
		t.Error(diff)
	}
}

func TestReplaceWhereNothingIs(t *testing.T) {
	for name, path := range map[string]string{"missing parents": "a/b/out", "beside": "out"} {
		t.Run(name, func(t *testing.T) {
			out := filepath.Join(t.TempDir(), path)
			replace(t, out, tree{"x": "1"})
			if got := read(t, out)["x"]; got != "1" {
				t.Errorf("x holds %q", got)
			}
		})
	}
	t.Run("empty folder", func(t *testing.T) {
		replace(t, t.TempDir(), tree{"x": "1"})
	})
	t.Run("no files", func(t *testing.T) {
		out := filepath.Join(t.TempDir(), "out")
		replace(t, out, nil)
		replace(t, out, tree{"x": "1"})
	})
}

func TestReplaceKeepsTheModeOfTheUmask(t *testing.T) {
	parent := t.TempDir()
	plain := filepath.Join(parent, "plain")
	if err := os.Mkdir(plain, 0o777); err != nil {
		t.Fatal(err)
	}
	out := filepath.Join(parent, "out")
	replace(t, out, tree{"x": "1"})
	want, _ := os.Stat(plain)
	got, _ := os.Stat(out)
	if got.Mode() != want.Mode() {
		t.Errorf("out has mode %v, a new folder %v", got.Mode(), want.Mode())
	}
}

func TestReplaceFollowsALink(t *testing.T) {
	parent := t.TempDir()
	replace(t, filepath.Join(parent, "real", "out"), tree{"x": "1"})
	link := filepath.Join(parent, "link")
	if err := os.Symlink(filepath.Join("real", "out"), link); err != nil {
		t.Skip("no symbolic links here:", err)
	}
	replace(t, link, tree{"x": "2"})
	got := read(t, parent).without("real/out/manifest.json")
	want := tree{"real/": "", "real/out/": "", "real/out/x": "2", "link": "(link)"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestReplaceFailsWhole(t *testing.T) {
	broken := errors.New("the pen ran dry")
	fails := func(w io.Writer) error {
		io.WriteString(w, strings.Repeat("x", 100_000))
		return broken
	}
	for _, old := range []tree{nil, {"x": "old", "deep/y": "old"}} {
		parent := t.TempDir()
		out := filepath.Join(parent, "new", "out")
		if old != nil {
			replace(t, out, old)
		}
		before := read(t, parent)
		err := Replace(t.Context(), out, append(texts(tree{"x": "new"}), File{"parts/side.dxf", fails}))
		if !errors.Is(err, broken) || !strings.Contains(err.Error(), "parts/side.dxf") {
			t.Errorf("error %v: want the writer's, with the file's name", err)
		}
		if refused := new(Refused); errors.As(err, &refused) {
			t.Errorf("%v is a refusal", err)
		}
		if diff := cmp.Diff(before, read(t, parent)); diff != "" {
			t.Errorf("left changed: %s", diff)
		}
	}
}

func TestReplaceClearsUpAfterAPanic(t *testing.T) {
	parent := t.TempDir()
	func() {
		defer func() { recover() }()
		Replace(t.Context(), filepath.Join(parent, "out"), []File{{"x", func(io.Writer) error { panic("bug") }}})
	}()
	if diff := cmp.Diff(tree{}, read(t, parent)); diff != "" {
		t.Errorf("litter: %s", diff)
	}
}

func TestNames(t *testing.T) {
	const (
		outside = "not a name inside the output folder"
		odd     = "not every system can hold this name"
	)
	cases := []struct {
		names []string
		want  string
	}{
		{[]string{"../x"}, outside},
		{[]string{"/x"}, outside},
		{[]string{"a/../../x"}, outside},
		{[]string{"a//b"}, outside},
		{[]string{"."}, outside},
		{[]string{""}, outside},
		{[]string{`a\b`}, odd},
		{[]string{"a:b"}, odd},
		{[]string{"a\n"}, odd},
		{[]string{"parts./x"}, odd},
		{[]string{"x "}, odd},
		{[]string{"Bill.csv", "bill.CSV"}, `"bill.CSV": "Bill.csv" is there already`},
		{[]string{"a", "A/b"}, `"A/b": "a" is there already`},
		{[]string{"a/b", "a"}, `"a": "a" is there already`},
		{[]string{"Parts/x", "parts/y"}, `"parts/y": "Parts" is there already`},
		{[]string{"Manifest.json"}, `"manifest.json" is there already`},
		{[]string{"manifest.json/x"}, `"manifest.json" is there already`},
	}
	for _, c := range cases {
		var files []File
		for _, n := range c.names {
			files = append(files, File{n, func(io.Writer) error { t.Error("written"); return nil }})
		}
		parent := t.TempDir()
		err := Replace(t.Context(), filepath.Join(parent, "out"), files)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v: want %q", c.names, err, c.want)
		}
		if diff := cmp.Diff(tree{}, read(t, parent)); diff != "" {
			t.Errorf("%q: litter: %s", c.names, diff)
		}
	}
	if err := checkNames(texts(tree{"parts/URN-L.dxf": "", "parts/URN-R.dxf": "", "parts.csv": "", "a b/ü.txt": ""})); err != nil {
		t.Error(err)
	}
}
