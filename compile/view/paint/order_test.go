package paint

import (
	"fmt"
	"math"
	"testing"

	"barwright/compile/geom"

	"pgregory.net/rapid"
)

const mm = 1_000_000

// hit is how near to the eye a box is met by the ray through a point of the picture; ok is false
// where the ray misses it, or passes within a millimetre or so of its edge.
func hit(e Eye, f geom.Frame, b geom.Box, at spot) (near float64, ok, close bool) {
	// A point of the room that is drawn there, and the way of the ray in the box's own frame.
	p := Vec{X: at.x / cos30 * e.toward.Y / 2, Y: -at.x / cos30 * e.toward.X / 2, Z: at.y}
	u, v := local(f, p)
	du, dv := local(geom.Frame{Turn: f.Turn}, e.toward)
	from, to := math.Inf(-1), math.Inf(1)
	for _, s := range [...]struct {
		at, way float64
		on      geom.Span
	}{{u, du, b.U}, {v, dv, b.V}, {p.Z, 1, b.Z}} {
		a, b := (float64(s.on.Lo)-s.at)/s.way, (float64(s.on.Hi)-s.at)/s.way
		from, to = max(from, min(a, b)), min(to, max(a, b))
	}
	return to, from < to, math.Abs(to-from) < 3*mm
}

func local(f geom.Frame, p Vec) (u, v float64) {
	sin, cos := math.Sincos(f.Turn.Degrees() * math.Pi / 180)
	x, y := p.X-float64(f.Origin.X), p.Y-float64(f.Origin.Y)
	return x*cos + y*sin, y*cos - x*sin
}

type placed struct {
	frame geom.Frame
	box   geom.Box
}

// apart reports whether two boxes share no volume: corners of neither frame tell, so faces do.
func apart(a, b placed) bool {
	x, y := body(0, a.frame, a.box, Vec{}), body(0, b.frame, b.box, Vec{})
	for _, n := range append([]Vec{up}, append(x.axes, y.axes...)...) {
		xl, xh := x.extent(n)
		yl, yh := y.extent(n)
		if xh <= yl || yh <= xl {
			return true
		}
	}
	return false
}

func span(t *rapid.T, what string, most int) geom.Span {
	lo := rapid.IntRange(0, most).Draw(t, what)
	return geom.Span{Lo: geom.Length(lo) * 10 * mm, Hi: geom.Length(lo+rapid.IntRange(1, 40).Draw(t, what+" size")) * 10 * mm}
}

// TestNearestIsPaintedLast casts rays into random boxes that stand apart, in frames turned at
// random: where a ray meets the nearest box, its face must be the last that is painted there. The
// rays are reckoned in the boxes' own frames, by nothing that the painter uses.
func TestNearestIsPaintedLast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := Eyes()[rapid.IntRange(0, 3).Draw(t, "eye")]
		turns := []geom.Angle{0, 90_400_000, 33_300_000, geom.Angle(rapid.IntRange(0, 359_999_999).Draw(t, "turn"))}
		var boxes []placed
		for range rapid.IntRange(2, 14).Draw(t, "boxes") {
			p := placed{frame: geom.Frame{Turn: rapid.SampledFrom(turns).Draw(t, "of")}}
			p.box = geom.Box{U: span(t, "u", 60), V: span(t, "v", 60), Z: span(t, "z", 60)}
			free := true
			for _, o := range boxes {
				free = free && apart(p, o)
			}
			if free {
				boxes = append(boxes, p)
			}
		}
		var solids []Solid
		for i, p := range boxes {
			solids = append(solids, e.Block(i, p.frame, p.box, Vec{}))
		}
		seen := e.Seen(e.Order(solids))
		for _, p := range boxes {
			for range 12 {
				c := Vec{Z: float64(rapid.Int64Range(int64(p.box.Z.Lo), int64(p.box.Z.Hi)).Draw(t, "z"))}
				u := rapid.Int64Range(int64(p.box.U.Lo), int64(p.box.U.Hi)).Draw(t, "u")
				v := rapid.Int64Range(int64(p.box.V.Lo), int64(p.box.V.Hi)).Draw(t, "v")
				at := e.project(place(p.frame, float64(u), float64(v), c.Z))
				check(t, e, boxes, seen, spot{at.x + 0.37*mm, at.y + 0.61*mm}) // off all corners
			}
		}
	})
}

// check compares what is painted last at a point with the box that the ray through it meets first.
func check(t *rapid.T, e Eye, boxes []placed, seen []Seen, at spot) {
	first, near := -1, math.Inf(-1)
	for i, p := range boxes {
		far, ok, close := hit(e, p.frame, p.box, at)
		if close || math.Abs(far-near) < 1 {
			return // along an edge, or on faces that touch
		}
		if ok && far > near {
			first, near = i, far
		}
	}
	last := -1
	for i := range seen {
		if seen[i].ring().holds(at) {
			last = seen[i].Of
		}
	}
	if last != first {
		t.Fatalf("at %.0f: box %d is painted last, %d is nearest: %v", at, last, first, fmt.Sprint(boxes))
	}
}

// ring3 are three sticks of which each lies over the next.
func ring3() []placed {
	stick := func(u, v, z geom.Span) placed { return placed{box: geom.Box{U: u, V: v, Z: z}} }
	long, a, b := geom.Span{Hi: 1000 * mm}, geom.Span{Lo: 100 * mm, Hi: 200 * mm}, geom.Span{Lo: 800 * mm, Hi: 900 * mm}
	return []placed{
		stick(long, a, b),
		stick(a, b, long),
		stick(b, long, a),
	}
}

func TestRingIsSplit(t *testing.T) {
	for _, e := range Eyes() {
		var solids []Solid
		for i, p := range ring3() {
			solids = append(solids, e.Block(i, p.frame, p.box, Vec{}))
		}
		_, rings := e.sorted(solids)
		order := e.Order(solids)
		if _, left := e.sorted(order); len(left) > 0 {
			t.Errorf("eye %v: rings %v are left", e.toward, left)
		}
		if len(rings) > 0 != (len(order) > len(solids)) {
			t.Errorf("eye %v: %d rings, %d pieces", e.toward, len(rings), len(order))
		}
	}
}
