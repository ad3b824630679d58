package cordway

import (
	"math"
	"math/rand"
	"testing"

	"barwright/compile/geom"
	"barwright/lang/length"
)

const inch = length.Inch

// inFeet is a box of whole feet from one corner to another.
func inFeet(u0, u1, v0, v1, z0, z1 int) geom.Box {
	foot := func(n int) geom.Length { return geom.Length(n) * 12 * inch }
	return geom.Box{U: geom.Span{Lo: foot(u0), Hi: foot(u1)}, V: geom.Span{Lo: foot(v0), Hi: foot(v1)}, Z: geom.Span{Lo: foot(z0), Hi: foot(z1)}}
}

// bendsOff is what bends off their edges, by two thousandths of a millimetre each
// way, may add to a way of two bends, in feet.
const bendsOff = 4e-5

// TestShortestByHand has ways that unfold into one plane, worked out by hand.
// All are in feet; the rims are 1 long along u. However the scene is turned, the way
// stays as long.
func TestShortestByHand(t *testing.T) {
	for _, c := range []struct {
		name     string
		from, to geom.Box
		barriers []geom.Box
		want     float64
	}{
		// 3 across, 4 up.
		{"straight", inFeet(0, 1, 0, 0, 0, 0), inFeet(0, 1, 3, 3, 4, 4), nil, 5},
		// A long wall 3 high and 1 thick: sqrt(1 + 9) up to its edge, 1 across, as much down.
		{"over a wall", inFeet(0, 1, 0, 0, 0, 0), inFeet(0, 1, 3, 3, 0, 0), []geom.Box{inFeet(-9, 9, 1, 2, 0, 3)}, 2*math.Sqrt(10) + 1},
		// The same, 4 further along: unfolded, it is the diagonal of 4 and that.
		{"over it aslant", inFeet(0, 1, 0, 0, 0, 0), inFeet(5, 6, 3, 3, 0, 0), []geom.Box{inFeet(-9, 19, 1, 2, 0, 3)}, math.Hypot(4, 2*math.Sqrt(10)+1)},
		// It ends 1 beyond the rims: sqrt(1 + 1) on the floor to its corner, 1, sqrt(1 + 1).
		{"round its end", inFeet(0, 1, 0, 0, 0, 0), inFeet(0, 1, 3, 3, 0, 0), []geom.Box{inFeet(-9, 2, 1, 2, 0, 3)}, 2*math.Sqrt2 + 1},
		// It carries a top that reaches 1 beyond it: under that no cord comes up. 1 out
		// and 4 up to the top's edge is sqrt(17), over the top are 3, and then sqrt(17).
		{"over a bar top", inFeet(0, 1, 0, 0, 0, 0), inFeet(0, 1, 5, 5, 0, 0),
			[]geom.Box{inFeet(-9, 9, 2, 3, 0, 3), inFeet(-9, 9, 1, 4, 3, 4)}, 2*math.Sqrt(17) + 3},
		// A slab 2 over the floor that reaches 2 beyond the rim above it, 1 over its
		// upper face, to a rim 1 under it: sqrt(4 + 1) to its edge, 1 down, sqrt(4 + 1).
		{"under a slab", inFeet(0, 1, 0, 0, 4, 4), inFeet(0, 1, 0, 0, 1, 1), []geom.Box{inFeet(-9, 9, -9, 2, 2, 3)}, 2*math.Sqrt(5) + 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, f := range []geom.Frame{{}, {Origin: geom.Point{X: 3 * length.Metre, Y: -length.Metre}, Turn: 123_400_000}} {
				var barriers []Barrier
				for _, b := range c.barriers {
					barriers = append(barriers, BarrierOf(f, b))
				}
				const foot = float64(12 * inch)
				w, ok := Shortest(Rim(f, c.from), Rim(f, c.to), barriers, 100*foot)
				if got := w.Length() / foot; !ok || math.Abs(got-c.want) > bendsOff {
					t.Errorf("%v, %v by hand: %v", got, c.want, w.points)
				}
				if _, ok := Shortest(Rim(f, c.from), Rim(f, c.to), barriers, (c.want-bendsOff)*foot); ok {
					t.Error("a shorter one is found")
				}
			}
		})
	}
}

// cells is a room of points a foot apart.
const cells, storeys = 10, 6

type cell struct{ x, y, z int }

