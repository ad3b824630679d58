package main

import (
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// Lines on a part end where its wood does: slides begin on the banding of the front edge.
func TestMarksLieOnTheirParts(t *testing.T) {
	marks := 0
	for _, name := range examples {
		for file, f := range read(t, compiled(t, name)) {
			if strings.HasPrefix(file, "sheets/") {
				continue // many parts in one file
			}
			var box geom.Rect
			for _, c := range f.Contours {
				if c.Layer == "EDGE" {
					box = c.Shape.Bounds()
				}
			}
			for _, l := range f.Lines {
				if l.Layer != "MARK" && l.Layer != "SCRIBE" {
					continue
				}
				marks++
				if !box.Contains(geom.R(l.From.X, l.From.Y, l.From.X, l.From.Y)) || !box.Contains(geom.R(l.To.X, l.To.Y, l.To.X, l.To.Y)) {
					t.Errorf("%s, %s: a line from %v to %v in %v", name, file, l.From, l.To, box)
				}
			}
		}
	}
	if marks == 0 {
		t.Error("no file has a mark")
	}
}

// Stretchers stand square in a divider's two notches, so that both are cleared; nothing
// stands in the recess for the feet of a side.
func TestDividersAreClearedForStretchers(t *testing.T) {
	m := compiled(t, "boatshed")
	m.Table.Relief, m.Table.Bit = "diagonal", 3*length.Millimetre
	for label, want := range map[string]int{"CUPS-DV1": 2, "KETTLE-L": 0} {
		p := partLabelled(t, m, label)
		if got := relieved(p, &m.Table); got.Outline != want || len(got.Part.Outline) != len(p.Outline)+want {
			t.Errorf("%s: %d corners of the outline are cleared, want %d", label, got.Outline, want)
		}
	}
	files := read(t, m)
	var notes []string
	for _, text := range files["parts/CORNER-F.dxf"].Texts {
		notes = append(notes, text.Text)
	}
	if all := strings.Join(notes, " "); !strings.Contains(all, "1 mark: scribe to the wall, edge bevelled 0.4 degrees") || strings.Contains(all, "cleared") {
		t.Errorf("the filler's note is %q", all)
	}
}

func partLabelled(t *testing.T, m *model.Model, label string) *model.Part {
	t.Helper()
	for i := range m.Parts {
		if m.Parts[i].Label == label {
			return &m.Parts[i]
		}
	}
	t.Fatalf("no part %s", label)
	return nil
}
