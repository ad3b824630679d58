package revise

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/source"
)

// told prints changes as the tables below have them.
func told(changes []model.Change) []string {
	var out []string
	for _, c := range changes {
		line := fmt.Sprintf("%s %s", c.Kind, c.Name)
		switch {
		case c.Kind == model.Moved:
			line += ": " + c.Text
		case c.Kind == model.Came || c.Kind == model.Went:
			line += strings.TrimSuffix(": "+c.Text, ": ")
		default:
			line += fmt.Sprintf(": %s -> %s", c.Old, c.New)
			if c.OldWritten != "" || c.NewWritten != "" {
				line += fmt.Sprintf(" (%s -> %s)", c.OldWritten, c.NewWritten)
			}
		}
		if len(c.Because) > 0 {
			line += " < " + strings.Join(c.Because, " < ")
		}
		out = append(out, line)
	}
	return out
}

const shed = `build "shed" { unit = "in" }
given { wide = 24 }
sheet "ply" {
  size      = [240, 96]
  thickness = 0.75
}
room {
  wall "back" {
    length = 72
    outlet "tea" { at = [12, 18] }
  }
}
carcass "base" {
  height = 34.5
  depth  = 24
  board  = sheet.ply
  back   = { board = sheet.ply }
}
run "back" {
  along   = wall.back
  carcass = carcass.base
  cabinet "tea" { width = given.wide }
  cabinet "cups" { width = rest }
}
`

func oneFile(text string) source.Files { return source.Files{{Name: "bar.hcl", Text: []byte(text)}} }

