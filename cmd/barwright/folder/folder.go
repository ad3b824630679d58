// Package folder writes an output folder all or nothing.
//
// The files are written into a staging folder beside the output folder, synced
// once, and then the finished folder takes the old one's place by rename. At
// every moment, and whatever stops the program, the output folder is the old
// one whole or the new one whole.
//
// On Linux (amd64 and arm64), on file systems that can exchange two names, the
// change is one atomic step. Elsewhere the old folder is moved aside first:
// between two renames there is no output folder, and a run that is stopped
// exactly there is mended by the next run, which puts the old folder back.
//
// One run at a time writes a folder, where the system has file locks: another
// waits some seconds for it, and then is refused.
//
// A file that is to be as it was is not written again: the new folder has a link to the old one, with its times, where the
// file system has links. Nothing is ever written into a file that is there.
//
// What a person made is never removed: a folder with a file that its manifest
// does not know, or that was changed since, is refused by name.
package folder

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// File is one file of an output folder. Write is called once, while others are written.
type File struct {
	Name  string // relative, with forward slashes: "parts/URN-L.dxf"
	Write func(io.Writer) error
}

// Replace makes dir hold exactly the files and a manifest of them. Missing
// parents of dir are made; where dir is a symbolic link, the folder that it
// points to is replaced and the link stays.
//
// The error is a [*Refused] where dir must not be replaced, that of the context
// where it ends before all is written, and any other error says what could not be
// read or written. In each case the old folder stands as it was and nothing new is
// left beside it; only where the last step fails, removing the old folder, is the
// new one in place already, and the error says where the rest of the old one lies.
func Replace(ctx context.Context, dir string, files []File) (err error) {
	if err := checkNames(files); err != nil {
		return err
	}
	target, err := locate(dir)
	if err != nil {
		return err
	}
	if err := misplaced(dir, target); err != nil {
		return err
	}
	undo, err := makeParents(filepath.Dir(target))
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			undo()
		}
	}()
	stage, err := claim(ctx, dir, target, patience)
	if err != nil {
		return err
	}
	defer func() {
		if removeErr := stage.remove(); err == nil {
			err = removeErr
		}
	}()
	old, err := occupied(dir, target)
	if err != nil {
		return err
	}
	if err := stage.fill(ctx, files, old); err != nil {
		return err
	}
	return stage.place(dir, target)
}

// makeParents makes the folders that lead to path, and returns what removes
// those that it made, as far as they are still empty.
func makeParents(path string) (undo func(), err error) {
	var made []string
	undo = func() {
		for i := len(made) - 1; i >= 0; i-- {
			os.Remove(made[i])
		}
	}
	var missing []string
	for p := path; ; p = filepath.Dir(p) {
		if _, err := os.Stat(p); !errors.Is(err, fs.ErrNotExist) || p == filepath.Dir(p) {
			break
		}
		missing = append(missing, p)
	}
	for i := len(missing) - 1; i >= 0; i-- {
		err := os.Mkdir(missing[i], 0o777)
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			undo()
			return nil, fmt.Errorf("make folder: %w", err)
		}
		made = append(made, missing[i])
	}
	return undo, nil
}
