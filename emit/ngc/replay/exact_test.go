package replay

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// square returns a square of 1 mm round a point.
func square(c spot) ring {
	q := [4]spot{{c.x - 0.5, c.y - 0.5}, {c.x + 0.5, c.y - 0.5}, {c.x + 0.5, c.y + 0.5}, {c.x - 0.5, c.y + 0.5}}
	var edges []edge
	for i := range q {
		edges = append(edges, edge{stretch: stretch{q[i], q[(i+1)%4]}})
	}
	return ring{edges, boxOf(edges)}
}

// TestNoDiscEscapes: wherever twelve bits of 10 mm leave little more than a disc that is
// 0.036 mm across between them, and however they stand round it, it is found. Where
// they leave 0.02 mm, or overlap, nothing is.
func TestNoDiscEscapes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := spot{rapid.Float64Range(-50, 50).Draw(t, "x"), rapid.Float64Range(-50, 50).Draw(t, "y")}
		room := square(spot{c.x + rapid.Float64Range(-0.4, 0.4).Draw(t, "aside"), c.y + rapid.Float64Range(-0.4, 0.4).Draw(t, "up")})
		turn := rapid.Float64Range(0, 2*math.Pi).Draw(t, "turn")
		left := func(across float64) error {
			var bits []swath
			for k := range 12 {
				sin, cos := math.Sincos(turn + float64(k)*math.Pi/6)
				at := spot{c.x + (5+across/2)*cos, c.y + (5+across/2)*sin}
				bits = append(bits, swath{stretch: stretch{at, at}, r: 5})
			}
			return remainder(room, room, bits)
		}
		if left(0.036) == nil {
			t.Fatal("the disc escapes")
		}
		for _, across := range []float64{0.02, -0.001} {
			if err := left(across); err != nil {
				t.Fatalf("%v mm: %v", across, err)
			}
		}
	})
}

// TestSwathRow: a point of a row lies in what is told of it just where it is within
// the radius of the stretch, or of one of the pieces that stand for the arc.
func TestSwathRow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := Motion{From: Point{X: drawSpot(t, "a").x, Y: drawSpot(t, "a").y}, To: Point{X: drawSpot(t, "b").x, Y: drawSpot(t, "b").y}}
		c, r := drawSpot(t, "c"), rapid.Float64Range(0.1, 8).Draw(t, "r")
		if rapid.Bool().Draw(t, "arc") {
			radius := rapid.Float64Range(0.1, 10).Draw(t, "radius")
			start, turn := rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "start"), rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "turn")
			at := func(angle float64) Point {
				return Point{X: c.x + radius*math.Cos(angle), Y: c.y + radius*math.Sin(angle)}
			}
			m = Motion{From: at(start), To: at(start + turn), Arc: true, CX: c.x, CY: c.y, Sweep: turn}
		}
		p := drawSpot(t, "p")
		d := math.Inf(1)
		for _, piece := range path(m) {
			d = min(d, piece.stretch.to(p))
		}
		var row, on []interval
		line := stretch{drawSpot(t, "from"), p}
		for _, s := range m.level(r) {
			row = s.row(p.y, row)
			on = s.on(line, on)
		}
		holds := func(all []interval, x float64) bool {
			return slices.ContainsFunc(all, func(in interval) bool { return x >= in.lo && x <= in.hi })
		}
		if math.Abs(d-r) > sag+1e-6 && (holds(row, p.x) != (d < r) || line.length() > 0.1 && holds(on, line.length()) != (d < r)) {
			t.Fatalf("%+v at %v: %v from it, the row has %v, the line %v", m, p, d, row, on)
		}
	})
}

// TestDistance: no two points of two stretches are nearer than their distance, and
// some, of many, are nearly as near.
func TestDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, o := stretch{drawSpot(t, "a"), drawSpot(t, "b")}, stretch{drawSpot(t, "c"), drawSpot(t, "d")}
		const n = 400
		least := math.Inf(1)
		for k := range n + 1 {
			least = min(least, o.to(s.along(float64(k)/n)))
		}
		if d := s.distance(o); d > least+1e-9 || d < least-s.length()/(2*n)-1e-9 {
			t.Fatalf("%v, want %v", d, least)
		}
	})
}

