package revision

import (
	_ "embed"
	"io"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/emit/markup"
	"barwright/emit/page"
	"barwright/lang/finding"
)

//go:embed diff.css
var look string

// sheet writes a report as a page.
type sheet struct {
	*markup.Writer
	*report
}

// Page writes a revision as one HTML file that needs no other: what Text tells, and
// both builds over each other. The views of both models must be there. The error is the
// writer's.
func Page(w io.Writer, r *model.Revision, names Names) error {
	p := sheet{markup.New(w), reported(r, names)}
	sections := p.sections()
	p.Head(generator, "What differs in "+r.New.Build.Name, markup.Look+look, markup.Policy{})
	p.Start("body")
	p.top(sections)
	p.Start("main")
	for _, s := range sections {
		p.Start("section", "id", s.id, "aria-labelledby", s.id+"-title")
		p.El("h2", s.title, "id", s.id+"-title")
		s.write()
		p.End()
	}
	return p.Close()
}

func (p sheet) top(sections []section) {
	p.Start("header")
	p.El("h1", p.New.Build.Name+": what differs")
	p.Start("dl", "class", "facts sides")
	for _, side := range [...]struct {
		class, says, name string
		m                 *model.Model
	}{{"was", "old", p.names.Old, p.Old}, {"is", "new", p.names.New, p.New}} {
		p.Start("div", "class", side.class)
		p.El("dt", side.says)
		p.El("dd", side.name+" · "+titled(side.m))
		p.End()
	}
	p.End()
	if p.Empty() {
		p.El("p", "The two builds differ in nothing.")
		p.End()
		return
	}
	p.Start("ul", "class", "counts")
	for _, c := range p.counts() {
		p.El("li", c)
	}
	p.End()
	for _, s := range p.sums()[min(1, len(p.counts())):] {
		p.El("p", s)
	}
	p.Start("nav", "aria-label", "On this page")
	for _, s := range sections {
		p.El("a", s.title, "href", "#"+s.id)
	}
	p.End()
	p.End()
}

// section is a part of the page under a heading.
type section struct {
	id, title string
	write     func()
}

// sections are those in which there is something to tell.
func (p sheet) sections() []section {
	if p.Empty() {
		return nil
	}
	pieces, more := p.pieces()
	views, same := p.views()
	var out []section
	for _, s := range []struct {
		section
		any bool
	}{
		{section{"changes", "Changes", p.said}, len(p.Changes) > 0},
		{section{"parts", "Parts", p.partTable}, len(p.groups) > 0},
		{section{"pieces", "Pieces", func() { p.pieceDrawings(pieces, more) }}, len(pieces) > 0},
		{section{"findings", "Findings", p.found}, len(p.Findings) > 0},
		{section{"bill", "Bill", p.costs}, len(p.Bill)+len(p.Again) > 0},
		{section{"views", "Views", func() { p.viewDrawings(views, same) }}, len(views) > 0},
		{section{"notes", "Notes", p.notes}, len(p.Notes) > 0},
	} {
		if s.any {
			out = append(out, s.section)
		}
	}
	return out
}

func (p sheet) none(text string) { p.El("p", text, "class", "none") }

// group heads the rows of a table that follow.
func (p sheet) group(text string, columns int) {
	p.Start("tr", "role", "row", "class", "group")
	p.El("th", text, "role", "rowheader", "scope", "rowgroup", "colspan", strconv.Itoa(columns))
	p.End()
}

var changeColumns = []markup.Column{markup.Words("name"), markup.Words("stands for"), markup.Words("what differs"), markup.Words("why")}

func (p sheet) said() {
	if says := p.rootSays(); says != "" {
		p.El("p", strings.Replace(says, "All that is told from here on", "All else on this page", 1), "class", "hint")
	}
	all := p.told()
	columns := changeColumns
	if !slices.ContainsFunc(all, func(t told) bool {
		return slices.ContainsFunc(t.lines, func(l entry) bool { return l.why() != "" })
	}) {
		columns = columns[:len(columns)-1]
	}
	p.Table("What the text says otherwise, and what follows from it", columns)
	for _, t := range all {
		p.group(t.head, len(columns))
		for _, l := range t.lines {
			p.Row(columns, []string{l.name, l.means, l.says, l.why()}[:len(columns)]...)
		}
	}
	p.EndTable()
}

var fateColumns = []markup.Column{markup.Words("labels"), markup.Words("parts"), markup.Words("what to do, or why"), markup.Words("because of")}

func (p sheet) partTable() {
	columns := fateColumns
	if !p.manyCauses() {
		columns = columns[:len(columns)-1]
	}
	p.Table("What becomes of the parts that may have been cut", columns)
	for i := range p.groups {
		g := &p.groups[i]
		if i == 0 || p.groups[i-1].kind != g.kind {
			p.group(strconv.Itoa(p.Count(g.kind))+" "+toDo[g.kind]+p.fate(g.kind), len(columns))
		}
		p.Row(columns, []string{g.labels, g.what, strings.Join(g.words, "; "), g.cause}[:len(columns)]...)
	}
	p.EndTable()
}

func (p sheet) found() {
	p.Start("ul", "class", "findings")
	for i := range p.Findings {
		f := &p.Findings[i]
		kind := came(f)
		p.Start("li", "class", kind)
		if kind != "figures" {
			p.El("p", kind+": "+findingSays(f))
		} else {
			p.El("p", "other figures: "+findingSays(f))
			p.El("p", "was: "+f.Old.Text, "class", "related")
		}
		p.End()
	}
	p.End()
}

var billColumns = []markup.Column{markup.Words("what"), markup.Words("quantity"), markup.Figures("cost")}

func (p sheet) costs() {
	if len(p.Bill) > 0 {
		p.Table("Lines that differ: "+p.billSum(), billColumns)
		for i := range p.Bill {
			what, quantity, cost := bought(&p.Bill[i])
			p.Row(billColumns, what, quantity, cost)
		}
		p.EndTable()
	}
	if len(p.Again) > 0 {
		p.Table(finding.Capital(p.againHead())+": "+p.againSum(), billColumns)
		for i := range p.Again {
			l := &p.Again[i]
			p.Row(billColumns, item(l), page.Pieces(l.Quantity, l.Unit), cost(l))
		}
		p.EndTable()
	}
}

func (p sheet) notes() {
	for _, n := range p.Notes {
		p.El("p", n)
	}
}
