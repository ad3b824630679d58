package lang

import (
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"barwright/lang/finding"
	"barwright/lang/source"
)

// WellFormed reads the syntax of one file, and reports what keeps it from being
// read at all: its size, its bytes, its nesting, its syntax. It knows nothing
// of blocks and attributes. The body is nil where there are findings.
func WellFormed(f source.File) (*hclsyntax.Body, finding.List) {
	r := &reader{src: &Source{Files: source.Files{f}}}
	return r.parse(f), r.findings
}
