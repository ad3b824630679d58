package view

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// quad is a rectangle of the drawing, turned with the thing that it shows.
type quad struct {
	frame geom.Frame // in the view
	u, v  geom.Span
}

func upright(r geom.Rect) quad { return quad{u: r.X, v: r.Y} }

func (q quad) at(u, v Length) geom.Point { return q.frame.At(u, v) }

func (q quad) centre() geom.Point { return q.at(q.u.Mid(), q.v.Mid()) }

func (q quad) contour() geom.Contour {
	return geom.Contour{
		{Point: q.at(q.u.Lo, q.v.Lo)}, {Point: q.at(q.u.Hi, q.v.Lo)},
		{Point: q.at(q.u.Hi, q.v.Hi)}, {Point: q.at(q.u.Lo, q.v.Hi)},
	}
}

func (q quad) box() box {
	return boxAt(q.centre(), q.u.Size(), q.v.Size(), q.frame.Turn)
}

// spots are where within its home a text is tried, in hundredths across and
// up, the middle first.
var spots = [...][2]Length{
	{50, 50}, {50, 62}, {50, 38}, {50, 75}, {50, 25}, {50, 87}, {50, 13},
	{35, 50}, {65, 50}, {35, 62}, {65, 62}, {35, 38}, {65, 38}, {35, 75}, {65, 75},
	{35, 25}, {65, 25}, {20, 50}, {80, 50}, {20, 75}, {80, 75}, {20, 25}, {80, 25},
	{12, 50}, {88, 50}, {12, 87}, {88, 87}, {12, 13}, {88, 13},
}

// inside writes lines within a thing's outline, clear of other outlines if it
// can be. It reports whether there was room.
func (s *sheet) inside(home quad, lines ...string) bool {
	return s.within(home, true, lines) || s.within(home, false, lines)
}

// within writes lines within an outline, across the page or else up it.
func (s *sheet) within(home quad, strictly bool, lines []string) bool {
	b := setBlock(lines, s.h)
	room := home.box()
	room.hw, room.hh = room.hw-float64(s.h)/3, room.hh-float64(s.h)/6
	for _, turn := range [...]geom.Angle{0, 90 * geom.Degree} {
		for _, spot := range spots {
			at := home.at(home.u.Lo+home.u.Size()*spot[0]/100, home.v.Lo+home.v.Size()*spot[1]/100)
			place := boxAt(at, b.w, b.h, turn)
			if room.holds(place) && s.free(place, strictly) {
				s.set(b, at, turn)
				return true
			}
		}
	}
	return false
}

// set adds a block's lines, one below the other.
func (s *sheet) set(b block, at geom.Point, turn geom.Angle) {
	step := s.lineHeight()
	f := geom.Frame{Origin: at, Turn: turn}
	for i, line := range b.lines {
		up := step*Length(len(b.lines)-1)/2 - step*Length(i)
		s.put(s.text(f.At(0, up), turn, line))
	}
}

// ways are the directions in which a callout looks for room; near and distant
// how far it looks, in text heights. To cross an outline near by is better than
// to keep clear at a distance.
const (
	ways    = 24
	near    = 14
	distant = 24
)

// callout writes lines where there is room and leads from them to a point. In
// a drawing with no room at all they stand below it, without a leader.
func (s *sheet) callout(target geom.Point, lines ...string) {
	b := setBlock(lines, s.h)
	anywhere := s.view.Bounds.Grow(1000 * s.h)
	for _, reach := range [...]Length{near * s.h, distant * s.h} {
		if s.search(b, target, anywhere, reach, true) || s.search(b, target, anywhere, reach, false) {
			return
		}
	}
	bounds := s.view.Bounds
	s.set(b, geom.Point{X: bounds.X.Mid(), Y: bounds.Y.Lo - b.h}, 0)
}

// search looks for the nearest place of a callout within an area and a reach.
func (s *sheet) search(b block, target geom.Point, area geom.Rect, reach Length, strictly bool) bool {
	for far := 2 * s.h; far <= reach; far += s.h * 5 / 4 {
		for way := range ways {
			turn := geom.Angle(way)*360*geom.Degree/ways + 45*geom.Degree
			if s.calledOut(b, target, far, turn, area, strictly) {
				return true
			}
		}
	}
	return false
}

// calledOut tries one place of a callout.
func (s *sheet) calledOut(b block, target geom.Point, far Length, way geom.Angle, area geom.Rect, strictly bool) bool {
	knee := geom.Frame{Origin: target, Turn: way}.At(far, 0)
	sin, cos := way.SinCos()
	at := geom.Point{X: knee.X + sideways(b.w, cos), Y: knee.Y + sideways(b.h, sin)}
	place := boxAt(at, b.w, b.h, 0)
	// The leader ends just off the text, where the text is nearest.
	r := place.bounds().Grow(s.h / 5)
	from := geom.Point{
		X: min(max(target.X, r.X.Lo), r.X.Hi),
		Y: min(max(target.Y, r.Y.Lo), r.Y.Hi),
	}
	leader := segOf(from, target)
	if !area.Contains(r) || place.crosses(leader) || !s.free(place, strictly) || !s.open(leader, strictly) {
		return false
	}
	s.set(b, at, 0)
	s.line(model.ShapeLeader, "", "", from, target)
	return true
}

// sideways moves a block's centre off the point that it hangs on.
func sideways(size Length, part float64) Length {
	return Length(math.Round(float64(size) / 2 * part))
}

// name writes lines into a thing, or beside it with a leader.
func (s *sheet) name(home quad, lines ...string) {
	if !s.within(home, true, lines) {
		s.callout(home.centre(), lines...)
	}
}
