package folder

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func stat(t *testing.T, path string) os.FileInfo {
	t.Helper()
	info, err := os.Lstat(path)
	if err != nil {
		t.Fatal(err)
	}
	return info
}

// TestWhatIsTheSameIsLinked: a file that is to be as it was stays the same file; one that is not is another, and
// whoever has the old one open reads on in it.
func TestWhatIsTheSameIsLinked(t *testing.T) {
	out := filepath.Join(t.TempDir(), "out")
	large := strings.Repeat("large\n", mostHeld/4)
	replace(t, out, tree{"same": "1", "deep/same": "2", "other": "3", "gone": "4", "missing": "5", "large": large})
	before := map[string]os.FileInfo{}
	for _, name := range []string{"same", "deep/same", "other", "large"} {
		before[name] = stat(t, filepath.Join(out, name))
	}
	open, err := os.Open(filepath.Join(out, "other"))
	if err != nil {
		t.Fatal(err)
	}
	defer open.Close()
	if err := os.Remove(filepath.Join(out, "missing")); err != nil {
		t.Fatal(err)
	}
	want := tree{"same": "1", "deep/same": "2", "other": "0", "missing": "5", "new": "6", "large": large}
	replace(t, out, want)
	want["deep/"] = ""
	if diff := cmp.Diff(want, read(t, out).without(manifestName)); diff != "" {
		t.Error(diff)
	}
	for name, is := range map[string]bool{"same": true, "deep/same": true, "other": false} {
		if os.SameFile(before[name], stat(t, filepath.Join(out, name))) != is {
			t.Errorf("%s: the same file is %t", name, !is)
		}
	}
	if text, err := io.ReadAll(open); err != nil || string(text) != "3" {
		t.Errorf("the old file reads %q, %v", text, err)
	}
	_, kept, err := personal(out)
	if err != nil || len(kept) > 0 {
		t.Errorf("the manifest and the files differ: %v, %v", kept, err)
	}
}

// TestALinkedFileThatIsChangedMeanwhile: a person who writes into a file of the old folder, before or after the new one has a
// link to it, has it refused and loses nothing.
func TestALinkedFileThatIsChangedMeanwhile(t *testing.T) {
	for _, replaced := range []bool{false, true} {
		for _, name := range []string{"a", "b"} {
			out := filepath.Join(t.TempDir(), "out")
			replace(t, out, tree{"a": "old", "b": "old"})
			files := texts(tree{"a": "old", "b": "old"})
			for i := range files {
				if files[i].Name == name {
					files[i].Write = func(w io.Writer) error {
						path := filepath.Join(out, "a")
						if replaced {
							if err := os.Remove(path); err != nil {
								return err
							}
						}
						write(t, path, "mine")
						_, err := io.WriteString(w, "old")
						return err
					}
				}
			}
			err := Replace(t.Context(), out, files)
			refused := new(Refused)
			if !errors.As(err, &refused) || len(refused.Kept) != 1 || refused.Kept[0].Name != "a" {
				t.Errorf("%v: want a refused", err)
			}
			if diff := cmp.Diff(tree{"a": "mine", "b": "old"}, read(t, out).without(manifestName)); diff != "" {
				t.Error(diff)
			}
		}
	}
}
