package replay_test

import (
	"flag"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/compile/router/routertest"
	"barwright/emit/ngc/ngctest"
	"barwright/emit/ngc/replay"
)

var judged = flag.Int("judged", 20, "how many drawn programs the outside checker judges")

// drawn returns a recess that is drawn, the same for a number, with one dialect of
// many, a floor that is finished in some, and no more travel than it needs.
func drawn(i int) router.Request {
	r := routertest.Requests().Example(i)
	d := &r.Tool.Dialect
	d.Numbers, d.Change, d.SpinUp = i%2 == 0, i%3 == 0, float64(i%4)
	d.Comments = []string{"brackets", "semicolon", "none"}[i%3]
	d.Chords, d.Chord = i%5 == 0, mm/100
	if i%4 == 1 {
		d.Start, d.End = []string{"G64", "G40"}, []string{"M9"}
	}
	if i%7 == 0 {
		r.Tool.Floor = min(r.Depth, r.Tool.Stepdown) / 4
	}
	return r
}

// TestOutsideAgrees has programs in every dialect judged by the outside checker and
// by Check: both pass them all, and agree on lengths, times and volumes.
func TestOutsideAgrees(t *testing.T) {
	var cases []ngctest.Case
	for i := range *judged {
		p, text := program(t, drawn(i))
		plan, z := p.Reach()
		plan = plan.Union(geom.Rect{}).Grow(mm / 100)
		p.Tool.Travel = model.Travel{X: plan.X.Size(), Y: plan.Y.Size(), Z: z.Size() + mm/100}
		if err := replay.Check(text, p); err != nil {
			t.Errorf("program %d: %v\n%s", i, err, text)
		}
		cases = append(cases, ngctest.Case{Program: p, Text: text})
	}
	ngctest.InspectAll(t, cases)
}
