package place

import (
	"fmt"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/setting"
	"barwright/lang/finding"
)

// doorway is the room's, nil where none is told.
func (s *site) doorway() (door *setting.Door, wall string) {
	for _, room := range s.Source.Top("room") {
		for _, b := range room.Inner("doorway") {
			w := s.WallNamed(s.Ref(b, "wall").Name)
			return &setting.Door{
				Frame: w.Frame, Height: s.Length(b, "height"), Landing: s.Length(b, "landing"),
				Span: geom.Between(s.Length(b, "from"), s.Length(b, "to")),
			}, w.Name
		}
	}
	return nil, ""
}

// goesFirst names the sides of a body that go first through a doorway.
var goesFirst = [...]string{"an end", "its front or back", "its top or bottom"}

// throughDoorway warns of what does not come in whole.
func (r *room) throughDoorway() {
	if r.finished.Door == nil {
		return
	}
	var first *body
	others := -1
	for i := range r.bodies {
		if o := &r.bodies[i]; o.early != model.FramedInPlace && !o.Stands && !r.comesIn(o) {
			others++
			if first == nil {
				first = o
			}
		}
	}
	if first == nil {
		return
	}
	text := fmt.Sprintf("%s is %s wide, %s deep and %s high; the doorway is %s wide and %s high, and it goes through no way round.",
		finding.Capital(quoted(first.Name)), r.Show(first.hull.U.Size()), r.Show(first.hull.V.Size()), r.Show(first.hull.Z.Size()),
		r.Show(r.finished.Door.Span.Size()), r.Show(r.finished.Door.Height))
	text += finding.Others(others, " Nor does another thing.", " Nor do %d other things.")
	mend := "put it together in the room"
	if half := first.hull.U.Size() / 2; r.inTwoComesIn(first) {
		mend += fmt.Sprintf(", or make it of two, each %s wide", r.Show(half))
	}
	r.Findings.Warnf("too-large-for-doorway", r.Block(first.block).Head, mend, "%s", text).
		Also(r.Source.Top("room")[0].Inner("doorway")[0].Head, "the doorway")
}

// comesIn reports whether a body goes through the doorway, whole or piece by piece.
func (r *room) comesIn(o *body) bool {
	if !o.apart {
		return len(r.finished.Door.Passes(o.Body)) > 0
	}
	return !slices.ContainsFunc(o.parts, func(p *model.Part) bool {
		return len(r.finished.Door.Passes(setting.Body{Solids: solids(p)})) == 0
	})
}

// inTwoComesIn reports whether each half of a body's width goes through the doorway.
func (r *room) inTwoComesIn(o *body) bool {
	half := o.hull
	half.U.Hi = half.U.Mid()
	return len(r.finished.Door.Passes(setting.Body{Solids: []setting.Solid{{Frame: o.frame, Box: half}}})) > 0
}
