package revision

import (
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/markup"
)

// mostPieces is how many parts a page shows.
const mostPieces = 200

// piece is an old piece under the new part that it serves for, or under the one that it
// does not, and the parts that look so.
type piece struct {
	group   *group
	fates   []*model.Fate
	picture picture
}

// pieces shows the parts that something is to be done to, and counts those for which
// there is no room.
func (r *report) pieces() (out []piece, more int) {
	for i := range r.groups {
		g := &r.groups[i]
		at := map[string]int{} // lookup only
		for _, f := range g.fates {
			old, lay, ok := r.under(f)
			if !ok {
				continue
			}
			if len(out) == mostPieces {
				more++
				continue
			}
			p := r.pictured(f, old, lay)
			key := p.key()
			if j, ok := at[key]; ok {
				out[j].fates = append(out[j].fates, f)
				continue
			}
			at[key] = len(out)
			out = append(out, piece{g, []*model.Fate{f}, p})
		}
	}
	return out, more
}

// under tells which old part is to be seen under a new one, and how it lies; ok is false
// where there is nothing to see.
func (r *report) under(f *model.Fate) (old int, lay model.Lay, ok bool) {
	switch f.Kind {
	case model.Relabel:
		return f.Old, f.Lay, f.Lay.Over || f.Lay.Quarters != 0
	case model.Rework, model.Patch:
		return f.Old, f.Lay, true
	case model.MakeAgain:
		if old, ok = r.olds[r.New.Parts[f.New].ID]; ok {
			lay = corners(&r.Old.Parts[old], &r.New.Parts[f.New])
		}
	}
	return old, lay, ok
}

// pictured lays a part over an old piece.
func (r *report) pictured(f *model.Fate, old int, lay model.Lay) picture {
	p := over(outlines(&r.Old.Parts[old], lay), outlines(&r.New.Parts[f.New], model.Lay{}), func(*model.Shape) bool { return false })
	if len(f.Spare) > 0 {
		p.layers = append(p.layers, layer{class: "spare", lines: f.Spare, title: "to be cut away"})
	}
	if len(f.Missing) > 0 {
		p.layers = append(p.layers, layer{class: "missing", lines: f.Missing, title: "is missing"})
	}
	return p
}

// corners lays the lower left corners of two parts on each other.
func corners(old, p *model.Part) model.Lay {
	a, b := old.Outline.Bounds(), p.Outline.Bounds()
	return model.Lay{Move: geom.Point{X: b.X.Lo - a.X.Lo, Y: b.Y.Lo - a.Y.Lo}}
}

// outlines are the shapes of a part as it lies.
func outlines(p *model.Part, lay model.Lay) []model.Shape {
	var out []model.Shape
	add := func(kind model.ShapeKind, c geom.Contour, name string) {
		out = append(out, model.Shape{Kind: kind, Lines: lay.Contour(c), Closed: true, Title: name})
	}
	add(model.ShapePanel, p.Outline, p.Label)
	for i := range p.Openings {
		if o := &p.Openings[i]; !o.Notch {
			add(model.ShapeOpening, o.Shape, o.Name)
		}
	}
	for i := range p.Recesses {
		add(model.ShapeRecess, p.Recesses[i].Shape, p.Recesses[i].Name)
	}
	for i := range p.Bores {
		add(model.ShapeBore, p.Bores[i].Shape(), p.Bores[i].Name)
	}
	return out
}

// key is the same for pictures that look the same.
func (p *picture) key() string {
	sheet := markup.Sheet{Bounds: p.bounds}
	var b strings.Builder
	for _, l := range p.layers {
		b.WriteString(l.class)
		for _, c := range l.lines {
			b.WriteString(sheet.Path(c, l.closed()))
		}
	}
	return b.String()
}
