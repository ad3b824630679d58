package template

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
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

// Steel that a machine's relief lets in is square, and so is its recess. A bit of 6 led by
// hand leaves corners of 3, and the bush of 16 has 8 in the template: 3 + (16 - 6) / 2. The
// board keeps 75 round an opening from 35 to 90 + (16 + 6) / 2 + 2 = 103, and the arrow to the
// run, which is below, has its tip on the board's edge at -40.
func TestTemplateOfRelievedRecess(t *testing.T) {
	part := model.Part{Outline: geom.RectContour(geom.R(0, 0, 900*mm, 90*mm))}
	part.ID = "knee_wall.bar/plate"
	part.Placement.Y = geom.Dir{Axis: geom.V, Neg: true}
	recess := model.Recess{Shape: geom.RectContour(geom.R(270*mm, 40*mm, 330*mm, 90*mm)), Open: []model.Edge{model.Top}, Depth: 12 * mm}
	j := job{guide: model.Guide{Bush: 16 * mm, Bit: 6 * mm}, router: &lang.Block{Name: "bench"}}
	got := j.template(&recess, &part, 300*mm)
	if radius := got.Opening[1].X - got.Opening[0].X; got.Corner != 3*mm || radius != 54*mm || got.Opening.Bounds() != geom.R(-35*mm, 35*mm, 35*mm, 103*mm) {
		t.Errorf("corner %d, straight part of the end %d, opening %v", got.Corner, radius, got.Opening)
	}
	if got.Run != model.Bottom {
		t.Errorf("the run is at the %s", got.Run)
	}
	tip := geom.Point{Y: -40 * mm}
	arrow := []model.Mark{
		{Name: "to the run", From: tip, To: geom.Point{X: -8 * mm, Y: -32 * mm}},
		{Name: "to the run", From: tip, To: geom.Point{X: 8 * mm, Y: -32 * mm}},
	}
	if diff := cmp.Diff(arrow, got.Marks[2:4]); diff != "" {
		t.Error(diff)
	}
}

// No corner of a recess that is open on two sides across from one another is closed.
func TestCornerOfThroughRecess(t *testing.T) {
	j := job{guide: model.Guide{Bush: 16 * mm, Bit: 6 * mm}}
	if c := j.corner(&model.Recess{Open: []model.Edge{model.Top, model.Bottom}}); c != 0 {
		t.Errorf("a corner of %d", c)
	}
}
