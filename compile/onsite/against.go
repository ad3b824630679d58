package onsite

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// hook is the room that the end of a tape needs beside an edge (common practice).
const hook = 6 * length.Millimetre

// against reports whether something stands where a tape would hook on to an edge of a part in its
// place: a wall, or another part.
func against(m *model.Model, p *model.Part, e model.Edge) bool {
	at, out := p.Placement, outward(p, e)
	beside := at.Box.Along(out.Axis)
	if out.Neg {
		beside = geom.Span{Lo: beside.Lo - hook, Hi: beside.Lo}
	} else {
		beside = geom.Span{Lo: beside.Hi, Hi: beside.Hi + hook}
	}
	probe := at.Box.With(out.Axis, beside)
	for i := range m.Room.Walls {
		w := &m.Room.Walls[i]
		if in := w.Frame.Around(at.Frame, probe); in.V.Lo < 0 && in.V.Hi > -hook*10 && in.U.Overlaps(geom.Span{Hi: w.Length}) {
			return true
		}
	}
	for i := range m.Parts {
		if q := &m.Parts[i]; q != p && at.Frame.Around(q.Placement.Frame, q.Fitted()).Overlaps(probe) {
			return true
		}
	}
	return false
}

// outward is where an edge of a part looks, in the frame that the part stands in.
func outward(p *model.Part, e model.Edge) geom.Dir {
	at := p.Placement
	return [...]geom.Dir{model.Bottom: at.Y.Opposite(), model.RightEdge: at.X, model.Top: at.Y, model.LeftEdge: at.X.Opposite()}[e]
}
