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

// refusal wants Replace to refuse dir, to write nothing, and to leave all that
// is in watch as it was.
func refusal(t *testing.T, watch, dir string) *Refused {
	t.Helper()
	before := read(t, watch)
	err := Replace(t.Context(), dir, []File{{"x", func(io.Writer) error { t.Error("a file was written"); return nil }}})
	refused := new(Refused)
	if !errors.As(err, &refused) {
		t.Fatalf("%v: want a refusal", err)
	}
	if diff := cmp.Diff(before, read(t, watch)); diff != "" {
		t.Errorf("touched: %s", diff)
	}
	return refused
}

func TestRefusesWhatAPersonMade(t *testing.T) {
	cases := map[string]struct {
		meddle func(t *testing.T, out string)
		want   []Kept
	}{
		"a file": {
			func(t *testing.T, out string) { write(t, out+"/notes.txt", "mine") },
			[]Kept{{"notes.txt", notOurs}},
		},
		"a file between ours": {
			func(t *testing.T, out string) { write(t, out+"/parts/mine.dxf", "") },
			[]Kept{{"parts/mine.dxf", notOurs}},
		},
		"a folder, by its name alone": {
			func(t *testing.T, out string) { write(t, out+"/photos/1.jpg", ""); write(t, out+"/photos/2.jpg", "") },
			[]Kept{{"photos/", notOurs}},
		},
		"an edited file, of the same size": {
			func(t *testing.T, out string) { write(t, out+"/bill.csv", "c") },
			[]Kept{{"bill.csv", changed}},
		},
		"all of them, sorted": {
			func(t *testing.T, out string) {
				write(t, out+"/z", "")
				write(t, out+"/parts/side.dxf", "longer")
				write(t, out+"/a", "")
			},
			[]Kept{{"a", notOurs}, {"parts/side.dxf", changed}, {"z", notOurs}},
		},
		"a folder in a file's place": {
			func(t *testing.T, out string) { os.Remove(out + "/bill.csv"); write(t, out+"/bill.csv/x", "") },
			[]Kept{{"bill.csv/", notOurs}},
		},
		"a link in a file's place": {
			func(t *testing.T, out string) {
				os.Remove(out + "/bill.csv")
				os.Symlink("parts/side.dxf", out+"/bill.csv")
			},
			[]Kept{{"bill.csv", changed}},
		},
		"no manifest": {
			func(t *testing.T, out string) { os.Remove(out + "/manifest.json") },
			[]Kept{{"bill.csv", notOurs}, {"parts/", notOurs}},
		},
		"a manifest of something else": {
			func(t *testing.T, out string) { write(t, out+"/manifest.json", `{"name": "app", "files": []}`) },
			[]Kept{{"bill.csv", notOurs}, {"manifest.json", notOurs}, {"parts/", notOurs}},
		},
		"a manifest that leads out": {
			func(t *testing.T, out string) {
				write(t, out+"/manifest.json", `{"barwright_manifest": 1, "files": [{"name":"../x"}]}`)
			},
			[]Kept{{"bill.csv", notOurs}, {"manifest.json", notOurs}, {"parts/", notOurs}},
		},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			parent := t.TempDir()
			out := filepath.Join(parent, "out")
			replace(t, out, tree{"bill.csv": "a", "parts/side.dxf": "b"})
			c.meddle(t, out)
			refused := refusal(t, parent, out)
			if diff := cmp.Diff(c.want, refused.Kept); diff != "" {
				t.Error(diff)
			}
			for _, k := range c.want {
				if !strings.Contains(refused.Error(), k.Name+": "+k.Why) {
					t.Errorf("%q does not name %s", refused.Error(), k.Name)
				}
			}
		})
	}
}

func TestAMissingFileIsNoRefusal(t *testing.T) {
	out := filepath.Join(t.TempDir(), "out")
	replace(t, out, tree{"bill.csv": "a", "parts/side.dxf": "b"})
	os.RemoveAll(filepath.Join(out, "parts"))
	replace(t, out, tree{"bill.csv": "a"})
}

func TestRefusedPlaces(t *testing.T) {
	parent := t.TempDir()
	work := filepath.Join(parent, "project", "bar")
	write(t, filepath.Join(work, "keep"), "")
	write(t, filepath.Join(parent, "file"), "mine")
	if err := os.Mkdir(filepath.Join(work, "sub"), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("nowhere", filepath.Join(parent, "dangling")); err != nil {
		t.Fatal(err)
	}
	t.Chdir(filepath.Join(work, "sub")) // empty: nothing in it could stop a replacement
	for dir, want := range map[string]string{
		"":                                `output folder "" is refused: it has no name`,
		".":                               "the folder that you are working in",
		"..":                              "the folder that you are working in",
		"../..":                           "the folder that you are working in",
		"/":                               "the folder that you are working in",
		filepath.Join(parent, "file"):     "it is a file",
		filepath.Join(parent, "dangling"): "leads nowhere",
	} {
		if got := refusal(t, parent, dir).Error(); !strings.Contains(got, want) {
			t.Errorf("%q: %q: want %q", dir, got, want)
		}
	}
}

// Whoever runs it, also who may write everywhere.
func TestAReadOnlyFolderIsRefused(t *testing.T) {
	for name, want := range map[string]string{".": "it is read-only", "parts": "parts in it is read-only"} {
		parent := t.TempDir()
		out := filepath.Join(parent, "out")
		replace(t, out, tree{"bill.csv": "a", "parts/side.dxf": "b"})
		marked := filepath.Join(out, name)
		if err := os.Chmod(marked, 0o555); err != nil {
			t.Fatal(err)
		}
		if got := refusal(t, parent, out).Error(); !strings.HasSuffix(got, "refused: "+want) {
			t.Errorf("%q: want %q", got, want)
		}
		if err := os.Chmod(marked, 0o755); err != nil {
			t.Fatal(err)
		}
		replace(t, out, tree{"bill.csv": "new"})
	}
}

func TestAParentThatIsAFileIsAnError(t *testing.T) {
	parent := t.TempDir()
	write(t, filepath.Join(parent, "file"), "mine")
	err := Replace(t.Context(), filepath.Join(parent, "file", "out"), texts(tree{"x": "1"}))
	if refused := new(Refused); err == nil || errors.As(err, &refused) {
		t.Errorf("%v: want a plain error", err)
	}
	if diff := cmp.Diff(tree{"file": "mine"}, read(t, parent)); diff != "" {
		t.Error(diff)
	}
}

func TestManyKeptFilesAreCounted(t *testing.T) {
	out := t.TempDir()
	for i := range mostNamed + 3 {
		write(t, filepath.Join(out, string(rune('a'+i))), "")
	}
	if got := refusal(t, out, out).Error(); !strings.Contains(got, "and 3 more") {
		t.Error(got)
	}
}

// A person who saves a file while the new folder is being written loses nothing.
func TestAFileMadeMeanwhileIsKept(t *testing.T) {
	parent := t.TempDir()
	out := filepath.Join(parent, "out")
	replace(t, out, tree{"x": "old"})
	want := read(t, parent)
	want["out/late.txt"] = "mine"
	err := Replace(t.Context(), out, []File{{"x", func(io.Writer) error {
		write(t, filepath.Join(out, "late.txt"), "mine")
		return nil
	}}})
	refused := new(Refused)
	if !errors.As(err, &refused) || len(refused.Kept) != 1 || refused.Kept[0].Name != "late.txt" {
		t.Errorf("%v: want late.txt refused", err)
	}
	if diff := cmp.Diff(want, read(t, parent)); diff != "" {
		t.Error(diff)
	}
}
