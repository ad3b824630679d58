package finish

import (
	"cmp"
	"fmt"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/compile/spacing"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// slabStuck looks at what a counter slides in under: the skin on the work side
// with its battens, or the bar top where there is none.
func slabStuck(b *rule.Build) {
	type low struct {
		z    geom.Length
		what string
		at   source.Range
		skin bool
	}
	counters, over := slabsByFrame(b, "counter"), map[geom.Frame]low{} // lookup only
	lower := func(frame geom.Frame, box geom.Box, what string, at source.Range, skin bool) {
		c := counters[frame]
		if c == nil || !c.Box.U.Overlaps(box.U) || !c.Box.V.Overlaps(box.V) || box.Z.Lo < c.Box.Z.Hi {
			return
		}
		if lowest, ok := over[frame]; !ok || box.Z.Lo < lowest.z {
			over[frame] = low{box.Z.Lo, what, at, skin}
		}
	}
	for i := range b.Parts {
		if p := &b.Parts[i]; p.BlockKind() == "skin" {
			lower(p.Placement.Frame, p.Placement.Box, p.Owner, b.Block(p.Block()).Said("above_counter"), true)
		}
	}
	for i := range b.Slabs {
		if s := &b.Slabs[i]; s.Kind == "bar_top" {
			lower(s.Frame, s.Box, s.Words(), s.Why.At, false)
		}
	}
	need := b.Length(b.Limits, "slide_gap")
	for i := range b.Slabs {
		c := &b.Slabs[i]
		lowest, ok := over[c.Frame]
		gap := lowest.z - c.Box.Z.Hi
		if c.Kind != "counter" || !ok || gap >= need {
			continue
		}
		mend := "a bar top " + b.Show(need-gap) + " higher"
		if lowest.skin {
			mend = "above_counter = " + quoted(b.Exact(need)) + " or more"
		}
		b.LimitOf(b.Findings.Warnf("slab-stuck", lowest.at, mend,
			"Counter %q slides in under %s with %s to spare; it takes %s: %s too little.", c.Name, lowest.what, b.Show(gap), b.Show(need), b.Show(need-gap)).
			Also(c.Why.At, "the counter"), "slide_gap")
	}
}

// slabInCorner looks at the front corners of counters beside walls that lean in.
func slabInCorner(b *rule.Build) {
	counters := slabsByFrame(b, "counter")
	for i := range b.Runs {
		run := &b.Runs[i]
		block := b.Block("run." + run.Name)
		wall, c := b.Ref(block, "along"), counters[run.Frame]
		if wall == nil || c == nil {
			continue
		}
		placed := b.WallNamed(run.Wall)
		begin, _ := placed.Frame.Local(run.Frame.Origin)
		inCorner(b, block, c, model.Left, b.WallBefore(wall), begin+c.Box.U.Lo)
		if b.WallAfter(wall) != nil {
			inCorner(b, block, c, model.Right, wall, placed.Length-begin-c.Box.U.Hi)
		}
	}
}

// inCorner looks at one end of a counter, which stands so far from the corner that
// comes after a wall.
func inCorner(b *rule.Build, run *lang.Block, c *model.Slab, end model.End, corner *lang.Block, from geom.Length) {
	if corner == nil {
		return
	}
	lean := b.LeansBy(corner, c.Box.V.Hi)
	deep := lean - from
	if lean == 0 || deep <= b.Length(b.Limits, "flush") {
		return
	}
	mend := "a run " + b.Show(length.Up(deep, b.Marks)) + " shorter"
	if b.Text(run, "from") == end.String() {
		mend = "start = " + quoted(b.Show(length.Up(lean, b.Marks))) + " for its run"
	}
	b.LimitOf(b.Findings.Warnf("slab-in-corner", b.Block("counter."+c.Name).Said("overhang"), mend,
		"The wall at the %s end of counter %q leans in: at the counter's front edge it stands %s from the corner, and the counter %s: its front corner would reach %s behind the face of the wall.",
		end, c.Name, b.Show(lean), b.Show(from), b.Show(deep)).Also(corner.Said("corner"), "the corner"), "flush")
}

// slabOverCover looks for cover plates and vents behind the edges of slabs.
func slabOverCover(b *rule.Build) {
	for i := range b.Room.Walls {
		w := &b.Room.Walls[i]
		if len(w.Outlets)+len(w.Vents) == 0 {
			continue
		}
		for j := range b.Slabs {
			along, ok := rule.EdgeAt(&b.Slabs[j], w)
			if !ok {
				continue
			}
			for _, f := range w.Fixtures() {
				if f.Kind != "stub" {
					slabOver(b, &b.Slabs[j], w, along, &f)
				}
			}
		}
	}
}

// slabOver compares a slab that lies against a wall with a vent, or with the plate of
// an outlet or a switch.
func slabOver(b *rule.Build, s *model.Slab, w *model.Wall, along geom.Span, f *model.Fixture) {
	plate, what := f.Face, f.Words()
	if f.Outlet != nil {
		plate, what = f.Outlet.Plate(), "the cover plate of "+what
	}
	if !along.Overlaps(plate.X) || !s.Box.Z.Overlaps(plate.Y) {
		return
	}
	high := plate.Y.Size()
	mend := "its centre at " + b.Measured(w, plate.X.Mid(), s.Box.Z.Hi+high-high/2, true) + ", or higher"
	if s.Kind != "counter" { // under that are its boxes
		mend += "; or at " + b.Measured(w, plate.X.Mid(), s.Box.Z.Lo-high/2, false) + ", or lower"
	}
	b.Findings.Warnf("slab-over-cover", b.Block(f.Key()).Said("at"), mend,
		"The edge of %s lies against the wall from %s to %s, and %s reaches from %s to %s: %s of it is behind the edge.",
		s.Words(), b.Show(s.Box.Z.Lo), b.Show(s.Box.Z.Hi), what, b.Show(plate.Y.Lo), b.Show(plate.Y.Hi), b.Show(s.Box.Z.Intersect(plate.Y).Size())).
		Also(s.Why.At, "the slab")
}

// seamShows looks for seams of skins on the room's side that nothing covers.
func seamShows(b *rule.Build) {
	for i := range b.KneeWalls {
		for _, skin := range b.KneeWalls[i].Skins {
			block := b.Block("skin." + skin.Name)
			if skin.Face != "room" || len(skin.Seams) == 0 || block.Attr("battens") != nil {
				continue
			}
			more := ""
			if n := len(skin.Seams); n > 1 {
				more = fmt.Sprintf(", the first of %d", n)
			}
			f := b.Findings.Notef("seam-shows", block.Said("seams"), "%s has a seam at %s from its left end, as one faces it%s, and no battens: the joint shows.",
				finding.Capital(block.Describe()), b.Show(skin.Box.U.Hi-slices.Max(skin.Seams)), more)
			f.Mend = "battens = { board = …, width = … }"
		}
	}
}

// seamUnsupported looks for seams of counters that nothing near them carries; those of bar
// tops are held to their steel, with what it bears.
func seamUnsupported(b *rule.Build) {
	under := map[geom.Frame][]*model.Part{} // what reaches up to half a counter's depth or more; lookup only
	counters := slabsByFrame(b, "counter")
	for i := range b.Parts {
		p := &b.Parts[i]
		box := p.Placement.Box
		if c := counters[p.Placement.Frame]; c != nil && len(c.Seams) > 0 && box.Z.Hi == c.Box.Z.Lo && 2*box.V.Intersect(c.Box.V).Size() >= c.Box.V.Size() {
			under[c.Frame] = append(under[c.Frame], p)
		}
	}
	for i := range b.Slabs {
		s := &b.Slabs[i]
		if len(s.Seams) == 0 || s.Kind != "counter" {
			continue
		}
		var spans []geom.Span
		for _, p := range under[s.Frame] {
			spans = append(spans, p.Placement.Box.U)
		}
		seamCarried(b, s, spans)
	}
}

// seamCarried tells of the seam of a slab that is furthest from what carries it.
func seamCarried(b *rule.Build, s *model.Slab, spans []geom.Span) {
	worst, others, far := -1, -1, geom.Length(0)
	for i, u := range s.Seams {
		if _, off := nearTo(u, spans); len(spans) > 0 && off > b.Length(b.Limits, "seam_support") {
			if others++; off > far {
				worst, far = i, off
			}
		}
	}
	if worst < 0 {
		return
	}
	u, block := s.Seams[worst], b.Block(s.Key())
	items := b.Value(block, "seams").Items
	origin := u - values.LengthOf(items[worst])
	next, _ := nearTo(u, spans)
	text := fmt.Sprintf("The seam at %s of %s%s has nothing under it: what carries the slab next to it is %s away; %s is the most.",
		b.Show(u-origin), block.Describe(), overWhat(b, s, u), b.Show(far), b.Show(b.Length(b.Limits, "seam_support")))
	text += finding.Others(others, " So it is with another seam.", " So it is with %d other seams.")
	b.LimitOf(b.Findings.Warnf("seam-unsupported", items[worst].At, "a seam at "+quoted(b.Show(length.Round(next.Mid()-origin, b.Marks))), "%s", text), "seam_support")
}

// overWhat says which box of a run a seam of its counter is over.
func overWhat(b *rule.Build, s *model.Slab, u geom.Length) string {
	for i := range b.Runs {
		if b.Runs[i].Frame != s.Frame {
			continue
		}
		for _, box := range b.Runs[i].Boxes {
			if box.Hull.U.Holds(u) {
				return ", over " + box.Words() + ","
			}
		}
	}
	return ""
}

// nearTo is the span that is nearest to x, and how far it is off.
func nearTo(x geom.Length, spans []geom.Span) (next geom.Span, off geom.Length) {
	for i, s := range spans {
		if d := max(s.Lo-x, x-s.Hi, 0); i == 0 || d < off {
			next, off = s, d
		}
	}
	return next, off
}

// sliver looks for pieces of slabs and skins that are too narrow to be cut and held.
func sliver(b *rule.Build) {
	for i := range b.Slabs {
		s := &b.Slabs[i]
		narrow(b, b.Block(s.Key()), s.Box.U, s.Seams)
	}
	for i := range b.KneeWalls {
		for _, skin := range b.KneeWalls[i].Skins {
			seams := slices.Clone(skin.Seams)
			slices.Sort(seams)
			narrow(b, b.Block("skin."+skin.Name), skin.Box.U, seams)
		}
	}
}

// narrow tells of the narrowest piece between rising seams.
func narrow(b *rule.Build, block *lang.Block, whole geom.Span, seams []geom.Length) {
	least := b.Length(b.Limits, "piece_least")
	if len(seams) == 0 {
		return
	}
	piece := slices.MinFunc(spacing.Pieces(whole, seams), func(x, y geom.Span) int { return cmp.Compare(x.Size(), y.Size()) })
	if piece.Size() >= least {
		return
	}
	b.LimitOf(b.Findings.Warnf("sliver", block.Said("seams"), "seams further apart, or further from the ends",
		"Seams leave a piece of %s that is %s long; %s is the least: %s too short.",
		block.Describe(), b.Show(piece.Size()), b.Show(least), b.Show(least-piece.Size())), "piece_least")
}
