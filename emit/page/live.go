package page

import (
	_ "embed"
	"io"
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/emit/markup"
)

// liveScript takes over what the server has to show, piece by piece.
//
//go:embed live.js
var liveScript string

// liveLook is the style of what a served page says of its text.
//
//go:embed live.css
var liveLook string

// EventsPath is where the server of a live page sends events: each the number of what
// there is to show now.
const EventsPath = "/events"

// PiecesPath is where that server has, by their names, the pictures and lists that a page of a large
// build asks for.
const PiecesPath = "/pieces/"

// Live is a page that follows the description of a build.
type Live struct {
	Name   string       // of the description; the title where there is no build
	Number int          // of what is shown: another one with each change
	Model  *model.Model // the last build without errors; nil where there has been none
	Amiss  string       // what is wrong with the text now, as a terminal prints it; empty where nothing is
	Errors string       // how many errors that is, as "2 errors"
}

// LivePolicy is what a live page may do.
func LivePolicy() markup.Policy {
	return markup.Policy{Scripts: []string{script, foldScript, liveScript}, Asks: true}
}

// WriteLive writes the page of the build with what is wrong with its text, and the script
// that follows the server. Lists are those that it asks for. The error is the writer's.
func WriteLive(w io.Writer, l Live) (lists Lists, err error) {
	m, name := l.Model, l.Name
	if m != nil {
		name = m.Build.Name
	}
	p := writer{Writer: markup.New(w), m: m, lists: map[string]func(writer){}}
	if m != nil && m.Large() {
		p.shown = asked
	}
	p.Head("barwright view", name, markup.Look+barLook+workLook+liveLook+foldLook, LivePolicy())
	p.Start("body", "data-number", strconv.Itoa(l.Number))
	p.amiss(l)
	if m != nil {
		p.build()
	} else {
		p.unbuilt(name)
	}
	p.pointed()
	p.run(script)
	p.run(foldScript)
	p.run(liveScript)
	return Lists{p}, p.Close()
}

// amiss says what is wrong with the text, and that the server has ended, which the
// script uncovers.
func (p writer) amiss(l Live) {
	p.Start("div", "id", "live", "role", "status")
	if l.Amiss != "" {
		p.Start("details", "open", "")
		p.Start("summary")
		p.El("strong", l.Errors)
		if l.Model != nil {
			p.Text(" with the text as it stands. Shown below is the last build that had none.")
		} else {
			p.Text(" with the text as it stands. There is no build to show yet.")
		}
		p.End()
		p.Start("pre", "tabindex", "0", "role", "region", "aria-label", "What is wrong with the text")
		for line := range strings.Lines(l.Amiss) {
			p.Text(strings.TrimSuffix(line, "\n"))
			p.Raw("\n")
		}
		p.End()
		p.End()
	}
	p.End()
	p.El("p", "barwright view has ended: this page follows the files no longer.", "id", "ended", "role", "status", "hidden", "")
}

// unbuilt stands for a build that there is not.
func (p writer) unbuilt(name string) {
	p.Start("header")
	p.El("h1", name)
	p.End()
	p.El("main", "")
}
