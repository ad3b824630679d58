// Package history reads the files of a commit, by git itself. It takes what a person
// calls a revision and gives a tree of files; it neither writes to a repository nor
// runs what its configuration names, as filters.
package history

import (
	"fmt"
	"path"
	"strings"
)

// Repository is the one that a folder lies in.
type Repository struct {
	dir  string // the folder
	here string // the same from the top of the repository, "." for the top
}

// How many bytes are taken of an answer, and of a list of files: a tree of a few small
// objects can list files without end.
const (
	mostWords  = 1 << 16
	mostListed = 1 << 27
)

// Open looks for the repository that a folder lies in; in one without files (a bare
// one) the folder counts as its top.
func Open(dir string) (*Repository, error) {
	out, err := git(dir, mostWords, "rev-parse", "--show-prefix")
	if err != nil {
		return nil, err
	}
	here := strings.TrimSuffix(string(out), "\n")
	return &Repository{dir, path.Clean(strings.TrimSuffix(here, "/"))}, nil
}

// Here is the folder that the repository was looked for from, as Path gives paths.
func (r *Repository) Here() string { return r.here }

// Path reads a path as git does behind a colon: from the top of the repository, or
// from the folder where it begins with "./" or "../". It gives the path from the
// top, which may begin with "..".
func (r *Repository) Path(name string) string {
	if name == "." || name == ".." || strings.HasPrefix(name, "./") || strings.HasPrefix(name, "../") {
		return path.Join(r.here, name)
	}
	return path.Clean(name)
}

// Commit finds a revision and lists its files. The error is ErrNoRevision, where git
// has more to say with its words.
func (r *Repository) Commit(rev string) (*Commit, error) {
	if rev == "" || strings.ContainsAny(rev[:1], "-^") || strings.ContainsRune(rev, 0) {
		return nil, ErrNoRevision
	}
	out, err := git(r.dir, mostWords, "rev-parse", "--verify", "--end-of-options", rev+"^{commit}")
	if err != nil {
		return nil, r.shallow(err)
	}
	id := strings.TrimSpace(string(out))
	out, err = git(r.dir, mostListed, "ls-tree", "-r", "-z", "--full-tree", id)
	switch {
	case err != nil:
		return nil, err
	case len(out) == mostListed:
		return nil, fmt.Errorf("the names of its files take %d bytes or more, which is too many", mostListed)
	}
	return listed(r.dir, string(out))
}

// shallow adds to an error that older revisions may not be there at all.
func (r *Repository) shallow(err error) error {
	if out, _ := git(r.dir, mostWords, "rev-parse", "--is-shallow-repository"); strings.TrimSpace(string(out)) == "true" {
		return fmt.Errorf("%w (the clone is shallow: it lacks older revisions)", err)
	}
	return err
}

// Split parts REV:PATH; ok is false of what has no colon. One in braces, as in
// HEAD@{10:30}, belongs to the revision.
func Split(name string) (rev, path string, ok bool) {
	depth := 0
	for i, c := range name {
		switch {
		case c == '{':
			depth++
		case c == '}':
			depth--
		case c == ':' && depth <= 0:
			return name[:i], name[i+1:], true
		}
	}
	return name, "", false
}
