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

// specimen is a part, and what the letters of its formulas stand for.
type specimen struct {
	label   string
	origin  length.Length // of u
	letters string        // as in a given block: "W = 600, t = 18"
}

// specimens has one or more of each part whose sizes SPEC.md gives as
// formulas, by the code in the tables. The build is specimenBuild.
var specimens = map[string][]specimen{
	"cabinet": {
		{"APPLIED", 0, "W = 601, H = 862, D = 580, t = 17.8, b = 6.4, K = 110, S = 60, N = 90"},
		{"CAPTURED", 601 * length.Millimetre, "W = 500, H = 862, D = 580, t = 17.8, b = 6.4, K = 110, S = 60, N = 90, i = 19, g = 7, p = 0.6"},
		{"SHALLOW", 1101 * length.Millimetre, "W = 450, H = 862, D = 580, t = 17.8, b = 6.4, K = 110, S = 60, N = 90, i = 10, g = 7, p = 0.6"},
	},
	"B*n*L": {{"FRIDGE-B2L", 0, "n = 2, A = 1551, gap = 5, w = 44, back_gap = 25, d = 575, D = 580, S = 60, t = 19"}},
	"B*n*R": {{"FRIDGE-B2R", 0, "n = 2, A = 1551, gap = 5, w = 44, a = 595, back_gap = 25, d = 575, D = 580, S = 60, t = 19"}},
	// The corner is 90.4 degrees; tan 0.4 degrees is 0.006 981 430, times 580 it is 4.049 229 6…
	"F": {{"CORNER-F", 0, "A = 2156, B = 2176, scribe = 13, w = 4.04923, D = 580, t = 17.8, K = 110, H = 862"}},
	"E": {
		{"CHEEK-E", 0, "L = 800, D = 580, to_front = 19, scribe = 0, H = 862, t = 6.4"},
		{"GABLE-E", 0, "L = 300, D = 580, to_front = 22, scribe = 9, H = 862, t = 17.8"},
	},
	"A":       {{"END-A", 0, "A = 0, B = 800, t = 17.8, p = 4, D = 580, S = 60, w = 44, h = 19"}},
	"P1":      {{"BAR-P1", 0, "A = 30, B = 780, gap = 12, w = 89, t = 38, T = 1060"}},
	"S*n*":    {{"BAR-S2", 0, "c = 330, gap = 12, w = 89, t = 38, T = 1060"}},
	"P2":      {{"BAR-P2", 0, "A = 30, B = 780, gap = 12, w = 89, t = 38, T = 1060"}},
	"X*n*":    {{"BAR-X1", 0, "c = 155, gap = 12, w = 89, e = 60, h = 10, low = 0.2, q = 70, reach = 230, T = 1060"}},
	"counter": {{"counter", 0, "left = 0, right = 20, front = 25, L = 800, D = 580, H = 862, t = 38"}},
	"bar top": {{"bar_top", 0, "left = 5, right = 40, room = 280, work = 15, A = 30, B = 780, gap = 12, w = 89, T = 1060, t = 38"}},
}

