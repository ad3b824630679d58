package solve

import (
	"fmt"

	"barwright/lang/latin"
	"barwright/lang/source"
)

// layer is a name of a layer as it is written in cut files.
type layer struct {
	kind, written string
	at            source.Range
	given         bool // it is no default
}

// checkLayers refuses layers of two kinds of work that have one name in the files: what
// is on them could not be told apart.
func (s *solver) checkLayers() {
	for _, b := range s.Source.Top("table") {
		if b.Attr("layers") == nil {
			continue
		}
		var all []layer
		whole := s.Value(b, "layers").At
		for _, field := range b.Spec.Attr("layers").Fields {
			name := s.Field(b, "layers", field.Name)
			all = append(all, layer{field.Name, latin.Layer(name.Text, field.Default), name.At, name.At != whole})
		}
		for i := range all {
			for _, l := range all[:i] {
				if s.shareALayer(&l, &all[i]) {
					return
				}
			}
		}
	}
}

// shareALayer refuses two that are one; one error is enough.
func (s *solver) shareALayer(a, b *layer) bool {
	if a.written == b.written {
		s.oneLayer(a, b, fmt.Sprintf("both are %s in the files", a.written))
		return true
	}
	blind := func(l *layer) bool { return l.kind == "recess" || l.kind == "bore" }
	kept := latin.LongestLayer - longestDepth
	if s.m.Table.Depths && blind(a) && blind(b) && min(len(a.written), len(b.written)) >= kept && a.written[:kept] == b.written[:kept] {
		s.oneLayer(a, b, fmt.Sprintf("with a depth at the end both begin with %s, and a name has %d characters at most", a.written[:kept], latin.LongestLayer))
		return true
	}
	return false
}

// longestDepth is how many characters a depth takes in a name: _ and 0.001 mm of less
// than a metre, or 0.0001 in.
const longestDepth = len("_999_999")

func (s *solver) oneLayer(a, b *layer, how string) {
	if !b.given {
		a, b = b, a
	}
	f := s.Findings.Errorf("layers-alike", b.at, b.kind+" = another name", "The layers %s and %s of the table cannot be told apart: %s.", a.kind, b.kind, how)
	if a.given {
		f.Also(a.at, "the other name")
	}
}
