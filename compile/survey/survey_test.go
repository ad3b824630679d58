package survey

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"testing"

	"barwright/compile/geom"
	"barwright/lang/length"

	"pgregory.net/rapid"
)

const mm = length.Millimetre

func at(x, y Length) geom.Point { return geom.Point{X: x, Y: y} }

// Worked out by hand: a square of 1000 mm whose corners lie 0, 10, 20 and 30 mm low, which
// is a plane, as either diagonal would do.
func TestAt(t *testing.T) {
	square := New([]Reading{{at(0, 0), 0}, {at(1000*mm, 0), 10 * mm}, {at(0, 1000*mm), 20 * mm}, {at(1000*mm, 1000*mm), 30 * mm}})
	line := New([]Reading{{at(1000*mm, 1000*mm), 30 * mm}, {at(0, 0), 10 * mm}, {at(2000*mm, 2000*mm), 10 * mm}})
	pair := New([]Reading{{at(0, 0), 10 * mm}, {at(1000*mm, 0), 20 * mm}})
	one := New([]Reading{{at(500*mm, 500*mm), 7 * mm}, {at(500*mm, 500*mm), 9 * mm}})
	for _, c := range []struct {
		name   string
		s      Surface
		x, y   Length
		want   Length
		within bool
		off    Length
	}{
		{"in the square", square, 250 * mm, 500 * mm, 12500 * mm / 1000, true, 0},
		{"at a corner", square, 1000 * mm, 0, 10 * mm, true, 0},
		{"on its edge", square, 1000 * mm, 250 * mm, 15 * mm, true, 0},
		{"a hair beyond the edge", square, 1000*mm + 1, 250 * mm, 15 * mm, false, 1},
		{"beyond an edge", square, 3000 * mm, 250 * mm, 15 * mm, false, 2000 * mm},
		{"beyond a corner", square, -500 * mm, -700 * mm, 0, false, 860232527},
		{"on the line of three", line, 500 * mm, 500 * mm, 20 * mm, true, 0},
		{"beside it", line, 1000 * mm, 0, 20 * mm, false, 707106782},
		{"beyond its end", line, 3000 * mm, 2500 * mm, 10 * mm, false, 1118033989},
		{"between two", pair, 300 * mm, 0, 13 * mm, true, 0},
		{"beside two", pair, 300 * mm, 1, 13 * mm, false, 1},
		{"beyond two", pair, -300 * mm, 0, 10 * mm, false, 300 * mm},
		{"one", one, 500 * mm, 500 * mm, 7 * mm, true, 0},
		{"far from one", one, 0, 0, 7 * mm, false, 707106782},
		{"none", Surface{}, 0, 0, 0, false, 0},
	} {
		if got, within := c.s.At(at(c.x, c.y)); got != c.want || within != c.within {
			t.Errorf("%s: %d nm, within %v; want %d, %v", c.name, got, within, c.want, c.within)
		}
		if off := c.s.Off(at(c.x, c.y)); off != c.off {
			t.Errorf("%s: %d nm outside, want %d", c.name, off, c.off)
		}
	}
}

// scattered draws readings of a function at places on a grid coarse enough that some
// stand on one line, on one circle or at one place.
func scattered(t *rapid.T, f func(x, y Length) Length) []Reading {
	step := rapid.SampledFrom([]Length{1, 997, mm, 100 * mm, 1000 * mm}).Draw(t, "step")
	place := rapid.Custom(func(t *rapid.T) Reading {
		x, y := step*Length(rapid.IntRange(-6, 6).Draw(t, "x")), step*Length(rapid.IntRange(-6, 6).Draw(t, "y"))
		return Reading{at(x, y), f(x, y)}
	})
	return rapid.SliceOfN(place, 1, 25).Draw(t, "readings")
}

