package dxf

import (
	"math"
	"math/big"
	"strings"
	"testing"

	sf "github.com/peterstace/simplefeatures/geom"
	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/lang/length"
)

func TestValidate(t *testing.T) {
	v := func(x, y length.Length, bulge float64) geom.Vertex {
		return geom.Vertex{Point: geom.Point{X: x * mm, Y: y * mm}, Bulge: bulge}
	}
	for _, test := range []struct {
		name    string
		contour geom.Contour
		want    string // part of the error; empty where it is good
	}{
		{"rectangle", rect(0, 0, 10, 10), ""},
		{"circle", geom.CircleContour(geom.Point{}, 5*mm), ""},
		{"rounded", geom.RoundedContour(geom.R(0, 0, 10*mm, 8*mm), 4*mm-1*length.Micrometre), ""},
		{"half circle", geom.Contour{v(0, 0, 0), v(10, 0, 1)}, ""},
		{"lens", geom.Contour{v(0, 0, 0.01), v(100, 0, 0.01)}, ""},
		{"crescent", geom.Contour{v(0, 0, 1), v(100, 0, -0.9)}, ""},
		{"kidney slot", geom.Contour{v(-20, 0, -1), v(20, 0, -1), v(10, 0, 1), v(-10, 0, -1)}, ""},
		{"far out", rect(999_000, 999_000, 1_000_000, 1_000_000), ""},
		{"a corner on a straight edge", geom.Contour{v(0, 0, 0), v(5, 0, 0), v(10, 0, 0), v(5, 5, 0)}, ""},

		{"nothing", nil, "0 vertices"},
		{"one vertex", geom.Contour{v(1, 1, 0)}, "1 vertices"},
		{"there and back", geom.Contour{v(0, 0, 0), v(10, 0, 0)}, "encloses nothing"},
		{"closed by hand", append(rect(0, 0, 10, 10), v(0, 0, 0)), "first vertex is repeated"},
		{"twice the same", geom.Contour{v(0, 0, 0), v(10, 0, 0), v(10, 0, 0), v(0, 10, 0)}, "edge 1 has no length"},
		{"next to nothing", geom.Contour{v(0, 0, 0), v(10, 0, 0), {Point: geom.Point{X: 10 * mm, Y: 999}}, v(0, 10, 0)}, "edge 1 has no length"},
		{"no number", geom.Contour{v(0, 0, math.NaN()), v(10, 0, 0), v(0, 10, 0)}, "edge 0 has no bulge"},
		{"bow tie", geom.Contour{v(0, 0, 0), v(10, 10, 0), v(10, 0, 0), v(0, 10, 0)}, "(0, 0) and from (10, 0) meet"},
		{"spike", geom.Contour{v(0, 0, 0), v(10, 0, 0), v(10, 10, 0), v(10, 5, 0), v(0, 5, 0)}, "folds back on itself at (10, 10)"},
		{"pinched", geom.Contour{v(0, 0, 0), v(10, 0, 0), v(10, 10, 0), v(5, 0, 0), v(0, 10, 0)}, "meet"},
		{"arc through the other side", geom.Contour{v(0, 0, -1), v(20, 0, 0), v(20, 5, 0), v(0, 5, 0)}, "meet"},
		{"same arc twice", geom.Contour{v(0, 0, 0.5), v(20, 0, -0.5)}, "meet"},
	} {
		err := new(room).validate(test.contour)
		switch {
		case test.want == "" && err != nil:
			t.Errorf("%s: refused: %v", test.name, err)
		case test.want != "" && (err == nil || !strings.Contains(err.Error(), test.want)):
			t.Errorf("%s: error %v, want %q", test.name, err, test.want)
		}
	}
}

// A closed line is simple, says simple, exactly where an independent geometry
// library (simplefeatures, after OGC 06-103r4) says so.
func TestSimpleAgainstLibrary(t *testing.T) {
	seen := map[bool]int{}
	rapid.Check(t, func(t *rapid.T) {
		coordinate := rapid.IntRange(0, 5)
		polygon := make([]geom.Point, rapid.IntRange(3, 7).Draw(t, "vertices"))
		for i := range polygon {
			polygon[i].X = length.Length(coordinate.Draw(t, "x"))
			polygon[i].Y = length.Length(coordinate.Draw(t, "y"))
		}
		var flat []float64
		for i, p := range polygon {
			if p == polygon[(i+1)%len(polygon)] {
				t.Skip("an edge without length, which validate refuses before")
			}
			flat = append(flat, float64(p.X), float64(p.Y))
		}
		flat = append(flat, flat[:2]...)
		want := sf.NewLineString(sf.NewSequence(flat, sf.DimXY)).IsSimple()
		seen[want]++
		if err := simple(polygon); (err == nil) != want {
			t.Errorf("%v: %v, the library: simple is %t", polygon, err, want)
		}
	})
	if seen[true] == 0 || seen[false] == 0 {
		t.Errorf("simple and not: %v", seen)
	}
}

// turn and product are exact where 64 bits overflow.
func TestTurnAgainstBig(t *testing.T) {
	coordinate := rapid.OneOf(rapid.Int64Range(-int64(length.Max), int64(length.Max)), rapid.Int64Range(-2, 2))
	rapid.Check(t, func(t *rapid.T) {
		var p [3]geom.Point
		for i := range p {
			p[i] = geom.Point{
				X: length.Length(coordinate.Draw(t, "x")),
				Y: length.Length(coordinate.Draw(t, "y")),
			}
		}
		times := func(a, b length.Length) *big.Int {
			return new(big.Int).Mul(big.NewInt(int64(a)), big.NewInt(int64(b)))
		}
		ab, ac := p[1].Sub(p[0]), p[2].Sub(p[0])
		want := times(ab.X, ac.Y).Cmp(times(ab.Y, ac.X))
		if got := turn(p[0], p[1], p[2]); got != want {
			t.Errorf("turn %d, want %d", got, want)
		}
	})
}

func TestEncloses(t *testing.T) {
	u := notchedOutline().Chords()
	for _, test := range []struct {
		x, y length.Length
		want bool
	}{
		{100, 100, true}, {225, 30, false}, {225, 84, false}, {225, 86, true}, {550, 50, false},
		{550, 100 + 1, true}, {-1, 200, false}, {601, 200, false}, {300, 401, false}, {100, 60, true},
	} {
		if got := encloses(u, geom.Point{X: test.x * mm, Y: test.y * mm}); got != test.want {
			t.Errorf("(%d, %d) inside: %t", test.x, test.y, got)
		}
	}
}
