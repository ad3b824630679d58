package folder

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"barwright/compile/atonce"
)

// Refused says that an output folder must not be replaced. Nothing was touched.
type Refused struct {
	Dir  string // as it was asked for
	Why  string // plain words: "it is a file"
	Kept []Kept // what a person made in it, sorted by name
}

// Kept is a file or folder that would have been lost.
type Kept struct {
	Name string // with forward slashes, from the output folder; a folder ends in "/"
	Why  string // "barwright did not write it"
}

const (
	notOurs = "barwright did not write it"
	changed = "it was changed after barwright wrote it"
)

// mostNamed is how many kept files an error names.
const mostNamed = 20

// Error names the folder and what stands in the way, one file a line.
func (r *Refused) Error() string {
	var b strings.Builder
	b.WriteString("output folder " + r.Dir + " is refused: " + r.Why)
	for i, k := range r.Kept {
		if i == mostNamed {
			fmt.Fprintf(&b, "\n  and %d more", len(r.Kept)-i)
			break
		}
		b.WriteString("\n  " + k.Name + ": " + k.Why)
	}
	if len(r.Kept) > 0 {
		b.WriteString("\nNothing was touched. Move what you want to keep, delete the rest, or write to another folder.")
	}
	return b.String()
}

// locate returns the absolute path of the folder that dir names, symbolic
// links followed. It need not exist.
func locate(dir string) (string, error) {
	if dir == "" {
		return "", &Refused{Dir: `""`, Why: "it has no name"}
	}
	target, err := filepath.Abs(dir)
	if err != nil {
		return "", err
	}
	info, err := os.Lstat(target)
	if errors.Is(err, fs.ErrNotExist) {
		return target, nil
	}
	if err != nil {
		return "", err
	}
	if info.Mode()&fs.ModeSymlink != 0 {
		target, err = filepath.EvalSymlinks(target)
		if errors.Is(err, fs.ErrNotExist) {
			return "", &Refused{Dir: dir, Why: "it is a symbolic link that leads nowhere"}
		}
		if err != nil {
			return "", err
		}
	}
	return target, nil
}

// inspect refuses a target that is misplaced or occupied. One that does not
// exist is fine. dir is its name in the refusal.
func inspect(dir, target string) error {
	if err := misplaced(dir, target); err != nil {
		return err
	}
	_, err := occupied(dir, target)
	return err
}

// misplaced refuses a target that is no folder, or that the program works in.
func misplaced(dir, target string) error {
	info, err := os.Stat(target)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	if !info.IsDir() {
		return &Refused{Dir: dir, Why: "it is a file"}
	}
	if holdsWorkingFolder(info) {
		return &Refused{Dir: dir, Why: "it is, or holds, the folder that you are working in"}
	}
	return nil
}

// occupied refuses a target that holds what a person made, and tells what else it holds.
func occupied(dir, target string) (inFolder, error) {
	if _, err := os.Lstat(target); errors.Is(err, fs.ErrNotExist) {
		return inFolder{}, nil
	}
	old, kept, err := personal(target)
	if err != nil {
		return inFolder{}, err
	}
	if len(kept) > 0 {
		return inFolder{}, &Refused{Dir: dir, Why: "what a person made would be lost", Kept: kept}
	}
	name, err := readOnly(target)
	if err == nil && name != "" {
		return inFolder{}, &Refused{Dir: dir, Why: name + " is read-only"}
	}
	return old, err
}

// readOnly names the first folder in a folder that its owner may not write to, empty where
// there is none. Who may write everywhere is held to it too: somebody meant it.
func readOnly(dir string) (name string, err error) {
	err = fs.WalkDir(os.DirFS(dir), ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || !d.IsDir() {
			return err
		}
		info, err := d.Info()
		switch {
		case err != nil:
			return err
		case info.Mode().Perm()&0o200 != 0:
			return nil
		case path == ".":
			name = "it"
		default:
			name = path + " in it"
		}
		return fs.SkipAll
	})
	return name, err
}

func holdsWorkingFolder(dir fs.FileInfo) bool {
	at, err := os.Getwd()
	for err == nil {
		if info, statErr := os.Stat(at); statErr == nil && os.SameFile(info, dir) {
			return true
		}
		up := filepath.Dir(at)
		if up == at {
			return false
		}
		at = up
	}
	return false
}

// personal returns what barwright wrote in a folder, and what it did not write, or what was
// changed since. A folder that holds no file of barwright's counts as one
// thing, and is not looked into.
func personal(dir string) (written inFolder, kept []Kept, err error) {
	entries, ours, err := readManifest(dir)
	if err != nil {
		return written, nil, err
	}
	folders := map[string]bool{".": true}
	for name := range entries {
		for up := path.Dir(name); up != "."; up = path.Dir(up) {
			folders[up] = true
		}
	}
	var ourFiles []entry // to be read
	err = fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		e, known := entries[name]
		switch {
		case d.IsDir() && folders[name], name == manifestName && ours:
			return nil
		case d.IsDir():
			kept = append(kept, Kept{name + "/", notOurs})
			return fs.SkipDir
		case !known:
			kept = append(kept, Kept{name, notOurs})
			return nil
		}
		ourFiles = append(ourFiles, e)
		return nil
	})
	if err != nil {
		return written, nil, err
	}
	same, errs := make([]bool, len(ourFiles)), make([]error, len(ourFiles))
	buffers := sync.Pool{New: func() any { return new([1 << 15]byte) }}
	atonce.Each(len(ourFiles), func(i int) {
		buffer := buffers.Get().(*[1 << 15]byte)
		same[i], errs[i] = ourFiles[i].holds(filepath.Join(dir, filepath.FromSlash(ourFiles[i].Name)), buffer[:])
		buffers.Put(buffer)
	})
	for i, e := range ourFiles {
		if errs[i] == nil && !same[i] {
			kept = append(kept, Kept{e.Name, changed})
		}
	}
	slices.SortFunc(kept, func(a, b Kept) int { return strings.Compare(a.Name, b.Name) })
	return inFolder{dir, entries}, kept, cmp.Or(errs...)
}
