package solve

import (
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/source"
)

// interior is what divides the inside of a cabinet.
type interior struct {
	*carcass
	run    *model.Run
	b      *lang.Block
	hull   geom.Box
	inside geom.Box
	clear  geom.Span   // heights that shelves may take
	spaces []geom.Span // along u, between sides and dividers
	shelf  board
	fixed  []geom.Span // heights of fixed shelves, rising
	depth  geom.Span   // of fixed shelves
}

// interior fills a cabinet: dividers, fixed shelves, and shelves on pins, all of
// them behind inset fronts. One that cannot be is refused, and nothing more is
// made.
func (s *solver) interior(c *carcass, run *model.Run, b *lang.Block, box *model.Box) {
	in := interior{carcass: c, run: run, b: b, hull: box.Hull, inside: box.Inside, clear: c.clear(box.Hull), shelf: c.board}
	if named := s.FieldRef(c.block, "shelf", "board"); named != nil {
		in.shelf = s.boardOf(named)
	}
	in.inside.V.Hi -= s.insetFronts(c, b)
	in.depth = geom.Span{Lo: in.inside.V.Lo, Hi: in.inside.V.Hi - s.FieldLength(c.block, "shelf", "setback")}
	if s.dividers(&in) && s.fixedShelves(&in) {
		s.shelves(&in)
	}
}

// clear is the heights that shelves may take: under the strips and the top,
// whichever hangs lowest before the back.
func (c *carcass) clear(hull geom.Box) geom.Span {
	z := geom.Span{Lo: c.toeHeight + c.board.t, Hi: hull.Z.Hi - c.board.t}
	if !c.stretcherBehind() {
		z.Hi = min(z.Hi, c.rearStretcher(hull).Z.Lo)
	}
	return z
}

// dividers stand on the bottom, notched round the stretchers before the back.
func (s *solver) dividers(in *interior) bool {
	left := in.inside.U.Lo
	for i, at := range s.Lengths(in.b, "dividers") {
		centre := in.hull.U.Lo + at
		u := geom.About(centre, in.board.t)
		if u.Lo <= left || u.Hi >= in.inside.U.Hi {
			s.Findings.Errorf("divider-finds-no-room", s.item(in.b, "dividers", i), "centres with clear space on both sides of each board",
				"A divider %s thick about %s would reach from %s to %s; clear of the board before it and of the right side are %s to %s.", s.Show(in.board.t), s.Show(at),
				s.Show(u.Lo-in.hull.U.Lo), s.Show(u.Hi-in.hull.U.Lo), s.Show(left-in.hull.U.Lo), s.Show(in.inside.U.Hi-in.hull.U.Lo))
			return false
		}
		in.spaces = append(in.spaces, geom.Span{Lo: left, Hi: u.Lo})
		left = u.Hi
	}
	in.spaces = append(in.spaces, geom.Span{Lo: left, Hi: in.inside.U.Hi})
	var round []geom.Box
	if !in.full {
		round = append(round, in.frontStretcher(in.hull))
	}
	if !in.stretcherBehind() {
		round = append(round, in.rearStretcher(in.hull))
	}
	for i := range in.spaces[1:] {
		box := in.inside
		box.U = geom.Span{Lo: in.spaces[i].Hi, Hi: in.spaces[i+1].Lo}
		s.panel(in.b, in.board.sheet, in.run.Frame, box, in.edged(numbered(i, piece{
			id: "divider", code: "DV", name: "divider", out: rightward, face: "right", grain: model.GrainY, good: model.GoodBoth, filled: round,
		})))
	}
	return true
}

// numbered is the piece with its number behind its names, from 1.
func numbered(i int, p piece) piece {
	n := strconv.Itoa(i + 1)
	p.id, p.code, p.name = p.id+"-"+n, p.code+n, p.name+" "+n
	return p
}

// fixedShelves go from side to side, in one piece for each space between
// dividers.
func (s *solver) fixedShelves(in *interior) bool {
	heights := s.Lengths(in.b, "fixed_shelves")
	above := in.clear.Lo
	for i, h := range heights {
		z := geom.Span{Lo: h - in.shelf.t, Hi: h}
		if z.Lo <= above || z.Hi >= in.clear.Hi {
			s.Findings.Errorf("shelf-finds-no-room", s.item(in.b, "fixed_shelves", i), "heights with clear space over and under each board",
				"A shelf %s thick with its upper face at %s would reach down to %s; clear are %s to %s.",
				s.Show(in.shelf.t), s.Show(h), s.Show(z.Lo), s.Show(above), s.Show(in.clear.Hi))
			return false
		}
		in.fixed, above = append(in.fixed, z), h
	}
	if len(heights) > 0 && in.depth.Size() <= in.band {
		s.Findings.Errorf("shelf-finds-no-room", in.at("shelf"), "a smaller setback", "The inside is %s deep: a shelf that stays %s behind the front edges has no room in it.",
			s.Show(in.inside.V.Size()), s.Show(in.inside.V.Hi-in.depth.Hi)).Also(in.b.Head, "the cabinet")
		return false
	}
	if n := len(in.fixed) * len(in.spaces); n > mostPieces {
		s.tooMany(s.item(in.b, "fixed_shelves", 0), n, "pieces of shelves")
		return false
	}
	n := 0
	for _, u := range in.spaces {
		for _, z := range in.fixed {
			s.shelfBoard(in, geom.Box{U: u, V: in.depth, Z: z}, numbered(n, piece{id: "fixed-shelf", code: "FS", name: "fixed shelf"}))
			n++
		}
	}
	return true
}

func (s *solver) shelfBoard(in *interior, box geom.Box, p piece) {
	p.out, p.face, p.grain, p.good = above, "top", model.GrainX, model.GoodDrawn
	s.panel(in.b, in.shelf.sheet, in.run.Frame, box, in.edged(p))
}

// item is where a list of a block says one of its values.
func (s *solver) item(b *lang.Block, name string, i int) source.Range {
	return s.Value(b, name).Items[i].At
}
