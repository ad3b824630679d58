package lang

import (
	"errors"
	"io/fs"
	"path"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"barwright/lang/expr"
	"barwright/lang/source"
)

// MaxFiles is how many files one build may have, those taken in counted.
const MaxFiles = 200

// Open gives the text of a file that a description takes in. The name is
// relative to the folder of the description, with forward slashes, and may
// begin with "..": whoever opens keeps it inside the tree and answers
// ErrOutside otherwise. It gives at most one byte more than MaxFileBytes.
type Open func(name string) ([]byte, error)

// ErrOutside says that a file is outside the tree of a description.
var ErrOutside = errors.New("outside the tree")

// includes adds the files that a file takes in, each once.
func (r *reader) includes(file string, body *hclsyntax.Body) {
	for _, b := range body.Blocks {
		if b.Type != "include" || len(b.Labels) != 1 {
			continue
		}
		at := expr.RangeOf(b.LabelRanges[0])
		label := b.Labels[0]
		if label == "" || path.IsAbs(label) || strings.ContainsAny(label, "\\:\x00") {
			r.src.Lost = true
			r.findings.Errorf("include-outside", at, `a path from this file's folder, as in "../shop/stock.hcl"`,
				"%q is not a relative path with forward slashes.", label)
			continue
		}
		r.takeIn(path.Join(path.Dir(file), label), at)
	}
}

func (r *reader) takeIn(name string, at source.Range) {
	if r.src.Files.Has(name) {
		return
	}
	if len(r.src.Files) >= MaxFiles {
		r.findings.Errorf("too-many", at, "", "The build has more than %d files.", MaxFiles)
		return
	}
	text, err := r.open(name)
	r.src.Lost = r.src.Lost || err != nil
	switch {
	case err == nil:
		r.src.Files = append(r.src.Files, source.File{Name: name, Text: text})
	case errors.Is(err, ErrOutside):
		r.findings.Errorf("include-outside", at, "move the file into the tree",
			"%s is outside the tree: a build takes in files of its own repository, or of the folder that the command runs in.", name)
	case errors.Is(err, fs.ErrNotExist):
		r.findings.Errorf("include-unreadable", at, "", "There is no file %s.", name)
	default:
		r.findings.Errorf("include-unreadable", at, "", "%s cannot be read: %v.", name, err)
	}
}

// nothingElse opens no file: a build of given texts takes in no others.
func nothingElse(string) ([]byte, error) { return nil, fs.ErrNotExist }
