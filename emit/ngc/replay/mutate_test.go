package replay_test

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/compile/router/routertest"
	"barwright/emit/ngc/ngctest"
	"barwright/emit/ngc/replay"
	"barwright/lang/length"
)

const mm = length.Millimetre

// square is a small closed recess whose text is easy to damage: two levels of
// 3 mm, walls at X ±20 and Y 10 and 50.
func square() router.Request {
	r := routertest.Support()
	r.Shape, r.Open = geom.R(-20*mm, 10*mm, 20*mm, 50*mm), nil
	r.Stock = geom.R(-100*mm, 0, 100*mm, 90*mm)
	r.Depth = 6 * mm
	r.Tool.Diameter, r.Tool.Stepover, r.Tool.Stepdown = 6*mm, 3*mm, 3*mm
	return r
}

func TestCheckCatchesDamage(t *testing.T) {
	p, text := program(t, square())
	var build replay.Checker // has cut the sound program before
	if err := build.Check(text, p); err != nil {
		t.Fatalf("sound program: %v", err)
	}
	for _, c := range []struct{ name, old, new, want string }{
		{"wall pass out by 0.5 mm", "G1 X17.\n", "G1 X17.5\n", "into wood that must stay"},
		{"wall pass out by 0.03 mm", "G1 X17.\n", "G1 X17.03\n", "into wood that must stay"},
		{"wall pass in by 0.5 mm", "G1 X17.\n", "G1 X16.5\n", "left inside"},
		{"no finishing", section(text, "(finish the walls)", "G0 Z15."), "", "left inside"},
		{"no first level", section(text, "G1 X1.5892 Z0.325", "(level 2 of 2)"), "G1 Z0. F800.\n", "too steep"},
		{"no second level", " Z-6.", "", "feed 800.0 mm/min instead of 2400.0"},
		{"too deep", "Z-6.", "Z-6.1", "below the floor"},
		{"not deep enough", "Z-6.", "Z-5.9", "none of the levels"},
		{"straight plunge", section(text, "G1 X1.4302 Z-3.1667", "G1 Y28.25 F2400."), "G1 Z-6. F800.\n", "too steep"},
		{"no spindle", "S18000 M3\n", "S18000\n", "words that do nothing"},
		{"spindle stopped", "(level 2 of 2)\n", "M5\n", "spindle stands"},
		{"another speed", "S18000", "S1800", "spindle speed"},
		{"another speed in between", "(level 2 of 2)\n", "M5\nS100 M3\nG4 P3.\n", "started twice"},
		{"another speed, and the right one at the end", "M5\n", "M5\nS18000 M3\nM5\n", "started twice"},
		{"two bits", "T1\n", "T2\nT1\n", "named twice"},
		{"one more wait", "(level 2 of 2)\n", "G4 P3.\n", "a wait elsewhere"},
		{"no way home", "G0 X0. Y0.\nM30", "M30", "end at X0 Y0"},
		{"no cautions", cautions(text), "", "no cautions"},
		{"comments of another dialect", "(", ";", "not written as in the dialect"},
		{"too many decimals", "G1 X17.\n", "G1 X17.0000000\n", "more than 4 decimals"},
		{"numbered", "M5\n", "N10 M5\n", "a line number"},
		{"another bit", "T1\n", "T2\n", "bit T2"},
		{"inches", "G21", "G20", "units"},
		{"no percent", "%\n", "", "percent"},
		{"rapid sideways in the wood", "(level 2 of 2)\nG1", "G0", "below the clearance"},
		{"rapid down into the wood", "G0 Z2.\n", "G0 Z-2.\n", "rapid move down"},
		{"rapid below the clearance", "G0 Z15.\nG0 X", "G0 Z9.\nG0 X", "begin and end"},
		{"ends in the wood", "G0 Z15.\nM5\nG0 X0. Y0.\n", "M5\n", "begin and end"},
		{"far away", "G1 X17.\n", "G1 X170.\n", "far from what it cuts"},
		{"another recess", "G1 X17.\n", "G1 X17.\nG1 Z2.\nG1 Y80.\nG1 X18. Z0.\nG1 X-18. Z-1.\nG1 Z2.\nG1 Y16.\nG1 X16. Z2.\n", "far from what it cuts"},
		{"beside the recess", "G0 Z15.\nM5", "G0 Z15.\nG0 X0. Y56.\nG1 Z-1. F800.\nG0 Z15.\nM5", "in wood that must stay"},
		{"too fast", "F2400.", "F3400.", "feed 3400.0 mm/min instead of 2400.0"},
		{"too fast a ramp", "F800.", "F2000.", "feed 2000.0 mm/min instead of 800.0"},
		{"crawling", "F2400.", "F1.", "feed 1.0 mm/min instead of 2400.0"},
		{"ramps crawling", "F800.", "F1.", "feed 1.0 mm/min instead of 800.0"},
		{"no feed", " F800.", "", "without a feed"},
	} {
		t.Run(c.name, func(t *testing.T) {
			bad := strings.ReplaceAll(string(text), c.old, c.new)
			if bad == string(text) {
				t.Fatalf("the program has no %q:\n%s", c.old, text)
			}
			err := build.Check([]byte(bad), p)
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("got %v, want ... %s ...", err, c.want)
			}
		})
	}
}

// cautions are the comments at the head of a program.
func cautions(text []byte) string { return section(text, "(", "G17") }

// section returns the text from one mark up to another one.
func section(text []byte, from, to string) string {
	s := string(text)
	s = s[strings.Index(s, from):]
	return s[:strings.Index(s, to)]
}

