package layout

import (
	"slices"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"

	"github.com/google/go-cmp/cmp"
)

// side is a cabinet side, 24 in deep and 30 in high, its grain upright.
func side(label, name, owner string) model.Part {
	return model.Part{
		Label: label, Name: name, Owner: owner, Kind: model.Panel, Stock: "sheet.birch", Thickness: 18 * mm, Grain: model.GrainY,
		Outline:  geom.RectContour(geom.R(0, 0, 24*inch, 30*inch)),
		Recesses: []model.Recess{{Name: "groove", Shape: geom.RectContour(geom.R(0, 0, inch, 30*inch)), Depth: 9 * mm}},
	}
}

func TestCuts(t *testing.T) {
	left, other := side("A-L", "left side", "cabinet a"), side("B-L", "left side", "cabinet b")
	right := side("A-R", "right side", "cabinet a")

	begunElsewhere := side("C-L", "left side", "cabinet c")
	o := begunElsewhere.Outline
	begunElsewhere.Outline = append(slices.Clone(o[2:]), o[:2]...)
	begunElsewhere.Recesses[0].Name = "for the back"

	runTwice := side("D-L", "left side", "cabinet d") // reversing leaves negative zeros
	runTwice.Outline = o.Reversed().Reversed()

	mirrored := side("A-M", "left side", "cabinet a")
	mirrored.Recesses[0].Shape = mirrored.Recesses[0].Shape.Shifted(geom.Point{X: 23 * inch})
	deeper := side("A-D", "left side", "cabinet a")
	deeper.Recesses[0].Depth = 10 * mm
	holed := side("A-H", "left side", "cabinet a")
	holed.Openings = []model.Opening{{Name: "outlet", Shape: geom.CircleContour(geom.Point{X: 9 * inch, Y: 9 * inch}, inch).Reversed()}}
	hole := model.Opening{Name: "pipe", Shape: geom.CircleContour(geom.Point{X: 5 * inch, Y: 9 * inch}, inch).Reversed()}
	twoHoles, otherOrder := side("A-2", "left side", "cabinet a"), side("A-3", "left side", "cabinet a")
	twoHoles.Openings = []model.Opening{holed.Openings[0], hole}
	otherOrder.Openings = []model.Opening{hole, holed.Openings[0]}
	across := side("A-X", "left side", "cabinet a")
	across.Grain = model.GrainX

	long := studs(2, 90*inch)
	long[0].Label, long[1].Label = "S2", "S1"
	long[0].Name, long[1].Name = "wall stud 1", "wall stud 12"
	plate := studs(1, 96*inch)[0]
	plate.Label, plate.Name = "T", "plate2"
	skin := boards(1, "sheet.birch", 10*inch, 40*inch, model.GrainNone)[0]
	skin.Thickness, skin.Label, skin.Name = 6*mm, "K", "skin"

	parts := append(long, left, skin, mirrored, other, right, deeper, holed, twoHoles, otherOrder, across, begunElsewhere, runTwice, plate)
	got := Cuts(parts)

	panel := func(name string, n int, length, width, thick Length, g model.Grain, labels, where []string) model.Cut {
		return model.Cut{Parts: labels, Name: name, Stock: "sheet.birch", Kind: model.Panel, Count: n,
			Length: length, Width: width, Thickness: thick, Grain: g, Where: where}
	}
	stick := func(name string, n int, length Length, labels ...string) model.Cut {
		return model.Cut{Parts: labels, Name: name, Stock: "stick", Kind: model.Lumber, Count: n, Length: length,
			Width: 3*inch + inch/2, Thickness: inch + inch/2, Grain: model.GrainX, Where: []string{""}}
	}
	a := []string{"cabinet a"}
	want := []model.Cut{
		panel("left side", 2, 30*inch, 24*inch, 18*mm, model.GrainY, []string{"A-2", "A-3"}, a),
		panel("left side", 1, 30*inch, 24*inch, 18*mm, model.GrainY, []string{"A-D"}, a),
		panel("left side", 1, 30*inch, 24*inch, 18*mm, model.GrainY, []string{"A-H"}, a),
		panel("left side, right side", 5, 30*inch, 24*inch, 18*mm, model.GrainY,
			[]string{"A-L", "B-L", "A-R", "C-L", "D-L"}, []string{"cabinet a", "cabinet b", "cabinet c", "cabinet d"}),
		panel("left side", 1, 30*inch, 24*inch, 18*mm, model.GrainY, []string{"A-M"}, a),
		panel("left side", 1, 24*inch, 30*inch, 18*mm, model.GrainX, []string{"A-X"}, a),
		panel("skin", 1, 40*inch, 10*inch, 6*mm, model.GrainNone, []string{"K"}, []string{""}),
		stick("plate2", 1, 96*inch, "T"),
		stick("wall stud", 2, 90*inch, "S2", "S1"),
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// Each of these makes another piece of a side; a line drawn on it, or what its
// bores are called, does not.
func TestCutsToldApart(t *testing.T) {
	bore := model.Bore{Name: "pin", At: geom.Point{X: 2 * inch, Y: 9 * inch}, Diameter: 5 * mm, Depth: 10 * mm}
	for name, change := range map[string]func(*model.Part){
		"banded":         func(p *model.Part) { p.Bands = []model.Band{{Edge: model.Top, Stock: "banding.birch", Thickness: mm}} },
		"bored":          func(p *model.Part) { p.Bores = []model.Bore{bore} },
		"bored from far": func(p *model.Part) { p.Bores = []model.Bore{bore}; p.Bores[0].Far = true },
		"slotted":        func(p *model.Part) { p.Bores = []model.Bore{bore}; p.Bores[0].Slot = 10 * mm },
		"sunk":           func(p *model.Part) { p.Bores = []model.Bore{bore}; p.Bores[0].Sink = 9 * mm },
		"good":           func(p *model.Part) { p.Good = model.GoodFar },
	} {
		plain, changed, again := side("A", "left side", "cabinet a"), side("B", "left side", "cabinet a"), side("C", "left side", "cabinet a")
		change(&changed)
		change(&again)
		again.Marks = []model.Mark{{Name: "slide", To: geom.Point{X: inch}}}
		for i := range again.Bores {
			again.Bores[i].Name = "other"
		}
		cuts := Cuts([]model.Part{plain, changed, again})
		if len(cuts) != 2 || cuts[1].Count != 2 {
			t.Errorf("%s: %d lines: %v", name, len(cuts), cuts)
			continue
		}
		if c := cuts[1]; c.Banded != changed.Banded() || c.Good != changed.Good || (name == "banded") != (c.Banded == "top edge") {
			t.Errorf("%s: banded %q, good %s", name, c.Banded, c.Good)
		}
	}
}
