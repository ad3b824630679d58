// Package rule judges a build that is solved: what will not fit, will not hold or
// is not safe is said before wood is cut. Each rule is one entry of a table; what
// it says and its source stand beside it in lang/finding, its cases in
// testdata/rules. Rules change nothing in the model.
package rule

import (
	"slices"

	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/schema"
)

// Rule looks for what one slug stands for.
type Rule struct {
	Slug string
	Look func(*Build)
}

// Table lists all rules, in the order of SPEC.md 11.
func Table() []Rule {
	return slices.Concat(standing, access, finish, seats, screws, loads, boards, wiring, water, passing)
}

// Build is what rules look at: the text with its values, and what was solved of it.
type Build struct {
	*values.Values
	*model.Model
	Findings *finding.List
	Limits   *lang.Block // an empty one where the text has none: values fall to their defaults
}

// Judge holds a solved build to rules.
func Judge(v *values.Values, m *model.Model, rules []Rule, findings *finding.List) {
	b := &Build{Values: v, Model: m, Findings: findings, Limits: &lang.Block{Spec: schema.Kind(schema.Root(), "limits"), Unit: v.Source.Unit}}
	for _, written := range v.Source.Top("limits") {
		b.Limits = written
	}
	for _, r := range rules {
		r.Look(b)
	}
}

// limitOf shows where a finding's limit comes from, where the text states it.
func (b *Build) limitOf(f *finding.Finding, name string) {
	if a := b.Limits.Attr(name); a != nil {
		f.Also(a.Expr.At, "the limit")
	}
}
