package folder

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"sync"
	"sync/atomic"

	"barwright/compile/atonce"
)

// A staging folder ".NAME.barwright-XXXX" holds the marker, the folder that is
// being made, and for a moment the folder that it replaces. The marker stays
// locked while its run lives, and is the last to go.
const (
	markerName = "marker"
	markerText = "Staging folder of barwright. The next run removes it.\n"
	freshName  = "new"
	asideName  = "old"
)

type staging struct {
	root   string
	marker *os.File
	keep   bool // holds what must not be removed
}

func (s *staging) fresh() string { return filepath.Join(s.root, freshName) }
func (s *staging) aside() string { return filepath.Join(s.root, asideName) }

// prefix begins the names of the staging folders beside target.
func prefix(target string) string { return "." + filepath.Base(target) + ".barwright-" }

func newStaging(target string) (_ *staging, err error) {
	parent := filepath.Dir(target)
	defer func() {
		if err != nil {
			err = fmt.Errorf("no folder can be made in %s: %w", parent, bare(err))
		}
	}()
	root, err := os.MkdirTemp(parent, prefix(target)+"*")
	if err != nil {
		return nil, err
	}
	s := &staging{root: root}
	defer func() {
		if err != nil {
			s.remove()
		}
	}()
	if s.marker, err = os.OpenFile(filepath.Join(root, markerName), os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o600); err != nil {
		return nil, err
	}
	_ = lock(s.marker) // where it fails, it fails for the run that would clear this one too
	if _, err := s.marker.WriteString(markerText); err != nil {
		return nil, err
	}
	return s, os.Mkdir(s.fresh(), 0o777)
}

// fill writes the files, and the manifest last, and brings all to the disk. What is in the old folder already, by its
// manifest, is not written again but linked to. Of files that cannot be written the error names the first
// in their order that was tried; none is begun after one has failed.
func (s *staging) fill(ctx context.Context, files []File, old inFolder) error {
	m := manifest{Format: manifestFormat, Files: make([]entry, len(files))}
	if err := s.makeFolders(files); err != nil {
		return err
	}
	errs := make([]error, len(files))
	var failed atomic.Bool
	held := sync.Pool{New: func() any { return new([mostHeld]byte) }}
	atonce.Each(len(files), func(i int) {
		if failed.Load() {
			return
		}
		room := held.Get().(*[mostHeld]byte)
		defer held.Put(room)
		d := draft{ctx: ctx, path: s.path(files[i].Name), held: room[:0]}
		if m.Files[i], errs[i] = d.write(files[i], old); errs[i] != nil {
			failed.Store(true)
		}
	})
	for i, err := range errs {
		if err != nil {
			return fmt.Errorf("write %s: %w", files[i].Name, bare(err))
		}
	}
	// The manifest appears whole or not at all: a later run trusts it.
	draft := filepath.Join(s.root, manifestName)
	if err := os.WriteFile(draft, m.encode(), 0o666); err != nil {
		return fmt.Errorf("write %s: %w", manifestName, bare(err))
	}
	if err := os.Rename(draft, filepath.Join(s.fresh(), manifestName)); err != nil {
		return err
	}
	if err := syncFolder(s.fresh()); err != nil {
		return fmt.Errorf("sync: %w", err)
	}
	return ctx.Err()
}

// bare is an error of the system without the name of a file that only this package
// knows.
func bare(err error) error {
	if of := new(fs.PathError); errors.As(err, &of) {
		return of.Err
	}
	if of := new(os.LinkError); errors.As(err, &of) {
		return of.Err
	}
	return err
}

// path is where a file is made.
func (s *staging) path(name string) string {
	return filepath.Join(s.fresh(), filepath.FromSlash(name))
}

// makeFolders makes those that the files are in.
func (s *staging) makeFolders(files []File) error {
	made := map[string]bool{".": true} // lookup only
	for _, f := range files {
		dir := path.Dir(f.Name)
		if made[dir] {
			continue
		}
		made[dir] = true
		if err := os.MkdirAll(s.path(dir), 0o777); err != nil {
			return fmt.Errorf("write %s: %w", f.Name, bare(err))
		}
	}
	return nil
}

// place puts the fresh folder at target. What stood there is looked at once
// more when nobody reaches it by its name any longer, and put back if somebody
// made something in it meanwhile.
func (s *staging) place(dir, target string) error {
	if _, err := os.Lstat(target); errors.Is(err, fs.ErrNotExist) {
		return irreplaceable(dir, os.Rename(s.fresh(), target))
	}
	if err := s.swapWith(target); err != nil {
		return irreplaceable(dir, err)
	}
	err := inspect(dir, s.fresh())
	if err == nil {
		return nil
	}
	if back := s.swapWith(target); back != nil {
		s.keep = true
		return fmt.Errorf("%w\n%w: the old folder is kept as %s", err, back, s.fresh())
	}
	return err
}

// irreplaceable says that a folder could not be put in its place, nil where it was.
func irreplaceable(dir string, err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("output folder %s cannot be put in its place: %w", dir, err)
}

// swapWith exchanges the fresh folder and target.
func (s *staging) swapWith(target string) error {
	err := bare(swap(s.fresh(), target, s.aside()))
	if _, missing := os.Lstat(s.aside()); err != nil && missing == nil {
		s.keep = true
		return fmt.Errorf("%w: the old folder is kept as %s", err, s.aside())
	}
	return err
}

// swap exchanges two folders, by way of a third name where the system cannot
// do it in one step.
func swap(a, b, spare string) error {
	err := exchange(a, b)
	if errors.Is(err, errors.ErrUnsupported) {
		return swapBySpare(a, b, spare)
	}
	return err
}

func swapBySpare(a, b, spare string) error {
	if err := os.Rename(b, spare); err != nil {
		return err
	}
	if err := os.Rename(a, b); err != nil {
		return errors.Join(err, os.Rename(spare, b))
	}
	return os.Rename(spare, a)
}

// remove takes the staging folder away, unless it holds what must be kept.
func (s *staging) remove() error {
	if s.marker != nil {
		defer s.marker.Close()
	}
	if s.keep {
		return nil
	}
	return removeStaging(s.root)
}

// removeStaging removes the marker last, so that the rest of a stopped removal
// can still be told for what it is.
func removeStaging(root string) error {
	for _, name := range []string{freshName, asideName, manifestName, markerName, "."} {
		if err := os.RemoveAll(filepath.Join(root, name)); err != nil {
			return fmt.Errorf("remove staging folder: %w", err)
		}
	}
	return nil
}
