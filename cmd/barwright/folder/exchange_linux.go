//go:build linux && (amd64 || arm64)

package folder

import (
	"errors"
	"os"
	"syscall"
	"unsafe"
)

// Flags of renameat2(2).
const (
	atCurrentFolder = -100 // AT_FDCWD
	renameExchange  = 2    // RENAME_EXCHANGE
)

// exchange swaps two names in one atomic step. The error is
// errors.ErrUnsupported where the file system or the kernel cannot.
func exchange(a, b string) error {
	err := renameat2(a, b, renameExchange)
	if errors.Is(err, syscall.EINVAL) {
		return errors.ErrUnsupported // what file systems without it answer
	}
	if err != nil {
		return &os.LinkError{Op: "exchange", Old: a, New: b, Err: err}
	}
	return nil
}

func renameat2(a, b string, flags uintptr) error {
	from, err := syscall.BytePtrFromString(a)
	if err != nil {
		return err
	}
	to, err := syscall.BytePtrFromString(b)
	if err != nil {
		return err
	}
	at := atCurrentFolder
	_, _, errno := syscall.Syscall6(sysRenameat2, uintptr(at), uintptr(unsafe.Pointer(from)),
		uintptr(at), uintptr(unsafe.Pointer(to)), flags, 0)
	if errno != 0 {
		return errno
	}
	return nil
}

// syncFolder brings the file system that holds dir to the disk, once for all
// files (syncfs(2)).
func syncFolder(dir string) (err error) {
	f, err := os.Open(dir)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	if _, _, errno := syscall.Syscall(sysSyncfs, f.Fd(), 0, 0); errno != 0 {
		return errno
	}
	return nil
}
