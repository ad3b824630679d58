package compile_test

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"barwright/compile"
	"barwright/compile/ask"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

const specDir = "../testdata/spec"

// specCase is one archive of the conformance suite. Its comment begins with the
// section of SPEC.md that it is about and what it shows, "SPEC 6.2: boxes
// longer than their wall"; where figures are worked out, the working follows.
// The build lies one folder below the top of its tree. The archive holds:
//
//	NAME.hcl        files of the build
//	FOLDER/NAME.hcl files that it may take in, named as it names them: ../shop/stock.hcl
//	set             values of the command line: NAME=VALUE, a line each
//	set-file        what --set-file takes
//	want            all findings as they are shown; where it is missing there are none
//	mended/…        the files of the build once the mends are followed: they have no errors
//	shows           values as `barwright show` tells them: NAME = VALUE, a line each
//	counts          screws: USE = COUNT, a line each
type specCase struct {
	path           string
	section, words string
	archive        *txtar.Archive
}

var caseHead = regexp.MustCompile(`^SPEC ([0-9.]+): (.+)\n(?:\n|$)`)

func readCase(t *testing.T, path string) specCase {
	t.Helper()
	a, err := txtar.ParseFile(path)
	if err != nil {
		t.Fatal(err)
	}
	m := caseHead.FindSubmatch(a.Comment)
	if m == nil {
		t.Fatalf("%s does not begin with the section of SPEC.md that it is about", path)
	}
	return specCase{path, string(m[1]), string(m[2]), a}
}

func specCases(t *testing.T) []specCase {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(specDir, "*.txtar"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("no archives in %s: %v", specDir, err)
	}
	cases := make([]specCase, len(paths))
	for i, path := range paths {
		cases[i] = readCase(t, path)
	}
	return cases
}

func (c specCase) name() string { return strings.TrimSuffix(filepath.Base(c.path), ".txtar") }

// file returns a file of the archive.
func (c specCase) file(name string) (text string, ok bool) {
	for _, f := range c.archive.Files {
		if f.Name == name {
			return string(f.Data), true
		}
	}
	return "", false
}

// lines are those of a file that say something.
func (c specCase) lines(name string) []string {
	text, _ := c.file(name)
	return slices.DeleteFunc(strings.Split(text, "\n"), func(l string) bool { return l == "" || strings.HasPrefix(l, "#") })
}

// under returns the descriptions of the archive that are in a folder.
func (c specCase) under(folder string) source.Files {
	var files source.Files
	for _, f := range c.archive.Files {
		if dir, name := filepath.Split(f.Name); dir == folder && strings.HasSuffix(name, ".hcl") {
			files = append(files, source.File{Name: name, Text: f.Data})
		}
	}
	files.Sort()
	return files
}

// open is a lang.Open for what lies in the archive.
func (c specCase) open(name string) ([]byte, error) {
	if strings.HasPrefix(name, "../../") {
		return nil, lang.ErrOutside
	}
	if text, ok := c.file(name); ok {
		return []byte(text), nil
	}
	return nil, fs.ErrNotExist
}

// solved is a build that was read and compiled.
type solved struct {
	src      *lang.Source
	model    *model.Model // nil where there are errors
	findings finding.List
}

// solve compiles the files of the case that are in a folder.
func (c specCase) solve(folder string) solved {
	src, findings := lang.ReadTree(c.under(folder), c.open)
	if text, ok := c.file("set-file"); ok {
		findings = append(findings, src.OverrideFile(source.File{Name: "--set-file set.hcl", Text: []byte(text)})...)
	}
	for _, line := range c.lines("set") {
		name, value, _ := strings.Cut(line, "=")
		findings = append(findings, src.Override("--set", name, value)...)
	}
	return finished(src, findings)
}

// finished compiles what was read.
func finished(src *lang.Source, findings finding.List) solved {
	s := solved{src: src, findings: findings}
	if !src.Lost {
		var more finding.List
		s.model, more = compile.Unjudged(src)
		s.findings = append(s.findings, more...)
	}
	s.findings.Sort()
	return s
}

