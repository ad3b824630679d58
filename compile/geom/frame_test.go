package geom

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

func TestSinCosAgainstMath(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Angle(rapid.Int64Range(-int64(720*Degree), int64(720*Degree)).Draw(t, "angle"))
		sin, cos := a.SinCos()
		wantSin, wantCos := math.Sincos(a.Degrees() * math.Pi / 180)
		// Far turns lose digits in the radians that math is given.
		within := 1e-15
		if a < -90*Degree || a > 90*Degree {
			within = 4e-15
		}
		if math.Abs(sin-wantSin) > within || math.Abs(cos-wantCos) > within {
			t.Fatalf("%v degrees: %v, %v; want %v, %v", a.Degrees(), sin, cos, wantSin, wantCos)
		}
		if s, c := (a + 360*Degree).SinCos(); s != sin || c != cos {
			t.Fatalf("%v degrees: a whole turn more gives %v, %v instead of %v, %v", a.Degrees(), s, c, sin, cos)
		}
	})
}

// TestSinCosAgainstHandbook has values that a table of natural sines gives.
// (sin 30 = 1/2 is exact; the others to 15 places, common knowledge.)
func TestSinCosAgainstHandbook(t *testing.T) {
	for _, c := range []struct {
		degrees  float64
		sin, cos float64
	}{
		{30, 0.5, 0.866025403784439}, {45, 0.707106781186548, 0.707106781186548}, {60, 0.866025403784439, 0.5},
		{0.4, 0.006981260297962, 0.999975630705395}, {89.6, 0.999975630705395, 0.006981260297962},
	} {
		sin, cos := Angle(math.Round(c.degrees * 1e6)).SinCos()
		if math.Abs(sin-c.sin) > 1e-15 || math.Abs(cos-c.cos) > 1e-15 {
			t.Errorf("%v degrees: %.16f, %.16f; want %v, %v", c.degrees, sin, cos, c.sin, c.cos)
		}
	}
}

func TestQuarterTurnsAreExact(t *testing.T) {
	for q, want := range [][2]float64{{0, 1}, {1, 0}, {0, -1}, {-1, 0}} {
		for _, whole := range []Angle{-720, -360, 0, 360} {
			sin, cos := (Angle(q)*90*Degree + whole*Degree).SinCos()
			if sin != want[0] || cos != want[1] {
				t.Errorf("%d quarter turns: %v, %v", q, sin, cos)
			}
		}
	}
	f := Frame{Origin: Point{7, 11}, Turn: 90 * Degree}
	if got := f.At(2*mm+1, 3*mm+2); got != (Point{7 - 3*mm - 2, 11 + 2*mm + 1}) {
		t.Errorf("a quarter turn gives %v", got)
	}
}

func drawFrame(t *rapid.T) Frame {
	return Frame{Origin: Point{drawLength(t, "x"), drawLength(t, "y")}, Turn: Angle(rapid.Int64Range(0, int64(360*Degree)).Draw(t, "turn"))}
}

func TestFrameThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFrame(t)
		u, v := drawLength(t, "u"), drawLength(t, "v")
		backU, backV := f.Local(f.At(u, v))
		if diff := max(backU-u, u-backU, backV-v, v-backV); diff > 1 {
			t.Fatalf("(%d, %d) comes back as (%d, %d)", u, v, backU, backV)
		}
		// A frame keeps distances.
		p, q := f.At(0, 0), f.At(u, v)
		far := math.Hypot(float64(q.X-p.X), float64(q.Y-p.Y))
		if math.Abs(far-math.Hypot(float64(u), float64(v))) > 1.5 {
			t.Fatalf("(%d, %d) is %v from the origin", u, v, far)
		}
	})
}

// TestFrameTurnsFromXTowardsY states the handedness that the package comment
// documents: v is a quarter turn from u, in the way from x towards y.
func TestFrameTurnsFromXTowardsY(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFrame(t)
		u, v := f.At(1000*mm, 0).Sub(f.Origin), f.At(0, 1000*mm).Sub(f.Origin)
		cross := new(big.Int).Sub(
			new(big.Int).Mul(big.NewInt(int64(u.X)), big.NewInt(int64(v.Y))),
			new(big.Int).Mul(big.NewInt(int64(u.Y)), big.NewInt(int64(v.X))))
		if cross.Sign() <= 0 {
			t.Fatalf("turned by %v, u is %v and v is %v", f.Turn.Degrees(), u, v)
		}
	})
}

