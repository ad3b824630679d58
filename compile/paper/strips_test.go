package paper

import (
	"testing"

	"barwright/compile/onsite"
	"barwright/compile/view/viewtest"
	"barwright/lang/length"
)

// A pole of 100 in with joints 9 in apart at most, and a lap of 10 mm: twelve pieces, of 8 1/3 in, which is
// 8 3/8 at the next eighth. One of 9 in and less than the lap is one piece.
func TestStripStep(t *testing.T) {
	for _, c := range []struct{ whole, want Length }{
		{100 * length.Inch, length.Inch * 67 / 8}, {9*length.Inch + 9*mm, 9 * length.Inch},
	} {
		if got := stripStep(c.whole, 9*length.Inch, length.Inches); got != c.want {
			t.Errorf("%d: %d, not %d", c.whole, got, c.want)
		}
	}
}

// TestAside has a mark run where the name of a joint would stand.
func TestAside(t *testing.T) {
	from := [3]Length{5 * mm, -5 * mm, -10 * mm}
	for at, want := range map[Length]Length{100 * mm: 5 * mm, 106 * mm: -5 * mm} {
		p := onsite.Pole{Marks: []onsite.PoleMark{{At: at}}}
		if got := aside(&p, 100*mm, from); got != want {
			t.Errorf("a mark at %d: %d", at, got)
		}
	}
}

// TestScaleOfFloor holds that a paper tells no scale but one of the trade.
func TestScaleOfFloor(t *testing.T) {
	m := viewtest.Fitted()
	told := map[string]bool{"–": true, "not to scale": true} // lookup only
	for _, n := range scalesOf(m.Build.Unit) {
		told[n.ratio()] = true
	}
	for _, p := range Site(m, Formats["letter"]) {
		for i, l := range p.Lettering {
			if l.Text == "Scale" && !told[p.Lettering[i+1].Text] {
				t.Errorf("%s: the scale is %q", p.Name, p.Lettering[i+1].Text)
			}
		}
	}
}
