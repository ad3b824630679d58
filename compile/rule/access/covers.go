package access

import (
	"fmt"
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// plateThickness is that of a common cover plate, 5/32 in.
const plateThickness = 4 * length.Millimetre

// lap is by how much a plate covers the wood beside an opening at the side where
// it covers least, less than 0 where the opening shows.
func lap(cover, opening geom.Rect) geom.Length {
	return min(opening.X.Lo-cover.X.Lo, cover.X.Hi-opening.X.Hi, opening.Y.Lo-cover.Y.Lo, cover.Y.Hi-opening.Y.Hi)
}

// covers lists the openings that a cover plate lies on: of the boards that let a box
// through, the one that is nearest to whoever uses it.
func covers(b *rule.Build, fixtures []fixture) []let {
	var out []let
	for _, l := range lets(b, fixtures) {
		if l.of.electrical() && !l.opening.Notch && !l.behind() {
			out = append(out, l)
		}
	}
	return out
}

// behind reports whether another board of the cabinet, which lets the same box
// through, stands before the panel.
func (l *let) behind() bool {
	before := l.before(plateThickness)
	for _, board := range l.boards {
		if whole, _ := opens(board, l.of.name); whole && board != l.part && before.Overlaps(board.Placement.Box) {
			return true
		}
	}
	return false
}

// before is what lies before the drawn face of the panel, so deep.
func (l *let) before(deep geom.Length) geom.Box {
	at := l.part.Placement
	face := at.Box.Along(at.Out.Axis)
	out := geom.Span{Lo: face.Hi, Hi: face.Hi + deep}
	if at.Out.Neg {
		out = geom.Span{Lo: face.Lo - deep, Hi: face.Lo}
	}
	return at.Box.With(at.Out.Axis, out)
}

// cover is where the plate lies on the panel's face: about the opening's middle.
func (l *let) cover() geom.Rect {
	hole, size := l.opening.Shape.Bounds(), l.of.cover
	return geom.Rect{X: geom.About(hole.X.Mid(), size.X.Size()), Y: geom.About(hole.Y.Mid(), size.Y.Size())}
}

func coverLapsLittle(b *rule.Build) {
	fixtures, limit := fixturesOf(b), b.Length(b.Limits, "cover_lap")
	for _, l := range covers(b, fixtures) {
		cover, hole := l.cover(), l.opening.Shape.Bounds()
		laps := lap(cover, hole)
		if laps >= limit || b.Findings.Has("cover-laps-little", l.of.why.At) {
			continue
		}
		does := "laps over " + b.Show(laps) + " of wood where it laps least"
		if laps < 0 {
			does = "leaves " + b.Show(-laps) + " of the opening bare"
		}
		f := b.Findings.Warnf("cover-laps-little", l.of.why.At, lapped(b, &l, limit-laps), "The cover plate of %s is %s by %s, its opening in the %s of %s %s by %s: "+
			"the plate %s. Wanted is %s, so that it still covers an opening that is cut a little off: %s too little.",
			l.of.name, b.Show(cover.X.Size()), b.Show(cover.Y.Size()), l.part.Name, l.part.Owner, b.Show(hole.X.Size()), b.Show(hole.Y.Size()),
			does, b.Show(limit), b.Show(limit-laps))
		b.LimitOf(f, "cover_lap")
	}
}

// lapped is a clearance, and the plate, with which a plate covers so much more. A gap that is too
// wide by itself is the first to blame.
func lapped(b *rule.Build, l *let, more geom.Length) string {
	hole, limit := l.opening.Shape.Bounds(), b.Length(b.Limits, "cover_lap")
	cover := fmt.Sprintf("a cover of %s by %s at least", b.Show(hole.X.Size()+2*limit), b.Show(hole.Y.Size()+2*limit))
	clearance := l.of.clearance - more
	switch gap := b.Length(b.Limits, "box_gap"); {
	case clearance < 0:
		return cover
	case b.WiredByCode() && l.of.clearance > gap:
		return fmt.Sprintf("clearance = %q", b.Show(length.Down(min(clearance, gap), b.Marks)))
	}
	return fmt.Sprintf("%s, or clearance = %q", cover, b.Show(length.Down(clearance, b.Marks)))
}

func coverMeetsBoard(b *rule.Build) {
	fixtures := fixturesOf(b)
	within := map[*fixture]bool{} // lookup only
	for _, l := range lets(b, fixtures) {
		within[l.of] = true
	}
	for _, l := range covers(b, fixtures) {
		if !told(b, l.of, "cover-meets-board") {
			coverMeetsBoards(b, &l)
		}
	}
	for _, w := range viewsOf(b, fixtures) {
		for _, f := range w.fixtures {
			if f.electrical() && !within[f] && !behindSlab(b, f) && !told(b, f, "cover-meets-board") {
				coverOnWall(b, f, w.bodies)
			}
		}
	}
}

// coverMeetsBoards looks for the board that a plate in a cabinet runs into most.
func coverMeetsBoards(b *rule.Build, l *let) {
	cover, before := l.cover(), l.before(plateThickness)
	var worst *model.Part
	most, mend := geom.Length(0), ""
	for _, board := range l.boards {
		if whole, _ := opens(board, l.of.name); whole || !before.Overlaps(board.Placement.Box) {
			continue
		}
		face, _ := l.part.Placement.Local(board.Placement.Box)
		shared := cover.Intersect(face)
		if deep := min(shared.X.Size(), shared.Y.Size()); deep > most {
			worst, most = board, deep
			s := strip{let: *l, to: beside{void: void{core: face}, limit: l.room(b, cover)}}
			mend = moveClear(b, &s)
		}
	}
	if worst != nil {
		b.Findings.Warnf("cover-meets-board", l.of.place(), mend, "The cover plate of %s, on %s of %s, is %s by %s: it runs into %s by %s and does not lie flat.",
			l.of.name, l.part.Named(), l.part.Owner, b.Show(cover.X.Size()), b.Show(cover.Y.Size()), worst.Named(), b.Show(most)).
			Also(l.part.Why.At, "the cabinet")
	}
}

// room is what an opening needs beside it: its plate on the wider side, and what any
// opening keeps from a joint.
func (l *let) room(b *rule.Build, cover geom.Rect) geom.Length {
	hole := l.opening.Shape.Bounds()
	return max(b.Length(b.Limits, "opening_joint"), hole.X.Lo-cover.X.Lo, cover.X.Hi-hole.X.Hi, hole.Y.Lo-cover.Y.Lo, cover.Y.Hi-hole.Y.Hi)
}

// behindSlab reports whether the edge of a slab lies over a plate: slab-over-cover tells of it.
func behindSlab(b *rule.Build, f *fixture) bool {
	return slices.ContainsFunc(b.Slabs, func(s model.Slab) bool {
		along, ok := rule.EdgeAt(&s, f.wall)
		return ok && along.Overlaps(f.cover.X) && s.Box.Z.Overlaps(f.cover.Y)
	})
}

// coverOnWall looks for what stands against the wall where a plate lies on it.
func coverOnWall(b *rule.Build, f *fixture, standing []seen) {
	for i := range standing {
		s := &standing[i]
		if s.of != nil && s.of.Kind == model.Bay {
			continue
		}
		shared := s.on(f.cover, plateThickness)
		deep := min(shared.X.Size(), shared.Y.Size())
		if deep <= length.Millimetre/10 { // rounding
			continue
		}
		b.Findings.Warnf("cover-meets-board", f.place(), clearOf(b, f, s, shared),
			"The cover plate of %s lies on wall %s from %s to %s along it, from %s to %s high. "+
				"It reaches %s behind %s, which does not go against the wall there.",
			f.name, f.wall.Name, b.Show(f.cover.X.Lo), b.Show(f.cover.X.Hi), b.Show(f.cover.Y.Lo), b.Show(f.cover.Y.Hi), b.Show(deep), s.name).
			Also(s.why.At, "what stands there")
		return
	}
}

// clearOf is a place of a fixture whose cover lies clear of a body, which shares some of it.
func clearOf(b *rule.Build, f *fixture, s *seen, shared geom.Rect) string {
	cover, mid := f.cover, f.cover.Y.Mid()
	if shared.Y.Size() <= shared.X.Size() {
		if mid > shared.Y.Mid() {
			return "its centre at " + b.Measured(f.wall, cover.X.Mid(), mid+s.box.Z.Hi-cover.Y.Lo, true) + ", or higher"
		}
		return "its centre at " + b.Measured(f.wall, cover.X.Mid(), mid+s.box.Z.Lo-cover.Y.Hi, false) + ", or lower"
	}
	mid = cover.X.Mid()
	if mid > shared.X.Mid() {
		return "its centre at " + b.Show(length.Up(mid+geom.Length(math.Ceil(s.hi))-cover.X.Lo, b.Marks)) + " along the wall, or further; or keep " + s.name + " clear of it"
	}
	return "its centre at " + b.Show(length.Down(mid+geom.Length(math.Floor(s.lo))-cover.X.Hi, b.Marks)) + " along the wall, or less; or keep " + s.name + " clear of it"
}

// boxGapWide holds the gap about a box to what is let pass in plaster and board.
func boxGapWide(b *rule.Build) {
	if !b.WiredByCode() {
		return
	}
	limit := b.Length(b.Limits, "box_gap")
	seen := map[*fixture]bool{} // lookup only
	for _, l := range lets(b, fixturesOf(b)) {
		if seen[l.of] || !l.of.electrical() || l.opening.Notch || l.of.clearance <= limit || b.Findings.Has("cover-laps-little", l.of.why.At) {
			continue
		}
		seen[l.of] = true
		f := b.Findings.Notef("box-gap-wide", l.of.block.Said("clearance"), "%s is let through the %s of %s with a gap of %s all round. %s is let pass about a box: %s too wide.",
			finding.Capital(l.of.name), l.part.Name, l.part.Owner, b.Show(l.of.clearance), b.Show(limit), b.Show(l.of.clearance-limit))
		f.Mend = fmt.Sprintf("clearance = %q", b.Show(limit))
		b.LimitOf(f, "box_gap")
	}
}
