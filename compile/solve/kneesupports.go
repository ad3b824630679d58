package solve

import (
	"fmt"

	"barwright/compile/spacing"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// placeSteel places the supports: where they are said to be, or evenly.
func (s *solver) placeSteel(k *knee, g *steelwork) bool {
	count := s.Count(g.block, "count")
	at := g.block.Attr("count").Expr.At
	if count > mostPieces {
		s.tooMany(at, count, "supports")
		return false
	}
	if g.block.Attr("at") != nil {
		return s.supportsAt(k, g, count)
	}
	f := k.wall.Framing.U
	end := g.block.Attr("end")
	apart, meet := s.supportsApart(k, g)
	ask := spacing.Ask{
		Stretch: f, Count: count, Least: apart, End: s.Length(g.block, "end"), HalfEnds: end == nil,
		Mirrored: true, Mark: s.Marks, Closed: k.outlets(g.recessWidth / 2),
	}
	if end == nil {
		keep := k.thick + g.recessWidth/2 // from either end, clear of its stud
		ask.Closed = append(ask.Closed, closedEnds(f, keep, keep, "the end studs")...)
	}
	placed, refusal := spacing.Place(ask)
	if refusal != nil {
		ask.Mirrored = false
		placed, refusal = spacing.Place(ask)
	}
	switch {
	case refusal == nil:
	case refusal.Cause == spacing.Crowded:
		s.Findings.Errorf("supports-meet", at, "fewer supports", "The %s %s run into one another. %s",
			meet, finding.Counted(count, "support"), refusal.Text(s.Show))
		return false
	default:
		s.Findings.Errorf("no-place-for-supports", at, "fewer supports, or at = […] with places of your own",
			"%s, each %s wide, cannot stand evenly. %s", finding.Counted(count, "support"), s.Show(g.recessWidth), refusal.Text(s.Show))
		return false
	}
	g.centres = placed.Centres
	s.tellUneven(k, "supports-moved", at, "support", placed.Forced, 0)
	return s.checkEnds(k, g)
}

// supportsApart is how far from centre to centre supports stand at least, and
// what would meet there: their recesses, or what a skin on the room's side leaves
// open for them.
func (s *solver) supportsApart(k *knee, g *steelwork) (length.Length, string) {
	if skin := s.SkinOn(k.block, "room"); skin != nil {
		if open := g.width + 2*s.Length(skin, "clearance"); open > g.recessWidth {
			return open, "openings in the skin for"
		}
	}
	return g.recessWidth, "recesses of"
}

// supportsAt takes the centres as they are written.
func (s *solver) supportsAt(k *knee, g *steelwork, count int) bool {
	at := g.block.Attr("at")
	places := s.Lengths(g.block, "at")
	if end := g.block.Attr("end"); end != nil {
		s.Findings.Errorf("said-twice", end.NameAt, "leave one of them out", "%s says both where they stand and how far from the ends.", finding.Capital(g.block.Describe())).
			Also(at.NameAt, "the centres")
		return false
	}
	if len(places) != count {
		s.Findings.Errorf("supports-miscounted", at.Expr.At, fmt.Sprintf("count = %d", len(places)),
			"This gives %s, but count is %d.", finding.Counted(len(places), "centre"), count).Also(g.block.Attr("count").Expr.At, "the count")
		return false
	}
	for _, x := range places {
		g.centres = append(g.centres, k.wall.Framing.U.Lo+x)
	}
	for i := range g.centres[1:] {
		if over := g.recessWidth - (g.centres[i+1] - g.centres[i]); over > 0 {
			s.Findings.Errorf("supports-meet", at.Expr.At, "centres further apart", "The recesses of supports %d and %d would run into one another by %s.", i+1, i+2, s.Show(over))
			return false
		}
	}
	return s.checkEnds(k, g)
}

// checkEnds refuses a recess that runs past an end of the plate, by the one
// that does so most.
func (s *solver) checkEnds(k *knee, g *steelwork) bool {
	f, half := k.wall.Framing.U, g.recessWidth/2
	first, last := g.centres[0]-half-f.Lo, f.Hi-half-g.centres[len(g.centres)-1]
	over := -min(first, last)
	if over <= 0 {
		return true
	}
	which := "first"
	if last < first {
		which = "last"
	}
	attr, mend := g.block.Attr("at"), "centres further from the ends"
	if attr == nil {
		attr, mend = g.block.Attr("end"), fmt.Sprintf("end = %q or more", s.Show(length.Up(half, s.Marks)))
	}
	if attr == nil { // steel wider than the framing is long
		attr, mend = g.block.Attr("count"), "narrower steel"
	}
	s.Findings.Errorf("support-past-end", attr.Expr.At, mend, "The %s recess would run %s past the end of the plate.", which, s.Show(over))
	return false
}

// checkOverStuds warns of recesses over studs, whose screws come up there. By
// the rule there are none.
func (s *solver) checkOverStuds(k *knee, g *steelwork) {
	at := g.block.Said("at", "end", "count")
	for i, c := range g.centres {
		for j, stud := range k.wall.Studs {
			clear := length.Apart(c, stud) - g.recessWidth/2 - g.plateThickness/2
			if clear < 0 {
				s.Findings.Warnf("support-over-stud", at, "move the supports, or leave it out",
					"Support %d lies %s over stud %d, whose screws come up through the plate there: drive them deeper than the recess, or beside it.",
					i+1, s.Show(-clear), j+1)
			}
		}
	}
}
