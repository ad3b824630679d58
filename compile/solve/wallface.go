package solve

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/survey"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// readings are those of a wall.
func (s *solver) readings(wall *lang.Block) []model.WallReading {
	var out []model.WallReading
	for _, b := range wall.Inner("reading") {
		at := s.Lengths(b, "at")
		out = append(out, model.WallReading{Along: at[0], Height: at[1], Off: s.Length(b, "off"), Why: why(b)})
	}
	return out
}

// faceOf is the face of a wall over its straight plane, made once.
func (s *solver) faceOf(wall *model.Wall) survey.Surface {
	face, made := s.faces[wall.Name]
	if !made {
		face = wall.Face()
		s.faces[wall.Name] = face
	}
	return face
}

// faceAt is how far a wall's face stands out of its straight plane at a place along it and up.
func (s *solver) faceAt(wall *model.Wall, along, height length.Length) length.Length {
	off, _ := s.faceOf(wall).At(geom.Point{X: along, Y: height})
	return off
}

// standOff is how far out from the straight plane of its wall a run stands, so that no
// box of it meets the wall's face.
func (s *solver) standOff(run *model.Run, wall *model.Wall, along geom.Span) length.Length {
	if len(wall.Read) == 0 {
		return 0
	}
	off, at := wall.Reach(geom.Rect{X: along, Y: geom.Span{Hi: run.Height}})
	s.m.Setting.Rears = append(s.m.Setting.Rears, model.Rear{Run: run.Name, Wall: wall.Name, Off: off.Hi, At: at})
	return off.Hi
}

// backGaps measures what is open behind each cabinet along a wall that was read, where its
// screws go into the wall.
func (s *solver) backGaps() {
	for i := range s.cabinets {
		c := &s.cabinets[i]
		run := &s.m.Runs[c.run]
		box := &run.Boxes[c.box]
		if wall := s.wall(run.Wall); box.Kind == model.Cabinet && run.Along && len(wall.Read) > 0 {
			s.backGap(c, run, box, wall)
		}
	}
}

func (s *solver) backGap(c *cabinet, run *model.Run, box *model.Box, wall *model.Wall) {
	rear := c.stretcher.V.Lo // of what the screws draw to the wall: the back, or the stretcher behind it
	for i := c.first; i < c.last; i++ {
		if p := &s.m.Parts[i]; p.Is("cabinet", "back") {
			rear = min(rear, p.Placement.Box.V.Lo)
		}
	}
	face, off := s.faceOf(wall), s.stands[c.run].back.Y
	step := s.FieldLength(s.limits(), "shim", "step")
	for _, along := range run.WallLines(box, wall) {
		at := geom.Point{X: along, Y: c.stretcher.Z.Mid()}
		out, _ := face.At(at)
		gap := off + rear - out
		s.m.Setting.Gaps = append(s.m.Setting.Gaps, model.Gap{
			Run: run.Name, Box: box.Key(), Along: at.X, Height: at.Y,
			Gap: gap, Behind: off - out, Shim: length.Round(gap, step), Why: box.Why,
		})
	}
}

// checkReadings looks for readings beside a wall, and for two at one place.
func (s *solver) checkReadings(wall *lang.Block, within geom.Span) {
	first := map[geom.Point]*lang.Block{} // lookup only
	for _, b := range wall.Inner("reading") {
		place := s.Value(b, "at")
		if place.Kind != expr.List {
			continue
		}
		at := geom.Point{X: values.LengthOf(place.Items[0]), Y: values.LengthOf(place.Items[1])}
		one := first[at]
		switch {
		case !within.Holds(at.X):
			s.Findings.Errorf("outside-wall", place.Items[0].At, "", "The reading is at %s along %s, which is %s long: %s outside.",
				s.Show(at.X), wall.Describe(), s.Show(within.Hi), s.Show(max(-at.X, at.X-within.Hi))).
				Also(wall.Attr("length").Expr.At, "the wall's length")
		case one != nil:
			s.Findings.Errorf("reading-twice", place.At, "leave one of them out", "%s is read twice at %s along and %s up.",
				finding.Capital(wall.Describe()), s.Show(at.X), s.Show(at.Y)).
				Also(one.Head, "the first stands here")
		default:
			first[at] = b
		}
	}
}