// TestCheckWantsAnotherRecess: a sound program is refused for a recess that is
// a little larger, smaller, deeper or shallower, or elsewhere.
func TestCheckWantsAnotherRecess(t *testing.T) {
	p, text := program(t, square())
	var build replay.Checker
	if err := build.Check(text, p); err != nil {
		t.Fatal(err)
	}
	for _, change := range []func(p *model.Program){
		func(p *model.Program) { p.Depth += mm / 10 },
		func(p *model.Program) { p.Depth -= mm / 10 },
		func(p *model.Program) { p.Shape = p.Shape.Shifted(geom.Point{X: mm / 10}) },
		func(p *model.Program) { p.Shape = geom.RectContour(geom.R(-20*mm, 10*mm, 20*mm, 50*mm)) },
		func(p *model.Program) { p.Tool.Diameter += mm / 10 },
		func(p *model.Program) { p.Tool.Diameter -= mm / 5 },
		func(p *model.Program) { p.Stock.X.Lo = 0 },
	} {
		other := *p
		change(&other)
		if build.Check(text, &other) == nil {
			t.Errorf("passes as well for %+v", other.Shape)
		}
	}
}

// TestCheckCatchesDeepBites: sound programs take more at once than a smaller
// step-down allows, along the walls too where no finishing pass may.
func TestCheckCatchesDeepBites(t *testing.T) {
	for _, finish := range []length.Length{0, mm / 4} {
		r := square()
		r.Tool.Finish = finish
		p, text := program(t, r)
		p.Tool.Stepdown -= mm / 5
		if err := replay.Check(text, p); err == nil || !strings.Contains(err.Error(), "at once") {
			t.Errorf("finish %d: got %v", finish, err)
		}
	}
}

// TestCheckIsAsStrictAsTheOutsideChecker damages one motion at a time, and has
// the result judged by the outside checker: what it refuses, Check refuses.
func TestCheckIsAsStrictAsTheOutsideChecker(t *testing.T) {
	open := routertest.Support()
	open.Tool = routertest.Tool(true)
	for name, r := range map[string]router.Request{"closed, mm": square(), "open, inches": open} {
		t.Run(name, func(t *testing.T) {
			p, text := program(t, r)
			unit := 1.0
			if r.Tool.Dialect.Inch {
				unit = 25.4
			}
			texts, names := damaged(text, unit)
			refused := 0
			for i, violation := range ngctest.Violations(t, texts, p) {
				if violation == "" {
					continue
				}
				refused++
				if replay.Check(texts[i], p) == nil {
					t.Errorf("%s: passes; the checker says %s", names[i], violation)
				}
			}
			if t.Logf("%d of %d damaged programs are refused", refused, len(texts)); refused < len(texts)/5 {
				t.Error("too few of them: the test proves little")
			}
		})
	}
}

// damaged returns copies of a text with one motion changed each, and what was
// changed.
func damaged(text []byte, unit float64) (texts [][]byte, names []string) {
	lines := strings.SplitAfter(string(text), "\n")
	for i, line := range lines {
		for k, d := range damages {
			if !strings.HasPrefix(line, "G") || (i*len(damages)+k)%*stride != 0 {
				continue
			}
			bad := strings.Replace(line, d.old, d.new, 1)
			if d.add != 0 {
				bad = addTo(line, d.old, d.add/unit)
			}
			if d.old == "" {
				bad = ""
			}
			if bad != line {
				texts = append(texts, []byte(strings.Join(lines[:i], "")+bad+strings.Join(lines[i+1:], "")))
				names = append(names, fmt.Sprintf("line %d: %q instead of %q", i+1, bad, line))
			}
		}
	}
	return texts, names
}

// damages add millimetres to the number behind a word's letter, or replace the
// word, or leave out the line.
var damages = [...]struct {
	old, new string
	add      float64
}{
	{},
	{old: " X", add: 0.5},
	{old: " X", add: -0.5},
	{old: " Y", add: 0.5},
	{old: " Z", add: -0.2},
	{old: "G1 ", new: "G0 "},
	{old: "G3 ", new: "G2 "},
}

func addTo(line, letter string, add float64) string {
	before, rest, found := strings.Cut(line, letter)
	if !found {
		return line
	}
	end := strings.IndexAny(rest, " \n")
	v, err := strconv.ParseFloat(rest[:end], 64)
	if err != nil {
		panic(err)
	}
	return before + letter + decimal(v+add) + rest[end:]
}

func FuzzRead(f *testing.F) {
	p, text := program(f, square())
	f.Add(text)
	f.Add([]byte("%\nG17 G21 G40 G49 G54 G80 G90 G94\nS1 M3\nG0 Z5.\nG0 X0. Y0.\nG2 X1. Y1. I1. J0. F1.\nM5\nM30\n%\n"))
	r := routertest.Support()
	r.Tool = routertest.Tool(true)
	_, inches := program(f, r)
	f.Add(inches)
	f.Fuzz(func(t *testing.T, text []byte) {
		tape, err := replay.Read(text, p.Tool.Dialect)
		if err != nil {
			if tape != nil {
				t.Error("a tape with an error")
			}
			return
		}
		at := tape.Motions
		for i, m := range at {
			if i > 0 && at[i-1].To != m.From {
				t.Errorf("line %d does not start where the move before ends", m.Line)
			}
			if m.Line < 1 || m.Line > bytes.Count(text, []byte("\n")) {
				t.Errorf("line %d is not in the text", m.Line)
			}
			if !m.Rapid && !(m.Feed > 0) || m.Arc && m.Sweep == 0 {
				t.Errorf("line %d: feed %v, sweep %v", m.Line, m.Feed, m.Sweep)
			}
		}
		_ = replay.Check(text, p)
	})
}
