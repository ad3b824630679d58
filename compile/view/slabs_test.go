package view

import (
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view/viewtest"
)

// TestSlabsAreDrawnOnce gives the slabs of the fixture their pieces: what is
// cut out of one has a drawing of its own with the radius of its corners, and
// no other drawing shows a piece beside the slab.
func TestSlabsAreDrawnOnce(t *testing.T) {
	m := viewtest.Bar()
	before := len(Views(m))
	for _, s := range m.Slabs {
		at := geom.Place(s.Frame, s.Box, geom.Dir{Axis: geom.Z})
		m.Parts = append(m.Parts, model.Part{
			ID: s.Kind + "." + s.Name + "/piece-1", Label: s.Name + "-1", Name: "slab", Kind: model.SlabPiece,
			Outline: geom.RectContour(at.Blank()), Placement: at, Thickness: at.Thickness(),
		})
	}
	piece := &m.Parts[len(m.Parts)-1]
	inch := m.Build.Unit.Size()
	piece.Openings = []model.Opening{{Name: "sink basin", Shape: geom.RoundedContour(geom.R(10*inch, 3*inch, 20*inch, 9*inch), inch/2).Reversed()}}
	views := Views(m)
	if len(views) != before+1 {
		t.Errorf("%d drawings more", len(views)-before)
	}
	told := false
	for _, v := range views {
		for _, text := range v.Texts {
			told = told || v.Part == piece.ID && text.Text == "corners r 1/2"
		}
		for _, shape := range v.Shapes {
			for _, s := range m.Slabs {
				if shape.Part == s.Kind+"."+s.Name+"/piece-1" && v.Part != shape.Part {
					t.Errorf("%s shows %s", v.Name, shape.Part)
				}
			}
		}
	}
	if !told {
		t.Error("no drawing tells the radius of the cut-out's corners")
	}
}
