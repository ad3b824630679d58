package revision

import (
	"slices"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"

	"pgregory.net/rapid"
)

// What is found in the grids is what a look at every shape finds.
func TestHiddenIsBehindAnother(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.Int64Range(-40, 40)
		var shapes []model.Shape
		for range rapid.IntRange(1, 12).Draw(t, "shapes") {
			x, y := at.Draw(t, "x"), at.Draw(t, "y")
			w, h := rapid.Int64Range(1, 60).Draw(t, "w"), rapid.Int64Range(1, 60).Draw(t, "h")
			shapes = append(shapes, area(length.Length(x), length.Length(y), length.Length(x+w), length.Length(y+h)))
		}
		found := hiders(shapes)
		for i := range shapes {
			want := slices.ContainsFunc(shapes[i+1:], func(o model.Shape) bool {
				return o.Lines.Bounds().Contains(shapes[i].Lines.Bounds())
			})
			if found.hide(shapes, i) != want {
				t.Fatalf("shape %d is hidden: %v", i, !want)
			}
		}
	})
}

// BenchmarkOver lays drawings of many boxes over each other, all of them moved.
func BenchmarkOver(b *testing.B) {
	var old, now []model.Shape
	for i := range length.Length(1000) {
		for j := range length.Length(20) {
			s := area(700*i+5*j, 10*j, 700*i+690-5*j, 800-10*j)
			old = append(old, s)
			s.Lines = s.Lines.Shifted(geom.Point{Y: 13 * milli})
			now = append(now, s)
		}
	}
	never := func(*model.Shape) bool { return false }
	for b.Loop() {
		over(old, now, never)
	}
}
