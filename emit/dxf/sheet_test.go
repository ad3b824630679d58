package dxf

import (
	"bytes"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"

	"github.com/google/go-cmp/cmp"
)

// An L of 1000 x 600 mm without its upper right 600 x 300, and another without its upper right
// 400 x 700 that lies turned: its own x runs up the sheet, so that the notch is at the upper left.
// It goes over the first with what is left below its notch, 8 mm from it: each area is that of an L.
func TestSheetOfPartsInNotches(t *testing.T) {
	l := func(label string, x, y, w, h length.Length) *model.Part {
		p := &model.Part{Label: label}
		for _, c := range [][2]length.Length{{0, 0}, {x, 0}, {x, y - h}, {x - w, y - h}, {x - w, y}, {0, y}} {
			p.Outline = append(p.Outline, geom.Vertex{Point: geom.Point{X: c[0] * mm, Y: c[1] * mm}})
		}
		return p
	}
	s := &Sheet{
		Stock: &model.Sheet{Name: "sheet.birch"}, Number: 1, Of: 1, Kerf: 8 * mm,
		Blank: &model.Blank{Length: 1420 * mm, Width: 1000 * mm, Placed: []model.Placed{
			{At: geom.R(0, 0, 1000*mm, 600*mm)}, {At: geom.R(408*mm, 308*mm, 1408*mm, 908*mm), Turned: true},
		}},
		Parts: []*model.Part{l("ONE", 1000, 600, 600, 300), l("OTHER", 600, 1000, 400, 700)},
	}
	var b bytes.Buffer
	if err := WriteSheet(&b, s, Options{}); err != nil {
		t.Fatal(err)
	}
	// 1000 x 600 - 600 x 300 is 420 000 mm², and 1000 x 600 - 700 x 400 is 320 000.
	want := []string{"SHEET 1420000 0,0 1420,1000", "EDGE 420000 0,0 1000,600", "EDGE 320000 408,308 1408,908"}
	if diff := cmp.Diff(want, told(readBack(t, b.Bytes()))); diff != "" {
		t.Error(diff)
	}
}
