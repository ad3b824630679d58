// Package spacing places things along a stretch: studs on centres, supports,
// battens, screws and holes evenly. It counts in whole numbers, so that
// positions are exact and always come out the same.
//
// Of all rows that keep the rules of an [Ask], [Place] takes the one whose gaps
// have the least sum of squares, to the nanometre, and then moves each thing to
// the nearest mark. It finds the row thing by thing, from the left: for each
// place the best row that ends there. Where a stretch has more places than that
// is good for, it is settled on some 4000 of them between which closed
// stretches each thing stands; where it stands there is exact all the same.
package spacing

import (
	"slices"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// Length is the measure of every position.
type Length = length.Length

// Ask says what is to stand along a stretch. All positions are centres.
type Ask struct {
	Stretch  geom.Span // that the centres keep to
	Count    int       // how many, the fixed ones counted; 0: the fewest that keep Most
	Most     Length    // between neighbours, and from an end that nothing stands at to its neighbour; 0: no limit
	Least    Length    // between neighbours
	End      Length    // from either end of the stretch to the first and last, or as near to that as they may stand; one alone stands in the middle, and there are never fewer than two by Most
	HalfEnds bool      // End is not given: it is to be half of what lies between two
	Fixed    []Length  // that must be among them, rising
	Closed   []Closed  // where none may stand
	Mirrored bool      // alike from both ends, the middle one of an odd number in the middle
	Mark     Length    // positions are whole marks from the nearer end, fixed ones apart; 0 or 1: any nanometre
}

// Closed is a stretch, its ends open, where no centre may stand, and what keeps it.
type Closed struct {
	Span geom.Span
	By   string
}

// Answer is where things stand, rising, and which of them something moved from
// where as many would stand if nothing were closed.
type Answer struct {
	Centres []Length
	Forced  []Forced
}

// Forced is one that stands elsewhere: because its own place is closed, or that
// of the nearest one of which this is so.
type Forced struct {
	Index int
	Off   Length // to the right positive
	By    string
}

const (
	mostThings = 2000 // in a row: far more than any bar has
	mostMore   = 16   // that a row may take beyond what the closed stretches ask for, for Least and what is fixed
)

// Place returns the most even positions: the sum of the squares of the gaps is
// least, those at the ends counted double with HalfEnds and not at all
// otherwise. Among equals it takes the one whose centres lie furthest left;
// mirrored, whose left half does. Each is then moved to the nearest mark where
// it may stand; if that breaks Least or Most, the row is the best of all rows of
// marks instead. The refusal says why there is none.
func Place(a Ask) (Answer, *Refusal) {
	a.Mark = max(a.Mark, 1)
	if a.Mirrored {
		a.mirror()
	}
	if refusal := a.sound(); refusal != nil {
		return Answer{}, refusal
	}
	centres, refusal := a.centres()
	if refusal != nil {
		return Answer{}, refusal
	}
	return Answer{centres, a.forced(centres)}, nil
}

func (a *Ask) image(x Length) Length { return a.Stretch.Lo + a.Stretch.Hi - x }

// mirror adds the images of what is fixed and closed.
func (a *Ask) mirror() {
	fixed := slices.Clone(a.Fixed)
	for _, x := range a.Fixed {
		fixed = append(fixed, a.image(x))
	}
	slices.Sort(fixed)
	a.Fixed = slices.Compact(fixed)
	closed := slices.Clone(a.Closed)
	for _, c := range a.Closed {
		closed = append(closed, Closed{geom.Span{Lo: a.image(c.Span.Hi), Hi: a.image(c.Span.Lo)}, c.By})
	}
	a.Closed = closed
}

// centres places as many as are asked for, or the fewest that can be.
func (a Ask) centres() ([]Length, *Refusal) {
	if a.Count > 0 {
		return a.place()
	}
	a.Count = max(1, len(a.Fixed))
	if !a.HalfEnds {
		a.Count = max(2, a.Count)
	}
	if a.Most > 0 {
		g := a.ground(1)
		fewest, ok := g.hops(a.Stretch.Lo, a.Stretch.Hi, a.Most)
		if !ok {
			return nil, a.refuse()
		}
		a.Count = max(a.Count, fewest)
	}
	centres, refusal := a.place()
	for range mostMore {
		if refusal == nil {
			break
		}
		var again *Refusal
		a.Count++
		if centres, again = a.place(); again == nil {
			refusal = nil
		}
	}
	return centres, refusal
}

// forced compares with where as many would stand if nothing were closed.
func (a Ask) forced(centres []Length) []Forced {
	if len(a.Closed) == 0 {
		return nil
	}
	closed := a.Closed
	a.Closed, a.Count = nil, len(centres)
	free, refusal := a.place()
	if refusal != nil { // as many cannot stand within the limits, once nothing is closed
		a.Most, a.Least = 0, 0
		if free, refusal = a.place(); refusal != nil {
			return nil
		}
	}
	return compare(free, centres, closed)
}

// compare tells which centres are not where they would stand, and why.
func compare(would, are []Length, closed []Closed) []Forced {
	by := make([]string, len(are))
	for i := range are {
		for _, c := range closed {
			if by[i] == "" && c.holds(would[i]) {
				by[i] = c.By
			}
		}
	}
	nearest := func(i int) string {
		for d := range len(by) {
			for _, j := range [2]int{i - d, i + d} {
				if j >= 0 && j < len(by) && by[j] != "" {
					return by[j]
				}
			}
		}
		return ""
	}
	var out []Forced
	for i := range are {
		if off := are[i] - would[i]; off != 0 {
			out = append(out, Forced{i, off, nearest(i)})
		}
	}
	return out
}

func (c *Closed) holds(x Length) bool { return c.Span.Lo < x && x < c.Span.Hi }
