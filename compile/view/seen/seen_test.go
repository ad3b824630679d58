package seen

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

const mm = length.Millimetre

func rect(x0, y0, x1, y1 length.Length) geom.Contour {
	return geom.RectContour(geom.R(x0*mm, y0*mm, x1*mm, y1*mm))
}

func panel(c geom.Contour) model.Shape {
	return model.Shape{Kind: model.ShapePanel, Lines: c, Closed: true}
}

func wire(x0, y0, x1, y1 length.Length) model.Shape {
	return model.Shape{Kind: model.ShapeHidden, Lines: geom.Contour{
		{Point: geom.Point{X: x0 * mm, Y: y0 * mm}}, {Point: geom.Point{X: x1 * mm, Y: y1 * mm}}}}
}

// words writes the shapes that are left, in mm.
func words(v model.View) (out []string) {
	for _, s := range v.Shapes {
		text := "open"
		if s.Closed {
			text = "closed"
		}
		for _, p := range s.Lines {
			text += fmt.Sprintf(" %.1f,%.1f", p.X.MM(), p.Y.MM())
			if p.Bulge != 0 {
				text += fmt.Sprintf("(%.4f)", p.Bulge)
			}
		}
		out = append(out, text)
	}
	return out
}

// Worked out by hand. A point at 30 degrees on a circle of 100 about the origin is at
// (86.6, 50); an arc of 60 degrees bulges by tan 15 = 0.2679, one of 120 by tan 30 = 0.5774.
func TestOf(t *testing.T) {
	door := panel(rect(0, 0, 100, 100))
	whole := "closed 0.0,0.0 100.0,0.0 100.0,100.0 0.0,100.0"
	half := model.Shape{Kind: model.ShapeAbove, Lines: geom.Contour{
		{Point: geom.Point{X: 100 * mm}, Bulge: 1}, {Point: geom.Point{X: -100 * mm}}}}
	for _, test := range []struct {
		name   string
		shapes []model.Shape
		want   []string
	}{
		{"a line behind", []model.Shape{wire(-50, 50, 150, 50), door}, []string{"open -50.0,50.0 0.0,50.0", "open 100.0,50.0 150.0,50.0", whole}},
		{"a line before", []model.Shape{door, wire(-50, 50, 150, 50)}, []string{whole, "open -50.0,50.0 150.0,50.0"}},
		{"all of it behind", []model.Shape{wire(10, 50, 90, 50), panel(rect(1, 1, 99, 99)), door}, []string{whole}},
		{"along an edge", []model.Shape{wire(-50, 100, 150, 100), door}, []string{"open -50.0,100.0 150.0,100.0", whole}},
		{"from edge to edge", []model.Shape{wire(0, 0, 100, 100), door}, []string{whole}},
		{"beside", []model.Shape{wire(-50, 150, 150, 150), door}, []string{"open -50.0,150.0 150.0,150.0", whole}},
		{"the same outline", []model.Shape{door, door}, []string{whole, whole}},
		{"a corner behind", []model.Shape{panel(rect(50, 50, 150, 150)), door},
			[]string{"open 100.0,50.0 150.0,50.0 150.0,150.0 50.0,150.0 50.0,100.0", whole}},
		{"a corner elsewhere behind", []model.Shape{panel(rect(-50, -50, 50, 50)), door},
			[]string{"open 0.0,50.0 -50.0,50.0 -50.0,-50.0 50.0,-50.0 50.0,0.0", whole}},
		{"the middle behind", []model.Shape{panel(rect(-50, 20, 150, 40)), door},
			[]string{"open 0.0,40.0 -50.0,40.0 -50.0,20.0 0.0,20.0", "open 100.0,20.0 150.0,20.0 150.0,40.0 100.0,40.0", whole}},
		{"two before, side by side", []model.Shape{wire(-50, 50, 250, 50), door, panel(rect(100, 0, 200, 100))},
			[]string{"open -50.0,50.0 0.0,50.0", "open 200.0,50.0 250.0,50.0", whole, "closed 100.0,0.0 200.0,0.0 200.0,100.0 100.0,100.0"}},
		{"what hides nothing", []model.Shape{wire(-50, 50, 150, 50), {Kind: model.ShapeBeyond, Lines: rect(0, 0, 100, 100), Closed: true}},
			[]string{"open -50.0,50.0 150.0,50.0", whole}},
		{"an arc behind", []model.Shape{half, panel(rect(-120, -10, 120, 50))},
			[]string{"open 86.6,50.0(0.5774) -86.6,50.0", "closed -120.0,-10.0 120.0,-10.0 120.0,50.0 -120.0,50.0"}},
		{"behind a disc", []model.Shape{wire(-150, 50, 150, 50), panel(geom.CircleContour(geom.Point{}, 100*mm))},
			[]string{"open -150.0,50.0 -86.6,50.0", "open 86.6,50.0 150.0,50.0", "closed -100.0,0.0(1.0000) 100.0,0.0(1.0000)"}},
	} {
		if got := words(Of(&model.View{Shapes: test.shapes})); !slices.Equal(got, test.want) {
			t.Errorf("%s: left are\n%q, want\n%q", test.name, got, test.want)
		}
	}
}

