package setting_test

import (
	"fmt"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/setting"
	"barwright/lang/length"
)

const mm = length.Millimetre

func box(u0, v0, z0, u1, v1, z1 setting.Length) geom.Box {
	return geom.Box{U: geom.Span{Lo: u0, Hi: u1}, V: geom.Span{Lo: v0, Hi: v1}, Z: geom.Span{Lo: z0, Hi: z1}}
}

// cabinet is an open box of a run, of boards 18 mm thick, with openings cut through whatever
// they meet.
func cabinet(name string, f geom.Frame, u, wide setting.Length, cuts ...geom.Box) setting.Body {
	const deep, high, board = 600 * mm, 870 * mm, 18 * mm
	b := setting.Body{Name: name}
	for _, p := range []struct {
		name string
		box  geom.Box
	}{
		{"left side", box(u, 0, 0, u+board, deep, high)},
		{"right side", box(u+wide-board, 0, 0, u+wide, deep, high)},
		{"bottom", box(u+board, 0, 100*mm, u+wide-board, deep, 118*mm)},
		{"back", box(u+board, 0, 118*mm, u+wide-board, board, high)},
		{"shelf", box(u+board, 20*mm, 480*mm, u+wide-board, deep-30*mm, 498*mm)},
		{"front rail", box(u+board, deep-100*mm, high-board, u+wide-board, deep, high)},
		{"back rail", box(u+board, board, high-board, u+wide-board, 118*mm, high)},
	} {
		for _, part := range less(p.box, cuts) {
			b.Solids = append(b.Solids, setting.Solid{Name: p.name, Frame: f, Box: part})
		}
	}
	return b
}

// hall has n cabinets in rows of 25 along walls that stand at 90.4 degrees to one another by
// turns, each third over a stub from the wall behind, each row with one more over a stub from
// the side, and a top on each row.
func hall(n int) setting.Room {
	const row, wide = 25, 600 * mm
	var r setting.Room
	r.Fixed = append(r.Fixed, setting.Solid{Name: "floor", Box: box(-50*length.Metre, -50*length.Metre, -mm, 100*length.Metre, 100*length.Metre, 0)})
	for i := range n / row {
		f := geom.Frame{Origin: geom.Point{X: setting.Length(i%5) * 20 * length.Metre, Y: setting.Length(i/5) * 20 * length.Metre}}
		if i%2 == 1 {
			f.Turn = 904 * geom.Degree / 10
		}
		r.Fixed = append(r.Fixed,
			setting.Solid{Name: fmt.Sprint("wall ", i), Frame: f, Box: box(-100*mm, -100*mm, 0, 18*length.Metre, 0, 2500*mm)},
			setting.Solid{Name: fmt.Sprint("side wall ", i), Frame: f, Box: box(-100*mm, 0, 0, 0, 2*length.Metre, 2500*mm)})
		top := setting.Body{Name: fmt.Sprint("top ", i), Solids: []setting.Solid{{Name: "slab", Frame: f, Box: box(0, 0, 870*mm, row*wide, 640*mm, 900*mm)}}}
		for k := range row {
			u := setting.Length(k) * wide
			var cuts []geom.Box
			switch {
			case k == 0:
				side := box(0, 200*mm, 300*mm, 90*mm, 250*mm, 350*mm)
				r.Fixed = append(r.Fixed, setting.Solid{Name: fmt.Sprint("side stub ", i), Frame: f, Box: side})
				cuts = append(cuts, box(-mm, 195*mm, 295*mm, 91*mm, 255*mm, 355*mm))
			case k%3 == 1:
				stub := box(u+250*mm, 0, 300*mm, u+300*mm, 80*mm, 350*mm)
				r.Fixed = append(r.Fixed, setting.Solid{Name: fmt.Sprint("stub ", i, " ", k), Frame: f, Box: stub})
				cuts = append(cuts, box(u+245*mm, -mm, 295*mm, u+305*mm, 81*mm, 355*mm))
			}
			b := cabinet(fmt.Sprint("box ", i, " ", k), f, u, wide, cuts...)
			top.On = append(top.On, b.Name)
			r.Bodies = append(r.Bodies, b)
		}
		r.Bodies = append(r.Bodies, top)
	}
	return r
}

func BenchmarkOrder(b *testing.B) {
	blocked := hall(500)
	blocked.Bodies[1].Stands = true
	byDoor := hall(500)
	byDoor.Lift = 500 * mm
	byDoor.Door = &setting.Door{Frame: geom.Frame{Origin: geom.Point{X: 10 * length.Metre, Y: 95 * length.Metre}, Turn: 180 * geom.Degree}, Span: geom.Span{Hi: 900 * mm}, Landing: length.Metre}
	for _, bench := range []struct {
		name string
		room setting.Room
		open bool
	}{{"500 boxes", hall(500), true}, {"500 boxes by a door", byDoor, true}, {"500 boxes, one blocked", blocked, false}} {
		b.Run(bench.name, func(b *testing.B) {
			for b.Loop() {
				if _, blocked := bench.room.Order(); (blocked == nil) != bench.open {
					b.Fatalf("%+v", blocked)
				}
			}
		})
	}
}
