package revision

import (
	_ "embed"
	"io"
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
	p.Head(generator, "What differs in "+r.New.Build.Name, markup.Look+look, "")
	p.Start("body")
	p.top()
	p.Start("main")
	if !r.Empty() {
		p.said()
		p.partTable()
		p.pieceDrawings()
		p.found()
		p.costs()
		p.viewDrawings()
		p.notes()
	}
	return p.Close()
}

func (p sheet) top() {
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
	p.Start("nav", "aria-label", "On this page")
	for _, s := range [...][2]string{{"changes", "Changes"}, {"parts", "Parts"}, {"pieces", "Pieces"},
		{"findings", "Findings"}, {"bill", "Bill"}, {"views", "Views"}, {"notes", "Notes"}} {
		if s[0] != "notes" || len(p.Notes) > 0 {
			p.El("a", s[1], "href", "#"+s[0])
		}
	}
	p.End()
	p.End()
}

func (p sheet) section(id, title string) {
	p.Start("section", "id", id, "aria-labelledby", id+"-title")
	p.El("h2", title, "id", id+"-title")
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
	p.section("changes", "Changes")
	defer p.End()
	all := p.changes()
	if len(all) == 0 {
		p.none("The texts ask for the same.")
		return
	}
	if says := p.rootSays(); says != "" {
		p.El("p", "All but the first line here follows from "+p.root+".", "class", "hint")
	}
	p.Table("What the text says otherwise, and what follows from it", changeColumns)
	for _, t := range all {
		p.group(t.head, len(changeColumns))
		for _, c := range t.changes {
			p.Row(changeColumns, c.Name, c.Means, change(c), p.because(c.Because))
		}
	}
	p.EndTable()
}

var fateColumns = []markup.Column{markup.Words("labels"), markup.Words("parts"), markup.Words("what to do, or why"), markup.Words("because")}

func (p sheet) partTable() {
	p.section("parts", "Parts")
	defer p.End()
	p.El("p", strings.Join(p.counts(), " · "))
	if len(p.groups) == 0 {
		p.none("Nothing is to be done to any.")
		return
	}
	p.Table("What becomes of the parts that may have been cut", fateColumns)
	for i := range p.groups {
		g := &p.groups[i]
		if i == 0 || p.groups[i-1].kind != g.kind {
			p.group(strconv.Itoa(p.Count(g.kind))+" "+p.fate(g.kind), len(fateColumns))
		}
		p.Row(fateColumns, g.labels, g.what, strings.Join(g.words, "; "), g.because)
	}
	p.EndTable()
}

func (p sheet) found() {
	p.section("findings", "Findings")
	defer p.End()
	if len(p.Findings) == 0 {
		p.none("Both builds have the same.")
		return
	}
	p.Start("ul", "class", "findings")
	for i := range p.Findings {
		f := &p.Findings[i]
		kind := came(f)
		p.Start("li", "class", kind)
		p.El("p", map[string]string{"came": "came", "went": "went", "figures": "other figures"}[kind]+": "+findingSays(f))
		if kind == "figures" {
			p.El("p", "was: "+f.Old.Text, "class", "related")
		}
		p.End()
	}
	p.End()
}

var billColumns = []markup.Column{markup.Words("what"), markup.Words("quantity"), markup.Figures("cost")}

func (p sheet) costs() {
	p.section("bill", "Bill")
	defer p.End()
	if len(p.Bill) == 0 {
		p.none("The same is to be bought.")
	} else {
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
	if len(p.Notes) == 0 {
		return
	}
	p.section("notes", "Notes")
	for _, n := range p.Notes {
		p.El("p", n)
	}
	p.End()
}
