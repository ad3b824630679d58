package ngc_test

import (
	"bytes"
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barwright/compile/model"
	"barwright/compile/router/routertest"
	"barwright/emit/ngc"
	"barwright/lang/length"
)

// Each setting of a dialect changes what it says and nothing else.
func TestWriteDialect(t *testing.T) {
	for name, c := range map[string]struct {
		change func(d *model.Dialect)
		want   string
	}{
		"default": {func(d *model.Dialect) {}, `(note)
G17 G21 G40 G49 G54 G80 G90 G94
T1
S18000 M3
G4 P3.
G0 Z15.
G0 X0. Y0.
(note)
G1 X1. F2400.
G3 X2. Y1. I0. J1.
M5
G0 X0. Y0.
M30
`},
		"percent lines, inches": {func(d *model.Dialect) { d.Percent, d.Inch, d.Decimals = true, true, 5 }, `%
(note)
G17 G20 G40 G49 G54 G80 G90 G94
T1
S18000 M3
G4 P3.
G0 Z0.59055
G0 X0. Y0.
(note)
G1 X0.03937 F94.488
G3 X0.07874 Y0.03937 I0. J0.03937
M5
G0 X0. Y0.
M30
%
`},
		"numbered, semicolons, own lines": {func(d *model.Dialect) {
			d.Numbers, d.Comments, d.Decimals = true, "semicolon", 3
			d.Start, d.End = []string{"M64 P1", "(MSG, fan)"}, []string{"; fan off", "M65 P1"}
		}, `; note
N10 G17 G21 G40 G49 G54 G80 G90 G94
N20 M64 P1
(MSG, fan)
N30 T1
N40 S18000 M3
N50 G4 P3.
N60 G0 Z15.
N70 G0 X0. Y0.
; note
N80 G1 X1. F2400.
N90 G3 X2. Y1. I0. J1.
; fan off
N100 M65 P1
N110 M5
N120 G0 X0. Y0.
N130 M30
`},
		"no comments, M6, no wait, chords": {func(d *model.Dialect) {
			d.Comments, d.Change, d.SpinUp = "none", true, 0
			d.Chords, d.Chord = true, mm/10
		}, `G17 G21 G40 G49 G54 G80 G90 G94
T1 M6
S18000 M3
G0 Z15.
G0 X0. Y0.
G1 X1. F2400.
G1 X1.7071 Y0.2929
G1 X2. Y1.
M5
G0 X0. Y0.
M30
`},
		"half a second": {func(d *model.Dialect) { d.Comments, d.SpinUp = "none", 0.5 }, `G17 G21 G40 G49 G54 G80 G90 G94
T1
S18000 M3
G4 P0.5
G0 Z15.
G0 X0. Y0.
G1 X1. F2400.
G3 X2. Y1. I0. J1.
M5
G0 X0. Y0.
M30
`},
	} {
		t.Run(name, func(t *testing.T) {
			p := at(model.Move{Kind: model.MoveLine, X: mm, Z: 15 * mm, Note: "note"},
				model.Move{Kind: model.MoveCCW, X: 2 * mm, Y: mm, CX: mm, CY: mm, Z: 15 * mm})
			c.change(&p.Tool.Dialect)
			if diff := cmp.Diff(c.want, shortHead(string(text(t, p)))); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

// shortHead puts one note for the comments before the units.
func shortHead(s string) string {
	comments := regexp.MustCompile(`(?m)^(\(|; ).*\n`)
	units := regexp.MustCompile(`(?m)^(N10 )?G17`).FindStringIndex(s)[0]
	first := comments.FindString(s[:units])
	if first != "" {
		first = map[byte]string{'(': "(note)\n", ';': "; note\n"}[first[0]]
	}
	return strings.TrimSuffix(s[:strings.IndexAny(s, "(;G")], "N10 ") + first + s[units:]
}

// Numbers end at what RS274/NGC reads, N99999; lines beyond go without.
func TestWriteManyNumberedLines(t *testing.T) {
	p := at()
	p.Tool.Dialect.Numbers = true
	for i := range length.Length(10_010) {
		p.Moves = append(p.Moves, model.Move{Kind: model.MoveLine, X: (i%2 + 1) * mm, Z: 15 * mm})
	}
	lines := strings.Split(string(text(t, p)), "\n")
	numbered := 0
	for _, line := range lines {
		if strings.HasPrefix(line, "N") {
			numbered++
			if !strings.HasPrefix(line, fmt.Sprintf("N%d ", 10*numbered)) {
				t.Fatalf("%q is the numbered line %d", line, numbered)
			}
		}
	}
	if last := len(lines) - 2; numbered != 9999 || lines[last] != "M30" {
		t.Errorf("%d numbered lines, the last line is %q", numbered, lines[last])
	}
}

// Straight pieces start, end and stay within the chord of their arc; the last
// decimal is taken into account.
func TestChordsStayByTheirArc(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(0.2, 100).Draw(t, "radius, mm")
		from := rapid.Float64Range(-4, 4).Draw(t, "start")
		sweep := rapid.Float64Range(0.01, 6.28).Draw(t, "sweep")
		chord := length.Length(rapid.IntRange(200, 50_000).Draw(t, "chord, nm"))
		kind := rapid.SampledFrom([]model.MoveKind{model.MoveCW, model.MoveCCW}).Draw(t, "kind")
		to := from + sweep
		if kind == model.MoveCW {
			to = from - sweep
		}
		on := func(a float64, kind model.MoveKind, z length.Length) model.Move {
			return model.Move{Kind: kind, Z: z, X: length.Length(r * math.Cos(a) * 1e6), Y: length.Length(r * math.Sin(a) * 1e6)}
		}
		p := at(on(from, model.MoveRapid, 15*mm), on(to, kind, 14*mm))
		p.Tool.Dialect.Chords, p.Tool.Dialect.Chord, p.Tool.Dialect.Comments = true, chord, "none"
		var b bytes.Buffer
		if err := ngc.Write(&b, shed, p); err != nil {
			t.Fatal(err)
		}
		var x, y, z float64
		turned, first := 0.0, true
		for _, line := range strings.Split(b.String(), "\n") {
			if strings.HasPrefix(line, "M5") {
				break
			}
			px, py, pz := x, y, z
			for _, w := range strings.Fields(line) {
				for letter, v := range map[byte]*float64{'X': &x, 'Y': &y, 'Z': &z} {
					if w[0] == letter {
						fmt.Sscanf(w[1:], "%f", v)
					}
				}
			}
			if !strings.HasPrefix(line, "G1 ") {
				continue
			}
			first = false
			slack := chord.MM() + 2e-6
			for _, share := range []float64{0, 0.25, 0.5, 0.75, 1} {
				if off := math.Abs(math.Hypot(px+share*(x-px), py+share*(y-py)) - r); off > slack {
					t.Fatalf("%s: %.6f mm off, %.6f are asked for", line, off, slack)
				}
			}
			turned += math.Remainder(math.Atan2(y, x)-math.Atan2(py, px), 2*math.Pi)
			if want := 15 - math.Abs(turned)/sweep; math.Abs(z-want) > 0.0003/r/sweep+0.002 || z > pz {
				t.Fatalf("%s: Z should be about %.4f", line, want)
			}
		}
		if first || math.Abs(turned-(to-from)) > 0.001/r+0.001 {
			t.Fatalf("turns by %.4f, not by %.4f", turned, to-from)
		}
	})
}

// What keeps people whole stands at the head of each program, in every style of
// comments, and on the sheet always, which says so where programs have none.
func TestSafetyStands(t *testing.T) {
	said := []string{"Dry run", "Hold the w", "lift and shift", "Eye and ear protection", "pindle and wait until it stands before reaching in", "manual comes first", "never leave it|Stay at the machine"}
	missing := func(s string) (out []string) {
		s = strings.Join(strings.Fields(regexp.MustCompile(`(?m)^(\(|; ?)|\)$`).ReplaceAllString(s, " ")), " ")
		for _, phrase := range said {
			if !regexp.MustCompile(phrase).MatchString(s) {
				out = append(out, phrase)
			}
		}
		return out
	}
	for _, style := range []string{"brackets", "semicolon", "none"} {
		r := routertest.Support()
		r.Tool.Dialect.Comments = style
		p, program := program(t, r)
		m := &model.Model{Programs: []model.Program{*p}}
		var sheet bytes.Buffer
		if err := ngc.WriteSetup(&sheet, m); err != nil {
			t.Fatal(err)
		}
		if lacks := missing(sheet.String()); len(lacks) > 0 {
			t.Errorf("%s: the sheet lacks %q", style, lacks)
		}
		lacks := missing(string(program))
		if style == "none" {
			if len(lacks) != len(said) || bytes.ContainsAny(program, "(;") {
				t.Errorf("a program without comments has some: lacks %q", lacks)
			}
		} else if len(lacks) > 0 {
			t.Errorf("%s: the program lacks %q", style, lacks)
		}
		if on := strings.Contains(sheet.String(), "Programs without comments carry none of these cautions"); on != (style == "none") {
			t.Errorf("%s: the sheet says that the programs have no comments: %v", style, on)
		}
	}
}
