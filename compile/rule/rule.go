// Package rule judges a build that is solved: what will not fit, will not hold or
// is not safe is said before wood is cut. It has what rules look at; the rules are
// in packages beside it, one for each section of SPEC.md 11, and package all lists
// them all. What a rule says and its source stand in lang/finding, its cases in
// testdata/rules. Rules change nothing in the model.
package rule

import (
	"reflect"
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

// Build is what rules look at: the text with its values, and what was solved of it.
type Build struct {
	*values.Values
	*model.Model
	Findings *finding.List
	Limits   *lang.Block // an empty one where the text has none: values fall to their defaults

	byID    map[string]*model.Part   // lookup only, as the next
	byBlock map[string][]*model.Part // by the block's key
	dense   map[string]float64       // densities of stocks that were asked for
	shared  map[reflect.Type]any
}

// NewBuild is a solved build, with nothing found in it yet by rules.
func NewBuild(v *values.Values, m *model.Model, findings *finding.List) *Build {
	b := &Build{
		Values: v, Model: m, Findings: findings,
		Limits: &lang.Block{Spec: schema.Kind(schema.Root(), "limits"), Unit: v.Source.Unit},
		byID:   map[string]*model.Part{}, byBlock: map[string][]*model.Part{}, dense: map[string]float64{}, shared: map[reflect.Type]any{},
	}
	for i := range m.Parts {
		p := &m.Parts[i]
		b.byID[p.ID], b.byBlock[p.Block()] = p, append(b.byBlock[p.Block()], p)
	}
	for _, written := range v.Source.Top("limits") {
		b.Limits = written
	}
	return b
}

// Judge holds a solved build to rules.
func Judge(v *values.Values, m *model.Model, rules []Rule, findings *finding.List) {
	b := NewBuild(v, m, findings)
	for _, r := range rules {
		r.Look(b)
	}
}

// Once is what the rules of a section share of a build, worked out for the first of
// them that asks. There is one of each type; nobody writes to it.
func Once[T any](b *Build, work func(*Build) T) T {
	key := reflect.TypeFor[T]()
	if _, known := b.shared[key]; !known {
		b.shared[key] = work(b)
	}
	return b.shared[key].(T)
}

// LimitsSay reports whether the limits state one of some attributes.
func (b *Build) LimitsSay(names ...string) bool {
	return slices.ContainsFunc(names, func(name string) bool { return b.Limits.Attr(name) != nil })
}

// WiredByCode reports whether the build is held to the published rules of wiring.
func (b *Build) WiredByCode() bool { return b.Text(b.Limits, "wiring") == "nec" }

// LimitOf shows where a finding's limit comes from, where the text states it.
func (b *Build) LimitOf(f *finding.Finding, name string) {
	if a := b.Limits.Attr(name); a != nil {
		f.Also(a.Expr.At, "the limit")
	}
}
