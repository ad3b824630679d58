package page

import (
	"io"
	"strconv"

	"barwright/compile/model"
	"barwright/emit/markup"
)

var laidColumns = []markup.Column{markup.Words("piece"), markup.Words("more"), markup.Figures("along"), markup.Figures("across"), markup.Figures("sheet"),
	markup.Figures("from the left"), markup.Figures("from below"), markup.Words("turned")}

// WriteList writes a page of a plain cut list as it is laid out: each sheet with the order of its
// cuts, and where each piece lies. The error is the writer's.
func WriteList(w io.Writer, m *model.Model) error {
	p := writer{Writer: markup.New(w), m: m}
	p.Head("barwright layout", m.Build.Name, markup.Look, markup.Policy{})
	p.Start("body")
	p.Start("header")
	p.El("h1", m.Build.Name)
	p.Start("dl", "class", "facts")
	p.fact("Sizes in", p.unit())
	p.fact("Pieces", strconv.Itoa(len(m.Parts)))
	p.End()
	p.End()
	p.Start("main")
	p.layouts()
	p.pieces()
	p.End()
	p.End()
	return p.Close()
}

// pieces lists where each piece lies.
func (p writer) pieces() {
	parts := p.m.PartsByID()
	p.section("parts")
	p.Table("Where each piece lies, told of its lower left corner", laidColumns)
	for i := range p.m.Layouts {
		for k, b := range p.m.Layouts[i].Blanks {
			for _, placed := range b.Placed {
				part, turned := parts[placed.Part], ""
				if placed.Turned {
					turned = "yes"
				}
				x, y := part.Size()
				p.Row(laidColumns, part.Label, part.Name, p.num(x), p.num(y), strconv.Itoa(k+1), p.num(placed.At.X.Lo), p.num(placed.At.Y.Lo), turned)
			}
		}
	}
	p.EndTable()
	p.End()
}
