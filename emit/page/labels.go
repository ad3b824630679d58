package page

import (
	_ "embed"
	"io"
	"strconv"

	"barwright/compile/model"
	"barwright/emit/markup"
)

// labelLook is the style of the labels.
//
//go:embed labels.css
var labelLook string

// WriteLabels writes a page to be printed: a label for each part, to be stuck to it when it is
// cut, in the order in which they come out of the sheets and sticks; then those that are ordered
// to size. The error is the writer's.
func WriteLabels(w io.Writer, m *model.Model) error {
	p := writer{Writer: markup.New(w), m: m}
	p.Head("barwright build", m.Build.Name+", labels", markup.Look+labelLook, markup.Policy{})
	p.Start("body")
	p.Start("main")
	p.El("h1", m.Build.Titled())
	p.El("p", "Sizes in "+p.unit()+". Where a part lies is told from the left end and the lower edge of its sheet, or from the end of its stick.", "class", "hint")
	p.Start("div", "class", "labels")
	laid := m.Laid()
	parts := m.PartsByID()
	for i := range m.Layouts {
		for _, b := range m.Layouts[i].Blanks {
			for _, placed := range b.Placed {
				p.label(parts[placed.Part], laid)
			}
		}
	}
	for i := range m.Parts {
		if _, ok := laid[m.Parts[i].Label]; !ok {
			p.label(&m.Parts[i], laid)
		}
	}
	p.End()
	p.End()
	return p.Close()
}

func (p writer) label(part *model.Part, laid map[string]model.Laid) {
	x, y := part.Size()
	p.Start("article")
	p.El("h2", part.Label)
	p.El("p", part.Name+", "+part.Owner)
	p.El("p", p.size(x, y)+" × "+p.num(part.Thickness), "class", "size")
	switch part.Grain {
	case model.GrainX:
		p.El("p", "grain along "+p.num(x))
	case model.GrainY:
		p.El("p", "grain along "+p.num(y))
	}
	if banded := part.Banded(); banded != "" {
		p.El("p", "banded: "+banded)
	}
	if at, ok := laid[part.Label]; ok {
		text := at.Stock + ", no. " + strconv.Itoa(at.Number) + " of " + strconv.Itoa(at.Of) + ", at " + p.num(at.At.X.Lo)
		if at.Kind == model.Panel {
			text += ", " + p.num(at.At.Y.Lo)
		}
		p.El("p", text)
	} else {
		p.El("p", part.Stock)
	}
	p.End()
}
