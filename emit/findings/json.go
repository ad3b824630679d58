package findings

import (
	"io"

	"barwright/emit/asjson"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// format is the version of our own JSON.
const format = 1

type document struct {
	Format int     `json:"barwright_findings"`
	Builds []build `json:"builds"`
}

type build struct {
	Path     string   `json:"path"`
	Solved   bool     `json:"solved"`
	Findings []entry  `json:"findings"`
	Parts    *int     `json:"parts,omitempty"`
	Programs *int     `json:"programs,omitempty"`
	Out      string   `json:"out,omitempty"`
	Files    []string `json:"files,omitempty"`
}

type entry struct {
	Slug     string `json:"slug"`
	Severity string `json:"severity"`
	place
	Fault   *position `json:"fault,omitempty"`
	Text    string    `json:"text"`
	Related []related `json:"related"`
	Mend    string    `json:"mend"`
}

type related struct {
	place
	Text string `json:"text"`
}

// place is left out where a finding has none.
type place struct {
	File  string    `json:"file,omitempty"`
	Start *position `json:"start,omitempty"`
	End   *position `json:"end,omitempty"`
}

type position struct {
	Line   int `json:"line"`
	Column int `json:"column"`
	Byte   int `json:"byte"`
}

// JSON writes one document with all builds.
func JSON(w io.Writer, builds []Build) error {
	doc := document{Format: format, Builds: []build{}}
	for i := range builds {
		doc.Builds = append(doc.Builds, builds[i].json())
	}
	return asjson.Write(w, doc)
}

func (b *Build) json() build {
	out := build{Path: b.Path, Solved: b.Solved, Findings: []entry{}, Out: b.Out, Files: b.Written}
	if b.Solved {
		out.Parts, out.Programs = &b.Parts, &b.Programs
	}
	for _, f := range b.Findings {
		out.Findings = append(out.Findings, b.entry(f))
	}
	return out
}

func (b *Build) entry(f finding.Finding) entry {
	out := entry{
		Slug: f.Slug, Severity: f.Severity.String(), place: b.place(f.At),
		Text: f.Text, Related: []related{}, Mend: f.Mend,
	}
	if f.Caret > 0 {
		fault := f.At.Start
		fault.Byte = min(fault.Byte+f.Caret, max(f.At.End.Byte-1, fault.Byte))
		out.Fault = b.position(f.At.File, fault)
	}
	for _, r := range f.Related {
		out.Related = append(out.Related, related{b.place(r.At), r.Text})
	}
	return out
}

func (b *Build) place(at source.Range) place {
	if at.IsZero() {
		return place{}
	}
	name := b.file(at.File).Path
	if name == "" {
		name = at.File
	}
	return place{name, b.position(at.File, at.Start), b.position(at.File, at.End)}
}

func (b *Build) position(file string, p source.Pos) *position {
	at := spotAt(b.file(file).Text, p)
	return &position{at.line, at.column, p.Byte}
}
