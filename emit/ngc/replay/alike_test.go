package replay_test

import (
	"bytes"
	"fmt"
	"strings"
	"sync"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/ngc"
	"barwright/emit/ngc/replay"
)

// plates are programs that are alike but for their names, and for where their recess stands in a plate.
func plates(t *testing.T) (all []model.Program, texts [][]byte) {
	t.Helper()
	p, _ := program(t, square())
	for i := range 5 {
		one := *p
		one.Name = fmt.Sprintf("plate-%d", i+1)
		one.Stock.X = geom.Span{Lo: -model.Length(100+300*i) * mm, Hi: model.Length(2000-300*i) * mm}
		var b bytes.Buffer
		if err := ngc.Write(&b, model.Build{Name: "shed"}, &one); err != nil {
			t.Fatal(err)
		}
		all, texts = append(all, one), append(texts, b.Bytes())
	}
	return all, texts
}

// TestAlikeAreCutOnce: comments, names and wood that the bit does not come near make no difference.
func TestAlikeAreCutOnce(t *testing.T) {
	all, texts := plates(t)
	var build replay.Checker
	var busy sync.WaitGroup
	for i := range all {
		busy.Go(func() {
			if err := build.Check(texts[i], &all[i]); err != nil {
				t.Error(err)
			}
		})
	}
	busy.Wait()
	if n := build.Cuts(); n != 1 {
		t.Errorf("%d of %d programs are cut that are alike", n, len(all))
	}
}

// TestSecondOfTwoAlikeIsCut: where one is a little different, in its text or in what it must cut, it is cut for itself,
// whether what it is like was cut before, was refused, or comes later.
func TestSecondOfTwoAlikeIsCut(t *testing.T) {
	all, texts := plates(t)
	for name, c := range map[string]struct {
		old, new string
		change   func(p *model.Program)
		want     string
	}{
		"a gouge":             {"G1 X17.\n", "G1 X17.03\n", nil, "into wood that must stay"},
		"wood left":           {"G1 X17.\n", "G1 X16.9\n", nil, "wood is left"},
		"a level":             {"Z-6.", "Z-6.02", nil, "below the floor"},
		"the other way":       {"G1 X17.\n", "G0 X17.\n", nil, "below the clearance"},
		"a wider recess":      {"", "", func(p *model.Program) { p.Shape = geom.RectContour(geom.R(-21*mm, 10*mm, 20*mm, 50*mm)) }, "at once"},
		"an edge too close":   {"", "", func(p *model.Program) { p.Stock.X.Lo = -19 * mm }, "leaves the wood"},
		"a bit a little less": {"", "", func(p *model.Program) { p.Tool.Diameter -= mm / 5 }, "wood is left"},
	} {
		t.Run(name, func(t *testing.T) {
			p, bad := all[1], []byte(strings.ReplaceAll(string(texts[1]), c.old, c.new))
			if c.change == nil && bytes.Equal(bad, texts[1]) {
				t.Fatalf("the program has no %q", c.old)
			}
			if c.change != nil {
				bad = texts[1]
				c.change(&p)
			}
			var build replay.Checker
			for _, step := range []struct {
				text []byte
				p    *model.Program
				want string
			}{
				{texts[0], &all[0], ""}, {bad, &p, c.want}, {bad, &p, "program plate-2: "}, {texts[2], &all[2], ""}, {bad, &p, c.want},
			} {
				err := build.Check(step.text, step.p)
				if (step.want == "") != (err == nil) || err != nil && !strings.Contains(err.Error(), step.want) {
					t.Errorf("%s: got %v, want %q", step.p.Name, err, step.want)
				}
			}
		})
	}
}

// TestNearWoodIsToldApart: an edge of the wood that the bit comes near is none that is far off.
func TestNearWoodIsToldApart(t *testing.T) {
	all, texts := plates(t)
	all[1].Stock.X.Lo = -24 * mm
	var build replay.Checker
	for i := range all[:2] {
		if err := build.Check(texts[i], &all[i]); err != nil {
			t.Error(err)
		}
	}
	if n := build.Cuts(); n != 2 {
		t.Errorf("%d of 2 are cut", n)
	}
}
