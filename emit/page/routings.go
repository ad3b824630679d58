package page

import (
	"strings"

	"barwright/compile/model"
	"barwright/emit/markup"
	"barwright/lang/finding"
)

var routingColumns = []markup.Column{markup.Words("program"), markup.Words("part"), markup.Words("cuts"), markup.Words("zero"),
	markup.Figures("thickness"), markup.Figures("bit"), markup.Figures("about")}

// routings lists the programs for other work, where there is any.
func (p writer) routings() {
	if len(p.m.Routings) == 0 {
		return
	}
	p.Table("Programs for other work in panels, one for each face", routingColumns)
	for i := range p.m.Routings {
		r := &p.m.Routings[i]
		p.Start("tr", "role", "row", "data-part", r.Part)
		p.Cells(routingColumns, r.Name, r.PartLabel, worksOf(r), r.Zero, p.num(r.Thick), p.num(r.Tool.Diameter), clock(r.Seconds))
		p.End()
	}
	p.EndTable()
}

// worksOf counts the works of a routing by their kind, in their order.
func worksOf(r *model.Routing) string {
	var counts []string
	for i := 0; i < len(r.Works); {
		n := i
		for n < len(r.Works) && r.Works[n].Kind == r.Works[i].Kind {
			n++
		}
		counts = append(counts, finding.Counted(n-i, r.Works[i].Kind))
		i = n
	}
	return strings.Join(counts, ", ")
}
