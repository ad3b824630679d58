package inplace_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"barwright/cmd/barwright/inplace"
)

func write(t *testing.T, path, text string, mode os.FileMode) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), mode); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(path, mode); err != nil { // whatever the umask
		t.Fatal(err)
	}
}

// holds demands the text and mode of a file, and the names in its folder.
func holds(t *testing.T, path, text string, mode os.FileMode, names ...string) {
	t.Helper()
	got, err := os.ReadFile(path)
	if err != nil || string(got) != text {
		t.Errorf("%s holds %q: %v", path, got, err)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != mode {
		t.Errorf("%s has another mode than %v: %v %v", path, mode, info.Mode(), err)
	}
	entries, err := os.ReadDir(filepath.Dir(path))
	if err != nil {
		t.Fatal(err)
	}
	var have []string
	for _, e := range entries {
		have = append(have, e.Name())
	}
	if strings.Join(have, " ") != strings.Join(names, " ") {
		t.Errorf("the folder holds %v, not %v", have, names)
	}
}

func TestReplace(t *testing.T) {
	path := filepath.Join(t.TempDir(), "bar.hcl")
	write(t, path, "old", 0o640)
	if err := inplace.Replace(path, []byte("old"), []byte("new")); err != nil {
		t.Fatal(err)
	}
	holds(t, path, "new", 0o640, "bar.hcl")
}

func TestWrite(t *testing.T) {
	path := filepath.Join(t.TempDir(), "page.html")
	plain := path + "-plain" // whatever the umask
	if err := os.WriteFile(plain, nil, 0o666); err != nil {
		t.Fatal(err)
	}
	info, err := os.Stat(plain)
	if err != nil {
		t.Fatal(err)
	}
	if err := inplace.Write(path, []byte("old")); err != nil {
		t.Fatal(err)
	}
	holds(t, path, "old", info.Mode().Perm(), "page.html", "page.html-plain")
	write(t, path, "old", 0o640)
	if err := inplace.Write(path, []byte("new")); err != nil {
		t.Fatal(err)
	}
	holds(t, path, "new", 0o640, "page.html", "page.html-plain")
	if err := inplace.Write(filepath.Dir(path), nil); err == nil {
		t.Error("a folder is written to")
	}
	if err := inplace.Write(filepath.Join(path, "x"), nil); err == nil {
		t.Error("a file is taken for a folder")
	}
	nowhere := filepath.Join(filepath.Dir(path), "nowhere")
	if err := inplace.Write(filepath.Join(nowhere, "x"), nil); err == nil || err.Error() != "there is no folder "+nowhere {
		t.Errorf("of a folder that is not there it says: %v", err)
	}
}

func TestReplaceThroughLink(t *testing.T) {
	real, links := t.TempDir(), t.TempDir()
	path, link := filepath.Join(real, "bar.hcl"), filepath.Join(links, "link.hcl")
	write(t, path, "old", 0o600)
	if err := os.Symlink(path, link); err != nil {
		t.Skip(err)
	}
	if err := inplace.Replace(link, []byte("old"), []byte("new")); err != nil {
		t.Fatal(err)
	}
	holds(t, path, "new", 0o600, "bar.hcl")
	if to, err := os.Readlink(link); err != nil || to != path {
		t.Errorf("the link leads to %q: %v", to, err)
	}
}

func TestReplaceRefuses(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "bar.hcl")
	write(t, path, "somebody's", 0o600)
	err := inplace.Replace(path, []byte("old"), []byte("new"))
	if err == nil || !strings.Contains(err.Error(), "was changed meanwhile") {
		t.Errorf("a file that was changed: %v", err)
	}
	holds(t, path, "somebody's", 0o600, "bar.hcl")
	if err := inplace.Replace(filepath.Join(dir, "none.hcl"), nil, []byte("new")); err == nil {
		t.Error("a file that is not there was replaced")
	}
	if err := inplace.Replace(dir, nil, []byte("new")); err == nil || !strings.Contains(err.Error(), "no plain file") {
		t.Errorf("a folder: %v", err)
	}
	holds(t, path, "somebody's", 0o600, "bar.hcl")
}

// TestReplaceProtected leaves a file alone that is not to be written, though
// its folder would let another take its place.
func TestReplaceProtected(t *testing.T) {
	if os.Geteuid() == 0 {
		t.Skip("whoever runs everything may write everything")
	}
	path := filepath.Join(t.TempDir(), "bar.hcl")
	write(t, path, "old", 0o400)
	if err := inplace.Replace(path, []byte("old"), []byte("new")); !os.IsPermission(err) {
		t.Errorf("error %v", err)
	}
	holds(t, path, "old", 0o400, "bar.hcl")
}
