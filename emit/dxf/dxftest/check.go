package dxftest

import (
	"math"
	"slices"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// Of returns the contours that the file of a part should hold, in its order
// and on the default layers: countersinks, recesses, bores, openings and slots
// clockwise, then the outline counter-clockwise, its lower left at the origin.
func Of(p *model.Part) []Contour {
	var all list
	all.add("MARK", sinks(p, false))
	for _, r := range p.Recesses {
		all.add("RECESS", []geom.Contour{r.Shape})
	}
	near := func(b model.Bore) bool { return !b.Far || b.Depth == 0 }
	for _, b := range p.Bores {
		layer := "BORE"
		if b.Depth == 0 {
			layer = "BORE_THROUGH"
		}
		if b.Slot == 0 && near(b) {
			all.add(layer, []geom.Contour{geom.CircleContour(b.At, b.Diameter/2)})
		}
	}
	for _, o := range p.Openings {
		if !o.Notch {
			all.add("OPENING", []geom.Contour{o.Shape})
		}
	}
	for _, b := range p.Bores {
		layer := "RECESS"
		if b.Depth == 0 {
			layer = "OPENING"
		}
		if b.Slot > 0 && near(b) {
			all.add(layer, []geom.Contour{capsule(b, b.Diameter)})
		}
	}
	return all.from(p, "EDGE")
}

// OfFar returns those that the file of its far face should hold: it is turned over
// from left to right, and the outline is not cut again.
func OfFar(p *model.Part) []Contour {
	var all list
	all.add("MARK", sinks(p, true))
	all.add("BORE", bores(p, func(b model.Bore) bool { return b.Slot == 0 && b.Far && b.Depth > 0 }))
	for _, b := range p.Bores {
		if b.Slot > 0 && b.Far && b.Depth > 0 {
			all.add("RECESS", []geom.Contour{capsule(b, b.Diameter)})
		}
	}
	whole := all.from(p, "NOTE")
	width := p.Outline.Bounds().X.Size()
	for i := range whole {
		c := whole[i].Shape
		for j := range c {
			c[j].X, c[j].Bulge = width-c[j].X, -c[j].Bulge
		}
		whole[i].Shape = directed(c, whole[i].Layer != "NOTE")
	}
	return whole
}

type list []Contour

func (l *list) add(layer string, shapes []geom.Contour) {
	for _, c := range shapes {
		*l = append(*l, Contour{layer, directed(c, true)})
	}
}

// from moves all to the part's lower left and adds its outline.
func (l *list) from(p *model.Part, outline string) []Contour {
	*l = append(*l, Contour{outline, directed(p.Outline, false)})
	b := p.Outline.Bounds()
	for i := range *l {
		(*l)[i].Shape = (*l)[i].Shape.Shifted(geom.Point{X: -b.X.Lo, Y: -b.Y.Lo})
	}
	return *l
}

func directed(c geom.Contour, clockwise bool) geom.Contour {
	if (c.Area() < 0) != clockwise {
		return c.Reversed()
	}
	return c
}

func bores(p *model.Part, of func(model.Bore) bool) (all []geom.Contour) {
	for _, b := range p.Bores {
		if of(b) {
			all = append(all, capsule(b, b.Diameter))
		}
	}
	return all
}

func sinks(p *model.Part, far bool) (all []geom.Contour) {
	for _, b := range p.Bores {
		if b.Sink > 0 && b.Far == far {
			all = append(all, capsule(b, b.Sink))
		}
	}
	return all
}

// capsule is a round of a width, or where a bore is a slot that with half rounds at
// its ends.
func capsule(b model.Bore, width geom.Length) geom.Contour {
	if b.Slot == 0 {
		return geom.CircleContour(b.At, width/2)
	}
	way, side := geom.Point{X: b.Slot / 2}, geom.Point{Y: width / 2}
	if b.Across {
		way, side = geom.Point{Y: b.Slot / 2}, geom.Point{X: -width / 2}
	}
	end, begin := b.At.Add(way), b.At.Sub(way)
	return geom.Contour{{Point: begin.Sub(side)}, {Point: end.Sub(side), Bulge: 1}, {Point: end.Add(side)}, {Point: begin.Add(side), Bulge: 1}}
}

// Check reports, through t, what the inspector found wrong with the file of a
// part, and where the contours in it are not the part's. One warning is taken
// where the part has an open recess: that its edge lies on the outline's.
func (r Result) Check(t testing.TB, p *model.Part) {
	t.Helper()
	r.check(t, p, Of(p))
}

// CheckFar does so for the file of a part's far face.
func (r Result) CheckFar(t testing.TB, p *model.Part) {
	t.Helper()
	r.check(t, p, OfFar(p))
}

func (r Result) check(t testing.TB, p *model.Part, want []Contour) {
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
	same(t, r, slices.DeleteFunc(want, func(c Contour) bool { return c.Layer == "MARK" || c.Layer == "NOTE" }))
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
