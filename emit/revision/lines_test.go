package revision

import (
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

const milli = length.Millimetre

func area(x0, y0, x1, y1 length.Length) model.Shape {
	return model.Shape{Kind: model.ShapePanel, Closed: true, Lines: geom.RectContour(geom.R(x0*milli, y0*milli, x1*milli, y1*milli))}
}

// A stud that grows by 20 mm, worked out by hand: its foot and its sides up to the old
// head are in both, the rest of the sides and the head are new, the old head went.
func TestOverOfAStudThatGrows(t *testing.T) {
	never := func(*model.Shape) bool { return false }
	p := over([]model.Shape{area(0, 0, 40, 900)}, []model.Shape{area(0, 0, 40, 920)}, never)
	at := func(x0, y0, x1, y1 length.Length) geom.Contour {
		return geom.Contour{{Point: geom.Point{X: x0 * milli, Y: y0 * milli}}, {Point: geom.Point{X: x1 * milli, Y: y1 * milli}}}
	}
	want := map[string][]geom.Contour{
		"area": {geom.RectContour(geom.R(0, 0, 40*milli, 920*milli))},
		"same": {at(0, 0, 40, 0), at(40, 0, 40, 900), at(0, 0, 0, 900)},
		"new":  {at(40, 900, 40, 920), at(0, 920, 40, 920), at(0, 900, 0, 920)},
		"old":  {at(0, 900, 40, 900)},
	}
	got := map[string][]geom.Contour{}
	for _, l := range p.layers {
		got[l.class] = l.lines
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
	if !p.differ || over([]model.Shape{area(0, 0, 40, 900)}, []model.Shape{area(0, 0, 40, 900)}, never).differ {
		t.Error("a difference is missed, or told where there is none")
	}
}

// What both have and what one has alone make up each stretch, and neither lies in the
// other; what is shorter than anybody sees may be lost.
func TestPartedIsWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		end := rapid.Int64Range(0, 400)
		span := func(name string) geom.Span {
			return geom.Between(geom.Length(end.Draw(t, name)), geom.Length(end.Draw(t, name)))
		}
		whole := span("whole")
		var shapes []model.Shape
		for range rapid.IntRange(0, 8).Draw(t, "others") {
			s := span("other")
			shapes = append(shapes, model.Shape{Lines: geom.Contour{{Point: geom.Point{X: s.Lo * milli / 10}}, {Point: geom.Point{X: s.Hi * milli / 10}}}})
		}
		spans := newRuler(shapes).stretches[line{}]
		covered, left := parted(whole, spans)
		seen := make([]int, 401)
		for _, s := range append(covered, left...) {
			for i := s.Lo; i < s.Hi; i++ {
				seen[i]++
			}
		}
		lost := 0
		for i := whole.Lo; i < whole.Hi; i++ {
			if seen[i] > 1 {
				t.Fatalf("%v in %v is drawn twice at %d: %v, %v", whole, spans, i, covered, left)
			}
			lost += 1 - seen[i]
		}
		if lost > (leastStretch-1)*(len(spans)+1) {
			t.Fatalf("%v in %v: %v, %v lose %d", whole, spans, covered, left, lost)
		}
	})
}

func TestArcsCompareWhicheverWayTheyRun(t *testing.T) {
	circle := geom.CircleContour(geom.Point{X: 50 * milli, Y: 50 * milli}, 10*milli)
	r := newRuler([]model.Shape{{Closed: true, Lines: circle}})
	if _, other := r.split(circle.Reversed(), true); len(other) > 0 {
		t.Errorf("the same circle the other way round has %d arcs of its own", len(other))
	}
	if same, _ := r.split(geom.CircleContour(geom.Point{X: 50 * milli, Y: 50 * milli}, 11*milli), true); len(same) > 0 {
		t.Error("a larger circle has arcs of the smaller one")
	}
}
