package dxf

import (
	"barwright/compile/geom"
	"barwright/compile/model"
)

// turnedOver returns a part as it lies after it is turned over from left to right:
// its lower edge stays below. Only its outline and bores are kept.
func turnedOver(p *model.Part) *model.Part {
	turned := *p
	b := p.Outline.Bounds()
	over := func(q geom.Point) geom.Point { return geom.Point{X: b.X.Lo + b.X.Hi - q.X, Y: q.Y} }
	turned.Outline = make(geom.Contour, len(p.Outline))
	for i, v := range p.Outline {
		turned.Outline[i] = geom.Vertex{Point: over(v.Point), Bulge: -v.Bulge}
	}
	turned.Bores = make([]model.Bore, len(p.Bores))
	for i, bore := range p.Bores {
		bore.At = over(bore.At)
		turned.Bores[i] = bore
	}
	turned.Marks, turned.Recesses, turned.Openings = nil, nil, nil
	return &turned
}

// farLines say which piece this is, how it lies, and from which edges one
// measures.
func farLines(p *model.Part) []string {
	x, y := p.Size()
	return inASCII(
		p.Label+" "+p.Name+", FAR FACE",
		p.Owner,
		roundMM(x)+" x "+roundMM(y)+" over all",
		"UNITS MM",
		"turned over from left to right: bottom edge stays at the bottom",
		"zero at the lower right as drawn first is at the lower left here",
		"outline for reading only: it is cut already",
	)
}
