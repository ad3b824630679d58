package reuse

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// words tells what a trial takes, in the unit of the new build.
type words struct {
	*trial
	build model.Build // the new one
	all   []int       // of the part's cuts
	steps []model.Step
}

func (t *trial) fit(p *Pair) Fit {
	w := &words{trial: t, build: p.New.Build}
	for i := range t.new.cuts {
		w.all = append(w.all, i)
	}
	w.bands(model.Peel)
	w.trims()
	w.strips()
	w.fills()
	w.plugs()
	w.openings()
	w.recesses()
	w.drills()
	w.bands(model.Tape)
	w.marks()
	slices.SortStableFunc(w.steps, func(a, b model.Step) int { return cmp.Compare(a.Kind, b.Kind) })
	fit := Fit{Lay: t.lay, Steps: w.steps, Missing: t.missing(), Spare: t.spare(), Off: t.off}
	for _, c := range fit.Spare {
		fit.Waste += c.Area()
	}
	switch {
	case t.makes:
		fit.Kind = model.Patch
	case len(w.steps) > 0:
		fit.Kind = model.Rework
	}
	return fit
}

func (w *words) show(l Length) string { return w.build.Plain(l) }

func (w *words) add(kind model.StepKind, what, format string, args ...any) {
	w.steps = append(w.steps, model.Step{Kind: kind, What: what, Text: fmt.Sprintf(format, args...), Count: 1})
}

// addEach adds a step that is done to each bore of a group.
func (w *words) addEach(g group, kind model.StepKind, format string, args ...any) {
	w.add(kind, g.bore.Name, format, args...)
	w.steps[len(w.steps)-1].Count = g.n
}

// edgeName is what the part calls an edge; of what is cut to length, its end.
func (w *words) edgeName(e model.Edge) string {
	for _, s := range w.new.part.Sides() {
		if s.Edge == e {
			return s.Name
		}
	}
	if w.ends(e) {
		return e.String() + " end"
	}
	return e.String() + " edge"
}

// ends reports whether an edge is an end of a stick, a bar or a slab.
func (w *words) ends(e model.Edge) bool {
	if w.new.part.Kind == model.Panel {
		return false
	}
	x, y := w.new.part.Size()
	return (e == model.LeftEdge || e == model.RightEdge) == (x >= y)
}

// trims tells of each cut what comes off, and the size over all that is left, what is
// peeled off before and banded after aside.
func (w *words) trims() {
	sizes := [2]Length{w.placed.body.Y.Size(), w.placed.body.X.Size()} // from the bottom up, and across
	for e, f := range w.edge {
		if !f.peel {
			sizes[e%2] += thickness(w.old.bands[e])
		}
	}
	for e, f := range w.edge {
		if f.trim == 0 {
			continue
		}
		edge := model.Edge(e)
		name, size := w.edgeName(edge), &sizes[e%2]
		*size -= f.trim
		switch {
		case w.ends(edge):
			w.add(model.Trim, name, "cut to length, %s: %s off the %s", w.show(*size), w.show(f.trim), name)
		case w.old.bands[e] != nil:
			w.add(model.Trim, name, "trim %s off the banded %s (to %s)", w.show(f.trim), name, w.show(*size))
		default:
			w.add(model.Trim, name, "trim %s off the %s (to %s)", w.show(f.trim), name, w.show(*size))
		}
	}
}

func (w *words) strips() {
	for e := range w.edge {
		if by := w.edge[e].short; by > 0 {
			name := w.edgeName(model.Edge(e))
			w.add(model.Extend, name, "a strip %s wide is missing along the %s; %s", w.show(by), name, w.shown("it", through))
		}
	}
}

// shown tells where patches of a depth would show: "it would show on the inside, a seen
// face".
func (w *words) shown(it string, depth geom.Span) string {
	part := w.new.part
	drawn := depth.Lo <= 0 && (part.Good == model.GoodDrawn || part.Good == model.GoodBoth)
	behind := depth.Hi >= w.new.thick && (part.Good == model.GoodFar || part.Good == model.GoodBoth)
	switch {
	case drawn && behind:
		return it + " would show on both faces, which are seen"
	case drawn:
		return it + " would show on the " + faceName(part) + ", a seen face"
	case behind:
		return it + " would show on the face behind the " + faceName(part) + ", a seen face"
	}
	return it + " would show on no face that is to be seen"
}

// faceName is the drawn face in a sentence.
func faceName(part *model.Part) string {
	switch part.Face {
	case "top", "inside", "outside", "work side", "room side":
		return part.Face
	case "":
		return "drawn face"
	}
	return part.Face + " face"
}

func (w *words) bands(kind model.StepKind) {
	for e, f := range w.edge {
		if !f.peel && !f.tape {
			continue
		}
		name := w.edgeName(model.Edge(e))
		switch {
		case kind == model.Peel && f.peel:
			w.add(kind, name, "take the banding off the %s", name)
		case kind == model.Tape && f.tape && w.old.bands[e] != nil:
			w.add(kind, name, "band the %s anew", name)
		case kind == model.Tape && f.tape:
			w.add(kind, name, "band the %s", name)
		}
	}
}

