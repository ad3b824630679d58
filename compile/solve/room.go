package solve

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/expr"
	"barwright/lang/length"
)

func (s *solver) wallBlocks() []*lang.Block {
	for _, room := range s.Source.Top("room") {
		return room.Inner("wall")
	}
	return nil
}

// room places the walls one after the other, turning at each corner.
func (s *solver) room() {
	frame := geom.Frame{}
	blocks := s.wallBlocks()
	for _, b := range blocks {
		w := model.Wall{
			Name: b.Name, Length: s.Length(b, "length"), Corner: values.AngleOf(s.Value(b, "corner")),
			Backing: s.Text(b, "backing"), Frame: frame, Studs: s.studs(b), Why: why(b),
		}
		s.onWall(b, &w)
		w.Read = s.readings(b)
		s.m.Room.Walls = append(s.m.Room.Walls, w)
		frame = geom.Frame{Origin: frame.At(w.Length, 0), Turn: frame.Turn + 180*geom.Degree - w.Corner}
	}
	if len(blocks) >= values.ClosedRoom {
		s.checkClosed(blocks, frame)
	}
}

// studs lists the centres of a wall's studs, as listed or as a series.
func (s *solver) studs(wall *lang.Block) []length.Length {
	if s.Value(wall, "studs").Kind != expr.Object {
		return s.Lengths(wall, "studs")
	}
	apart, last := s.FieldLength(wall, "studs", "spacing"), s.Length(wall, "length")
	if end := s.Field(wall, "studs", "last"); end.Kind == expr.Length {
		last = min(last, values.LengthOf(end))
	}
	var out []length.Length
	for at := s.FieldLength(wall, "studs", "first"); at <= last; at += apart {
		if len(out) == mostPieces {
			s.tooMany(wall.Attr("studs").Expr.At, int((last-out[0])/apart)+1, "studs")
			return nil
		}
		out = append(out, at)
	}
	return out
}

// checkClosed notes by how much measured walls miss closing the room.
func (s *solver) checkClosed(walls []*lang.Block, end geom.Frame) {
	miss := length.Length(math.Round(math.Hypot(float64(end.Origin.X), float64(end.Origin.Y))))
	turn := (end.Turn%(360*geom.Degree) + 360*geom.Degree) % (360 * geom.Degree)
	off := min(turn, 360*geom.Degree-turn)
	if miss > s.Marks || off > geom.Degree/10 {
		s.Findings.Notef("room-open", walls[len(walls)-1].Head,
			"The walls as measured do not close: after the last corner one stands %s from where the first wall began, turned by %.2f degrees.",
			s.Show(s.marked(miss)), off.Degrees())
	}
}
