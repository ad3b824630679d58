package ngc_test

import (
	"bytes"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/compile/router/routertest"
	"barwright/emit/ngc"
	"barwright/lang/length"
)

// sheetOf returns the setup sheet of programs, one entry a program, in one line each.
func sheetOf(t *testing.T, programs ...*model.Program) []string {
	t.Helper()
	m := &model.Model{Build: model.Build{Unit: length.Millimetres, Marks: mm}}
	for _, p := range programs {
		m.Programs = append(m.Programs, *p)
	}
	var b bytes.Buffer
	if err := ngc.WriteSetup(&b, m); err != nil {
		t.Fatal(err)
	}
	return strings.Split(strings.Join(strings.Fields(b.String()), " "), "Program ")[1:]
}

// says fails the test where a text lacks one of some words, or has one that it must not have.
func says(t *testing.T, text string, words []string, not ...string) {
	t.Helper()
	for _, w := range words {
		if !strings.Contains(text, w) {
			t.Errorf("no %q in: %s", w, text)
		}
	}
	for _, w := range not {
		if strings.Contains(text, w) {
			t.Errorf("%q in: %s", w, text)
		}
	}
}

// Three recesses of a part 1500 mm long: two are reached from the stop at its end, the
// third from one in the first recess, at 300.
func TestSetupStops(t *testing.T) {
	stop := func(left, zero length.Length, setup int, on length.Length, words string) *model.Program {
		r := routertest.Support()
		r.Tool.Datum, r.Zero, r.Mark, r.Setup, r.MovedOn = "end", words, zero*mm, setup, on*mm
		r.Shape = geom.R((left-zero)*mm, 0, (left-zero+50)*mm, 70*mm)
		r.Stock = geom.R(-zero*mm, 0, (1500-zero)*mm, 89*mm)
		p, _ := program(t, r)
		return p
	}
	a := stop(300, 0, 1, 0, "X0 at a stop at the left end of the part")
	b := stop(600, 0, 1, 0, "X0 at a stop at the left end of the part")
	c := stop(900, 300, 2, 300, "X0 at a stop against the left wall of the recess for support 1")
	d := stop(1300, 1300, 3, 1000, "X0 on a mark at the left wall of the recess")
	sheets := sheetOf(t, a, b, c, d)
	stands := "stop lower than 15 mm above the wood"
	says(t, sheets[0], []string{"setup 1 of 3 for K1-TP: clamp a stop to the table and push the part's left end against it", stands}, "mark of X0")
	says(t, sheets[1], []string{"setup 1 of 3 for K1-TP: as for the program before: the part stays as it lies, and so do X0 and Y0", stands}, "mark of X0", "clamp the part,")
	says(t, sheets[2], []string{"setup 2 of 3 for K1-TP: move the part on to the left, by 300 mm.", "that wall is 300 mm from the part's left end", stands}, "mark of X0")
	says(t, sheets[3], []string{"setup 3 of 3 for K1-TP: the mark is 1000 mm further to the right", "the mark of X0 is 1300 mm from the left end"}, stands)

	says(t, comments(t, a), []string{"left end of the part; Z0 is the top"}, "mark of X0", "Setup:")
	says(t, comments(t, c), []string{"that wall is 300 from the part's left end", "Setup: 2 of this part; X0 is 300 further to the right on it than in setup 1"})

	// A part of its own begins with a setup of its own, and a test piece has none.
	other, test := *b, *a
	other.Part, test.Test = "another", true
	sheets = sheetOf(t, &test, a, &other)
	says(t, sheets[0], []string{stands}, "setup 1 of")
	says(t, sheets[1], []string{"clamp a stop to the table"})
	says(t, sheets[2], []string{"clamp a stop to the table"})
}

// comments returns those of a program in one line.
func comments(t *testing.T, p *model.Program) string {
	t.Helper()
	return strings.Join(strings.Fields(strings.NewReplacer("(", "", ")", "").Replace(string(text(t, p)))), " ")
}

// The sheet says what the bit does in this program, not what was asked for.
func TestSetupCutting(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*router.Request)
		words  []string
		not    string
	}{
		"rings in an open recess": {func(*router.Request) {},
			[]string{"cutting climb: counter-clockwise", "coming down in the air", "corners the recess keeps a radius"}, "to and fro"},
		"passes": {func(r *router.Request) { r.Tool.Passes = "parallel" },
			[]string{"cutting to and fro: of two passes one is climb milling, the other has the uncut wood on its left", "last pass along the walls is climb"},
			"cutting climb"},
		"passes without room": {func(r *router.Request) {
			r.Tool.Passes, r.Open, r.Corner = "parallel", nil, 0
			r.Shape = geom.R(-20*mm, 20*mm, 20*mm, 28*mm)
		}, []string{"cutting climb"}, "cutting to and fro"},
		"a ramp": {func(r *router.Request) { r.Open, r.Shape.Y.Lo = nil, 10*mm },
			[]string{"coming down to and fro in the recess, at most 3 degrees steep"}, "round a circle"},
		"a helix": {func(r *router.Request) { r.Open, r.Shape.Y.Lo, r.Tool.Entry = nil, 10*mm, "helix" },
			[]string{"coming down round a circle in the recess, at most 3 degrees steep"}, "to and fro"},
		"the floor": {func(r *router.Request) { r.Tool.Floor = 3 * mm / 10 },
			[]string{"9.525 mm below the top; the last one takes 0.3 mm off the floor; then 0.25 mm off the walls"}, "to and fro"},
		"reliefs": {func(r *router.Request) { r.Tool.Relief, r.Corner = "diagonal", 0 },
			[]string{"corners relieved: the program makes 2 bores of 6.35 mm, as deep as the recess, one through each closed corner, on the diagonal, with centres at X ",
				"square steel goes in"}, "no inside corners"},
		"reliefs along the side": {func(r *router.Request) { r.Tool.Relief, r.Corner = "long_side", 0 },
			[]string{"along the longer side into the end"}, "on the diagonal"},
	} {
		t.Run(name, func(t *testing.T) {
			r := routertest.Support()
			c.change(&r)
			p, _ := program(t, r)
			says(t, sheetOf(t, p)[0], c.words, c.not)
		})
	}
}

// What the programs of a router share is said once; what differs, and where zero is,
// with each. A router with one program has no list of its own.
func TestSetupSharesRows(t *testing.T) {
	a, _ := program(t, routertest.Support())
	r := routertest.Support()
	r.Depth += mm
	b, _ := program(t, r)
	c, _ := program(t, r)
	a.Tool.Router, b.Tool.Router, c.Tool.Router = "bench", "bench", "hall"
	m := &model.Model{Programs: []model.Program{*a, *b, *c}}
	var sheet bytes.Buffer
	if err := ngc.WriteSetup(&sheet, m); err != nil {
		t.Fatal(err)
	}
	before, _, _ := strings.Cut(sheet.String(), "Program 1")
	says(t, before, []string{"Router bench: what all", "spindle 18000", "diameter 6.35 mm", "No coolant"}, "Router hall", "  zero", "  stick-out", "  levels")
	sheets := sheetOf(t, a, b, c)
	says(t, sheets[0], []string{"router bench: bit, speeds", "zero X0 ", "stick-out more than 9.525 mm", "time about"}, "spindle 18000", "No coolant")
	says(t, sheets[1], []string{"router bench: bit, speeds", "zero X0 ", "stick-out more than 10.525 mm", "time about"}, "spindle 18000", "No coolant")
	says(t, sheets[2], []string{"zero X0 ", "stick-out more than 10.525 mm", "spindle 18000", "diameter 6.35 mm", "No coolant"}, "stand above")
}
