package compile_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
	"barwright/lang/source"
)

func specimenModel(t *testing.T) *model.Model {
	t.Helper()
	return mustCompile(t, source.Files{{Name: "specimens.hcl", Text: []byte(specimenBuild)}, {Name: "boxes.hcl", Text: []byte(boxesText())}})
}

// TestPartFormulas compares every formula of the tables of parts and slabs in
// SPEC.md with the parts of a build.
func TestPartFormulas(t *testing.T) {
	s, m := readSpec(t), specimenModel(t)
	seen, compared := map[string]bool{}, map[string]int{}
	for _, tab := range s.tablesOf(t, "part", "code", "u", "v", "z", "drawn from") {
		for _, row := range tab.rows {
			list := slices.Concat(specimens[row[1]], coverSpecimens[row[0]])
			if list == nil {
				list = s.boxesFor(t, m, row[0], row[1])
			}
			if len(list) == 0 {
				t.Errorf("line %d: no specimen of %s", tab.line, row[0])
			}
			for _, sp := range list {
				p := partLabelled(t, m, sp.label)
				seen[row[1]] = true
				compared[sp.label]++
				compareBox(t, sp, p.Placement.Box, row[2:5])
				compareWords(t, p, row)
			}
		}
	}
	for _, tab := range s.tablesOf(t, "slab", "u", "v", "z") {
		for _, row := range tab.rows {
			if len(specimens[row[0]]) == 0 {
				t.Errorf("line %d: no specimen of %s", tab.line, row[0])
			}
			for _, sp := range specimens[row[0]] {
				at := slices.IndexFunc(m.Slabs, func(b model.Slab) bool { return b.Kind == sp.label })
				compareBox(t, sp, m.Slabs[at].Box, row[1:4])
			}
		}
	}
	for _, tab := range s.tablesOf(t, "cut-out", "u", "v") {
		for _, row := range tab.rows {
			if len(specimens[row[0]]) == 0 {
				t.Errorf("line %d: no specimen of a cut-out for a %s", tab.line, row[0])
			}
			for _, sp := range specimens[row[0]] {
				compareBox(t, sp, cutNamed(t, m, sp.label).Box, row[1:3])
			}
		}
	}
	for _, p := range m.Parts {
		if !seen[partCode(&p)] {
			t.Errorf("no table of SPEC.md gives the sizes of %s, the %s of %s", p.Label, p.Name, p.Owner)
		}
		if strings.HasPrefix(p.Owner, "cabinet box") && compared[p.Label] != 1 {
			t.Errorf("%d rows of SPEC.md give the size of %s, the %s of %s", compared[p.Label], p.Label, p.Name, p.Owner)
		}
	}
}

func cutNamed(t *testing.T, m *model.Model, name string) *model.SlabCut {
	t.Helper()
	for i := range m.Slabs {
		for j := range m.Slabs[i].Cuts {
			if c := &m.Slabs[i].Cuts[j]; c.Kind+" "+c.Name == name {
				return c
			}
		}
	}
	t.Fatalf("there is no %s", name)
	return nil
}

var digits = regexp.MustCompile(`\d+`)

// partCode is what tells a part's label from others of its kind: "B*n*L".
func partCode(p *model.Part) string {
	_, c, _ := strings.Cut(p.Label, "-")
	if strings.HasPrefix(p.Name, "upper plate") {
		return "P*p+m*"
	}
	return digits.ReplaceAllString(c, "*n*")
}

func partLabelled(t *testing.T, m *model.Model, label string) *model.Part {
	t.Helper()
	for i := range m.Parts {
		if m.Parts[i].Label == label {
			return &m.Parts[i]
		}
	}
	t.Fatalf("no part is labelled %s", label)
	return nil
}

