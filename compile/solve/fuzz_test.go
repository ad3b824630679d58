package solve_test

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/compile/rule/all"
	"barwright/compile/solve"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/schema"
	"barwright/lang/source"
)

// FuzzRead reads and solves any bytes. Nothing panics; the answer is the same
// the second time; each finding has its place inside the file; and what has no
// errors is a sound model.
func FuzzRead(f *testing.F) {
	for _, text := range seeds(f) {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		files := source.Files{{Name: "bar.hcl", Text: text}}
		m, findings, rendered := readAndSolve(t, files, "", "")
		again, _, renderedAgain := readAndSolve(t, files, "", "")
		if rendered != renderedAgain {
			t.Fatalf("the second answer differs:\n%s\n%s", rendered, renderedAgain)
		}
		if diff := cmp.Diff(m, again); diff != "" {
			t.Fatalf("the second model differs:\n%s", diff)
		}
		if (m == nil) != findings.HasErrors() {
			t.Fatalf("a model beside errors, or none without:\n%s", rendered)
		}
		if m != nil {
			checkSound(t, m)
		}
	})
}

// TestSeeds demands that whatever the language has occurs in the seeds, and that
// the one that has most of it is no mistake.
func TestSeeds(t *testing.T) {
	if m, _, rendered := readAndSolve(t, source.Files{{Name: "whole.hcl", Text: seed(t, "testdata/seeds")}}, "", ""); m == nil {
		t.Errorf("the whole bar is refused:\n%s", rendered)
	}
	said := map[string]bool{} // "run cabinet.width"
	var note func(of string, blocks []*lang.Block)
	note = func(of string, blocks []*lang.Block) {
		for _, b := range blocks {
			at := of + b.Spec.Kind
			said[at] = true
			for _, a := range b.Attrs {
				said[at+"."+a.Name] = true
			}
			note(at+" ", b.Blocks)
		}
	}
	for _, text := range seeds(t) {
		src, _ := lang.Read(source.Files{{Name: "bar.hcl", Text: text}})
		note("", src.Blocks)
	}
	var demand func(of string, blocks []*schema.Block)
	demand = func(of string, blocks []*schema.Block) {
		for _, b := range blocks {
			at := of + b.Kind
			names := []string{at}
			for _, a := range b.Attrs {
				names = append(names, at+"."+a.Name)
			}
			for _, name := range names {
				if !said[name] && b.Kind != "include" {
					t.Errorf("no seed has %s", name)
				}
			}
			demand(at+" ", b.Blocks)
		}
	}
	demand("", schema.Root())
}

// seeds are all descriptions of the tests and the examples.
func seeds(t testing.TB) [][]byte {
	var out [][]byte
	for _, pattern := range []string{"../../testdata/*/*.txtar", "../../examples/*", "../../examples/steps/*", "testdata/seeds"} {
		paths, err := filepath.Glob(pattern)
		if err != nil || len(paths) == 0 {
			t.Fatalf("no seeds in %s: %v", pattern, err)
		}
		for _, path := range paths {
			if text := seed(t, path); len(text) > 0 {
				out = append(out, text)
			}
		}
	}
	return out
}

// seed is the text of a description: of an archive, or of the files of a folder
// after one another.
func seed(f testing.TB, path string) []byte {
	var text []byte
	if filepath.Ext(path) == ".txtar" {
		a, err := txtar.ParseFile(path)
		if err != nil {
			f.Fatal(err)
		}
		for _, file := range a.Files {
			if filepath.Ext(file.Name) == ".hcl" && filepath.Dir(file.Name) == "." {
				text = append(text, file.Data...)
			}
		}
		return text
	}
	paths, _ := filepath.Glob(filepath.Join(path, "*.hcl"))
	for _, path := range paths {
		part, err := os.ReadFile(path)
		if err != nil {
			f.Fatal(err)
		}
		text = append(text, part...)
	}
	return text
}

// readAndSolve does what the command line does, with one given set where a
// name is given.
func readAndSolve(t *testing.T, files source.Files, name, value string) (*model.Model, finding.List, string) {
	src, findings := lang.Read(files)
	if name != "" {
		findings = append(findings, src.Override("--set", name, value)...)
	}
	var m *model.Model
	var judged finding.List
	if !findings.HasErrors() {
		solution := solve.Solve(src)
		m, findings = solution.Model, append(findings, solution.Findings...)
		if m != nil {
			rule.Judge(solution.Values, m, all.Rules(), &judged)
		}
	}
	findings.Sort()
	said := append(slices.Clone(findings), judged...)
	said.Sort()
	for _, f := range said {
		checkPlace(t, src.Files, f.At)
		for _, r := range f.Related {
			checkPlace(t, src.Files, r.At)
		}
	}
	var out bytes.Buffer
	if err := finding.Render(&out, said, src.Files, finding.Style{}); err != nil {
		t.Fatal(err)
	}
	return m, findings, out.String()
}

