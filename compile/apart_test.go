package compile

import (
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// Two L of 1000 x 600 mm lie in each other, their outlines 8 mm apart everywhere, though the
// rectangles round them overlap.
func TestOutlinesAreApart(t *testing.T) {
	const mm = length.Millimetre
	m := &model.Model{}
	for _, corners := range [][][2]length.Length{
		{{0, 0}, {1000, 0}, {1000, 300}, {400, 300}, {400, 600}, {0, 600}},
		{{0, 300}, {600, 300}, {600, 0}, {1000, 0}, {1000, 600}, {0, 600}},
	} {
		p := model.Part{ID: string(rune('a' + len(m.Parts)))}
		for _, c := range corners {
			p.Outline = append(p.Outline, geom.Vertex{Point: geom.Point{X: c[0] * mm, Y: c[1] * mm}})
		}
		m.Parts = append(m.Parts, p)
	}
	placed := []model.Placed{{Part: "a", At: geom.R(0, 0, 1000*mm, 600*mm)}, {Part: "b", At: geom.R(408*mm, 8*mm, 1408*mm, 608*mm)}}
	if a, b, apart := tooNear(m.PartsByID(), placed, 8*mm, nil); a != nil {
		t.Errorf("%v and %v are %d nm apart", a, b, apart)
	}
	if a, b, apart := tooNear(m.PartsByID(), placed, 8*mm+1, nil); a != &placed[0] || b != &placed[1] || apart != 8*mm {
		t.Errorf("a wider bit: %v and %v are %d nm apart, want 8 mm", a, b, apart)
	}
	if a, _, _ := tooNear(m.PartsByID(), placed, 8*mm, map[string]model.Length{"b": 9 * mm}); a == nil {
		t.Error("a recess that runs on for 9 mm does not reach the other")
	}
}
