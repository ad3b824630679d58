package solve

import (
	"barwright/compile/drainway"
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// pipe is a piece of a drain that is laid: a leg of its pipe, or its trap.
type pipe struct {
	frame geom.Frame
	stub  *model.Stub // that it leads to; nil of a trap
	box   geom.Box
	name  string // "the pipe of drain waste"
	why   model.Why
}

// piped keeps what a drain takes of its run, for what is laid after it: the legs of its
// pipe; its tailpiece and trap in the column under the bowl; and its trap along its bend.
func (s *solver) piped(p *plumbing, ask *drainway.Ask, way *drainway.Way) {
	d := &p.drain
	add := func(stub *model.Stub, name string, a, b geom.Spot, z geom.Span) {
		box := geom.Box{U: geom.Between(a.U, b.U).Grow(d.Diameter / 2), V: geom.Between(a.V, b.V).Grow(d.Diameter / 2), Z: z}
		s.pipes = append(s.pipes, pipe{p.run.Frame, stub, box, name + " of " + d.Words(), d.Why})
	}
	trap := geom.Span{Lo: d.Under, Hi: d.Outlet + d.Diameter/2}
	add(nil, "the trap", way.Points[0], way.Points[0], geom.Span{Lo: d.Under, Hi: d.Bowl})
	bend := ask.Bend
	for i := 1; i < len(way.Points); i++ {
		a, b := way.Points[i-1], way.Points[i]
		add(p.stub, "the pipe", a, b, geom.Between(a.Z, b.Z).Grow(d.Diameter/2))
		if step := length.Apart(a.U, b.U) + length.Apart(a.V, b.V); step > 0 && bend > 0 {
			far := min(bend, step)
			add(nil, "the trap", a, geom.Spot{U: onward(a.U, b.U, far), V: onward(a.V, b.V, far)}, trap)
			bend -= far
		}
	}
}

// onward goes from one coordinate towards another, so far, or not where they are the same.
func onward(from, to, far geom.Length) geom.Length {
	return from + min(max(to-from, -far), far)
}

// pipesIn are those of the drains that are laid, as least boxes square to a frame.
func (s *solver) pipesIn(f geom.Frame) []pipe {
	out := make([]pipe, len(s.pipes))
	for i, p := range s.pipes {
		if out[i] = p; p.frame != f {
			out[i].frame, out[i].box = f, f.Around(p.frame, p.box)
		}
	}
	return out
}
