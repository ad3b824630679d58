// Package ways finds the shortest way of a cable among boxes: along straight lines of one
// frame, turning at right angles, through boards where holes may be made. It is geometry
// only and knows nothing of a model: whoever fills a [Scene] has grown what is in it by half
// the width of what is laid, so that a way is the line of its middle.
package ways

import (
	"slices"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// Length is the measure of every coordinate.
type Length = geom.Length

// Spot is a point of the frame: u, v, z.
type Spot [3]Length

// In reports whether a spot lies in a box or on its faces.
func (s Spot) In(b geom.Box) bool { return b.U.Holds(s[0]) && b.V.Holds(s[1]) && b.Z.Holds(s[2]) }

// To is how far it is to another spot along the axes.
func (s Spot) To(o Spot) (sum Length) {
	for axis := range s {
		sum += length.Apart(s[axis], o[axis])
	}
	return sum
}

// Solid is what no way goes into. Its faces may be touched.
type Solid struct {
	Box  geom.Box
	What string
}

// Board is a solid that a way may go straight through, along its normal: with its middle
// in the rim, and not within any of what is shut.
type Board struct {
	Box    geom.Box // grown on all sides
	Normal geom.Axis
	Rim    geom.Box
	Shut   []geom.Box
	What   string
}

func (b *Board) lets(at Spot) bool {
	return b.frames(at) && !slices.ContainsFunc(b.Shut, func(shut geom.Box) bool {
		return b.passes(shut, at, at)
	})
}

// frames reports whether a line along the normal lies in the rim.
func (b *Board) frames(at Spot) bool {
	for axis := geom.U; axis <= geom.Z; axis++ {
		if axis != b.Normal && !b.Rim.Along(axis).Holds(at[axis]) {
			return false
		}
	}
	return true
}

// passes reports whether a line along the normal passes the inside of a box, wherever along it.
func (b *Board) passes(shut geom.Box, from, to Spot) bool {
	return inside(shut.With(b.Normal, geom.Span{Lo: -length.Max, Hi: length.Max}), from, to)
}

// inside reports whether a line along an axis goes through the inside of a box.
func inside(b geom.Box, from, to Spot) bool {
	for axis := geom.U; axis <= geom.Z; axis++ {
		line, side := geom.Between(from[axis], to[axis]), b.Along(axis)
		if line.Hi <= side.Lo || side.Hi <= line.Lo {
			return false
		}
	}
	return true
}

// Scene is what stands about a way.
type Scene struct {
	Solids []Solid
	Boards []Board
	// Lanes are where a way may run along u and z, their faces included. Along v it may go
	// anywhere.
	Lanes []geom.Box
}

// Ask is what a way leads from and to: any of some spots. It comes through each of some
// boxes, in their order. None of all these begins or ends within a board.
type Ask struct {
	From, To []Spot
	Through  []geom.Box
}

// Way is a line with its turns. Shut tells what it goes through that it may not, in its
// order; it is empty of a way that can be laid.
type Way struct {
	Spots  []Spot
	Length Length
	Holes  []Hole
	Shut   []string
}

// Hole is where a way goes through a board, by its index in the scene: in its middle.
type Hole struct {
	Board int
	At    Spot
}

// Near and Far bound how far along u beyond its ends and what it comes through a way is
// looked for: at first, and at last.
const (
	Near = 24 * length.Inch
	Far  = 16 * Near
)

// Most is how many states of a grid are searched; none where there are more, as if no lanes
// joined the ends.
const Most = 1_000_000

// Find finds the shortest way; of those as short the one with the fewest holes, and then
// with the fewest turns. Where there is none within [Far], ok is false, and the way tells by
// what it is shut: it is the one that is least. It has no spots where no lanes join the ends
// at all.
func (s *Scene) Find(a Ask) (w Way, ok bool) {
	whole, direct := a.extent()
	near := s.within(whole.Grow(Near)).grid(&a)
	for g, margin := near, Near; ; {
		w, ok = g.shortest(&a, false)
		// A way that leaves the window goes as far beyond both ends, there and back.
		if ok && w.Length < direct+2*margin || margin == Far {
			break
		}
		margin *= 2
		wider := s.within(whole.Grow(margin)).grid(&a)
		if wider.same(g) {
			break
		}
		g = wider
	}
	if !ok {
		w, _ = near.shortest(&a, true)
	}
	return w, ok
}

// extent is how far along u all lies that a way touches, and how long it is at least.
func (a *Ask) extent() (u geom.Span, direct Length) {
	u, direct = geom.Span{Lo: length.Max, Hi: -length.Max}, length.Max
	for _, p := range slices.Concat(a.From, a.To) {
		u = u.Union(geom.Span{Lo: p[0], Hi: p[0]})
	}
	for _, b := range a.Through {
		u = u.Union(b.U)
	}
	for _, p := range a.From {
		for _, q := range a.To {
			direct = min(direct, p.To(q))
		}
	}
	return u, direct
}
