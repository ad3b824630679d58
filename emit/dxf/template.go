package dxf

import (
	"io"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// WriteTemplate writes the template of a router that is led by hand as a part: its opening,
// its outline, and the lines by which it is laid on the wood as marks. It is written whole
// and as it lies, whatever the options leave out, mirror or relieve of parts. Its note stands
// below it; "run side" stands beside the edge of the wood that looks to the run.
func WriteTemplate(w io.Writer, t *model.Template, opt Options) error {
	opt.Without, opt.Mirrored, opt.Relieve = model.Written{}, false, nil
	v := view{part: &model.Part{
		ID: "template " + t.Name, Label: t.Name, Name: "template", Stock: t.Guide.Board, Thickness: t.Thickness,
		Outline: t.Outline, Openings: []model.Opening{{Name: "guide", Shape: t.Opening}}, Marks: t.Marks,
	}}
	all := lying(v.shapes(&opt), v.motion(), opt.Flatten)
	f := file{parts: []*model.Part{v.part}, all: all, zero: opt.Origin.of(t.Outline.Bounds())}
	if opt.Text {
		f.notes = []note{runSide(t), noteBelow(t.Outline.Bounds(), templateLines(t, &opt))}
	}
	return f.write(w, &opt)
}

func templateLines(t *model.Template, opt *Options) []string {
	led := "bush " + opt.show(t.Guide.Bush)
	if t.Guide.Bearing > 0 {
		led = "bearing " + opt.show(t.Guide.Bearing)
	}
	lines := []string{
		"TEMPLATE " + t.Name,
		opt.Build,
		t.Guide.Board + ", " + opt.show(t.Thickness) + " thick",
		led + ", bit " + opt.show(t.Guide.Bit),
		"bit stands out " + opt.show(t.Setting()),
		opt.unit(),
		"seen from above, run side at the " + t.Run.String() + ": the arrow points to the run",
		opt.zeroLine(),
	}
	return inASCII(append(lines, opt.wayLines()...)...)
}

// runSide is written over the left rim, beside the line where the wood's edge lies, or by
// the edge of the board where the wood reaches further.
func runSide(t *model.Template) note {
	const beside, height = 5 * length.Millimetre, 6 * length.Millimetre
	outer := t.Outline.Bounds()
	top := max(t.Wood.Lo, outer.Y.Lo) + beside + height
	if t.Run == model.Top {
		top = min(t.Wood.Hi, outer.Y.Hi) - beside
	}
	return note{lines: []string{"run side"}, height: height, corner: geom.Point{X: outer.X.Lo + beside, Y: top}}
}
