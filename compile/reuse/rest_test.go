package reuse_test

import (
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/reuse"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestRest(t *testing.T) {
	const kerf = inch / 8
	old, new := panel(24*inch, 34*inch), panel(24*inch, 20*inch)
	p := pair(old, new, 0)
	fit, ok := p.Serve(old, new)
	if !ok {
		t.Fatal("the part is smaller")
	}
	rest := p.Rest(old, new, fit.Lay, kerf)
	want := []geom.Rect{geom.R(0, 20*inch+kerf, 24*inch, 34*inch)}
	if d := cmp.Diff(want, rest); d != "" {
		t.Fatal(d)
	}
	small := panel(10*inch, 12*inch)
	left, ok := p.Holds(rest[0], old, small, kerf)
	if !ok || len(left) != 1 || left[0] != geom.R(10*inch+kerf, 20*inch+kerf, 24*inch, 34*inch) {
		t.Errorf("%v %v", left, ok)
	}
	if _, ok := p.Holds(rest[0], old, panel(10*inch, 14*inch), kerf); ok {
		t.Error("14 in out of 13 7/8 in, across the grain or not")
	}
	if got := p.Rest(panel(24*inch, 34*inch, opened("vent", 0, 0, 24*inch, 30*inch)), nil, model.Lay{}, kerf); len(got) != 1 || got[0] != geom.R(0, 30*inch, 24*inch, 34*inch) {
		t.Errorf("beside an opening: %v", got)
	}
}

// TestRestOfAStick: a stick is short or long, never too narrow.
func TestRestOfAStick(t *testing.T) {
	const kerf = inch / 8
	old, new := lumber(3*inch/2, 60*inch, 7*inch/2), lumber(38*inch, 7*inch/2, 3*inch/2)
	p := pair(old, new, 0)
	fit, ok := p.Serve(old, new)
	if !ok {
		t.Fatal("the stick is long enough")
	}
	rest := p.Rest(old, new, fit.Lay, kerf)
	if want := []geom.Rect{geom.R(0, 38*inch+kerf, 3*inch/2, 60*inch)}; cmp.Diff(want, rest) != "" && cmp.Diff([]geom.Rect{geom.R(0, 0, 3*inch/2, 22*inch-kerf)}, rest) != "" {
		t.Fatal(rest)
	}
	for _, c := range []struct {
		long reuse.Length
		want bool
	}{{21 * inch, true}, {22 * inch, false}} {
		for _, block := range []*model.Part{lumber(c.long, 7*inch/2, 3*inch/2), lumber(3*inch/2, c.long, 7*inch/2), lumber(7*inch/2, c.long, 3*inch/2)} {
			if _, ok := p.Holds(rest[0], old, block, kerf); ok != c.want {
				t.Errorf("%d in: %v", c.long/inch, ok)
			}
		}
	}
}

// TestRestIsClear draws pieces and parts: what is left lies in the piece, clear of its
// cuts, a kerf from the part and apart from one another.
func TestRestIsClear(t *testing.T) {
	found := 0
	rapid.Check(t, func(t *rapid.T) {
		const kerf = 3 * mm
		draw := func(what string, lo, hi int) reuse.Length {
			return reuse.Length(rapid.IntRange(lo, hi).Draw(t, what)) * mm
		}
		old := panel(draw("wide", 100, 600), draw("high", 100, 600))
		x, y := old.Size()
		for range rapid.IntRange(0, 3).Draw(t, "openings") {
			u, v := draw("x", 1, 80), draw("y", 1, 80)
			opened("hole", u, v, u+draw("width", 1, 15), v+draw("height", 1, 15))(old)
		}
		new := panel(draw("part wide", 20, int(x/mm)), draw("part high", 20, int(y/mm)))
		p := pair(old, new, 0)
		fit, ok := p.Serve(old, new)
		if !ok {
			return
		}
		rest := p.Rest(old, new, fit.Lay, kerf)
		part := new.Outline.Bounds()
		for i, r := range rest {
			found++
			if !old.Outline.Bounds().Contains(r) || min(r.X.Size(), r.Y.Size()) < 50*mm {
				t.Fatalf("%v of %v", r, old.Outline.Bounds())
			}
			at := fit.Lay.Contour(geom.RectContour(r)).Bounds()
			if part.Grow(kerf).Overlaps(at) {
				t.Fatalf("%v meets the part %v", at, part)
			}
			for _, o := range old.Openings {
				if o.Shape.Bounds().Overlaps(r) {
					t.Fatalf("%v has a hole", r)
				}
			}
			for _, s := range rest[:i] {
				if s.Overlaps(r) {
					t.Fatalf("%v and %v", r, s)
				}
			}
		}
	})
	if found == 0 {
		t.Error("nothing was ever left")
	}
}
