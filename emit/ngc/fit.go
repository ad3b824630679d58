package ngc

import (
	"fmt"
	"strings"

	"barwright/compile/model"
	"barwright/lang/length"
)

// fitCheck tells what to measure on a test piece, and what to change where it is
// off, with figures for a small miss.
func (s *sheet) fitCheck(e *entry, p *model.Program, recess model.Recess) {
	off := length.Millimetre / 10
	if s.model.Build.Unit.Imperial() {
		off = 4 * length.Inch / 1000
	}
	width, bit := p.Shape.Bounds().X.Size(), p.Tool.Diameter
	name := "router " + p.Tool.Router
	e.own("width", fmt.Sprintf("measure the recess across X with a caliper, in the middle and at both ends: %s, "+
		"which is %s more than the steel (%s)", s.caliper(width), s.caliper(2*recess.Fit), s.caliper(width-2*recess.Fit)))
	e.own("if it is off", fmt.Sprintf("a recess that is %s too narrow was cut by a bit that is so much smaller than was said: "+
		"set bit = %s in %s, and build again. One that is %s too wide: bit = %s.",
		s.caliper(off), s.said(bit-off), name, s.caliper(off), s.said(bit+off)),
		fmt.Sprintf("if the width is right but the steel still binds, by %s: set fit = %s in %s, half of it on each side",
			s.caliper(off), s.said(recess.Fit+off/2), name))
	steel, found := s.steel(recess.ID)
	if !found {
		e.own("depth", "measure it at both ends: "+s.caliper(p.Depth))
		return
	}
	low := p.Depth - steel.Thickness
	e.own("depth", fmt.Sprintf("measure it at both ends: %s, the steel's thickness of %s and low = %s",
		s.caliper(p.Depth), s.caliper(steel.Thickness), s.caliper(low)))
	e.own("if it is off", fmt.Sprintf("a recess that is %s too shallow: zero in Z was set so much too high; set it again, and change nothing here",
		s.caliper(off)),
		fmt.Sprintf("if the depth is right but the steel stands proud, by %s: it is thicker than was said; set low = %s in %s, "+
			"which lets it in to %s below flush, or put its measured thickness into its flat_bar",
			s.caliper(off), s.said(low+2*off), name, s.caliper(off)))
}

// caliper writes a length as a caliper in the build's unit shows it.
func (s *sheet) caliper(l Length) string {
	if s.model.Build.Unit.Imperial() {
		return l.Decimal(length.Inches, 4) + " in"
	}
	return l.Decimal(length.Millimetres, 2) + " mm"
}

// said writes a length as a description says it.
func (s *sheet) said(l Length) string { return `"` + strings.ReplaceAll(s.caliper(l), " ", "") + `"` }
