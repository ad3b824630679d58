package template

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// A recess 60 mm wide runs in by 50 from the upper edge of wood of 90, with corners of 4 at
// its end. The bush of 16 is led round it with a bit of 6: (16 - 6) / 2 = 5 wider, corners of
// 9, and past the open side by (16 + 6) / 2 + 2 = 13; there the bush rounds by 8.
func TestOpening(t *testing.T) {
	j := job{guide: model.Guide{Bush: 16 * mm, Bit: 6 * mm}}
	c := j.opening(geom.R(-30*mm, 40*mm, 30*mm, 90*mm), []model.Edge{model.Top}, 4*mm)
	at := func(x, y geom.Length, bulge float64) geom.Vertex {
		return geom.Vertex{Point: geom.Point{X: x * mm, Y: y * mm}, Bulge: bulge}
	}
	const q = geom.QuarterBulge
	want := geom.Contour{
		at(-26, 35, 0), at(26, 35, q), at(35, 44, 0), at(35, 95, q),
		at(27, 103, 0), at(-27, 103, q), at(-35, 95, 0), at(-35, 44, q),
	}
	if diff := cmp.Diff(want, c); diff != "" {
		t.Error(diff)
	}
}

// A bearing as wide as the bit has an opening as large as the recess.
func TestOpeningOfBearing(t *testing.T) {
	j := job{guide: model.Guide{Bearing: 6 * mm, Bit: 6 * mm}}
	c := j.opening(geom.R(0, 0, 40*mm, 50*mm), nil, 5*mm)
	if want := geom.RoundedContour(geom.R(0, 0, 40*mm, 50*mm), 5*mm); c.Area() != want.Area() || c.Bounds() != want.Bounds() {
		t.Errorf("%v, want %v", c, want)
	}
}
