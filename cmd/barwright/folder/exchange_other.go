//go:build !(linux && (amd64 || arm64))

package folder

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

func exchange(a, b string) error { return errors.ErrUnsupported }

// syncFolder brings each file below dir to the disk.
func syncFolder(dir string) error {
	return filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || !d.Type().IsRegular() {
			return err
		}
		f, err := os.OpenFile(path, os.O_WRONLY, 0)
		if err != nil {
			return err
		}
		return errors.Join(f.Sync(), f.Close())
	})
}
