package solve

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// thing is what stands in or on a wall and must be let through.
type thing struct {
	kind, name string // "outlet", "outlet urn"
	wall       *model.Wall
	clear      geom.Rect     // with its clearance, as one faces the wall: along, height
	face       geom.Span     // where the wall's face is, over its straight plane
	out        length.Length // from that face
	radius     length.Length // of a pipe with its clearance; 0 for a box
	inward     bool          // used from inside the box that stands before it
	cut        model.Cutting
	why        model.Why
	refused    bool // said already: its corners, or what it cannot be cut out of
	warned     bool // said already: the bit for its corners
}

const baseboard = "baseboard"

// things lists what stands in and on the walls, baseboards first.
func (s *solver) things() []thing {
	var bases, out []thing
	for i := range s.m.Room.Walls {
		w := &s.m.Room.Walls[i]
		if w.Base.Height > 0 {
			bases = append(bases, thing{
				kind: baseboard, name: baseboard + " " + w.Name, wall: w, out: w.Base.Thickness, why: w.Base.Why,
				clear: geom.Rect{X: w.Base.Along, Y: geom.Span{Hi: w.Base.Height}},
			})
		}
		for _, o := range w.Outlets {
			out = append(out, thing{
				kind: o.Kind, name: o.Kind + " " + o.Name, wall: w, out: o.StandsOut, inward: true, cut: o.Cut, why: o.Why,
				clear: around(o.Along, o.Height, o.Box.Width, o.Box.Height).Grow(o.Clearance),
			})
		}
		for _, o := range w.Vents {
			out = append(out, thing{
				kind: "vent", name: "vent " + o.Name, wall: w, out: o.StandsOut, inward: true, cut: o.Cut, why: o.Why,
				clear: around(o.Along, o.Height, o.Width, o.Tall).Grow(o.Clearance),
			})
		}
		for _, o := range w.Stubs {
			radius := (o.Diameter+1)/2 + o.Clearance
			out = append(out, thing{
				kind: "stub", name: "stub " + o.Name, wall: w, out: o.StandsOut + o.Clearance, radius: radius, cut: o.Cut, why: o.Why,
				clear: around(o.Along, o.Height, 2*radius, 2*radius),
			})
		}
	}
	out = append(bases, out...)
	for i := range out {
		t := &out[i]
		if t.kind == baseboard && len(t.wall.Read) > 0 {
			t.face, _ = t.wall.Reach(t.clear)
			continue
		}
		off := s.faceAt(t.wall, t.clear.X.Mid(), t.clear.Y.Mid())
		t.face = geom.Span{Lo: off, Hi: off}
	}
	return out
}

// around is the rectangle of a size about a centre.
func around(x, y, width, height length.Length) geom.Rect {
	return geom.Rect{X: geom.About(x, width), Y: geom.About(y, height)}
}
