package place

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/setting"
	"barwright/lang/length"
	"barwright/lang/source"
)

const (
	// Floor, ceiling and walls are this thick behind their faces: thinner than any wall with room behind it.
	thick = length.Millimetre
	// A stretch of wall is free where nothing stands nearer to it than near, for as long as wide.
	near = 100 * length.Millimetre
	wide = 600 * length.Millimetre
)

// fixed lists what stands before anything is set. What it is in the text, by the name of its
// solids, tells places; lookup only.
func (s *site) fixed(door *setting.Door, doorWall string) (out []setting.Solid, places map[string]source.Range) {
	out = append(out, setting.Solid{Name: "the floor", Box: geom.Box{U: everywhere, V: everywhere, Z: geom.Span{Lo: -thick}}})
	if high := s.ceiling(); high > 0 {
		out = append(out, setting.Solid{Name: "the ceiling", Box: geom.Box{U: everywhere, V: everywhere, Z: geom.Span{Lo: high, Hi: high + thick}}})
	}
	places = map[string]source.Range{}
	for i := range s.Room.Walls {
		w := &s.Room.Walls[i]
		name := "wall " + w.Name
		places[name] = w.Why.At
		add := func(name string, b geom.Box) { out = append(out, setting.Solid{Name: name, Frame: w.Frame, Box: b}) }
		behind := geom.Span{Lo: -thick}
		spans := []geom.Span{{Hi: w.Length}}
		switch {
		case door == nil:
			spans = s.builtOn(w)
		case w.Name == doorWall:
			spans = []geom.Span{{Hi: door.Span.Lo}, {Lo: door.Span.Hi, Hi: w.Length}}
			add(name, geom.Box{U: door.Span, V: behind, Z: geom.Span{Lo: door.Height, Hi: everywhere.Hi}})
		}
		for _, u := range spans {
			if u.Size() > 0 {
				add(name, geom.Box{U: u, V: behind, Z: everywhere})
			}
		}
		for _, f := range w.Fixtures() {
			if f.StandsOut > 0 {
				places[f.Words()] = f.Why.At
				add(f.Words(), geom.Box{U: f.Face.X, V: f.Out, Z: f.Face.Y})
				s.standing = append(s.standing, out[len(out)-1])
			}
		}
		if w.Base.Height > 0 {
			name := "baseboard of wall " + w.Name
			places[name] = w.Base.Why.At
			add(name, geom.Box{U: w.Base.Along, V: geom.Span{Hi: w.Base.Thickness}, Z: geom.Span{Hi: w.Base.Height}})
		}
	}
	return out, places
}

// ceiling is the room's height, 0 where it is not said.
func (s *site) ceiling() length.Length {
	for _, room := range s.Source.Top("room") {
		if s.Has(room, "ceiling") {
			return s.Length(room, "ceiling")
		}
	}
	return 0
}

// builtOn lists the stretches of a wall along which something stands, rising. Where no doorway
// is told, things come in through the others.
func (s *site) builtOn(w *model.Wall) []geom.Span {
	var spans []geom.Span
	for i := range s.bodies {
		at, whole := w.Frame.Around(s.bodies[i].frame, s.bodies[i].hull), geom.Span{Hi: w.Length}
		if at.V.Lo <= near && at.V.Hi > 0 && at.U.Overlaps(whole) {
			spans = append(spans, at.U.Intersect(whole))
		}
	}
	slices.SortFunc(spans, func(a, b geom.Span) int { return cmp.Compare(a.Lo, b.Lo) })
	var out []geom.Span
	for _, u := range spans {
		if u.Lo < wide {
			u.Lo = 0
		}
		if w.Length-u.Hi < wide {
			u.Hi = w.Length
		}
		if last := len(out) - 1; last >= 0 && u.Lo-out[last].Hi < wide {
			out[last] = out[last].Union(u)
		} else {
			out = append(out, u)
		}
	}
	return out
}
