// Package solve turns a description into a model. It takes a Source without
// errors, places runs, walls and boxes, makes the parts of each, and cuts into
// them whatever they must let through. Layouts, the bill, programs and drawings
// are added by the packages beside it.
//
// Values come first, from package values, and geometry after: no geometry is
// worked out while any value is in error, so that one mistake gives one message.
package solve

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/survey"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// Solution is a model without layouts, bill, programs and drawings, and what
// the packages that add them need beside it.
type Solution struct {
	Model    *model.Model
	Values   *values.Values
	Recesses []Recess
	Findings finding.List
}

// Recess is one that the router cuts.
type Recess struct {
	Part   int           // index into the model's parts
	Recess int           // index into the part's recesses
	Centre length.Length // in the part's own x
	File   string        // safe name of its program, without extension; others may have the same
	Zero   string        // where a person sets Y's zero, in words
	Tool   model.Tool
	Why    model.Why
}

// Solve solves a description. The model is nil where a finding is an error, or
// reading found one: then only values are worked out. Blocks must not be lost.
func Solve(src *lang.Source) Solution {
	s := &solver{known: map[string]length.Length{}, m: &model.Model{}, scribes: map[int]length.Length{}, faces: map[string]survey.Surface{}}
	s.Values = values.New(src, &s.out.Findings)
	s.out.Values = s.Values
	s.All()
	s.NotMade()
	s.CheckFit()
	s.checkWalls()
	s.checkFloor()
	s.checkDialects()
	if src.Faulty || s.out.Findings.HasErrors() {
		return s.out
	}
	s.build()
	s.m.Givens = s.Givens()
	s.stock()
	s.room()
	s.runs()
	s.checkOnce()
	s.kneeWalls()
	s.floor()
	s.slabs()
	s.endPanels()
	s.finish()
	things := s.things()
	s.checkMeets(things)
	s.project(things)
	s.scribe()
	s.backGaps()
	s.ways()
	s.checkLayers()
	s.checkTableBit()
	s.checkRelief()
	s.checkFlatten()
	if s.out.Findings.HasErrors() {
		return s.out
	}
	s.out.Model = s.m
	return s.out
}

type solver struct {
	*values.Values
	m   *model.Model
	out Solution
	// What projection needs: of each cabinet, in the order of the model; of each
	// run, where it stands; of each part, what its blank lacks on its own face.
	cabinets []cabinet
	stands   []stand
	bearings []bearing // what stands on the floor, in the order of the model
	cuts     [][]geom.Rect
	// Of openings that are cut by hand: the bit for their corners; 0 for none.
	cornerBit length.Length
	scribes   map[int]length.Length     // by part: what is to be cut off it along a wall; lookup only
	faces     map[string]survey.Surface // of walls, by name; lookup only
	ground    survey.Surface            // the floor above the datum
	known     map[string]length.Length  // limits that were asked for, by name; lookup only
	catalogue catalogue
	toCut     []toCut // edges that are cut on site, in the order of their parts
	pipes     []pipe  // of the drains that are laid, in their order
}

// build reads the build block.
func (s *solver) build() {
	for _, b := range s.Source.Top("build") {
		s.m.Build = model.Build{Name: b.Name, Unit: s.Source.Unit, Marks: s.Marks, Revision: s.Text(b, "revision"), Paper: s.Text(b, "paper")}
	}
}

func why(b *lang.Block) model.Why { return model.Why{Block: b.Path(), At: b.Head} }

// saw reads the saw block, or its defaults where there is none.
func (s *solver) saw() {
	s.m.Saw = model.Saw{Kerf: s.SchemaLength("saw", "kerf"), Trim: s.SchemaLength("saw", "trim")}
	for _, b := range s.Source.Top("saw") {
		s.m.Saw = model.Saw{Kerf: s.Length(b, "kerf"), Trim: s.Length(b, "trim"), Stages: s.Count(b, "stages")}
		if s.m.Saw.Stages == 1 {
			s.Findings.Errorf("not-a-count", b.Attr("stages").Expr.At, "stages = 2 or more",
				"stages is 1; it must be 2 or more: cuts in one direction only give strips that are as long as the sheet.")
		}
		s.cornerBit = s.Length(b, "corner_bit")
	}
}

// marked rounds to what a site mark rounds to.
func (s *solver) marked(l geom.Length) geom.Length { return length.Round(l, s.Marks) }