func checkPlace(t *testing.T, files source.Files, at source.Range) {
	t.Helper()
	text := files.Text(at.File)
	if at.Start.Byte < 0 || at.Start.Byte > at.End.Byte || at.End.Byte > len(text) {
		t.Fatalf("%v is no place in %q, which has %d bytes", at, at.File, len(text))
	}
	line := 1 + bytes.Count(text[:at.Start.Byte], []byte("\n"))
	if at.Start.Line != line || at.Start.Column < 1 {
		t.Fatalf("%v is on line %d", at, line)
	}
}

// checkSound demands of each part that somebody could cut it.
func checkSound(t interface {
	Helper()
	Fatalf(string, ...any)
}, m *model.Model) {
	t.Helper()
	ids, labels := map[string]bool{}, map[string]bool{}
	for i := range m.Parts {
		p := &m.Parts[i]
		blank := p.Placement.Blank()
		switch x, y := p.Size(); {
		case x <= 0 || y <= 0 || p.Thickness <= 0 || p.Outline.Area() <= 0:
			t.Fatalf("%s is %d x %d x %d, of %v mm²", p.ID, x, y, p.Thickness, p.Outline.Area())
		case !blank.Contains(p.Outline.Bounds()):
			t.Fatalf("%s reaches out of its blank %v: %v", p.ID, blank, p.Outline.Bounds())
		case ids[p.ID] || labels[p.Label]:
			t.Fatalf("two parts have the ID %s or the label %s", p.ID, p.Label)
		}
		ids[p.ID], labels[p.Label] = true, true
		for _, o := range p.Openings {
			if !blank.Contains(o.Shape.Bounds()) || (o.Shape.Area() > 0) != o.Notch {
				t.Fatalf("%s of %s: %v in %v", o.Name, p.ID, o.Shape, blank)
			}
		}
		for _, r := range p.Recesses {
			if !blank.Contains(r.Shape.Bounds()) || r.Depth <= 0 || r.Depth >= p.Thickness || r.Shape.Area() <= 0 {
				t.Fatalf("%s: %v, %d deep, in %v of %d", r.ID, r.Shape, r.Depth, blank, p.Thickness)
			}
		}
	}
}

// FuzzOverride sets a given to any text. Nothing panics, and what is wrong is
// shown in the words of the command line.
func FuzzOverride(f *testing.F) {
	for _, value := range []string{"30", "-3", "0", "19 1/2in", "7' 6\"", "191/2in", "rest", "rst", "given.other * 2", "given.width", "given.", "(1", "\"30\"", "\"30", "true", "[1, 2]", "{}", "1e400", "1/0", "", " ", "\n", "30\n40", "ä", "\xff", "sheet.ply", "sheet", "cabinet.a.width", "a=b"} {
		f.Add("width", value)
		f.Add("wdith", value)
	}
	f.Add("", "3")
	f.Add("a\nb", "3")
	const text = `build "b" {
  unit = "in"
}
given {
  width = 30
  other = 2
}
sheet "ply" {
  size      = [96, 48]
  thickness = 0.75
}
carcass "base" {
  height = 34.5
  depth  = 24
  board  = sheet.ply
  back   = { board = sheet.ply }
}
room {
  wall "north" { length = 100 }
}
run "back" {
  along   = wall.north
  carcass = carcass.base
  cabinet "a" { width = given.width }
}
`
	f.Fuzz(func(t *testing.T, name, value string) {
		if name == "" {
			return
		}
		files := source.Files{{Name: "bar.hcl", Text: []byte(text)}}
		m, findings, rendered := readAndSolve(t, files, name, value)
		again, _, renderedAgain := readAndSolve(t, files, name, value)
		if rendered != renderedAgain || !cmp.Equal(m, again) {
			t.Fatalf("the second answer differs:\n%s\n%s", rendered, renderedAgain)
		}
		if len(files) != 1 || string(files[0].Text) != text {
			t.Fatal("the files that were read have changed")
		}
		for _, f := range findings {
			ofGeometry := f.Slug == "box-too-small" || f.Slug == "run-too-long"
			if f.Severity == finding.Error && !ofGeometry && f.At.File != "--set" && !relates(f, "--set") {
				t.Fatalf("the error is not shown where it comes from:\n%s", rendered)
			}
		}
		if m != nil {
			checkSound(t, m)
		}
	})
}

