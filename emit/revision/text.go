package revision

import (
	"bytes"
	"io"
	"strings"

	"barwright/compile/model"
	"barwright/emit/page"
	"barwright/lang/finding"
)

// Text writes a revision for a person at a terminal; nothing where the builds differ in
// nothing. The error is the writer's.
func Text(w io.Writer, r *model.Revision, names Names, style finding.Style) error {
	if r.Empty() {
		return nil
	}
	if style.Width == 0 {
		style.Width = 80
	}
	p := terminal{report: reported(r, names), style: style}
	p.sides()
	p.sumLines()
	p.changeLines()
	p.partLines()
	p.findingLines()
	p.billLines()
	if len(r.Notes) > 0 {
		p.head("notes")
	}
	for _, n := range r.Notes {
		p.lines(p.paragraph("  ", "  ", n))
	}
	_, err := w.Write(p.out.Bytes())
	return err
}

// terminal prints a report in lines of a width.
type terminal struct {
	*report
	out    bytes.Buffer
	style  finding.Style
	indent string // of lists
}

func (p *terminal) sides() {
	names := [...]string{finding.OneLine(p.names.Old), finding.OneLine(p.names.New)}
	wide := max(finding.Columns(names[0]), finding.Columns(names[1]))
	for i, m := range [...]*model.Model{p.Old, p.New} {
		side, title := [...]string{"old  ", "new  "}[i]+names[i], finding.OneLine(titled(m))
		if 5+wide+3+finding.Columns(title) <= p.style.Width {
			p.lines([]string{pad(side, 5+wide) + "   " + title})
		} else {
			p.lines([]string{side})
			p.lines(p.paragraph("     ", "     ", title))
		}
	}
}

func (p *terminal) sumLines() {
	if sums := p.sums(); len(sums) > 0 {
		p.head(sums[0])
		for _, s := range sums[1:] {
			p.lines(p.paragraph("", "  ", s))
		}
	}
}

func (p *terminal) changeLines() {
	for _, t := range p.told() {
		rows := make([]row, len(t.lines))
		for i, l := range t.lines {
			rows[i] = row{left: l.name, mid: l.says, right: l.through, cause: l.cause}
		}
		p.head(t.head)
		p.byCause(rows, 0)
		if t.head == "changed" {
			p.rootLine()
		}
	}
}

// rootLine tells of the one cause of all once.
func (p *terminal) rootLine() {
	if says := p.rootSays(); says != "" {
		p.head(says)
	}
}

func (p *terminal) partLines() {
	if len(p.groups) == 0 {
		return
	}
	p.head("parts")
	rows := make([]row, len(p.groups))
	for i := range p.groups {
		rows[i] = p.groups[i].row()
	}
	p.byCause(rows, len(model.MakeAgain.String()))
}

// row tells of a group: one thing to do beside its parts, more of them below.
func (g *group) row() row {
	r := row{left: g.kind.String(), tint: tints[g.kind], mid: g.labels + ", " + g.what, cause: g.cause}
	if (g.kind == model.Rework || g.kind == model.Patch) && len(g.words) > 1 {
		r.below = g.words
	} else if len(g.words) > 0 {
		r.mid += ": " + strings.Join(g.words, "; ")
	}
	return r
}

// tints of the fates.
var tints = [...]string{
	model.Relabel: "\x1b[36m", model.Rework: "\x1b[33m", model.Patch: "\x1b[33m", model.MakeAgain: "\x1b[31m",
	model.NewPart: "\x1b[32m", model.Dropped: "\x1b[2m",
}

func (p *terminal) findingLines() {
	if len(p.Findings) == 0 {
		return
	}
	p.head("findings: " + strings.Join(p.findingCounts(), " · "))
	rows := make([]row, len(p.Findings))
	for i := range p.Findings {
		f := &p.Findings[i]
		rows[i] = row{left: came(f), mid: findingSays(f)}
		if f.Old != nil && f.New != nil {
			rows[i].below = []string{"was: " + f.Old.Text}
		}
	}
	p.list(rows, 0)
}

func findingSays(f *model.FindingChange) string {
	of := f.New
	if of == nil {
		of = f.Old
	}
	at := ""
	if of.At.File != "" {
		at = " (" + of.At.Place() + ")"
	}
	return of.Severity.String() + " " + of.Slug + at + ": " + of.Text
}

func (p *terminal) billLines() {
	if len(p.Bill) > 0 {
		p.head("bill: " + p.billSum())
		rows := make([]row, len(p.Bill))
		for i := range p.Bill {
			rows[i].left, rows[i].mid, rows[i].right = bought(&p.Bill[i])
		}
		p.list(inColumn(rows), 0)
	}
	if len(p.Again) > 0 {
		p.head(p.againHead() + ": " + p.againSum())
		rows := make([]row, len(p.Again))
		for i := range p.Again {
			l := &p.Again[i]
			rows[i] = row{left: item(l), mid: page.Pieces(l.Quantity, l.Unit), right: cost(l)}
		}
		p.list(inColumn(rows), 0)
	}
}
