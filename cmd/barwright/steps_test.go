package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"barwright/compile"
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

const steps = 6

func step(n int) string { return fmt.Sprintf("steps/%d", n) }

// stepLines are the lines of a step, its files one after the other.
func stepLines(t *testing.T, n int) []string {
	t.Helper()
	var out []string
	for _, name := range []string{"bar.hcl", "stock.hcl"} {
		text, err := os.ReadFile(filepath.Join(example(step(n)), name))
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, strings.Split(strings.TrimSpace(string(text)), "\n")...)
	}
	return out
}

// TestStepsGrow demands that each step is the one before it with some lines
// more, and a few that say other things: what was new there.
func TestStepsGrow(t *testing.T) {
	for n := 2; n <= steps; n++ {
		before, after := stepLines(t, n-1), stepLines(t, n)
		kept := inCommon(before, after)
		lost, added := len(before)-kept, len(after)-kept
		if lost > 9 || added <= lost || added > 60 {
			t.Errorf("step %d loses %d lines and adds %d", n, lost, added)
		}
		if !strings.Contains(strings.ToLower(strings.Join(after, "\n")), "# new") {
			t.Errorf("step %d does not say what is new", n)
		}
	}
	if dirs, _ := filepath.Glob(filepath.Join(example("steps"), "*")); len(dirs) != steps {
		t.Errorf("there are %d steps: %v", len(dirs), dirs)
	}
}

// inCommon counts the lines that two texts have in common, in their order: the
// longest common subsequence.
func inCommon(a, b []string) int {
	row := make([]int, len(b)+1)
	for _, line := range a {
		diagonal := 0
		for j, other := range b {
			above := row[j+1]
			if line == other {
				row[j+1] = diagonal + 1
			} else {
				row[j+1] = max(above, row[j])
			}
			diagonal = above
		}
	}
	return row[len(b)]
}

// TestStepsAreClean compiles and builds each step; there is nothing to be told
// about any of them.
func TestStepsAreClean(t *testing.T) {
	readme := readmeText(t)
	for n := 1; n <= steps; n++ {
		if m := compiled(t, step(n)); len(m.Findings) > 0 {
			t.Errorf("step %d: %v", n, m.Findings)
		}
		if files := filesIn(t, built(t, step(n))); len(files["index.html"]) == 0 {
			t.Errorf("step %d has no page", n)
		}
		if command := "go run ./cmd/barwright build examples/" + step(n) + " -o out"; !strings.Contains(readme, command) {
			t.Errorf("the README lacks: %s", command)
		}
	}
}

// TestStepsShowWhatTheReadmeSays works the figures out that the README points
// at.
func TestStepsShowWhatTheReadmeSays(t *testing.T) {
	readme := readmeText(t)
	says := func(l model.Length) {
		t.Helper()
		text := length.Show(l, length.Inches, length.Inch/64)
		if !strings.Contains(readme, text) {
			t.Errorf("the README does not say %s", text)
		}
	}
	if m := compiled(t, step(1)); len(m.Parts) != 7 || len(part(t, m, "MUGS-BK").Openings) != 0 {
		t.Errorf("step 1 has %d parts, and its back %d openings", len(m.Parts), len(part(t, m, "MUGS-BK").Openings))
	}
	outlet := part(t, compiled(t, step(2)), "MUGS-BK").Openings
	if len(outlet) != 1 {
		t.Fatalf("step 2: %d openings", len(outlet))
	}
	says(outlet[0].Shape.Bounds().X.Lo)
	says(outlet[0].Shape.Bounds().X.Hi)

	m := compiled(t, step(3))
	plates, _ := part(t, m, "PLATES-BK").Size()
	tins, _ := part(t, m, "TINS-BK").Size()
	if plates != tins {
		t.Errorf("step 3: the boxes are %d and %d wide", plates, tins)
	}
	says(plates)

	drain := part(t, compiled(t, step(4)), "SINK-L").Openings
	if len(drain) != 1 {
		t.Fatalf("step 4: %d openings", len(drain))
	}
	x := drain[0].Shape.Bounds().X
	says((x.Lo + x.Hi) / 2) // the front edge of a left side is its left one

	m = compiled(t, step(5))
	if n := len(m.Programs); n != 4 || !m.Programs[0].Test || m.Programs[1].Test {
		t.Errorf("step 5 has %d programs, of which one is for a test piece and three for recesses", n)
	}
	_, low := part(t, m, "BAR-S2").Size()
	r, err := options{set: []string{"bar_top=44"}}.solve(example(step(5)), compile.Compile)
	if err != nil || r.model == nil {
		t.Fatal(err, r.findings)
	}
	_, high := part(t, r.model, "BAR-S2").Size()
	says(low)
	says(high)

	m = compiled(t, step(6))
	door := part(t, m, "SINK-DL")
	wide, _ := door.Size()
	if len(door.Bores) == 0 {
		t.Error("step 6: the door has no bores")
	}
	says(wide)
	bar := &m.KneeWalls[0]
	box := bar.Outlets[0].Box
	says(box.Z.Mid())
	for i, stud := range bar.Studs {
		if box.U.Contains(geom.Span{Lo: stud, Hi: stud}) {
			t.Errorf("step 6: stud %d stands behind the outlet", i+1)
		}
	}
}

func part(t *testing.T, m *model.Model, label string) *model.Part {
	t.Helper()
	for i := range m.Parts {
		if m.Parts[i].Label == label {
			return &m.Parts[i]
		}
	}
	t.Fatalf("there is no part %s", label)
	return nil
}

func readmeText(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