// Random panels, some turned, over each other: a point of an edge is left where and
// only where no later panel holds it. Points are probed by the panels' own frames,
// which the code under test does not know.
func TestLeftIsWhatNothingHolds(t *testing.T) {
	type turned struct {
		frame geom.Frame
		w, h  length.Length
	}
	rapid.Check(t, func(t *rapid.T) {
		far := rapid.Int64Range(-int64(400*mm), int64(400*mm))
		side := rapid.Int64Range(int64(20*mm), int64(500*mm))
		var panels []turned
		v := &model.View{}
		for range rapid.IntRange(2, 7).Draw(t, "panels") {
			p := turned{w: length.Length(side.Draw(t, "w")), h: length.Length(side.Draw(t, "h"))}
			p.frame.Origin = geom.Point{X: length.Length(far.Draw(t, "x")), Y: length.Length(far.Draw(t, "y"))}
			p.frame.Turn = geom.Angle(rapid.SampledFrom([]int64{0, 0, 90, 30, 217}).Draw(t, "turn")) * geom.Degree
			corners := p.frame.Corners(geom.Span{Hi: p.w}, geom.Span{Hi: p.h})
			var c geom.Contour
			for _, corner := range corners {
				c = append(c, geom.Vertex{Point: corner})
			}
			panels, v.Shapes = append(panels, p), append(v.Shapes, panel(c))
		}
		// depth is how far a point is inside a panel; less than 0 outside.
		depth := func(p turned, q geom.Point) length.Length {
			u, w := p.frame.Local(q)
			return min(u, p.w-u, w, p.h-w)
		}
		for i := range v.Shapes {
			v.Shapes[i].Part = fmt.Sprint(i)
		}
		left := Of(v)
		for i, p := range panels {
			corners := p.frame.Corners(geom.Span{Hi: p.w}, geom.Span{Hi: p.h})
			for k, a := range corners {
				b := corners[(k+1)%4]
				for n := range length.Length(50) {
					q := geom.Point{X: a.X + (b.X-a.X)/50*n, Y: a.Y + (b.Y-a.Y)/50*n}
					deepest := -length.Max
					for _, other := range panels[i+1:] {
						deepest = max(deepest, depth(other, q))
					}
					on := drawnAt(left, fmt.Sprint(i), q)
					if deepest > mm/10 && on || deepest < -mm/10 && !on {
						t.Fatalf("panel %d at %v: %v deep, drawn: %v", i, q, deepest, on)
					}
				}
			}
		}
	})
}

// drawnAt reports whether a line of a part goes through a point.
func drawnAt(v model.View, part string, q geom.Point) bool {
	for _, s := range v.Shapes {
		for i := range s.Lines {
			if s.Part != part || i+1 == len(s.Lines) && !s.Closed {
				continue
			}
			a, b := s.Lines[i].Point, s.Lines[(i+1)%len(s.Lines)].Point
			whole := math.Hypot(float64(b.X-a.X), float64(b.Y-a.Y))
			if math.Hypot(float64(q.X-a.X), float64(q.Y-a.Y))+math.Hypot(float64(q.X-b.X), float64(q.Y-b.Y)) < whole+1e3 {
				return true
			}
		}
	}
	return false
}

// BenchmarkOf draws a long row of cabinets with fronts before them.
func BenchmarkOf(b *testing.B) {
	v := &model.View{}
	for i := range length.Length(1000) {
		for k := range length.Length(10) {
			v.Shapes = append(v.Shapes, panel(rect(600*i+k, 10*k, 600*i+590-k, 700-10*k)))
		}
	}
	for i := range length.Length(1000) {
		v.Shapes = append(v.Shapes, panel(rect(600*i, 100, 600*i+600, 700)))
	}
	for b.Loop() {
		Of(v)
	}
}
