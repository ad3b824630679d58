package solve

import (
	"fmt"
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/length"
)

func (s *solver) wallBlocks() []*lang.Block {
	for _, room := range s.src.Top("room") {
		return room.Inner("wall")
	}
	return nil
}

// room places the walls one after the other, turning at each corner.
func (s *solver) room() {
	frame := geom.Frame{}
	blocks := s.wallBlocks()
	for _, b := range blocks {
		w := model.Wall{
			Name: b.Name, Length: s.length(b, "length"), Corner: angleOf(s.value(b, "corner")),
			Backing: s.text(b, "backing"), Frame: frame, Studs: s.studs(b), Why: why(b),
		}
		for _, o := range b.Inner("outlet") {
			w.Outlets = append(w.Outlets, s.outlet(o))
		}
		for _, o := range b.Inner("stub") {
			at := s.lengths(o, "at")
			w.Stubs = append(w.Stubs, model.Stub{
				Name: o.Name, Along: at[0], Height: at[1], Diameter: s.length(o, "diameter"),
				StandsOut: s.length(o, "stands_out"), Clearance: s.length(o, "clearance"), Why: why(o),
			})
		}
		s.m.Room.Walls = append(s.m.Room.Walls, w)
		frame = geom.Frame{Origin: frame.At(w.Length, 0), Turn: frame.Turn + 180*geom.Degree - w.Corner}
	}
	if len(blocks) >= closedRoom {
		s.checkClosed(blocks, frame)
	}
}

// studs lists the centres of a wall's studs, as listed or as a series.
func (s *solver) studs(wall *lang.Block) []length.Length {
	if s.value(wall, "studs").Kind != expr.Object {
		return s.lengths(wall, "studs")
	}
	apart, last := s.fieldLength(wall, "studs", "spacing"), s.length(wall, "length")
	if end := s.field(wall, "studs", "last"); end.Kind == expr.Length {
		last = min(last, lengthOf(end))
	}
	var out []length.Length
	for at := s.fieldLength(wall, "studs", "first"); at <= last; at += apart {
		if len(out) == mostPieces {
			s.tooMany(wall.Attr("studs").Expr.At, int((last-out[0])/apart)+1, "studs")
			return nil
		}
		out = append(out, at)
	}
	return out
}

func (s *solver) outlet(b *lang.Block) model.Outlet {
	at := s.lengths(b, "at")
	return model.Outlet{
		Name: b.Name, Along: at[0], Height: at[1],
		Box:       model.Size{Width: s.fieldLength(b, "box", "width"), Height: s.fieldLength(b, "box", "height"), Depth: s.fieldLength(b, "box", "depth")},
		Cover:     model.Size{Width: s.fieldLength(b, "cover", "width"), Height: s.fieldLength(b, "cover", "height")},
		Clearance: s.length(b, "clearance"), StandsOut: s.length(b, "stands_out"), Why: why(b),
	}
}

// checkClosed notes by how much measured walls miss closing the room.
func (s *solver) checkClosed(walls []*lang.Block, end geom.Frame) {
	miss := length.Length(math.Round(math.Hypot(float64(end.Origin.X), float64(end.Origin.Y))))
	turn := (end.Turn%(360*geom.Degree) + 360*geom.Degree) % (360 * geom.Degree)
	off := min(turn, 360*geom.Degree-turn)
	if miss > s.marks || off > geom.Degree/10 {
		s.findings.Notef("room-open", walls[len(walls)-1].Head,
			"The walls as measured do not close: after the last corner one stands %s from where the first wall began, turned by %.2f degrees.",
			s.show(s.marked(miss)), off.Degrees())
	}
}

// checkWalls looks at what is said to be in or on each wall, as far as its
// values are sound.
func (s *solver) checkWalls() {
	for _, wall := range s.wallBlocks() {
		long := s.value(wall, "length")
		if long.Kind != expr.Length {
			continue
		}
		within := geom.Span{Lo: 0, Hi: lengthOf(long)}
		for _, kind := range []string{"outlet", "stub"} {
			for _, b := range wall.Inner(kind) {
				s.checkOnWall(b, wall, within)
			}
		}
		studs := s.value(wall, "studs")
		if studs.Kind == expr.Object {
			studs.Items = studs.Items[:1] // first; the others are kept within the wall
		}
		for _, stud := range studs.Items {
			if at := lengthOf(stud); stud.Kind == expr.Length && (at < within.Lo || at > within.Hi) {
				s.findings.Errorf("outside-wall", stud.At, "", "A stud at %s is outside the wall, which is %s long.", s.show(at), s.show(within.Hi)).
					Also(wall.Attr("length").Expr.At, "the wall's length")
			}
		}
	}
}

func (s *solver) checkOnWall(b, wall *lang.Block, within geom.Span) {
	at := s.value(b, "at")
	var wide expr.Value
	if b.Spec.Kind == "outlet" {
		wide = s.field(b, "box", "width")
	} else {
		wide = s.value(b, "diameter")
	}
	if at.Kind != expr.List || wide.Kind != expr.Length {
		return
	}
	along, height := lengthOf(at.Items[0]), lengthOf(at.Items[1])
	half := lengthOf(wide) / 2
	covers := geom.Span{Lo: along - half, Hi: along + half}
	mend := ""
	if half < within.Hi-half {
		mend = fmt.Sprintf("a place from %s to %s along the wall", s.show(half), s.show(within.Hi-half))
	}
	switch {
	case along < within.Lo || along > within.Hi:
		miss := max(within.Lo-along, along-within.Hi)
		s.findings.Errorf("outside-wall", at.Items[0].At, mend, "%s is at %s along its wall, which is %s long: %s outside.",
			finding.Capital(b.Describe()), s.show(along), s.show(within.Hi), s.show(miss)).
			Also(wall.Attr("length").Expr.At, "the wall's length")
	case !within.Contains(covers):
		miss := max(within.Lo-covers.Lo, covers.Hi-within.Hi)
		s.findings.Errorf("outside-wall", at.Items[0].At, mend, "%s is %s wide and its centre is at %s: it would run %s past the end of its wall.",
			finding.Capital(b.Describe()), s.show(2*half), s.show(along), s.show(miss)).
			Also(wall.Attr("length").Expr.At, "the wall's length")
	case height < 0:
		s.findings.Errorf("outside-wall", at.Items[1].At, "heights count up from the floor", "%s is %s below the floor.", finding.Capital(b.Describe()), s.show(-height))
	}
}