// A plane comes out as itself, to the nanometre, wherever it is asked for.
func TestPlanes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := Length(rapid.IntRange(-40, 40).Draw(t, "a")), Length(rapid.IntRange(-40, 40).Draw(t, "b"))
		plane := func(x, y Length) Length { return 5*mm + a*x + b*y }
		readings := scattered(t, plane)
		s := New(readings)
		for range 20 {
			p := at(Length(rapid.IntRange(-7e9, 7e9).Draw(t, "px")), Length(rapid.IntRange(-7e9, 7e9).Draw(t, "py")))
			if got, within := s.At(p); within && got != plane(p.X, p.Y) {
				t.Fatalf("at %v: %d, the plane has %d", p, got, plane(p.X, p.Y))
			}
		}
		for _, r := range readings {
			if got, within := s.At(r.At); got != r.Value || !within {
				t.Fatalf("at the reading %v: %d, %v", r, got, within)
			}
		}
	})
}

// No reading lies inside the circle of a triangle; the triangles cover the hull once; and
// each edge of one is another's, or the rim's.
func TestDelaunay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := New(scattered(t, func(x, y Length) Length { return 0 }))
		if len(s.triangles) == 0 {
			return
		}
		edges := map[[2]int]int{} // lookup only
		area, hull := 0.0, 0.0
		for _, tri := range s.triangles {
			a, b, c := s.readings[tri[0]].At, s.readings[tri[1]].At, s.readings[tri[2]].At
			if side(a, b, c) <= 0 {
				t.Fatalf("triangle %v has no area, or goes the other way round", tri)
			}
			for _, r := range s.readings {
				if encircles(a, b, c, r.At) {
					t.Fatalf("%v lies in the circle of %v, %v, %v", r.At, a, b, c)
				}
			}
			area += twice(a, b, c)
			for k := range tri {
				edges[[2]int{tri[k], tri[(k+1)%3]}]++
			}
		}
		for k, e := range s.rim {
			a, b := s.readings[e[0]].At, s.readings[e[1]].At
			for _, r := range s.readings {
				if side(a, b, r.At) < 0 {
					t.Fatalf("%v lies outside the rim's edge %v", r.At, e)
				}
			}
			if e[1] != s.rim[(k+1)%len(s.rim)][0] {
				t.Fatalf("the rim %v does not close", s.rim)
			}
			edges[[2]int{e[1], e[0]}]++
			hull += twice(s.readings[0].At, a, b)
		}
		for e, n := range edges {
			if n != 1 || edges[[2]int{e[1], e[0]}] != 1 {
				t.Fatalf("edge %v stands %d times, its other side %d times", e, n, edges[[2]int{e[1], e[0]}])
			}
		}
		if math.Abs(area-hull) > 1e-9*hull {
			t.Fatalf("triangles cover %g, the hull %g", area/2, hull/2)
		}
	})
}

// twice is twice the area of a triangle.
func twice(a, b, c geom.Point) float64 {
	f, _ := cross(a, b, c).Float64()
	return f
}

// side and encircles decide the last nanometre on either side of a line and a circle.
func TestExact(t *testing.T) {
	const far = 40_000 * mm
	a, b := at(-far, -far+1), at(far, far-2)
	for _, c := range []struct {
		p    geom.Point
		want int
	}{{at(0, 0), 1}, {at(1, 0), -1}, {at(3*far, 3*far), 1}, {at(b.X*2-a.X, b.Y*2-a.Y), 0}} {
		if got := side(a, b, c.p); got != c.want {
			t.Errorf("side of %v is %d, want %d", c.p, got, c.want)
		}
	}
	// 3, 4, 5: the circle of radius 5 far about the origin.
	ring := [3]geom.Point{at(3*far, 4*far), at(-4*far, 3*far), at(-3*far, -4*far)}
	for _, c := range []struct {
		p    geom.Point
		want bool
	}{{at(4*far, -3*far), false}, {at(4*far-1, -3*far), true}, {at(4*far+1, -3*far), false}} {
		if got := encircles(ring[0], ring[1], ring[2], c.p); got != c.want {
			t.Errorf("in the circle at %v: %v, want %v", c.p, got, c.want)
		}
	}
}

