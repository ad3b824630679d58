package compile_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"barwright/compile/model"
	"barwright/lang/length"
)

// construction is one way to build boxes: a row of each of the tables in 6.1 of
// SPEC.md, and what a description says for it.
type construction struct{ back, top, stands, inset int }

// constructions lists all of them, the backs as the rows stand.
func constructions() []construction {
	var out []construction
	for back, inset := range []int{19, 19, 10, 19} {
		for top := range 2 {
			for stands := range 3 {
				out = append(out, construction{back, top, stands, inset})
			}
		}
	}
	return out
}

const boxWidth = 700

// boxesText has a cabinet of each construction, "box1" and on, with a divider,
// a fixed shelf and a shelf on pins.
func boxesText() string {
	var out, run strings.Builder
	fmt.Fprintln(&out, "sheet \"shelf\" {\n  size = [2440, 1220]\n  thickness = 12\n}")
	for i, c := range constructions() {
		fixed := []string{"applied", "captured", "captured", "rabbeted"}[c.back]
		fmt.Fprintf(&out, `carcass "box%d" {
  height    = 100
  depth     = 100
  board     = sheet.ply
  back      = { board = sheet.thin, fixed = %q, inset = %d, groove = 7, play = 0.6 }
  top       = %q
  stands_on = %q
  base      = { rear = 30, apart = 300 }
  toe_kick  = { height = 110, setback = 60 }
  stretcher = 90
  shelf     = { board = sheet.shelf, setback = 7, play = 1.6 }
  pins      = { depth = 8 }
}
`, i+1, fixed, c.inset, []string{"stretchers", "full"}[c.top], []string{"sides", "base", "legs"}[c.stands])
		fmt.Fprintf(&run, "  cabinet \"box%d\" {\n    width = %d\n    carcass = carcass.box%d\n    dividers = [300]\n    fixed_shelves = [440]\n    shelves = 1\n  }\n", i+1, boxWidth, i+1)
	}
	return out.String() + "run \"boxes\" {\n  along = wall.more\n  carcass = carcass.applied\n" + run.String() + "}\n"
}

// letters are what formulas of a box are written in; h is the upper face of a
// shelf. That of the one on pins was worked out by hand: holes are at 110 + 17.8
// + 96 = 223.8 and every 32 on, the board is 12 thick, over the fixed shelf are
// clear
//
//	440 to 862 - 17.8 - 90 = 754.2, even 591.1, hole 575.8: 575.8 + 2.5 + 12
//	440 to 862 - 90 = 772, even 600, hole 607.8
//	440 to 862 - 17.8 = 844.2, even 636.1, hole 639.8
//
// the first under a full top and the second without, both with a stretcher
// before the back, the third without one.
func (c construction) letters(suffix string) string {
	h := []string{"622.3", "590.3"}[c.top]
	switch {
	case strings.HasPrefix(suffix, "FS"):
		h = "440"
	case c.back == 1:
		h = "654.3"
	}
	return fmt.Sprintf("W = %d, H = 862, D = 580, t = 17.8, b = 6.4, K = 110, S = 60, N = 90, i = %d, g = 7, p = 0.6, o = 30, q = 3, k = 12, x = 7, y = 1.6, h = %s",
		boxWidth, c.inset, h)
}

// boxesFor returns the parts of cabinets that a row of the tables of panels
// speaks of: those with its code in the constructions whose rows it names.
func (s *spec) boxesFor(t *testing.T, m *model.Model, part, suffix string) []specimen {
	t.Helper()
	backs, tops := s.tablesOf(t, "back", "r", "e", "f", "s")[0], s.tablesOf(t, "top", "m")[0]
	stands := s.tablesOf(t, "stands on", "a", "j")[0]
	var out []specimen
	for i, c := range constructions() {
		letters := c.letters(suffix)
		var words []string
		for _, choice := range []struct {
			tab table
			row int
		}{{backs, c.back}, {tops, c.top}, {stands, c.stands}} {
			row := choice.tab.rows[choice.row]
			words = append(words, strings.Split(row[0], ", ")...)
			for j, letter := range choice.tab.header[1:] {
				letters += fmt.Sprintf(", %s = %s", letter, code(row[j+1]))
			}
		}
		named := strings.Split(part, ", ")[1:]
		if slices.ContainsFunc(named, func(word string) bool { return !slices.Contains(words, word) }) {
			continue
		}
		for n := range 3 {
			label := strings.ReplaceAll(fmt.Sprintf("BOX%d-%s", i+1, suffix), "*n*", fmt.Sprint(n+1))
			here := slices.ContainsFunc(m.Parts, func(p model.Part) bool { return p.Label == label })
			if here && (n == 0 || strings.HasSuffix(suffix, "*n*")) {
				out = append(out, specimen{label, length.Length(i*boxWidth) * length.Millimetre, letters + space(n)})
			}
		}
	}
	return out
}

// space has the letters of the space of a number, and of the divider.
func space(n int) string {
	ends := []string{"A = t, B = 300 - t/2", "A = 300 + t/2, B = W - t", "A = 0, B = 0"}[n]
	return fmt.Sprintf(", n = %d, c = 300, %s", n+1, ends)
}