const specimenBuild = `
build "specimens" { unit = "mm" }
sheet "ply" {
  size      = [2440, 1220]
  thickness = 17.8
}
sheet "thin" {
  size      = [2440, 1220]
  thickness = 6.4
}
stick "batten" {
  thickness = 19
  width     = 44
  lengths   = [2400]
}
stick "cls" {
  thickness = 38
  width     = 89
  lengths   = [2400]
}
flat_bar "arm" {
  thickness = 10
  width     = 60
  lengths   = [2000]
}
slab "oak" { thickness = 38 }
router "bench" {
  bit  = 8
  feed = 3000
  low  = 0.2
}
room {
  wall "long" {
    length = 2176
    corner = 90.4
  }
  wall "short" { length = 4000 }
}
carcass "applied" {
  height    = 862
  depth     = 580
  board     = sheet.ply
  back      = { board = sheet.thin }
  toe_kick  = { height = 110, setback = 60 }
  stretcher = 90
}
carcass "captured" {
  height    = 862
  depth     = 580
  board     = sheet.ply
  back      = { board = sheet.thin, fixed = "captured", inset = 19, groove = 7, play = 0.6 }
  toe_kick  = { height = 110, setback = 60 }
  stretcher = 90
}
carcass "shallow" {
  height    = 100
  depth     = 100
  board     = sheet.ply
  back      = { board = sheet.thin, fixed = "captured", inset = 10, groove = 7, play = 0.6 }
  toe_kick  = { height = 110, setback = 60 }
  stretcher = 90
}
run "back" {
  along   = wall.long
  carcass = carcass.applied
  cabinet "applied" { width = 601 }
  cabinet "captured" {
    width   = 500
    carcass = carcass.captured
  }
  cabinet "shallow" {
    width   = 450
    carcass = carcass.shallow
  }
  bay "fridge" {
    appliance = { width = 595, height = 820, depth = 575 }
    gap       = 5
    top_gap   = 2
    back_gap  = 25
    blocks    = stick.batten
  }
  filler "corner" {
    width  = 20
    scribe = 13
  }
}
run "front" {
  out_from = wall.short
  at       = 1800
  carcass  = carcass.applied
  cabinet "sink" { width = 800 }
  anchor "end" {
    under = cabinet.sink
    block = stick.batten
    play  = 4
  }
  end_panel "cheek" {
    end      = "right"
    board    = sheet.thin
    to_front = 19
  }
}
run "side" {
  along   = wall.short
  start   = 2600
  carcass = carcass.applied
  cabinet "gabled" { width = 300 }
  end_panel "gable" {
    end      = "right"
    board    = sheet.ply
    to_front = 22
    scribe   = 9
  }
}
knee_wall "bar" {
  behind      = run.front
  top         = 1060
  lumber      = stick.cls
  spacing     = 300
  gap         = 12
  left_inset  = 30
  right_inset = 20
  router      = router.bench
  supports {
    count = 3
    plate = flat_bar.arm
    reach = 230
    tail  = 70
  }
}
counter "work" {
  over     = run.front
  slab     = slab.oak
  overhang = { front = 25, right = 20 }
}
bar_top "oak" {
  over     = knee_wall.bar
  slab     = slab.oak
  overhang = { room = 280, work = 15, left = 5, right = 40 }
}
`

func specimenModel(t *testing.T) *model.Model {
	t.Helper()
	return mustCompile(t, source.Files{{Name: "specimens.hcl", Text: []byte(specimenBuild)}})
}

// TestPartFormulas compares every formula of the tables of parts and slabs in
// SPEC.md with the parts of a build.
func TestPartFormulas(t *testing.T) {
	s, m := readSpec(t), specimenModel(t)
	seen := map[string]bool{}
	for _, tab := range s.tablesOf(t, "part", "code", "u", "v", "z", "drawn from") {
		for _, row := range tab.rows {
			list := specimens[row[1]]
			if list == nil {
				list = s.boxesFor(t, row[0], row[1])
			}
			if len(list) == 0 {
				t.Errorf("line %d: no specimen of %s", tab.line, row[0])
			}
			for _, sp := range list {
				p := partLabelled(t, m, sp.label)
				seen[row[1]] = true
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
	for _, p := range m.Parts {
		if !seen[partCode(&p)] {
			t.Errorf("no table of SPEC.md gives the sizes of %s, the %s of %s", p.Label, p.Name, p.Owner)
		}
	}
}

var digits = regexp.MustCompile(`\d+`)

// partCode is what tells a part's label from others of its kind: "B*n*L".
func partCode(p *model.Part) string {
	_, c, _ := strings.Cut(p.Label, "-")
	if strings.HasPrefix(c, "P") {
		return c // the two plates
	}
	return digits.ReplaceAllString(c, "*n*")
}

// boxesFor returns the cabinets that a row of the table of panels speaks of,
// with r, f and s from the table of backs.
func (s *spec) boxesFor(t *testing.T, part, suffix string) []specimen {
	t.Helper()
	var out []specimen
	backs := s.tablesOf(t, "back", "r", "f", "s")[0].rows
	for i, c := range specimens["cabinet"] {
		if strings.HasSuffix(part, ", applied") && i > 0 || strings.HasSuffix(part, ", captured") && i == 0 {
			continue
		}
		for j, letter := range []string{"r", "f", "s"} {
			c.letters += fmt.Sprintf(", %s = %s", letter, code(backs[i][j+1]))
		}
		out = append(out, specimen{c.label + "-" + suffix, c.origin, c.letters})
	}
	return out
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
func TestFaces(t *testing.T) {
	s, m := readSpec(t), specimenModel(t)
	ways := map[string]geom.Dir{
		"left to right": {Axis: geom.U}, "up": {Axis: geom.Z},
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
