package solve

import (
	"slices"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/spacing"
	"barwright/lang/length"
	"barwright/lang/source"
)

// pins are the rows of holes that carry shelves: at the same heights on both
// sides of each space, a row to the rear and one to the front.
type pins struct {
	pitch, diameter, depth length.Length
	fromEnds               length.Length   // of the lowest hole from the bottom, and of the highest from what is above
	rear, front            length.Length   // of the rows, along v
	heights                []length.Length // of the holes' centres, rising
}

// pinsOf works the rows out; ok is false where they would have too many holes.
// None runs into a fixed shelf.
func (s *solver) pinsOf(in *interior) (p pins, ok bool) {
	is := func(field string) length.Length { return s.FieldLength(in.block, "pins", field) }
	p = pins{
		pitch: is("pitch"), diameter: is("diameter"), depth: is("depth"), fromEnds: is("from_ends"),
		rear: in.inside.V.Lo + is("from_back"), front: in.inside.V.Hi - is("from_front"),
	}
	first, last := in.clear.Lo+p.fromEnds, in.clear.Hi-p.fromEnds
	if n := int((last-first)/p.pitch+1) * len(in.spaces); last >= first && n > mostPieces {
		s.tooMany(in.at("pins"), n, "pairs of holes for pins")
		return p, false
	}
	for z := first; z <= last; z += p.pitch { // on a pitch, not even: what is left over is left at the top
		hole := geom.About(z, p.diameter)
		if !slices.ContainsFunc(in.fixed, hole.Overlaps) {
			p.heights = append(p.heights, z)
		}
	}
	return p, true
}

// shelves puts shelves on pins into each space: as even as the holes allow, in
// its largest clear height.
func (s *solver) shelves(in *interior) {
	count := s.Count(in.b, "shelves")
	if count == 0 {
		return
	}
	p, ok := s.pinsOf(in)
	play := s.FieldLength(in.block, "shelf", "play")
	depth := geom.Span{Lo: in.depth.Lo + play, Hi: in.depth.Hi}
	if !ok || !s.soundPins(in, &p, play, depth) {
		return
	}
	room := in.tallest()
	levels := p.levels(room, in.shelf.t, count)
	if levels == nil {
		s.shelvesFindNoRoom(in, &p, room, count)
		return
	}
	for i, u := range in.spaces {
		for j, z := range levels {
			box := geom.Box{U: u.Grow(-play), V: depth, Z: geom.Span{Lo: z, Hi: z + in.shelf.t}}
			s.shelfBoard(in, box, numbered(i*count+j, piece{id: "shelf", code: "SH", name: "shelf"}))
		}
		s.bore(in, &p, i)
	}
	s.fit(in.block, "pins", model.Fitted{Kind: "shelf pin", Count: 4 * count * len(in.spaces), Use: "shelves of cabinet " + in.b.Name, Why: why(in.b)})
}

// soundPins refuses holes that come through their board or meet those from its
// other face, and rows that find no room or carry no shelf.
func (s *solver) soundPins(in *interior, p *pins, play length.Length, depth geom.Span) bool {
	at, t := in.at("pins"), in.board.t
	most, text := t, "The holes for pins are %s deep, but their board is %s thick: they would come through."
	if len(in.spaces) > 1 {
		most, text = t/2, "The holes for pins are %s deep from both faces of a divider, which is %s thick: they would meet."
	}
	if p.depth >= most {
		s.Findings.Errorf("pins-too-deep", at, "pins = { depth = … } under "+s.Show(most), text, s.Show(p.depth), s.Show(t)).Also(in.b.Head, "the cabinet")
		return false
	}
	rows := geom.Span{Lo: p.rear - p.diameter/2, Hi: p.front + p.diameter/2}
	carried := geom.Span{Lo: max(depth.Lo, in.inside.V.Lo+in.play), Hi: depth.Hi - in.band}
	narrow := slices.IndexFunc(in.spaces, func(u geom.Span) bool { return u.Size() <= 2*play })
	stop := func(at source.Range, mend, format string, args ...any) bool {
		s.Findings.Errorf("pins-find-no-room", at, mend, format, args...).Also(in.b.Head, "the cabinet")
		return false
	}
	switch asked := in.b.Attr("shelves").Expr.At; {
	case p.diameter >= p.pitch:
		return stop(at, "a larger pitch", "The holes for pins are %s across and %s from centre to centre: they would run into one another.", s.Show(p.diameter), s.Show(p.pitch))
	case p.fromEnds < p.diameter-p.diameter/2:
		return stop(at, "a larger from_ends", "The holes for pins are %s across, and the lowest has its centre %s above the bottom: it would run into it.", s.Show(p.diameter), s.Show(p.fromEnds))
	case p.front-p.rear <= p.diameter || !carried.Contains(rows):
		return stop(at, "other values of from_front and from_back", "The rows of pins stand %s and %s before the rear edges, but a shelf lies from %s to %s: it would not lie on both.",
			s.Show(p.rear), s.Show(p.front), s.Show(carried.Lo), s.Show(carried.Hi))
	case narrow >= 0:
		return stop(asked, "less play, or a wider space", "A space of %s is %s wide, and a shelf has %s of play at either end: nothing is left of it.",
			in.b.Describe(), s.Show(in.spaces[narrow].Size()), s.Show(play))
	case len(p.heights) == 0:
		return stop(asked, "a smaller from_ends of the pins", "In %s %s of height are clear: no hole is as far from bottom and top as the pins want it.", in.b.Describe(), s.Show(in.clear.Size()))
	}
	return true
}

