package replay_test

import (
	"fmt"
	"strings"
	"testing"

	"barwright/compile/model"
	"barwright/emit/ngc/replay"
)

// plain is a program in the plainest dialect.
const plain = `(a comment)
G17 G21 G40 G49 G54 G80 G90 G94
T1
S18000 M3
G4 P3.
G0 Z15.
G0 X0. Y0.
G1 X2. F600.
G3 X1. Y1. I-1. J0.
M5
M30
`

// TestReadWantsTheDialect: what a dialect has must be there, and nothing that it has
// not; both are tried with the same text.
func TestReadWantsTheDialect(t *testing.T) {
	own := model.Dialect{Start: []string{"G64", "G61"}, End: []string{"M9"}}
	const start, end = "G90 G94\nG64\nG61\n", "M9\nM5"
	for _, c := range []struct {
		name     string
		dialect  model.Dialect
		old, new string
		want     string // "" where the text is right
	}{
		{"plain", model.Dialect{}, "", "", ""},
		{"numbers", model.Dialect{Numbers: true}, "", "", ""},
		{"no number may be wanted", model.Dialect{}, "G0 ", "N10 G0 ", "line 6: a line number"},
		{"no numbers", model.Dialect{Numbers: true}, "N", "", "is not N10"},
		{"a number taken away", model.Dialect{Numbers: true}, "N50 ", "", "is not N50"},
		{"the same number", model.Dialect{Numbers: true}, "N50 ", "N40 ", "is not N50"},
		{"number alone", model.Dialect{Numbers: true}, "N50 ", "N50\n", "is not N50"},
		{"number not first", model.Dialect{Numbers: true}, "N50 G0 ", "G0 N50 ", "is not N50"},
		{"semicolon", model.Dialect{Comments: "semicolon"}, "(a comment)", "; a (comment", ""},
		{"brackets instead", model.Dialect{Comments: "semicolon"}, "", "", "not written as in the dialect"},
		{"semicolon instead", model.Dialect{Comments: "brackets"}, "(a comment)", ";a comment", "not written as in the dialect"},
		{"comments left out", model.Dialect{Comments: "none"}, "(a comment)\n", "", ""},
		{"comments not left out", model.Dialect{Comments: "none"}, "", "", "leaves out"},
		{"M6", model.Dialect{Change: true}, "T1\n", "T1 M6\n", ""},
		{"M6 on a line of its own", model.Dialect{Change: true}, "T1\n", "T1\nM6\n", ""},
		{"M6 without a bit", model.Dialect{Change: true}, "T1\n", "M6\n", "M6 without a bit"},
		{"M6 while the spindle turns", model.Dialect{Change: true}, "G4", "M6\nG4", "after the spindle"},
		{"M6 after motion", model.Dialect{Change: true}, "M5", "M5\nM6", "after the spindle"},
		{"chords", model.Dialect{Chords: true}, "", "", "straight pieces"},
		{"waits long enough", model.Dialect{SpinUp: 3}, "", "", ""},
		{"waits not long enough", model.Dialect{SpinUp: 3.5}, "", "", "3.000 s after"},
		{"waits before the spindle starts", model.Dialect{SpinUp: 3}, "S18000 M3\nG4 P3.\n", "G4 P3.\nS18000 M3\n", "a wait elsewhere"},
		{"own lines", own, "", "", ""},
		{"own start missing", own, start, "G90 G94\n", "missing"},
		{"half of it missing", own, start, "G90 G94\nG64\n", "missing"},
		{"own end missing", own, end, "M5", "missing"},
		{"own end before a motion", own, "G1 X2.", "M9\nG1 X2.", "a motion after"},
		{"own lines unknown", model.Dialect{}, "G90 G94\n", start, "G64 is not used here"},
		{"three quarters of a turn", model.Dialect{}, "G3", "G2", "more than half a turn"},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := plain
			if len(c.dialect.Start) > 0 {
				text = strings.NewReplacer("G90 G94\n", start, "M5", end).Replace(text)
			}
			if c.dialect.Numbers {
				text = numbered(text)
			}
			if c.old != "" && !strings.Contains(text, c.old) {
				t.Fatalf("no %q in the text", c.old)
			}
			if c.old != "" {
				text = strings.ReplaceAll(text, c.old, c.new)
			}
			_, err := replay.Read([]byte(text), c.dialect)
			if (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
				t.Errorf("got %v, want %q\n%s", err, c.want, text)
			}
		})
	}
}

// numbered puts N10, N20 and so on before the words of a text.
func numbered(text string) string {
	lines := strings.SplitAfter(text, "\n")
	for i := 1; i+1 < len(lines); i++ {
		lines[i] = fmt.Sprintf("N%d0 %s", i, lines[i])
	}
	return strings.Join(lines, "")
}

// TestReadHelix: an arc may sink, evenly along its way.
func TestReadHelix(t *testing.T) {
	tape, err := replay.Read([]byte(strings.Replace(plain, "Y1. I-1.", "Y1. Z14. I-1.", 1)), model.Dialect{})
	if err != nil {
		t.Fatal(err)
	}
	if m := tape.Motions[1]; !m.Arc || m.From.Z != 15 || m.To.Z != 14 {
		t.Errorf("got %+v", m)
	}
}
