package page

import (
	"slices"
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/emit/markup"
	"barwright/lang/finding"
)

var programColumns = []markup.Column{markup.Words("program"), markup.Words("part"), markup.Words("recess"), markup.Figures("X0 from left"),
	markup.Words("zero"), markup.Figures("depth"), markup.Figures("passes"), markup.Figures("bit"), markup.Figures("about")}

func (p writer) programs() {
	p.section("programs")
	p.routings()
	if len(p.m.Programs) == 0 {
		p.none("No recess is cut by a program.")
		p.End()
		return
	}
	p.fold("programs", "Recesses", finding.Counted(len(p.m.Programs), "program"), func(p writer) {
		p.Table(programsTitle(p.m), programColumns)
		for i := range p.m.Programs {
			p.program(&p.m.Programs[i])
		}
		p.EndTable()
	})
	p.El("p", "Before each: the work is clamped outside the path, the mark and the zero are checked against the drawing, "+
		"and the program has run once in the air and once in scrap of the same thickness. "+
		"Eyes and ears are protected; the machine is not left alone. The router's and the bit's manuals decide speeds and depths.",
		"class", "caution")
	p.End()
}

func (p writer) program(g *model.Program) {
	p.Start("tr", "role", "row", "data-part", g.Part)
	recess := g.Recess
	if g.Test {
		recess = "as " + recess + ", in scrap"
	}
	p.Cells(programColumns, g.Name, g.PartLabel, recess, p.num(g.Mark), g.Zero, p.num(g.Depth),
		strconv.Itoa(len(g.Levels)), p.num(g.Tool.Diameter), clock(g.Seconds))
	p.End()
}

// programsTitle says what the programs are for.
func programsTitle(m *model.Model) string {
	title := "Programs for the router: one for each recess"
	if slices.ContainsFunc(m.Programs, func(p model.Program) bool { return p.Test }) {
		title += ", and before them test pieces in scrap"
	}
	return title
}

// clock writes an estimate of time.
func clock(seconds float64) string {
	whole := int(seconds + 0.5)
	if whole < 60 {
		return strconv.Itoa(whole) + " s"
	}
	return strconv.Itoa(whole/60) + " min " + strconv.Itoa(whole%60) + " s"
}

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
