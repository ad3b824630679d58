package dxf

import (
	"slices"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/dxf/dxftest"
	"barwright/lang/length"
)

func TestNoteLines(t *testing.T) {
	p := notchedPart()
	p.Owner, p.Thickness, p.Grain = "Spüle", 18_256_250, model.GrainX
	p.Recesses = append(p.Recesses, model.Recess{Depth: 9_500_000}, model.Recess{Depth: 6 * mm})
	p.Placement = geom.Place(geom.Frame{}, geom.Box{V: geom.Span{Hi: 600 * mm}, Z: geom.Span{Hi: 400 * mm}}, geom.Dir{Axis: geom.U})
	want := []string{
		"SNK-L left side",
		"Spuele",
		"sheet.birch, 18.26 thick",
		"600 x 400 over all",
		"UNITS MM",
		"inside face drawn",
		"grain along x",
		"front edge at the left",
		"2 x recess 6 deep",
		"1 x recess 9.5 deep",
	}
	if got := (view{part: p}).lines(&Options{}); !slices.Equal(got, want) {
		t.Errorf("lines %q, want %q", got, want)
	}
}

// textBox bounds the texts of a file, letters taken as wide as high.
func textBox(f *dxftest.File) geom.Rect {
	var box geom.Rect
	for i, text := range f.Texts {
		r := geom.Rect{
			X: geom.Span{Lo: text.At.X, Hi: text.At.X + text.Height*length.Length(len(text.Text))},
			Y: geom.Span{Lo: text.At.Y, Hi: text.At.Y + text.Height},
		}
		if i == 0 {
			box = r
		}
		box = box.Union(r)
	}
	return box
}

func TestNotePlace(t *testing.T) {
	side := rectanglePart()
	side.Openings = []model.Opening{{Shape: rect(5, 5, 495, 150)}}
	low := rectanglePart()
	low.Outline = rect(0, 0, 500, 40)
	// The bounds of an L are large enough; its legs are not.
	ell := rectanglePart()
	ell.Outline = geom.Contour{}
	for _, p := range []geom.Point{{}, {X: 400}, {X: 400, Y: 30}, {X: 30, Y: 30}, {X: 30, Y: 400}, {Y: 400}} {
		ell.Outline = append(ell.Outline, geom.Vertex{Point: geom.Point{X: p.X * mm, Y: p.Y * mm}})
	}
	slanted := rectanglePart()
	slanted.Outline[3].X = 499 * mm
	for _, test := range []struct {
		name   string
		part   *model.Part
		inside bool
	}{
		{"plain", rectanglePart(), true},
		{"above an opening", side, true},
		{"too low", low, false},
		{"L", ell, false},
		{"notched", notchedPart(), true},
		{"triangle", slanted, true},
	} {
		f := readBack(t, written(t, test.part, Options{Text: true}))
		box := textBox(f)
		outline := f.Contours[len(f.Contours)-1].Shape
		if !test.inside {
			if box.Y.Hi >= 0 || box.X.Lo != 0 {
				t.Errorf("%s: the note is in %v, not below", test.name, box)
			}
			continue
		}
		for _, c := range f.Contours[:len(f.Contours)-1] {
			if c.Shape.Bounds().Overlaps(box) {
				t.Errorf("%s: the note in %v lies over %s", test.name, box, c.Layer)
			}
		}
		for _, corner := range geom.RectContour(box) {
			if !encloses(outline.Chords(), corner.Point) {
				t.Errorf("%s: the note in %v reaches beyond the outline", test.name, box)
			}
		}
	}
}
