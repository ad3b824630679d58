package solve

import (
	"fmt"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/spacing"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// allRound is where the edges of a front look.
var allRound = []geom.Dir{leftward, rightward, below, above}

// closing is how the fronts of one cabinet are made and where they stand.
type closing struct {
	s       *solver
	carcass *carcass
	run     *model.Run
	block   *lang.Block // the cabinet
	box     *model.Box
	board   board
	gap     length.Length
	inset   bool
	area    geom.Box // that all fronts together fill
	first   int      // index of the cabinet's first part
	inner   int      // index of the first of its fronts
}

// row is one front, or the doors side by side.
type row struct {
	kind   model.FrontKind
	height length.Length // 0: it shares what the others leave
	at     source.Range
	z      geom.Span
}

// fronts closes a cabinet from the top down: a false front, drawers, doors. first
// is the index of its first part.
func (s *solver) fronts(c *carcass, run *model.Run, b *lang.Block, box *model.Box, first int) {
	rows := s.rows(b)
	if len(rows) == 0 || !s.soundDoors(c, b, rows[0].at) {
		return
	}
	f := s.closing(c, run, b, box)
	f.first, f.inner = first, len(s.m.Parts)
	if !f.shareOut(rows) {
		return
	}
	drawers := 0
	for _, r := range rows {
		ok := false
		switch r.kind {
		case model.FalseFront:
			_, ok = f.front(r, f.area.U, model.Front{Kind: r.kind, Name: "false front"}, piece{id: "false-front", code: "FF", name: "false front"})
		case model.Drawer:
			drawers++
			ok = f.drawer(r, drawers)
		case model.Door:
			ok = f.doors(r)
		}
		if !ok {
			return
		}
	}
	f.fit(drawers)
}

// rows lists what a cabinet asks for, from the top down.
func (s *solver) rows(b *lang.Block) []row {
	var out []row
	add := func(kind model.FrontKind, height expr.Value) {
		out = append(out, row{kind: kind, height: values.LengthOf(height), at: height.At})
	}
	if b.Attr("false_front") != nil {
		add(model.FalseFront, s.Value(b, "false_front"))
	}
	if b.Attr("drawers") != nil {
		for _, height := range s.Value(b, "drawers").Items {
			add(model.Drawer, height)
		}
	}
	if s.Count(b, "doors") > 0 {
		add(model.Door, s.Value(b, "doors"))
	}
	return out
}

// insetFronts is the thickness of a cabinet's fronts where they stand between its
// sides, else 0.
func (s *solver) insetFronts(c *carcass, b *lang.Block) length.Length {
	if c.block.Attr("door") == nil || !s.insetDoor(c) || len(s.rows(b)) == 0 {
		return 0
	}
	return s.doorBoard(c).t
}

func (s *solver) insetDoor(c *carcass) bool { return s.Field(c.block, "door", "fit").Text == "inset" }

func (s *solver) doorBoard(c *carcass) board { return s.boardOf(s.FieldRef(c.block, "door", "board")) }

// soundDoors demands that the carcass says how fronts are made, and that a
// cabinet has no more doors than can open.
func (s *solver) soundDoors(c *carcass, b *lang.Block, at source.Range) bool {
	if c.block.Attr("door") == nil {
		if !s.Findings.Has("attribute-missing", c.block.Head) {
			s.Findings.Errorf("attribute-missing", c.block.Head, "door = { board = sheet.NAME }",
				"%s does not say how fronts are made.", finding.Capital(c.block.Describe())).Also(at, "fronts are asked for here")
		}
		return false
	}
	if n := s.Count(b, "doors"); n > 2 {
		s.Findings.Errorf("too-many-doors", b.Attr("doors").Expr.At, "doors = 2, or two cabinets",
			"%s has %d doors side by side; a box has two sides to hang them on.", finding.Capital(b.Describe()), n)
		return false
	}
	return true
}

// closing reads how fronts are made. An overlay stands before the carcass, half
// a gap in from either end of the box; inset fronts stand flush with its front
// edges, a gap away from all that is round them.
func (s *solver) closing(c *carcass, run *model.Run, b *lang.Block, box *model.Box) *closing {
	f := &closing{
		s: s, carcass: c, run: run, block: b, box: box,
		board: s.doorBoard(c), inset: s.insetDoor(c),
		gap: s.FieldLength(c.block, "door", "gap"),
	}
	hull, t := box.Hull, c.board.t
	if f.inset {
		f.area = geom.Box{
			U: hull.U.Grow(-t - f.gap),
			V: geom.Span{Lo: hull.V.Hi - f.board.t, Hi: hull.V.Hi},
			Z: geom.Span{Lo: box.ToeHeight + t, Hi: hull.Z.Hi - t}.Grow(-f.gap),
		}
		return f
	}
	f.area = geom.Box{
		U: geom.Span{Lo: hull.U.Lo + f.gap/2, Hi: hull.U.Hi - (f.gap - f.gap/2)},
		V: geom.Span{Lo: hull.V.Hi, Hi: hull.V.Hi + f.board.t},
		Z: geom.Span{
			Lo: box.ToeHeight + s.FieldLength(c.block, "door", "bottom"),
			Hi: hull.Z.Hi - s.FieldLength(c.block, "door", "top"),
		},
	}
	return f
}

// shareOut gives each row its height, from the top down with a gap between.
// Those that take the rest share it evenly. It refuses rows that find no room.
func (f *closing) shareOut(rows []row) bool {
	room, stated := f.area.Z.Size(), f.gap*length.Length(len(rows)-1)
	var sharers []int
	for i, r := range rows {
		if stated += r.height; r.height == 0 {
			sharers = append(sharers, i)
		}
	}
	n := length.Length(len(sharers))
	if left := room - stated; left < n {
		f.tooHigh(rows, stated, n > 0)
		return false
	} else if n > 0 {
		for order, i := range sharers {
			rows[i].height = spacing.Share(left, len(sharers), order)
		}
	}
	top := f.area.Z.Hi
	for i := range rows {
		rows[i].z = geom.Span{Lo: top - rows[i].height, Hi: top}
		top = rows[i].z.Lo - f.gap
	}
	return true
}

func (f *closing) tooHigh(rows []row, stated length.Length, more bool) {
	s, room := f.s, max(f.area.Z.Size(), 0)
	over, left := "nothing is left for what takes the rest", "less than "
	if !more {
		over, left = s.Show(stated-room)+" too high", ""
	}
	s.Findings.Errorf("fronts-too-high", rows[0].at, fmt.Sprintf("heights that come to %s%s, gaps included", left, s.Show(room)),
		"The fronts of %s are %s high with the gaps between them, and have %s: %s.", f.block.Describe(), s.Show(stated), s.Show(room), over).
		Also(f.carcass.block.Attr("door").Expr.At, "how fronts stand on the box")
}

// front makes one front and returns the index of its part.
func (f *closing) front(r row, u geom.Span, front model.Front, p piece) (int, bool) {
	s, door := f.s, f.carcass.block
	front.Place = geom.Box{U: u, V: f.area.V, Z: r.z}
	p.out, p.face, p.good, p.grain = rearward, "inside", model.GoodFar, model.GrainY
	if s.Field(door, "door", "grain").Text == "along" {
		p.grain = model.GrainX
	}
	bands := length.Length(0)
	if p.banding = s.FieldRef(door, "door", "banding"); p.banding != nil {
		p.banded = allRound
		bands = 2 * s.Length(p.banding, "thickness")
	}
	if w, h := front.Place.U.Size(), front.Place.Z.Size(); min(w, h) <= bands {
		s.Findings.Errorf("front-too-small", r.at, "a larger front, or smaller gaps",
			"The %s of %s would be %s wide and %s high; gaps and banding leave nothing of it.", front.Name, f.block.Describe(), s.Show(max(w, 0)), s.Show(h)).
			Also(door.Attr("door").Expr.At, "how fronts are made")
		return 0, false
	}
	part := s.panel(f.block, f.board.sheet, f.run.Frame, front.Place, p)
	switch s.Field(door, "door", "match").Text {
	case "cabinet":
		part.Match = f.block.Key()
	case "run":
		part.Match = f.block.Parent.Key()
	}
	front.Part = part.ID
	f.box.Fronts = append(f.box.Fronts, front)
	return len(s.m.Parts) - 1, true
}

// met is the first part of the cabinet, its fronts apart, that stands in a box;
// nil where none does.
func (f *closing) met(place geom.Box) *model.Part {
	for i := f.first; i < f.inner; i++ {
		if p := &f.s.m.Parts[i]; p.Placement.Box.Overlaps(place) {
			return p
		}
	}
	return nil
}

// side is the index of the cabinet's side at an end.
func (f *closing) side(end model.End) int { return f.s.partOf(f.block, "side-"+end.String()) }

// fit counts the hinges, slides and handles of the cabinet.
func (f *closing) fit(drawers int) {
	doors, hinges := 0, 0
	for _, front := range f.box.Fronts {
		if front.Kind == model.Door {
			doors, hinges = doors+1, hinges+len(front.Hinges)
		}
	}
	handles := 0
	if f.handled() {
		handles = doors + drawers
	}
	for _, need := range []struct {
		object, kind, on string
		count            int
	}{
		{"hinge", "hinge", "doors", hinges},
		{"drawer", "slides", "drawers", drawers},
		{"handle", "handle", "fronts", handles},
	} {
		if need.count > 0 {
			f.s.fit(f.carcass.block, need.object, model.Fitted{Kind: need.kind, Count: need.count, Use: need.on + " of cabinet " + f.block.Name, Why: f.box.Why})
		}
	}
}

// nth is a name with its number.
func nth(name string, n int) string { return name + strconv.Itoa(n) }
