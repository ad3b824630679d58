package dxftest

import (
	"testing"

	"barwright/compile/geom"
)

// The comparison itself finds what differs.
func TestParsedDifferences(t *testing.T) {
	square := geom.RectContour(geom.R(0, 0, 5_000_000, 5_000_000))
	good := func() Parsed {
		return Parsed{Unit: 4, Max: [2]float64{5, 5}, Layers: []string{"EDGE", "NOTE"}, Entities: []Entity{
			{Type: "POLYLINE", Layer: "EDGE", Closed: true, Vertices: [][3]float64{{5, 0, 0}, {5, 5, 0}, {0, 5, 0}, {0, 0, 0}}},
			{Type: "TEXT", Layer: "NOTE", Text: "L"},
		}}
	}
	want := []Contour{{"EDGE", square}}
	p := good()
	if d := p.Differences(want, 0); len(d) != 0 {
		t.Error(d)
	}
	if d := p.Differences(want, 1); len(d) != 1 {
		t.Errorf("a line is missing: %v", d)
	}
	p = good()
	p.Layers = append(p.Layers, "SCRIBE")
	p.Entities = append(p.Entities, Entity{Type: "POLYLINE", Layer: "SCRIBE", Vertices: [][3]float64{{0, 1, 0}, {2, 1, 0}, {5, 2, 0}}})
	if d := p.Differences(want, 2); len(d) != 0 {
		t.Error(d)
	}
	if d := p.Differences(want, 1); len(d) != 1 {
		t.Errorf("a scribe has a bend more: %v", d)
	}
	for name, spoil := range map[string]func(*Parsed){
		"open":            func(p *Parsed) { p.Entities[0].Closed = false },
		"another layer":   func(p *Parsed) { p.Entities[0].Layer = "NOTE" },
		"a bulge":         func(p *Parsed) { p.Entities[0].Vertices[0][2] = 1e-6 },
		"a corner":        func(p *Parsed) { p.Entities[0].Vertices[1][0] -= 2e-6 },
		"no such layer":   func(p *Parsed) { p.Entities[1].Layer = "TEXTS" },
		"another box":     func(p *Parsed) { p.Max[0] = 6 },
		"inches":          func(p *Parsed) { p.Unit = 1 },
		"nothing":         func(p *Parsed) { p.Entities = nil },
		"another contour": func(p *Parsed) { p.Entities = append(p.Entities, p.Entities[0]) },
		"a circle in place": func(p *Parsed) {
			p.Entities[0] = Entity{Type: "CIRCLE", Layer: "EDGE", Centre: [2]float64{2.5, 2.5}, Radius: 2.5}
		},
	} {
		p := good()
		spoil(&p)
		if len(p.Differences(want, 0)) == 0 {
			t.Errorf("%s: no difference is found", name)
		}
	}
}
