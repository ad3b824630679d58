package template

import (
	"fmt"
	"slices"

	"barwright/compile/model"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// sound refuses a guide that cannot lead its bit round a recess.
func (j job) sound(recess *model.Recess) bool {
	at, g := j.router.Attr("guide").Expr.At, j.guide
	name := finding.Capital(j.router.Describe())
	before := len(*j.findings)
	switch {
	case j.findings.Has("guide-unclear", at) || j.findings.Has("guide-too-narrow", at) || j.findings.Has("guide-bit-too-wide", at) || j.findings.Has("collar-too-long", at):
		return false // as with the recess before
	case (g.Bush > 0) == (g.Bearing > 0):
		j.findings.Errorf("guide-unclear", at, "bush = …, or bearing = …", "%s is led by hand by a bush or by a bearing: one of the two is to be given.", name)
	case g.Bush > 0 && g.Bush <= g.Bit:
		j.findings.Errorf("guide-too-narrow", at, "a bush that the bit goes through, or a smaller bit",
			"The bush is %s wide, and the bit %s: it would cut the template.", j.Show(g.Bush), j.Show(g.Bit))
	case g.Bearing > 0 && g.Bearing < g.Bit:
		j.findings.Errorf("guide-too-narrow", at, "a bearing as wide as the bit, or a smaller bit",
			"The bearing is %s wide, and the bit %s: it would cut the template.", j.Show(g.Bearing), j.Show(g.Bit))
	case g.Collar > 0 && g.Collar >= j.board:
		j.findings.Errorf("collar-too-long", at, fmt.Sprintf("a board thicker than %s, or a shorter bush", j.Show(g.Collar)),
			"The bush stands %s out of the base, and the template is %s thick: it would rub on the wood.", j.Show(g.Collar), j.Show(j.board))
	default:
		j.fits(recess)
	}
	return len(*j.findings) == before
}

// fits refuses a bit that is wider than the recess or cuts its corners rounder than the
// steel is shaped for. Of a recess whose corners the machine relieves the sheet tells what
// to do: the steel is square, and no template relieves.
func (j job) fits(recess *model.Recess) {
	at, bit := j.router.Attr("guide").Expr.At, j.guide.Bit
	size := recess.Shape.Bounds()
	width := size.X.Size()
	if slices.Contains(recess.Open, model.LeftEdge) || slices.Contains(recess.Open, model.RightEdge) {
		width = size.Y.Size()
	}
	mend := func(l length.Length) string { return fmt.Sprintf("a bit of at most %s", j.Show(l)) }
	switch {
	case bit > width:
		j.findings.Errorf("guide-bit-too-wide", at, mend(width), "The bit led by hand is %s wide, and the recess %s: %s too wide.",
			j.Show(bit), j.Show(width), j.Show(bit-width))
	case recess.Radius > 0 && bit > 2*recess.Radius:
		j.findings.Errorf("guide-bit-too-wide", at, mend(2*recess.Radius),
			"The bit led by hand rounds the corners of the recess by %s, and the steel is shaped for %s: it would meet the wood.",
			j.Show(bit/2), j.Show(recess.Radius))
	}
}
