package setting_test

import (
	"fmt"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/setting"
	"barwright/lang/length"
)

// bar is a room by a door at the far wall, with cabinets behind a knee wall: a run along the
// first wall over stubs, one along the right wall, which stands at 90.4 degrees, and one against the
// knee wall, which is half a degree askew. The knee wall leaves a gap at the left wall.
func bar(gap setting.Length) setting.Room {
	const m = length.Metre
	rightWall := geom.Frame{Origin: geom.Point{X: 6 * m}, Turn: 904 * geom.Degree / 10}
	knee := geom.Frame{Origin: geom.Point{X: 4 * m, Y: 3 * m}, Turn: 1795 * geom.Degree / 10}
	r := setting.Room{
		Door: &setting.Door{Frame: geom.Frame{Origin: geom.Point{X: 5 * m, Y: 9 * m}, Turn: 180 * geom.Degree}, Span: geom.Span{Hi: 900 * mm}, Height: 2 * m, Landing: m},
		Fixed: []setting.Solid{
			{Name: "floor", Box: box(-m, -m, -100*mm, 12*m, 12*m, 0)},
			{Name: "ceiling", Box: box(-m, -m, 2500*mm, 12*m, 12*m, 2600*mm)},
			{Name: "wall", Box: box(-100*mm, -100*mm, 0, 6*m, 0, 2500*mm)},
			{Name: "left wall", Box: box(-100*mm, 0, 0, 0, 9*m, 2500*mm)},
			{Name: "right wall", Frame: rightWall, Box: box(0, -100*mm, 0, 9*m, 0, 2500*mm)},
			{Name: "knee wall", Frame: knee, Box: box(-2*m, -100*mm, 0, 4*m-gap, 0, 1050*mm)},
			{Name: "side drain", Box: box(0, 200*mm, 300*mm, 90*mm, 250*mm, 350*mm)},
			{Name: "drain", Box: box(850*mm, 0, 300*mm, 900*mm, 80*mm, 350*mm)},
		},
	}
	cuts := []geom.Box{box(-mm, 195*mm, 295*mm, 91*mm, 255*mm, 355*mm), box(845*mm, -mm, 295*mm, 905*mm, 81*mm, 355*mm)}
	for i := range 8 {
		r.Bodies = append(r.Bodies, cabinet(fmt.Sprint("back ", i), geom.Frame{}, setting.Length(i)*600*mm, 600*mm, cuts...))
	}
	for i := range 3 {
		r.Bodies = append(r.Bodies, cabinet(fmt.Sprint("right ", i), rightWall, setting.Length(i)*600*mm+700*mm, 600*mm))
	}
	for i := range 4 {
		r.Bodies = append(r.Bodies, cabinet(fmt.Sprint("front ", i), knee, setting.Length(i)*600*mm, 600*mm))
	}
	return r
}

// TestBar: cabinets 600 mm deep come round the knee wall where the gap lets them, or over it where
// they may be lifted so high, and not otherwise.
func TestBar(t *testing.T) {
	for _, test := range []struct {
		gap, lift setting.Length
		open      bool
	}{
		{gap: 0, lift: 0, open: true},
		{gap: 0, lift: 1049 * mm, open: false},
		{gap: 0, lift: 1050 * mm, open: true},
		{gap: 590 * mm, lift: 500 * mm, open: false},
		{gap: 700 * mm, lift: 500 * mm, open: true},
	} {
		r := bar(test.gap)
		r.Lift = test.lift
		steps, blocked := r.Order()
		if (blocked == nil) != test.open || blocked != nil && blocked.GaveUp {
			t.Errorf("gap %v, lift %v: blocked %+v", test.gap, test.lift, blocked)
		}
		if err := audit(r, steps); err != nil {
			t.Errorf("gap %v, lift %v: %v", test.gap, test.lift, err)
		}
		for _, s := range steps {
			for _, slide := range s.Slides {
				if test.lift == 500*mm && slide.Dir.Axis == geom.Z && slide.By > test.lift {
					t.Errorf("%+v", s)
				}
			}
		}
	}
}

// TestNotMilesAway: a skin behind a bar that stands 0.4 degrees askew to the doorway's wall goes
// round the free end of the bar. Lines askew by so little meet 140 times as far away as they are
// apart, and two slides back and forth along them come to the same place.
func TestNotMilesAway(t *testing.T) {
	askew := geom.Frame{Origin: geom.Point{X: 136 * inch, Y: 93 * inch}, Turn: 1804 * geom.Degree / 10}
	r := setting.Room{
		Door: &setting.Door{Span: geom.Span{Lo: 2 * inch, Hi: 32 * inch}, Height: 78 * inch, Landing: 36 * inch},
		Lift: 6 * inch,
		Fixed: []setting.Solid{
			{Name: "wall", Box: box(32*inch, -6*inch, 0, 136*inch, 0, 90*inch)},
			{Name: "end wall", Frame: geom.Frame{Origin: geom.Point{X: 136 * inch}, Turn: 904 * geom.Degree / 10}, Box: box(0, -6*inch, 0, 122*inch, 0, 90*inch)},
			{Name: "bar", Frame: askew, Box: box(inch, 0, 0, 110*inch, 26*inch, 40*inch)},
		},
		Bodies: []setting.Body{{Name: "skin", Solids: []setting.Solid{{Name: "skin", Frame: askew, Box: box(inch, -inch/4, 0, 109*inch, 0, 40*inch)}}}},
	}
	steps, blocked := r.Order()
	if blocked != nil {
		t.Fatalf("%+v", blocked)
	}
	if err := audit(r, steps); err != nil {
		t.Error(err)
	}
	for _, slide := range steps[0].Slides {
		if slide.By > 20*12*inch {
			t.Errorf("%+v", slide)
		}
	}
}
