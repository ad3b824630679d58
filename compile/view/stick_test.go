package view

import (
	"fmt"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/layout"
	"barwright/compile/model"
	"barwright/lang/length"

	"pgregory.net/rapid"
)

// Whatever is cut from sticks, their picture can be read: no text meets another, each piece lies
// where the layout has it, within its stick, and bears its label and its length once; the note has
// them of what is too crowded.
func TestSticksCanBeRead(t *testing.T) {
	const mm = length.Millimetre
	rapid.Check(t, func(t *rapid.T) {
		stock := model.Stick{Name: "stick.batten", Width: 38 * mm, Thickness: 38 * mm, Ends: 20 * mm, Lengths: []model.StickLength{{Length: 2400 * mm}, {Length: 3600 * mm}}}
		m := &model.Model{
			Build: model.Build{Unit: length.Millimetres, Marks: mm},
			Stock: model.Stock{Sticks: []model.Stick{stock}},
			Saw:   model.Saw{Kerf: 3 * mm},
		}
		for i := range rapid.IntRange(1, 25).Draw(t, "parts") {
			long := Length(rapid.Int64Range(30, 2300).Draw(t, "length")) * mm
			m.Parts = append(m.Parts, model.Part{ID: fmt.Sprint(i), Label: fmt.Sprintf("PIECE-%d", i), Stock: stock.Name, Kind: model.Lumber, Thickness: 38 * mm,
				Outline: geom.RectContour(geom.R(0, 0, long, 38*mm))})
		}
		m.Layouts, _ = layout.Layouts(m.Parts, m.Stock, layout.Shop{Saw: m.Saw, Work: 2000})
		views := Sticks(m)
		if len(views) != 1 {
			t.Fatalf("%d views", len(views))
		}
		v := &views[0]
		if f := faults(v); len(f) > 0 {
			t.Fatal(strings.Join(f, "\n"))
		}
		var pieces, sticks []model.Shape
		for _, s := range v.Shapes {
			switch s.Kind {
			case model.ShapeFraming:
				pieces = append(pieces, s)
			case model.ShapeOpening:
				sticks = append(sticks, s)
			}
		}
		if len(pieces) != len(m.Parts) || len(sticks) != len(m.Layouts[0].Blanks) {
			t.Fatalf("%d pieces of %d sticks", len(pieces), len(sticks))
		}
		for k, b := range m.Layouts[0].Blanks {
			stick := sticks[k].Lines.Bounds()
			if stick.X != (geom.Span{Hi: b.Length}) {
				t.Fatalf("stick %d is drawn from %v", k, stick.X)
			}
			for _, p := range b.Placed {
				at := pieces[0].Lines.Bounds()
				if pieces[0].Part != p.Part || at.X != p.At.X || at.Y != stick.Y {
					t.Fatalf("%s is drawn at %v, not %v", p.Part, at, p.At.X)
				}
				pieces = pieces[1:]
				if n := bearing(v, "PIECE-"+p.Part, fmt.Sprint(int64(p.At.X.Size()/mm))); n != 1 {
					t.Fatalf("PIECE-%s stands %d times with its length", p.Part, n)
				}
			}
		}
	})
}

// bearing counts how often a label stands with a length: after it, or as the line below it, or in
// the note.
func bearing(v *model.View, label, long string) (n int) {
	_, crowded, _ := strings.Cut(strings.TrimSuffix(v.Note, "."), " There is no room to name: ")
	for _, name := range strings.Split(crowded, "; ") {
		if name == label+" "+long {
			n++
		}
	}
	for i, text := range v.Texts {
		switch {
		case text.Text == label+" "+long:
			n++
		case text.Text == label && i+1 < len(v.Texts) && v.Texts[i+1].Text == long:
			n++
		}
	}
	return n
}
