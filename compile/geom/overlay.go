package geom

import (
	"math"
	"slices"

	sf "github.com/peterstace/simplefeatures/geom"
)

// Difference removes shapes from a blank and returns the outlines of what is
// left, as Cut does. All edges are straight and all shapes simple. ok is false
// where it finds no answer: floats cannot tell apart what a blank many thousand
// million times as long as wide has in it.
//
// Where every edge runs along an axis, the result has only coordinates of the
// input. Otherwise corners where two edges cross are rounded to the nanometre.
//
// The overlay is simplefeatures'. It reckons in floats and now and then loses a
// piece of a shape that other cuts have parted already, so its answer is not
// taken on trust: each step's areas must add up, and each corner must be one
// that the input can give. An answer that fails is asked for in another order.
func Difference(blank Contour, cuts []Contour) (left []Contour, ok bool) {
	for first := range max(1, len(cuts)) {
		if rest, ok := subtract(blank, slices.Concat(cuts[first:], cuts[:first])); ok {
			if out, ok := outlines(rest, append([]Contour{blank}, cuts...)); ok {
				return out, true
			}
		}
	}
	return nil, false
}

// dust is the share of an area that floats may lose.
const dust = 1e-12

func subtract(blank Contour, cuts []Contour) (left sf.Geometry, ok bool) {
	left = polygon(blank).AsGeometry()
	for _, c := range cuts {
		cut := polygon(c).AsGeometry()
		rest, err := sf.Difference(left, cut)
		if err != nil {
			return left, false
		}
		taken, err := sf.Intersection(left, cut)
		if err != nil || math.Abs(rest.Area()+taken.Area()-left.Area()) > dust*left.Area() {
			return left, false
		}
		left = rest
	}
	return left, true
}

func polygon(c Contour) sf.Polygon {
	xy := make([]float64, 0, 2*len(c)+2)
	for _, v := range append(slices.Clone(c), c[0]) {
		xy = append(xy, float64(v.X), float64(v.Y))
	}
	return sf.NewPolygon([]sf.LineString{sf.NewLineString(sf.NewSequence(xy, sf.DimXY))})
}

// outlines turns the rings of an overlay into contours; ok is false where a
// corner is none that the input can give.
func outlines(g sf.Geometry, input []Contour) (out []Contour, ok bool) {
	allowed := newInputs(input)
	for _, part := range g.Dump() {
		if part.Type() != sf.TypePolygon {
			continue // what the shapes only touch along
		}
		var whole []Contour
		for i, ring := range part.MustAsPolygon().DumpRings() {
			c, ok := allowed.ring(ring.Coordinates())
			if !ok {
				return nil, false
			}
			if len(c) == 0 {
				continue
			}
			if outer := i == 0; c.Area() > 0 != outer {
				c = c.Reversed()
			}
			if i > 0 && joined(whole, c) {
				continue
			}
			whole = append(whole, c)
		}
		out = append(out, whole...)
	}
	for i := range out {
		out[i] = fromLowest(out[i])
	}
	slices.SortFunc(out, func(a, b Contour) int { return compare(a[0].Point, b[0].Point) })
	return out, true
}

// joined takes a hole into the outline that it touches at a corner.
func joined(outlines []Contour, hole Contour) bool {
	if len(outlines) == 0 {
		return false
	}
	for i, v := range outlines[0] {
		j := slices.IndexFunc(hole, func(w Vertex) bool { return w.Point == v.Point })
		if j >= 0 {
			outlines[0] = slices.Concat(outlines[0][:i+1], hole[j+1:], hole[:j+1], outlines[0][i+1:])
			return true
		}
	}
	return false
}

// inputs are the shapes of an overlay: what its corners may come from.
type inputs struct {
	points []Point
	edges  [][2]Point
	square bool     // all edges run along an axis:
	xs, ys []Length // then these are all coordinates
}

func newInputs(input []Contour) *inputs {
	k := &inputs{square: true}
	for _, c := range input {
		for i, v := range c {
			w := c[(i+1)%len(c)]
			k.points, k.edges = append(k.points, v.Point), append(k.edges, [2]Point{v.Point, w.Point})
			k.xs, k.ys = append(k.xs, v.X), append(k.ys, v.Y)
			k.square = k.square && (v.X == w.X || v.Y == w.Y)
		}
	}
	return k
}

// ring rounds a ring and drops the points where it runs straight on: the
// overlay leaves some of its own along straight edges.
func (k *inputs) ring(seq sf.Sequence) (Contour, bool) {
	var c Contour
	for i := range seq.Length() - 1 {
		xy := seq.GetXY(i)
		p := k.nearest(Point{Length(math.Round(xy.X)), Length(math.Round(xy.Y))})
		if len(c) == 0 || c[len(c)-1].Point != p {
			c = append(c, Vertex{Point: p})
		}
	}
	for i := 0; i < len(c) && len(c) > 2; {
		n := len(c)
		before, after := c[(i+n-1)%n].Point, c[(i+1)%n].Point
		if before == c[i].Point || k.straight(before, c[i].Point, after) {
			c = slices.Delete(c, i, i+1)
			i = max(i-1, 0)
			continue
		}
		i++
	}
	if len(c) < 3 {
		return nil, true
	}
	return c, !slices.ContainsFunc(c, func(v Vertex) bool { return !k.allows(v.Point) })
}

// nearest is a corner of the input that is no more than rounding away, or the
// point itself.
func (k *inputs) nearest(p Point) Point {
	if k.square {
		return p
	}
	for _, q := range k.points {
		if d := p.Sub(q); max(d.X, -d.X, d.Y, -d.Y) <= 1 {
			return q
		}
	}
	return p
}

func (k *inputs) straight(a, p, b Point) bool {
	if a.X == p.X && p.X == b.X || a.Y == p.Y && p.Y == b.Y {
		return true
	}
	return !k.square && !slices.Contains(k.points, p) && offLine(p, a, b) < 1
}

// allows reports whether the overlay of the input may turn at a point: at a
// corner of it, or where two of its edges cross.
func (k *inputs) allows(p Point) bool {
	if k.square {
		return slices.Contains(k.xs, p.X) && slices.Contains(k.ys, p.Y)
	}
	if slices.Contains(k.points, p) {
		return true
	}
	on := 0
	for _, e := range k.edges {
		if offLine(p, e[0], e[1]) < 1 {
			on++
		}
	}
	return on >= 2
}

// offLine is how far a point lies off the line through two others.
func offLine(p, a, b Point) float64 {
	ab, ap := b.Sub(a), p.Sub(a)
	x, y := float64(ab.X), float64(ab.Y)
	return math.Abs(float64(x*float64(ap.Y))-float64(y*float64(ap.X))) / math.Hypot(x, y)
}
