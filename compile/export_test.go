package compile

import (
	"barwright/compile/model"
	"barwright/compile/nesting"
	"barwright/lang"
	"barwright/lang/finding"
)

// Unjudged is Compile without the rules of SPEC.md 11, which have cases of their own.
func Unjudged(src *lang.Source) (*model.Model, finding.List) {
	m, _, findings := compiled(src, nil, Job{Effort: nesting.Quick})
	return m, findings
}