// text is the findings as they are shown.
func (s solved) text(t *testing.T) string {
	t.Helper()
	var out strings.Builder
	if err := finding.Render(&out, s.findings, s.src.Files, finding.Style{Width: 80}); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// TestSpecCases holds the program to each case of the conformance suite.
func TestSpecCases(t *testing.T) {
	cases := specCases(t)
	if len(cases) < 200 {
		t.Errorf("only %d cases", len(cases))
	}
	for _, c := range cases {
		t.Run(c.name(), func(t *testing.T) {
			if len(c.under("")) == 0 {
				t.Fatal("no description in the archive")
			}
			s := c.solve("")
			checkRanges(t, s.findings, s.src.Files)
			c.checkFindings(t, s)
			c.checkMended(t, s.findings)
			c.checkShows(t, s)
			c.checkCounts(t, s)
		})
	}
}

// checkFindings compares what is found with want.
func (c specCase) checkFindings(t *testing.T, s solved) {
	t.Helper()
	have := s.text(t)
	_, sound := c.file("shows")
	want, written := c.file("want")
	if *update && (written || !sound) {
		c.write(t, "want", have)
		want = have
	}
	if diff := cmp.Diff(want, have); diff != "" {
		t.Errorf("the findings are not those of want (-want +got):\n%s", diff)
	}
	if !sound && len(s.findings) == 0 {
		t.Error("nothing is found, and nothing is shown")
	}
	if sound && s.findings.HasErrors() {
		t.Error("the case has values to show, but does not compile")
	}
}

func (c specCase) write(t *testing.T, name, text string) {
	t.Helper()
	at := slices.IndexFunc(c.archive.Files, func(f txtar.File) bool { return f.Name == name })
	if at < 0 {
		at = len(c.archive.Files)
		c.archive.Files = append(c.archive.Files, txtar.File{Name: name})
	}
	c.archive.Files[at].Data = []byte(text)
	if err := os.WriteFile(c.path, txtar.Format(c.archive), 0o644); err != nil {
		t.Fatal(err)
	}
}

// checkMended demands that the description is sound once the mend is followed.
func (c specCase) checkMended(t *testing.T, before finding.List) {
	t.Helper()
	if len(c.under("mended/")) == 0 {
		return
	}
	after := c.solve("mended/")
	for _, f := range before {
		stays := slices.ContainsFunc(after.findings, func(g finding.Finding) bool { return f.Slug == g.Slug && f.Text == g.Text })
		if stays || after.findings.HasErrors() {
			t.Errorf("after following the mends:\n%s", after.text(t))
			return
		}
	}
}

// checkShows compares values, parts and places with those of shows.
func (c specCase) checkShows(t *testing.T, s solved) {
	t.Helper()
	book := ask.Open(values.Explain(s.src), s.model)
	for _, line := range c.lines("shows") {
		name, want, _ := strings.Cut(line, " = ")
		reply, known := book.Ask(name)
		switch {
		case !known || reply.Lists:
			t.Errorf("%s has no value", name)
		case reply.Answers[0].Text != want:
			t.Errorf("%s = %s, want %s", name, reply.Answers[0].Text, want)
		}
	}
}

// checkCounts compares the screws of a build with counts.
func (c specCase) checkCounts(t *testing.T, s solved) {
	t.Helper()
	want := c.lines("counts")
	if len(want) == 0 || s.model == nil {
		return
	}
	var have []string
	for _, f := range s.model.Fastening {
		have = append(have, fmt.Sprintf("%s = %d", f.Use, f.Count))
	}
	if diff := cmp.Diff(want, have); diff != "" {
		t.Errorf("screws (-want +got):\n%s", diff)
	}
}

// sections are the texts of the sections of SPEC.md by their numbers; numbers are these in order.
func sections(t *testing.T) (numbers []string, texts map[string]string) {
	t.Helper()
	text, err := os.ReadFile("../SPEC.md")
	if err != nil {
		t.Fatal(err)
	}
	texts = map[string]string{} // lookup only
	heads := regexp.MustCompile(`(?m)^#+ ([0-9][0-9.]*) `).FindAllSubmatchIndex(text, -1)
	for i, m := range heads {
		end := len(text)
		if i+1 < len(heads) {
			end = heads[i+1][0]
		}
		number := string(text[m[2]:m[3]])
		numbers, texts[number] = append(numbers, number), string(text[m[1]:end])
	}
	return numbers, texts
}

// TestCasesNameTheirSection demands that each case names a section that there
// is, and a refusing one that of a slug that it wants, or one that names such a slug too.
func TestCasesNameTheirSection(t *testing.T) {
	known, texts := sections(t)
	openings, err := filepath.Glob("../testdata/openings/*.txtar")
	if err != nil || len(openings) == 0 {
		t.Fatalf("no cases of openings: %v", err)
	}
	cases := specCases(t)
	for _, path := range openings {
		cases = append(cases, readCase(t, path))
	}
	said := regexp.MustCompile(`(?m)^(?:error|warning|note): ([a-z0-9-]+)$`)
	for _, c := range cases {
		if !slices.Contains(known, c.section) {
			t.Errorf("%s names section %s, which SPEC.md has not", c.name(), c.section)
		}
		if _, sound := c.file("shows"); sound {
			continue
		}
		want, _ := c.file("want")
		var stated []string
		named := false
		for _, m := range said.FindAllStringSubmatch(want, -1) {
			_, section, _ := finding.Lookup(m[1])
			stated = append(stated, section.Number)
			named = named || strings.Contains(texts[c.section], "`"+m[1]+"`")
		}
		if len(stated) > 0 && !named && !slices.Contains(stated, c.section) {
			t.Errorf("%s names section %s, but its findings are stated in %q", c.name(), c.section, stated)
		}
	}
}

// TestEverySectionHasACase demands a case that compiles for each section that
// tells what a description means; compile/revise has those of chapter 12, and testdata/rules
// those of 11.
func TestEverySectionHasACase(t *testing.T) {
	shown := map[string]bool{}
	for _, c := range specCases(t) {
		if _, sound := c.file("shows"); sound {
			shown[c.section] = true
		}
	}
	elsewhere := []string{
		"1", "2", "3", "4", "6", "7", "10", "14", // their sections have cases
		"1.5",                  // TestExamples
		"10.3",                 // the tests of lang/format
		"10.5", "10.6", "14.6", // the tests of cmd/barwright
		"14.3",                       // testdata/rules and the tests of compile/place
		"14.5",                       // those of compile/work
		"15", "15.1", "15.2", "15.3", // lists, not descriptions: the scripts and tests of cmd/barwright
	}
	numbers, _ := sections(t)
	for _, number := range numbers {
		chapter, below, _ := strings.Cut(number, ".")
		if chapter == "9" || chapter == "11" || chapter == "12" || chapter == "13" || chapter == "5" && below != "" || slices.Contains(elsewhere, number) {
			continue
		}
		if !shown[number] {
			t.Errorf("no case shows what section %s says", number)
		}
	}
}
