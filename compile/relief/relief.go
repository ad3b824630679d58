// Package relief clears inside corners for a round bit, so that something square goes
// in. It takes parts with sharp corners and gives them a half round in each, by the
// diameter of the bit; and it tells where there is no room for one.
package relief

import (
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// Length is the measure of parts and bits.
type Length = model.Length

// Ways to clear a corner. On the diagonal the bit's centre lies on the bisector, as far
// from the corner as its edge: at 0.707 of its radius from both sides of a right angle.
// On the long side the bit goes on along the longer of the two sides, into the shorter,
// on which its centre lies; of equal ones that is the second as the contour runs.
const (
	Diagonal = "diagonal"
	LongSide = "long_side"
)

// Cleared is a part with its inside corners cleared, and how many of them.
type Cleared struct {
	Part                        *model.Part
	Outline, Openings, Recesses int
	Left                        []model.Recess // whose ends are too narrow: their corners stay
}

// Part clears a part's inside corners: those of openings, of notches and wherever else
// something square stands in the outline, and those of recesses but for those where they
// run out over an edge or end at an opening. Corners that are round stay as they are, and
// so do recesses that the router cuts, and ends of grooves that are too narrow for it.
func Part(p *model.Part, way string, bit Length) Cleared {
	out := *p
	out.Openings, out.Recesses = slices.Clone(p.Openings), slices.Clone(p.Recesses)
	c := Cleared{Part: &out}
	for _, l := range loops(p, way, bit) {
		shape, n := clear(l, way, bit)
		switch l.kind {
		case outline:
			out.Outline, c.Outline = shape, n
		case opening:
			out.Openings[l.index].Shape = shape
			c.Openings += n
		case recess:
			out.Recesses[l.index].Shape = shape
			c.Recesses += n
		}
		if l.narrow {
			c.Left = append(c.Left, p.Recesses[l.index])
		}
	}
	return c
}

type loopKind int

const (
	outline loopKind = iota
	opening
	recess
	bore
)

// loop is a contour of a part. inside tells its corners that are cleared.
type loop struct {
	kind   loopKind
	index  int
	name   string
	shape  geom.Contour
	depth  Length // 0: through
	far    bool   // cut from the face behind
	inside []bool
	narrow bool // corners at the end of a groove stay: it is too narrow for them
}

// loops lists the contours of a part: its outline, openings, recesses and bores.
func loops(p *model.Part, way string, bit Length) []loop {
	corners := map[geom.Point]bool{} // that something square stands in; lookup only
	for _, corner := range p.Filled {
		corners[corner] = true
	}
	all := []loop{{kind: outline, shape: p.Outline}}
	for i, o := range p.Openings {
		if !o.Notch {
			all = append(all, loop{kind: opening, index: i, name: o.Name, shape: o.Shape, inside: sharp(o.Shape, 1)})
			continue
		}
		for _, v := range o.Shape {
			corners[v.Point] = true
		}
	}
	all[0].inside = sharp(p.Outline, -1)
	for i, v := range p.Outline {
		all[0].inside[i] = all[0].inside[i] && corners[v.Point]
	}
	for i, r := range p.Recesses {
		l := loop{kind: recess, index: i, name: r.Name, shape: r.Shape, depth: r.Depth, inside: make([]bool, len(r.Shape))}
		if !r.Routed {
			l.inside = sharp(r.Shape, 1)
		}
		groove := len(r.Open) > 0 || slim(r.Shape.Bounds())
		for k, v := range r.Shape {
			cutOff := atOpening(p, v.Point)
			l.inside[k] = l.inside[k] && !atOpenEdge(&r, v.Point) && !cutOff
			groove = groove || cutOff
		}
		if groove {
			l.leaveNarrowEnds(way, bit)
		}
		all = append(all, l)
	}
	for i := range p.Bores {
		b := &p.Bores[i]
		all = append(all, loop{kind: bore, index: i, name: b.Name, shape: b.Shape(), depth: b.Depth, far: b.Far && !b.Through()})
	}
	return all
}

// slim reports whether a recess is a groove even where it is closed all round: it is four
// times as long as wide.
func slim(r geom.Rect) bool {
	x, y := r.X.Size(), r.Y.Size()
	return max(x, y) >= 4*min(x, y)
}

// leaveNarrowEnds leaves the corners of a groove where it ends in the wood and is too
// narrow for two of them.
func (l *loop) leaveNarrowEnds(way string, bit Length) {
	was := slices.Clone(l.inside)
	for i := range l.shape {
		k := (i + 1) % len(l.shape)
		if !was[i] || !was[k] {
			continue
		}
		_, on := sides(l.shape, i)
		if cutAt(l.shape, i, way, bit).take+cutAt(l.shape, k, way, bit).takeBack+least > on.long {
			l.inside[i], l.inside[k], l.narrow = false, false, true
		}
	}
}

// atOpenEdge reports whether a corner of a recess lies on an edge that it runs out over.
func atOpenEdge(r *model.Recess, at geom.Point) bool {
	b := r.Shape.Bounds()
	return slices.ContainsFunc(r.Open, func(e model.Edge) bool {
		return [...]bool{
			model.Bottom: at.Y == b.Y.Lo, model.RightEdge: at.X == b.X.Hi,
			model.Top: at.Y == b.Y.Hi, model.LeftEdge: at.X == b.X.Lo,
		}[e]
	})
}

// noWood is how near an opening a corner of a recess has no wood beside it, in
// nanometres. A recess that a round opening cuts off ends a little beside it.
const noWood = 2e5

// atOpening reports whether a corner of a recess lies where an opening has cut it off.
func atOpening(p *model.Part, at geom.Point) bool {
	for i := range p.Openings {
		points := p.Openings[i].Shape.Chords()
		for k, from := range points {
			if geom.FromLine(float64(at.X), float64(at.Y), from, points[(k+1)%len(points)]) <= noWood {
				return true
			}
		}
	}
	return false
}

// sharp tells which corners between two straight edges turn as the contour runs, or for
// sense -1 the other way.
func sharp(c geom.Contour, sense float64) []bool {
	sense = math.Copysign(sense, sense*c.Area())
	out := make([]bool, len(c))
	for i := range c {
		before := c[(i+len(c)-1)%len(c)]
		out[i] = before.Bulge == 0 && c[i].Bulge == 0 && turn(c, i)*sense > 0
	}
	return out
}

// turn is the sine of the angle by which the contour turns at a corner, positive to the left.
func turn(c geom.Contour, i int) float64 {
	back, on := sides(c, i)
	return float64(back.y*on.x) - float64(back.x*on.y)
}

// side is the way from a corner along one of its edges: a unit vector, and how long the
// edge is in nanometres.
type side struct{ x, y, long float64 }

func sides(c geom.Contour, i int) (back, on side) {
	to := func(q geom.Point) side {
		d := q.Sub(c[i].Point)
		long := math.Hypot(float64(d.X), float64(d.Y))
		return side{float64(d.X) / long, float64(d.Y) / long, long}
	}
	n := len(c)
	return to(c[(i+n-1)%n].Point), to(c[(i+1)%n].Point)
}

func (s side) from(p geom.Point, by float64) geom.Point {
	return p.Add(geom.Point{X: Length(math.Round(s.x * by)), Y: Length(math.Round(s.y * by))})
}

// cut is the bit in a corner: its centre, how much it takes of both edges from the
// corner on, and the bulge of its arc, for a corner that turns left.
type cut struct {
	loop, corner   int
	cx, cy         float64 // nanometres
	takeBack, take float64
	bulge          float64
}

func cutAt(c geom.Contour, i int, way string, bit Length) cut {
	back, on := sides(c, i)
	x, y, r := float64(c[i].X), float64(c[i].Y), float64(bit)/2
	if way == LongSide {
		k := cut{corner: i, take: 2 * r, bulge: 1}
		along := on
		if back.long < on.long {
			k.take, k.takeBack, along = 0, 2*r, back
		}
		k.cx, k.cy = x+float64(along.x*r), y+float64(along.y*r)
		return k
	}
	cos := float64(back.x*on.x) + float64(back.y*on.y)
	half, sine := math.Sqrt((1+cos)/2), math.Sqrt((1-cos)/2) // of half the angle
	bx, by := back.x+on.x, back.y+on.y
	long := math.Hypot(bx, by)
	take := 2 * r * half
	return cut{corner: i, cx: x + float64(bx/long*r), cy: y + float64(by/long*r), takeBack: take, take: take, bulge: half / sine}
}

// clear returns a loop's shape with its inside corners cleared, and how many they are.
func clear(l loop, way string, bit Length) (out geom.Contour, n int) {
	if !slices.Contains(l.inside, true) {
		return l.shape, 0
	}
	for i, v := range l.shape {
		if !l.inside[i] {
			out = append(out, v)
			continue
		}
		n++
		k := cutAt(l.shape, i, way, bit)
		back, on := sides(l.shape, i)
		out = append(out,
			geom.Vertex{Point: back.from(v.Point, k.takeBack), Bulge: math.Copysign(k.bulge, turn(l.shape, i))},
			geom.Vertex{Point: on.from(v.Point, k.take)})
	}
	return out, n
}
