package folder

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// link makes a symbolic link, or skips the test where there are none.
func link(t *testing.T, to, path string) {
	t.Helper()
	if err := os.Symlink(to, path); err != nil {
		t.Skip("no symbolic links here:", err)
	}
}

// No link in an output folder or beside it is followed out of it: what it leads to stays,
// with all that is in it, whatever the run comes to.
func TestLinksAreNotFollowed(t *testing.T) {
	staging := func(parent string) string { return filepath.Join(parent, ".out.barwright-1") }
	cases := map[string]struct {
		meddle  func(t *testing.T, parent, out string)
		refused bool
	}{
		"a folder of ours, elsewhere with what ours held": {func(t *testing.T, parent, out string) {
			os.RemoveAll(out + "/parts")
			link(t, filepath.Join(parent, "elsewhere", "parts"), out+"/parts")
		}, true},
		"a file of ours, elsewhere with what ours held": {func(t *testing.T, parent, out string) {
			os.Remove(out + "/bill.csv")
			link(t, filepath.Join(parent, "elsewhere", "bill.csv"), out+"/bill.csv")
		}, true},
		"the manifest, elsewhere": {func(t *testing.T, parent, out string) {
			os.Remove(out + "/manifest.json")
			link(t, filepath.Join(parent, "elsewhere", "manifest.json"), out+"/manifest.json")
		}, true},
		"a link to the folder above": {func(t *testing.T, parent, out string) { link(t, "..", out+"/up") }, true},
		"a link to itself":           {func(t *testing.T, parent, out string) { link(t, "loop", out+"/loop") }, true},
		"a staging folder": {func(t *testing.T, parent, out string) {
			link(t, filepath.Join(parent, "elsewhere"), staging(parent))
		}, false},
		"a folder in a staging folder": {func(t *testing.T, parent, out string) {
			write(t, filepath.Join(staging(parent), markerName), markerText)
			link(t, filepath.Join(parent, "elsewhere"), filepath.Join(staging(parent), freshName))
		}, false},
		"a marker": {func(t *testing.T, parent, out string) {
			write(t, filepath.Join(parent, "elsewhere", markerName), markerText)
			os.Mkdir(staging(parent), 0o777)
			link(t, filepath.Join(parent, "elsewhere", markerName), filepath.Join(staging(parent), markerName))
		}, false},
		"an old folder in a staging folder, where there is none now": {func(t *testing.T, parent, out string) {
			os.RemoveAll(out)
			write(t, filepath.Join(staging(parent), markerName), markerText)
			link(t, filepath.Join(parent, "elsewhere"), filepath.Join(staging(parent), asideName))
		}, false},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			parent := t.TempDir()
			out, elsewhere := filepath.Join(parent, "out"), filepath.Join(parent, "elsewhere")
			files := tree{"bill.csv": "a", "parts/side.dxf": "b"}
			replace(t, out, files)
			replace(t, elsewhere, files)
			c.meddle(t, parent, out)
			before := read(t, elsewhere)
			if c.refused {
				refusal(t, parent, out)
			} else {
				replace(t, out, tree{"bill.csv": "new"})
				if info, err := os.Lstat(out); err != nil || info.Mode()&fs.ModeSymlink != 0 {
					t.Errorf("the folder has become a link: %v", err)
				}
			}
			if diff := cmp.Diff(before, read(t, elsewhere)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// A manifest that is too large to be one is not read.
func TestALargeManifest(t *testing.T) {
	out := filepath.Join(t.TempDir(), "out")
	replace(t, out, tree{"x": "1"})
	if err := os.Truncate(filepath.Join(out, manifestName), mostManifest+1); err != nil { // takes no room on the disk
		t.Fatal(err)
	}
	err := Replace(t.Context(), out, nil)
	if err == nil || !strings.Contains(err.Error(), "manifest.json: barwright did not write it") {
		t.Error(err)
	}
}

// What clocks have made of the times of files says nothing.
func TestTimesOfFiles(t *testing.T) {
	parent := t.TempDir()
	out := filepath.Join(parent, "out")
	replace(t, out, tree{"a/x": "1"})
	for _, year := range []int{1902, 1970, 2037, 2106, 2400} {
		at := time.Date(year, 1, 1, 12, 0, 0, 0, time.UTC)
		for _, path := range []string{"a/x", "a", manifestName, "."} {
			if err := os.Chtimes(filepath.Join(out, path), at, at); err != nil {
				t.Fatal(year, err)
			}
		}
		write(t, filepath.Join(parent, ".out.barwright-1", markerName), markerText)
		if err := os.Chtimes(filepath.Join(parent, ".out.barwright-1"), at, at); err != nil {
			t.Fatal(err)
		}
		replace(t, out, tree{"a/x": "1"})
		want := tree{"out/": "", "out/a/": "", "out/a/x": "1"}
		if diff := cmp.Diff(want, read(t, parent).without("out/manifest.json")); diff != "" {
			t.Errorf("%d: %s", year, diff)
		}
	}
}
