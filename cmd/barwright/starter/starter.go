// Package starter holds the description that a newcomer begins with, once in
// inches and once in millimetres, and writes it into a folder.
package starter

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

//go:embed in/*.hcl mm/*.hcl
var texts embed.FS

// Units lists what a starter can be in.
func Units() []string { return []string{"in", "mm"} }

// Names lists the files of a starter, the one to read first in front.
func Names() []string { return []string{"bar.hcl", "stock.hcl", "shop.hcl"} }

// Text returns a file of the starter in a unit, an error where there is none.
func Text(unit, name string) ([]byte, error) { return texts.ReadFile(unit + "/" + name) }

// Write writes the starter into dir, which is made where it is missing. The
// error names what stands in the way: a dir that is no folder, or one that
// holds something; or it says what could not be written. Then nothing of the
// starter is left. Files are never written over.
func Write(dir, unit string) (err error) {
	if err := empty(dir); err != nil {
		return err
	}
	undo := &undo{}
	defer func() {
		if err != nil {
			undo.run()
		}
	}()
	if err := undo.makeFolder(filepath.Clean(dir)); err != nil {
		return err
	}
	for _, name := range Names() {
		text, err := Text(unit, name)
		if err != nil {
			return err
		}
		if err := undo.write(filepath.Join(dir, name), text); err != nil {
			return err
		}
	}
	return nil
}

// empty refuses a folder that is not; one that is missing is fine.
func empty(dir string) error {
	info, err := os.Stat(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case !info.IsDir():
		return fmt.Errorf("%s is a file; name a new folder", dir)
	}
	entries, err := os.ReadDir(dir)
	if err != nil {
		return err
	}
	if len(entries) > 0 {
		return fmt.Errorf("%s is not empty: it holds %s. Nothing was written; name a new folder", dir, entries[0].Name())
	}
	return nil
}

// undo remembers what was made, to take it away again.
type undo struct{ made []string }

func (u *undo) run() {
	for i := len(u.made) - 1; i >= 0; i-- {
		os.Remove(u.made[i]) // a folder only while it is empty
	}
}

// makeFolder makes a folder and what leads to it.
func (u *undo) makeFolder(dir string) error {
	if _, err := os.Stat(dir); err == nil {
		return nil
	}
	if parent := filepath.Dir(dir); parent != dir {
		if err := u.makeFolder(parent); err != nil {
			return err
		}
	}
	if err := os.Mkdir(dir, 0o777); err != nil {
		return err
	}
	u.made = append(u.made, dir)
	return nil
}

func (u *undo) write(path string, text []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	u.made = append(u.made, path)
	_, err = f.Write(text)
	return errors.Join(err, f.Close())
}
