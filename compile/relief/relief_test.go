package relief

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

const mm = length.Millimetre

func rect(x0, y0, x1, y1 Length) geom.Contour {
	return geom.RectContour(geom.R(x0*mm, y0*mm, x1*mm, y1*mm))
}

func board(openings ...model.Opening) *model.Part {
	return &model.Part{ID: "p", Thickness: 18 * mm, Outline: rect(0, 0, 300, 200), Openings: openings}
}

// With a bit of 10 the diagonal takes 10/sqrt2 = 7.071068 of both sides, and the long
// side, on which the bit goes on, all 10 of the shorter.
func TestShape(t *testing.T) {
	v := func(x, y, bulge float64) geom.Vertex {
		return geom.Vertex{Point: geom.Point{X: Length(math.Round(x * 1e6)), Y: Length(math.Round(y * 1e6))}, Bulge: bulge}
	}
	const d = 7.071068
	p := board(model.Opening{Shape: rect(100, 100, 160, 130)})
	got := Part(p, Diagonal, 10*mm).Part.Openings[0].Shape
	want := geom.Contour{
		v(100, 100+d, 1), v(100+d, 100, 0), v(160-d, 100, 1), v(160, 100+d, 0),
		v(160, 130-d, 1), v(160-d, 130, 0), v(100+d, 130, 1), v(100, 130-d, 0),
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	got = Part(p, LongSide, 10*mm).Part.Openings[0].Shape
	want = geom.Contour{
		v(100, 110, 1), v(100, 100, 0), v(160, 100, 1), v(160, 110, 0),
		v(160, 120, 1), v(160, 130, 0), v(100, 130, 1), v(100, 120, 0),
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(rect(100, 100, 160, 130), p.Openings[0].Shape); diff != "" {
		t.Errorf("the part itself is changed: %s", diff)
	}
}

// Only what something square goes into is cleared: half rounds are counted.
func TestWhichCorners(t *testing.T) {
	notched := board(model.Opening{Name: "pipe", Notch: true, Shape: rect(100, 0, 140, 50)})
	notched.Outline = geom.Contour{
		{Point: geom.Point{}}, {Point: geom.Point{X: 100 * mm}}, {Point: geom.Point{X: 100 * mm, Y: 50 * mm}},
		{Point: geom.Point{X: 140 * mm, Y: 50 * mm}}, {Point: geom.Point{X: 140 * mm}}, {Point: geom.Point{X: 300 * mm}},
		{Point: geom.Point{X: 300 * mm, Y: 200 * mm}}, {Point: geom.Point{X: 200 * mm, Y: 200 * mm}},
		{Point: geom.Point{X: 200 * mm, Y: 150 * mm}}, {Point: geom.Point{Y: 150 * mm}}, // no notch, but a step
	}
	filled := &model.Part{}
	*filled = *notched
	filled.Filled = []geom.Point{{X: 200 * mm, Y: 150 * mm}}
	recessed := func(r model.Recess) *model.Part {
		p := board()
		r.Depth = 6 * mm
		p.Recesses = []model.Recess{r}
		return p
	}
	for _, test := range []struct {
		name string
		part *model.Part
		want int
	}{
		{"opening", board(model.Opening{Shape: rect(100, 100, 160, 130)}), 4},
		{"clockwise", board(model.Opening{Shape: rect(100, 100, 160, 130).Reversed()}), 4},
		{"round corners", board(model.Opening{Shape: geom.RoundedContour(geom.R(100*mm, 100*mm, 160*mm, 130*mm), 5*mm)}), 0},
		{"circle", board(model.Opening{Shape: geom.CircleContour(geom.Point{X: 90 * mm, Y: 90 * mm}, 9*mm)}), 0},
		{"notch", notched, 2},
		{"notch and a step that is filled", filled, 3},
		{"recess", recessed(model.Recess{Shape: rect(100, 100, 160, 130)}), 4},
		{"recess open at the left", recessed(model.Recess{Shape: rect(0, 100, 160, 130), Open: []model.Edge{model.LeftEdge}}), 2},
		{"groove", recessed(model.Recess{Shape: rect(0, 100, 300, 110), Open: []model.Edge{model.LeftEdge, model.RightEdge}}), 0},
		{"routed", recessed(model.Recess{Shape: rect(100, 100, 160, 130), Routed: true}), 0},
	} {
		for _, way := range []string{Diagonal, LongSide} {
			cleared := Part(test.part, way, 6*mm)
			p, n := cleared.Part, 0
			all := append([]geom.Contour{p.Outline}, shapes(p)...)
			before := append([]geom.Contour{test.part.Outline}, shapes(test.part)...)
			for i := range all {
				n += len(all[i]) - len(before[i])
			}
			if counted := cleared.Outline + cleared.Openings + cleared.Recesses; n != test.want || counted != n {
				t.Errorf("%s, %s: %d corners are cleared and %d counted, want %d", test.name, way, n, counted, test.want)
			}
			if trouble := Check(test.part, way, 6*mm); len(trouble) > 0 {
				t.Errorf("%s, %s: %v", test.name, way, trouble)
			}
		}
	}
	// 60 x 30 taken out, and what two bits of radius 3 cut beyond it: 2 x 9 x (pi/2 - 1).
	if took := math.Abs(notched.Outline.Area()) - Part(notched, Diagonal, 6*mm).Part.Outline.Area(); math.Abs(took-2*9*(math.Pi/2-1)) > 1e-3 {
		t.Errorf("two corners of a notch take %f mm²", took)
	}
}

func shapes(p *model.Part) (all []geom.Contour) {
	for _, o := range p.Openings {
		if !o.Notch {
			all = append(all, o.Shape)
		}
	}
	for _, r := range p.Recesses {
		all = append(all, r.Shape)
	}
	return all
}

// Both sides of each limit. With a bit of 10 the bit's edge reaches 1.4645 beyond a side
// on the diagonal, and 5 beyond the long one; 0.1 is to be left.
func TestCheck(t *testing.T) {
	um := func(x float64) Length { return Length(math.Round(x * 1e6)) }
	at := func(x0, y0, x1, y1 float64) geom.Contour {
		return geom.RectContour(geom.R(um(x0), um(y0), um(x1), um(y1)))
	}
	one := func(x0, y0, x1, y1 float64) model.Opening {
		return model.Opening{Name: "one", Shape: at(x0, y0, x1, y1)}
	}
	two := func(x0, y0, x1, y1 float64) model.Opening {
		return model.Opening{Name: "two", Shape: at(x0, y0, x1, y1)}
	}
	deep := func(depth Length, far bool) *model.Part {
		p := board()
		p.Recesses = []model.Recess{{Name: "one", Shape: at(100, 100, 160, 130), Depth: 6 * mm}}
		p.Bores = []model.Bore{{Name: "cup", At: geom.Point{X: um(166), Y: um(126.5)}, Diameter: 10 * mm, Depth: depth, Far: far}}
		return p
	}
	for _, test := range []struct {
		name    string
		part    *model.Part
		way     string
		because string // of the first; empty: none
		n       int
	}{
		{"near the edge", board(one(1.565, 60, 60, 120)), Diagonal, "", 0},
		{"over the edge", board(one(1.564, 60, 60, 120)), Diagonal, "it would break out of the part", 2},
		{"long side near the edge", board(one(5.1, 60, 140, 120)), LongSide, "", 0},
		{"long side over the edge", board(one(5.099, 60, 140, 120)), LongSide, "it would break out of the part", 2},
		{"along the edge", board(one(60, 1, 140, 60)), LongSide, "", 0},
		// On the diagonal centres lie 5/sqrt2 inside: two stand 10 apart where the
		// openings are 10 - 2 x 3.5355 = 2.929 apart; with 0.1 to spare 3.029.
		{"two apart", board(one(50, 50, 100, 100), two(103.03, 50, 150, 100)), Diagonal, "", 0},
		{"two that meet", board(one(50, 50, 100, 100), two(103.028, 50, 150, 100)), Diagonal, "it would cut into two", 4},
		// A side holds two of 7.0711, and 0.1.
		{"a side that is long enough", board(one(50, 50, 100, 64.2423)), Diagonal, "", 0},
		{"a side that is too short", board(one(50, 50, 100, 64.2421)), Diagonal, "there is no room for it between the sides", 4},
		{"a slot that is narrower than the bit's half", board(one(50, 50, 100, 54.9)), LongSide, "there is no room for it between the sides", 4},
		{"a slot that holds two bits", board(one(50, 50, 100, 70.1)), LongSide, "", 0},
		{"a slot that is narrower", board(one(50, 50, 100, 70.099)), LongSide, "there is no room for it between the sides", 4},
		{"beside a bore", deep(12*mm, false), Diagonal, "it would cut into cup", 1},
		{"beside one that comes from behind", deep(12*mm, true), Diagonal, "", 0},
		{"beside one that comes too far", deep(12*mm+1, true), Diagonal, "it would cut into cup", 1},
	} {
		got := Check(test.part, test.way, 10*mm)
		if len(got) != test.n || test.n > 0 && got[0].Because != test.because {
			t.Errorf("%s: %+v, want %d, %q", test.name, got, test.n, test.because)
		}
	}
}

// Where Check finds nothing, what is cleared is as much more as the half rounds are, and
// lies where the corner was: of any angle.
func TestAnyAngle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		turn := rapid.Float64Range(0, 2*math.Pi).Draw(t, "turn")
		open := rapid.Float64Range(0.6, 2.4).Draw(t, "angle")
		point := func(angle float64) geom.Point {
			return geom.Point{X: Length(150e6 + 80e6*math.Cos(turn+angle)), Y: Length(100e6 + 80e6*math.Sin(turn+angle))}
		}
		corner := geom.Point{X: 150 * mm, Y: 100 * mm}
		c := geom.Contour{{Point: corner}, {Point: point(0)}, {Point: point(open)}}
		inside := []bool{true, false, false}
		for _, way := range []string{Diagonal, LongSide} {
			k := cutAt(c, 0, way, 8*mm)
			if off := math.Hypot(k.cx-150e6, k.cy-100e6); math.Abs(off-4e6) > 1 {
				t.Fatalf("%s: the bit's edge is %f nm from the corner", way, off-4e6)
			}
			got, _ := clear(loop{shape: c, inside: inside}, way, 8*mm)
			more := math.Pi * 8 // half a round
			if way == Diagonal {
				// The circle less what of it the corner holds: two triangles from its centre,
				// and the sector between them.
				more = 16*(math.Pi-open) - 16*math.Sin(open)
			}
			if d := got.Area() - c.Area(); math.Abs(d-more) > 1e-2 {
				t.Fatalf("%s at %f: %f mm² more, want %f", way, open, d, more)
			}
		}
	})
}

