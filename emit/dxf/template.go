package dxf

import (
	"io"

	"barwright/compile/model"
)

// WriteTemplate writes the template of a router that is led by hand as a part: its opening,
// its outline, and the lines by which it is laid on the wood as marks. It is written whole
// and as it lies, whatever the options leave out, mirror or relieve of parts.
func WriteTemplate(w io.Writer, t *model.Template, opt Options) error {
	opt.Without, opt.Mirrored, opt.Relieve = model.Written{}, false, nil
	v := view{part: &model.Part{
		ID: "template " + t.Name, Label: t.Name, Name: "template", Stock: t.Guide.Board, Thickness: t.Thickness,
		Outline: t.Outline, Openings: []model.Opening{{Name: "guide", Shape: t.Opening}}, Marks: t.Marks,
	}}
	all := lying(v.shapes(opt.Without), v.motion(), opt.Flatten)
	f := file{parts: []*model.Part{v.part}, all: all, zero: opt.Origin.of(t.Outline.Bounds())}
	if opt.Text {
		f.notes = []note{noteOf(t.Outline, templateLines(t, &opt), all)}
	}
	return f.write(w, &opt)
}

func templateLines(t *model.Template, opt *Options) []string {
	led := "bush " + opt.show(t.Guide.Bush)
	if t.Guide.Bearing > 0 {
		led = "bearing " + opt.show(t.Guide.Bearing)
	}
	return inASCII(
		"TEMPLATE "+t.Name,
		t.Guide.Board+", "+opt.show(t.Thickness)+" thick",
		led+", bit "+opt.show(t.Guide.Bit),
		"bit stands out "+opt.show(t.Setting()),
		opt.unit(),
	)
}
