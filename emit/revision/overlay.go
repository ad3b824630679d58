package revision

import (
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/markup"
)

// picture is two drawings over each other, in real size.
type picture struct {
	bounds geom.Rect
	height model.Length // of its type
	layers []layer      // from back to front
	texts  []model.Text
	differ bool
}

// layer is what is drawn of one shape, or of one that only the old drawing has.
type layer struct {
	class string // "area", "same", "new", "old"
	lines []geom.Contour
	title string
	fill  string // the pattern that it is filled with
}

// helping are the kinds that only carry dimensions.
var helping = []model.ShapeKind{model.ShapeThin, model.ShapeCentre, model.ShapeLeader}

// over lays the shapes of an old drawing under those of a new one. Of steady ones it
// takes for granted that they are the same.
func over(old, new []model.Shape, steady func(*model.Shape) bool) picture {
	compared := func(shapes []model.Shape) []model.Shape {
		return slices.DeleteFunc(slices.Clone(shapes), func(s model.Shape) bool { return slices.Contains(helping, s.Kind) })
	}
	old, new = compared(old), compared(new)
	before, after := newRuler(old), newRuler(new)
	var p picture
	for i := range new {
		s := &new[i]
		if s.Fills() {
			p.layers = append(p.layers, layer{class: "area", lines: []geom.Contour{s.Lines}})
		}
		same, own := before.split(s.Lines, s.Closed)
		if steady(s) {
			same, own = append(same, own...), nil
		}
		p.add("same", same, s.Title)
		p.add("new", own, s.Title)
	}
	covered := hiders(old)
	for i := range old {
		s := &old[i]
		if steady(s) {
			continue
		}
		if _, own := after.split(s.Lines, s.Closed); len(own) > 0 && !covered.hide(old, i) {
			p.add("old", own, s.Title)
		}
	}
	for i := range p.layers {
		for _, c := range p.layers[i].lines {
			p.extend(c.Bounds())
		}
	}
	return p
}

func (p *picture) add(class string, lines []geom.Contour, title string) {
	if len(lines) == 0 {
		return
	}
	p.differ = p.differ || class != "same"
	if class == "same" {
		title = ""
	}
	p.layers = append(p.layers, layer{class: class, lines: lines, title: title})
}

func (p *picture) extend(r geom.Rect) {
	if p.bounds == (geom.Rect{}) {
		p.bounds = r
	}
	p.bounds = p.bounds.Union(r)
}

// shifted moves shapes.
func shifted(shapes []model.Shape, by geom.Point) []model.Shape {
	out := slices.Clone(shapes)
	for i := range out {
		out[i].Lines = out[i].Lines.Shifted(by)
	}
	return out
}

// draw writes the picture. Its width in CSS pixels follows from its type where it has any.
func (p *picture) draw(m *markup.Writer, title string, defs func()) {
	sheet := markup.Sheet{Bounds: p.bounds.Grow(p.margin())}
	w, h := sheet.Size()
	attrs := []string{"viewBox", "0 0 " + markup.Itoa(w) + " " + markup.Itoa(h), "role", "img"}
	if p.height > 0 {
		least, most := sheet.Widths(p.height)
		attrs = append(attrs, "font-size", markup.Itoa(markup.TypeSize(p.height)),
			"style", "min-width:"+markup.Itoa(least)+"px;max-width:"+markup.Itoa(most)+"px")
	}
	m.Start("svg", attrs...)
	m.El("title", title)
	if defs != nil {
		defs()
	}
	for _, l := range p.layers {
		var d strings.Builder
		for _, c := range l.lines {
			d.WriteString(sheet.Path(c, l.closed()))
		}
		attrs := []string{"class", l.class, "d", d.String()}
		if l.fill != "" {
			attrs = append(attrs, "style", "fill:url(#"+l.fill+")")
		}
		m.Start("path", attrs...)
		if l.title != "" {
			m.El("title", l.title)
		}
		m.End()
	}
	for _, t := range p.texts {
		m.Label(sheet, t, p.height)
	}
	m.End()
}

// closed reports whether the layer's contours are areas.
func (l *layer) closed() bool { return l.class == "area" || l.class == "missing" || l.class == "spare" }

// margin is what is left free round a picture.
func (p *picture) margin() model.Length {
	if p.height > 0 {
		return p.height
	}
	return max(p.bounds.X.Size(), p.bounds.Y.Size()) / 50
}
