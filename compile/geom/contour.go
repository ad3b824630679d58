package geom

import (
	"barwright/lang/length"
	"math"
	"math/big"
)

// Vertex is a corner of a contour. Bulge is that of the edge that starts here:
// tan(angle/4) of its arc, positive when it turns counter-clockwise, 0 for a
// straight edge.
type Vertex struct {
	Point
	Bulge float64
}

// Contour is a closed line of straight edges and arcs; the last vertex joins
// the first, which is not repeated. Outer contours run counter-clockwise
// (x right, y up), holes clockwise.
type Contour []Vertex

// QuarterBulge is the bulge of a quarter circle, tan(22.5°).
const QuarterBulge = 0.41421356237309503

// RectContour returns the rectangle counter-clockwise from its lower left.
func RectContour(r Rect) Contour {
	return Contour{
		{Point{r.X.Lo, r.Y.Lo}, 0}, {Point{r.X.Hi, r.Y.Lo}, 0},
		{Point{r.X.Hi, r.Y.Hi}, 0}, {Point{r.X.Lo, r.Y.Hi}, 0},
	}
}

// RoundedContour returns the rectangle with all corners rounded, counter-clockwise.
func RoundedContour(r Rect, radius Length) Contour {
	if radius <= 0 {
		return RectContour(r)
	}
	x0, x1, y0, y1, q := r.X.Lo, r.X.Hi, r.Y.Lo, r.Y.Hi, radius
	return Contour{
		{Point{x0 + q, y0}, 0}, {Point{x1 - q, y0}, QuarterBulge},
		{Point{x1, y0 + q}, 0}, {Point{x1, y1 - q}, QuarterBulge},
		{Point{x1 - q, y1}, 0}, {Point{x0 + q, y1}, QuarterBulge},
		{Point{x0, y1 - q}, 0}, {Point{x0, y0 + q}, QuarterBulge},
	}
}

// CornersRounded returns the rectangle with each corner rounded by its own radius,
// counter-clockwise from the lower left one. Two that meet leave no side between them.
func CornersRounded(r Rect, radius [4]Length) Contour {
	at := [4]Point{{r.X.Lo, r.Y.Lo}, {r.X.Hi, r.Y.Lo}, {r.X.Hi, r.Y.Hi}, {r.X.Lo, r.Y.Hi}}
	way := [4]Point{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}}
	var c Contour
	for i := range at {
		next := (i + 1) % 4
		start := at[i].Add(Point{way[i].X * radius[i], way[i].Y * radius[i]})
		end := at[next].Sub(Point{way[i].X * radius[next], way[i].Y * radius[next]})
		if start != end {
			c = append(c, Vertex{Point: start})
		}
		if radius[next] > 0 {
			c = append(c, Vertex{Point: end, Bulge: QuarterBulge})
		}
	}
	return c
}

// CircleContour returns a full circle as two half arcs, counter-clockwise.
func CircleContour(centre Point, radius Length) Contour {
	return Contour{
		{Point{centre.X - radius, centre.Y}, 1},
		{Point{centre.X + radius, centre.Y}, 1},
	}
}

// Circle returns centre and radius where the contour is a full circle.
func (c Contour) Circle() (centre Point, radius Length, ok bool) {
	if len(c) != 2 || math.Abs(c[0].Bulge) != 1 || c[0].Bulge != c[1].Bulge || c[0].Y != c[1].Y {
		return Point{}, 0, false
	}
	left, right := min(c[0].X, c[1].X), max(c[0].X, c[1].X)
	radius = (right - left) / 2
	return Point{left + radius, c[0].Y}, radius, true
}

// Reversed returns the contour run the other way round.
func (c Contour) Reversed() Contour {
	n := len(c)
	out := make(Contour, n)
	for i := range c {
		// The edge that arrived at a vertex now leaves from it.
		out[n-1-i] = Vertex{c[i].Point, -c[(i+n-1)%n].Bulge}
	}
	return out
}

// Shifted returns the contour moved by d.
func (c Contour) Shifted(d Point) Contour {
	out := make(Contour, len(c))
	for i, v := range c {
		out[i] = Vertex{v.Point.Add(d), v.Bulge}
	}
	return out
}

// Bounds returns the least rectangle that holds the contour, crowns of arcs
// included. An empty contour has the zero Rect.
func (c Contour) Bounds() Rect {
	if len(c) == 0 {
		return Rect{}
	}
	if at, r, ok := c.Circle(); ok {
		return R(at.X-r, at.Y-r, at.X+r, at.Y+r)
	}
	b := R(c[0].X, c[0].Y, c[0].X, c[0].Y)
	for i, v := range c {
		b = b.Union(R(v.X, v.Y, v.X, v.Y))
		if v.Bulge != 0 {
			b = b.Union(arcBounds(v, c[(i+1)%len(c)].Point))
		}
	}
	return b
}

