package ways_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/graph/path"
	"gonum.org/v1/gonum/graph/simple"
	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/ways"
)

// room is the side of the cube that random scenes stand in.
const room = 6

func box(u0, u1, v0, v1, z0, z1 int) geom.Box {
	span := func(lo, hi int) geom.Span { return geom.Span{Lo: geom.Length(lo), Hi: geom.Length(hi)} }
	return geom.Box{U: span(u0, u1), V: span(v0, v1), Z: span(z0, z1)}
}

func drawSpan(t *rapid.T, least int) (int, int) {
	lo := rapid.IntRange(0, room-least).Draw(t, "lo")
	return lo, rapid.IntRange(lo+least, min(lo+least+4, room)).Draw(t, "hi")
}

func drawBox(t *rapid.T) geom.Box {
	u0, u1 := drawSpan(t, 1)
	v0, v1 := drawSpan(t, 1)
	z0, z1 := drawSpan(t, 1)
	return box(u0, u1, v0, v1, z0, z1)
}

func drawSpot(t *rapid.T) ways.Spot {
	at := rapid.IntRange(0, room)
	return ways.Spot{geom.Length(at.Draw(t, "u")), geom.Length(at.Draw(t, "v")), geom.Length(at.Draw(t, "z"))}
}

func drawBoard(t *rapid.T) ways.Board {
	b := ways.Board{Box: drawBox(t), Normal: geom.Axis(rapid.IntRange(0, 2).Draw(t, "normal"))}
	lo := rapid.IntRange(0, room-2).Draw(t, "board")
	b.Box = b.Box.With(b.Normal, geom.Span{Lo: geom.Length(lo), Hi: geom.Length(lo + 2)})
	b.Rim = b.Box
	if rapid.Bool().Draw(t, "less") {
		b.Shut = append(b.Shut, drawBox(t))
	}
	return b
}

// drawScene has a lane at each whole v, so that a way may run anywhere in the room.
func drawScene(t *rapid.T) (ways.Scene, ways.Ask) {
	var s ways.Scene
	for v := range room + 1 {
		s.Lanes = append(s.Lanes, box(0, room, v, v, 0, room))
	}
	for range rapid.IntRange(0, 5).Draw(t, "solids") {
		s.Solids = append(s.Solids, ways.Solid{Box: drawBox(t), What: "solid"})
	}
	for range rapid.IntRange(0, 4).Draw(t, "boards") {
		b := drawBoard(t)
		b.What = "board"
		s.Boards = append(s.Boards, b)
	}
	a := ways.Ask{From: []ways.Spot{drawSpot(t)}, To: []ways.Spot{drawSpot(t)}}
	for range rapid.IntRange(0, 2).Draw(t, "through") {
		a.Through = append(a.Through, drawBox(t))
	}
	return s, a
}

// step tells whether a way may go one on from p along an axis, and how many holes begin
// there, by where the middle of the step lies.
func step(s *ways.Scene, p ways.Spot, axis int) (holes int, ok bool) {
	mid := [3]float64{float64(p[0]), float64(p[1]), float64(p[2])}
	mid[axis] += 0.5
	within := func(b geom.Box, but geom.Axis) bool {
		for a := geom.U; a <= geom.Z; a++ {
			if side := b.Along(a); a != but && (mid[a] <= float64(side.Lo) || mid[a] >= float64(side.Hi)) {
				return false
			}
		}
		return true
	}
	for _, solid := range s.Solids {
		if within(solid.Box, -1) {
			return 0, false
		}
	}
	for _, b := range s.Boards {
		if !within(b.Box, -1) {
			continue
		}
		if int(b.Normal) != axis {
			return 0, false
		}
		for _, shut := range b.Shut {
			if within(shut, b.Normal) {
				return 0, false
			}
		}
		if p[axis] == b.Box.Along(b.Normal).Lo {
			holes++
		}
	}
	return holes, true
}

