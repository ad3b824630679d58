// Package page writes the build as one page to look at: drawings, lists and
// what to beware of, in one HTML file that needs no network and no other file.
// It takes a model with its views; the same model gives the same bytes.
//
// Everything is laid out by the model's views; this package chooses lines,
// tints and words. A part and its shapes carry the same data-part, which the
// script on the page uses to show one when the other is pointed at.
package page

import (
	_ "embed"
	"io"
	"strconv"

	"barwright/compile/model"
	"barwright/emit/markup"
)

//go:embed point.js
var script string

// barLook is the style of what stays on the screen, workLook that of the order of work.
var (
	//go:embed bar.css
	barLook string
	//go:embed work.css
	workLook string
)

// writer writes one model.
type writer struct {
	*markup.Writer
	m     *model.Model
	shown shown
	files map[string]string       // where it shows views beside the page: what each is in, by its name; lookup only
	lists map[string]func(writer) // that are folded, by name; lookup only
}

// Write writes the page. That of a large build leads to files beside it that show views, which are given
// by the views' names, for lookup only; a view without one is drawn in the page. The error is the writer's.
func Write(w io.Writer, m *model.Model, files map[string]string) error {
	how := whole
	if m.Large() {
		how = beside
	}
	return write(w, m, how, files)
}

func write(w io.Writer, m *model.Model, how shown, files map[string]string) error {
	p := writer{markup.New(w), m, how, files, map[string]func(writer){}}
	look, scripts := markup.Look+barLook+workLook, []string{script}
	if how != whole {
		look, scripts = look+foldLook, append(scripts, foldScript)
	}
	p.Head("barwright build", m.Build.Name, look, markup.Policy{Scripts: scripts})
	p.Start("body")
	p.build()
	p.pointed()
	for _, s := range scripts {
		p.run(s)
	}
	return p.Close()
}

// build writes what the page shows of the build: all that changes with it.
func (p writer) build() {
	p.top()
	p.bar()
	p.Start("main")
	p.findings()
	p.drawings()
	p.parts()
	p.cuts()
	p.layouts()
	p.bill()
	p.programs()
	p.ways()
	p.setting()
	p.order()
	p.work()
	p.cautions()
	p.End()
}

// run writes a script.
func (p writer) run(script string) {
	p.Start("script")
	p.Raw(script)
	p.End()
}

// sections are the page's parts in order, with their anchors.
var sections = [...][2]string{
	{"findings", "Findings"}, {"drawings", "Drawings"}, {"parts", "Parts"}, {"cuts", "Cut list"},
	{"layouts", "Stock"}, {"bill", "Bill"}, {"programs", "Router"},
	{"ways", "Ways"}, {"setting", "Setting"}, {"order", "Order of setting"}, {"work", "Order of work"},
	{"cautions", "Cautions"},
}

func (p writer) top() {
	b := p.m.Build
	p.Start("header")
	p.El("h1", b.Name)
	p.Start("dl", "class", "facts")
	if b.Revision != "" {
		p.fact("Revision", b.Revision)
	}
	p.fact("Sizes in", p.unit())
	p.fact("Parts", strconv.Itoa(len(p.m.Parts)))
	for _, g := range p.m.Givens {
		value := g.Value
		if g.Overridden {
			value += " (set for this build)"
		}
		p.fact(g.Name, value)
	}
	p.End()
	if p.shown != whole {
		p.El("p", said[p.shown], "class", "hint")
	}
	p.End()
}

// bar stays at the top of the screen: the way to each section, and the field that filters, which
// the script shows.
func (p writer) bar() {
	p.Start("div", "class", "bar")
	p.Start("nav", "aria-label", "On this page")
	for _, s := range sections {
		if s[0] == "ways" && len(p.m.Ways) == 0 {
			continue
		}
		p.El("a", s[1], "href", "#"+s[0])
	}
	p.End()
	p.Start("div", "id", "filter", "role", "search", "hidden", "")
	p.El("label", "Filter by name, label or stock", "for", "wanted")
	p.Void("input", "id", "wanted", "type", "search", "autocomplete", "off", "spellcheck", "false", "placeholder", "Filter …")
	p.El("p", "", "id", "found", "role", "status")
	p.End()
	p.End()
}

// pointed is the bar at the foot of the screen, which tells of what is pointed at.
func (p writer) pointed() {
	p.Start("div", "id", "pointed", "role", "status", "hidden", "")
	p.El("strong", "")
	p.El("span", "")
	p.El("a", "in the list", "href", "#parts")
	p.El("a", "in the drawings", "href", "#drawings")
	p.El("a", "as it is cut", "href", "#layouts")
	p.End()
}

// unit says what the numbers of the page mean.
func (p writer) unit() string {
	b := p.m.Build
	if !b.Unit.Imperial() {
		return "mm"
	}
	return "inches, to " + b.Show(b.Marks)
}

func (p writer) fact(name, value string) {
	p.Start("div")
	p.El("dt", name)
	p.El("dd", unbroken(value))
	p.End()
}

// section opens a section; whoever calls it closes it.
func (p writer) section(id string) {
	for _, s := range sections {
		if s[0] == id {
			p.Start("section", "id", id, "aria-labelledby", id+"-title")
			p.El("h2", s[1], "id", id+"-title")
		}
	}
}

func (p writer) drawings() {
	p.section("drawings")
	ofMany := func(v *model.View) bool { return v.Part == "" }
	p.views(p.m.Views, ofMany)
	for i := range p.m.Views {
		if v := &p.m.Views[i]; ofMany(v) {
			p.drawing(v, "drawing")
		}
	}
	p.End()
}

// none says that a section has nothing to show.
func (p writer) none(text string) { p.El("p", text, "class", "none") }
