package starter_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"barwright/cmd/barwright/starter"
	"barwright/compile"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/format"
	"barwright/lang/source"
)

func text(t *testing.T, unit, name string) []byte {
	t.Helper()
	text, err := starter.Text(unit, name)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// compiled compiles a starter whose texts are changed first. There is nothing to be
// told about: no error, no warning, no note.
func compiled(t *testing.T, unit string, change func(string) string) *model.Model {
	t.Helper()
	var files source.Files
	for _, name := range starter.Names() {
		files = append(files, source.File{Name: name, Text: []byte(change(string(text(t, unit, name))))})
	}
	files.Sort()
	src, findings := lang.Read(files)
	if len(findings) > 0 {
		t.Fatalf("%s: %v", unit, findings)
	}
	m, findings := compile.Compile(src)
	if m == nil || len(findings) > 0 {
		t.Fatalf("%s: %v", unit, findings)
	}
	return m
}

// What a newcomer begins with compiles.
func TestStarterCompiles(t *testing.T) {
	for _, unit := range starter.Units() {
		if m := compiled(t, unit, func(text string) string { return text }); len(m.Parts) < 20 {
			t.Errorf("%s: %d parts", unit, len(m.Parts))
		}
	}
}

// So it does with the table, which is a comment, when its # are taken away.
func TestStarterTableCompiles(t *testing.T) {
	for _, unit := range starter.Units() {
		m := compiled(t, unit, func(text string) string {
			before, table, found := strings.Cut(text, "\n# table ")
			if !found {
				return text
			}
			return before + "\ntable " + strings.ReplaceAll(table, "\n#", "\n")
		})
		if m.Table.Files != "distinct" || m.Table.Inch != (unit == "in") {
			t.Errorf("%s: the table is %+v", unit, m.Table)
		}
	}
}

// TestStarterIsWhole looks for files that are embedded and not written, or the
// other way round, and for text that is not laid out.
func TestStarterIsWhole(t *testing.T) {
	for _, unit := range starter.Units() {
		entries, err := os.ReadDir(unit)
		if err != nil {
			t.Fatal(err)
		}
		if len(entries) != len(starter.Names()) {
			t.Errorf("%s holds %d files, %d are written", unit, len(entries), len(starter.Names()))
		}
		for _, name := range starter.Names() {
			text := text(t, unit, name)
			out, findings := format.Format(source.File{Name: name, Text: text})
			if len(findings) > 0 || !bytes.Equal(out, text) {
				t.Errorf("%s/%s is not laid out: %v", unit, name, findings)
			}
			if !bytes.HasPrefix(text, []byte("# ")) {
				t.Errorf("%s/%s does not begin by saying what it is", unit, name)
			}
		}
	}
}

func TestWrite(t *testing.T) {
	for _, dir := range []string{"shed", "a/b/shed", "."} {
		t.Chdir(t.TempDir())
		if err := starter.Write(dir, "mm"); err != nil {
			t.Fatal(err)
		}
		for _, name := range starter.Names() {
			got, err := os.ReadFile(filepath.Join(dir, name))
			if err != nil || !bytes.Equal(got, text(t, "mm", name)) {
				t.Errorf("%s in %s differs: %v", name, dir, err)
			}
		}
	}
}

// TestWriteRefuses finds everything as it was after each refusal.
func TestWriteRefuses(t *testing.T) {
	t.Chdir(t.TempDir())
	for name, text := range map[string]string{"full/notes.txt": "mine", "file": "mine"} {
		if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	for dir, want := range map[string]string{
		"full":       "it holds notes.txt",
		"file":       "is a file",
		"file/below": "not a directory",
	} {
		if err := starter.Write(dir, "in"); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", dir, err)
		}
	}
	if names := below(t, "."); strings.Join(names, " ") != "file full full/notes.txt" {
		t.Errorf("left: %v", names)
	}
}

// TestWriteLeavesNothingHalf fails when folders have been made already, and
// wants them gone.
func TestWriteLeavesNothingHalf(t *testing.T) {
	t.Chdir(t.TempDir())
	long := strings.Repeat("x", 300) // no file system takes such a name
	if err := starter.Write(filepath.Join("a", "b", long), "in"); err == nil {
		t.Error("such a folder was made")
	}
	if err := starter.Write(filepath.Join("a", "b"), "furlong"); err == nil {
		t.Error("there is a starter in furlongs")
	}
	if names := below(t, "."); len(names) > 0 {
		t.Errorf("left: %v", names)
	}
}

func below(t *testing.T, dir string) []string {
	t.Helper()
	var out []string
	err := filepath.WalkDir(dir, func(path string, _ os.DirEntry, err error) error {
		if path != dir {
			out = append(out, filepath.ToSlash(path))
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}
