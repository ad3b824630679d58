package reuse_test

import (
	"fmt"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/reuse"
)

// slotted has a slot for a pipe, open to the bottom, its end half a circle.
func slotted(x, y, r reuse.Length) *model.Part {
	p := panel(24*inch, 34*inch)
	p.Outline = geom.Contour{
		{Point: at(0, 0)}, {Point: at(x-r, 0)}, {Point: at(x-r, y), Bulge: -1}, {Point: at(x+r, y)}, {Point: at(x+r, 0)},
		{Point: at(24*inch, 0)}, {Point: at(24*inch, 34*inch)}, {Point: at(0, 34*inch)},
	}
	p.Openings = []model.Opening{{Name: "stub drain", Notch: true, Shape: geom.Contour{
		{Point: at(x-r, 0)}, {Point: at(x+r, 0)}, {Point: at(x+r, y), Bulge: 1}, {Point: at(x-r, y)},
	}}}
	return p
}

// cornered has a notch at its lower left whose inner corner is round.
func cornered(x, y, r reuse.Length) *model.Part {
	p := panel(24*inch, 34*inch)
	p.Outline = geom.Contour{
		{Point: at(x, 0)}, {Point: at(24*inch, 0)}, {Point: at(24*inch, 34*inch)}, {Point: at(0, 34*inch)}, {Point: at(0, y)},
		{Point: at(x-r, y), Bulge: -geom.QuarterBulge}, {Point: at(x, y-r)},
	}
	return p
}

// TestRoundNotches lays parts with round notches every way, and compares them with larger and smaller ones.
func TestRoundNotches(t *testing.T) {
	for i, p := range []*model.Part{slotted(5*inch, 6*inch, inch), cornered(3*inch, 4*inch, inch/2)} {
		p.Good = model.GoodNone
		for lay := range 8 {
			q := laidPart(p, model.Lay{Over: lay >= 4, Quarters: lay % 4})
			pr := pair(p, q, 0)
			if fit, ok := pr.Serve(p, q); !ok || fit.Kind != model.Unchanged || pr.Key(p) != pr.Key(q) {
				t.Errorf("%d, lay %d: %+v %v", i, lay, fit, ok)
			}
		}
	}
	for _, c := range []struct {
		old, new *model.Part
		want     string
	}{
		{panel(24*inch, 34*inch), slotted(5*inch, 6*inch, inch), "rework: cut the notch for stub drain"},
		{slotted(5*inch, 6*inch, inch), slotted(5*inch, 7*inch, inch), "rework: enlarge the notch for stub drain by 1 in upwards"},
		{slotted(5*inch, 6*inch, inch), panel(24*inch, 34*inch-8*inch), "rework: trim 8 in off the bottom edge (to 26 in)"},
		{slotted(5*inch, 7*inch, inch), slotted(5*inch, 6*inch, inch), "patch"},
		{cornered(3*inch, 4*inch, inch/2), cornered(3*inch, 4*inch, inch/4), "rework: cut the corners of the notch at the lower left corner to a radius of 1/4 in"},
		{cornered(3*inch, 4*inch, inch/4), cornered(3*inch, 4*inch, inch/2), "patch"},
		{cornered(3*inch, 4*inch, inch/2), cornered(7*inch/2, 4*inch, inch/2), "rework: enlarge the notch at the lower left corner by 1/2 in to the right"},
	} {
		got := ""
		if fit, ok := pair(c.old, c.new, 0).Serve(c.old, c.new); ok {
			got = fit.Kind.String()
			for i, s := range fit.Steps {
				got += [...]string{": ", "; "}[min(i, 1)] + s.Text
			}
		}
		if got != c.want && (c.want != "patch" || !strings.HasPrefix(got, "patch: fill ")) {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

// TestAslant: an outline of no known shape serves only for its own like.
func TestAslant(t *testing.T) {
	aslant := func(x reuse.Length) *model.Part {
		return panel(24*inch, 34*inch, faced(model.GoodNone), outlined(geom.Contour{{Point: at(0, 0)}, {Point: at(24*inch, 0)}, {Point: at(x, 34*inch)}, {Point: at(0, 34*inch)}}))
	}
	p := aslant(20 * inch)
	for lay := range 8 {
		q := laidPart(p, model.Lay{Over: lay >= 4, Quarters: lay % 4})
		if fit, ok := pair(p, q, 0).Serve(p, q); !ok || fit.Kind != model.Unchanged {
			t.Errorf("lay %d: %v %v", lay, fit, ok)
		} else if d := fmt.Sprint(fit.Lay.Contour(p.Outline).Bounds()); d != fmt.Sprint(q.Outline.Bounds()) {
			t.Errorf("lay %d: it would lie at %s", lay, d)
		}
	}
	if fit, ok := pair(p, p, 0).Serve(p, aslant(19*inch)); ok {
		t.Errorf("%+v", fit)
	}
}
