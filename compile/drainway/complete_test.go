package drainway_test

import (
	"math/rand"
	"testing"

	"barwright/compile/drainway"
	"barwright/compile/geom"
	"barwright/lang/length"
)

// TestNoWayIsMissed tries, in plan and by millimetres, every way that there may be: the two of
// one bend, and those of two whose middle leg lies anywhere within the run. Where one keeps
// the clearance of all that stands at random about it, and the wood beside its holes, the pipe
// is stopped by nothing, and is no longer than the shortest of them. All bodies are higher than
// the pipe lies anywhere, or lower: how long a way is does not decide what it meets.
func TestNoWayIsMissed(t *testing.T) {
	random := rand.New(rand.NewSource(11))
	found, round, none := 0, 0, 0
	for scene := range 3000 {
		a := ask()
		for range 1 + random.Intn(6) {
			if s := drawSolid(random); !s.Box.Overlaps(a.Trap) {
				a.Solids = append(a.Solids, s)
			}
		}
		shortest, ok := bruteForce(a)
		way := drainway.Lay(a)
		switch {
		case !ok:
			none++
		case len(way.Stopped) > 0 || way.Arm > shortest:
			t.Fatalf("scene %d: an arm of %d is free; the way is %+v", scene, shortest, way)
		case len(way.Points) > 3:
			round++
		}
		if ok {
			found++
		}
	}
	if none < 200 || found < 500 || round < 200 {
		t.Errorf("%d ways, %d of them round something, and none in %d scenes: too few of one", found, round, none)
	}
}

// drawSolid has a board across the run, or a body of any size.
func drawSolid(random *rand.Rand) drainway.Solid {
	at := func(lo, hi int) geom.Length { return geom.Length(lo + random.Intn(hi-lo)) }
	u, v, deep, high := at(-50, 600), at(-50, 450), at(40, 300), geom.Length(900)
	if random.Intn(5) == 0 {
		high = 200
	}
	if random.Intn(3) == 0 {
		s := drainway.Solid{Box: box(u, u+18, v, v+deep, 0, high), Axis: geom.U}
		s.Bores = func(hole geom.Box) bool { return s.Box.V.Contains(hole.V) && s.Box.Z.Contains(hole.Z) }
		return s
	}
	return drainway.Solid{Box: box(u, u+at(20, 200), v, v+deep, 0, high)}
}

// bruteForce is the shortest arm of those that are free.
func bruteForce(a *drainway.Ask) (shortest geom.Length, ok bool) {
	try := func(points ...geom.Point) {
		far := a.Beyond
		for i := 1; i < len(points); i++ {
			far += length.Apart(points[i-1].X, points[i].X) + length.Apart(points[i-1].Y, points[i].Y)
		}
		if arm := max(0, far-a.Bend); (!ok || arm < shortest) && free(a, points) {
			shortest, ok = arm, true
		}
	}
	try(a.From, geom.Point{X: a.From.X, Y: a.To.Y}, a.To)
	try(a.From, geom.Point{X: a.To.X, Y: a.From.Y}, a.To)
	clear := a.Diameter/2 + a.Clearance
	for v := a.Within.Y.Lo + clear; v <= a.Within.Y.Hi-clear; v += mm {
		try(a.From, geom.Point{X: a.From.X, Y: v}, geom.Point{X: a.To.X, Y: v}, a.To)
	}
	for u := a.Within.X.Lo + clear; u <= a.Within.X.Hi-clear; u += mm {
		try(a.From, geom.Point{X: u, Y: a.From.Y}, geom.Point{X: u, Y: a.To.Y}, a.To)
	}
	return shortest, ok
}

// free reports whether a strip along a way, as wide as the pipe and its clearance, keeps out
// of all that is as high as the pipe; a board may stand square across it, with the wood that is
// wanted on both sides of the strip.
func free(a *drainway.Ask, points []geom.Point) bool {
	clear := a.Diameter/2 + a.Clearance
	for i := 1; i < len(points); i++ {
		p, q := points[i-1], points[i]
		if p == q {
			continue
		}
		strip := geom.Rect{X: geom.Between(p.X, q.X), Y: geom.Between(p.Y, q.Y)}
		for _, s := range a.Solids {
			body := geom.Rect{X: s.Box.U, Y: s.Box.V}
			if s.Box.Z.Hi < a.Height || !strip.Grow(clear).Overlaps(body) {
				continue
			}
			square := s.Bores != nil && p.Y == q.Y && strip.X.Contains(body.X.Grow(clear)) && body.Y.Grow(-clear-a.Edge).Holds(p.Y)
			if !square {
				return false
			}
		}
	}
	return true
}
