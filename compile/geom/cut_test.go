package geom

import (
	"math"
	"math/big"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

func TestCut(t *testing.T) {
	blank := R(0, 0, 100, 60)
	points := func(xy ...Length) Contour {
		var c Contour
		for i := 0; i < len(xy); i += 2 {
			c = append(c, Vertex{Point: Point{xy[i], xy[i+1]}})
		}
		return c
	}
	for _, c := range []struct {
		name string
		cuts []Rect
		want []Contour
	}{
		{"nothing", nil, []Contour{RectContour(blank)}},
		{"one that misses", []Rect{R(100, 0, 120, 60)}, []Contour{RectContour(blank)}},
		{"the toe kick of a side", []Rect{R(80, 0, 100, 10)}, []Contour{points(0, 0, 80, 0, 80, 10, 100, 10, 100, 60, 0, 60)}},
		{"a corner, reaching beyond", []Rect{R(-5, -5, 10, 20)}, []Contour{points(10, 0, 100, 0, 100, 60, 0, 60, 0, 20, 10, 20)}},
		{"an edge", []Rect{R(40, 50, 60, 61)}, []Contour{points(0, 0, 100, 0, 100, 60, 60, 60, 60, 50, 40, 50, 40, 60, 0, 60)}},
		{"two that join", []Rect{R(40, 50, 60, 60), R(60, 40, 70, 60)}, []Contour{points(0, 0, 100, 0, 100, 60, 70, 60, 70, 40, 60, 40, 60, 50, 40, 50, 40, 60, 0, 60)}},
		{"all across", []Rect{R(40, 0, 60, 60)}, []Contour{points(0, 0, 40, 0, 40, 60, 0, 60), points(60, 0, 100, 0, 100, 60, 60, 60)}},
		{"all of it", []Rect{R(-1, -1, 101, 61)}, nil},
		{"a hole", []Rect{R(40, 20, 60, 40)}, []Contour{RectContour(blank), points(40, 20, 40, 40, 60, 40, 60, 20)}},
		{"two that touch at a corner", []Rect{R(0, 20, 30, 40), R(30, 40, 50, 50)}, []Contour{points(0, 0, 100, 0, 100, 60, 0, 60, 0, 40, 30, 40, 30, 50, 50, 50, 50, 40, 30, 40, 30, 20, 0, 20)}},
		{"pieces that touch at a corner", []Rect{R(0, 30, 50, 60), R(50, 0, 100, 30)}, []Contour{points(0, 0, 50, 0, 50, 30, 0, 30), points(50, 30, 100, 30, 100, 60, 50, 60)}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if diff := cmp.Diff(c.want, Cut(blank, c.cuts)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestCutAgainstGrid compares Cut with a grid of the plane along every edge of
// the input: the same outlines, corner for corner.
func TestCutAgainstGrid(t *testing.T) {
	overlaid := 0
	rapid.Check(t, func(t *rapid.T) {
		// A few lines to meet on, the finest steps beside them.
		scale := Length(rapid.SampledFrom([]int64{1, 7 * 25_400_000 / 64, 59_055_000}).Draw(t, "scale"))
		at := rapid.Custom(func(t *rapid.T) Length {
			return Length(rapid.Int64Range(0, 30).Draw(t, "at"))*scale + Length(rapid.Int64Range(-1, 1).Draw(t, "beside"))
		})
		rect := rapid.Custom(func(t *rapid.T) Rect {
			x, y := at.Draw(t, "x"), at.Draw(t, "y")
			wide, tall := Length(rapid.Int64Range(1, 12).Draw(t, "width")), Length(rapid.Int64Range(1, 12).Draw(t, "height"))
			return R(x, y, x+wide*scale, y+tall*scale)
		})
		blank := R(5*scale, 5*scale, 25*scale, 20*scale)
		cuts := rapid.SliceOfN(rect, 0, 6).Draw(t, "cuts")
		if _, ok := notched(blank, cuts); !ok {
			overlaid++
		}
		if diff := cmp.Diff(canonical(byGrid(blank, cuts)), canonical(Cut(blank, cuts)), cmpopts.EquateEmpty()); diff != "" {
			t.Fatalf("outlines (-grid +cut):\n%s", diff)
		}
	})
	t.Logf("%d cuts needed the overlay", overlaid)
	if overlaid == 0 {
		t.Error("the overlay was never asked")
	}
}

// canonical takes outlines apart where they pass a corner twice, lets each begin
// at its lowest corner, and puts them in order.
func canonical(outlines []Contour) []Contour {
	var out []Contour
	for _, c := range outlines {
		out = append(out, loops(c)...)
	}
	for i := range out {
		out[i] = fromLowest(out[i])
	}
	slices.SortFunc(out, func(a, b Contour) int { return compare(a[0].Point, b[0].Point) })
	return out
}

func loops(c Contour) []Contour {
	for i, v := range c {
		if j := slices.Index(c[i+1:], v); j >= 0 {
			j += i + 1
			return append(loops(c[i:j]), loops(slices.Concat(c[:i], c[j:]))...)
		}
	}
	return []Contour{c}
}

// TestCutOfAThread: floats cannot tell a square nanometre from a thread of one
// that is 628 m long. There is no answer, and no panic.
func TestCutOfAThread(t *testing.T) {
	const at, long, up = 449_159_783, 627_700_677_251, 222_197_678_975
	if left := Cut(R(at, 0, at+1, long), []Rect{R(at, up, at+1, up+1)}); left != nil {
		t.Errorf("%v", left)
	}
}

// TestNotchedAgainstOverlay compares the short way with the overlay.
func TestNotchedAgainstOverlay(t *testing.T) {
	met := 0
	rapid.Check(t, func(t *rapid.T) {
		blank := R(0, 0, 600, 800)
		var cuts []Rect
		for range rapid.IntRange(1, 5).Draw(t, "notches") {
			x, y := Length(rapid.Int64Range(-50, 550).Draw(t, "x")), Length(rapid.Int64Range(-50, 750).Draw(t, "y"))
			wide, tall := Length(rapid.Int64Range(1, 150).Draw(t, "width")), Length(rapid.Int64Range(1, 150).Draw(t, "height"))
			r := R(x, y, x+wide, y+tall)
			switch rapid.IntRange(0, 3).Draw(t, "edge") {
			case 0:
				r.X.Lo, r.X.Hi = 0, wide
			case 1:
				r.X.Lo, r.X.Hi = 600-wide, 600
			case 2:
				r.Y.Lo, r.Y.Hi = 0, tall
			case 3:
				r.Y.Lo, r.Y.Hi = 800-tall, 800
			}
			if blank.Overlaps(r) {
				cuts = append(cuts, blank.Intersect(r))
			}
		}
		short, ok := notched(blank, cuts)
		if !ok {
			return
		}
		met++
		var shapes []Contour
		for _, c := range cuts {
			shapes = append(shapes, RectContour(c))
		}
		long, ok := Difference(RectContour(blank), shapes)
		if diff := cmp.Diff(long, []Contour{short}); !ok || diff != "" {
			t.Fatalf("outlines (-overlay +short way):\n%s", diff)
		}
	})
	if met < 10 {
		t.Errorf("the short way was taken only %d times", met)
	}
}

// TestSlantedCut takes a slanted strip off a panel, as a wall that leans does,
// and compares what is left with the area of the panel's part on one side of
// the line, worked out in exact fractions: corners are rounded to the
// nanometre, which is worth half the outline's length in nanometres.
func TestSlantedCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		blank := R(0, 0, 600*mm, 900*mm)
		foot := Length(rapid.Int64Range(1, 590e6).Draw(t, "foot"))
		head := Length(rapid.Int64Range(1, 590e6).Draw(t, "head"))
		strip := Contour{ // right of the line from (foot, -1 mm) to (head, 901 mm)
			{Point{foot, -mm}, 0}, {Point{700 * mm, -mm}, 0}, {Point{700 * mm, 901 * mm}, 0}, {Point{head, 901 * mm}, 0},
		}
		left, ok := Difference(RectContour(blank), []Contour{strip})
		if !ok {
			t.Fatalf("no answer for %v less %v", blank, strip)
		}
		// A trapezoid: its two sides are the line's x at y = 0 and at y = 900 mm.
		at := func(y int64) *big.Rat {
			x := new(big.Rat).Mul(big.NewRat(int64(head-foot), int64(902*mm)), big.NewRat(y+int64(mm), 1))
			return x.Add(x, big.NewRat(int64(foot), 1))
		}
		twice := new(big.Rat).Add(at(0), at(int64(900*mm)))
		want, _ := twice.Mul(twice, big.NewRat(int64(900*mm), 2e12)).Float64()
		if len(left) != 1 || math.Abs(left[0].Area()-want) > 2000*mm.MM()*1e-6 {
			t.Fatalf("left %v, of %v mm²; want %v", left, left[0].Area(), want)
		}
	})
}

// turns drops the corners where a contour runs straight on.
func turns(c Contour) []Point {
	var out []Point
	for i, v := range c {
		a, b := c[(i+len(c)-1)%len(c)], c[(i+1)%len(c)]
		if (v.X-a.X)*(b.Y-v.Y) != (v.Y-a.Y)*(b.X-v.X) {
			out = append(out, v.Point)
		}
	}
	return out
}

// TestCutHasNoStraightCorner demands that every corner of a result turns, and
// that outer contours run counter-clockwise.
func TestCutHasNoStraightCorner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cuts := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Rect {
			x := rapid.Int64Range(0, 18).Draw(t, "x")
			h := rapid.Int64Range(1, 9).Draw(t, "h")
			return R(Length(x), 0, Length(x+2), Length(h)) // notches into the lower edge
		}), 0, 5).Draw(t, "cuts")
		for _, c := range Cut(R(0, 0, 20, 10), cuts) {
			if len(turns(c)) != len(c) {
				t.Fatalf("%v has a corner that does not turn", c)
			}
			if c.Area() <= 0 {
				t.Fatalf("%v does not run counter-clockwise", c)
			}
		}
	})
}

func BenchmarkCut(b *testing.B) {
	side := R(0, 0, 590_550_000, 876_300_000)
	toe, base := R(0, 0, 76_200_000, 101_600_000), R(577_850_000, 0, 600_000_000, 88_900_000)
	for _, c := range []struct {
		name string
		cuts []Rect
	}{
		{"toe", []Rect{toe}},
		{"toe and baseboard", []Rect{toe, base}},
		{"notch into the toe", []Rect{toe, R(50_000_000, 50_000_000, 150_000_000, 150_000_000)}},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				Cut(side, c.cuts)
			}
		})
		b.Run(c.name+" by the grid", func(b *testing.B) {
			for b.Loop() {
				byGrid(side, c.cuts)
			}
		})
	}
}
