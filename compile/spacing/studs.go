package spacing

import (
	"slices"

	"barwright/compile/geom"
)

// Studs asks for studs on centres.
type Studs struct {
	Stretch   geom.Span // from the outer face of the first to that of the last
	Spacing   Length    // between centres, at most; two thicknesses at least
	Thickness Length
	FromRight bool     // the end that the spacing is counted from, otherwise the left one
	Closed    []Closed // where no centre may stand but those of the first and the last
	Mark      Length   // as of an Ask; those that nothing moves need not be on one
}

// OnCentres returns the centres of studs: one flush with either end, the others
// a spacing apart counted from one of them, so that no two centres are further
// apart than that. One that would stand in the last stud stands against it
// instead. One whose place is closed stands in the nearest free one, with
// others beside it where a gap would be too wide: as few as can be, then as
// near to the closed places as they can be, by the sum of the squares.
func OnCentres(s Studs) (Answer, *Refusal) {
	s.Mark = max(s.Mark, 1)
	if s.FromRight {
		return s.turned()
	}
	would := s.series()
	var out Answer
	for i := 0; i < len(would); i++ {
		if !s.closed(would, i) {
			out.Centres = append(out.Centres, would[i])
			continue
		}
		end := i + 1
		for s.closed(would, end) {
			end++
		}
		moved, refusal := s.between(would[i-1], would[end], would[i:end])
		if refusal != nil {
			return Answer{}, refusal
		}
		for _, x := range moved {
			mark := Nearest(would[i:end], x)
			out.Forced = append(out.Forced, Forced{len(out.Centres), x - mark, s.by(mark)})
			out.Centres = append(out.Centres, x)
		}
		i = end - 1
	}
	return out, nil
}

// turned counts from the right end. The centre of a thickness of odd nanometres
// lies left of its middle, seen from either end.
func (s Studs) turned() (Answer, *Refusal) {
	odd := s.Thickness % 2
	image := func(span geom.Span) geom.Span { return geom.Span{Lo: -span.Hi, Hi: -span.Lo} }
	s.FromRight, s.Stretch = false, image(s.Stretch)
	closed := make([]Closed, len(s.Closed))
	for i, c := range s.Closed {
		closed[i] = Closed{image(c.Span).Shift(-odd), c.By}
	}
	s.Closed = closed
	a, refusal := OnCentres(s)
	var out Answer
	for _, x := range slices.Backward(a.Centres) {
		out.Centres = append(out.Centres, -x-odd)
	}
	for _, f := range slices.Backward(a.Forced) {
		out.Forced = append(out.Forced, Forced{len(a.Centres) - 1 - f.Index, -f.Off, f.By})
	}
	return out, refusal
}

// series is where studs stand if nothing is closed.
func (s *Studs) series() []Length {
	half := s.Thickness / 2
	first, last := s.Stretch.Lo+half, s.Stretch.Hi-(s.Thickness-half)
	out := []Length{first}
	for on := s.Stretch.Lo + s.Spacing; last-out[len(out)-1] > s.Spacing; on += s.Spacing {
		out = append(out, min(on, last-s.Thickness))
	}
	return append(out, last)
}

// closed reports whether the ith stud may not stand where it would.
func (s *Studs) closed(would []Length, i int) bool {
	return i > 0 && i < len(would)-1 && s.by(would[i]) != ""
}

func (s *Studs) by(x Length) string {
	for _, c := range s.Closed {
		if c.holds(x) {
			return c.By
		}
	}
	return ""
}

// between places studs in the stead of some, between two that stay.
func (s *Studs) between(left, right Length, marks []Length) ([]Length, *Refusal) {
	a := Ask{Stretch: s.Stretch}
	for _, c := range s.Closed {
		if c.Span.Overlaps(geom.Span{Lo: left, Hi: right}) {
			a.Closed = append(a.Closed, c)
		}
	}
	g := a.ground(s.Mark)
	g.within = geom.Span{Lo: left + s.Thickness, Hi: right - s.Thickness}
	r := row{least: s.Thickness, most: s.Spacing}
	r.first = func(x Length) area { return r.gap(x-left, 0) }
	r.last = func(x Length) area { return r.gap(right-x, 0) }
	r.each = func(x Length) area {
		off := x - Nearest(marks, x)
		return square(max(off, -off), 1)
	}
	fewest, ok := g.hops(left, right, s.Spacing)
	if !ok {
		return nil, a.refuse()
	}
	for r.n = fewest; r.n <= fewest+mostMore; r.n++ {
		if r.n == 0 {
			return nil, nil
		}
		if found := r.find(&g); found != nil {
			return found, nil
		}
	}
	return nil, a.refuse()
}

// Nearest returns the place of some rising ones that is nearest to x, the left
// one of two. There must be one.
func Nearest(places []Length, x Length) Length {
	i, _ := slices.BinarySearch(places, x)
	if i == len(places) || i > 0 && x-places[i-1] <= places[i]-x {
		i--
	}
	return places[i]
}
