package solve_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"testing"

	"github.com/google/go-cmp/cmp"

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

// TestBoringOnA32Grid follows a cupboard of boards 18 mm thick through 32 mm
// boring: holes of 5 mm, the front row 37 mm behind the front edge, 32 mm from
// hole to hole. Common practice, no source; the table is worked by hand: the
// bottom's upper face is at 118, holes from 118 + 96 = 214 on; the cupboard is
// 560 deep over a back of 6, and 1 mm of banding is on its front edges, so that
// the front row is 36 from the edge as cut, and as 560 - 37 - 37 - 6 = 480 is
// fifteen times 32, the rear row stands on the same grid.
func TestBoringOnA32Grid(t *testing.T) {
	m, _ := solved(t, source.File{Name: "bar.hcl", Text: []byte(`
build "bar" { unit = "mm" }
sheet "mfc" {
  size      = [2800, 2070]
  thickness = 18
}
sheet "hdf" {
  size      = [2800, 2070]
  thickness = 6
}
banding "abs" {
  thickness = 1
  roll      = 50000
}
carcass "base" {
  height  = 870
  depth   = 560
  board   = sheet.mfc
  back    = { board = sheet.hdf }
  banding = banding.abs
}
room {
  wall "north" { length = 3000 }
}
run "back" {
  along   = wall.north
  carcass = carcass.base
  cabinet "cups" {
    width   = 600
    shelves = 2
  }
}
`)})
	var have []string
	for _, b := range m.Parts[0].Bores {
		if b.Diameter != 5*length.Millimetre {
			t.Errorf("a hole of %s", m.Build.Show(b.Diameter))
		}
		have = append(have, fmt.Sprintf("%g %g", b.At.X.MM(), b.At.Y.MM()))
	}
	var want []string
	for _, x := range []string{"36", "516"} {
		for _, y := range []string{"214", "246", "278", "310", "342", "374", "406", "438", "470", "502", "534", "566", "598", "630", "662"} {
			want = append(want, x+" "+y)
		}
	}
	if diff := cmp.Diff(want, have); diff != "" || m.Parts[0].ID != "cabinet.cups/side-left" {
		t.Errorf("holes of %s (-by hand +bored):\n%s", m.Parts[0].ID, diff)
	}
}

// TestBaseCabinetInPlywood: a base cabinet 30 in wide, 34 1/2 in high and 24 in
// deep, of boards 3/4 in thick with a back of 1/4 in, has a bottom and strips
// two boards narrower than itself; its back covers all from the bottom's
// underside to the top edge, or goes 1/4 in into each side where it is let in.
// Common practice, no source; the table is worked by hand.
func TestBaseCabinetInPlywood(t *testing.T) {
	for _, c := range []struct{ fixed, top, part, size string }{
		{"applied", "stretchers", "side-left", "23 3/4 in x 34 1/2 in"},
		{"applied", "stretchers", "bottom", "28 1/2 in x 23 3/4 in"},
		{"applied", "stretchers", "back", "30 in x 30 1/2 in"},
		{"applied", "stretchers", "stretcher-front", "28 1/2 in x 4 in"},
		{"applied", "full", "top", "28 1/2 in x 23 3/4 in"},
		{"rabbeted", "full", "side-left", "24 in x 34 1/2 in"},
		{"rabbeted", "full", "bottom", "28 1/2 in x 23 3/4 in"},
		{"rabbeted", "full", "back", "29 in x 30 1/2 in"},
		{"captured", "full", "bottom", "28 1/2 in x 24 in"},
		{"captured", "full", "back", "29 in x 29 1/2 in"}, // 34 1/2 - 4 - 2 * 3/4 + 2 * 1/4
		{"captured", "stretchers", "back", "29 in x 30 in"},
	} {
		m, _ := solved(t, source.File{Name: "bar.hcl", Text: []byte(fmt.Sprintf(`
build "bar" { unit = "in" }
sheet "ply" {
  size      = [96, 48]
  thickness = 0.75
}
sheet "thin" {
  size      = [96, 48]
  thickness = 0.25
}
carcass "base" {
  height = 34.5
  depth  = 24
  board  = sheet.ply
  back   = { board = sheet.thin, fixed = %q, groove = 0.25, play = 0 }
  top    = %q
}
room {
  wall "north" { length = 120 }
}
run "back" {
  along   = wall.north
  carcass = carcass.base
  cabinet "cups" { width = 30 }
}
`, c.fixed, c.top))})
		at := slices.IndexFunc(m.Parts, func(p model.Part) bool { return p.ID == "cabinet.cups/"+c.part })
		x, y := m.Parts[at].Size()
		if have := m.Build.Show(x) + " x " + m.Build.Show(y); have != c.size {
			t.Errorf("%s back, top %s: %s is %s, want %s", c.fixed, c.top, c.part, have, c.size)
		}
	}
}

// dressed are the sizes of dry softwood lumber as dressed, by nominal inches
// (PS 20, American Softwood Lumber Standard; "Lumber Dimensions" tables).
var dressedThickness = map[int]length.Length{1: inch * 3 / 4, 2: inch * 3 / 2, 4: inch * 7 / 2}
var dressedWidth = map[int]length.Length{2: inch * 3 / 2, 3: inch * 5 / 2, 4: inch * 7 / 2, 6: inch * 11 / 2, 8: inch * 29 / 4, 10: inch * 37 / 4, 12: inch * 45 / 4}

// TestSticksAreDressed compares the examples' lumber that is sold by a nominal
// size, and its metric twin, with PS 20.
func TestSticksAreDressed(t *testing.T) {
	nominal := regexp.MustCompile(`^(\d+)x(\d+), .*dry$`)
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
