package setting_test

import (
	"fmt"
	"slices"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/setting"
	"barwright/lang/length"
	sf "github.com/peterstace/simplefeatures/geom"
	"pgregory.net/rapid"
)

// prism is a solid in plan, in micrometres, and its height.
type prism struct {
	plan   sf.Geometry
	height geom.Span
	name   string
}

func micrometres(l setting.Length) float64 { return float64(l) / float64(length.Micrometre) }

// shift is a displacement in the room.
type shift struct {
	at geom.Point
	up setting.Length
}

func (d shift) plus(s setting.Slide, back setting.Length) shift {
	if s.Dir.Neg {
		back = -back
	}
	f := geom.Frame{Turn: s.Turn}
	switch s.Dir.Axis {
	case geom.U:
		d.at = d.at.Add(f.At(-back, 0))
	case geom.V:
		d.at = d.at.Add(f.At(0, -back))
	case geom.Z:
		d.up -= back
	}
	return d
}

// sweep is the hull of a solid in two displacements, of which either plan or height is the same.
func sweep(s setting.Solid, from, to shift) prism {
	var points []sf.Point
	for _, d := range []shift{from, to} {
		for _, c := range s.Frame.Corners(s.Box.U, s.Box.V) {
			p := c.Add(d.at)
			points = append(points, sf.XY{X: micrometres(p.X), Y: micrometres(p.Y)}.AsPoint())
		}
	}
	return prism{sf.NewMultiPoint(points).AsGeometry().ConvexHull(), s.Box.Z.Shift(from.up).Union(s.Box.Z.Shift(to.up)), s.Name}
}

// in tells how deep two prisms are in one another: in plan the width of what they share, as if
// it were a sliver, or the height of that, if it is less.
func (p prism) in(q prism) (depth float64, err error) {
	high := micrometres(p.height.Intersect(q.height).Size())
	if high <= 0 || !overlap(p.plan.Envelope(), q.plan.Envelope()) {
		return 0, nil
	}
	both, err := sf.Intersection(p.plan, q.plan)
	if err != nil || both.Area() == 0 {
		return 0, err
	}
	return min(high, 2*both.Area()/both.Boundary().Length()), nil
}

func overlap(a, b sf.Envelope) bool {
	al, ah, _ := a.MinMaxXYs()
	bl, bh, _ := b.MinMaxXYs()
	return al.X < bh.X && bl.X < ah.X && al.Y < bh.Y && bl.Y < ah.Y
}

// audit overlays all that steps sweep with all that then stands, and tells the first collision.
func audit(r setting.Room, steps []setting.Step) error {
	var there []prism
	add := func(name string, solids []setting.Solid) {
		for _, s := range solids {
			p := sweep(s, shift{}, shift{})
			p.name = name + ": " + p.name
			there = append(there, p)
		}
	}
	add("fixed", r.Fixed)
	for _, b := range r.Bodies {
		if b.Stands {
			add(b.Name, b.Solids)
		}
	}
	for _, step := range steps {
		b := r.Bodies[slices.IndexFunc(r.Bodies, func(b setting.Body) bool { return b.Name == step.Body })]
		var at shift
		for i, slide := range slices.Backward(step.Slides) {
			by := slide.By
			if i == 0 && r.Door == nil {
				by += 4 * length.Metre
			}
			to := at.plus(slide, by)
			for _, s := range b.Solids {
				swept := sweep(s, at, to)
				for _, o := range there {
					if depth, err := swept.in(o); err != nil || depth > 2*micrometres(setting.Tolerance) {
						return fmt.Errorf("%s, %s, is %g µm deep in %s, slide %+v (%v)", b.Name, s.Name, depth, o.name, slide, err)
					}
				}
			}
			at = to
		}
		add(b.Name, b.Solids)
	}
	return nil
}

