package findings

import (
	"io"
	"slices"
	"strings"

	"barwright/emit/asjson"
	"barwright/lang/finding"
	"barwright/lang/source"
)

const sarifSchema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"

// The properties of SARIF 2.1.0 that are written, in the order of the file.
type sarifLog struct {
	Schema  string     `json:"$schema"`
	Version string     `json:"version"`
	Runs    []sarifRun `json:"runs"`
}

type sarifRun struct {
	Tool        sarifTool         `json:"tool"`
	Invocations []sarifInvocation `json:"invocations"`
	ColumnKind  string            `json:"columnKind"`
	Results     []sarifResult     `json:"results"`
}

type sarifTool struct {
	Driver sarifDriver `json:"driver"`
}

type sarifDriver struct {
	Name  string      `json:"name"`
	Rules []sarifRule `json:"rules"`
}

type sarifInvocation struct {
	ExecutionSuccessful bool `json:"executionSuccessful"`
}

type sarifRule struct {
	ID               string       `json:"id"`
	ShortDescription sarifMessage `json:"shortDescription"`
	FullDescription  sarifMessage `json:"fullDescription"`
	Help             sarifMessage `json:"help"`
	Default          sarifDefault `json:"defaultConfiguration"`
}

type sarifDefault struct {
	Level string `json:"level"`
}

type sarifMessage struct {
	Text string `json:"text"`
}

type sarifResult struct {
	RuleID    string          `json:"ruleId"`
	RuleIndex int             `json:"ruleIndex"`
	Level     string          `json:"level"`
	Message   sarifMessage    `json:"message"`
	Locations []sarifLocation `json:"locations"`
	Related   []sarifLocation `json:"relatedLocations,omitempty"`
}

type sarifLocation struct {
	Physical *sarifPhysical `json:"physicalLocation,omitempty"`
	Logical  []sarifLogical `json:"logicalLocations,omitempty"`
	Message  *sarifMessage  `json:"message,omitempty"`
}

type sarifPhysical struct {
	Artifact sarifArtifact `json:"artifactLocation"`
	Region   sarifRegion   `json:"region"`
}

type sarifArtifact struct {
	URI string `json:"uri"`
}

type sarifRegion struct {
	StartLine   int `json:"startLine"`
	StartColumn int `json:"startColumn"`
	EndLine     int `json:"endLine"`
	EndColumn   int `json:"endColumn"`
}

type sarifLogical struct {
	FullName string `json:"fullyQualifiedName"`
	Kind     string `json:"kind"`
}

// SARIF writes one log with the findings of all builds. complete tells that
// every build could be read and written. Places in files are given as the
// paths of the files are; a place among the words of the command line is a
// logical one. The error is that of w.
func SARIF(w io.Writer, builds []Build, complete bool) error {
	run := sarifRun{
		Tool:        sarifTool{sarifDriver{Name: "barwright", Rules: []sarifRule{}}},
		Invocations: []sarifInvocation{{complete}},
		ColumnKind:  "unicodeCodePoints",
		Results:     []sarifResult{},
	}
	slugs := used(builds)
	for _, slug := range slugs {
		run.Tool.Driver.Rules = append(run.Tool.Driver.Rules, sarifRuleOf(slug))
	}
	for i := range builds {
		for _, f := range builds[i].Findings {
			result := builds[i].sarif(f)
			result.RuleIndex = slices.Index(slugs, f.Slug)
			run.Results = append(run.Results, result)
		}
	}
	return asjson.Write(w, sarifLog{Schema: sarifSchema, Version: "2.1.0", Runs: []sarifRun{run}})
}

// used lists the slugs of all findings, each once, by name.
func used(builds []Build) []string {
	var slugs []string
	for _, b := range builds {
		for _, f := range b.Findings {
			slugs = append(slugs, f.Slug)
		}
	}
	slices.Sort(slugs)
	return slices.Compact(slugs)
}

func sarifRuleOf(slug string) sarifRule {
	rule, section, ok := finding.Lookup(slug)
	if !ok {
		panic("a finding that no rule stands for: " + slug)
	}
	paragraphs := rule.Paragraphs()
	help := paragraphs
	if rule.Caution != "" {
		help = append(help, "Caution: "+rule.Caution)
	}
	if rule.Source != "" {
		help = append(help, "Source: "+rule.Source+".")
	}
	help = append(help, "Stated in SPEC.md, section "+section.Number+", "+section.Title+".")
	return sarifRule{
		ID:               slug,
		ShortDescription: message(rule.Sentence()),
		FullDescription:  message(paragraphs[0]),
		Help:             message(strings.Join(help, "\n\n")),
		Default:          sarifDefault{rule.Severity.String()},
	}
}

// message makes a text of braces and all into one that SARIF takes literally:
// in a message braces stand round placeholders, and are doubled where they are
// meant as such (SARIF 2.1.0, "Messages with placeholders").
func message(text string) sarifMessage {
	return sarifMessage{strings.NewReplacer("{", "{{", "}", "}}").Replace(text)}
}

func (b *Build) sarif(f finding.Finding) sarifResult {
	text := f.Text
	if f.Mend != "" {
		text += "\n\nMend: " + f.Mend
	}
	out := sarifResult{
		RuleID: f.Slug, Level: f.Severity.String(), Message: message(text), Locations: []sarifLocation{},
	}
	if !f.At.IsZero() {
		out.Locations = append(out.Locations, b.location(f.At))
	}
	for _, r := range f.Related {
		place, words := b.location(r.At), message(r.Text)
		place.Message = &words
		out.Related = append(out.Related, place)
	}
	return out
}

func (b *Build) location(at source.Range) sarifLocation {
	file := b.file(at.File)
	if file.Path == "" {
		words := at.File + " " + lineOf(file.Text, at.Start)
		return sarifLocation{Logical: []sarifLogical{{words, "parameter"}}}
	}
	start, end := spotAt(file.Text, at.Start), spotAt(file.Text, at.End)
	return sarifLocation{Physical: &sarifPhysical{
		Artifact: sarifArtifact{uri(file.Path)},
		Region:   sarifRegion{start.line, start.column, end.line, end.column}, // the end is exclusive here as there
	}}
}
