package view

import (
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"

	"pgregory.net/rapid"
)

// Whatever lies in a grid, within its rectangle or far beyond, is found as if each thing were asked.
func TestGridMissesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		core := geom.R(-300, -200, 2500, 700)
		lines, boxes := newGrid[seg](core, 10), newGrid[box](core, 10)
		spot := func() geom.Point {
			at := rapid.IntRange(-3000, 5000)
			return geom.Point{X: Length(at.Draw(t, "x")) * 100, Y: Length(at.Draw(t, "y")) * 100}
		}
		line := func() seg {
			from, to := spot(), spot()
			switch rapid.IntRange(0, 3).Draw(t, "way") {
			case 0:
				to.X = from.X
			case 1:
				to.Y = from.Y
			}
			return segOf(from, to)
		}
		turned := func() box {
			size := rapid.IntRange(0, 900)
			turn := rapid.SampledFrom([]geom.Angle{0, 0, 90 * geom.Degree, 30 * geom.Degree}).Draw(t, "turn")
			return boxAt(spot(), Length(size.Draw(t, "w"))*100, Length(size.Draw(t, "h"))*100, turn)
		}
		var allLines []seg
		var allBoxes []box
		for range 30 {
			allLines, allBoxes = append(allLines, line()), append(allBoxes, turned())
		}
		lines.add(allLines...)
		boxes.add(allBoxes...)
		l, b := line(), turned()
		meets, runs, overlaps, under := 0, false, false, false
		for i := range allLines {
			if l.meets(&allLines[i]) {
				meets++
			}
			runs = runs || b.crosses(&allLines[i])
			overlaps = overlaps || b.meets(&allBoxes[i])
			under = under || allBoxes[i].crosses(&l)
		}
		if got := lines.count(l.reach(), 100, l.meets); got != meets {
			t.Errorf("a line meets %d of the lines, not %d", got, meets)
		}
		if got := lines.count(l.reach(), 2, l.meets); got != min(meets, 2) {
			t.Errorf("counted as far as 2 a line meets %d of %d", got, meets)
		}
		if got := crossing(&b, &lines); got != runs {
			t.Errorf("a line runs through the box: %v, not %v", got, runs)
		}
		if got := overlapping(&b, &boxes); got != overlaps {
			t.Errorf("boxes overlap: %v, not %v", got, overlaps)
		}
		if got := boxes.any(l.reach(), func(b *box) bool { return b.crosses(&l) }); got != under {
			t.Errorf("a line runs through one of the boxes: %v, not %v", got, under)
		}
	})
}

// Upright boxes are compared by a short way; the long one says the same.
func TestUprightBoxes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.IntRange(0, 60)
		draw := func() box {
			at := geom.Point{X: Length(size.Draw(t, "x")), Y: Length(size.Draw(t, "y"))}
			turn := rapid.SampledFrom([]geom.Angle{0, 90 * geom.Degree, 180 * geom.Degree}).Draw(t, "turn")
			return boxAt(at, Length(size.Draw(t, "w")), Length(size.Draw(t, "h")), turn)
		}
		a, b := draw(), draw()
		l := segOf(geom.Point{X: Length(size.Draw(t, "ax")), Y: Length(size.Draw(t, "ay"))}, geom.Point{X: Length(size.Draw(t, "bx")), Y: Length(size.Draw(t, "by"))})
		slow := a
		slow.upright = false
		if a.meets(&b) != slow.meets(&b) || a.crosses(&l) != slow.crosses(&l) {
			t.Errorf("%+v, %+v, %+v: %v %v, the long way %v %v", a, b, l, a.meets(&b), a.crosses(&l), slow.meets(&b), slow.crosses(&l))
		}
	})
}

// A drawing that has become too large is given up: it says so by its bounds, and nothing is added to it.
func TestTooLargeIsGivenUp(t *testing.T) {
	as := Type{Height: 10, Suits: func(b geom.Rect) bool { return b.X.Size() <= 1000 }}
	s := newSheet(&model.Model{}, geom.R(0, 0, 900, 100), as, roomShare)
	s.rect(model.ShapePanel, geom.R(0, 0, 980, 100), "", "")
	s.callout(geom.Point{X: 450, Y: 50}, "kettle")
	if s.lost || len(s.view.Texts) != 1 {
		t.Errorf("with its margin of 10 it is 1000 wide, which suits: lost %v, with %d texts", s.lost, len(s.view.Texts))
	}
	s.rect(model.ShapePanel, geom.R(0, 0, 981, 100), "", "")
	s.callout(geom.Point{X: 100, Y: 50}, "urn")
	s.rect(model.ShapePanel, geom.R(0, 0, 5, 5), "", "")
	if v := s.finish(); as.Suits(v.Bounds) || len(v.Texts) != 1 || len(v.Shapes) != 3 {
		t.Errorf("it is %v, with %d texts and %d shapes", v.Bounds, len(v.Texts), len(v.Shapes))
	}
}

// BenchmarkCallouts leads 160 names out of a drawing that is full of lines.
func BenchmarkCallouts(b *testing.B) {
	for b.Loop() {
		s := newSheet(&model.Model{}, geom.R(0, 0, 20_000, 6_000), Type{Height: 100}, roomShare)
		for x := Length(0); x < 20_000; x += 250 {
			s.rect(model.ShapePanel, geom.R(x, 0, x+240, 6_000), "", "")
		}
		for i := range Length(calledOut) {
			s.callout(geom.Point{X: 125 + i%80*250, Y: 1_000 + i/80*4_000}, "drawer 1", "36 × 12")
		}
	}
}
