package place

import (
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/setting"
)

// towards tells the directions of a body's own frame in words.
var towards = [...][2]string{geom.U: {"to the right", "to the left"}, geom.V: {"to the front", "to the rear"}, geom.Z: {"up", "down"}}

// slides tells those of a body.
func (r *room) slides(o *body, slides []setting.Slide) []model.Slide {
	out := make([]model.Slide, len(slides))
	off := geom.Spot{} // from its place, after the slide that is looked at
	for i, s := range slices.Backward(slides) {
		before := begins(s, o.frame, off)
		out[i] = model.Slide{To: direction(o.frame, s), By: s.By, Over: r.over(o, before, off)}
		off = before
	}
	return out
}

// direction is the one of a body's own that is nearest to that of a slide.
func direction(f geom.Frame, s setting.Slide) string {
	if s.Dir.Axis == geom.Z {
		return word(s.Dir)
	}
	turn := (s.Turn - f.Turn) % (360 * geom.Degree)
	if s.Dir.Axis == geom.V {
		turn += 90 * geom.Degree
	}
	if s.Dir.Neg {
		turn += 180 * geom.Degree
	}
	quarters := int(math.Round(turn.Degrees()/90))%4 + 4
	return word([...]geom.Dir{{Axis: geom.U}, {Axis: geom.V}, {Axis: geom.U, Neg: true}, {Axis: geom.V, Neg: true}}[quarters%4])
}

func word(d geom.Dir) string {
	if d.Neg {
		return towards[d.Axis][1]
	}
	return towards[d.Axis][0]
}

// begins is where a slide of a body begins, by where it ends; both off its place, in its own frame.
func begins(s setting.Slide, f geom.Frame, end geom.Spot) geom.Spot {
	by := -s.By
	if s.Dir.Neg {
		by = s.By
	}
	if s.Dir.Axis == geom.Z {
		end.Z += by
		return end
	}
	in := geom.Frame{Turn: s.Turn - f.Turn}
	at := in.At(by, 0)
	if s.Dir.Axis == geom.V {
		at = in.At(0, by)
	}
	return geom.Spot{U: end.U + at.X, V: end.V + at.Y, Z: end.Z}
}

// over lists what stands out of the walls that a body comes over on the way from one place to
// another: it is clear of its hull at first and within it then.
func (r *room) over(o *body, from, to geom.Spot) (names []string) {
	for _, out := range r.standing {
		at := o.frame.Around(out.Frame, out.Box)
		if meets(o.hull, to, at) && !meets(o.hull, from, at) {
			names = append(names, out.Name)
		}
	}
	return names
}

// meets reports whether a hull, off its place, is in a box by more than touches.
func meets(hull geom.Box, off geom.Spot, b geom.Box) bool {
	hull.U, hull.V, hull.Z = hull.U.Shift(off.U), hull.V.Shift(off.V), hull.Z.Shift(off.Z)
	for axis := geom.U; axis <= geom.Z; axis++ {
		if !hull.Along(axis).Grow(-setting.Tolerance).Overlaps(b.Along(axis)) {
			return false
		}
	}
	return true
}
