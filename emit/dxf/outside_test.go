package dxf

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/dxf/dxftest"
	"barwright/lang/length"
)

// variedParts are one of each thing that a file can hold.
func variedParts() []*model.Part {
	v := func(x, y length.Length, bulge float64) geom.Vertex {
		return geom.Vertex{Point: geom.Point{X: x * mm, Y: y * mm}, Bulge: bulge}
	}
	outlined := func(id string, c geom.Contour) *model.Part {
		return &model.Part{ID: id, Label: id, Name: "Böschung ½″", Stock: "sheet.ply", Thickness: 18 * mm, Outline: c}
	}
	inch := geom.RectContour(geom.R(0, 0, 95*length.Inch+33*length.Inch/64, 23*length.Inch+length.Inch/64))
	board := outlined("groove", rect(0, 0, 800, 500))
	board.Recesses = []model.Recess{
		{Name: "groove", Shape: rect(0, 40, 800, 46), Depth: 9 * mm, Open: []model.Edge{model.LeftEdge, model.RightEdge}},
		{Name: "rabbet", Shape: rect(0, 490, 800, 500), Depth: 6 * mm, Open: []model.Edge{model.LeftEdge, model.Top, model.RightEdge}},
	}
	counter := outlined("counter", rect(0, 0, 1900, 635))
	counter.Openings = []model.Opening{
		{Name: "sink", Shape: geom.RoundedContour(geom.R(300*mm, 120*mm, 700*mm, 420*mm), 50*mm).Reversed()},
		{Name: "tap", Shape: geom.CircleContour(geom.Point{X: 500 * mm, Y: 560 * mm}, 17_500_000).Reversed()},
	}
	return []*model.Part{
		counter,
		rectanglePart(),
		notchedPart(),
		board,
		outlined("inch", inch),
		outlined("rounded", geom.RoundedContour(geom.R(-5*mm, -7*mm, 700*mm, 300*mm), 33_333_333)),
		outlined("disc", geom.CircleContour(geom.Point{X: 9 * mm}, 123_456_789)),
		outlined("clockwise", notchedOutline().Reversed()),
		outlined("crescent", geom.Contour{v(0, 0, 1), v(400, 0, -0.9)}),
		outlined("slanted", geom.Contour{v(0, 0, 0), v(400, 0, 0), v(417, 333, 0.123456789), v(3, 350, 0)}),
		outlined("narrow", rect(0, 0, 900, 12)), // its note goes below
		perforated(60),
	}
}

// An independent reader finds nothing wrong with the files, and finds the
// contours, areas and boxes of the parts in them: of one of each thing that a file
// can hold, and of 200 drawn at random, from seeds that stay.
func TestInspected(t *testing.T) {
	all := variedParts()
	drawn := rapid.Custom(drawPart)
	for seed := range 200 {
		all = append(all, drawn.Example(seed))
	}
	dir := t.TempDir()
	var files []string
	var parts []*model.Part
	for _, version := range []Version{R12, R2000} {
		for i, p := range all {
			path := filepath.Join(dir, fmt.Sprintf("%d-%d.dxf", version, i))
			if err := os.WriteFile(path, written(t, p, Options{Version: version, Text: true}), 0o644); err != nil {
				t.Fatal(err)
			}
			files, parts = append(files, path), append(parts, p)
		}
	}
	for i, r := range dxftest.Inspect(t, files) {
		r.Check(t, parts[i])
		if want := len((view{part: parts[i]}).lines(&Options{})); len(r.Texts) != want {
			t.Errorf("%s: %d texts, want %d", r.File, len(r.Texts), want)
		}
		if want := [...]string{"AC1009", "AC1015"}[i/len(all)]; r.Version != want {
			t.Errorf("%s: version %s, want %s", r.File, r.Version, want)
		}
	}
}
