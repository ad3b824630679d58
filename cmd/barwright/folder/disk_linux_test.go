package folder

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// small mounts a file system of 64 KiB, or skips.
func small(t *testing.T) string { return mounted(t, "size=64k") }

// mounted mounts a file system in memory, or skips.
func mounted(t *testing.T, options string) string {
	t.Helper()
	dir := t.TempDir()
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, options); err != nil {
		if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
			t.Fatal("no small file system can be mounted:", err)
		}
		t.Skip("OUTSIDE CHECK SKIPPED: no small file system can be mounted:", err)
	}
	t.Cleanup(func() {
		if err := syscall.Unmount(dir, 0); err != nil {
			t.Error("unmount:", err)
		}
	})
	return dir
}

func TestAFullDisk(t *testing.T) {
	parent := small(t)
	out := filepath.Join(parent, "out")
	replace(t, out, tree{"x": "old"})
	before := read(t, parent)
	err := Replace(t.Context(), out, texts(tree{"a": strings.Repeat("x", 20_000), "b": strings.Repeat("x", 80_000)}))
	// Both are written at once: b may take the space of a before it finds none.
	if !errors.Is(err, syscall.ENOSPC) || !strings.Contains(err.Error(), "write a: ") && !strings.Contains(err.Error(), "write b: ") {
		t.Errorf("%v: want a file to find no space", err)
	}
	if diff := cmp.Diff(before, read(t, parent)); diff != "" {
		t.Error(diff)
	}
	replace(t, out, tree{"x": "new"})
}

// The disk is full at each page that is written, or has no room for each file and folder
// that is made: the old folder stays, and nothing else.
func TestADiskFullAtEveryStep(t *testing.T) {
	files := tree{"a": strings.Repeat("x", 20_000), "b/c": "short", "b/d": strings.Repeat("y", 9_000), "e/f/g": ""}
	for _, c := range []struct {
		what    string
		least   int // of steps that fail
		options func(used syscall.Statfs_t, more int) string
	}{
		// 5 + 1 + 3 pages of files, the manifest, the marker; the system may round up
		{"pages", 11, func(used syscall.Statfs_t, more int) string {
			return fmt.Sprintf("size=%d", (int(used.Blocks-used.Bfree)+more)*int(used.Bsize))
		}},
		// the staging folder, its marker, new, manifest, 4 files, 3 folders
		{"files", 11, func(used syscall.Statfs_t, more int) string {
			return fmt.Sprintf("nr_inodes=%d", int(used.Files-used.Ffree)+more)
		}},
	} {
		t.Run(c.what, func(t *testing.T) {
			parent := mounted(t, "size=1m,nr_inodes=200")
			out := filepath.Join(parent, "out")
			replace(t, out, tree{"x": "old", "deep/y": "old"})
			before := read(t, parent)
			var used syscall.Statfs_t
			if err := syscall.Statfs(parent, &used); err != nil {
				t.Fatal(err)
			}
			more := 0
			for ; more < 100; more++ {
				if err := syscall.Mount("", parent, "", syscall.MS_REMOUNT, c.options(used, more)); err != nil {
					t.Fatal(err)
				}
				err := Replace(t.Context(), out, texts(files))
				if err == nil {
					break
				}
				if !errors.Is(err, syscall.ENOSPC) || strings.Contains(err.Error(), "barwright-") {
					t.Errorf("%d more: %v", more, err)
				}
				if diff := cmp.Diff(before, read(t, parent)); diff != "" {
					t.Fatalf("%d more: %s", more, diff)
				}
			}
			if more < c.least {
				t.Errorf("it fails at %d steps, not %d: the test proves less than it says", more, c.least)
			}
			t.Logf("full at %d steps", more)
			if got := read(t, out); got["a"] != files["a"] || got["e/f/g"] != "" || got["x"] != "" {
				t.Error("what is written in the end is not what is to be")
			}
		})
	}
}

// A pipe where a file of ours should be keeps nobody waiting for its other end.
func TestAPipe(t *testing.T) {
	for _, name := range []string{"bill.csv", manifestName, "pipe"} {
		parent := t.TempDir()
		out := filepath.Join(parent, "out")
		replace(t, out, tree{"bill.csv": "a"})
		os.Remove(filepath.Join(out, name))
		if err := syscall.Mkfifo(filepath.Join(out, name), 0o666); err != nil {
			t.Fatal(err)
		}
		err := Replace(t.Context(), out, nil)
		if refused := new(Refused); !errors.As(err, &refused) {
			t.Errorf("%s: %v: want a refusal", name, err)
		}
	}
	parent := t.TempDir()
	left := filepath.Join(parent, ".out.barwright-1")
	if err := errors.Join(os.Mkdir(left, 0o777), syscall.Mkfifo(filepath.Join(left, markerName), 0o666)); err != nil {
		t.Fatal(err)
	}
	replace(t, filepath.Join(parent, "out"), tree{"x": "1"})
	if _, err := os.Lstat(filepath.Join(left, markerName)); err != nil {
		t.Error("what is none of ours is gone:", err)
	}
}

func TestAParentThatCannotBeWritten(t *testing.T) {
	parent := small(t)
	out := filepath.Join(parent, "out")
	replace(t, out, tree{"x": "old"})
	if err := syscall.Mount("", parent, "", syscall.MS_REMOUNT|syscall.MS_RDONLY, ""); err != nil {
		t.Fatal(err)
	}
	before := read(t, parent)
	for _, dir := range []string{out, filepath.Join(parent, "other"), filepath.Join(parent, "deep", "er")} {
		err := Replace(t.Context(), dir, texts(tree{"x": "new"}))
		if !errors.Is(err, syscall.EROFS) {
			t.Errorf("%s: %v: want a file system that is read-only", dir, err)
		}
	}
	if diff := cmp.Diff(before, read(t, parent)); diff != "" {
		t.Error(diff)
	}
}

// A mount point cannot change its name; what it holds stays.
func TestAMountPoint(t *testing.T) {
	out := small(t)
	parent := filepath.Dir(out)
	err := Replace(t.Context(), out, texts(tree{"x": "new"}))
	if refused := new(Refused); err == nil || errors.As(err, &refused) {
		t.Errorf("%v: want a plain error", err)
	}
	entries, _ := os.ReadDir(parent)
	if len(entries) != 1 {
		t.Errorf("litter: %v", entries)
	}
}
