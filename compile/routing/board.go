package routing

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// board is a part as it lies on the machine.
type board struct {
	tool   model.Tool
	radius Length // of the bit, rounded up: it never comes closer to a wall than it may
	also   *model.Also
	part   *model.Part
	thick  Length
	far    bool // the face behind the drawn one is up
	blank  bool // it is cut out of a blank
	shift  geom.Point
	width  Length // of the part as drawn, about which it is turned over
	stock  geom.Rect
	show   func(Length) string
}

// lay lays a part down: with its lower left corner at X0 Y0, or in a blank that is larger
// all round and has its corner there.
func lay(r *Request, part *model.Part, far, blank bool) *board {
	b := &board{
		tool: r.Tool, radius: (r.Tool.Diameter + 1) / 2, also: &r.Also, show: r.Show,
		part: part, thick: part.Thickness, far: far, blank: blank,
	}
	box := part.Outline.Bounds()
	b.shift, b.width = geom.Point{X: -box.X.Lo, Y: -box.Y.Lo}, box.X.Size()
	b.stock = box.Shift(b.shift)
	if blank {
		margin := b.margin()
		b.shift = b.shift.Add(geom.Point{X: margin, Y: margin})
		b.stock = b.stock.Shift(geom.Point{X: margin, Y: margin}).Grow(margin)
	}
	return b
}

// margin is how much larger a blank is on each side: the cut, and the room beside it.
func (b *board) margin() Length { return b.tool.Diameter + b.tool.Finish + b.also.Room }

// through is how deep cuts go that go through.
func (b *board) through() Length { return b.thick + b.also.Under }

// point returns where a point of the part as drawn lies.
func (b *board) point(p geom.Point) geom.Point {
	p = p.Add(b.shift)
	if b.far {
		p.X = b.width - p.X
	}
	return p
}

// contour returns a contour of the part as it lies, counter-clockwise.
func (b *board) contour(c geom.Contour) geom.Contour {
	out := make(geom.Contour, len(c))
	for i, v := range c {
		out[i] = geom.Vertex{Point: b.point(v.Point), Bulge: v.Bulge}
		if b.far {
			out[i].Bulge = -v.Bulge
		}
	}
	return leftward(out)
}

// relief is a bore that clears a corner, and the point before it where the bit touches both
// walls.
type relief struct{ bore, wall geom.Point }

// spare is how far a bore that relieves a corner stays from anything else that is cut.
const spare = length.Millimetre / 10

// square is the cosine of a turn below which it is taken for a right angle.
const square = 1e-3

// bores places a bore of the bit's size at each sharp inside corner, where the router is
// told to relieve them, so that its edge passes through the corner. A corner of less than
// a right angle stays: on its way the bit would cut more than the bore. One of more is
// relieved along the diagonal.
func (b *board) bores(kind, name string, c geom.Contour) (map[geom.Point]relief, *Left) {
	if b.tool.Relief != "diagonal" && b.tool.Relief != "long_side" {
		return nil, nil
	}
	bores := map[geom.Point]relief{} // by corner; lookup only
	es := edges(c)
	for i := range es {
		before, e := &es[(i+len(es)-1)%len(es)], &es[i]
		cos := before.end.dot(e.start)
		if before.round || e.round || meeting(before, e) != inside || cos < -square {
			continue
		}
		along := e.start
		switch {
		case b.tool.Relief == "diagonal" || cos > square:
			x, y := e.start.x-before.end.x, e.start.y-before.end.y
			along = heading{x / norm(x, y), y / norm(x, y)}
		case before.long() > e.long():
			along = before.end.opposite()
		}
		bore := along.onward(e.from, float64(b.radius))
		if !b.free(bore, e.from) {
			return nil, b.noRelief(kind, name)
		}
		wall := before.end.left().onward(e.from, float64(b.radius))
		bores[e.from] = relief{bore, before.end.onward(wall, -float64(b.radius)*before.end.half(e.start))}
	}
	if !apart(c, bores) {
		return nil, b.noRelief(kind, name)
	}
	return bores, nil
}

// free reports whether a bore at a corner stays clear of all that is cut in the part, the
// two edges aside that meet there.
func (b *board) free(bore, at geom.Point) bool {
	p := b.part
	all := []geom.Contour{p.Outline}
	for i := range p.Openings {
		if !p.Openings[i].Notch {
			all = append(all, p.Openings[i].Shape)
		}
	}
	for i := range p.Recesses {
		all = append(all, p.Recesses[i].Shape)
	}
	for i := range p.Bores {
		all = append(all, p.Bores[i].Shape())
	}
	corner := barOf(at, at)
	for _, c := range all {
		for _, border := range bars(b.contour(c)) {
			if border.ax == corner.ax && border.ay == corner.ay || border.bx == corner.ax && border.by == corner.ay {
				continue
			}
			if border.from(float64(bore.X), float64(bore.Y)) < float64(b.radius+spare) {
				return false
			}
		}
	}
	return true
}

// box returns a contour's box and the radius of its corners where it is a rectangle, its
// corners square or all as round.
func box(c geom.Contour) (r geom.Rect, round Length, ok bool) {
	const noise = 100 // nm, of arcs
	r = c.Bounds()
	round, ok = c.Rounding()
	if !ok || 2*round > min(r.X.Size(), r.Y.Size())+noise {
		return r, 0, false
	}
	round = min(round, r.X.Size()/2, r.Y.Size()/2)
	want := geom.CornersRounded(r, [4]Length{round, round, round, round}).Area()
	return r, round, math.Abs(want-math.Abs(c.Area())) < 1e-3 && len(c) <= 8
}
