package main

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// outside skips a test for want of something, or fails it where that is required.
func outside(t *testing.T, why ...any) {
	t.Helper()
	if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
		t.Fatal(why...)
	}
	t.Skip(append([]any{"OUTSIDE CHECK SKIPPED:"}, why...)...)
}

// ended wants a command to end with an exit status and to say something on standard error.
func ended(t *testing.T, cmd *exec.Cmd, status int, want string) {
	t.Helper()
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	err := cmd.Run()
	if cmd.ProcessState == nil {
		t.Fatal(err)
	}
	if got := cmd.ProcessState.ExitCode(); got != status || !strings.Contains(stderr.String(), want) || strings.Contains(stderr.String(), ".barwright-") {
		t.Errorf("%q: exit status %d, not %d: %s", cmd.Args[1:], got, status, stderr.String())
	}
}

// stays wants a folder that may not be written to be as it was, with nothing beside it.
func stays(t *testing.T, out string, before map[string][]byte) {
	t.Helper()
	if got := folders(t, filepath.Dir(out)); got != filepath.Base(out) {
		t.Errorf("in the folder above are %q", got)
	}
	if !maps.EqualFunc(filesIn(t, out), before, bytes.Equal) {
		t.Error("the old folder has changed")
	}
}

// A build for which the disk has too little room, be it ever so little short or much, says
// so and leaves the old folder; so does one on a disk that cannot be written.
func TestBuildsOnAFullDisk(t *testing.T) {
	parent := t.TempDir()
	if err := syscall.Mount("tmpfs", parent, "tmpfs", 0, "size=64m"); err != nil {
		outside(t, "no small file system can be mounted:", err)
	}
	t.Cleanup(func() {
		if err := syscall.Unmount(parent, 0); err != nil {
			t.Error(err)
		}
	})
	pages := func() int {
		var s syscall.Statfs_t
		if err := syscall.Statfs(parent, &s); err != nil {
			t.Fatal(err)
		}
		return int(s.Blocks - s.Bfree)
	}
	remount := func(flags uintptr, options string) {
		t.Helper()
		if err := syscall.Mount("", parent, "", syscall.MS_REMOUNT|flags, options); err != nil {
			t.Fatal(err)
		}
	}
	out := filepath.Join(parent, "out")
	build := func() *exec.Cmd { return program(t, "build", example("steps")+"/2", "-o", out) }
	ended(t, build(), exitClean, "")
	fresh := pages() // that a new folder takes
	// Another build, for what is to be as it was takes no room.
	ended(t, program(t, "build", example("servery"), "-o", out), exitClean, "")
	before, used := filesIn(t, out), pages()
	for _, eighths := range []int{0, 1, 2, 3, 4, 5, 6, 7} {
		remount(0, fmt.Sprintf("size=%dk", (used+fresh*eighths/8)*os.Getpagesize()>>10))
		ended(t, build(), exitFiles, "no space left on device")
		stays(t, out, before)
	}
	remount(0, fmt.Sprintf("size=%dk", (used+fresh-2)*os.Getpagesize()>>10))
	ended(t, build(), exitFiles, "no space left on device")
	stays(t, out, before)
	remount(syscall.MS_RDONLY, "")
	ended(t, build(), exitFiles, "read-only file system")
	stays(t, out, before)
	remount(0, fmt.Sprintf("size=%dk", (used+fresh+2)*os.Getpagesize()>>10))
	ended(t, build(), exitClean, "")
	if maps.EqualFunc(filesIn(t, out), before, bytes.Equal) {
		t.Error("where there is room, nothing is written either")
	}
}

// Who may not write somewhere is told so. Permissions hold for everybody but the
// administrator, so that for one the program runs as somebody else.
func TestBuildsWithoutPermission(t *testing.T) {
	const nobody = 65534
	dir := memory(t)
	bar, shop := filepath.Join(dir, "bar"), filepath.Join(dir, "shop")
	out := filepath.Join(shop, "out")
	inside, err := exec.LookPath("barwright")
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(inside)
	err = errors.Join(err, os.WriteFile(filepath.Join(dir, "barwright"), text, 0o755), os.Chmod(dir, 0o755), os.Mkdir(shop, 0o755),
		os.CopyFS(bar, os.DirFS(filepath.Join(example("steps"), "1"))))
	if err != nil {
		t.Fatal(err)
	}
	somebody := func() *exec.Cmd {
		cmd := exec.Command(filepath.Join(dir, "barwright"), "build", bar, "-o", out)
		cmd.Dir = dir
		if os.Getuid() == 0 {
			cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
		}
		return cmd
	}
	if os.Getuid() == 0 {
		if err := os.Chown(shop, nobody, nobody); err != nil {
			outside(t, "nothing can be given to somebody else:", err)
		}
	}
	ended(t, somebody(), exitClean, "")
	before := filesIn(t, out)
	for path, want := range map[string]string{
		shop:                        "no folder can be made in " + shop + ": permission denied",
		out:                         "output folder " + out + " is refused: it is read-only",
		filepath.Join(out, "parts"): "output folder " + out + " is refused: parts in it is read-only",
	} {
		if err := os.Chmod(path, 0o555); err != nil {
			t.Fatal(err)
		}
		ended(t, somebody(), exitFiles, want)
		stays(t, out, before)
		if err := os.Chmod(path, 0o755); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Chmod(out, 0o000); err != nil {
		t.Fatal(err)
	}
	ended(t, somebody(), exitFiles, "")
	if err := os.Chmod(out, 0o755); err != nil {
		t.Fatal(err)
	}
	stays(t, out, before)
	ended(t, somebody(), exitClean, "")
}