// TestShortestOnGrid compares with Dijkstra's method on a grid: from each point
// to all within three feet, without the project's own test of what is pierced. A
// way on the grid is one that is possible, so ours is no longer; all
// edges lie on lines of the grid, whose directions are so close that it is longer by
// 2 % at most.
func TestShortestOnGrid(t *testing.T) {
	random := rand.New(rand.NewSource(7))
	bent := 0
	for scene := range 30 {
		var boxes []geom.Box
		for range 1 + random.Intn(4) {
			u, v := random.Intn(8), 1+random.Intn(5) // clear of the rims
			z := random.Intn(2) * random.Intn(3)
			boxes = append(boxes, inFeet(u, u+1+random.Intn(5), v, v+1+random.Intn(3), z, z+1+random.Intn(4)))
		}
		if pinched(boxes) {
			continue
		}
		from, to := inFeet(0, 2, 0, 0, 1, 1), inFeet(7, 9, 9, 9, 1, 1)
		var barriers []Barrier
		for _, b := range boxes {
			barriers = append(barriers, BarrierOf(geom.Frame{}, b))
		}
		const foot = float64(12 * inch)
		grid := onGrid(boxes, from, to)
		w, ok := Shortest(Rim(geom.Frame{}, from), Rim(geom.Frame{}, to), barriers, 100*foot)
		if !ok {
			t.Fatalf("scene %d: no way", scene)
		}
		if len(w.points) > 2 {
			bent++
		}
		if got := w.Length() / foot; got > grid+2*bendsOff || got < grid*0.98 {
			t.Errorf("scene %d: %v, on the grid %v: %v", scene, got, grid, boxes)
		}
	}
	if bent < 10 {
		t.Errorf("only %d ways bend", bent)
	}
}

// pinched reports whether two boxes touch in no more than an edge: the grid slips
// through there, a cord does not.
func pinched(boxes []geom.Box) bool {
	for i, a := range boxes {
		for _, b := range boxes[:i] {
			flat, apart := 0, false
			for axis := geom.U; axis <= geom.Z; axis++ {
				size := a.Along(axis).Intersect(b.Along(axis)).Size()
				apart = apart || size < 0
				if size == 0 {
					flat++
				}
			}
			if flat > 1 && !apart {
				return true
			}
		}
	}
	return false
}

// onGrid is the shortest way on the grid, in feet.
func onGrid(boxes []geom.Box, from, to geom.Box) float64 {
	var steps []cell
	for x := -3; x <= 3; x++ {
		for y := -3; y <= 3; y++ {
			for z := -3; z <= 3; z++ {
				if gcd(gcd(x, y), z) == 1 {
					steps = append(steps, cell{x, y, z})
				}
			}
		}
	}
	far := map[cell]float64{}
	open := map[cell]bool{}
	on := func(b geom.Box, c cell) bool {
		p := inFeet(c.x, c.x, c.y, c.y, c.z, c.z)
		return b.U.Contains(p.U) && b.V.Contains(p.V) && b.Z.Contains(p.Z)
	}
	var points []cell
	for x := range cells + 4 {
		for y := range cells + 2 {
			for z := range storeys + 1 {
				points = append(points, cell{x - 2, y - 1, z})
			}
		}
	}
	inside := map[cell]bool{}
	for _, p := range points {
		inside[p] = true
		if on(from, p) {
			far[p], open[p] = 0, true
		}
	}
	for len(open) > 0 {
		var next cell
		best := math.Inf(1)
		for p := range open {
			if far[p] < best {
				next, best = p, far[p]
			}
		}
		if on(to, next) {
			return best
		}
		delete(open, next)
		for _, s := range steps {
			p := cell{next.x + s.x, next.y + s.y, next.z + s.z}
			d := best + math.Sqrt(float64(s.x*s.x+s.y*s.y+s.z*s.z))
			if old, seen := far[p]; inside[p] && (!seen || d < old) && free(boxes, next, s) {
				far[p], open[p] = d, true
			}
		}
	}
	return math.Inf(1)
}

// free looks at points along a step: none may lie inside a box, nor on a face that
// two boxes share.
func free(boxes []geom.Box, p cell, s cell) bool {
	const n = 48
	at := func(x, step, k int) float64 { return float64(x) + float64(step*k)/n }
	for k := range n {
		x, y, z := at(p.x, s.x, k)+float64(s.x)/(2*n), at(p.y, s.y, k)+float64(s.y)/(2*n), at(p.z, s.z, k)+float64(s.z)/(2*n)
		if solidAt(boxes, x, y, z) {
			return false
		}
	}
	return true
}

// solidAt reports whether all eight points close about a point lie in boxes.
func solidAt(boxes []geom.Box, x, y, z float64) bool {
	const off = 1e-6
	for k := range 8 {
		in := z < off && k&4 != 0 // under the floor
		sign := func(bit int) float64 { return off * float64(1-2*(k>>bit&1)) }
		for _, b := range boxes {
			has := func(s geom.Span, v float64) bool {
				return float64(s.Lo) < v*float64(12*inch) && v*float64(12*inch) < float64(s.Hi)
			}
			in = in || has(b.U, x+sign(0)) && has(b.V, y+sign(1)) && has(b.Z, z+sign(2))
		}
		if !in {
			return false
		}
	}
	return true
}

func gcd(a, b int) int {
	if b == 0 {
		return max(a, -a)
	}
	return gcd(b, a%b)
}