// byLibrary is the length of the shortest way and its holes, as gonum finds them over all
// whole points of the room.
func byLibrary(s *ways.Scene, a *ways.Ask) (length, holes int, ok bool) {
	const side, weight = room + 1, 1000
	g := simple.NewWeightedDirectedGraph(0, math.Inf(1))
	id := func(p ways.Spot, layer int) simple.Node {
		return simple.Node(int(p[0]) + side*int(p[1]) + side*side*int(p[2]) + side*side*side*layer)
	}
	onward := func(p ways.Spot, layer int) int {
		for layer < len(a.Through) && p.In(a.Through[layer]) {
			layer++
		}
		return layer
	}
	for n := range side * side * side {
		p := ways.Spot{geom.Length(n % side), geom.Length(n / side % side), geom.Length(n / side / side)}
		for axis := range 3 {
			q := p
			if q[axis]++; q[axis] > room {
				continue
			}
			bores, free := step(s, p, axis)
			if !free {
				continue
			}
			for layer := range len(a.Through) + 1 {
				w := float64(weight + bores)
				g.SetWeightedEdge(g.NewWeightedEdge(id(p, layer), id(q, onward(q, layer)), w))
				g.SetWeightedEdge(g.NewWeightedEdge(id(q, layer), id(p, onward(p, layer)), float64(weight+rebored(s, p, axis))))
			}
		}
	}
	from, to := id(a.From[0], onward(a.From[0], 0)), id(a.To[0], len(a.Through))
	if from == to {
		return 0, 0, true
	}
	if g.Node(int64(from)) == nil || g.Node(int64(to)) == nil {
		return 0, 0, false
	}
	sum := path.DijkstraFrom(from, g).WeightTo(int64(to))
	if math.IsInf(sum, 1) {
		return 0, 0, false
	}
	return int(sum) / weight, int(sum) % weight, true
}

// rebored counts the holes that begin where a step is gone back.
func rebored(s *ways.Scene, p ways.Spot, axis int) (holes int) {
	q := p
	q[axis]++
	for _, b := range s.Boards {
		if int(b.Normal) == axis && q[axis] == b.Box.Along(b.Normal).Hi {
			if _, ok := step(&ways.Scene{Boards: []ways.Board{b}}, p, axis); ok && insideBoard(b, p, axis) {
				holes++
			}
		}
	}
	return holes
}

func insideBoard(b ways.Board, p ways.Spot, axis int) bool {
	for a := geom.U; a <= geom.Z; a++ {
		if side := b.Box.Along(a); int(a) != axis && (p[a] <= side.Lo || p[a] >= side.Hi) {
			return false
		}
	}
	return true
}

// endsWithin reports whether a box ends within a board.
func endsWithin(s *ways.Scene, b geom.Box) bool {
	for _, board := range s.Boards {
		side, own := board.Box.Along(board.Normal), b.Along(board.Normal)
		if board.Box.Overlaps(b) && (side.Lo < own.Lo || own.Hi < side.Hi) {
			return true
		}
	}
	return false
}

func starts(s *ways.Scene, p ways.Spot) bool {
	for _, b := range s.Boards {
		strictly := true
		for a := geom.U; a <= geom.Z; a++ {
			side := b.Box.Along(a)
			strictly = strictly && side.Lo < p[a] && p[a] < side.Hi
		}
		if strictly {
			return true
		}
	}
	return false
}

// TestShortestByLibrary compares ways in random rooms with those that a general graph
// library finds over every whole point: they are as long, with as few holes.
func TestShortestByLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, a := drawScene(t)
		if starts(&s, a.From[0]) || starts(&s, a.To[0]) {
			t.Skip("an end within a board")
		}
		for _, b := range a.Through {
			if endsWithin(&s, b) {
				t.Skip("what it comes through ends within a board")
			}
		}
		w, ok := s.Find(a)
		length, holes, found := byLibrary(&s, &a)
		if ok != found {
			t.Fatalf("found %v, the library %v", ok, found)
		}
		if ok && (int(w.Length) != length || len(w.Holes) != holes) {
			t.Fatalf("%d long with %d holes, the library %d with %d: %v", w.Length, len(w.Holes), length, holes, w.Spots)
		}
		sum := geom.Length(0)
		for i := 1; i < len(w.Spots); i++ {
			sum += w.Spots[i-1].To(w.Spots[i])
		}
		if ok && sum != w.Length {
			t.Fatalf("its pieces are %d long, it says %d", sum, w.Length)
		}
		if !ok && len(w.Spots) > 0 && len(w.Shut) == 0 {
			t.Fatal("no way, and nothing that shuts it")
		}
	})
}

// TestShutBesideBoard lays a way beside a board, where what is shut of it reaches out.
func TestShutBesideBoard(t *testing.T) {
	s := ways.Scene{
		Boards: []ways.Board{{Box: box(2, 4, 0, 3, 0, 3), Rim: box(2, 4, 0, 3, 0, 3), Normal: geom.U, Shut: []geom.Box{box(2, 4, 0, 6, 0, 6)}}},
		Lanes:  []geom.Box{box(0, 6, 5, 5, 0, 6)},
	}
	if w, ok := s.Find(ways.Ask{From: []ways.Spot{{0, 5, 1}}, To: []ways.Spot{{6, 5, 1}}}); !ok || w.Length != 6 || len(w.Holes) > 0 {
		t.Errorf("found %v: %+v", ok, w)
	}
}