// TestChanges works a bar of two cabinets along 72 in out by hand.
func TestChanges(t *testing.T) {
	old := mustBuild(t, oneFile(shed))
	for name, c := range map[string]struct {
		edits []string
		want  []string
	}{
		"nothing":             {nil, nil},
		"blanks and comments": {[]string{`{ wide = 24 }`, "{\n  # as the urn\n  wide =    24\n}"}, nil},
		"comments in a value": {[]string{`[12, 18]`, "[12, # along \"it\n  18]"}, nil},
		"a figure": {[]string{`wide = 24`, `wide = 25`}, []string{
			"said given.wide: 24 -> 25 (24 -> 25)",
			"follows cabinet.tea.width: 24 in -> 25 in < given.wide",
			"follows cabinet.tea.right: 24 in -> 25 in < cabinet.tea.width < given.wide",
			"follows cabinet.cups.width: 48 in -> 47 in < cabinet.tea.width < given.wide",
			"follows cabinet.cups.left: 24 in -> 25 in < cabinet.tea.width < given.wide",
			"moved cabinet.tea.placed.u: 1 in wider < cabinet.tea.right < cabinet.tea.width < given.wide",
			"moved cabinet.cups.placed.u: 1 in narrower at its left end < cabinet.cups.left < cabinet.tea.width < given.wide",
		}},
		"other words for the same": {[]string{`{ width = given.wide }`, `{ width = 2 * 12 }`}, []string{
			"said cabinet.tea.width: 24 in -> 24 in (given.wide -> 2 * 12)",
		}},
		"other zeros": {[]string{`wide = 24`, `wide = 24.00`, `[12, 18]`, `[12.0, 18]`, `thickness = 0.75`, `thickness = 0.750`}, nil},
		"the same in its unit": {[]string{`wide = 24`, `wide = "24in"`}, []string{
			"said given.wide: 24 -> \"24in\" (24 -> \"24in\")",
		}},
		"a default in its own words": {[]string{`along   = wall.back`, "along   = wall.back\n  start   = 0"}, nil},
		"more than the default": {[]string{`along   = wall.back`, "along   = wall.back\n  start   = 2"}, []string{
			"said run.back.start: 0 in -> 2 in (0in -> 2)",
			"follows run.back.length: 72 in -> 70 in < run.back.start",
			"follows cabinet.cups.width: 48 in -> 46 in < run.back.length < run.back.start",
			"follows cabinet.cups.right: 72 in -> 70 in < cabinet.cups.width < run.back.length < run.back.start",
			"moved run.back.placed.room: moved 2 in along x < run.back.start",
			"moved cabinet.cups.placed.u: 2 in narrower < cabinet.cups.right < cabinet.cups.width < run.back.length < run.back.start",
		}},
		"a place on the wall": {[]string{`[12, 18]`, `[13, 17.5]`}, []string{
			"said outlet.tea.at: [12 in, 18 in] -> [13 in, 17 1/2 in] ([12, 18] -> [13, 17.5])",
			"moved outlet.tea.placed.room: moved 1 in along x, 1/2 in lower < outlet.tea.at",
		}},
		"another name": {[]string{`cabinet "cups"`, `cabinet "mugs"`}, []string{
			"came cabinet.mugs: renamed from cabinet.cups",
		}},
		"one more": {[]string{`cabinet "cups" { width = rest }`, "cabinet \"cups\" { width = 20 }\n  cabinet \"mugs\" { width = rest }"}, []string{
			"said cabinet.cups.width: 48 in -> 20 in (rest -> 20)",
			"came cabinet.mugs",
			"follows cabinet.cups.right: 72 in -> 44 in < cabinet.cups.width",
			"moved cabinet.cups.placed.u: 28 in narrower < cabinet.cups.right < cabinet.cups.width",
		}},
		"a door": {[]string{`{ width = given.wide }`, "{\n    width = given.wide\n    shelves = 1\n    doors = 1\n  }", `back   = { board = sheet.ply }`, "back   = { board = sheet.ply }\n  door   = { board = sheet.ply }"}, []string{
			"said carcass.base.door.board:  -> sheet.ply ( -> sheet.ply)",
			"said cabinet.tea.doors: 0 -> 1 (0 -> 1)",
			"said cabinet.tea.shelves: 0 -> 1 (0 -> 1)",
			"moved cabinet.tea.placed.door: is there now < cabinet.tea.doors",
		}},
		"the other way round": {[]string{"  cabinet \"tea\" { width = given.wide }\n  cabinet \"cups\" { width = rest }\n", "  cabinet \"cups\" { width = rest }\n  cabinet \"tea\" { width = given.wide }\n"}, []string{
			"said run.back: cabinet.tea, cabinet.cups -> cabinet.cups, cabinet.tea",
			"follows cabinet.cups.left: 24 in -> 0 in < run.back",
			"follows cabinet.cups.right: 72 in -> 48 in < cabinet.cups.left < run.back",
			"follows cabinet.tea.left: 0 in -> 48 in < run.back",
			"follows cabinet.tea.right: 24 in -> 72 in < cabinet.tea.left < run.back",
			"moved cabinet.cups.placed.u: moved 24 in to the left < cabinet.cups.left < run.back",
			"moved cabinet.tea.placed.u: moved 48 in to the right < cabinet.tea.left < run.back",
		}},
		"one fewer": {[]string{`cabinet "tea" { width = given.wide }`, ``}, []string{
			"went cabinet.tea",
			"follows cabinet.cups.width: 48 in -> 72 in < cabinet.tea",
			"follows cabinet.cups.left: 24 in -> 0 in < cabinet.tea",
			"moved cabinet.cups.placed.u: 24 in wider at its left end < cabinet.cups.left < cabinet.tea",
		}},
		"a run with its boxes": {[]string{"at = [12, 18] }\n  }\n", `at = [12, 18] }
  }
  wall "side" { length = 100 }
`, "carcass \"base\"", `run "side" {
  along   = wall.side
  start   = 30
  carcass = carcass.base
  cabinet "urn" { width = 30 }
  cabinet "ice" { width = 30 }
}
carcass "base"`}, []string{"came wall.side", "came run.side: with cabinet.urn, cabinet.ice",
			"moved run.back.placed.free: left instead of left, right < wall.side"}},
	} {
		t.Run(name, func(t *testing.T) {
			files := oneFile(shed)
			for i := 0; i < len(c.edits); i += 2 {
				files = edited(t, files, c.edits[i], c.edits[i+1])
			}
			have, _ := changes(old, mustBuild(t, files))
			if diff := cmp.Diff(c.want, told(have)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestSameFigures(t *testing.T) {
	for _, c := range []struct {
		a, b string
		same bool
	}{
		{`36`, `36.0`, true}, {`100.0`, `100.`, false}, {`[10.50, 100]`, `[10.5,100.00]`, true}, {`"36in"`, `"36.0 in"`, true},
		{`given.top + 2.0`, `given.top + 2`, true}, {`36`, `18 * 2`, false}, {`36`, `"36in"`, false}, {`1.05`, `1.5`, false}, {`10`, `1`, false},
	} {
		if sameFigures(c.a, c.b) != c.same {
			t.Errorf("%s and %s: %v", c.a, c.b, !c.same)
		}
	}
}

// TestCommandLine takes a value of the command line for what the text says otherwise.
func TestCommandLine(t *testing.T) {
	old := mustBuild(t, oneFile(shed))
	src, _ := lang.Read(oneFile(shed))
	src.Override("--set", "wide", "25")
	new, _ := compile.Priced(src)
	have, _ := changes(old, new)
	if want := "said given.wide: 24 -> 25 (24 -> 25)"; len(have) == 0 || told(have)[0] != want {
		t.Errorf("told is %q, want first %s", told(have), want)
	}
}

// TestEarlierRecord has no values on one side: the givens are told, and what moved.
func TestEarlierRecord(t *testing.T) {
	old := mustBuild(t, oneFile(shed))
	old.Values = nil
	new := mustBuild(t, edited(t, oneFile(shed), "wide = 24", "wide = 25"))
	r := Compare(old, new, Options{})
	want := []string{
		"said given.wide: 24 -> 25 (24 -> 25)",
		"moved cabinet.tea.placed.u: 1 in wider",
		"moved cabinet.cups.placed.u: 1 in narrower at its left end",
	}
	if diff := cmp.Diff(want, told(r.Changes)); diff != "" {
		t.Error(diff)
	}
	if !strings.Contains(strings.Join(r.Notes, " "), "earlier form") {
		t.Errorf("the notes %q do not tell what was not compared", r.Notes)
	}
}

// TestOtherUnit says the same bar in millimetres: no length that is stated differs, and
// what does, a default, follows from the unit.
func TestOtherUnit(t *testing.T) {
	files := oneFile(shed)
	for _, e := range [][2]string{
		{`unit = "in"`, `unit = "mm"`}, {`wide = 24`, `wide = 609.6`}, {`[240, 96]`, `[6096, 2438.4]`}, {`0.75`, `19.05`}, {`= 72`, `= 1828.8`},
		{`[12, 18]`, `[304.8, 457.2]`}, {`34.5`, `876.3`}, {`depth  = 24`, `depth  = 609.6`},
	} {
		files = edited(t, files, e[0], e[1])
	}
	have, _ := changes(mustBuild(t, oneFile(shed)), mustBuild(t, files))
	lines := told(have)
	want := []string{
		`said build.unit: "in" -> "mm" ("in" -> "mm")`,
		"said given.wide: 24 -> 609.6 (24 -> 609.6)",
		"said sheet.ply.size: [240 in, 96 in] -> [6096 mm, 2438.4 mm] ([240, 96] -> [6096, 2438.4])",
		"said sheet.ply.thickness: 3/4 in -> 19.05 mm (0.75 -> 19.05)",
		"said wall.back.length: 72 in -> 1828.8 mm (72 -> 1828.8)",
		"said outlet.tea.at: [12 in, 18 in] -> [304.8 mm, 457.2 mm] ([12, 18] -> [304.8, 457.2])",
		"said carcass.base.height: 34 1/2 in -> 876.3 mm (34.5 -> 876.3)",
		"said carcass.base.depth: 24 in -> 609.6 mm (24 -> 609.6)",
		"follows build.marks: 1/32 in -> 0.5 mm < build.unit",
	}
	if diff := cmp.Diff(want, lines[:len(want)]); diff != "" {
		t.Error(diff)
	}
	for i, c := range have[len(want):] {
		if len(c.Because) == 0 || c.Because[len(c.Because)-1] != "build.unit" {
			t.Errorf("%s: not because of the unit", lines[len(want)+i])
		}
	}
	// 4 in of toe kick become 100 mm.
	if last, want := lines[len(lines)-1], "moved cabinet.cups.placed.inside.z: 1.6 mm taller at its foot < carcass.base.toe_kick.height < build.unit"; last != want {
		t.Errorf("the last line is %s, want %s", last, want)
	}
}
