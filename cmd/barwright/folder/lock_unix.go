//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package folder

import (
	"errors"
	"os"
	"syscall"
)

// lock takes a file or a folder for this run; the system lets go of it when the run ends,
// however it ends. It fails at once where another run has it.
func lock(f *os.File) error {
	return syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
}

// held reports whether a lock failed because another run has the file.
func held(err error) bool { return errors.Is(err, syscall.EWOULDBLOCK) }
