package main

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"barwright/cmd/barwright/history"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// side is where one of two builds is read from: the disk, or a revision.
type side struct {
	name    string // as the person wrote it
	path    string // on the disk, or from the top of the revision's tree
	rev     string
	revised bool // it is a revision's
	alone   bool // a revision without a path
	repo    *history.Repository
	commit  *history.Commit // both nil of the disk
}

// sides finds what two arguments name. A revision alone means the path of the other
// side in it, and where that is one too, the folder that the command runs in.
func sides(args []string) (out [2]side, err error) {
	out = [2]side{named(args[0]), named(args[1])}
	for i := range out {
		if s := &out[i]; s.revised {
			if err := s.open(&out[1-i]); err != nil {
				return out, err
			}
		}
	}
	for _, alone := range []bool{false, true} {
		for i := range out {
			if s := &out[i]; s.revised && s.alone == alone {
				if err := s.find(&out[1-i]); err != nil {
					return out, err
				}
			}
		}
	}
	return out, nil
}

// named takes an argument apart: what exists as a path is a path.
func named(arg string) side {
	if _, err := os.Lstat(arg); err == nil || errors.Is(err, fs.ErrPermission) {
		return side{name: arg, path: arg}
	}
	rev, path, colon := history.Split(arg)
	return side{name: arg, path: path, rev: rev, revised: true, alone: !colon}
}

// open looks a revision up.
func (s *side) open(other *side) error {
	dir := "."
	if s.alone && !other.revised {
		dir = folderOf(other.path)
	}
	repo, err := history.Open(dir)
	if err == nil {
		s.commit, err = repo.Commit(s.rev)
	}
	if err != nil {
		return s.unknown(err)
	}
	s.repo = repo
	return nil
}

// find looks its path up in it.
func (s *side) find(other *side) error {
	switch {
	case !s.alone:
		s.path = s.repo.Path(s.path)
	case other.revised && !other.alone:
		s.path = other.path
	case !other.revised && folderOf(other.path) != other.path:
		s.path = path.Join(s.repo.Here(), filepath.Base(other.path))
	default:
		s.path = s.repo.Here()
	}
	return s.there()
}

// unknown tells why there is no commit.
func (s *side) unknown(err error) error {
	switch more, is := strings.CutPrefix(err.Error(), history.ErrNoRevision.Error()); {
	case errors.Is(err, history.ErrNoRepository) && s.alone:
		return fmt.Errorf("%s is no file and no folder, and there is no repository here that could have a revision called so", s.name)
	case !is:
		return fmt.Errorf("%s: %w", s.name, err)
	case s.alone:
		return fmt.Errorf("%s is no file, no folder and no revision of the repository here%s", s.name, more)
	case s.rev == "":
		return fmt.Errorf("%s: a revision is to stand before the colon", s.name)
	default:
		return fmt.Errorf("%s: there is no revision %q in the repository here%s", s.name, s.rev, more)
	}
}

// there makes sure that the revision has the path.
func (s *side) there() error {
	found, folder, err := s.commit.Find(s.path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("there is no %s in %s%s", s.path, s.rev, s.meant())
	case err != nil:
		return s.failed(s.path, err)
	case folder && len(s.commit.Descriptions(found)) == 0 && s.recordIn(found) == "":
		return fmt.Errorf("%s: the folder has no *.hcl files%s", s.name, s.meant())
	}
	return nil
}

func (s *side) failed(name string, err error) error {
	if errors.Is(err, lang.ErrOutside) {
		return fmt.Errorf("%s in %s leads out of the tree", name, s.rev)
	}
	return fmt.Errorf("%s in %s: %w", name, s.rev, err)
}

// meant suggests the folder of a build for a path that has none: one that is spelt
// alike, or lies below, or was called so, or the only one.
func (s *side) meant() string {
	builds := slices.DeleteFunc(s.commit.Builds(), func(name string) bool {
		return strings.ContainsFunc(name, func(c rune) bool { return !unicode.IsPrint(c) })
	})
	near := cmp.Or(finding.Nearest(s.path, builds), finding.Nearest(path.Dir(s.path), builds))
	if i := slices.IndexFunc(builds, func(name string) bool {
		return strings.HasPrefix(name, s.path+"/") || path.Base(name) == path.Base(s.path) || len(builds) == 1
	}); near == "" && i >= 0 {
		near = builds[i]
	}
	switch near {
	case "":
		return ""
	case ".":
		near = "" // as git calls the top
	}
	return fmt.Sprintf(" (did you mean %s:%s?)", s.rev, near)
}

// readSide reads one of two builds; its model is there of a record, which is solved. Of
// a description the givens are as its text has them.
func (o options) readSide(s *side) (result, error) {
	m, is, err := o.record(s)
	if err != nil || is {
		return result{path: s.name, model: m}, err
	}
	if s.commit == nil {
		src, findings, err := options{}.source(s.path)
		return result{path: s.name, src: src, findings: findings}, err
	}
	files, open, err := s.files()
	if err != nil {
		return result{}, err
	}
	src, findings := lang.ReadTree(files, open)
	return result{path: s.name, src: src, findings: findings}, nil
}

// record reads a side that is a record; ok is false of what is none.
func (o options) record(s *side) (m *model.Model, ok bool, err error) {
	if s.commit == nil {
		return o.readRecord(s.path)
	}
	found, folder, err := s.commit.Find(s.path)
	if folder && len(s.commit.Descriptions(found)) == 0 {
		found, folder = s.recordIn(found), false
	}
	if err != nil || folder {
		return nil, false, err
	}
	text, err := s.commit.Read(found, maxRecordBytes)
	if err != nil || !isRecord(found, text) {
		return nil, false, err
	}
	m, err = o.recorded(s.name, bytes.NewReader(text))
	return m, true, err
}

// recordIn is the record in a folder of the commit, empty where it has none.
func (s *side) recordIn(folder string) string {
	found, isFolder, err := s.commit.Find(path.Join(folder, recordName))
	if err != nil || isFolder {
		return ""
	}
	return found
}

// files reads the files of a build in a commit, as readPath does of one on the disk.
func (s *side) files() (source.Files, lang.Open, error) {
	dir, folder, err := s.commit.Find(s.path)
	if err != nil {
		return nil, nil, err
	}
	names := s.commit.Descriptions(dir)
	if !folder {
		if dir, _, err = s.commit.Find(path.Dir(s.path)); err != nil {
			return nil, nil, err
		}
		names = []string{path.Base(s.path)}
	}
	open := func(name string) ([]byte, error) {
		return s.commit.Read(path.Join(dir, name), lang.MaxFileBytes+1)
	}
	var files source.Files
	for _, name := range names {
		text, err := open(name)
		if err != nil {
			return nil, nil, s.failed(path.Join(dir, name), err)
		}
		files = append(files, source.File{Name: name, Text: text})
	}
	files.Sort()
	return files, open, nil
}
