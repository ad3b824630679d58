package dxf

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/dxf/dxftest"
)

func bushTemplate() *model.Template {
	line := func(x0, y0, x1, y1 geom.Length) model.Mark {
		return model.Mark{Name: "centre", From: geom.Point{X: x0 * mm, Y: y0 * mm}, To: geom.Point{X: x1 * mm, Y: y1 * mm}}
	}
	return &model.Template{
		Name: "bar-support-1", Guide: model.Guide{Bush: 16 * mm, Bit: 6 * mm, Board: "sheet.ply"}, Thickness: 12 * mm, Depth: 10 * mm,
		Outline: rect(-110, -40, 110, 178),
		Opening: geom.RoundedContour(geom.R(-35*mm, 35*mm, 35*mm, 103*mm), 9*mm),
		Marks:   []model.Mark{line(0, -40, 0, 35), line(0, 103, 0, 178)},
	}
}

// An independent reader finds nothing wrong with a template, its opening and its outline,
// and what the person at the router needs.
func TestTemplateInspected(t *testing.T) {
	dir := t.TempDir()
	var files []string
	for _, v := range []Version{R12, R2000} {
		var text bytes.Buffer
		if err := WriteTemplate(&text, bushTemplate(), Options{Version: v, Text: true}); err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(dir, []string{"r12.dxf", "r2000.dxf"}[v])
		if err := os.WriteFile(path, text.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		files = append(files, path)
	}
	for _, r := range dxftest.Inspect(t, files) {
		if !r.OK || len(r.Contours) != 2 {
			t.Fatalf("%s: %v %v, %d contours", r.File, r.Problems, r.Warnings, len(r.Contours))
		}
		if c := r.Contours[0]; c.Layer != "OPENING" || c.Arcs != 4 || !slices.Equal(c.Box, []float64{75, 75, 145, 143}) {
			t.Errorf("%s: opening %+v", r.File, c)
		}
		if c := r.Contours[1]; c.Layer != "EDGE" || c.Area != 220*218 {
			t.Errorf("%s: outline %+v", r.File, c)
		}
		var texts []string
		for _, line := range r.Texts {
			texts = append(texts, line.Text)
		}
		if want := "bit stands out 22"; !slices.Contains(texts, want) {
			t.Errorf("%s: no %q in %q", r.File, want, texts)
		}
	}
}