// turnedRoom is a corner of two walls that stand askew, with runs along both, stubs out of
// either wall and cabinets over them, drawn in whole millimetres.
func turnedRoom(t *rapid.T) setting.Room {
	askew := geom.Angle(rapid.SampledFrom([]int{884, 896, 900, 904, 917, 1350}).Draw(t, "tenths of a degree")) * geom.Degree / 10
	frames := []geom.Frame{{}, {Origin: geom.Point{X: 3000 * mm}, Turn: askew}}
	r := setting.Room{Fixed: []setting.Solid{
		{Name: "floor", Box: box(-9000*mm, -9000*mm, -100*mm, 9000*mm, 9000*mm, 0)},
		{Name: "wall", Frame: frames[0], Box: box(0, -100*mm, 0, 3000*mm, 0, 2500*mm)},
		{Name: "other wall", Frame: frames[1], Box: box(0, -100*mm, 0, 3000*mm, 0, 2500*mm)},
	}}
	if rapid.Bool().Draw(t, "side wall") {
		r.Fixed = append(r.Fixed, setting.Solid{Name: "side wall", Box: box(-100*mm, 0, 0, 0, 2000*mm, 2500*mm)})
	}
	if rapid.Bool().Draw(t, "ceiling") {
		r.Fixed = append(r.Fixed, setting.Solid{Name: "ceiling", Box: box(-9000*mm, -9000*mm, 2500*mm, 9000*mm, 9000*mm, 2600*mm)})
	}
	length := func(lo, hi int, label string) setting.Length {
		return setting.Length(rapid.IntRange(lo, hi).Draw(t, label)) * mm
	}
	for k, f := range frames {
		u := length(0, 50, "gap") + setting.Length(k)*length(650, 900, "corner")
		for i := range rapid.IntRange(1, 3).Draw(t, "boxes") {
			wide := length(300, 800, "wide")
			if u+wide > 3000*mm {
				break
			}
			var cuts []geom.Box
			switch rapid.IntRange(0, 3).Draw(t, "stub") {
			case 1:
				at, out := u+length(60, 200, "along"), length(20, 590, "out")
				r.Fixed = append(r.Fixed, setting.Solid{Name: fmt.Sprint("stub ", k, i), Frame: f, Box: box(at, 0, 300*mm, at+40*mm, out, 340*mm)})
				cuts = append(cuts, box(at-mm, -mm, 299*mm, at+41*mm, out+mm, 341*mm))
			case 2:
				out := length(19, 120, "in")
				if i == 0 && k == 0 {
					r.Fixed = append(r.Fixed, setting.Solid{Name: "side stub", Box: box(0, 200*mm, 300*mm, u+out, 240*mm, 340*mm)})
					cuts = append(cuts, box(-mm, 195*mm, 295*mm, u+out+mm, 245*mm, 345*mm))
				}
			}
			r.Bodies = append(r.Bodies, cabinet(fmt.Sprint("box ", k, i), f, u, wide, cuts...))
			u += wide + length(0, 20, "between")
		}
	}
	return r
}

// TestTurned draws corners askew: an order never sweeps through anything, as overlays tell that
// share nothing with the search, and where all can go straight off their walls, none is
// called blocked.
func TestTurned(t *testing.T) {
	orders, slides := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		r := turnedRoom(t)
		steps, blocked := r.Order()
		if blocked != nil {
			if clear(r) {
				t.Fatalf("blocked: %+v", blocked)
			}
			return
		}
		if err := audit(r, steps); err != nil {
			t.Fatalf("%v\n%+v", err, steps)
		}
		orders++
		for _, s := range steps {
			slides = max(slides, len(s.Slides))
		}
	})
	t.Logf("%d orders, at most %d slides in a step", orders, slides)
	if orders == 0 || slides < 2 {
		t.Errorf("too little of a kind was drawn")
	}
}

// clear reports whether each body, last first, can go straight off its wall.
func clear(r setting.Room) bool {
	left := r
	for len(left.Bodies) > 0 {
		last := left.Bodies[len(left.Bodies)-1]
		left.Bodies = slices.Clone(left.Bodies[:len(left.Bodies)-1])
		all := setting.Room{Fixed: left.Fixed, Bodies: append(slices.Clone(left.Bodies), last)}
		for i := range left.Bodies {
			all.Bodies[i].Stands = true
		}
		out := setting.Step{Body: last.Name, Slides: []setting.Slide{{Turn: last.Solids[0].Frame.Turn, Dir: geom.Dir{Axis: geom.V, Neg: true}, By: length.Metre}}}
		if audit(all, []setting.Step{out}) != nil {
			return false
		}
	}
	return true
}

// TestAuditSees makes sure that the audit tells a collision.
func TestAuditSees(t *testing.T) {
	f := geom.Frame{Turn: 904 * geom.Degree / 10}
	r := setting.Room{
		Fixed:  []setting.Solid{{Name: "post", Box: box(-500*mm, 500*mm, 0, -400*mm, 600*mm, mm)}},
		Bodies: []setting.Body{{Name: "plate", Solids: []setting.Solid{{Frame: f, Box: box(0, 0, 0, 600*mm, 100*mm, mm)}}}},
	}
	for _, test := range []struct {
		dir  geom.Dir
		hits bool
	}{{geom.Dir{Axis: geom.V, Neg: true}, true}, {geom.Dir{Axis: geom.V}, false}, {geom.Dir{Axis: geom.U}, false}} {
		err := audit(r, []setting.Step{{Body: "plate", Slides: []setting.Slide{{Turn: f.Turn, Dir: test.dir, By: 300 * mm}}}})
		if (err != nil) != test.hits {
			t.Errorf("%v: %v, want a hit: %v", test.dir, err, test.hits)
		}
	}
}
