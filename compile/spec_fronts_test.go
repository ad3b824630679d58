package compile_test

import (
	"fmt"
	"strings"
	"testing"

	"barwright/lang/length"
	"barwright/lang/source"
)

const frontsBuild = `
build "fronts" { unit = "mm" }
sheet "ply" {
  size      = [2440, 1220]
  thickness = 17.8
}
sheet "door" {
  size      = [2440, 1220]
  thickness = 19.2
}
sheet "box" {
  size      = [2440, 1220]
  thickness = 12.4
}
sheet "thin" {
  size      = [2440, 1220]
  thickness = 6.4
}
room {
  wall "long" { length = 4000 }
}
carcass "overlay" {
  height    = 862
  depth     = 580
  board     = sheet.ply
  back      = { board = sheet.thin }
  toe_kick  = { height = 110, setback = 60 }
  door      = { board = sheet.door, gap = 3.2, top = 5, bottom = 2 }
  drawer    = { board = sheet.box, bottom = sheet.thin, clearance = 13, lower = 48, up = 26, lengths = [400, 500], groove = 5.8, groove_up = 11, play = 0.6 }
}
carcass "inset" {
  height    = 862
  depth     = 580
  board     = sheet.ply
  back      = { board = sheet.thin, fixed = "captured", inset = 19 }
  toe_kick  = { height = 110, setback = 60 }
  door      = { board = sheet.door, gap = 3.2, fit = "inset" }
  drawer    = { board = sheet.box, bottom = sheet.thin, clearance = 13, lower = 48, up = 26, lengths = [400, 500], groove = 5.8, groove_up = 11, play = 0.6 }
}
run "back" {
  along   = wall.long
  carcass = carcass.overlay
  cabinet "one" {
    width       = 500
    false_front = 120
    drawers     = [150]
    doors       = 1
  }
  cabinet "two" {
    width   = 700
    carcass = carcass.inset
    drawers = [140, 160]
    doors   = 2
  }
  cabinet "three" {
    width       = 400
    carcass     = carcass.inset
    false_front = 100
  }
}
`

// frontSpecimens are parts of frontsBuild with what the letters of section 6.12
// stand for. Heights by hand. One: fronts reach from 112 to 857; the false front
// from 737, the drawer's to 733.8 and from 583.8, the door to 580.6: 468.6 high.
// Two: from 110 + 17.8 + 3.2 = 131 to 862 - 17.8 - 3.2 = 841; drawer 1 from 701,
// drawer 2 to 697.8 and from 537.8, the doors to 534.6: 403.6 high. Slides of
// 500: before the back of two there are 580 - 19.2 - 25.4 - 12 = 523.4.
var frontSpecimens = map[string][]specimen{
	"FF":    {{"ONE-FF", 0, oneLetters + "h = 120"}, {"THREE-FF", threeAt, strings.Replace(twoLetters, "W = 700", "W = 400", 1) + "h = 100"}},
	"F*n*":  {{"ONE-F1", 0, oneLetters + oneDrawer}, {"TWO-F2", twoAt, twoLetters + twoDrawer}},
	"D":     {{"ONE-D", 0, oneLetters + "h = 468.6"}},
	"DL":    {{"TWO-DL", twoAt, twoLetters + "h = 403.6"}},
	"DR":    {{"TWO-DR", twoAt, twoLetters + "h = 403.6"}},
	"K*n*L": {{"ONE-K1L", 0, oneLetters + oneDrawer}, {"TWO-K2L", twoAt, twoLetters + twoDrawer}},
	"K*n*R": {{"ONE-K1R", 0, oneLetters + oneDrawer}, {"TWO-K2R", twoAt, twoLetters + twoDrawer}},
	"K*n*F": {{"ONE-K1F", 0, oneLetters + oneDrawer}, {"TWO-K2F", twoAt, twoLetters + twoDrawer}},
	"K*n*K": {{"ONE-K1K", 0, oneLetters + oneDrawer}, {"TWO-K2K", twoAt, twoLetters + twoDrawer}},
	"K*n*B": {{"ONE-K1B", 0, oneLetters + oneDrawer}, {"TWO-K2B", twoAt, twoLetters + twoDrawer}},
}

const (
	twoAt      = 500 * length.Millimetre
	threeAt    = 1200 * length.Millimetre
	oneLetters = "fit = 0, W = 500, D = 580, H = 862, K = 110, t = 17.8, a = 19.2, gap = 3.2, top = 5, bottom = 2, "
	twoLetters = "fit = 1, W = 700, D = 580, H = 862, K = 110, t = 17.8, a = 19.2, gap = 3.2, "
	oneDrawer  = "y = 583.8, h = 150, " + drawerFigures
	twoDrawer  = "y = 537.8, h = 160, " + drawerFigures

	drawerFigures = "c = 13, lower = 48, up = 26, l = 500, e = 12.4, q = 6.4, g = 5.8, m = 11, p = 0.6"
)

// TestFrontFormulas compares the tables of section 6.12 of SPEC.md with the
// parts of a build.
func TestFrontFormulas(t *testing.T) {
	s, m := readSpec(t), mustCompile(t, source.Files{{Name: "fronts.hcl", Text: []byte(frontsBuild)}})
	fits := s.tablesOf(t, "fit", "from A", "to B")[0].rows
	for _, row := range s.tablesOf(t, "piece", "code", "u", "v", "z", "drawn from", "grain")[0].rows {
		if len(frontSpecimens[row[1]]) == 0 {
			t.Errorf("no specimen of %s", row[0])
		}
		for _, sp := range frontSpecimens[row[1]] {
			var fit int
			if _, err := fmt.Sscanf(sp.letters, "fit = %d, ", &fit); err != nil {
				t.Fatal(err)
			}
			for i, letter := range []string{"A", "B", "O", "P", "E"} {
				sp.letters += fmt.Sprintf(", %s = %s", letter, code(fits[fit][i+1]))
			}
			p := partLabelled(t, m, sp.label)
			compareBox(t, sp, p.Placement.Box, row[2:5])
			compareWords(t, p, row)
		}
	}
	for _, p := range m.Parts {
		if c := partCode(&p); frontSpecimens[c] == nil && len(s.rowsOf(t, c)) == 0 {
			t.Errorf("no table of SPEC.md gives the sizes of %s, the %s of %s", p.Label, p.Name, p.Owner)
		}
	}
	checkFaces(t, m)
}

// rowsOf finds the rows of the tables of parts with a code.
func (s *spec) rowsOf(t *testing.T, code string) [][]string {
	var out [][]string
	for _, tab := range s.tablesOf(t, "part", "code", "u", "v", "z", "drawn from") {
		for _, row := range tab.rows {
			if row[1] == code {
				out = append(out, row)
			}
		}
	}
	return out
}
