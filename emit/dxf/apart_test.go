package dxf

import (
	"bytes"
	"iter"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// A slot comes 100 into the left edge of a side of 600 x 400, 50 high, its end round.
func slotted() geom.Contour {
	c := rect(0, 0, 600, 400)
	at := func(x, y geom.Length, bulge float64) geom.Vertex {
		return geom.Vertex{Point: geom.Point{X: x * mm, Y: y * mm}, Bulge: bulge}
	}
	return append(c, at(0, 225, 0), at(75, 225, -1), at(75, 175, 0), at(0, 175, 0))
}

// Contours that a table would cut one into another are refused before the first byte.
func TestContoursTogether(t *testing.T) {
	circle := func(x, y, r geom.Length) geom.Contour {
		return geom.CircleContour(geom.Point{X: x * mm, Y: y * mm}, r*mm)
	}
	recess := func(c geom.Contour) model.Part {
		return model.Part{Recesses: []model.Recess{{Name: "rabbet", Shape: c}}}
	}
	openings := func(shapes ...geom.Contour) (p model.Part) {
		for _, c := range shapes {
			p.Openings = append(p.Openings, model.Opening{Name: "hole", Shape: c})
		}
		return p
	}
	both := func(r, o geom.Contour) model.Part {
		p := recess(r)
		p.Openings = openings(o).Openings
		return p
	}
	slot := func(x geom.Length, depth geom.Length, beside model.Part) model.Part {
		beside.Bores = []model.Bore{{Name: "slot", At: geom.Point{X: x * mm, Y: 125 * mm}, Diameter: 20 * mm, Slot: 20 * mm, Across: true, Depth: depth * mm}}
		return beside
	}
	for _, test := range []struct {
		name string
		part model.Part
		want string // part of the error; empty where it is good
	}{
		{"a rabbet that ends at the slot", recess(rect(0, 225, 10, 400)), ""},
		{"a rabbet along the whole lower edge", recess(rect(0, 0, 600, 10)), ""},
		{"two openings", openings(rect(200, 100, 250, 150), circle(300, 100, 40)), ""},
		{"a hole in a recess", both(rect(100, 300, 300, 360), circle(200, 330, 20)), ""},
		{"a recess up to a hole", both(rect(100, 300, 180, 360), rect(180, 300, 200, 360)), ""},
		{"two recesses side by side", model.Part{Recesses: []model.Recess{{Shape: rect(100, 300, 150, 350)}, {Shape: rect(150, 300, 200, 350)}}}, ""},

		{"a rabbet across the slot", recess(rect(0, 0, 10, 400)), `recess "rabbet" of part p and outline "side" of part p cross`},
		{"a recess into the round end", recess(rect(90, 190, 150, 210)), `recess "rabbet" of part p and outline "side" of part p cross`},
		{"a recess over the edge", recess(rect(590, 100, 603, 110)), `recess "rabbet" of part p and outline "side" of part p cross`},
		{"a recess in the slot", recess(rect(10, 190, 50, 210)), `recess "rabbet" of part p lies beyond the outline`},
		{"a recess as the outline", recess(slotted()), "are the same"},
		{"a hole over the edge", openings(circle(600, 100, 20)), "cross"},
		{"a hole on the edge", openings(rect(550, 100, 600, 120)), "touch"},
		{"a hole beside the part", openings(circle(700, 100, 20)), `opening "hole" of part p lies beyond the outline`},
		{"two holes over one another", openings(circle(300, 100, 40), circle(350, 100, 40)), "cross"},
		{"a cross of two holes", openings(rect(200, 140, 300, 160), rect(240, 100, 260, 200)), "cross"},
		{"corner on edge, and through", openings(rect(200, 100, 300, 200), geom.Contour{
			{Point: geom.Point{X: 250 * mm, Y: 100 * mm}}, {Point: geom.Point{X: 350 * mm, Y: 50 * mm}}, {Point: geom.Point{X: 300 * mm, Y: 200 * mm}},
		}), "cross"},
		{"two holes side by side", openings(rect(200, 100, 250, 150), rect(250, 100, 300, 150)), "touch"},
		{"a hole there twice", openings(circle(300, 100, 40), circle(300, 100, 40).Reversed()), "are the same"},
		{"a slot in a recess", slot(225, 0, recess(rect(200, 100, 250, 150))), ""},
		{"a slot 1 mm from a hole", slot(261, 0, openings(rect(200, 100, 250, 150))), ""},
		{"a slot along a hole", slot(260, 0, openings(rect(200, 100, 250, 150))), `opening "hole" of part p and slot "slot" of part p touch`},
		{"a slot over the edge of a hole", slot(255, 0, openings(rect(200, 100, 250, 150))), "cross"},
		{"a blind slot over the edge of a recess", slot(255, 5, recess(rect(200, 100, 250, 150))), ""},
		{"a hole half in a recess", both(rect(100, 300, 200, 360), circle(200, 330, 20)), `recess "rabbet" of part p and opening "hole" of part p cross`},
	} {
		test.part.ID, test.part.Name, test.part.Outline = "p", "side", slotted()
		var file bytes.Buffer
		err := WritePart(&file, &test.part, Options{})
		switch {
		case test.want == "" && err != nil:
			t.Errorf("%s: refused: %v", test.name, err)
		case test.want != "" && (err == nil || !strings.Contains(err.Error(), test.want)):
			t.Errorf("%s: error %v, want %q", test.name, err, test.want)
		case test.want != "" && file.Len() > 0:
			t.Errorf("%s: %d bytes are written of what is refused", test.name, file.Len())
		}
	}
}

// In many small tiles as in one, contours are refused exactly where the same looks at each
// pair of them find a fault.
func TestContoursTogetherAgainstPairs(t *testing.T) {
	seen := map[bool]int{}
	rapid.Check(t, func(t *rapid.T) {
		p := drawCrowded(t)
		all := first(p, &Options{}).shapes(&Options{})
		box, count := p.Outline.Bounds(), 0
		for s := range all {
			box, count = box.Union(new(room).contour(&s.form).Bounds()), count+1
		}
		want := pairsApart(all)
		seen[want]++
		for _, most := range []limits{usual, {cells: 1 << 10, held: 1 << 13}, {cells: 64, held: 4}, {cells: 16, held: 1}} {
			if err := validateTogether(all, count, box, most); (err == nil) != want {
				t.Errorf("%v: %v, in pairs: good is %t", most, err, want)
			}
		}
	})
	if seen[true] == 0 || seen[false] == 0 {
		t.Errorf("good and not: %v", seen)
	}
}

// drawCrowded draws openings and recesses here and there in a side, and over its edge.
func drawCrowded(t *rapid.T) *model.Part {
	p := &model.Part{ID: "p", Outline: slotted()}
	at := func(most int, name string) geom.Length {
		return geom.Length(rapid.IntRange(0, most).Draw(t, name)) * 25
	}
	for range rapid.IntRange(0, 12).Draw(t, "contours") {
		x, y := at(23, "x")+1, at(15, "y")+1
		size := [...]geom.Length{2, 8, 23, 24, 25, 26, 60, 150}[rapid.IntRange(0, 7).Draw(t, "size")]
		shape := rect(x, y, x+size, y+size)
		switch rapid.IntRange(0, 3).Draw(t, "shape") {
		case 0:
			shape = geom.CircleContour(geom.Point{X: (x + size/2) * mm, Y: (y + size/2) * mm}, size/2*mm)
		case 1:
			shape = rect(x, y, x+size, y+2)
		case 2:
			shape = rect(x, y, x+size, y+size)[:3]
		}
		if rapid.IntRange(0, 3).Draw(t, "recess") == 0 {
			p.Recesses = append(p.Recesses, model.Recess{Shape: shape})
		} else {
			p.Openings = append(p.Openings, model.Opening{Shape: shape})
		}
	}
	return p
}

// pairsApart reports whether no two contours of a part lie as they must not, and all are
// within its outline.
func pairsApart(all iter.Seq[shape]) bool {
	var polygons [][]geom.Point
	var ways []way
	for s := range all {
		polygons, ways = append(polygons, new(room).contour(&s.form).Chords()), append(ways, s.way())
	}
	for i, p := range polygons {
		for j, q := range polygons[:i] {
			how := relate(p, q)
			if how > touching || how == touching && ways[i] <= around && ways[j] <= around {
				return false
			}
		}
		if ways[i] != around && !inside(p, polygons[len(polygons)-1]) {
			return false
		}
	}
	return true
}
