package page

import (
	"barwright/lang/finding"
	"barwright/lang/source"
)

func (p writer) findings() {
	p.section("findings")
	if len(p.m.Findings) == 0 {
		p.none("Nothing to report.")
		p.End()
		return
	}
	p.Start("ul", "class", "findings")
	for _, f := range p.m.Findings {
		p.finding(f)
	}
	p.End()
	p.End()
}

func (p writer) finding(f finding.Finding) {
	p.Start("li", "class", f.Severity.String())
	p.Start("p")
	p.El("strong", f.Severity.String())
	p.Raw(" ")
	p.El("code", f.Slug)
	p.place(f.At)
	p.End()
	p.El("p", unbroken(f.Text))
	if f.Mend != "" {
		p.Start("p")
		p.Text("Mend: ")
		p.El("code", f.Mend)
		p.End()
	}
	for _, r := range f.Related {
		p.Start("p", "class", "related")
		p.Text(unbroken(r.Text))
		p.place(r.At)
		p.End()
	}
	p.End()
}

func (p writer) place(r source.Range) {
	if !r.IsZero() {
		p.Raw(" ")
		p.El("span", r.Place(), "class", "place")
	}
}

// caution is what a whole subject needs said.
type caution struct{ subject, text string }

var cautionTexts = [...]caution{
	{"Wiring", "An outlet here is the place of a box, not the design of a circuit. Switch off, lock and test before anything is opened. " +
		"Local code and licensed practice decide what is wired, protected and inspected, and how."},
	{"Water and drains", "A stub here is where a pipe was measured. Shut the supply before cutting. " +
		"Local code and licensed practice decide sizes, slopes, traps and vents."},
	{"Structure", "Supports, overhangs, anchors and screws follow arithmetic and published rules of thumb. " +
		"They are no engineer's judgement of this wall, this floor or this load: local code and licensed practice decide. " +
		"Find pipes and cables before drilling."},
	{"Router and saw", "The machine's manual comes before anything written here. Run a program in the air, then in scrap. " +
		"Guards stay on; eyes, ears and lungs are protected; hands stay off until everything has stopped."},
	{"Slabs and sheets", "Weights in the bill are computed from densities. What is heavy is lifted by as many as it takes, and never over somebody."},
}

func (p writer) cautions() {
	p.section("cautions")
	p.Start("dl", "class", "cautions")
	for _, c := range cautionTexts {
		p.fact(c.subject, c.text)
	}
	p.End()
	p.End()
}
