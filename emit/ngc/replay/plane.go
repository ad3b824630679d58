package replay

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// spot is a point in plan, in mm.
type spot struct{ x, y float64 }

// stretch is a straight piece of a line in plan.
type stretch struct{ a, b spot }

func (s stretch) length() float64 { return math.Hypot(s.b.x-s.a.x, s.b.y-s.a.y) }

// along returns the point of a stretch at a share of its length.
func (s stretch) along(t float64) spot {
	return spot{s.a.x + float64(t*(s.b.x-s.a.x)), s.a.y + float64(t*(s.b.y-s.a.y))}
}

// sag is how far a straight piece may lie beside the arc that it stands for, in mm.
const sag = 0.001

// chords returns straight pieces for an arc.
func chords(from, to spot, cx, cy, sweep float64) []stretch {
	r := math.Hypot(from.x-cx, from.y-cy)
	n := max(1, math.Ceil(math.Abs(sweep)/(2*math.Acos(1-min(1, sag/r)))))
	start := math.Atan2(from.y-cy, from.x-cx)
	out := make([]stretch, 0, int(n))
	at := from
	for k := 1.0; k < n; k++ {
		angle := start + sweep*k/n
		next := spot{cx + r*math.Cos(angle), cy + r*math.Sin(angle)}
		out = append(out, stretch{at, next})
		at = next
	}
	return append(out, stretch{at, to})
}

// distance returns how far two stretches are apart; 0 where they cross.
func (s stretch) distance(o stretch) float64 {
	if s.crosses(o) {
		return 0
	}
	return min(s.to(o.a), s.to(o.b), o.to(s.a), o.to(s.b))
}

// to returns the distance to a point.
func (s stretch) to(p spot) float64 {
	foot := s.along(min(1, max(0, s.share(p))))
	return math.Hypot(foot.x-p.x, foot.y-p.y)
}

// share tells where the foot of a point lies, as a share of the stretch's length: 0
// at its start, and for a stretch of no length.
func (s stretch) share(p spot) float64 {
	dx, dy := s.b.x-s.a.x, s.b.y-s.a.y
	d := float64(dx*dx) + float64(dy*dy)
	if d == 0 {
		return 0
	}
	return (float64((p.x-s.a.x)*dx) + float64((p.y-s.a.y)*dy)) / d
}

func (s stretch) crosses(o stretch) bool {
	return s.side(o.a)*s.side(o.b) < 0 && o.side(s.a)*o.side(s.b) < 0
}

// side is positive for points to the left of the stretch.
func (s stretch) side(p spot) float64 {
	return (s.b.x-s.a.x)*(p.y-s.a.y) - (s.b.y-s.a.y)*(p.x-s.a.x)
}

// farther reports whether the boxes round two stretches are at least d apart.
func (s stretch) farther(o stretch, d float64) bool {
	return min(s.a.x, s.b.x)-max(o.a.x, o.b.x) >= d || min(o.a.x, o.b.x)-max(s.a.x, s.b.x) >= d ||
		min(s.a.y, s.b.y)-max(o.a.y, o.b.y) >= d || min(o.a.y, o.b.y)-max(s.a.y, s.b.y) >= d
}

// wood is what must stay: the stock without the recess and the reliefs of its
// corners, in plan.
type wood struct {
	stock  stretch     // a diagonal, from the low to the high corner
	rooms  [][]stretch // closed borders of what is cut: of the recess, and of each relief
	border []wall      // all round what must stay
}

// wall is a piece of the border of what must stay.
type wall struct {
	stretch
	round bool // stands for a piece of an arc
}

func woodOf(p *model.Program) *wood {
	w := &wood{stock: stretch{mm(geom.Point{X: p.Stock.X.Lo, Y: p.Stock.Y.Lo}), mm(geom.Point{X: p.Stock.X.Hi, Y: p.Stock.Y.Hi})}}
	rim := geom.RectContour(p.Stock)
	mouths := make([][]geom.Point, len(rim)) // their ends, by side of the stock
	var recess []stretch
	var walls []wall
	for i, v := range p.Shape {
		next := p.Shape[(i+1)%len(p.Shape)].Point
		if v.Bulge != 0 {
			a := geom.ArcOf(v, next)
			for _, piece := range chords(mm(v.Point), mm(next), a.CX/1e6, a.CY/1e6, a.Turn) {
				recess, walls = append(recess, piece), append(walls, wall{stretch: piece, round: true})
			}
			continue
		}
		edge := stretch{mm(v.Point), mm(next)}
		recess = append(recess, edge)
		if side, ok := sideWith(rim, v.Point, next); ok {
			mouths[side] = append(mouths[side], v.Point, next)
		} else {
			walls = append(walls, wall{stretch: edge})
		}
	}
	w.rooms, w.border = [][]stretch{recess}, walls
	for i, v := range rim {
		for _, s := range without(v.Point, rim[(i+1)%len(rim)].Point, mouths[i]) {
			w.border = append(w.border, wall{stretch: s})
		}
	}
	w.relieve(p.Reliefs, p.Tool.Diameter.MM()/2)
	return w
}

// sideWith finds the side of the stock that an edge lies on.
func sideWith(rim geom.Contour, a, b geom.Point) (side int, ok bool) {
	for i, v := range rim {
		w := rim[(i+1)%len(rim)]
		onX := v.X == w.X && a.X == v.X && b.X == v.X
		onY := v.Y == w.Y && a.Y == v.Y && b.Y == v.Y
		if onX || onY {
			return i, true
		}
	}
	return 0, false
}

// without returns what is left of a side of the stock beside the mouth of the
// recess. A recess is one piece: it has one mouth at a side, or none.
func without(from, to geom.Point, mouth []geom.Point) []stretch {
	if len(mouth) == 0 {
		return []stretch{{mm(from), mm(to)}}
	}
	var left []stretch
	if from != mouth[0] {
		left = append(left, stretch{mm(from), mm(mouth[0])})
	}
	if to != mouth[1] {
		left = append(left, stretch{mm(mouth[1]), mm(to)})
	}
	return left
}

// holds reports whether a point lies in the wood that must stay.
func (w *wood) holds(p spot) bool {
	if p.x <= w.stock.a.x || p.x >= w.stock.b.x || p.y <= w.stock.a.y || p.y >= w.stock.b.y {
		return false
	}
	for _, room := range w.rooms {
		if inside(room, p) {
			return false
		}
	}
	return true
}

// inside counts the border's crossings to the right of a point.
func inside(border []stretch, p spot) bool {
	in := false
	for _, s := range border {
		if (s.a.y <= p.y) != (s.b.y <= p.y) && s.a.x+(p.y-s.a.y)/(s.b.y-s.a.y)*(s.b.x-s.a.x) > p.x {
			in = !in
		}
	}
	return in
}

func mm(p geom.Point) spot { return spot{p.X.MM(), p.Y.MM()} }
