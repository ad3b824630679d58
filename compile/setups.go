package compile

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/solve"
)

// setups lays parts on the router, one recess after the other: where X is zero,
// and in which setup. A part's recesses follow one another from left to right.
type setups struct {
	part   int
	number int          // of the setup, from 1; 0 before the first one
	zero   model.Length // in the part's own x
	wall   model.Length // left wall of the recess before
	name   string       // of the recess before
}

// lay returns how the part lies for a recess, whose box is in the part's own
// coordinates: the program's zero from the left end, its words, its setup and how far the part
// moves on for it.
func (s *setups) lay(r solve.Recess, recess geom.Rect, name string) (zero model.Length, words string, number int, on model.Length) {
	if s.number == 0 || s.part != r.Part {
		*s = setups{part: r.Part}
	}
	before := *s
	s.zero, words = s.datum(r.Tool, r.Centre, recess)
	if s.number == 0 || s.zero != before.zero || r.Tool.Datum == "mark" {
		s.number++
	}
	if before.number > 0 {
		on = s.zero - before.zero
	}
	s.wall, s.name = recess.X.Lo, name
	return s.zero, words + r.Zero, s.number, on
}

// datum returns where X is zero for a recess, in the part's own x. What is out of
// the machine's reach from the stop at the end is reached from one in the recess
// before, or else from a mark at the recess's own left wall.
func (s *setups) datum(t model.Tool, centre model.Length, recess geom.Rect) (zero model.Length, words string) {
	reached := func(zero model.Length) bool { return t.Travel.X == 0 || recess.X.Hi-zero <= t.Travel.X }
	end := "X0 at a stop at the left end of the part, "
	last := fmt.Sprintf("X0 at a stop against the left wall of the recess for %s, ", s.name)
	switch {
	case t.Datum == "mark":
		return centre, "X0 on the mark, "
	case s.number > 0 && t.Datum == "end" && reached(s.zero):
		if s.zero == 0 {
			return 0, end
		}
		return s.zero, "X0 as for the program before, "
	case s.number == 0 && reached(0):
		return 0, end
	case s.number > 0 && reached(s.wall):
		return s.wall, last
	}
	return recess.X.Lo, "X0 on a mark at the left wall of the recess, "
}