// Arc is the circle of an arc edge; angles are radians from +x towards +y.
type Arc struct {
	CX, CY, R   float64 // nanometres
	Start, Turn float64 // Turn is positive counter-clockwise
}

// ArcOf returns the arc from v to the next point. v.Bulge must not be 0.
func ArcOf(v Vertex, to Point) Arc {
	dx, dy := float64(to.X-v.X), float64(to.Y-v.Y)
	b := v.Bulge
	k := (1 - float64(b*b)) / (4 * b)
	cx := float64(v.X) + dx/2 - float64(dy*k)
	cy := float64(v.Y) + dy/2 + float64(dx*k)
	return Arc{
		CX: cx, CY: cy,
		R:     math.Hypot(float64(v.X)-cx, float64(v.Y)-cy),
		Start: math.Atan2(float64(v.Y)-cy, float64(v.X)-cx),
		Turn:  4 * math.Atan(b),
	}
}

// chordTurn is the turn of the chords that stand for an arc; on a radius of 100 mm
// they are 0.1 mm inside of it.
const chordTurn = 5 * math.Pi / 180

// flatBulge is the bulge below which an arc is straight: across a kilometre its
// crown is less than a nanometre high.
const flatBulge = 1e-12

// Chords returns the contour's corners, and between the ends of each arc others on
// it, one each 5 degrees at least.
func (c Contour) Chords() []Point {
	out := make([]Point, 0, len(c))
	return c.AppendChords(out)
}

// AppendChords appends what Chords returns.
func (c Contour) AppendChords(dst []Point) []Point {
	return c.AppendPieces(dst, func(a Arc) float64 { return max(2, math.Ceil(math.Abs(a.Turn)/chordTurn)) })
}

// AppendPieces appends the contour's corners, and on each arc others that part it into as
// many pieces as are asked for.
func (c Contour) AppendPieces(dst []Point, pieces func(Arc) float64) []Point {
	for i, v := range c {
		dst = append(dst, v.Point)
		if math.Abs(v.Bulge) < flatBulge {
			continue
		}
		arc := ArcOf(v, c[(i+1)%len(c)].Point)
		for k, n := 1.0, pieces(arc); k < n; k++ {
			sin, cos := math.Sincos(arc.Start + float64(arc.Turn*k/n))
			dst = append(dst, Point{
				X: Length(math.Round(arc.CX + float64(arc.R*cos))),
				Y: Length(math.Round(arc.CY + float64(arc.R*sin))),
			})
		}
	}
	return dst
}

func arcBounds(v Vertex, to Point) Rect {
	a := ArcOf(v, to)
	b := R(v.X, v.Y, v.X, v.Y)
	for q := range 4 {
		along := float64(q)*math.Pi/2 - a.Start
		if a.Turn < 0 {
			along = -along
		}
		along = math.Mod(along+4*math.Pi, 2*math.Pi)
		if along > math.Abs(a.Turn)+1e-12 {
			continue
		}
		dx := [...]float64{1, 0, -1, 0}[q]
		dy := [...]float64{0, 1, 0, -1}[q]
		x := Length(math.Round(a.CX + float64(a.R*dx)))
		y := Length(math.Round(a.CY + float64(a.R*dy)))
		b = b.Union(R(x, y, x, y))
	}
	return b
}

// Area returns the enclosed area in mm², positive when the contour runs
// counter-clockwise. The straight part is exact before its last rounding.
func (c Contour) Area() float64 {
	twice, term := new(big.Int), new(big.Int)
	arcs := 0.0
	for i, v := range c {
		w := c[(i+1)%len(c)]
		term.Mul(big.NewInt(int64(v.X)), big.NewInt(int64(w.Y)))
		twice.Add(twice, term)
		term.Mul(big.NewInt(int64(v.Y)), big.NewInt(int64(w.X)))
		twice.Sub(twice, term)
		if v.Bulge != 0 {
			a := ArcOf(v, w.Point)
			r := a.R / 1e6
			arcs += float64(r*r) / 2 * (a.Turn - math.Sin(a.Turn))
		}
	}
	straight, _ := new(big.Rat).SetFrac(twice, big.NewInt(2e12)).Float64()
	return straight + arcs
}

// Rounding returns the radius of the contour's round corners: 0 where none is
// round; ok is false where they differ by more than the noise of arcs.
func (c Contour) Rounding() (radius Length, ok bool) {
	const noise = 100 // nm
	for i, v := range c {
		if v.Bulge == 0 {
			continue
		}
		r := Length(math.Round(ArcOf(v, c[(i+1)%len(c)].Point).R))
		if radius != 0 && length.Apart(r, radius) > noise {
			return 0, false
		}
		if radius == 0 {
			radius = r
		}
	}
	return radius, true
}
