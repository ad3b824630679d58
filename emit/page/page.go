// Package page writes the build as one page to look at: drawings, lists and
// what to beware of, in one HTML file that needs no network and no other file.
// It takes a model with its views; the same model gives the same bytes.
//
// Everything is laid out by the model's views; this package chooses lines,
// tints and words. A part and its shapes carry the same data-part, which the
// script on the page uses to show one when the other is pointed at.
package page

import (
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"io"
	"strconv"

	"barwright/compile/model"
)

//go:embed look.css
var look string

//go:embed point.js
var script string

// writer writes one model.
type writer struct {
	*markup
	m *model.Model
}

// Write writes the page. The error is the writer's.
func Write(w io.Writer, m *model.Model) error {
	p := writer{newMarkup(w), m}
	p.raw("<!DOCTYPE html>\n")
	p.start("html", "lang", "en")
	p.head()
	p.start("body")
	p.top()
	p.start("main")
	p.findings()
	p.drawings()
	p.parts()
	p.cuts()
	p.layouts()
	p.bill()
	p.programs()
	p.cautions()
	p.end()
	p.start("div", "id", "pointed", "role", "status", "hidden", "")
	p.el("span", "")
	p.el("a", "in the list", "href", "#parts")
	p.end()
	p.start("script")
	p.raw(script)
	return p.close()
}

func (p writer) head() {
	sum := sha256.Sum256([]byte(script))
	policy := "default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
	p.start("head")
	p.void("meta", "charset", "utf-8")
	p.void("meta", "name", "viewport", "content", "width=device-width, initial-scale=1")
	p.void("meta", "name", "color-scheme", "content", "light dark")
	p.void("meta", "http-equiv", "Content-Security-Policy", "content", policy)
	p.el("title", p.m.Build.Name)
	p.start("style")
	p.raw(look)
	p.end()
	p.end()
}

// sections are the page's parts in order, with their anchors.
var sections = [...][2]string{
	{"findings", "Findings"}, {"drawings", "Drawings"}, {"parts", "Parts"}, {"cuts", "Cut list"},
	{"layouts", "Stock"}, {"bill", "Bill"}, {"programs", "Router"}, {"cautions", "Cautions"},
}

func (p writer) top() {
	b := p.m.Build
	p.start("header")
	p.el("h1", b.Name)
	p.start("dl", "class", "facts")
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
	p.end()
	p.start("nav", "aria-label", "On this page")
	for _, s := range sections {
		p.el("a", s[1], "href", "#"+s[0])
	}
	p.end()
	p.end()
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
	p.start("div")
	p.el("dt", name)
	p.el("dd", value)
	p.end()
}

// section opens a section; whoever calls it closes it.
func (p writer) section(id string) {
	for _, s := range sections {
		if s[0] == id {
			p.start("section", "id", id, "aria-labelledby", id+"-title")
			p.el("h2", s[1], "id", id+"-title")
		}
	}
}

func (p writer) drawings() {
	p.section("drawings")
	for i := range p.m.Views {
		if v := &p.m.Views[i]; v.Part == "" {
			p.drawing(v, "drawing")
		}
	}
	p.end()
}

// none says that a section has nothing to show.
func (p writer) none(text string) { p.el("p", text, "class", "none") }