var outs = []Dir{{U, false}, {U, true}, {V, false}, {V, true}, {Z, false}, {Z, true}}

func drawBox(t *rapid.T) Box {
	span := func(name string) Span {
		lo := drawLength(t, name)
		return Span{lo, lo + Length(rapid.Int64Range(1, int64(3000*mm)).Draw(t, name+" size"))}
	}
	return Box{span("u"), span("v"), span("z")}
}

// within draws a span inside another.
func within(t *rapid.T, s Span, name string) Span {
	lo := rapid.Int64Range(int64(s.Lo), int64(s.Hi)).Draw(t, name)
	return Span{Length(lo), Length(rapid.Int64Range(lo, int64(s.Hi)).Draw(t, name+" end"))}
}

// TestLocalAndBack maps a box onto a part's face, and back by the axes of the
// placement alone.
func TestLocalAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		out := rapid.SampledFrom(outs).Draw(t, "out")
		p := Place(Frame{}, drawBox(t), out)
		b := Box{within(t, p.Box.U, "u"), within(t, p.Box.V, "v"), within(t, p.Box.Z, "z")}
		face, depth := p.Local(b)
		if blank := p.Blank(); !blank.Contains(face) || blank.X.Lo != 0 || blank.Y.Lo != 0 {
			t.Fatalf("%v lies outside the blank %v", face, blank)
		}
		if depth.Lo < 0 || depth.Hi > p.Thickness() {
			t.Fatalf("depth %v in a part of %v", depth, p.Thickness())
		}
		var back [3]Span
		for _, side := range []struct {
			dir Dir
			s   Span
		}{{p.X, face.X}, {p.Y, face.Y}, {Dir{out.Axis, !out.Neg}, depth}} {
			whole := p.Box.Along(side.dir.Axis)
			if side.dir.Neg {
				back[side.dir.Axis] = Span{whole.Hi - side.s.Hi, whole.Hi - side.s.Lo}
			} else {
				back[side.dir.Axis] = Span{whole.Lo + side.s.Lo, whole.Lo + side.s.Hi}
			}
		}
		if got := (Box{back[U], back[V], back[Z]}); got != b {
			t.Fatalf("%v comes back as %v", b, got)
		}
		if blank := p.Blank(); blank.X.Size() != p.Box.Along(p.X.Axis).Size() || blank.Y.Size() != p.Box.Along(p.Y.Axis).Size() {
			t.Fatalf("blank %v of box %v", blank, p.Box)
		}
	})
}

// TestPlaceIsNotMirrored checks that each face is drawn as one sees it from
// outside. Seen so, a turn by which x goes to y and y goes to the viewer keeps
// the space's own hand. The room's frame (u, v, z) is left-handed, so that the
// determinant of x, y and out is -1 in it.
func TestPlaceIsNotMirrored(t *testing.T) {
	for _, out := range outs {
		p := Place(Frame{}, Box{Span{0, 1}, Span{0, 1}, Span{0, 1}}, out)
		x, y, o := vector(p.X), vector(p.Y), vector(p.Out)
		det := x[0]*(y[1]*o[2]-y[2]*o[1]) - x[1]*(y[0]*o[2]-y[2]*o[0]) + x[2]*(y[0]*o[1]-y[1]*o[0])
		if det != -1 {
			t.Errorf("seen from %v: x %v, y %v: determinant %d", p.Out, p.X, p.Y, det)
		}
		if out.Axis != Z && p.Y != (Dir{Axis: Z}) {
			t.Errorf("seen from %v, up is %v", p.Out, p.Y)
		}
	}
	// As documented: looking down, one stands where v points to.
	if p := Place(Frame{}, Box{}, Dir{Axis: Z}); p.X != (Dir{Axis: U}) || p.Y != (Dir{V, true}) {
		t.Errorf("looking down: x %v, y %v", p.X, p.Y)
	}
	// Facing a wall, left to right is u.
	if p := Place(Frame{}, Box{}, Dir{Axis: V}); p.X != (Dir{Axis: U}) {
		t.Errorf("facing the wall: x %v", p.X)
	}
}

func vector(d Dir) [3]int {
	v := [3]int{}
	v[d.Axis] = 1
	if d.Neg {
		v[d.Axis] = -1
	}
	return v
}
