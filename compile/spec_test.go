package compile_test

import (
	"cmp"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"barwright/compile"
	"barwright/compile/edittest"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// spec is SPEC.md as its tests see it: fenced examples, answers to descriptions, and
// tables. An answer says what it is behind "text":
//
//	answer="S"      what example fails="S" is answered
//	set="N" in="F"  how thing N is set in the build in folder F of examples
type spec struct {
	examples []example
	answers  []example
	tables   []table
}

// example is a description in a fence. What stands behind "hcl" on its first
// line says how it is meant:
//
//	name="N"    other examples may build on it
//	with="N"    it is compiled together with example N, and what that builds on
//	fails="S"   it is refused, by errors of slug S and no others
//	warns="S"   it compiles, with a warning of slug S among its findings
//
// An example without fails must compile without an error.
type example struct {
	line int
	says map[string]string
	text string
}

// table is a table of Markdown, its cells trimmed.
type table struct {
	line   int // of the header
	header []string
	rows   [][]string
}

var says = regexp.MustCompile(`([a-z]+)="([^"]*)"`)

func readSpec(t *testing.T) *spec {
	t.Helper()
	text, err := os.ReadFile("../SPEC.md")
	if err != nil {
		t.Fatal(err)
	}
	s := &spec{}
	lines := strings.Split(string(text), "\n")
	for i := 0; i < len(lines); i++ {
		switch line := lines[i]; {
		case strings.HasPrefix(line, "```"):
			end := i + 1 + slices.Index(lines[i+1:], "```")
			if end == i {
				t.Fatalf("SPEC.md:%d: the fence has no end", i+1)
			}
			e := example{line: i + 1, says: map[string]string{}, text: strings.Join(lines[i+1:end], "\n") + "\n"}
			for _, m := range says.FindAllStringSubmatch(line, -1) {
				e.says[m[1]] = m[2]
			}
			if strings.HasPrefix(line, "```hcl") {
				s.examples = append(s.examples, e)
			} else {
				s.answers = append(s.answers, e)
			}
			i = end
		case strings.HasPrefix(line, "|"):
			tab := table{line: i + 1, header: cells(line)}
			for i += 2; strings.HasPrefix(lines[i], "|"); i++ {
				tab.rows = append(tab.rows, cells(lines[i]))
			}
			s.tables = append(s.tables, tab)
		}
	}
	return s
}

// cells parts a row of a table; a bar behind a backslash is a bar.
func cells(row string) []string {
	const bar = "\x00"
	row = strings.Trim(strings.ReplaceAll(row, `\|`, bar), "|")
	var out []string
	for _, c := range strings.Split(row, "|") {
		out = append(out, strings.ReplaceAll(strings.TrimSpace(c), bar, "|"))
	}
	return out
}

// code returns what stands first in backticks in a cell, and the whole cell
// where nothing does.
func code(cell string) string {
	if _, rest, ok := strings.Cut(cell, "`"); ok {
		inside, _, _ := strings.Cut(rest, "`")
		return inside
	}
	return cell
}

// tablesOf finds the tables whose header starts with those cells.
func (s *spec) tablesOf(t *testing.T, header ...string) []table {
	t.Helper()
	var out []table
	for _, tab := range s.tables {
		if len(tab.header) >= len(header) && slices.Equal(tab.header[:len(header)], header) {
			out = append(out, tab)
		}
	}
	if len(out) == 0 {
		t.Fatalf("SPEC.md has no table %q", header)
	}
	return out
}

// named returns the files of the example of a name and of what it builds on.
func (s *spec) named(t *testing.T, name string) source.Files {
	t.Helper()
	for _, e := range s.examples {
		if e.says["name"] == name {
			return s.files(t, e)
		}
	}
	t.Fatalf("SPEC.md has no example name=%q", name)
	return nil
}

func (s *spec) files(t *testing.T, e example) source.Files {
	t.Helper()
	var files source.Files
	if with := e.says["with"]; with != "" {
		files = s.named(t, with)
	}
	return append(files, source.File{Name: cmp.Or(e.says["name"], "example") + ".hcl", Text: []byte(e.text)})
}

// override is a given and its value, as on the command line.
type override struct{ name, value string }

func compiled(files source.Files, set ...override) (*model.Model, finding.List) {
	src, findings := lang.Read(files)
	for _, o := range set {
		findings = append(findings, src.Override("--set", o.name, o.value)...)
	}
	if findings.HasErrors() {
		return nil, findings
	}
	return compile.Unjudged(src)
}

// mustCompile is compiled for descriptions that are known to be right.
func mustCompile(t *testing.T, files source.Files) *model.Model {
	t.Helper()
	m, findings := compiled(files)
	if m == nil {
		t.Fatal(rendered(findings, files))
	}
	return m
}

func rendered(findings finding.List, files source.Files) string {
	var b strings.Builder
	findings.Sort()
	if err := finding.Render(&b, findings, files, finding.Style{}); err != nil {
		return err.Error()
	}
	return b.String()
}

// slugs lists the slugs of a severity, each once.
func slugs(findings finding.List, severity finding.Severity) []string {
	var out []string
	for _, f := range findings {
		if f.Severity == severity && !slices.Contains(out, f.Slug) {
			out = append(out, f.Slug)
		}
	}
	return out
}

func TestExamples(t *testing.T) {
	s := readSpec(t)
	if len(s.examples) < 8 {
		t.Fatalf("only %d examples were found in SPEC.md", len(s.examples))
	}
	for _, e := range s.examples {
		t.Run(fmt.Sprintf("line %d", e.line), func(t *testing.T) {
			files := s.files(t, e)
			_, findings := compiled(files)
			var want []string
			if e.says["fails"] != "" {
				want = []string{e.says["fails"]}
			}
			if have := slugs(findings, finding.Error); !slices.Equal(have, want) {
				t.Errorf("errors %q, want %q\n%s", have, want, rendered(findings, files))
			}
			if slug := e.says["warns"]; slug != "" && !slices.Contains(slugs(findings, finding.Warning), slug) {
				t.Errorf("no warning %q\n%s", slug, rendered(findings, files))
			}
			for key := range e.says {
				if !slices.Contains([]string{"name", "with", "fails", "warns"}, key) {
					t.Errorf("the fence says %s=, which means nothing", key)
				}
			}
		})
	}
}

func TestAnswers(t *testing.T) {
	s := readSpec(t)
	if len(s.answers) == 0 {
		t.Error("SPEC.md shows no answer")
	}
	for _, a := range s.answers {
		if have := s.answer(t, a); have != a.text {
			t.Errorf("line %d: the answer is\n%s", a.line, have)
		}
	}
}

// answer is what an answer of SPEC.md should read.
func (s *spec) answer(t *testing.T, a example) string {
	t.Helper()
	if what := a.says["set"]; what != "" {
		return waySet(t, filepath.Join("../examples", a.says["in"]), what)
	}
	i := slices.IndexFunc(s.examples, func(e example) bool { return a.says["answer"] != "" && e.says["fails"] == a.says["answer"] })
	if i < 0 {
		t.Errorf("line %d: no example fails=%q", a.line, a.says["answer"])
		return ""
	}
	files := s.files(t, s.examples[i])
	_, findings := compiled(files)
	return rendered(findings, files)
}

// waySet is the way by which a thing of a build is set, a line of its own.
func waySet(t *testing.T, folder, what string) string {
	t.Helper()
	src, _ := lang.Read(edittest.Folder(t, folder))
	m, findings := compile.Check(src)
	if m == nil {
		t.Fatalf("%s does not build: %v", folder, slugs(findings, finding.Error))
	}
	i := slices.IndexFunc(m.Setting.Steps, func(s model.SettingStep) bool { return s.What == what && s.Does == model.SetInPlace })
	if i < 0 {
		t.Fatalf("%s sets no %s", folder, what)
	}
	return m.Setting.Steps[i].Way(m.Build.Plain) + "\n"
}
