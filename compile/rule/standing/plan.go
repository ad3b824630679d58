package standing

import (
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// spot is a point of the floor; its coordinates, in nanometres, are not rounded.
type spot struct{ x, y float64 }

// shape is a convex polygon of the floor.
type shape []spot

// sight is a frame with its directions worked out.
type sight struct {
	origin   spot
	sin, cos float64
}

func sightOf(f geom.Frame) sight {
	sin, cos := f.Turn.SinCos()
	return sight{spot{float64(f.Origin.X), float64(f.Origin.Y)}, sin, cos}
}

// at is the room's point of a frame's (u, v).
func (f sight) at(u, v float64) spot {
	return spot{
		f.origin.x + (float64(u*f.cos) - float64(v*f.sin)),
		f.origin.y + (float64(u*f.sin) + float64(v*f.cos)),
	}
}

// rectangle is what a box of a frame covers of the floor.
func rectangle(f geom.Frame, u, v geom.Span) shape {
	s := sightOf(f)
	return shape{
		s.at(float64(u.Lo), float64(v.Lo)), s.at(float64(u.Hi), float64(v.Lo)),
		s.at(float64(u.Hi), float64(v.Hi)), s.at(float64(u.Lo), float64(v.Hi)),
	}
}

// chords is how many straight pieces a quarter turn is made of: at a radius of a
// metre they leave out less than a tenth of a millimetre.
const chords = 64

// arc is the ends of the chords, of a circle of radius 1.
var arc = func() (out [chords + 1]spot) {
	for i := range out {
		out[i].y, out[i].x = (90 * geom.Degree * geom.Angle(i) / chords).SinCos()
	}
	return out
}()

// quarter is what a leaf sweeps that turns from along u to along v, about a point of
// a frame. Its reach is below 0 where it stands to the left of that point.
func quarter(f geom.Frame, u, v, reach length.Length) shape {
	s, x, y := sightOf(f), float64(u), float64(v)
	out := append(make(shape, 0, chords+2), s.at(x, y))
	along, far := float64(reach), math.Abs(float64(reach))
	for _, p := range arc {
		out = append(out, s.at(x+float64(along*p.x), y+float64(far*p.y)))
	}
	return out
}

// depth is how far two shapes run into one another: the least way that parts them. It
// is 0 or less where they only touch or are apart.
func depth(a, b shape) float64 {
	least := math.Inf(1)
	for _, poly := range []shape{a, b} {
		for i, p := range poly {
			q := poly[(i+1)%len(poly)]
			nx, ny := q.y-p.y, p.x-q.x
			size := math.Sqrt(float64(nx*nx) + float64(ny*ny))
			if size == 0 {
				continue
			}
			aLo, aHi := a.along(nx/size, ny/size)
			bLo, bHi := b.along(nx/size, ny/size)
			if least = min(least, aHi-bLo, bHi-aLo); least <= 0 {
				return least
			}
		}
	}
	return least
}

// along is the shape's extent in a direction, of length 1.
func (s shape) along(nx, ny float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range s {
		d := float64(p.x*nx) + float64(p.y*ny)
		lo, hi = min(lo, d), max(hi, d)
	}
	return lo, hi
}

// within is the extent along a frame's v of what lies in a span of its u. ok is false
// where nothing of the shape does.
func (s shape) within(f geom.Frame, u geom.Span) (lo, hi float64, ok bool) {
	sin, cos := f.Turn.SinCos()
	left := make(shape, len(s))
	for i, p := range s {
		x, y := p.x-float64(f.Origin.X), p.y-float64(f.Origin.Y)
		left[i] = spot{float64(x*cos) + float64(y*sin), float64(y*cos) - float64(x*sin)}
	}
	left = left.from(float64(u.Lo), 1).from(float64(u.Hi), -1)
	lo, hi = left.along(0, 1)
	return lo, hi, len(left) > 0
}

// from is what of a shape lies beyond x, to the right (side 1) or to the left (-1).
func (s shape) from(x, side float64) shape {
	var out shape
	for i, p := range s {
		q := s[(i+1)%len(s)]
		a, b := float64((p.x-x)*side), float64((q.x-x)*side)
		if a >= 0 {
			out = append(out, p)
		}
		if a > 0 && b < 0 || a < 0 && b > 0 {
			out = append(out, spot{x, p.y + float64((q.y-p.y)*(a/(a-b)))})
		}
	}
	return out
}

// bounds is the rectangle of the room that holds the shape.
func (s shape) bounds() (lo, hi spot) {
	lo.x, hi.x = s.along(1, 0)
	lo.y, hi.y = s.along(0, 1)
	return lo, hi
}

// ground finds what of many solids is near a place: a grid of the floor whose
// squares list what reaches into them.
type ground struct {
	solids []solid
	bounds [][2]spot        // of each
	square float64          // side of a square
	in     map[[2]int][]int // by square; lookup only
}

// mostSquares is how many squares a thing may be long.
const mostSquares = 256

func newGround(solids []solid) *ground {
	g := &ground{solids: solids, bounds: make([][2]spot, len(solids)), square: float64(length.Metre), in: map[[2]int][]int{}}
	for i := range solids {
		lo, hi := solids[i].plan.bounds()
		g.bounds[i] = [2]spot{lo, hi}
		g.square = max(g.square, (hi.x-lo.x)/mostSquares, (hi.y-lo.y)/mostSquares)
	}
	for i, b := range g.bounds {
		g.squares(b[0], b[1], func(at [2]int) { g.in[at] = append(g.in[at], i) })
	}
	return g
}

func (g *ground) squares(lo, hi spot, visit func([2]int)) {
	cell := func(x float64) int { return int(math.Floor(x / g.square)) }
	for x := cell(lo.x); x <= cell(hi.x); x++ {
		for y := cell(lo.y); y <= cell(hi.y); y++ {
			visit([2]int{x, y})
		}
	}
}

// near lists, in their order, the solids whose bounds meet those of one.
func (g *ground) near(s *solid) []int {
	var out []int
	lo, hi := s.plan.bounds()
	g.squares(lo, hi, func(at [2]int) {
		for _, i := range g.in[at] {
			if b := &g.bounds[i]; b[0].x <= hi.x && lo.x <= b[1].x && b[0].y <= hi.y && lo.y <= b[1].y {
				out = append(out, i)
			}
		}
	})
	slices.Sort(out)
	return slices.Compact(out)
}
