package view

import (
	"math"
	"strings"
	"sync"

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
	if s.lost {
		return true
	}
	b := setBlock(lines, s.h)
	room := home.box()
	room.hw, room.hh = room.hw-float64(s.h)/3, room.hh-float64(s.h)/6
	for _, turn := range [...]geom.Angle{0, 90 * geom.Degree} {
		for _, spot := range spots {
			at := home.at(home.u.Lo+home.u.Size()*spot[0]/100, home.v.Lo+home.v.Size()*spot[1]/100)
			place := boxAt(at, b.w, b.h, turn)
			if room.holds(&place) && s.free(place, strictly) {
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

// ways are the directions in which a callout looks for room; distant is how far it
// looks, in text heights, and farthest where nothing is found so near.
const (
	ways     = 24
	distant  = 24
	farthest = 72
)

type direction struct{ sin, cos float64 }

var directions = sync.OnceValue(func() (all [ways]direction) {
	for way := range all {
		turn := geom.Angle(way)*360*geom.Degree/ways + 45*geom.Degree
		all[way].sin, all[way].cos = turn.SinCos()
	}
	return all
})

// calledOut is how many names of a drawing are led to what has no room for them; more would hide it. One
// in which so many as crowdedAt found no room is full: no more is looked for.
const (
	calledOut = 160
	crowdedAt = 24
)

// full reports whether no more callouts are tried.
func (s *sheet) full() bool { return s.lost || s.called >= calledOut || len(s.crowded) >= crowdedAt }

// What a callout gives up for a better place, in text heights of distance: over
// outlines a text is hard to read, close to another text the two read as one, a
// leader that crosses lines is hard to follow, and one line reads best.
const (
	costOverOutline  = 40
	costCloseToText  = 6
	costLeaderOver   = 2 // each outline
	costLeaderAcross = 6 // each thin line
	costMoreLines    = 1 // each line of the text
)

// callout writes lines where there is room and leads from them to a point; the
// first may be written as two. In a drawing with no room at all the note has them.
func (s *sheet) callout(target geom.Point, lines ...string) {
	blocks := []block{setBlock(lines, s.h)}
	if first, rest, two := strings.Cut(lines[0], " "); two {
		blocks = append(blocks, setBlock(append([]string{first, rest}, lines[1:]...), s.h))
	}
	if s.search(blocks, target, anywhere) || s.searchTo(distant, farthest, blocks, target, anywhere, false) {
		return
	}
	s.crowded = append(s.crowded, strings.Join(lines, " "))
}

// candidate is a place of a callout: the middle of its text and where its leader
// begins.
type candidate struct {
	block      *block
	at, from   geom.Point
	text       box
	fromTarget Length
	costs
}

// costs are what a candidate's place costs beside its distance.
type costs struct {
	overLines bool // the text crosses outlines
	closeBy   bool // another text is less than half a letter away
	outlines  int  // that the leader crosses
	thin      int  // thin lines that it crosses
}

func (p *candidate) cost(h Length) Length {
	c := Length(p.outlines)*costLeaderOver + Length(p.thin)*costLeaderAcross + Length(len(p.block.lines))*costMoreLines
	if p.overLines {
		c += costOverOutline
	}
	if p.closeBy {
		c += costCloseToText
	}
	return p.fromTarget + c*h
}

func anywhere(*candidate) bool { return true }

// search writes one of the blocks at the best of the places that suit, the nearest
// and first of equals. It reports whether there was one.
func (s *sheet) search(blocks []block, target geom.Point, suits func(*candidate) bool) bool {
	return s.searchTo(0, distant, blocks, target, suits, false)
}

// searchTo does so, farther than some and as far as so many text heights; where it must be clean, the
// text crosses no outline and its leader no thin line.
func (s *sheet) searchTo(beyond, reach Length, blocks []block, target geom.Point, suits func(*candidate) bool, clean bool) bool {
	if s.full() {
		return false
	}
	var p, best candidate
	var inWay [ways]*box                         // the text that a leader ran into last
	found, under := false, Length(math.MaxInt64) // what the best costs
	for far := 2 * s.h; far <= reach*s.h && far < under; far += s.h * 5 / 4 {
		if far <= beyond*s.h {
			continue
		}
		for i, way := range directions() {
			for k := range blocks {
				p.block, p.fromTarget, p.costs = &blocks[k], far, costs{}
				better := func() bool { return p.cost(s.h) < under }
				if !better() {
					continue
				}
				p.hang(target, way, s.h)
				if !suits(&p) || !s.legible(&p, target, &inWay[i]) || clean && p.overLines || !better() {
					continue
				}
				if s.weigh(&p, target, under); better() && !(clean && p.thin > 0) {
					best, found, under = p, true, p.cost(s.h)
				}
			}
		}
	}
	if !found {
		return false
	}
	s.called++
	s.set(*best.block, best.at, 0)
	s.line(model.ShapeLeader, "", "", best.from, target)
	return true
}

// hang places a candidate in a direction from its target. What it crosses is not known yet.
func (p *candidate) hang(target geom.Point, way direction, h Length) {
	far := float64(p.fromTarget)
	p.at = geom.Point{
		X: target.X + Length(math.Round(float64(far*way.cos))) + sideways(p.block.w, way.cos),
		Y: target.Y + Length(math.Round(float64(far*way.sin))) + sideways(p.block.h, way.sin),
	}
	p.text = boxAt(p.at, p.block.w, p.block.h, 0)
	// The leader ends just off the text, where the text is nearest.
	halfX, halfY := (p.block.w+1)/2+h/5, (p.block.h+1)/2+h/5
	p.from = geom.Point{
		X: min(max(target.X, p.at.X-halfX), p.at.X+halfX),
		Y: min(max(target.Y, p.at.Y-halfY), p.at.Y+halfY),
	}
}

// legible reports whether a candidate's text covers nothing and its leader no text, of which it looks
// first at one that may be in its way, and leaves there what is. It tells what the text lies over or
// close to.
func (s *sheet) legible(p *candidate, target geom.Point, inWay **box) bool {
	leader := segOf(p.from, target)
	if *inWay != nil && (*inWay).crosses(&leader) {
		return false
	}
	if !s.free(p.text, false) || overlapping(&p.text, &s.solid) || crossing(&p.text, &s.stem) || p.text.crosses(&leader) {
		return false
	}
	if t := s.texts.first(leader.reach(), func(t *box) bool { return t.crosses(&leader) }); t != nil {
		*inWay = t
		return false
	}
	p.overLines = crossing(&p.text, &s.edges)
	p.closeBy = !s.apart(boxAt(p.at, p.block.w+s.h, p.block.h+s.h/2, 0))
	return true
}

// weigh counts what a candidate's leader crosses, as far as it costs less than another: thin lines first.
func (s *sheet) weigh(p *candidate, target geom.Point, under Length) {
	leader := segOf(p.from, target)
	most := func(each Length) int { return int((under-p.cost(s.h))/(each*s.h)) + 1 }
	reach := leader.reach()
	if p.thin = s.lines.count(reach, most(costLeaderAcross), leader.meets); p.cost(s.h) < under {
		p.outlines = s.edges.count(reach, most(costLeaderOver), leader.meets)
	}
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
