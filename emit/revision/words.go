package revision

import (
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// words tell what is to be done to a part, or why it is made again, one thing each.
func (r *report) words(f *model.Fate) []string {
	var out []string
	switch f.Kind {
	case model.Relabel, model.Rework, model.Patch:
		if l := laid(f.Lay); l != "" {
			out = append(out, "lay it "+l)
		}
		if f.Stands != "" {
			out = append(out, "stands "+f.Stands)
		}
		out = append(out, doneSteps(f.Steps)...)
		if f.Off > noise {
			out = append(out, "an edge may be off by "+r.New.Build.Plain(f.Off))
		}
	case model.MakeAgain:
		out = r.differs(f)
	case model.NewPart:
		p := &r.New.Parts[f.New]
		x, y := p.Size()
		out = append(out, r.New.Build.Plain(x)+" x "+r.New.Build.Plain(y)+" of "+p.Stock)
	}
	if f.Kind == model.Dropped && len(f.Serves) > 0 {
		out = append(out, "its offcut is enough for "+enumerated(r.labels(f.Serves)))
	}
	if f.Kind != model.Dropped && f.Offcut >= 0 {
		out = append(out, "comes out of the offcut of "+r.Old.Parts[f.Offcut].Label)
	}
	return out
}

func (r *report) labels(parts []int) []string {
	out := make([]string, len(parts))
	for i, at := range parts {
		out[i] = r.New.Parts[at].Label
	}
	return out
}

// laid tells how a piece lies in the place of a part; empty where as before.
func laid(l model.Lay) string {
	turned := [...]string{"", "turned by a quarter to the left", "turned by half", "turned by a quarter to the right"}[l.Quarters]
	switch {
	case !l.Over:
		return turned
	case turned == "":
		return "turned over"
	}
	return "turned over, then " + turned
}

// differs says why no piece serves for a part that is made again: what it differs in
// from the old piece of its name.
func (r *report) differs(f *model.Fate) []string {
	p := &r.New.Parts[f.New]
	at, ok := r.olds[p.ID]
	if !ok {
		return []string{"no piece serves"}
	}
	if taken, ok := r.serves[at]; ok {
		return []string{"the old one serves as " + r.New.Parts[taken].Label}
	}
	old := &r.Old.Parts[at]
	out, larger := r.sizes(old, p)
	if old.Stock != p.Stock {
		out = append(out, "from "+p.Stock+" instead of "+old.Stock)
	} else if !larger {
		out = append(out, cuts(old, p)...)
	}
	if len(out) == 0 {
		return []string{"no piece is left for it"}
	}
	return out
}

// sizes tells how a part differs from the old one in size and thickness, and whether it
// is the larger anywhere.
func (r *report) sizes(old, p *model.Part) (out []string, larger bool) {
	x, y := p.Size()
	oldX, oldY := old.Size()
	along := [2]string{axisWords(p.Placement.X.Axis), axisWords(p.Placement.Y.Axis)}
	if p.Kind == model.Lumber || p.Kind == model.Steel {
		along = [2]string{"wider narrower", "longer shorter"}
		if x > y {
			slices.Reverse(along[:])
		}
	}
	for _, d := range [...]struct {
		by    model.Length
		words string
	}{{x - oldX, along[0]}, {y - oldY, along[1]}, {p.Thickness - old.Thickness, "thicker thinner"}} {
		more, less, _ := strings.Cut(d.words, " ")
		switch {
		case d.by > noise:
			out, larger = append(out, r.New.Build.Plain(d.by)+" "+more), true
		case d.by < -noise:
			out = append(out, r.New.Build.Plain(-d.by)+" "+less)
		}
	}
	return out, larger
}

// noise is what turning a point in and out of a frame may leave.
const noise = length.Micrometre

// axisWords are what one calls more and less along an axis of a run.
func axisWords(a geom.Axis) string {
	return [...]string{"wider narrower", "deeper shallower", "taller lower"}[a]
}

// cut is an opening, a recess or a bore, however it is made.
type cut struct {
	name  string
	shape geom.Contour
	depth model.Length
	far   bool
}

// like reports whether two cuts differ in nothing but where they are.
func (c cut) like(o cut) bool {
	a, b := c.shape.Bounds(), o.shape.Bounds()
	return c.name == o.name && c.depth == o.depth && c.far == o.far && a.X.Size() == b.X.Size() && a.Y.Size() == b.Y.Size()
}

func cutsOf(p *model.Part) []cut {
	var out []cut
	for i := range p.Openings {
		out = append(out, cut{name: p.Openings[i].Name, shape: p.Openings[i].Shape})
	}
	for i := range p.Recesses {
		out = append(out, cut{name: p.Recesses[i].Name, shape: p.Recesses[i].Shape, depth: p.Recesses[i].Depth})
	}
	for i := range p.Bores {
		out = append(out, cut{p.Bores[i].Name, p.Bores[i].Shape(), p.Bores[i].Depth, p.Bores[i].Far})
	}
	return out
}

// mostCuts is how many differing cuts are named.
const mostCuts = 3

// cuts names what is cut otherwise into a part than into the old one of its name.
func cuts(old, p *model.Part) []string {
	before, after := cutsOf(old), cutsOf(p)
	has := func(list []cut, is func(cut) bool) bool { return slices.ContainsFunc(list, is) }
	var out []string
	add := func(text string) {
		if !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	for _, c := range after {
		switch {
		case !has(before, func(o cut) bool { return o.name == c.name }):
			add(c.name + " came")
		case has(before, func(o cut) bool { return o.like(c) && slices.Equal(o.shape, c.shape) }):
		case has(before, c.like):
			add(c.name + " moved")
		default:
			add(c.name + " of another size")
		}
	}
	for _, c := range before {
		if !has(after, func(o cut) bool { return o.name == c.name }) {
			add(c.name + " went")
		}
	}
	if len(out) == 0 && !slices.Equal(old.Outline, p.Outline) {
		out = append(out, "another outline")
	}
	if more := len(out) - mostCuts; more > 0 {
		out = append(out[:mostCuts], finding.Counted(more, "other cut"))
	}
	return out
}
