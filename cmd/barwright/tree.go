package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"

	"barwright/lang"
)

// tree is the folder whose files a description may take in: the nearest
// enclosing repository, otherwise the folder that the command runs in, or the
// description's own where it lies elsewhere. No link leads out of it.
type tree struct {
	root *os.Root
	from string // the description's folder in it, with forward slashes
}

func openTree(dir string) (*tree, error) {
	dir, err := settled(dir)
	if err != nil {
		return nil, err
	}
	top := repository(dir)
	if top == "" {
		if top, err = settled("."); err != nil {
			return nil, err
		}
	}
	from, err := filepath.Rel(top, dir)
	if err != nil || from == ".." || strings.HasPrefix(from, ".."+string(filepath.Separator)) {
		top, from = dir, "."
	}
	root, err := os.OpenRoot(top)
	return &tree{root, filepath.ToSlash(from)}, err
}

// settled is where a folder lies, links followed: the one that a person names
// is trusted.
func settled(dir string) (string, error) {
	dir, err := filepath.Abs(dir)
	if err != nil {
		return "", err
	}
	return filepath.EvalSymlinks(dir)
}

// repository is the nearest folder above that is under version control, empty
// where there is none.
func repository(dir string) string {
	for {
		if _, err := os.Lstat(filepath.Join(dir, ".git")); err == nil {
			return dir
		}
		up := filepath.Dir(dir)
		if up == dir {
			return ""
		}
		dir = up
	}
}

func (t *tree) close() { t.root.Close() }

// open is a lang.Open.
func (t *tree) open(name string) ([]byte, error) {
	name = path.Join(t.from, name)
	if name == ".." || strings.HasPrefix(name, "../") {
		return nil, lang.ErrOutside
	}
	info, err := t.root.Stat(filepath.FromSlash(name))
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, fs.ErrNotExist
	case err != nil && strings.Contains(err.Error(), "escapes"):
		// os.Root has no error of its own for this.
		return nil, lang.ErrOutside
	case err != nil:
		return nil, errors.Unwrap(err)
	case !info.Mode().IsRegular():
		return nil, errors.New("it is no file")
	}
	f, err := t.root.Open(filepath.FromSlash(name))
	if err != nil {
		return nil, errors.Unwrap(err)
	}
	defer f.Close()
	return readSteady(name, f)
}

// place is where a file lies, as open would find it.
func (t *tree) place(name string) string {
	return filepath.Join(t.root.Name(), filepath.FromSlash(t.from), filepath.FromSlash(name))
}

// own reads one of the description's own files, which named says that the
// command line names.
func (t *tree) own(name string, named bool) ([]byte, error) {
	if named {
		return readFile(name)
	}
	text, err := t.open(filepath.Base(name))
	switch {
	case errors.Is(err, lang.ErrOutside):
		return nil, fmt.Errorf("%s is a link that leads out of the tree", name)
	case err != nil:
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return text, nil
}

// readFile reads a file that the command line names.
func readFile(name string) ([]byte, error) {
	info, err := os.Stat(name)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, fmt.Errorf("%s is no file", name)
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return readSteady(name, f)
}
