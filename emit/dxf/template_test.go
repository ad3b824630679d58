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
		Name: "bar-support-1", Guide: model.Guide{Bush: 16 * mm, Bit: 6 * mm, Board: "sheet.ply"}, Thickness: 12 * mm, Depth: 10 * mm, Wood: geom.Span{Hi: 90 * mm},
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
		for _, want := range [...]string{"bit stands out 22", "run side", "seen from above, run side at the bottom: the arrow points to the run"} {
			if !slices.Contains(texts, want) {
				t.Errorf("%s: no %q in %q", r.File, want, texts)
			}
		}
	}
}

// What the table's options say of where zero is and of arcs holds for templates, and the
// note says it; what they leave out or mirror of parts does not.
func TestTemplateTellsOptions(t *testing.T) {
	opt := Options{Text: true, Origin: Middle, Flatten: mm / 20, Mirrored: true, Without: model.Written{Openings: true, Marks: true}}
	var text bytes.Buffer
	if err := WriteTemplate(&text, bushTemplate(), opt); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"zero at the middle", "arcs as chords that leave them by 0.05 at most", "OPENING", "MARK"} {
		if !bytes.Contains(text.Bytes(), []byte(want+"\r\n")) {
			t.Errorf("no %q", want)
		}
	}
}

// The words stand clear of the line that they belong to, on the rim beside the opening, 75
// mm wide; of wood that reaches past the board they stand by its edge.
func TestRunSideBesideItsLine(t *testing.T) {
	for _, c := range []struct {
		run  model.Edge
		wood geom.Span
		from geom.Length
		to   geom.Length
	}{
		{model.Bottom, geom.Span{Hi: 90 * mm}, 5, 15},
		{model.Top, geom.Span{Hi: 90 * mm}, 75, 85},
		{model.Bottom, geom.Span{Lo: -100 * mm, Hi: 90 * mm}, -35, -25},
		{model.Top, geom.Span{Hi: 400 * mm}, 163, 173},
	} {
		tmpl := bushTemplate()
		tmpl.Run, tmpl.Wood = c.run, c.wood
		n := runSide(tmpl)
		width, _ := n.size()
		box := geom.R(n.corner.X, n.baseline(0).Y, n.corner.X+width, n.corner.Y)
		if rim := geom.R(-110*mm, c.from*mm, -35*mm, c.to*mm); !rim.Contains(box) {
			t.Errorf("run at the %s, wood %v: the words take %v", c.run, c.wood, box)
		}
	}
}