// The end of a stopped groove holds two corners of a bit of 6 from 2 x 6/sqrt2 + 0.1 =
// 8.5853 on the diagonal, and from 12.1 along the long side. Below that they stay; of
// what is closed all round and no four times as long as wide they are refused.
func TestNarrowGroove(t *testing.T) {
	for _, test := range []struct {
		way   string
		width Length
		open  bool
		n     int // cleared
		left  int
		found int
	}{
		{Diagonal, 8_585_300, true, 2, 0, 0},
		{Diagonal, 8_585_200, true, 0, 1, 0},
		{Diagonal, 8_585_200, false, 4, 0, 4},
		{LongSide, 12_100_000, true, 2, 0, 0},
		{LongSide, 12_099_999, true, 0, 1, 0},
		{LongSide, 12_099_999, false, 4, 0, 4},
	} {
		p := board()
		r := model.Recess{Name: "groove", Depth: 6 * mm, Shape: geom.RectContour(geom.R(50*mm, 50*mm, 50*mm+test.width, 200*mm))}
		if test.open {
			r.Open = []model.Edge{model.Top}
		} else {
			r.Shape = geom.RectContour(geom.R(50*mm, 50*mm, 50*mm+test.width, 80*mm))
		}
		p.Recesses = []model.Recess{r}
		got, found := Part(p, test.way, 6*mm), Check(p, test.way, 6*mm)
		if got.Recesses != test.n || len(got.Left) != test.left || len(found) != test.found {
			t.Errorf("%s, %d nm wide: %d cleared, left %v, trouble %v", test.way, test.width, got.Recesses, got.Left, found)
		}
	}
}

// A rabbet that a hole has cut off is open there: only its two corners in the wood are cleared.
func TestCornersAtAnOpeningStay(t *testing.T) {
	p := &model.Part{Thickness: 18 * mm, Outline: rect(0, 0, 300, 200),
		Openings: []model.Opening{{Name: "pipe", Shape: geom.CircleContour(geom.Point{X: 160 * mm, Y: 100 * mm}, 20*mm).Reversed()}},
		Recesses: []model.Recess{
			{Name: "left", Shape: geom.Contour{at(60, 88), at(144, 88), at(140, 100), at(144, 112), at(60, 112)}, Depth: 6 * mm},
		}}
	for _, way := range []string{Diagonal, LongSide} {
		if trouble := Check(p, way, 6*mm); len(trouble) > 0 {
			t.Errorf("%s: %+v", way, trouble)
		}
		if n := len(Part(p, way, 6*mm).Part.Recesses[0].Shape); n != 7 {
			t.Errorf("%s: %d corners, want two more than 5", way, n)
		}
	}
}

func at(x, y geom.Length) geom.Vertex { return geom.Vertex{Point: geom.Point{X: x * mm, Y: y * mm}} }
