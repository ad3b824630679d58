package model

import "barwright/compile/geom"

// Template is a board with an opening that leads a router by hand round a recess, for all
// recesses of a router that are alike. X runs along the part from the recess's centre
// line and Y across it, as in programs; the board is seen from above, as it lies.
type Template struct {
	Name      string // file name without extension: that of its first recess
	Router    string // block name
	Guide     Guide
	Thickness Length    // of the board
	Depth     Length    // of the recess
	Corner    Length    // radius that the bit leaves in the recess's corners between two closed sides; 0 where there are none
	Run       Edge      // where the wood's edge lies that looks to the run
	Wood      geom.Span // where the edges of the part lie, across it
	Outline   geom.Contour
	Opening   geom.Contour
	Marks     []Mark
	Places    []TemplatePlace
}

// TemplatePlace is a recess that a template is laid on.
type TemplatePlace struct {
	Recess, Part string // IDs
	Mark         Length // its centre line, from the part's left end
}

// Setting is how far the bit stands out below the board's upper face, on which the
// router's base lies.
func (t *Template) Setting() Length { return t.Thickness + t.Depth }

// Round is the diameter of what runs along a template.
func (g Guide) Round() Length { return max(g.Bush, g.Bearing) }
