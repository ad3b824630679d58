package passing

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

const inch = length.Inch

// rod is a pipe that goes through one board of a box: its axis and how far it
// reaches into the box, in the box's own frame.
type rod struct {
	from, to [3]length.Length // at the wall, and its tip
	by       geom.Dir         // from its wall into the room
}

// TestWaysOver compares the ways that openings allow with a slow look at the same
// thing: the box is drawn back a quarter of an inch at a time, and no point of a rod
// may be in wood. Boards and rods are drawn by lot, openings as the solver cuts them.
func TestWaysOver(t *testing.T) {
	axes := []geom.Dir{{Axis: geom.U}, {Axis: geom.U, Neg: true}, {Axis: geom.V}, {Axis: geom.V, Neg: true}, {Axis: geom.Z}, {Axis: geom.Z, Neg: true}}
	box := geom.Box{U: geom.Span{Hi: 30 * inch}, V: geom.Span{Hi: 24 * inch}, Z: geom.Span{Hi: 34 * inch}}
	boards := []struct {
		box geom.Box
		out geom.Dir // that its drawn face looks to: into the box
		by  geom.Dir // that a rod comes from outside
	}{
		{box.With(geom.U, geom.Span{Hi: inch}), geom.Dir{Axis: geom.U}, geom.Dir{Axis: geom.U}},
		{box.With(geom.U, geom.Span{Lo: 29 * inch, Hi: 30 * inch}), geom.Dir{Axis: geom.U, Neg: true}, geom.Dir{Axis: geom.U, Neg: true}},
		{box.With(geom.V, geom.Span{Hi: inch}), geom.Dir{Axis: geom.V}, geom.Dir{Axis: geom.V}},
	}
	rapid.Check(t, func(t *rapid.T) {
		var parts []model.Part
		var rods []rod
		var met []protrusion
		for i, board := range boards {
			p := model.Part{Placement: geom.Place(geom.Frame{}, board.box, board.out)}
			if rapid.Bool().Draw(t, "pierced") {
				r := rod{by: board.by}
				for axis := geom.U; axis <= geom.Z; axis++ {
					at := length.Length(rapid.IntRange(6, 18).Draw(t, "at")) * inch
					r.from[axis], r.to[axis] = at, at
				}
				end := board.box.Along(board.by.Axis).Lo
				reach := length.Length(rapid.IntRange(3, 5).Draw(t, "reach")) * inch
				if board.by.Neg {
					end, reach = board.box.Along(board.by.Axis).Hi, -reach
				}
				r.from[board.by.Axis], r.to[board.by.Axis] = end-reach, end+reach
				hole := geom.Box{U: geom.About(r.from[0], inch), V: geom.About(r.from[1], inch), Z: geom.About(r.from[2], inch)}
				hole = hole.With(board.by.Axis, board.box.Along(board.by.Axis))
				if open := rapid.SampledFrom(append(slices.Clone(axes), geom.Dir{Axis: board.by.Axis})).Draw(t, "open"); open.Axis != board.by.Axis {
					s := hole.Along(open.Axis)
					if whole := board.box.Along(open.Axis); open.Neg {
						s.Lo = whole.Lo
					} else {
						s.Hi = whole.Hi
					}
					hole = hole.With(open.Axis, s)
				}
				face, _ := p.Placement.Local(hole)
				o := protrusion{on: inRoom(geom.Frame{}, board.by.Opposite()), z: geom.About(r.from[2], 0)}
				o.why.At.Start.Byte = i
				from, to := geom.Point{X: r.from[0], Y: r.from[1]}, geom.Point{X: r.to[0], Y: r.to[1]}
				o.plan = [4]geom.Point{from, to, to, from}
				opening := model.Opening{Why: o.why, Shape: geom.RectContour(face), Notch: !p.Placement.Blank().Grow(-1).Contains(face)}
				p.Openings = append(p.Openings, opening)
				met = withOpening(met, o, &p, &opening)
				rods = append(rods, r)
			}
			parts = append(parts, p)
		}
		if len(met) == 0 {
			return
		}
		boards := make([]*model.Part, len(parts))
		for i := range parts {
			boards[i] = &parts[i]
		}
		for i := range met {
			met[i].past(geom.Frame{}, boards)
		}
		ways := waysOver(met)
		for _, d := range axes {
			if got, want := leads(ways, inRoom(geom.Frame{}, d)), free(parts, rods, d); got != want {
				t.Fatalf("%v: the openings allow it: %v, no wood is in the way: %v", d, got, want)
			}
		}
	})
}

// free reports whether a box can come to its place in a direction: drawn back against
// it by steps, no board meets a rod, nor a wall that rods come out of.
func free(parts []model.Part, rods []rod, d geom.Dir) bool {
	if slices.ContainsFunc(rods, func(r rod) bool { return r.by == d }) {
		return false
	}
	for back := length.Length(0); back <= 40*inch; back += inch / 4 {
		move := [3]length.Length{}
		move[d.Axis] = -back
		if d.Neg {
			move[d.Axis] = back
		}
		for i := range parts {
			for _, r := range rods {
				if inWood(&parts[i], r, move) {
					return false
				}
			}
		}
	}
	return true
}

func inWood(p *model.Part, r rod, move [3]length.Length) bool {
	const steps = 64
	for k := range length.Length(steps + 1) {
		var at [3]length.Length
		for axis := range at {
			at[axis] = r.from[axis] + (r.to[axis]-r.from[axis])*k/steps - move[axis]
		}
		point := geom.Box{U: geom.Span{Lo: at[0], Hi: at[0]}, V: geom.Span{Lo: at[1], Hi: at[1]}, Z: geom.Span{Lo: at[2], Hi: at[2]}}
		box := p.Placement.Box
		if !within(box.U, at[0]) || !within(box.V, at[1]) || !within(box.Z, at[2]) {
			continue
		}
		face, _ := p.Placement.Local(point)
		if len(p.Openings) == 0 || !p.Openings[0].Shape.Bounds().Contains(face) {
			return true
		}
	}
	return false
}

func within(s geom.Span, x length.Length) bool { return s.Lo < x && x < s.Hi }
