package dxf

import (
	"strings"

	"barwright/compile/model"
	"barwright/lang/length"
)

// Layers of a drawing that no kind of shape has to itself.
const (
	layerDimension = "DIMENSION"
	layerText      = "TEXT"
	layerTitle     = "TITLE"
	layerLeader    = "LEADER"
)

// Types of line that are not solid.
const (
	dashed      = "DASHED"
	chain       = "CHAIN"
	doubleChain = "DOUBLE_CHAIN"
)

// drawingLayers are the layers of every drawing.
var drawingLayers = [...]layer{
	{"0", 7, ""},
	{"WALL", 7, ""}, {"STUD", 8, ""}, {"FLOOR", 7, ""},
	{"PANEL", 7, ""}, {"FRONT", 7, ""}, {"FRAMING", 30, ""}, {"STEEL", 5, ""}, {"SLAB", 7, ""}, {"APPLIANCE", 3, ""},
	{"OPENING", 1, ""}, {"RECESS", 5, ""}, {"BORE", 3, ""}, {"MARK", 4, chain}, {"BANDING", 6, ""},
	{"OUTLET", 1, dashed}, {"STUB", 4, dashed},
	{"HIDDEN", 8, dashed}, {"ABOVE", 8, doubleChain}, {"BEYOND", 8, ""},
	{"CENTRE", 8, chain}, {"EXTENSION", 8, ""}, {layerLeader, 8, ""},
	{layerDimension, 8, ""}, {layerText, 7, ""}, {layerTitle, 7, ""},
}

// kindLayers is for lookup only.
var kindLayers = map[model.ShapeKind]string{
	model.ShapeWall: "WALL", model.ShapeStud: "STUD", model.ShapeFloor: "FLOOR",
	model.ShapePanel: "PANEL", model.ShapeFront: "FRONT", model.ShapeFraming: "FRAMING",
	model.ShapeSteel: "STEEL", model.ShapeSlab: "SLAB", model.ShapeAppliance: "APPLIANCE",
	model.ShapeOpening: "OPENING", model.ShapeRecess: "RECESS", model.ShapeBore: "BORE",
	model.ShapeMark: "MARK", model.ShapeBand: "BANDING",
	model.ShapeOutlet: "OUTLET", model.ShapeStub: "STUB",
	model.ShapeHidden: "HIDDEN", model.ShapeAbove: "ABOVE", model.ShapeBeyond: "BEYOND",
	model.ShapeCentre: "CENTRE", model.ShapeThin: "EXTENSION", model.ShapeLeader: layerLeader,
}

// lineTypes are dashes and gaps that go with type of a height.
func lineTypes(height length.Length) []lineType {
	pattern := func(tenths ...length.Length) []length.Length {
		for i := range tenths {
			tenths[i] *= height / 10
		}
		return tenths
	}
	return []lineType{
		{dashed, "Hidden __ __ __", pattern(6, -3)},
		{chain, "Centre ____ _ ____", pattern(10, -3, 2, -3)},
		{doubleChain, "Above _____ _ _ _____", pattern(14, -3, 3, -3, 3, -3)},
	}
}

// leastLine is how many letters a line of the title holds where the view is narrow.
const leastLine = 40

// titleLines say what the drawing is.
func (d *drawing) titleLines(opt *Options) []string {
	v := d.view
	lines := []string{v.Title, v.Note, opt.Build, opt.unit() + ", REAL SIZE"}
	if len(v.Alike) > 0 {
		lines = append(lines, "the same: "+strings.Join(append([]string{v.Part}, v.Alike...), ", "))
	}
	return inASCII(lines...)
}

// wrap parts a line at blanks into pieces of at most so many letters; a longer word
// stays whole.
func wrap(line string, most int) (out []string) {
	for _, word := range strings.Fields(line) {
		if last := len(out) - 1; last >= 0 && len(out[last])+1+len(word) <= most {
			out[last] += " " + word
			continue
		}
		out = append(out, word)
	}
	return out
}
