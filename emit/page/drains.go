package page

import (
	"strings"

	"barwright/compile/model"
	"barwright/emit/markup"
)

var drainColumns = []markup.Column{markup.Words("drain"), markup.Words("pipe"), markup.Figures("under the bowl"), markup.Figures("out of the trap"),
	markup.Figures("weir"), markup.Figures("under the trap"), markup.Figures("left for the trap"), markup.Figures("at the stub"),
	markup.Figures("arm"), markup.Figures("falls"), markup.Words("meets")}

// drains lists the heights at the ends of each drain, and what is left under its bowl.
func (p writer) drains() {
	if len(p.m.Drains) == 0 {
		return
	}
	p.Table("Drains: heights are above the datum, of the pipe's middle at the trap and at the end of the stub; "+
		"left for the trap is from the bowl down to that middle, with strainer, tailpiece and trap; each to the nearest mark", drainColumns)
	for i := range p.m.Drains {
		d := &p.m.Drains[i]
		p.Row(drainColumns, d.Words(), p.m.Build.Plain(d.Size), p.near(d.Bowl), p.near(d.Outlet), p.near(d.Weir), p.near(d.Under),
			p.near(d.Bowl-d.Outlet), p.near(d.End), p.near(d.Arm), p.near(d.Fall), stops(d))
	}
	p.EndTable()
}

// stops names what a drain meets that no hole leads it through.
func stops(d *model.Drain) string {
	names := make([]string, len(d.Stops))
	for i, s := range d.Stops {
		names[i] = s.Name
	}
	return strings.Join(names, ", ")
}
