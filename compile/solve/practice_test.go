package solve_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"barwright/compile/model"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

const inch = length.Inch

// example reads and solves one of the examples.
func example(t *testing.T, name string) (*model.Model, finding.List) {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join("../../examples", name, "*.hcl"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("no example %s: %v", name, err)
	}
	var files source.Files
	for _, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, source.File{Name: filepath.Base(path), Text: text})
	}
	return solved(t, files...)
}

// TestExamplesAreSound demands that what the project shows has neither errors
// nor warnings.
func TestExamplesAreSound(t *testing.T) {
	for _, name := range []string{"boatshed", "servery"} {
		_, findings := example(t, name)
		for _, f := range findings {
			if f.Severity != finding.Note {
				t.Errorf("%s: %s: %s", name, f.Slug, f.Text)
			}
		}
	}
}

// TestStandingHeight: a raised bar top stands at about 42 in (1067 mm), where
// one stands or sits high at it, and a counter at about 36 in (914 mm).
// Common practice, no source.
func TestStandingHeight(t *testing.T) {
	m, _ := example(t, "boatshed")
	for _, s := range m.Slabs {
		want := 36 * inch
		if s.Kind == "bar_top" {
			want = 42 * inch
		}
		if s.Box.Z.Hi != want {
			t.Errorf("the top of %s %s is at %s", s.Kind, s.Name, m.Build.Show(s.Box.Z.Hi))
		}
	}
}

// TestBayLeavesItsGaps: an appliance of 19 in with 1/4 in of air on each side
// needs a bay of 19 1/2 in between the boxes beside it. Common practice, no
// source.
func TestBayLeavesItsGaps(t *testing.T) {
	m, _ := solved(t, source.File{Name: "bar.hcl", Text: []byte(`
build "bar" { unit = "in" }
sheet "ply" {
  size      = [96, 48]
  thickness = "23/32in"
}
carcass "base" {
  height = 34.5
  depth  = 24
  board  = sheet.ply
  back   = { board = sheet.ply }
}
room {
  wall "north" { length = 120 }
}
run "back" {
  along   = wall.north
  carcass = carcass.base
  cabinet "left" { width = 30 }
  bay "ice" {
    appliance = { width = 19, height = 33, depth = 22 }
    gap       = "1/4in"
  }
  cabinet "right" { width = 24 }
}
`)})
	var left, right length.Length
	for _, p := range m.Parts {
		switch p.ID {
		case "cabinet.left/side-right":
			left = p.Placement.Box.U.Hi
		case "cabinet.right/side-left":
			right = p.Placement.Box.U.Lo
		}
	}
	if clear := right - left; clear != 19*inch+inch/2 {
		t.Errorf("between the boxes are %s", m.Build.Show(clear))
	}
	if got, want := m.Runs[0].Length, 30*inch+19*inch+inch/2+24*inch; got != want {
		t.Errorf("the run is %s long, not %s", m.Build.Show(got), m.Build.Show(want))
	}
}

// dressed are the sizes of dry softwood lumber as dressed, by nominal inches
// (PS 20, American Softwood Lumber Standard; "Lumber Dimensions" tables).
var dressedThickness = map[int]length.Length{1: inch * 3 / 4, 2: inch * 3 / 2, 4: inch * 7 / 2}
var dressedWidth = map[int]length.Length{2: inch * 3 / 2, 3: inch * 5 / 2, 4: inch * 7 / 2, 6: inch * 11 / 2, 8: inch * 29 / 4, 10: inch * 37 / 4, 12: inch * 45 / 4}

// TestSticksAreDressed compares the examples' lumber that is sold by a nominal
// size, and its metric twin, with PS 20.
func TestSticksAreDressed(t *testing.T) {
	nominal := regexp.MustCompile(`^(\d+)x(\d+), dry$`)
	metric := regexp.MustCompile(`^studwork (\d+) x (\d+)$`)
	checked := 0
	for _, name := range []string{"boatshed", "servery"} {
		m, _ := example(t, name)
		for _, s := range m.Stock.Sticks {
			number := func(text string) int { n, _ := strconv.Atoi(text); return n }
			if f := nominal.FindStringSubmatch(s.Text); f != nil {
				checked++
				if a, b := dressedThickness[number(f[1])], dressedWidth[number(f[2])]; s.Thickness != a || s.Width != b {
					t.Errorf("%s is %s x %s, dressed it is %s x %s", s.Text, m.Build.Show(s.Thickness), m.Build.Show(s.Width), m.Build.Show(a), m.Build.Show(b))
				}
			}
			if f := metric.FindStringSubmatch(s.Text); f != nil {
				checked++
				// PS 20 gives 38 x 89 mm beside 1 1/2 x 3 1/2 in: whole millimetres.
				a, b := length.Round(dressedThickness[2], length.Millimetre), length.Round(dressedWidth[4], length.Millimetre)
				if s.Thickness != a || s.Width != b || f[1] != fmt.Sprint(int(a.MM())) || f[2] != fmt.Sprint(int(b.MM())) {
					t.Errorf("%s is %s x %s", s.Text, m.Build.Show(s.Thickness), m.Build.Show(s.Width))
				}
			}
		}
	}
	if checked != 2 {
		t.Errorf("%d sticks were compared, not 2", checked)
	}
}

// TestExampleHeightsAgree follows the chain of heights in both examples: floor,
// boxes, counter; floor, framing, bar top.
func TestExampleHeightsAgree(t *testing.T) {
	for _, name := range []string{"boatshed", "servery"} {
		m, _ := example(t, name)
		for _, s := range m.Slabs {
			below := m.KneeWalls[0].Framing.Z.Hi
			if s.Kind == "counter" {
				below = m.Runs[0].Height
			}
			if s.Box.Z.Lo != below {
				t.Errorf("%s: %s %s lies at %s on something %s high", name, s.Kind, s.Name, m.Build.Show(s.Box.Z.Lo), m.Build.Show(below))
			}
		}
	}
}
