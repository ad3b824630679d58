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
// formulas, by the code in the tables; boxes has those of boxes. The build is
// specimenBuild.
var specimens = map[string][]specimen{
	"B*n*L": {{"FRIDGE-B2L", 0, "n = 2, A = 1551, gap = 5, w = 44, back_gap = 25, d = 575, D = 580, S = 60, t = 19"}},
	"B*n*R": {{"FRIDGE-B2R", 0, "n = 2, A = 1551, gap = 5, w = 44, a = 595, back_gap = 25, d = 575, D = 580, S = 60, t = 19"}},
	// The corner is 90.4 degrees; tan 0.4 degrees is 0.006 981 430, times 580 it is 4.049 229 6…
	"F": {{"CORNER-F", 0, "A = 2156, B = 2176, scribe = 13, w = 4.04923, D = 580, t = 17.8, K = 110, H = 862"}},
	"E": {
		{"CHEEK-E", 0, "L = 800, D = 580, to_front = 19, scribe = 0, H = 862, t = 6.4"},
		{"GABLE-E", 0, "L = 300, D = 580, to_front = 22, scribe = 9, H = 862, t = 17.8"},
	},
	"A":       {{"END-A", 0, "A = 0, B = 800, t = 17.8, p = 4, D = 580, S = 60, w = 44, h = 19"}},
	"P*n*":    {{"BAR-P1", 0, "n = 1, A = 30, B = 780, gap = 12, w = 89, t = 38"}, {"BAR-P3", 0, "n = 3, A = 30, B = 780, gap = 12, w = 89, t = 38"}},
	"S*n*":    {{"BAR-S2", 0, "c = 330, gap = 12, w = 89, t = 38, T = 1060, p = 3, q = 2"}},
	"P*p+m*":  {{"BAR-P4", 0, "m = 1, q = 2, A = 30, B = 780, gap = 12, w = 89, t = 38, T = 1060"}, {"BAR-P5", 0, "m = 2, q = 2, A = 30, B = 780, gap = 12, w = 89, t = 38, T = 1060"}},
	"X*n*":    {{"BAR-X1", 0, "c = 155, gap = 12, w = 89, e = 60, h = 10, low = 0.2, q = 70, reach = 230, T = 1060"}},
	"counter": {{"counter", 0, "left = 0, right = 20, front = 25, L = 800, D = 580, H = 862, t = 38"}},
	"bar top": {{"bar_top", 0, "left = 5, right = 40, room = 280, work = 15, A = 30, B = 780, gap = 12, w = 89, T = 1060, t = 38"}},
	"C*n*":    {{"WORK-C2", 0, "x = 700, y = 820, front = 25, D = 580, H = 862, t = 38"}},
	"T*n*": {
		{"OAK-T1", 0, "x = -5, y = 300, room = 280, work = 15, A = 30, gap = 12, w = 89, T = 1060, t = 38"},
		{"OAK-T2", 0, "x = 300, y = 790, room = 280, work = 15, A = 30, gap = 12, w = 89, T = 1060, t = 38"},
	},
	"sink":                 {{"sink middle", 0, "A = 17.8, B = 782.2, f = 6.4, D = 580, w = 300, d = 200"}},
	"sink with from_front": {{"sink front", 0, "A = 17.8, B = 782.2, D = 580, o = 25, w = 301, d = 60, from_front = 55"}},
	"tap": {
		{"tap behind", 0, "c = 400, q = 35, from_rear = 60"},
		{"tap beside", 0, "c = 609, q = 32, from_rear = 90"},
	},
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
  lengths   = [2400, 3600]
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
  wall "short" { length = 6000 }
  wall "more" { length = 17000 }
}
carcass "applied" {
  height    = 862
  depth     = 580
  board     = sheet.ply
  back      = { board = sheet.thin }
  toe_kick  = { height = 110, setback = 60 }
  stretcher = 90
}
run "back" {
  along   = wall.long
  carcass = carcass.applied
  cabinet "left" { width = 801 }
  cabinet "right" { width = 750 }
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
  top_plates    = 2
  bottom_plates = 3
  left_inset  = 30
  right_inset = 20
  router      = router.bench
  supports {
    count = 3
    plate = flat_bar.arm
    reach = 230
    tail  = 70
  }
  skin "hroom" {
    face  = "room"
    board = sheet.thin
  }
  skin "hend" {
    face        = "right"
    board       = sheet.thin
    above_floor = 7
    below_top   = 2
  }
  corner "hpost" {
    end   = "right"
    board = sheet.ply
    width = 60
  }
}
run "far" {
  out_from = wall.short
  at       = 3600
  faces    = "right"
  carcass  = carcass.applied
  cabinet "near" { width = 1000 }
  cabinet "mid" { width = 1000 }
  cabinet "next" { width = 1000 }
}
knee_wall "low" {
  behind  = run.far
  top     = 1000
  lumber  = stick.cls
  spacing = 300
  skin "lwork" {
    face          = "work"
    board         = sheet.thin
    above_counter = 4
    below_top     = 2
    battens       = { board = sheet.ply, width = 45, between = 0, mirrored = false }
    cap           = { board = sheet.ply, width = 30 }
  }
  skin "lroom" {
    face        = "room"
    board       = sheet.thin
    above_floor = 5
    below_top   = 2
    battens     = { board = sheet.ply, width = 45, between = 1 }
    cap         = { board = sheet.ply, width = 50 }
  }
  skin "lend" {
    face        = "left"
    board       = sheet.thin
    above_floor = 7
    below_top   = 2
  }
  corner "lpost" {
    end   = "left"
    board = sheet.ply
    width = 60
  }
}
counter "work" {
  over     = run.front
  slab     = slab.oak
  overhang = { front = 25, right = 20 }
  seams    = [700]
  sink "middle" {
    in  = cabinet.sink
    cut = { width = 300, depth = 200, radius = 30 }
  }
  sink "front" {
    in         = cabinet.sink
    cut        = { width = 301, depth = 60 }
    from_front = 55
  }
  tap "behind" { behind = sink.middle }
  tap "beside" {
    diameter  = 32
    from_left = 609
    from_rear = 90
  }
}
bar_top "oak" {
  over     = knee_wall.bar
  slab     = slab.oak
  overhang = { room = 280, work = 15, left = 5, right = 40 }
  seams    = [300]
}
`

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
