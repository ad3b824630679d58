package onsite_test

import (
	"os"
	"path/filepath"
	"testing"

	"barwright/compile"
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/onsite"
	"barwright/lang"
	"barwright/lang/length"
	"barwright/lang/source"
)

// from is what lies between an edge of the card and the nearer and the farther side of a hole; of
// a round one both are to its centre.
func from(c *onsite.Card, e model.Edge, h *onsite.Hole) (near, far length.Length) {
	b := h.Shape.Bounds()
	if centre, _, ok := h.Shape.Circle(); ok {
		b = geom.R(centre.X, centre.Y, centre.X, centre.Y)
	}
	switch e {
	case model.LeftEdge:
		return b.X.Lo - c.Blank.X.Lo, b.X.Hi - c.Blank.X.Lo
	case model.RightEdge:
		return c.Blank.X.Hi - b.X.Hi, c.Blank.X.Hi - b.X.Lo
	case model.Bottom:
		return b.Y.Lo - c.Blank.Y.Lo, b.Y.Hi - c.Blank.Y.Lo
	}
	return c.Blank.Y.Hi - b.Y.Hi, c.Blank.Y.Hi - b.Y.Lo
}

func example(t *testing.T, name string) *model.Model {
	t.Helper()
	var files source.Files
	for _, file := range []string{"bar.hcl", "shop.hcl", "stock.hcl"} {
		text, err := os.ReadFile(filepath.Join("../../examples", name, file))
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, source.File{Name: file, Text: text})
	}
	src, _ := lang.Read(files)
	m, findings := compile.Compile(src)
	if m == nil {
		t.Fatal(findings)
	}
	return m
}

func cardOf(t *testing.T, m *model.Model, label string) *onsite.Card {
	t.Helper()
	cards := onsite.Cards(m)
	for i := range cards {
		if cards[i].Part.Label == label {
			return &cards[i]
		}
	}
	t.Fatalf("no card of %s", label)
	return nil
}

// inches reads inches and a sum of what is added to them or taken from them.
func inches(t *testing.T, terms ...string) (sum length.Length) {
	t.Helper()
	for _, term := range terms {
		l, err := length.Parse(term, length.Inches)
		if err != nil {
			t.Fatal(term, err)
		}
		sum += l
	}
	return sum
}

// The boat shed's cards worked out by hand from its description and the defaults of SPEC.md: a box of
// 2 1/4 by 3 3/4 in with 1/16 in all round makes an opening of 2 3/8 by 3 7/8, half of which is
// 1 3/16 and 1 15/16; a stub's clearance is 1/8 in all round.
//
// Heights: an outlet's counts from the floor there, a panel's from the datum. From the readings
// (shims_test.go beside the program), in thirty-seconds below the highest: at (62.5, 0) between
// 2 and 8 at 68, so 2 + 62.5 * 6/68 = 7.51; at (83.4, 0) 8 + 15.4 * 8/68 = 9.81; along the wall
// "east" 16. The datum is at 1.365. So the floor is 6.15, 8.45 and 14.64 under it, to the
// build's mark 6/32, 8/32 and 15/32.
//
// CUPS-BK goes over the whole rear of its cabinet: from 30 + 24 1/4 = 54 1/4 to 96 1/4 along the
// wall, with no board between, and from the toe kick's 4 in up. The inside is seen, so that it is marked on
// the rear: what is left there is the right end. From it, the outlets stand at
//
//	cooler   96 1/4 - 62 1/2  = 33 3/4,  so from 33 3/4 - 1 3/16 = 32 9/16 to 34 15/16
//	grinder  96 1/4 - 83 3/8  = 12 7/8,  so from 12 7/8 - 1 3/16 = 11 11/16 to 14 1/16
//	cooler   17 - 6/32 - 4    = 12 13/16, so from 10 7/8 to 14 3/4
//	grinder  19 1/2 - 8/32 - 4 = 15 1/4, so from 13 5/16 to 17 3/16
//
// SINK-L stands along the wall "east" at 1 1/2 in from it; the run's fronts are at 66 and its depth
// of 23 1/4 is over the back, whose 7/32 lie behind the side: what is marked from the side's rear edge
// lacks them. That edge is at 66 + 23 1/4 - 7/32 = 89 1/32. It is the left one on the side's outer face.
//
//	drain  89 1/32 - 78 1/2 = 10 17/32, and 14 1/4 - 15/32 = 13 25/32 up
//	cold   89 1/32 - 71     = 18 1/32,  and 20 - 15/32 = 19 17/32 up
//
// With the back forgotten these would be 10 3/4 and 18 1/4.
func TestCardsOfBoatshed(t *testing.T) {
	m := example(t, "boatshed")
	for _, want := range []struct {
		label, hole       string
		across            model.Edge
		left, right       string // of the hole, from that edge
		low, high         string // from the bottom
		leftEdgeDirection geom.Dir
	}{
		{"CUPS-BK", "outlet cooler", model.LeftEdge, "32 9/16", "34 15/16", "10 7/8", "14 3/4", geom.Dir{Axis: geom.U}},
		{"CUPS-BK", "outlet grinder", model.LeftEdge, "11 11/16", "14 1/16", "13 5/16", "17 3/16", geom.Dir{Axis: geom.U}},
		{"SINK-L", "stub drain", model.LeftEdge, "10 17/32", "10 17/32", "13 25/32", "13 25/32", geom.Dir{Axis: geom.V, Neg: true}},
		{"SINK-L", "stub cold", model.LeftEdge, "18 1/32", "18 1/32", "19 17/32", "19 17/32", geom.Dir{Axis: geom.V, Neg: true}},
	} {
		c := cardOf(t, m, want.label)
		if !c.Behind || c.InPlace || c.Across != want.across || c.Up != model.Bottom {
			t.Errorf("%s: behind %t, in place %t, from the %s and the %s", want.label, c.Behind, c.InPlace, c.Across, c.Up)
		}
		if got := c.Direction(model.LeftEdge); got != want.leftEdgeDirection {
			t.Errorf("%s: its left edge looks to %s", want.label, got)
		}
		for i := range c.Holes {
			h := &c.Holes[i]
			if h.Name != want.hole {
				continue
			}
			near, far := from(c, c.Across, h)
			low, high := from(c, c.Up, h)
			if near != inches(t, want.left) || far != inches(t, want.right) || low != inches(t, want.low) || high != inches(t, want.high) {
				t.Errorf("%s, %s: %d to %d across, %d to %d up", want.label, want.hole, near, far, low, high)
			}
		}
	}
}

