package drainway_test

import (
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/drainway"
	"barwright/compile/geom"
	"barwright/lang/length"
)

const mm = length.Millimetre

// touching is what is let pass.
const touching = mm / 10

// ask is a pipe of 40 that falls 2 in 100 from (600, 300) to (0, 60), 300 high at the wall's
// face 50 beyond, among bodies.
func ask(solids ...drainway.Solid) *drainway.Ask {
	return &drainway.Ask{
		From: geom.Point{X: 600 * mm, Y: 300 * mm}, To: geom.Point{Y: 60 * mm},
		Beyond: 50 * mm, Height: 300 * mm, Slope: 0.02, Bend: 120 * mm, Diameter: 40 * mm, Clearance: 3 * mm, Edge: 12 * mm, Mark: mm,
		Within: geom.R(-100*mm, 0, 900*mm, 580*mm), Trap: box(580, 620, 280, 320, 400, 600), Solids: solids,
	}
}

func box(u0, u1, v0, v1, z0, z1 geom.Length) geom.Box {
	return geom.Box{U: geom.Span{Lo: u0 * mm, Hi: u1 * mm}, V: geom.Span{Lo: v0 * mm, Hi: v1 * mm}, Z: geom.Span{Lo: z0 * mm, Hi: z1 * mm}}
}

// TestRoundABody works the way round a drawer out by hand. The pipe's line at v = 60 takes
// 40 to 80; the drawer begins at 70 and ends at 400, from u = 100 to 400. Behind it the pipe
// lies at 70 - 20 - 3 = 47: 253 across, 600 along and 13 across again. The arm is 866 + 50 -
// 120 = 796, its fall 15.92; at the first bend 796 - 133 = 663 are left, 13.26 up, at the
// second 63, 1.26 up, and at the stub's end 50, which is 1.
func TestRoundABody(t *testing.T) {
	way := drainway.Lay(ask(drainway.Solid{Box: box(100, 400, 70, 400, 250, 400)}))
	want := []geom.Spot{
		{U: 600 * mm, V: 300 * mm, Z: 315*mm + 920_000},
		{U: 600 * mm, V: 47 * mm, Z: 313*mm + 260_000},
		{V: 47 * mm, Z: 301*mm + 260_000},
		{V: 60 * mm, Z: 301 * mm},
	}
	if len(way.Stopped) > 0 || len(way.Points) != len(want) || way.Arm != 796*mm || way.Fall != 15*mm+920_000 {
		t.Fatalf("the way is %+v", way)
	}
	for i, p := range way.Points {
		if p != want[i] {
			t.Errorf("point %d is %v; it should be %v", i+1, p, want[i])
		}
	}
}

// TestBoardsAreBored: a board across the line from u = 200 to 218 is bored at 209, where 259 are
// left: 5.18 up. Its hole is 40 x sqrt(1.0004) + 18 x 0.02 + 6 = 46.368, 47 in whole
// millimetres. One that refuses the hole stops the pipe, and so does one along it.
func TestBoardsAreBored(t *testing.T) {
	board := drainway.Solid{Box: box(200, 218, 0, 580, 0, 900), Axis: geom.U, Bores: func(geom.Box) bool { return true }}
	way := drainway.Lay(ask(board))
	want := drainway.Hole{At: geom.Spot{U: 209 * mm, V: 60 * mm, Z: 305*mm + 180_000}, Diameter: 47 * mm}
	if len(way.Holes) != 1 || way.Holes[0] != want || len(way.Stopped) > 0 {
		t.Errorf("the way is %+v; its hole should be %+v", way, want)
	}
	board.Bores = func(geom.Box) bool { return false }
	if way := drainway.Lay(ask(board)); len(way.Holes) > 0 || len(way.Stopped) != 1 {
		t.Errorf("through a board that refuses: %+v", way)
	}
	shelf := drainway.Solid{Box: box(-100, 900, 0, 580, 300, 318), Axis: geom.Z, Bores: func(geom.Box) bool { return true }}
	if way := drainway.Lay(ask(shelf)); len(way.Holes) > 0 || len(way.Stopped) != 1 {
		t.Errorf("along a shelf: %+v", way)
	}
	hang := ask(shelf)
	hang.Height, hang.Hang = 200*mm, 500*mm
	if way := drainway.Lay(hang); len(way.Holes) != 1 || way.Holes[0].At.Z != 309*mm || way.Points[0].Z != 500*mm || len(way.Stopped) > 0 {
		t.Errorf("down through a shelf: %+v", way)
	}
}

// TestNothingIsMet walks pipes among bodies drawn at random in steps of a millimetre. Where
// nothing stops one, no point of its section is in a body but in the hole of a board, and it
// never rises.
func TestNothingIsMet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := ask()
		for range rapid.IntRange(0, 6).Draw(t, "bodies") {
			at := func(name string, hi int) geom.Length { return geom.Length(rapid.IntRange(-50, hi).Draw(t, name)) }
			u, v, z := at("u", 700), at("v", 500), at("z", 400)
			s := drainway.Solid{Box: box(u, u+18, v, v+at("deep", 300)+60, z, z+at("high", 500)+60)}
			switch rapid.SampledFrom([]string{"board", "body"}).Draw(t, "kind") {
			case "board":
				s.Axis = geom.U
				s.Bores = func(hole geom.Box) bool { return s.Box.V.Contains(hole.V) && s.Box.Z.Contains(hole.Z) }
			case "body":
				s.Box.U.Hi += at("wide", 300)*mm + 50*mm
			}
			a.Solids = append(a.Solids, s)
		}
		way := drainway.Lay(a)
		if len(way.Stopped) > 0 {
			return
		}
		holes := map[int]drainway.Hole{} // lookup only
		for _, h := range way.Holes {
			holes[h.Solid] = h
		}
		for i := 1; i < len(way.Points); i++ {
			from, to := way.Points[i-1], way.Points[i]
			if to.Z > from.Z {
				t.Fatalf("it rises from %v to %v", from, to)
			}
			steps := (length.Apart(from.U, to.U) + length.Apart(from.V, to.V)) / mm
			for n := range steps {
				on := func(a, b geom.Length) geom.Length { return a + (b-a)*n/steps }
				p := geom.Spot{U: on(from.U, to.U), V: on(from.V, to.V), Z: on(from.Z, to.Z)}
				section(t, a, holes, p, from.U == to.U)
			}
		}
	})
}

// section looks at the corners, the sides and the middle of the square about a pipe.
func section(t *rapid.T, a *drainway.Ask, holes map[int]drainway.Hole, at geom.Spot, across bool) {
	// The bend of the trap is level where a straight line between points is not: 2 in 100 of it.
	const slack = 3 * mm
	r := a.Diameter/2 - touching - slack
	for _, side := range []geom.Length{-r, 0, r} {
		for _, up := range []geom.Length{-r, 0, r} {
			p := at
			p.Z += up
			if across {
				p.U += side
			} else {
				p.V += side
			}
			for i := range a.Solids {
				s := &a.Solids[i]
				if s.Box.Overlaps(a.Trap) || !s.Box.U.Holds(p.U) || !s.Box.V.Holds(p.V) || !s.Box.Z.Holds(p.Z) {
					continue
				}
				h, bored := holes[i]
				if !bored || !geom.About(h.At.V, h.Diameter).Holds(p.V) || !geom.About(h.At.Z, h.Diameter).Holds(p.Z) {
					t.Fatalf("%v is in body %d, %v", p, i, s.Box)
				}
			}
		}
	}
}