// What Along leaves out is on the straight line between what it gives.
func TestAlong(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := New(scattered(t, func(x, y Length) Length { return (x*7 + y*y%11*mm) % (9 * mm) }))
		draw := func(name string) Length { return Length(rapid.IntRange(-9000, 9000).Draw(t, name)) * mm }
		from, to := at(draw("x0"), draw("y0")), at(draw("x1"), draw("y1"))
		line := s.Along(from, to)
		if line[0].At != from || line[len(line)-1].At != to {
			t.Fatalf("from %v to %v: %v", from, to, line)
		}
		for k := 1; k < len(line); k++ {
			a, b := line[k-1], line[k]
			for _, share := range []Length{1, 2, 3, 4, 5, 6} {
				p := at(a.At.X+(b.At.X-a.At.X)*share/7, a.At.Y+(b.At.Y-a.At.Y)*share/7)
				got, _ := s.At(p)
				if want := a.Value + (b.Value-a.Value)*share/7; abs(got-want) > steepest(s) {
					t.Fatalf("between %v and %v at %v: %d, the straight line has %d", a, b, p, got, want)
				}
			}
		}
	})
}

func abs(l Length) Length { return max(l, -l) }

// steepest is what a nanometre aside may change, and some for rounding.
func steepest(s Surface) Length {
	rise, run := Length(0), Length(math.MaxInt64)
	for _, a := range s.readings {
		for _, b := range s.readings {
			rise = max(rise, abs(a.Value-b.Value))
			if a != b {
				run = min(run, abs(a.At.X-b.At.X)+abs(a.At.Y-b.At.Y))
			}
		}
	}
	// Of the thinnest triangle, whose height may be a thirtieth of its shortest edge.
	return 5 + 60*rise/run
}

// franke is the principal test function of R. Franke, "A critical comparison of some
// methods for interpolation of scattered data", Naval Postgraduate School, report
// NPS-53-79-003, 1979, over the unit square.
func franke(x, y float64) float64 {
	sq := func(v float64) float64 { return v * v }
	return 0.75*math.Exp(-(sq(9*x-2)+sq(9*y-2))/4) + 0.75*math.Exp(-sq(9*x+1)/49-(9*y+1)/10) +
		0.5*math.Exp(-(sq(9*x-7)+sq(9*y-3))/4) - 0.2*math.Exp(-sq(9*x-4)-sq(9*y-7))
}

// On right triangles of a square grid of step h, what lies between linear interpolation and
// a smooth function is at most M h²/4: half the greatest second derivative in any direction,
// M, times the square of the circle's radius about a triangle, h/√2 (S. Waldron, "The error
// in linear interpolation at the vertices of a simplex", SIAM J. Numer. Anal. 35, 1998).
// M is taken from differences of the function on a fine grid.
func TestFranke(t *testing.T) {
	const unit = 1e9 // of the square and of the values: 1 m
	most := 0.0
	const d, fine = 1e-4, 400
	for i := range fine + 1 {
		for j := range fine + 1 {
			x, y := float64(i)/fine, float64(j)/fine
			f := franke(x, y)
			xx := (franke(x+d, y) - 2*f + franke(x-d, y)) / (d * d)
			yy := (franke(x, y+d) - 2*f + franke(x, y-d)) / (d * d)
			xy := (franke(x+d, y+d) - franke(x+d, y-d) - franke(x-d, y+d) + franke(x-d, y-d)) / (4 * d * d)
			most = max(most, math.Abs(xx+yy)/2+math.Hypot((xx-yy)/2, xy))
		}
	}
	before := math.Inf(1)
	for _, n := range []int{4, 8, 16, 32} {
		var readings []Reading
		for i := range n + 1 {
			for j := range n + 1 {
				x, y := float64(i)/float64(n), float64(j)/float64(n)
				readings = append(readings, Reading{at(Length(x*unit), Length(y*unit)), Length(math.Round(franke(x, y) * unit))})
			}
		}
		s, worst := New(readings), 0.0
		for i := range 101 {
			for j := range 101 {
				x, y := float64(i)/100, float64(j)/100
				got, within := s.At(at(Length(x*unit), Length(y*unit)))
				if !within {
					t.Fatalf("(%g, %g) is not within the square", x, y)
				}
				worst = max(worst, math.Abs(float64(got)/unit-franke(x, y)))
			}
		}
		bound := most / float64(n*n) / 4
		t.Logf("step 1/%d: off by %.5f at most, bound %.5f", n, worst, bound)
		if worst > bound {
			t.Errorf("step 1/%d: off by %g, more than %g", n, worst, bound)
		}
		if worst > before/2 {
			t.Errorf("step 1/%d: off by %g, twice the step %g: it does not converge", n, worst, before)
		}
		before = worst
	}
}

