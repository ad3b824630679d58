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

// Whatever lies on a sheet, its picture can be read: no text meets another or a cut, each part
// lies where the layout has it and bears its label, and each cut its number.
func TestSheetsCanBeRead(t *testing.T) {
	const mm = length.Millimetre
	rapid.Check(t, func(t *rapid.T) {
		m := &model.Model{
			Build: model.Build{Unit: length.Millimetres, Marks: mm},
			Stock: model.Stock{Sheets: []model.Sheet{{Name: "sheet.ply", Length: 2440 * mm, Width: 1220 * mm, Grain: true,
				Offcuts: []model.Offcut{{Length: 700 * mm, Width: 500 * mm, Count: 1}}}}},
			Saw:   model.Saw{Kerf: 3 * mm, Trim: 6 * mm},
			Table: model.Table{Free: rapid.Bool().Draw(t, "free"), Spacing: 8 * mm, Margin: 10 * mm},
		}
		side := rapid.Int64Range(20, 900)
		for i := range rapid.IntRange(1, 25).Draw(t, "parts") {
			outline := geom.RectContour(geom.R(0, 0, Length(side.Draw(t, "x"))*mm, Length(side.Draw(t, "y"))*mm))
			m.Parts = append(m.Parts, model.Part{ID: fmt.Sprint(i), Label: fmt.Sprintf("PART-%d", i), Stock: "sheet.ply", Outline: outline,
				Grain: rapid.SampledFrom([]model.Grain{model.GrainNone, model.GrainX, model.GrainY}).Draw(t, "grain")})
		}
		m.Layouts, _ = layout.Layouts(m.Parts, m.Stock, layout.Shop{Saw: m.Saw, Table: m.Table, Work: 2000})
		views := Sheets(m)
		if len(views) != len(m.Layouts[0].Blanks) {
			t.Fatalf("%d views", len(views))
		}
		for i := range views {
			v, b := &views[i], &m.Layouts[0].Blanks[i]
			if f := faults(v); len(f) > 0 {
				t.Fatal(strings.Join(f, "\n"))
			}
			said := func(begins string) (n int) {
				for _, text := range v.Texts {
					if strings.HasPrefix(text.Text+" ", begins) {
						n++
					}
				}
				_, crowded, _ := strings.Cut(v.Note, " There is no room to name: ")
				for _, text := range strings.Split(strings.TrimSuffix(crowded, "."), "; ") {
					if strings.HasPrefix(text+" ", begins) {
						n++
					}
				}
				return n
			}
			for _, p := range b.Placed {
				if said("PART-"+p.Part+" ") != 1 || !shown(v, p) {
					t.Fatalf("%s is not where it lies, or has no label", p.Part)
				}
			}
			for n := range b.Cuts {
				switch bare := said(fmt.Sprintf("%d ", n+1)); {
				case bare+said(fmt.Sprintf("%d:", n+1)) != 1:
					t.Fatalf("cut %d has no number", n+1)
				case bare == 1 && !strings.Contains(v.Note, fmt.Sprintf(" %d:\u00a0", n+1)):
					t.Fatalf("cut %d has no distance in %q", n+1, v.Note)
				}
			}
			if alone := Captioned(*v); len(faults(&alone)) > 0 || len(alone.Texts) <= len(v.Texts) {
				t.Fatalf("with its caption: %s", strings.Join(faults(&alone), "\n"))
			}
		}
	})
}

func shown(v *model.View, p model.Placed) bool {
	for _, s := range v.Shapes {
		if s.Part == p.Part && s.Lines.Bounds() == p.At {
			return true
		}
	}
	return false
}
