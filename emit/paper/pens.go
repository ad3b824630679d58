package paper

import "barwright/compile/model"

// pen is how a kind of shape is drawn. Widths and dashes are millimetres on the paper: thick lines
// 0.35, thin ones 0.18, a line group of ISO 128-2 (from memory) that leaves boards apart at a
// twentieth of their size; walls and the floor are thicker. Tints are light, so that figures over
// them can be read and a printer's toner lasts.
type pen struct {
	width float64
	dash  []float64
	grey  uint8 // of the line: 0 is black
	fill  *tint
}

type tint [3]uint8

var (
	white   = &tint{255, 255, 255}
	ply     = &tint{249, 244, 232}
	lumber  = &tint{241, 230, 205}
	steel   = &tint{214, 219, 222}
	slab    = &tint{236, 227, 214}
	machine = &tint{238, 241, 240}
	masonry = &tint{228, 227, 222}
	recess  = &tint{229, 213, 184}
	ink     = &tint{0, 0, 0}
)

// Lines by ISO 128-2: dashed for what is hidden, long dashes with a dot for centres, with two
// dots for what lies before the drawn level.
var (
	dashed     = []float64{2.4, 0.8}
	dashDot    = []float64{5, 0.8, 0.4, 0.8}
	dashTwoDot = []float64{5, 0.8, 0.4, 0.8, 0.4, 0.8}
)

var pens = map[model.ShapeKind]pen{
	model.ShapeWall:      {width: 0.5, fill: masonry},
	model.ShapeStud:      {width: 0.18},
	model.ShapePanel:     {width: 0.35, fill: ply},
	model.ShapeHidden:    {width: 0.18, dash: dashed},
	model.ShapeOpening:   {width: 0.35, fill: white},
	model.ShapeRecess:    {width: 0.25, fill: recess},
	model.ShapeBore:      {width: 0.25, fill: white},
	model.ShapeMark:      {width: 0.18, dash: dashDot},
	model.ShapeBand:      {width: 0.8},
	model.ShapeFront:     {width: 0.25, fill: ply},
	model.ShapeOutlet:    {width: 0.25, dash: dashed, fill: white},
	model.ShapeStub:      {width: 0.25, dash: dashed, fill: white},
	model.ShapeAppliance: {width: 0.18, fill: machine},
	model.ShapeFraming:   {width: 0.35, fill: lumber},
	model.ShapeSteel:     {width: 0.35, fill: steel},
	model.ShapeSlab:      {width: 0.35, fill: slab},
	model.ShapeFloor:     {width: 0.7},
	model.ShapeAbove:     {width: 0.18, dash: dashTwoDot},
	model.ShapeBeyond:    {width: 0.18, grey: 90},
	model.ShapeCentre:    {width: 0.18, dash: dashDot, grey: 60},
	model.ShapeThin:      {width: 0.18, grey: 60},
	model.ShapeLeader:    {width: 0.18, grey: 60},
	model.ShapeDim:       {width: 0.18, grey: 60},
	model.ShapeRing:      {width: 0.18, grey: 60, fill: white},
	model.ShapeDot:       {width: 0, grey: 60, fill: &tint{60, 60, 60}},
	model.ShapeHatch:     {width: 0.13, grey: 60},
	model.ShapeFrame:     {width: 0.5},
	model.ShapeRule:      {width: 0.18, grey: 90},
	model.ShapeInk:       {width: 0.18, fill: ink},
}

// faceLine is the width of the lines of a picture, which stand close.
const faceLine = 0.18

// light is how much of its tint the face of a picture keeps, in hundredths, by where it looks.
var light = [...]int{model.Unshaded: 100, model.ShadeTop: 100, model.ShadeLeft: 95, model.ShadeRight: 89}

// shaded is the pen for a face of a picture.
func (p pen) shaded(by model.Shade) pen {
	if by == model.Unshaded {
		return p
	}
	p.width = min(p.width, faceLine)
	if p.fill != nil {
		var dim tint
		for i, c := range p.fill {
			dim[i] = uint8(int(c) * light[by] / 100)
		}
		p.fill = &dim
	}
	return p
}

// penOf is the pen of a kind; what is not known is drawn thin.
func penOf(kind model.ShapeKind) pen {
	if p, ok := pens[kind]; ok {
		return p
	}
	return pen{width: 0.25}
}