// python is the interpreter that has the scipy library (Debian python3-scipy).
const python = "/usr/bin/python3"

const scipy = `
import json, sys
import numpy
from scipy.interpolate import LinearNDInterpolator
from scipy.spatial import Delaunay
answers = []
for readings, asked in json.load(sys.stdin):
    r = numpy.array(readings, dtype=numpy.float64)
    plane = LinearNDInterpolator(Delaunay(r[:, :2]), r[:, 2])
    answers.append([None if numpy.isnan(v) else float(v) for v in plane(numpy.array(asked, dtype=numpy.float64))])
json.dump(answers, sys.stdout)
`

// Another program's triangulation of the same readings has the same values, and the same
// hull. The places are drawn at random: no four stand on one circle.
func TestAgainstScipy(t *testing.T) {
	if err := exec.Command(python, "-c", "import scipy").Run(); err != nil {
		if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
			t.Fatal("outside check required, but", python, "with the scipy library is not installed")
		}
		t.Skip("OUTSIDE CHECK SKIPPED:", python, "with the scipy library is not installed")
	}
	chance := rand.New(rand.NewPCG(5, 8))
	place := func() [2]Length { return [2]Length{Length(chance.Int64N(8000)) * mm, Length(chance.Int64N(8000)) * mm} }
	type instance struct {
		readings [][3]Length
		asked    [][2]Length
	}
	var all []instance
	var ask [][2]any
	for k := range 60 {
		var in instance
		for range 3 + k*2 {
			p := place()
			in.readings = append(in.readings, [3]Length{p[0], p[1], Length(chance.Int64N(int64(20 * mm)))})
		}
		for range 200 {
			in.asked = append(in.asked, place())
		}
		all, ask = append(all, in), append(ask, [2]any{in.readings, in.asked})
	}
	text, err := json.Marshal(ask)
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(python, "-c", scipy)
	var stderr bytes.Buffer
	cmd.Stdin, cmd.Stderr = bytes.NewReader(text), &stderr
	reply, err := cmd.Output()
	if err != nil {
		t.Fatalf("%v\n%s", err, stderr.Bytes())
	}
	var answers [][]*float64
	if err := json.Unmarshal(reply, &answers); err != nil || len(answers) != len(all) {
		t.Fatalf("%d answers to %d questions, %v", len(answers), len(all), err)
	}
	for k, in := range all {
		var readings []Reading
		for _, r := range in.readings {
			readings = append(readings, Reading{at(r[0], r[1]), r[2]})
		}
		s := New(readings)
		for n, p := range in.asked {
			got, within := s.At(at(p[0], p[1]))
			want := answers[k][n]
			if within != (want != nil) {
				t.Errorf("%d readings, at %v: within %v, scipy says otherwise", len(readings), p, within)
			} else if within && math.Abs(float64(got)-*want) > 10 {
				t.Errorf("%d readings, at %v: %d nm, scipy %.1f", len(readings), p, got, *want)
			}
		}
	}
}

// Four bearing points under each of 1000 boxes, over 300 readings.
func BenchmarkAt(b *testing.B) {
	chance := rand.New(rand.NewPCG(1, 2))
	var readings []Reading
	for range 300 {
		readings = append(readings, Reading{at(Length(chance.Int64N(3e10)), Length(chance.Int64N(3e10))), Length(chance.Int64N(2e7))})
	}
	for b.Loop() {
		s := New(readings)
		for range 4000 {
			s.At(at(Length(chance.Int64N(3e10)), Length(chance.Int64N(3e10))))
		}
	}
}
