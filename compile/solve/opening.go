package solve

import (
	"fmt"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// open cuts a thing into a part where its way meets the part's face: as an
// opening, or as a notch where it reaches an edge. Where the part has no wood
// there already, nothing is cut.
func (s *solver) open(index int, t *thing, face geom.Rect) {
	part, cuts := &s.m.Parts[index], s.cuts[index]
	blank := part.Placement.Blank()
	if slices.ContainsFunc(cuts, func(c geom.Rect) bool { return c.Contains(blank.Intersect(face)) }) {
		return
	}
	if t.kind == baseboard && s.standsOnBaseboard(part, t) {
		return
	}
	whole := !slices.ContainsFunc(cuts, func(c geom.Rect) bool { return c.Grow(1).Overlaps(face) })
	round := whole && roundOn(part, t)
	centre := geom.Point{X: face.X.Lo + t.radius, Y: face.Y.Lo + t.radius}
	edge, opens := openEdge(part, &t.cut)
	if opens {
		face = reaching(face, blank, edge)
		round = round && t.cut.Way == "slot"
	}
	o := model.Opening{Name: t.name, Why: t.why}
	switch inside := whole && blank.Grow(-1).Contains(face); {
	case inside && round:
		o.Shape = geom.CircleContour(centre, t.radius).Reversed()
	case inside:
		if s.tooRound(part, t, face, min(face.X.Size(), face.Y.Size())/2) {
			return
		}
		o.Shape = geom.RoundedContour(face, t.cut.Corner).Reversed()
		s.boreCorners(&o, t, face, geom.RectContour(face))
	default:
		s.notch(&o, index, t, face, round, centre)
	}
	if t.refused {
		return
	}
	s.checkOpenings(part, &o, t)
	part.Openings = append(part.Openings, o)
	if t.kind == baseboard {
		s.cuts[index] = append(slices.Clip(cuts), blank.Intersect(face))
	}
}

// notch shapes an opening that reaches an edge. That for a pipe whose centre
// lies within the blank and that leaves it over one edge keeps a round end;
// any other is a rectangle.
func (s *solver) notch(o *model.Opening, index int, t *thing, face geom.Rect, round bool, centre geom.Point) {
	part := &s.m.Parts[index]
	blank := part.Placement.Blank()
	o.Notch = true
	taken := blank.Intersect(face)
	if edge, ok := leftOver(blank, face); ok && round && within(blank, centre) {
		o.Shape = slot(taken, edge, centre)
		return
	}
	inner := innerCorners(taken, blank, s.cuts[index])
	if s.tooRound(part, t, taken, roundest(taken, inner)) {
		return
	}
	o.Shape = roundedAt(taken, inner, t.cut.Corner)
	s.boreCorners(o, t, taken, inner)
}

// openEdge is the edge of a part that a slot or notch is to be open to; ok is
// false where the part has no such edge, or a hole is asked for.
func openEdge(part *model.Part, cut *model.Cutting) (edge model.Edge, ok bool) {
	to, open := opensTo(cut)
	if !open || to.Axis == part.Placement.Out.Axis {
		return 0, false
	}
	return edgeAt(&part.Placement, to), true
}

// opensTo is where a slot or notch is open to; ok is false for a hole.
func opensTo(cut *model.Cutting) (to geom.Dir, ok bool) {
	to, known := map[string]geom.Dir{ // lookup only
		"bottom": below, "top": above, "rear": rearward, "front": front, "left": leftward, "right": rightward,
	}[cut.OpenTo]
	return to, known && cut.Way != "hole"
}

// reaching is a rectangle taken on to an edge of a blank.
func reaching(face, blank geom.Rect, edge model.Edge) geom.Rect {
	switch edge {
	case model.Bottom:
		face.Y.Lo = min(face.Y.Lo, blank.Y.Lo)
	case model.Top:
		face.Y.Hi = max(face.Y.Hi, blank.Y.Hi)
	case model.LeftEdge:
		face.X.Lo = min(face.X.Lo, blank.X.Lo)
	case model.RightEdge:
		face.X.Hi = max(face.X.Hi, blank.X.Hi)
	}
	return face
}

func within(r geom.Rect, p geom.Point) bool {
	return r.X.Lo < p.X && p.X < r.X.Hi && r.Y.Lo < p.Y && p.Y < r.Y.Hi
}

// leftOver is the one edge of a blank that an opening crosses.
func leftOver(blank, face geom.Rect) (model.Edge, bool) {
	crossed := []bool{
		model.Bottom: face.Y.Lo <= blank.Y.Lo, model.RightEdge: face.X.Hi >= blank.X.Hi,
		model.Top: face.Y.Hi >= blank.Y.Hi, model.LeftEdge: face.X.Lo <= blank.X.Lo,
	}
	first := slices.Index(crossed, true)
	return model.Edge(first), first >= 0 && !slices.Contains(crossed[first+1:], true)
}

// slot is a rectangle whose end opposite to an edge is a half circle about the
// centre.
func slot(r geom.Rect, open model.Edge, centre geom.Point) geom.Contour {
	switch open {
	case model.Bottom:
		r.Y.Hi = centre.Y
	case model.Top:
		r.Y.Lo = centre.Y
	case model.LeftEdge:
		r.X.Hi = centre.X
	case model.RightEdge:
		r.X.Lo = centre.X
	}
	c := geom.RectContour(r)
	// RectContour's edges run bottom, right, top, left; the round end faces
	// the open edge.
	c[(int(open)+2)%4].Bulge = 1
	return c
}

// cutNotches takes the notches of a part out of its outline.
func (s *solver) cutNotches(index int) {
	part := &s.m.Parts[index]
	cuts := slices.Clone(s.cuts[index])
	var last *model.Opening
	for i := range part.Openings {
		o := &part.Openings[i]
		if !o.Notch {
			continue
		}
		last = o
		if r := straight(o.Shape); !slices.Contains(cuts, r) {
			cuts = append(cuts, r)
		}
	}
	if last == nil {
		return
	}
	pieces := geom.Cut(part.Placement.Blank(), cuts)
	if len(pieces) != 1 {
		s.partsPanel(part, last, len(pieces))
		return
	}
	part.Outline = pieces[0]
	for i := range part.Openings {
		if o := &part.Openings[i]; o.Notch {
			roundEnd(part.Outline, o.Shape)
			s.roundInner(part, o)
		}
	}
}

func (s *solver) partsPanel(part *model.Part, o *model.Opening, pieces int) {
	left := fmt.Sprintf("%s of %s in %d pieces", part.Named(), part.Owner, pieces)
	if pieces == 0 {
		left = fmt.Sprintf("nothing of %s of %s", part.Named(), part.Owner)
	}
	s.Findings.Errorf("opening-parts-panel", o.Why.At, "move it, or move the box", "The openings would leave %s.", left).
		Also(part.Why.At, "the box")
}

// straight is a notch without its round end, and with square corners.
func straight(notch geom.Contour) geom.Rect {
	r := geom.R(notch[0].X, notch[0].Y, notch[0].X, notch[0].Y)
	for _, v := range notch {
		r = r.Union(geom.R(v.X, v.Y, v.X, v.Y))
	}
	return r
}

// roundEnd gives an outline the round end of a notch, where the notch has one
// and its end is whole.
func roundEnd(outline, notch geom.Contour) {
	for i, v := range notch {
		end := notch[(i+1)%len(notch)].Point
		for j := range outline {
			// The outline passes the notch the other way round.
			if v.Bulge == 1 && outline[j].Point == end && outline[(j+1)%len(outline)].Point == v.Point {
				outline[j].Bulge = -v.Bulge
			}
		}
	}
}

// standsOnBaseboard refuses a baseboard behind a board that no notch can clear
// it from: one that stands against the wall with its whole face, and would lose
// what it stands on.
func (s *solver) standsOnBaseboard(part *model.Part, t *thing) bool {
	off, upright := offNormal(part, t.wall)
	box := part.Placement.Box
	if !upright || off > 45*geom.Degree || part.Placement.Out.Axis == geom.V && box.Z.Lo > 0 {
		return false
	}
	if t.refused {
		return true
	}
	t.refused = true
	clear := t.out
	for _, u := range []length.Length{box.U.Lo, box.U.Hi} {
		for _, v := range []length.Length{box.V.Lo, box.V.Hi} {
			_, d := t.wall.Frame.Local(part.Placement.Frame.At(u, v))
			clear = min(clear, d)
		}
	}
	clear = max(s.marked(clear), 0)
	s.Findings.Errorf("baseboard-behind-panel", t.why.At, "take it off there: from, to; or let the run stand off the wall",
		"The baseboard of wall %q stands out %s, but %s of %s stands %s off that wall with its whole face: %s too near, and a notch through its %s would leave nothing to stand on.",
		t.wall.Name, s.Show(t.out), part.Named(), part.Owner, s.Show(clear), s.Show(t.out-clear), s.Show(part.Thickness)).
		Also(part.Why.At, "the box")
	return true
}
