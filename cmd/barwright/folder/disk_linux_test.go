package folder

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// small mounts a file system of 64 KiB, or skips.
func small(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, "size=64k"); err != nil {
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
	if !errors.Is(err, syscall.ENOSPC) || !strings.Contains(err.Error(), "write b") {
		t.Errorf("%v: want b to find no space", err)
	}
	if diff := cmp.Diff(before, read(t, parent)); diff != "" {
		t.Error(diff)
	}
	replace(t, out, tree{"x": "new"})
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