func (w *words) marks() {
	switch w.draw {
	case redraw:
		w.add(model.Draw, "marks", "draw the marks anew")
	case rub:
		w.add(model.Draw, "marks", "rub out the marks, which hold no longer")
	}
	if w.look {
		face := "the " + faceName(w.new.part)
		was := good(w.old.part.Good, w.lay)
		switch is := w.new.part.Good; {
		case is == model.GoodFar, is == model.GoodBoth && was == model.GoodDrawn:
			face = "the face behind " + face
		case is == model.GoodBoth && was == model.GoodNone:
			face += " and the face behind it"
		}
		w.add(model.Look, face, "look whether %s is good enough to be seen", face)
	}
}

// titled names a cut of a part: "opening for outlet urn".
func titled(c *cut) string {
	switch {
	case c.kind == opening:
		return "opening for " + c.called
	case c.kind == notch && c.called == "":
		return "notch " + c.place()
	case c.kind == notch:
		return "notch for " + c.called
	case c.kind == rounded:
		return [...]string{"lower left", "lower right", "upper left", "upper right"}[c.index] + " corner"
	}
	if strings.HasPrefix(c.called, "groove") {
		return c.called
	}
	return "recess " + c.called
}

// place tells where a notch is: "at the lower left corner", "in the top edge".
func (c *cut) place() string {
	b := c.bounds()
	var across, up string
	switch {
	case b.X.Lo <= -far:
		across = "left"
	case b.X.Hi >= far:
		across = "right"
	}
	switch {
	case b.Y.Lo <= -far:
		up = "lower"
	case b.Y.Hi >= far:
		up = "upper"
	}
	switch {
	case across != "" && up != "":
		return "at the " + up + " " + across + " corner"
	case across != "":
		return "in the " + across + " edge"
	case up == "lower":
		return "in the bottom edge"
	}
	return "in the top edge"
}

func what(c *cut) string {
	if c.called != "" {
		return c.called
	}
	return titled(c)
}

// size of a cut, as far as it lies in a part.
func (w *words) size(c *cut, body geom.Rect) string {
	in := c.bounds().Intersect(body)
	if c.r > 0 && c.core.X.Size() == 0 && c.core.Y.Size() == 0 {
		return w.show(2*c.r) + " across"
	}
	return length.PlainNumber(in.X.Size(), w.build.Unit, w.build.Marks) + " x " + w.show(in.Y.Size())
}

func (w *words) fills() {
	var done []cut
	for _, i := range w.lost {
		c := &w.placed.cuts[i]
		if c.kind == bore || c.kind == sink || slices.ContainsFunc(done, func(d cut) bool { return d.kind == c.kind && d.index == c.index && d.index >= 0 }) {
			continue
		}
		done = append(done, *c)
		shows := w.shown("it", c.depth)
		by := ""
		if to := moved(c, w.new, w.all); to != nil {
			by = w.growth(to, c, filling)
		}
		if by != "" {
			w.add(model.Fill, what(c), "fill the %s by %s; %s", titled(c), by, shows)
		} else {
			w.add(model.Fill, what(c), "fill the old %s, %s; %s", titled(c), w.size(c, w.new.body), shows)
		}
	}
}

// group is bores that are alike.
type group struct {
	bore *model.Bore
	n    int
}

// groups gathers the bores of cuts; a bore and its countersink are one.
func groups(s *solid, cuts []int) (out []group) {
	seen := make(map[int]bool) // lookup only
next:
	for _, i := range cuts {
		c := &s.cuts[i]
		if c.kind != bore && c.kind != sink || seen[c.index] {
			continue
		}
		seen[c.index] = true
		b := &s.part.Bores[c.index]
		for j := range out {
			if out[j].bore.Like(b) {
				out[j].n++
				continue next
			}
		}
		out = append(out, group{b, 1})
	}
	return out
}

// bores counts a group: "4 hinge plate bores of 5 mm".
func (w *words) bores(g group) string {
	one := g.bore.Name + " bore"
	if g.bore.Slot > 0 {
		one = g.bore.Name + " slot"
	}
	return finding.Counted(g.n, one) + " of " + w.bit(g.bore.Diameter)
}

// bit shows a diameter: in millimetres where no inch rule shows it and a metric one does.
func (w *words) bit(d Length) string {
	if w.build.Metric(d, length.Millimetre/2) {
		return length.Plain(d, length.Millimetres, 0)
	}
	return w.show(d)
}

func (w *words) plugs() {
	for _, g := range groups(&w.placed, w.lost) {
		depth := w.placed.from(g.bore.Depth, g.bore.Far != w.lay.Over)
		it := "it"
		if g.n > 1 {
			it = "they"
		}
		w.addEach(g, model.Plug, "plug %s; %s", w.bores(g), w.shown(it, depth))
	}
}