// A counter is marked where it lies. Its left end stands against the wall "east" and its rear under the
// skin: a tape hooks on to its right end and its front alone.
func TestCardInPlace(t *testing.T) {
	c := cardOf(t, example(t, "boatshed"), "WORK-C1")
	if c.Behind || !c.InPlace || c.Across != model.RightEdge || c.Up != model.Bottom {
		t.Errorf("behind %t, in place %t, from the %s and the %s", c.Behind, c.InPlace, c.Across, c.Up)
	}
	// The sink is 14 by 14 with corners of 1 in: bores of 2 in across, 1 in from two sides.
	h := &c.Holes[0]
	b := h.Shape.Bounds()
	if h.Diameter != 2*length.Inch || len(h.Corners) != 4 || h.Corners[0] != (geom.Point{X: b.X.Lo + length.Inch, Y: b.Y.Lo + length.Inch}) {
		t.Errorf("corners %v of %d", h.Corners, h.Diameter)
	}
}

// What is measured of a hole from one edge and from the edge across comes to the board, and what a
// card shows mirrored is where the part has it.
func TestCardsAddUp(t *testing.T) {
	for _, name := range []string{"boatshed", "servery"} {
		cards := onsite.Cards(example(t, name))
		if len(cards) < 5 {
			t.Errorf("%s has %d cards", name, len(cards))
		}
		for i := range cards {
			c := &cards[i]
			wide, high := c.Part.Size()
			for k := range c.Holes {
				h := &c.Holes[k]
				for e, board := range map[model.Edge]length.Length{model.LeftEdge: wide, model.Bottom: high} {
					near, far := from(c, e, h)
					otherNear, otherFar := from(c, e.Opposite(), h)
					if near+otherFar != board || far+otherNear != board || near > far {
						t.Errorf("%s, %s: %d and %d from the %s of %d", c.Part.Label, h.Name, near, otherFar, e, board)
					}
				}
				own := c.Part.Openings[k].Shape.Bounds()
				left, _ := from(c, model.LeftEdge, h)
				if seen := own.X.Lo; !h.Round && !c.Behind && left != seen || !h.Round && c.Behind && left != wide-own.X.Hi {
					t.Errorf("%s, %s: %d from the left, %v on the part", c.Part.Label, h.Name, left, own.X)
				}
			}
		}
	}
}

// Corner bores of the saw's bit are those of the opening, mirrored with it.
func TestCornerBores(t *testing.T) {
	m := example(t, "boatshed")
	for i := range m.Parts {
		if p := &m.Parts[i]; p.Label == "CUPS-BK" {
			o := &p.Openings[0]
			b := o.Shape.Bounds()
			o.Bit, o.Corners = length.Inch/2, []geom.Point{{X: b.X.Lo + length.Inch/4, Y: b.Y.Lo + length.Inch/4}}
		}
	}
	h := &cardOf(t, m, "CUPS-BK").Holes[0]
	b := h.Shape.Bounds()
	if want := (geom.Point{X: b.X.Hi - length.Inch/4, Y: b.Y.Lo + length.Inch/4}); len(h.Corners) != 1 || h.Corners[0] != want || h.Diameter != length.Inch/2 {
		t.Errorf("bored at %v, not %v", h.Corners, want)
	}
}
