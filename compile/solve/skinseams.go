package solve

import (
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/spacing"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// skinSeams are where a skin is divided, from its left end: as written, or on studs
// by rule where it is longer than a sheet gives.
func (s *solver) skinSeams(f *face) ([]length.Length, bool) {
	if f.word == "left" || f.word == "right" {
		return nil, true
	}
	whole, reach := s.blankAcross(f), s.sheetReach(f)
	long := whole.Size()
	if long/max(reach, 1) > mostPieces {
		s.tooMany(f.block.Head, int(long/max(reach, 1)), "pieces")
		return nil, false
	}
	if f.block.Attr("seams") != nil {
		return s.writtenSeams(f, whole, reach)
	}
	seams, ok := spacing.SplitFromLeft(whole, reach, f.studs())
	if !ok {
		s.Findings.Errorf("no-stud-for-seam", f.block.Head, "studs closer together, or a larger sheet",
			"%s is %s long and a sheet gives %s: the next piece would have no stud to end on.",
			finding.Capital(f.block.Describe()), s.Show(long), s.Show(reach)).
			Also(f.knee.Head, "the knee wall")
	}
	return seams, ok
}

// blankAcross is how far the blanks of a skin reach along its face: beyond its ends by what
// is cut off there on site.
func (s *solver) blankAcross(f *face) geom.Span {
	box := f.box
	for _, c := range s.onSite(f, box) {
		box = s.blankFor(geom.Place(f.wall.Frame, box, f.out), c)
	}
	return f.across(box.U)
}

// sheetReach is the longest piece along the run that a sheet gives, its factory
// edges trimmed.
func (s *solver) sheetReach(f *face) length.Length {
	size := s.Lengths(s.Ref(f.block, "board"), "size")
	reach := size[0]
	if s.Text(f.block, "grain") == "up" {
		reach = size[1]
	}
	return reach - 2*s.m.SheetEdge()
}

// studs are the centres of those that a seam may lie on, from the left of the
// face: all but the ones at the ends.
func (f *face) studs() []length.Length {
	var out []length.Length
	for i, c := range f.wall.Studs {
		if i > 0 && i < len(f.wall.Studs)-1 {
			out = append(out, f.x(c))
		}
	}
	slices.Sort(out)
	return out
}

// writtenSeams are those that the description gives. They count from the left
// end of the framing, as one looks at the face.
func (s *solver) writtenSeams(f *face, whole geom.Span, reach length.Length) ([]length.Length, bool) {
	edge := f.x(f.wall.Framing.U.Lo)
	if f.word == "room" {
		edge = f.x(f.wall.Framing.U.Hi)
	}
	value := s.Value(f.block, "seams")
	studs := f.studs()
	var seams []length.Length
	for i, from := range s.Lengths(f.block, "seams") {
		stud, mend, miss := edge+from, "", "there is none between the ends"
		if len(studs) > 0 {
			stud = spacing.Nearest(studs, edge+from)
			off := length.Apart(stud, edge+from)
			mend, miss = s.Show(stud-edge), "the nearest is "+s.Show(off)+" off"
			if off <= s.Marks/2 {
				miss = ""
			}
		}
		if miss != "" {
			s.Findings.Errorf("seam-off-stud", value.Items[i].At, mend,
				"A seam at %s from the left end of the framing lies on no stud, and both pieces need one: %s.", s.Show(from), miss).
				Also(f.knee.Head, "the knee wall")
			return nil, false
		}
		seams = append(seams, stud)
	}
	for i, piece := range spacing.Pieces(whole, seams) {
		if long := piece.Size(); long > reach {
			s.Findings.Errorf("piece-too-long", value.At, s.seamMend(f, whole, edge, reach),
				"Piece %d of %s would be %s long, but a sheet gives %s: %s too long.", i+1, f.block.Describe(), s.Show(long), s.Show(reach), s.Show(long-reach)).
				Also(s.Ref(f.block, "board").Head, "the sheet")
			return nil, false
		}
	}
	return slices.Compact(seams), true
}

// seamMend names the seams that the rule would give.
func (s *solver) seamMend(f *face, whole geom.Span, edge, reach length.Length) string {
	seams, ok := spacing.SplitFromLeft(whole, reach, f.studs())
	if !ok || len(seams) == 0 {
		return ""
	}
	at := make([]string, len(seams))
	for i, x := range seams {
		at[i] = s.Show(x - edge)
	}
	return "leave them out: by rule there is one at " + strings.Join(at, ", and one at ")
}
