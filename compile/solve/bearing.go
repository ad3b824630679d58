package solve

import (
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// bearing is a point at which something stands on the floor, directly or on a shim.
type bearing struct {
	of, point string // "cabinet.urn", "rear left corner"
	at        geom.Point
	up        length.Length // height of what stands on legs, feet or blocks, above the datum
	winds     bool          // it is wound out rather than shimmed
	clears    bool          // the floor may rise under it: it does not set the datum
	why       model.Why
}

// bears notes a bearing point of a run's or knee wall's (u, v).
func (s *solver) bears(f geom.Frame, u, v length.Length, b bearing) {
	b.at = f.At(u, v)
	s.bearings = append(s.bearings, b)
}

// bearsAtCorners notes the four corners of what covers a rectangle of (u, v).
func (s *solver) bearsAtCorners(f geom.Frame, u, v geom.Span, what string, b bearing) {
	s.bears(f, u.Lo, v.Lo, b.under("rear left"+what))
	s.bears(f, u.Hi, v.Lo, b.under("rear right"+what))
	s.bears(f, u.Lo, v.Hi, b.under("front left"+what))
	s.bears(f, u.Hi, v.Hi, b.under("front right"+what))
}

func (b bearing) under(point string) bearing {
	b.point = point
	return b
}

// boxBears notes where a box stands: at the corners of its sides or of its base and the
// ends of the crosspieces between, or on each leg.
func (s *solver) boxBears(c *carcass, run *model.Run, box *model.Box) {
	b, f, hull := bearing{of: box.Key(), why: box.Why}, run.Frame, box.Hull
	switch c.stands {
	case "sides":
		s.bearsAtCorners(f, hull.U, geom.Span{Lo: c.sidesFrom(), Hi: c.line(hull)}, " corner", b)
	case "base":
		v := geom.Span{Lo: c.baseRear, Hi: c.line(hull)}
		s.bearsAtCorners(f, hull.U, v, " corner", b)
		places := s.crosspieces(c, hull.U)
		for n := 1; n+1 < len(places); n++ {
			u, piece := places[n]+c.board.t/2, "crosspiece "+strconv.Itoa(n)
			s.bears(f, u, v.Lo, b.under(piece+", rear end"))
			s.bears(f, u, v.Hi, b.under(piece+", front end"))
		}
	case "legs":
		b.up, b.winds = c.toeHeight, true
		for n, leg := range box.Legs {
			s.bears(f, leg.U.Mid(), leg.V.Mid(), b.under("leg "+strconv.Itoa(n+1)))
		}
	}
}

// applianceBears notes the corners of its blocks or, where it has none, its feet. Where
// these are wound out anyway, the floor may rise under them.
func (s *solver) applianceBears(run *model.Run, box *model.Box, blocks []geom.Span, v geom.Span) {
	b := bearing{of: box.Key(), up: box.BlockHeight, why: box.Why}
	if len(blocks) == 0 {
		b.winds, b.clears = true, box.BlockHeight > 0
		s.bearsAtCorners(run.Frame, box.Appliance.U, box.Appliance.V, " foot", b)
		return
	}
	for n, u := range blocks {
		side := [...]string{"left", "right"}[n]
		s.bears(run.Frame, u.Mid(), v.Lo, b.under(side+" block, rear end"))
		s.bears(run.Frame, u.Mid(), v.Hi, b.under(side+" block, front end"))
	}
}

// kneeBears notes both ends of a lower plate and each stud between, along its middle.
func (s *solver) kneeBears(k *knee) {
	b := bearing{of: "knee_wall." + k.wall.Name, why: k.wall.Why}
	f, v := k.wall.Framing.U, k.wall.Framing.V.Mid()
	s.bears(k.wall.Frame, f.Lo, v, b.under("left end"))
	for n := 1; n+1 < len(k.wall.Studs); n++ {
		s.bears(k.wall.Frame, k.wall.Studs[n], v, b.under("stud "+strconv.Itoa(n+1)))
	}
	s.bears(k.wall.Frame, f.Hi, v, b.under("right end"))
}
