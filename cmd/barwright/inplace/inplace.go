// Package inplace writes one file, whole or not at all: it gives one that a person
// made another text, or makes a new one.
package inplace

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
)

// Replace makes the file at path hold text where it held before. The new text
// is written beside it, brought to the disk, and takes the file's place by
// rename: whoever reads the file finds the old text or the new one. The file
// keeps its mode, but is a new one: other hard links keep the old text. Where
// path is a symbolic link, the file that it points to is replaced and the link
// stays.
//
// The error says what stood in the way, as a file that may not be written or
// one that no longer holds before; the file then is as it was, and nothing is
// left beside it.
func Replace(path string, before, text []byte) error {
	target, err := filepath.EvalSymlinks(path)
	if err != nil {
		return err
	}
	mode, err := writable(path, target)
	if err != nil {
		return err
	}
	return put(target, text, mode, func() error {
		if now, err := os.ReadFile(target); err != nil || !bytes.Equal(now, before) {
			return errors.Join(err, fmt.Errorf("%s was changed meanwhile; it is left as it is", path))
		}
		return nil
	})
}

// Write makes a file hold text in the same way, whether or not there is one at path.
func Write(path string, text []byte) error {
	target, err := filepath.EvalSymlinks(path)
	if errors.Is(err, fs.ErrNotExist) {
		return put(path, text, 0, func() error { return nil })
	}
	if err != nil {
		return unwritable(filepath.Dir(path), err)
	}
	mode, err := writable(path, target)
	if err != nil {
		return err
	}
	return put(target, text, mode, func() error { return nil })
}

// put writes the text beside the target and renames it, unless look finds that it
// should not. A mode of 0 is that of any new file.
func put(target string, text []byte, mode fs.FileMode, look func() error) (err error) {
	fresh, err := os.CreateTemp(filepath.Dir(target), "."+filepath.Base(target)+".barwright-*")
	if err != nil {
		return unwritable(filepath.Dir(target), err)
	}
	if mode == 0 { // only a file that is made anew gets the mode that new files have here
		fresh.Close()
		os.Remove(fresh.Name())
		if fresh, err = os.OpenFile(fresh.Name(), os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666); err != nil {
			return err
		}
	}
	defer func() {
		if err != nil {
			fresh.Close() // where it is closed already, nothing is lost
			os.Remove(fresh.Name())
		}
	}()
	if err := fill(fresh, text, mode); err != nil {
		return err
	}
	if err := look(); err != nil {
		return err
	}
	if err := os.Rename(fresh.Name(), target); err != nil {
		return err
	}
	syncFolder(filepath.Dir(target))
	return nil
}

// unwritable says why no file can be made in a folder, without the name that only this
// package knows.
func unwritable(dir string, err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("there is no folder %s", dir)
	}
	if of := new(fs.PathError); errors.As(err, &of) {
		err = of.Err
	}
	return fmt.Errorf("no file can be made in %s: %w", dir, err)
}

// writable returns the mode of a plain file that may be written. A rename
// alone would not ask.
func writable(path, target string) (fs.FileMode, error) {
	info, err := os.Stat(target)
	if err != nil {
		return 0, err
	}
	if !info.Mode().IsRegular() {
		return 0, fmt.Errorf("%s is no plain file", path)
	}
	f, err := os.OpenFile(target, os.O_WRONLY, 0)
	if err != nil {
		return 0, err
	}
	return info.Mode().Perm(), f.Close()
}

func fill(f *os.File, text []byte, mode fs.FileMode) error {
	if _, err := f.Write(text); err != nil {
		return err
	}
	if mode != 0 {
		if err := f.Chmod(mode); err != nil && runtime.GOOS != "windows" {
			return err
		}
	}
	if err := f.Sync(); err != nil {
		return err
	}
	return f.Close()
}

// syncFolder brings the new name to the disk, where the system knows how. The
// text is there already, under one name or the other.
func syncFolder(dir string) {
	if f, err := os.Open(dir); err == nil {
		f.Sync()
		f.Close()
	}
}
