package finding

import (
	"fmt"
	"io"
	"strings"
)

// WriteExplanation prints what a rule means, for a person: the line, the
// paragraphs, the example where there is one, and what decides in the end.
func WriteExplanation(w io.Writer, r Rule, of Section, style Style) error {
	p := newPrinter(nil, style)
	p.line(p.paint(tint[r.Severity]+bold, r.Severities()+":") + " " + p.paint(bold, r.Slug))
	p.wrapped("", r.Sentence())
	for _, paragraph := range r.Paragraphs() {
		p.line("")
		p.wrapped("", paragraph)
	}
	if r.Wrong != "" {
		p.example("An example of the mistake:", r.Wrong)
		p.example("The same, mended:", r.Right)
	}
	if r.Caution != "" {
		p.line("")
		p.wrapped("Caution: ", r.Caution)
	}
	p.line("")
	if r.Source != "" {
		p.wrapped("Source: ", r.Source)
	}
	p.wrapped("Stated in: ", "SPEC.md, section "+of.Number+", "+of.Title)
	return p.to(w)
}

func (p *printer) example(head, text string) {
	p.line("")
	p.line(head)
	p.line("")
	for line := range strings.SplitSeq(text, "\n") {
		p.line("    " + line)
	}
}

// WriteIndex prints all slugs with their one line, under the sections of
// SPEC.md that state them.
func WriteIndex(w io.Writer, style Style) error {
	p := newPrinter(nil, style)
	widest := 0
	for _, slug := range Slugs() {
		widest = max(widest, len(slug))
	}
	for i, s := range Sections() {
		if i > 0 {
			p.line("")
		}
		p.line(p.paint(bold, s.Number+" "+s.Title))
		for _, r := range s.Rules {
			p.wrapped(fmt.Sprintf("  %-*s  ", widest, r.Slug), r.Says)
		}
	}
	return p.to(w)
}

// WriteTable writes the table of all findings as Markdown, for SPEC.md.
func WriteTable(w io.Writer) error {
	var out strings.Builder
	out.WriteString("| slug | severity | says | stated in |\n| --- | --- | --- | --- |\n")
	for _, s := range Sections() {
		for _, r := range s.Rules {
			fmt.Fprintf(&out, "| `%s` | %s | %s | %s |\n", r.Slug, r.Severities(), r.Says, s.Number)
		}
	}
	_, err := io.WriteString(w, out.String())
	return err
}
