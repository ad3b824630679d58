// Package setting finds the order in which things are set in a room, and a way in for
// each: it takes the finished room apart and tells it backwards. It is geometry only: a
// cabinet is the boxes that its panels are, less their openings ([Less]), so that a hole
// round a stub leaves one direction to slide in, and a slot also the one to its open end.
//
// # How it is used
//
// Fill a [Room] with bodies, in the order that they should be set in where nothing speaks
// against it, and with all that is fixed: floor, ceiling, walls (boxes behind their faces,
// with the doorway left open), stubs, framing that stands. What is not given is not there:
// without a wall, bodies leave through it; without a ceiling, or [Room.Lift], upwards.
// [Room.Order] gives the steps, or the few bodies that block one another. To try a mend,
// change the room and ask again: [Room.With] takes another form of a body (a slot for a
// hole, two halves for one), [Room.Aside] moves a neighbour that stands.
//
// # Ways
//
// A body moves by slides and is never turned. It slides along u and v of any frame of the
// room, both ways, and up and down. It is out where nothing is in its way any further in
// one such direction; with a [Door], where it stands before the doorway. Faces may touch
// and slide along one another; what lies deeper than [Tolerance] in something collides.
//
// # What is found
//
// If the bodies can be set one after another, each by any motion that does not turn it,
// along straight lines or not, without going into anything, then an order is found, of
// slides alone, unless a search gives up or a slide would be longer than [Far].
//
// Order. Taking a body out only makes room, so a body that can leave can still leave when
// others have left first. Whichever goes first, no order is spoilt by it: taking out
// whatever can go gets as far as any order does.
//
// Ways. Let a displacement of the body be a point of space. Those at which two boxes are
// in one another form an open convex prism; its faces are level, or upright and parallel to
// faces of one or the other box. The planes of all such faces, of the places that count as
// in, and through the start divide space into cells, and what is free is a union of closed
// cells. (The lift cuts cells off above; each has a face below as well, so nothing is lost.)
// Where a motion leads from cell to cell, these share a face, an edge or a corner; corners
// of one cell are joined by its edges. So the edges lead wherever any motion does, and out
// if it does, as a cell without end has an edge without end. Every edge is upright, or level
// and parallel to an upright face: it is a slide. The search follows all edges, and reaches
// first what takes the fewest.
//
// It counts only the planes of what it runs into: what it never runs into might as well not
// be there. What is not in the body's own hull from the start counts as its hull at first,
// and solid by solid only if no way past the hulls is found. A search that has looked at
// [Most] places gives up, and [Blocked] tells it; where it does so among solids, all that may
// be left is a way through the hollow of another body.
package setting

import (
	"slices"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// Length is the measure of every coordinate.
type Length = geom.Length

// Tolerance is how deep two solids may lie in one another and still only touch.
const Tolerance = length.Micrometre

// Far is how long a slide with an end may be, or as long as all bodies extend over where that is more: what reaches
// further, a floor or a ceiling, has no end there.
const Far = 100 * length.Metre

// Most is how many places of one body a search looks at before it gives up.
const Most = 20_000

// Solid is a box of a frame, under the name of the part that it belongs to.
type Solid struct {
	Name  string
	Frame geom.Frame
	Box   geom.Box
}

// Body is what is set as one: a cabinet, a slab, an appliance. The frame of its first solid
// is the one that it slides in by preference: off the wall, along the run, up.
type Body struct {
	Name   string
	Solids []Solid
	On     []string // bodies that must be set before it, as what it rests on
	Stands bool     // it stands when setting begins and stays where it is; see Room.Aside
}

// Room is the finished state.
type Room struct {
	Bodies []Body
	Fixed  []Solid
	Door   *Door  // nil: bodies come from wherever there is nothing
	Lift   Length // how high above its place a body may be lifted; 0 as high as one likes
	Strict bool   // bodies are set as they are described wherever any way is left then, however many slides it takes
}

// Door is the opening that bodies come in by. Along u of its frame runs the wall, v points
// into the room. A body is in where it stands as it will be set, the middle of its width in
// the opening's span, or its width over all of that, and its near side no further from the
// wall than Landing, at any height. How it is turned to stand so is not looked at; whether
// it comes through the opening tells [Door.Passes].
type Door struct {
	Frame   geom.Frame
	Span    geom.Span // along u
	Height  Length
	Landing Length
}

// Slide is a straight motion along an axis of a frame that is turned by Turn.
type Slide struct {
	Turn geom.Angle
	Dir  geom.Dir
	By   Length
}

// Step sets one body.
type Step struct {
	Body string
	// Slides bring it to its place, from first to last. Without a door the first one has no
	// beginning, nothing is in its way from however far, and By is from where the body is clear
	// of all that it then passes, touches or reaches into. With a door there may be none.
	Slides []Slide
	// After are the bodies that must be set before: those whose ways this one would block,
	// and On. Every order that keeps to After is as good as the one given.
	After []string
}

// Order returns the steps that set all bodies that do not stand yet. Where there is no
// order it returns no step, and who blocks whom. As a rule bodies are set as they are
// described: the last of those that one slide takes out leaves first; where there is none,
// the last of those whose way past what stands is clear of the others; else the last that
// has any way. Where Strict, the last that has any way leaves first, unless a search gives up.
func (r Room) Order() ([]Step, *Blocked) {
	s := newScene(r)
	bodies, standing := s.bodies()
	t := s.taking(bodies, standing)
	if stuck := t.run(); len(stuck) > 0 {
		return nil, s.blocked(stuck, standing)
	}
	if r.Strict { // after the other, which is quick to find that there is none
		if strictly := s.taking(bodies, standing); len(strictly.runStrictly()) == 0 {
			t = strictly
		}
	}
	slices.Reverse(t.out)
	return s.steps(t.out), nil
}

// bodies tells what is to be set from what stands, fixed or not.
func (s *scene) bodies() (bodies, standing []int) {
	for i, g := range s.groups {
		if g.stands {
			standing = append(standing, i)
		} else {
			bodies = append(bodies, i)
		}
	}
	return bodies, standing
}

// steps tells removals, in the order of setting, as steps.
func (s *scene) steps(order []removal) []Step {
	steps := make([]Step, len(order))
	for i, r := range order {
		steps[i] = Step{Body: s.groups[r.body].name, Slides: s.inwards(r.path)}
		for _, before := range order[:i] {
			if slices.Contains(s.groups[r.body].on, before.body) || s.crosses(before, r.body) {
				steps[i].After = append(steps[i].After, s.groups[before.body].name)
			}
		}
	}
	return steps
}

// inwards tells a way out as the slides in.
func (s *scene) inwards(path []leg) []Slide {
	var out []Slide
	for _, l := range slices.Backward(path) {
		if by := rounded(l.by); by > 0 {
			out = append(out, Slide{l.way.turn, l.way.dir.Opposite(), by})
		}
	}
	return out
}
