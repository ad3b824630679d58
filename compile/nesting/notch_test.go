package nesting_test

import (
	"testing"

	"barwright/compile/geom"
	"barwright/compile/nesting"
	"barwright/compile/nesting/nestingtest"
)

// TestNotches lays out lists that need a sheet less where pieces lie in notches.
func TestNotches(t *testing.T) {
	size := func(x, y nesting.Length) nesting.Size { return nesting.Size{X: x, Y: y} }
	corner := func(x, y, w, h nesting.Length, turns bool) nesting.Piece {
		return nesting.Piece{Size: size(x, y), Turns: turns, Notches: []geom.Rect{geom.R(x-w, y-h, x, y)}}
	}
	whole := func(x, y nesting.Length, turns bool) nesting.Piece {
		return nesting.Piece{Size: size(x, y), Turns: turns}
	}
	tests := map[string]struct {
		sheet  nesting.Size
		kerf   nesting.Length
		pieces []nesting.Piece
		sheets int
	}{
		"a piece in a notch":   {size(100, 100), 4, []nesting.Piece{corner(100, 100, 60, 60, false), whole(56, 56, false)}, 1},
		"no room for the kerf": {size(100, 100), 4, []nesting.Piece{corner(100, 100, 60, 60, false), whole(57, 56, false)}, 2},
		"two in each other":    {size(142, 92), 2, []nesting.Piece{corner(100, 60, 60, 30, false), corner(100, 60, 60, 30, false)}, 1},
		"two with less room":   {size(141, 92), 2, []nesting.Piece{corner(100, 60, 60, 30, false), corner(100, 60, 60, 30, false)}, 2},
		"two that turn":        {size(92, 142), 2, []nesting.Piece{corner(100, 60, 60, 30, true), corner(100, 60, 60, 30, true)}, 1},
		"a square that turns":  {size(202, 100), 2, []nesting.Piece{corner(100, 100, 60, 60, true), corner(100, 100, 60, 60, true), whole(118, 58, false)}, 1},
		"one that does not":    {size(202, 100), 2, []nesting.Piece{corner(100, 100, 60, 60, false), corner(100, 100, 60, 60, false), whole(118, 58, false)}, 2},
		"a window": {size(100, 100), 3, []nesting.Piece{
			{Size: size(100, 100), Notches: []geom.Rect{geom.R(20, 20, 80, 80)}}, whole(54, 10, true), whole(54, 41, false),
		}, 1},
		"a cross": {size(90, 90), 0, []nesting.Piece{
			{Size: size(90, 90), Notches: []geom.Rect{geom.R(0, 0, 30, 30), geom.R(60, 0, 90, 30), geom.R(0, 60, 30, 90), geom.R(60, 60, 90, 90)}},
			whole(30, 30, false), whole(30, 30, false), whole(30, 30, false), whole(30, 30, false),
		}, 1},
	}
	for name, c := range tests {
		t.Run(name, func(t *testing.T) {
			j := &nesting.Job{Pieces: c.pieces, Sheets: []nesting.Sheet{{Size: c.sheet, Price: 1}}, Kerf: c.kerf, Free: true, Work: 200_000}
			l := j.Solve()
			if err := nestingtest.Check(j, l); err != nil {
				t.Fatal(err)
			}
			if len(l.Used) != c.sheets || len(l.Out) > 0 {
				t.Errorf("%d sheets, out %v: %+v", len(l.Used), l.Out, l.Used)
			}
		})
	}
}
