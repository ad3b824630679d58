package ngc_test

import (
	"bytes"
	"flag"
	"fmt"
	"testing"

	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/compile/router/routertest"
	"barwright/emit/ngc/ngctest"
	"barwright/emit/ngc/replay"
)

var recesses = flag.Int("recesses", 10, "how many drawn recesses the outside checker judges")

// TestOutside has drawn recesses planned and written, and the text judged from
// outside. The draw is the same every time.
func TestOutside(t *testing.T) {
	p, text := program(t, routertest.Support())
	ngctest.Inspect(t, text, p)
	for i := range *recesses {
		t.Run(fmt.Sprint(i), func(t *testing.T) {
			r := routertest.Requests().Example(i)
			p, text := program(t, r)
			ngctest.Inspect(t, text, p)
			if t.Failed() {
				t.Logf("%+v\n%s", r, text)
			}
		})
	}
}

// TestOutsideStepdown: without a finishing pass no bite is deeper than the
// step-down; with one, roughing is the same and the walls take the full depth.
// The checker cuts ramps in steps of 0.02 mm.
func TestOutsideStepdown(t *testing.T) {
	for _, open := range []int{0, 1} {
		r := routertest.Support()
		r.Tool.Finish = 0
		if open == 0 {
			r.Open, r.Shape = nil, r.Shape.Grow(-6*mm)
		}
		p, text := program(t, r)
		if bite, most := ngctest.MaxBite(t, text, p), r.Tool.Stepdown.MM()+0.021; bite > most || bite < most/2 {
			t.Errorf("open sides %d: deepest bite %.3f mm, step-down %.3f mm", open, bite, r.Tool.Stepdown.MM())
		}
	}
}

// TestOutsideSeesAWrongPath: the checker, called as above, refuses a path for
// another recess. (It would pass everything if it were called wrongly.)
func TestOutsideSeesAWrongPath(t *testing.T) {
	p, text := program(t, routertest.Support())
	r := routertest.Support()
	r.Shape.X = r.Shape.X.Shift(mm / 2)
	_, shifted := program(t, r)
	r = routertest.Support()
	r.Open, r.Shape.Y.Lo = nil, mm
	_, closed := program(t, r)
	codes := ngctest.Violations(t, [][]byte{text, shifted, closed}, p)
	if codes[0] != "" || codes[1] == "" || codes[2] == "" {
		t.Errorf("violations %q, want none, some and some", codes)
	}
}

func program(t testing.TB, r router.Request) (*model.Program, []byte) {
	t.Helper()
	p, refusal := router.Plan(r)
	if refusal != nil {
		t.Fatalf("refused: %+v", refusal)
	}
	return &p, text(t, &p)
}

// TestOutsideDialects has drawn recesses written in several dialects, judged by the
// reader of this project, and by a general interpreter.
func TestOutsideDialects(t *testing.T) {
	for i, change := range []func(d *model.Dialect){
		func(d *model.Dialect) {},
		func(d *model.Dialect) { d.Chords = true },
		func(d *model.Dialect) { d.Numbers, d.Comments, d.Change = true, "semicolon", true },
		func(d *model.Dialect) {
			d.Comments, d.Percent, d.SpinUp = "none", true, 0
			d.Start, d.End = []string{"M64 P1", "G61"}, []string{"(fan off)", "M65 P1"}
		},
		func(d *model.Dialect) { d.Inch, d.Decimals, d.Chords, d.Numbers = true, 5, true, true },
	} {
		t.Run(fmt.Sprint(i), func(t *testing.T) {
			for k := range 3 {
				r := routertest.Requests().Example(k)
				change(&r.Tool.Dialect)
				p, text := program(t, r)
				if err := replay.Check(text, p); err != nil {
					t.Errorf("%v\n%s", err, text)
				}
				ngctest.Interpret(t, text, p)
			}
		})
	}
}

// TestOutsideInterpreterSeesAWrongPath: the interpreter, called as above, tells a
// recess from one that is half a millimetre wider, and inches from millimetres.
func TestOutsideInterpreterSeesAWrongPath(t *testing.T) {
	p, text := program(t, routertest.Support())
	r := routertest.Support()
	r.Shape.X.Hi += mm / 2
	_, wider := program(t, r)
	inches := bytes.Replace(text, []byte("G21"), []byte("G20"), 1)
	if same := ngctest.Differences(t, text, p); len(same) > 0 {
		t.Errorf("its own text: %q", same)
	}
	for name, text := range map[string][]byte{"wider": wider, "inches": inches} {
		if len(ngctest.Differences(t, text, p)) == 0 {
			t.Errorf("%s: no difference is seen", name)
		}
	}
}
