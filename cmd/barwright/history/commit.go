package history

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"barwright/lang"
)

// Commit is the tree of one commit. Names are paths from its top, with forward
// slashes.
type Commit struct {
	dir     string // where git is run
	names   []string
	entries map[string]entry // by name; lookup only
	folders map[string]bool  // lookup only
}

type entry struct{ mode, id string }

// Modes of what a tree holds, as git writes them.
const (
	linkMode      = "120000"
	submoduleMode = "160000"
)

// mostLinks is how many links are followed for one name.
const mostLinks = 10

// listed reads what ls-tree -z prints: "MODE TYPE ID\tNAME", each closed by a zero byte.
func listed(dir, text string) (*Commit, error) {
	c := &Commit{dir: dir, entries: map[string]entry{}, folders: map[string]bool{".": true}}
	for line := range strings.SplitSeq(strings.TrimSuffix(text, "\x00"), "\x00") {
		if line == "" {
			continue
		}
		head, name, ok := strings.Cut(line, "\t")
		words := strings.Fields(head)
		if !ok || len(words) != 3 {
			return nil, fmt.Errorf("git lists %q, which is not understood", line)
		}
		c.names = append(c.names, name)
		c.entries[name] = entry{words[0], words[2]}
		for up := path.Dir(name); !c.folders[up]; up = path.Dir(up) {
			c.folders[up] = true
		}
	}
	return c, nil
}

// Find follows the links of a name inside the tree, and tells what it leads to: the
// name of a file or of a folder. The error is lang.ErrOutside of what leads out of the
// tree, fs.ErrNotExist of what is not there.
func (c *Commit) Find(name string) (found string, folder bool, err error) {
	if path.IsAbs(name) {
		return "", false, lang.ErrOutside
	}
	found = "."
	rest := strings.Split(path.Clean(name), "/")
	for links := 0; len(rest) > 0; {
		next := path.Join(found, rest[0])
		rest = rest[1:]
		e, is := c.entries[next]
		switch {
		case next == ".." || strings.HasPrefix(next, "../"):
			return "", false, lang.ErrOutside
		case is && e.mode == submoduleMode:
			return "", false, errors.New("it is in a submodule, and those are not read")
		case is && e.mode == linkMode:
			if links++; links > mostLinks {
				return "", false, errors.New("its links lead nowhere")
			}
			to, err := c.read(e, 1<<12)
			if err != nil {
				return "", false, err
			}
			if path.IsAbs(string(to)) {
				return "", false, lang.ErrOutside
			}
			rest = append(strings.Split(string(to), "/"), rest...)
			continue
		case is && len(rest) > 0, !is && !c.folders[next]:
			return "", false, fs.ErrNotExist
		}
		found = next
	}
	return found, c.folders[found], nil
}

// Read gives the text of a file, at most so many bytes of it. Errors are as of Find.
func (c *Commit) Read(name string, most int64) ([]byte, error) {
	found, folder, err := c.Find(name)
	switch {
	case err != nil:
		return nil, err
	case folder:
		return nil, errors.New("it is no file")
	}
	return c.read(c.entries[found], most)
}

func (c *Commit) read(e entry, most int64) ([]byte, error) {
	return git(c.dir, most, "cat-file", "blob", e.id)
}

// Descriptions lists the *.hcl of a folder, without its own name.
func (c *Commit) Descriptions(folder string) []string {
	var out []string
	for _, name := range c.names {
		if path.Dir(name) == folder && path.Ext(name) == ".hcl" {
			out = append(out, path.Base(name))
		}
	}
	return out
}

// Builds lists the folders that have *.hcl.
func (c *Commit) Builds() []string {
	var out []string
	for _, name := range c.names {
		if path.Ext(name) == ".hcl" {
			out = append(out, path.Dir(name))
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}
