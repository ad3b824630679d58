package solve

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/spacing"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// Figures for holes in steel are common practice of the trade: from an edge one
// and a half diameters to the centre, three from centre to centre; a flat head
// is twice as wide as its screw.
const (
	headWidth = 2               // of the screw's diameter
	driver    = 1 * length.Inch // room that a driver takes beside what it drives along; common practice
	apartBy   = 3               // diameters of a hole
)

func fromEdge(hole length.Length) length.Length { return (3*hole + 1) / 2 }

// bored is a pattern of holes in a support.
type bored struct {
	name               string
	screw              *lang.Block
	count              int
	along              geom.Span     // of the steel's length where they may be, edges not counted
	fromStart, fromEnd length.Length // that a centre keeps from either end of that at least
	each               length.Length // how much longer than a hole a slot is
	far                bool
	beside             string // what bounds the stretch
}

// holes bores the supports: down through the tail into the plate, and from below
// through the reach into the bar top.
func (s *solver) holes(k *knee, g *steelwork) bool {
	down := bored{name: "screw down", screw: s.Ref(g.block, "screws"), count: s.Count(g.block, "screws_each"), along: geom.Span{Hi: g.tail}, beside: "on the wood"}
	up := bored{name: "screw up", screw: s.Ref(g.block, "top_screws"), count: s.Count(g.block, "top_screws_each"), far: true, beside: "beyond the wall, which leaves no room for a driver beside it"}
	up.along = geom.Span{Lo: g.tail + s.skinThickness(k.block, "room"), Hi: g.tail + g.reach}
	if s.solidTop(k) {
		up.each = 2 * s.Length(g.block, "movement")
	}
	for _, p := range []bored{down, up} {
		if p.screw == nil {
			continue
		}
		hole := s.Length(p.screw, "diameter") + s.Length(g.block, "hole")
		p.fromEnd = fromEdge(hole) + p.each/2
		p.fromStart = max(p.fromEnd, g.corner) // clear of the rounding, whatever lies across
		if p.far {
			p.fromStart = driver + p.each/2
		}
		at, refusal := p.pattern(g.width, hole, s.Marks)
		if refusal != nil {
			attr := g.block.Attr(map[bool]string{false: "screws", true: "top_screws"}[p.far])
			s.Findings.Errorf("no-room-for-holes", attr.Expr.At, "fewer or thinner screws, or larger steel",
				"%s of %s do not find room in %s of steel %s, %s from the edges and %s apart. %s",
				finding.Counted(p.count, "hole"), s.Show(hole), s.Show(p.along.Size()), p.beside, s.Show(fromEdge(hole)), s.Show(apartBy*hole+p.each), refusal.Text(s.Show))
			return false
		}
		for _, point := range at {
			g.bores = append(g.bores, model.Bore{
				Name: p.name, At: point, Diameter: hole, Far: p.far, Sink: headWidth * s.Length(p.screw, "diameter"),
				Slot: p.each, Across: p.each > 0, Why: why(g.block),
			})
		}
	}
	return true
}

// pattern spreads the holes evenly: in one row along the middle, or from four
// on in two where the steel is wide enough.
func (p *bored) pattern(width, hole, mark length.Length) ([]geom.Point, *spacing.Refusal) {
	rows, refusal := p.rows(2, width, hole, mark)
	if p.count < 4 || refusal != nil {
		if rows, refusal = p.rows(1, width, hole, mark); refusal != nil {
			return nil, refusal
		}
	}
	points, refusal := p.fill(rows, hole, mark)
	if refusal != nil && p.count > 1 && len(rows) == 1 {
		if two, none := p.rows(2, width, hole, mark); none == nil {
			points, refusal = p.fill(two, hole, mark)
		}
	}
	return points, refusal
}

// rows are the lines of holes across the steel.
func (p *bored) rows(n int, width, hole, mark length.Length) ([]length.Length, *spacing.Refusal) {
	edge := fromEdge(hole)
	placed, refusal := spacing.Place(spacing.Ask{
		Stretch: geom.Span{Hi: width}, Count: n, HalfEnds: true, Mirrored: true, Mark: mark, Least: apartBy * hole,
		Closed: closedEnds(geom.Span{Hi: width}, edge, edge, "the edges"),
	})
	return placed.Centres, refusal
}

// fill spreads the holes along each row.
func (p *bored) fill(rows []length.Length, hole, mark length.Length) ([]geom.Point, *spacing.Refusal) {
	var out []geom.Point
	left := p.count
	for i, x := range rows {
		n := (left + len(rows) - i - 1) / (len(rows) - i)
		left -= n
		placed, refusal := spacing.Place(spacing.Ask{
			Stretch: p.along, Count: n, HalfEnds: true, Mirrored: true, Mark: mark, Least: apartBy*hole + p.each, Closed: closedEnds(p.along, p.fromStart, p.fromEnd, "the edges"),
		})
		if refusal != nil {
			return nil, refusal
		}
		for _, y := range placed.Centres {
			out = append(out, geom.Point{X: x, Y: y})
		}
	}
	return out, nil
}

// closedEnds are closed to centres that must keep off the ends of a stretch.
func closedEnds(stretch geom.Span, lo, hi length.Length, by string) []spacing.Closed {
	return []spacing.Closed{
		{Span: geom.Span{Lo: stretch.Lo - 1, Hi: stretch.Lo + lo}, By: by},
		{Span: geom.Span{Lo: stretch.Hi - hi, Hi: stretch.Hi + 1}, By: by},
	}
}

// solidTop reports whether the bar top is of solid wood, which moves.
func (s *solver) solidTop(k *knee) bool {
	for _, b := range s.Source.Top("bar_top") {
		if s.Ref(b, "over") == k.block && s.Flag(s.Ref(b, "slab"), "solid") {
			return true
		}
	}
	return false
}