func relates(f finding.Finding, file string) bool {
	for _, r := range f.Related {
		if r.At.File == file {
			return true
		}
	}
	return false
}

// TestHostileSizes asks for more than anyone could mean, in few words: the
// answer comes soon, and is no model of a million parts.
func TestHostileSizes(t *testing.T) {
	for _, c := range []struct{ old, new string }{
		{"count       = 4", "count       = 1000000"}, {"lumber       =", "spacing      = \"0.0001mm\"\n  lumber       ="},
		{"width     = 3.5", `width     = "0.000001mm"`}, {"thickness = 1.5\n  width     = 3.5", "thickness = \"0.000001mm\"\n  width     = 3.5"},
		{`length  = "11ft 4 1/8in"`, "length  = \"1000m\"\n    # "}, {"corner  = 90.4 #", "corner  = 0.0000001 #"}, {`marks    = "1/32in"`, `marks    = "0.000001mm"`},
		{"drawers = [6, rest, rest]", "drawers = [" + strings.Repeat("rest, ", 10_000) + "]"}, {"dividers = [21]", "dividers = " + many(0.0001)},
		{"fixed_shelves = [18]", "fixed_shelves = " + many(0.03)}, {"shelves  = 2", "shelves  = 1000000"}, {"shelves = 1\n", "shelves = 1000000\n"},
		{`pins     = { depth = "5/16in"`, `pins     = { pitch = "0.0001mm", diameter = "0.00005mm", depth = "5/16in"`},
		{`board    = sheet.birch`, `board    = sheet.birch
  stands_on = "legs"
  legs = { apart = "0.0001mm" }`}, {`board    = sheet.birch`, `board    = sheet.birch
  stands_on = "base"
  base = { apart = "0.0001mm" }`},
		{"about = 18", `about = "0.0001mm"`}, {"about = 18", "between = 1000000"}, {"width = 1.5, about = 18", `width = "0.0001mm", about = "0.001mm"`},
		{"count       = 4", "count       = 1000000\n    at = [10, 20]"}, {"count       = 4", "count       = 1000\n    at = " + many(1)},
		{"screws_each = 10", "screws_each = 1000000"}, {"screws_each = 10", "screws_each = 10\n    top_screws_each = 1000000"},
		{"router       = router.bench", "top_plates = 1000000\n  router       = router.bench"}, {"router       = router.bench", "bottom_plates = 1000000\n  router       = router.bench"},
		{"  slab     = slab.oak", "  slab     = slab.oak\n  seams = " + many(0.3)}, {"  slab     = slab.maple", "  slab     = slab.maple\n  seams = " + many(0.3)},
		{`    face  = "work"`, "    seams = " + many(0.3) + "\n    face  = \"work\""},
		{"setback = \"1/4in\"", "setback = \"1000m\""}, {"hinge    = {", `hinge    = { from_end = "1000m",`}, {"hinge    = {", `hinge    = { from_end = "0.0001mm", cup = "0.0001mm",`},
		{"backing = \"studs\"", "backing = \"studs\"\n    baseboard = { height = 4, thickness = 1, from = -5, to = 1000 }"},
		{"backing = \"studs\"", "backing = \"studs\"\n    baseboard = { height = \"1000m\", thickness = \"1000m\" }"},
		{"width = 14, depth = 14, radius = 1", `width = "0.0001mm", depth = "1000m", radius = 1`}, {`behind = sink.prep`, `behind = sink.prep
    diameter = "1000m"`},
	} {
		whole := exampleText(t, "boatshed")
		text := bytes.Replace(whole, []byte(c.old), []byte(c.new), 1)
		if bytes.Equal(text, whole) {
			t.Errorf("%q is not in the example", c.old)
		}
		m, _, rendered := readAndSolve(t, source.Files{{Name: "bar.hcl", Text: text}}, "", "")
		if m == nil && rendered == "" {
			t.Errorf("%s: no answer", c.new)
		}
		if m != nil && len(m.Parts) > 10_000 {
			t.Errorf("%s: %d parts", c.new, len(m.Parts))
		}
	}
}

// exampleText is an example in one file.
func exampleText(t *testing.T, name string) []byte {
	t.Helper()
	var text []byte
	paths, err := filepath.Glob(filepath.Join("../../examples", name, "*.hcl"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("no example %s: %v", name, err)
	}
	for _, path := range paths {
		part, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		text = append(text, part...)
	}
	return text
}
