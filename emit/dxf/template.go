package dxf

import (
	"io"

	"barwright/compile/model"
)

// WriteTemplate writes the template of a router that is led by hand as a part: its opening,
// its outline, and the lines by which it is laid on the wood as marks.
func WriteTemplate(w io.Writer, t *model.Template, opt Options) error {
	board := &model.Part{
		ID: "template " + t.Name, Label: t.Name, Name: "template", Stock: t.Guide.Board, Thickness: t.Thickness,
		Outline: t.Outline, Openings: []model.Opening{{Name: "guide", Shape: t.Opening}}, Marks: t.Marks,
	}
	layers := opt.Layers.named()
	return write(w, board, opt, layers, shapes(board, layers), func(*model.Part) []string { return templateLines(t) })
}

func templateLines(t *model.Template) []string {
	led := "bush " + roundMM(t.Guide.Bush)
	if t.Guide.Bearing > 0 {
		led = "bearing " + roundMM(t.Guide.Bearing)
	}
	return []string{
		"TEMPLATE " + t.Name,
		t.Guide.Board + ", " + roundMM(t.Thickness) + " thick",
		led + ", bit " + roundMM(t.Guide.Bit),
		"bit stands out " + roundMM(t.Setting()),
		"UNITS MM",
	}
}