// TestChords: straight pieces keep to their arc by sag, and end where it ends.
func TestChords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, turn := rapid.Float64Range(0.01, 100).Draw(t, "r"), rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "turn")
		from, to := spot{3 + r, 4}, spot{3 + r*math.Cos(turn), 4 + r*math.Sin(turn)}
		pieces := chords(from, to, 3, 4, turn)
		for i, p := range pieces {
			if i > 0 && pieces[i-1].b != p.a {
				t.Fatal("a gap between pieces")
			}
			mid := p.along(0.5)
			if away := r - math.Hypot(mid.x-3, mid.y-4); away > sag+1e-9 {
				t.Fatalf("%v mm beside the arc", away)
			}
		}
		if pieces[0].a != from || pieces[len(pieces)-1].b != to {
			t.Fatal("other ends")
		}
	})
}

// TestSplit: what a bore leaves of a line, and what a line leaves of a bore.
func TestSplit(t *testing.T) {
	bore := bored(spot{0, 0}, 3)
	outside := func(s stretch, r ring) (l float64) {
		for _, p := range s.split(r.edges) {
			if !r.inside(p.along(0.5)) {
				l += p.length()
			}
		}
		return l
	}
	for _, c := range []struct {
		s    stretch
		want float64
	}{
		{stretch{spot{-5, 0}, spot{5, 0}}, 4},
		{stretch{spot{0, -5}, spot{0, 5}}, 4},
		{stretch{spot{0, 0}, spot{0, 5}}, 2},
		{stretch{spot{-1, 0}, spot{1, 1}}, 0},
		{stretch{spot{-5, 3.1}, spot{5, 3.1}}, 10},
		{stretch{spot{-5, 1.8}, spot{5, 1.8}}, 10 - 2*2.4},
	} {
		if got := outside(c.s, bore); math.Abs(got-c.want) > 0.005 {
			t.Errorf("%v: %v mm are left, want %v", c.s, got, c.want)
		}
	}
	square := square(spot{3, 0}) // X 2.5 to 3.5, Y ±0.5
	var rim float64
	for _, s := range bore.edges {
		rim += outside(s.stretch, square)
	}
	if want := 2*math.Pi*3 - 2*3*math.Asin(0.5/3); math.Abs(rim-want) > 0.01 {
		t.Errorf("%v mm of the rim are left, want %v", rim, want)
	}
}

func drawSpot(t *rapid.T, name string) spot {
	v := rapid.Float64Range(-10, 10)
	return spot{v.Draw(t, name+".x"), v.Draw(t, name+".y")}
}

// TestAmid: what layers hold of a slope is all of it below the first one's top, part by
// part, each between its depths.
func TestAmid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := rapid.Float64Range(-10, 5)
		s := slope{stretch{drawSpot(t, "a"), drawSpot(t, "b")}, z.Draw(t, "from"), z.Draw(t, "to")}
		depths, sum := []float64{0, 2, 3.5, math.Inf(1)}, 0.0
		for i := range depths[1:] {
			part, ok := s.amid(depths[i], depths[i+1])
			if !ok {
				continue
			}
			sum += part.length()
			if -max(part.from, part.to) < depths[i]-1e-9 || -min(part.from, part.to) > depths[i+1]+1e-9 {
				t.Fatalf("%+v is not from %v to %v deep", part, depths[i], depths[i+1])
			}
		}
		want := s.length()
		if s.from != s.to {
			want *= max(0, min(1, (min(0, max(s.from, s.to))-min(s.from, s.to))/math.Abs(s.from-s.to)))
		} else if s.from >= 0 {
			want = 0
		}
		if math.Abs(sum-want) > 1e-9 {
			t.Fatalf("%v mm of %+v, want %v", sum, s, want)
		}
	})
}