// tallest is the largest clear height between bottom, fixed shelves and top,
// the lowest of equals.
func (in *interior) tallest() geom.Span {
	best, from := geom.Span{}, in.clear.Lo
	for _, z := range slices.Concat(in.fixed, []geom.Span{{Lo: in.clear.Hi}}) {
		if room := (geom.Span{Lo: from, Hi: z.Lo}); room.Size() > best.Size() {
			best = room
		}
		from = z.Hi
	}
	return best
}

// levels are the undersides of n shelves of a thickness in a clear height: each
// lies on the pins whose holes are nearest to where even spaces would put them.
// There are none where less than a pitch would be clear over or under one.
func (p *pins) levels(room geom.Span, thick length.Length, n int) []length.Length {
	if n > len(p.heights) {
		return nil
	}
	// Boards with even clear heights between them are things without a thickness
	// in a stretch that is shorter by all their thicknesses.
	room.Hi -= length.Length(n) * thick
	placed, refusal := spacing.Place(spacing.Ask{Stretch: room, Count: n + 2})
	if refusal != nil {
		return nil
	}
	room.Hi += length.Length(n) * thick
	half := p.diameter / 2
	out := make([]length.Length, n)
	under := room.Lo
	for i := range out {
		even := placed.Centres[i+1] + length.Length(i)*thick
		out[i] = spacing.Nearest(p.heights, even-half) + half
		if out[i]-under < p.pitch {
			return nil
		}
		under = out[i] + thick
	}
	if room.Hi-under < p.pitch {
		return nil
	}
	return out
}

func (s *solver) shelvesFindNoRoom(in *interior, p *pins, room geom.Span, count int) {
	most := min(count-1, len(p.heights))
	for most > 0 && p.levels(room, in.shelf.t, most) == nil {
		most--
	}
	mend := "leave them out, or make more room"
	if most > 0 {
		mend = "shelves = " + strconv.Itoa(most)
	}
	s.Findings.Errorf("shelves-find-no-room", in.b.Attr("shelves").Expr.At, mend,
		"Shelves on pins are %s thick, and %s must be clear over and under each; in the %s of %s, evenly spread, the holes have room for %d of %d.",
		s.Show(in.shelf.t), s.Show(p.pitch), s.Show(room.Size()), in.b.Describe(), most, count)
}

// bore cuts the rows into the boards on both sides of a space. A divider is
// drawn from its right.
func (s *solver) bore(in *interior, p *pins, space int) {
	left, right, far := "divider-"+strconv.Itoa(space), "divider-"+strconv.Itoa(space+1), true
	if space == 0 {
		left = "side-left"
	}
	if space == len(in.spaces)-1 {
		right, far = "side-right", false
	}
	p.into(&s.m.Parts[s.partOf(in.b, left)], false, why(in.block))
	p.into(&s.m.Parts[s.partOf(in.b, right)], far, why(in.block))
}

// into bores both rows, the front one first, upwards.
func (p *pins) into(part *model.Part, far bool, w model.Why) {
	for _, v := range []length.Length{p.front, p.rear} {
		for _, z := range p.heights {
			part.Bores = append(part.Bores, model.Bore{
				Name: "shelf pin", At: on(part, 0, v, z), Diameter: p.diameter, Depth: p.depth, Far: far, Why: w,
			})
		}
	}
}