// compareBox compares the extent of a part with three cells "`from … to`".
func compareBox(t *testing.T, sp specimen, box geom.Box, cells []string) {
	t.Helper()
	for axis, cell := range cells {
		want := workedOut(t, sp.letters, strings.Split(code(cell), " … "))
		have := box.Along(geom.Axis(axis))
		if geom.Axis(axis) == geom.U {
			have = have.Shift(-sp.origin)
		}
		if len(want) != 2 || have != (geom.Span{Lo: want[0], Hi: want[1]}) {
			t.Errorf("%s: %s is %v, and %s is %v", sp.label, geom.Axis(axis), have, cell, want)
		}
	}
}

var lengthName = regexp.MustCompile(`[A-Za-z_]+\b([^(]|$)`)

// inGivens writes a formula as an expression of the language.
func inGivens(formula string) string { return lengthName.ReplaceAllString(formula, "given.$0") }

// workedOut works formulas out by the language itself.
func workedOut(t *testing.T, letters string, formulas []string) []length.Length {
	t.Helper()
	text := "build \"b\" { unit = \"mm\" }\ngiven {\n"
	for _, l := range strings.Split(letters, ", ") {
		name, value, _ := strings.Cut(l, " = ")
		text += "  " + name + " = " + inGivens(value) + "\n"
	}
	for i, f := range formulas {
		text += fmt.Sprintf("  result_%d = %s\n", i, inGivens(f))
	}
	m := mustCompile(t, source.Files{{Name: "formulas.hcl", Text: []byte(text + "}\n")}})
	var out []length.Length
	for _, g := range m.Givens {
		if strings.HasPrefix(g.Name, "result_") {
			l, err := length.Parse(g.Value, length.Millimetres)
			if err != nil {
				t.Fatalf("%s = %q: %v", g.Name, g.Value, err)
			}
			out = append(out, l)
		}
	}
	return out
}

// compareWords compares the face that a part is drawn on, and its grain.
func compareWords(t *testing.T, p *model.Part, row []string) {
	t.Helper()
	if p.Face != row[5] {
		t.Errorf("%s is drawn from its %s, not its %s", p.Label, p.Face, row[5])
	}
	if len(row) < 7 {
		return
	}
	if want := map[string]model.Grain{"up": model.GrainY, "along": model.GrainX}[row[6]]; p.Grain != want {
		t.Errorf("the grain of %s runs along %s, not %s", p.Label, p.Grain, row[6])
	}
}

// TestFaces compares the table of faces in SPEC.md with the way each part is
// drawn.
func TestFaces(t *testing.T) { checkFaces(t, specimenModel(t)) }

func checkFaces(t *testing.T, m *model.Model) {
	t.Helper()
	s := readSpec(t)
	ways := map[string]geom.Dir{
		"left to right": {Axis: geom.U}, "right to left": {Axis: geom.U, Neg: true}, "up": {Axis: geom.Z},
		"front edge to rear edge": {Axis: geom.V, Neg: true}, "rear edge to front edge": {Axis: geom.V},
	}
	spoken := map[string]int{}
	for _, tab := range s.tablesOf(t, "drawn from", "x runs", "y runs", "parts") {
		for _, row := range tab.rows {
			x, okX := ways[row[1]]
			y, okY := ways[row[2]]
			if !okX || !okY {
				t.Errorf("line %d: %q, %q", tab.line, row[1], row[2])
			}
			for _, p := range m.Parts {
				if !slices.ContainsFunc(strings.Split(row[3], ", "), func(word string) bool { return strings.Contains(p.Name, word) }) {
					continue
				}
				spoken[p.ID]++
				if p.Placement.X != x || p.Placement.Y != y {
					t.Errorf("line %d: x of %s runs %s and y %s", tab.line, p.Label, p.Placement.X, p.Placement.Y)
				}
			}
		}
	}
	for _, p := range m.Parts {
		if spoken[p.ID] != 1 {
			t.Errorf("%d rows speak of the %s of %s", spoken[p.ID], p.Name, p.Owner)
		}
	}
}
