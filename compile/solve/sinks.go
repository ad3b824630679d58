package solve

import (
	"fmt"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// bowl is how far down a sink or the nut of a tap needs the space under its
// hole, at least: the bowls of small bar sinks are about as deep (common
// practice, from memory).
const bowl = 125 * length.Millimetre

// cutOuts places the sinks and taps of a counter. It reports whether all are
// sound.
func (s *solver) cutOuts(t *top) bool {
	sound := true
	for _, b := range t.block.Inner("sink") {
		sound = s.sink(t, b) && sound
	}
	for _, b := range t.block.Inner("tap") {
		sound = sound && s.tap(t, b)
	}
	return sound
}

// sink cuts a slab out over the middle of a cabinet.
func (s *solver) sink(t *top, b *lang.Block) bool {
	in := s.Ref(b, "in")
	if over := s.Ref(t.block, "over"); in.Parent != over {
		s.Findings.Errorf("cut-out-elsewhere", b.Attr("in").Expr.At, "a cabinet of "+over.Describe(),
			"%s stands in another run than that under %s.", finding.Capital(in.Describe()), t.block.Describe()).
			Also(in.Head, "it stands here")
		return false
	}
	box := boxNamed(t.run, in.Name)
	if box == nil {
		return false // its own refusal says why
	}
	w, d, r := s.FieldLength(b, "cut", "width"), s.FieldLength(b, "cut", "depth"), s.FieldLength(b, "cut", "radius")
	if 2*r > min(w, d) {
		s.Findings.Errorf("cut-out-too-round", b.Attr("cut").Expr.At, "a radius of at most half the shorter side, "+s.Show(min(w, d)/2),
			"The cut-out is %s wide and %s deep; its corners cannot be rounded by %s.", s.Show(w), s.Show(d), s.Show(r))
		return false
	}
	cut := model.SlabCut{
		Kind: "sink", Name: b.Name, Radius: r, Why: why(b),
		Box: geom.Box{U: geom.About(box.Inside.U.Mid(), w), V: geom.About(box.Inside.V.Mid(), d), Z: t.slab.Box.Z},
	}
	if b.Attr("from_front") != nil {
		front := t.slab.Box.V.Hi - s.Length(b, "from_front")
		cut.Box.V = geom.Span{Lo: front - d, Hi: front}
	}
	if !s.railsHold(t, b, &cut) {
		return false
	}
	s.hangs(t, b, &cut)
	t.slab.Cuts = append(t.slab.Cuts, cut)
	return true
}

func boxNamed(run *model.Run, cabinet string) *model.Box {
	for i := range run.Boxes {
		if b := &run.Boxes[i]; b.Kind == model.Cabinet && b.Name == cabinet {
			return b
		}
	}
	return nil
}

// apart is how far two stretches keep from one another; under 0 where they
// overlap.
func apart(a, b geom.Span) length.Length { return max(a.Lo-b.Hi, b.Lo-a.Hi) }

// railsHold refuses a cut-out that leaves too little of the slab on a side.
func (s *solver) railsHold(t *top, b *lang.Block, cut *model.SlabCut) bool {
	slab, rail := t.slab.Box, s.Length(b, "rail")
	type side struct {
		left        length.Length // of the slab
		where, past string
	}
	sides := []side{
		{slab.V.Hi - cut.Box.V.Hi, "in front of", "the slab's front edge"},
		{cut.Box.V.Lo - slab.V.Lo, "behind", "the slab's rear edge"},
		{cut.Box.U.Lo - slab.U.Lo, "at the left of", "the slab's left end"},
		{slab.U.Hi - cut.Box.U.Hi, "at the right of", "the slab's right end"},
	}
	for _, o := range t.slab.Cuts {
		sides = append(sides, side{max(apart(cut.Box.U, o.Box.U), apart(cut.Box.V, o.Box.V)), "between sink " + o.Name + " and", "the cut-out of sink " + o.Name})
	}
	worst := 0
	for i := range sides {
		if sides[i].left < sides[worst].left {
			worst = i
		}
	}
	w := sides[worst]
	if w.left >= rail {
		return true
	}
	at, mend := b.Attr("cut").Expr.At, "a smaller sink, or more slab there"
	if worst < 2 {
		at = b.Said("from_front", "cut")
		if further, ok := s.fromFront(t, slab.V.Grow(-rail), cut); ok {
			mend = further
		}
	}
	text := fmt.Sprintf("%s of slab are left %s the cut-out of sink %q, but its rail is %s: %s too little.",
		s.Show(w.left), w.where, b.Name, s.Show(rail), s.Show(rail-w.left))
	if w.left < 0 {
		text = fmt.Sprintf("The cut-out of sink %q would run %s past %s, where its rail of %s should be left.", b.Name, s.Show(-w.left), w.past, s.Show(rail))
	}
	s.Findings.Errorf("rail-too-narrow", at, mend, "%s", text)
	return false
}

// fromFront is how to write that a cut-out lies within a stretch of the slab's
// depth, in its middle as far as a tape shows it; ok is false where it does not
// fit.
func (s *solver) fromFront(t *top, within geom.Span, cut *model.SlabCut) (mend string, ok bool) {
	front := t.slab.Box.V.Hi
	x, ok := s.middle(geom.Span{Lo: front - within.Hi, Hi: front - within.Lo - cut.Box.V.Size()})
	return fmt.Sprintf("from_front = %q", s.Show(x)), ok
}

// middle is the mark next to the middle of a stretch; ok is false where none
// lies in it.
func (s *solver) middle(of geom.Span) (mark length.Length, ok bool) {
	mark = length.Down(of.Mid(), s.Marks)
	if mark < of.Lo {
		mark += s.Marks
	}
	return mark, of.Lo <= mark && mark <= of.Hi
}

// hangs warns of what stands in the place of a sink's bowl.
func (s *solver) hangs(t *top, b *lang.Block, cut *model.SlabCut) {
	u := s.under(t, cut)
	var texts, mends []string
	if len(u.over) > 0 {
		texts = append(texts, fmt.Sprintf("The cut-out of sink %q lies over %s: its bowl hangs there.", b.Name, strings.Join(u.over, ", over ")))
		if mend, ok := s.fromFront(t, u.free.Intersect(t.slab.Box.V.Grow(-s.Length(b, "rail"))), cut); ok {
			mends = append(mends, mend)
		}
	}
	if len(u.drawers) > 0 {
		texts = append(texts, fmt.Sprintf("The bowl of sink %q hangs where %s slides.", b.Name, strings.Join(u.drawers, " and ")))
		mends = append(mends, s.falseFront(s.Ref(b, "in"), u.drawers))
	}
	if len(texts) > 0 {
		s.Findings.Warnf("cut-out-over-board", b.Said("from_front", "cut"), strings.Join(mends, "; and "), "%s", strings.Join(texts, " "))
	}
}

// falseFront is the mend of a drawer where a bowl hangs: its front stays and does not open.
func (s *solver) falseFront(cabinet *lang.Block, drawers []string) string {
	all := s.Value(cabinet, "drawers").Items
	if len(drawers) > 1 || cabinet.Attr("false_front") != nil || drawers[0] != drawerOf(1, cabinet.Describe()) {
		return "a false front before the bowl, and drawers under it"
	}
	high, place := "rest", "in place of its drawer"
	if all[0].Kind == expr.Length {
		high = fmt.Sprintf("%q", s.Show(values.LengthOf(all[0])))
	}
	if len(all) > 1 {
		place = "in place of the first of its drawers"
	}
	return "false_front = " + high + " in " + cabinet.Describe() + ", " + place
}

func drawerOf(n int, cabinet string) string { return fmt.Sprintf("drawer %d of %s", n, cabinet) }

// beneath is what stands just under a cut-out.
type beneath struct {
	over    []string  // boards and appliances, and by how much the cut-out lies over each
	drawers []string  // drawers that slide there, each once
	free    geom.Span // of the slab's depth, free of what is over
}

// under looks for what stands within the depth of a bowl under a cut-out.
func (s *solver) under(t *top, cut *model.SlabCut) beneath {
	bowl := cut.Box.With(geom.Z, geom.Span{Lo: t.slab.Box.Z.Lo - bowl, Hi: t.slab.Box.Z.Lo})
	out := beneath{free: t.slab.Box.V}
	look := func(name string, box geom.Box) {
		if !box.U.Overlaps(bowl.U) || !box.Z.Overlaps(bowl.Z) {
			return
		}
		if box.V.Overlaps(bowl.V) {
			out.over = append(out.over, name+" by "+s.Show(min(box.U.Intersect(bowl.U).Size(), box.V.Intersect(bowl.V).Size())))
		}
		switch mid := bowl.V.Mid(); {
		case box.V.Hi <= mid:
			out.free.Lo = max(out.free.Lo, box.V.Hi)
		case box.V.Lo >= mid:
			out.free.Hi = min(out.free.Hi, box.V.Lo)
		default:
			out.free.Hi = out.free.Lo // no place before or behind it
		}
	}
	for i := range t.run.Boxes {
		if box := &t.run.Boxes[i]; box.Kind == model.Bay {
			look("the appliance of bay "+box.Name, box.Appliance)
		}
	}
	for _, i := range s.partsIn(t.slab.Frame) {
		p := &s.m.Parts[i]
		if p.Kind != model.Panel {
			continue
		}
		if !p.Is("cabinet", "drawer") {
			look(p.Named()+" of "+p.Owner, p.Placement.Box)
			continue
		}
		var n int
		if _, err := fmt.Sscanf(p.Name, "drawer %d", &n); err == nil && p.Placement.Box.Overlaps(bowl) {
			if name := drawerOf(n, s.Block(p.Block()).Describe()); !slices.Contains(out.drawers, name) {
				out.drawers = append(out.drawers, name)
			}
		}
	}
	return out
}
