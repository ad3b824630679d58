package dxftest

import (
	"math"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// Of returns the contours that the file of a part should hold, in its order
// and on the default layers: recesses and openings clockwise, then the outline
// counter-clockwise, its lower left at the origin.
func Of(p *model.Part) []Contour {
	b := p.Outline.Bounds()
	origin := geom.Point{X: -b.X.Lo, Y: -b.Y.Lo}
	var all []Contour
	add := func(layer string, c geom.Contour, clockwise bool) {
		if (c.Area() < 0) != clockwise {
			c = c.Reversed()
		}
		all = append(all, Contour{layer, c.Shifted(origin)})
	}
	for _, r := range p.Recesses {
		add("RECESS", r.Shape, true)
	}
	for _, o := range p.Openings {
		if !o.Notch {
			add("OPENING", o.Shape, true)
		}
	}
	add("EDGE", p.Outline, false)
	return all
}

// Check reports, through t, what the inspector found wrong with the file of a
// part, and where the contours in it are not the part's. One warning is taken
// where the part has an open recess: that its edge lies on the outline's.
func (r Result) Check(t testing.TB, p *model.Part) {
	t.Helper()
	if r.AuditErrors == nil || *r.AuditErrors != 0 || *r.AuditFixes != 0 || len(r.Problems) != 0 {
		t.Errorf("%s: part %s: problems %q", r.File, p.ID, r.Problems)
	}
	open := false
	for _, recess := range p.Recesses {
		open = open || len(recess.Open) > 0
	}
	for _, w := range r.Warnings {
		if !open || !strings.HasSuffix(w, "segment pair(s) on different layers lie on each other") {
			t.Errorf("%s: part %s: warning %q", r.File, p.ID, w)
		}
	}
	if r.Units != "mm" || r.LineEnding != "CRLF" {
		t.Errorf("%s: unit %s, line ends %s", r.File, r.Units, r.LineEnding)
	}
	same(t, r, Of(p))
}

func same(t testing.TB, r Result, want []Contour) {
	t.Helper()
	if len(r.Contours) != len(want) {
		t.Errorf("%s: %d closed contours, want %d", r.File, len(r.Contours), len(want))
		return
	}
	for i, got := range r.Contours {
		c, area := want[i].Shape, want[i].Shape.Area()
		orientation := "ccw"
		if _, _, circle := c.Circle(); area < 0 && !circle { // a CIRCLE has no direction
			orientation = "cw"
		}
		if got.Layer != want[i].Layer || got.Orientation != orientation || got.Segments != len(c) || got.Arcs != arcs(c) {
			t.Errorf("%s: contour %d is %+v, want %d edges, %d of them arcs, %s on %s",
				r.File, i, got, len(c), arcs(c), orientation, want[i].Layer)
		}
		if d := math.Abs(got.Area - math.Abs(area)); !(d < 1e-3) {
			t.Errorf("%s: contour %d has an area of %f mm², want %f", r.File, i, got.Area, math.Abs(area))
		}
		if !sameBox(got.Box, c.Bounds()) {
			t.Errorf("%s: contour %d is in the box %v, want %v", r.File, i, got.Box, c.Bounds())
		}
	}
	if !sameBox(r.BoxCut, boxOf(want)) {
		t.Errorf("%s: all contours are in the box %v, want %v", r.File, r.BoxCut, boxOf(want))
	}
}

func arcs(c geom.Contour) int {
	n := 0
	for _, v := range c {
		if v.Bulge != 0 {
			n++
		}
	}
	return n
}

func boxOf(contours []Contour) geom.Rect {
	b := contours[0].Shape.Bounds()
	for _, c := range contours {
		b = b.Union(c.Shape.Bounds())
	}
	return b
}

// sameBox compares to within a micrometre.
func sameBox(got []float64, want geom.Rect) bool {
	edges := [...]float64{want.X.Lo.MM(), want.Y.Lo.MM(), want.X.Hi.MM(), want.Y.Hi.MM()}
	if len(got) != len(edges) {
		return false
	}
	for i, e := range edges {
		if !(math.Abs(got[i]-e) < 1e-3) {
			return false
		}
	}
	return true
}
