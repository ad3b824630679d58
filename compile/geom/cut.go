package geom

import (
	"cmp"
	"slices"
)

// Cut removes rectangles from a blank and returns the outlines of what is
// left, counter-clockwise from the lowest left corner, in the order of those
// corners. More than one outline means that the cuts part the blank; none,
// that nothing is left, or nothing whose shape can be told (see Difference). A hole that touches no edge comes out as a further
// outline, clockwise. Where two cuts touch at a corner only, the outline passes
// it twice.
//
// All coordinates of the result are coordinates of the input.
func Cut(blank Rect, cuts []Rect) []Contour {
	if len(cuts) == 0 {
		return []Contour{RectContour(blank)}
	}
	for _, c := range cuts {
		blank = trimmed(blank, c)
	}
	if blank.X.Size() <= 0 || blank.Y.Size() <= 0 {
		return nil
	}
	met := make([]Rect, 0, len(cuts))
	for _, c := range cuts {
		if blank.Overlaps(c) {
			met = append(met, blank.Intersect(c))
		}
	}
	if outline, ok := notched(blank, met); ok {
		return []Contour{outline}
	}
	shapes := make([]Contour, len(met))
	for i, c := range met {
		shapes[i] = RectContour(c)
	}
	left, _ := Difference(RectContour(blank), shapes)
	return left
}

// trimmed is a blank less a cut that takes a strip along one of its edges, or
// all of it; any other cut leaves it as it is.
func trimmed(blank, cut Rect) Rect {
	if cut.X.Contains(blank.X) {
		blank.Y = less(blank.Y, cut.Y)
	}
	if cut.Y.Contains(blank.Y) {
		blank.X = less(blank.X, cut.X)
	}
	return blank
}

// less is a span without what another takes off its ends.
func less(s, cut Span) Span {
	if cut.Lo <= s.Lo {
		s.Lo = max(s.Lo, min(s.Hi, cut.Hi))
	}
	if cut.Hi >= s.Hi {
		s.Hi = min(s.Hi, max(s.Lo, cut.Lo))
	}
	return s
}

// notched is the outline of a blank whose notches keep clear of one another and
// each take one corner of it, or a piece of one edge; ok is false where they do
// not. Nearly all parts are so: a side with its recess for the feet.
func notched(blank Rect, notches []Rect) (outline Contour, ok bool) {
	var corners [4]*Rect            // by corner, as RectContour counts them
	var edges [4][]*Rect            // by edge: bottom, right, top, left
	along := [4]func(*Rect) Length{ // how far along its edge a notch begins
		func(r *Rect) Length { return r.X.Lo }, func(r *Rect) Length { return r.Y.Lo },
		func(r *Rect) Length { return -r.X.Hi }, func(r *Rect) Length { return -r.Y.Hi },
	}
	for i := range notches {
		n := &notches[i]
		for j := range notches[:i] {
			if n.Grow(1).Overlaps(notches[j]) {
				return nil, false
			}
		}
		on := [4]bool{n.Y.Lo == blank.Y.Lo, n.X.Hi == blank.X.Hi, n.Y.Hi == blank.Y.Hi, n.X.Lo == blank.X.Lo}
		at := slices.Index(on[:], true)
		switch {
		case at < 0 || on[0] && on[2] || on[1] && on[3]:
			return nil, false
		case on[at] && on[(at+3)%4]:
			corners[at] = n
		case on[(at+1)%4]:
			corners[(at+1)%4] = n
		default:
			edges[at] = append(edges[at], n)
		}
	}
	detour := func(r *Rect, from, steps int) { // clockwise round a notch
		c := RectContour(*r)
		for k := range steps {
			outline = append(outline, c[(from+4-k)%4])
		}
	}
	for e := range 4 {
		if corners[e] != nil {
			detour(corners[e], (e+3)%4, 3)
		} else {
			outline = append(outline, RectContour(blank)[e])
		}
		slices.SortFunc(edges[e], func(a, b *Rect) int { return cmp.Compare(along[e](a), along[e](b)) })
		for _, n := range edges[e] {
			detour(n, e, 4)
		}
	}
	return fromLowest(outline), true
}

// fromLowest lets a contour begin at its lowest corner, of those the leftmost.
func fromLowest(c Contour) Contour {
	first := c.Lowest()
	return append(slices.Clone(c[first:]), c[:first]...)
}

// Lowest is the index of the lowest corner of a contour, of those the leftmost.
func (c Contour) Lowest() int {
	lowest := 0
	for i, v := range c {
		if compare(v.Point, c[lowest].Point) < 0 {
			lowest = i
		}
	}
	return lowest
}

// compare orders points from below, then from the left.
func compare(a, b Point) int { return cmp.Or(cmp.Compare(a.Y, b.Y), cmp.Compare(a.X, b.X)) }
