package standing

import (
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	sf "github.com/peterstace/simplefeatures/geom"
	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/length"
)

const mm = length.Millimetre

func drawFrame(t *rapid.T) geom.Frame {
	at := rapid.Int64Range(-5_000, 5_000)
	return geom.Frame{
		Origin: geom.Point{X: length.Length(at.Draw(t, "x")) * mm, Y: length.Length(at.Draw(t, "y")) * mm},
		Turn:   geom.Angle(rapid.Int64Range(0, 360_000_000).Draw(t, "turn")),
	}
}

func drawSpan(t *rapid.T, name string) geom.Span {
	lo := length.Length(rapid.Int64Range(-1_000, 1_000).Draw(t, name)) * mm
	return geom.Span{Lo: lo, Hi: lo + length.Length(rapid.Int64Range(1, 2_000).Draw(t, name+" size"))*mm}
}

// drawShape is a box of a frame at any angle, or a quarter that a leaf sweeps.
func drawShape(t *rapid.T) shape {
	f, u, v := drawFrame(t), drawSpan(t, "u"), drawSpan(t, "v")
	switch rapid.IntRange(0, 3).Draw(t, "kind") {
	case 0:
		return quarter(f, u.Lo, v.Lo, u.Size())
	case 1:
		return quarter(f, u.Lo, v.Lo, -u.Size())
	}
	return rectangle(f, u, v)
}

func (s shape) polygon() sf.Geometry {
	var xy []float64
	for _, p := range append(slices.Clone(s), s[0]) {
		xy = append(xy, p.x/1e6, p.y/1e6)
	}
	return sf.NewPolygon([]sf.LineString{sf.NewLineString(sf.NewSequence(xy, sf.DimXY))}).AsGeometry()
}

func (s shape) moved(x, y float64) shape {
	out := slices.Clone(s)
	for i := range out {
		out[i].x, out[i].y = out[i].x+x, out[i].y+y
	}
	return out
}

// TestDepthAgainstPolygons has simplefeatures' overlay say whether two shapes share
// area. Of two that do, a shift by their depth parts them in some direction, and a
// little less in none: sampled every five degrees.
func TestDepthAgainstPolygons(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawShape(t), drawShape(t)
		deep := depth(a, b)
		if back := depth(b, a); math.Abs(back-deep) > 1 && (deep > 0 || back > 0) {
			t.Fatalf("depth %v nm one way, %v the other", deep, back)
		}
		over, err := sf.Intersection(a.polygon(), b.polygon())
		if err != nil {
			t.Skip(err)
		}
		switch area := over.Area(); {
		case deep > 1000 && area == 0:
			t.Fatalf("%v nm in one another, but they share no area", deep)
		case deep <= -1000 && area > 1e-6:
			t.Fatalf("apart, but they share %v mm²", area)
		}
		if deep <= 0 {
			return
		}
		parted := false
		for degree := 0; degree < 360; degree += 5 {
			sin, cos := math.Sincos(float64(degree) * math.Pi / 180)
			if depth(a.moved(0.99*deep*cos, 0.99*deep*sin), b) <= 0 {
				t.Fatalf("%v nm deep, but less parts them at %d degrees", deep, degree)
			}
			parted = parted || depth(a.moved(1.02*deep*cos, 1.02*deep*sin), b) <= 0
		}
		if !parted {
			t.Fatalf("%v nm deep, but a little more parts them in no direction", deep)
		}
	})
}

// TestGroundFindsAllPairs compares the grid with a look at every pair.
func TestGroundFindsAllPairs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		solids := make([]solid, rapid.IntRange(2, 40).Draw(t, "solids"))
		for i := range solids {
			solids[i] = solid{plan: drawShape(t), z: drawSpan(t, "z")}
		}
		var brute, found [][2]int
		g := newGround(solids)
		for i := range solids {
			for j := range i {
				if solids[i].into(&solids[j]) > 0 {
					brute = append(brute, [2]int{i, j})
				}
			}
			for _, j := range g.near(&solids[i]) {
				if j < i && solids[i].into(&solids[j]) > 0 {
					found = append(found, [2]int{i, j})
				}
			}
		}
		if diff := cmp.Diff(brute, found); diff != "" {
			t.Fatalf("pairs (-brute force +grid):\n%s", diff)
		}
	})
}

// TestWithinAgainstOverlay clips a shape to a strip of a frame with simplefeatures, and
// takes the extent of what is left in the frame's own coordinates.
func TestWithinAgainstOverlay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, f, u := drawShape(t), drawFrame(t), drawSpan(t, "strip")
		far := geom.Span{Lo: -50 * length.Metre, Hi: 50 * length.Metre}
		left, err := sf.Intersection(s.polygon(), rectangle(f, u, far).polygon())
		if err != nil {
			t.Skip(err)
		}
		lo, hi, ok := s.within(f, u)
		if left.Area() < 1 {
			return
		}
		if !ok {
			t.Fatalf("nothing within, but the overlay has %v mm²", left.Area())
		}
		sin, cos := math.Sincos(f.Turn.Degrees() * math.Pi / 180)
		wantLo, wantHi := math.Inf(1), math.Inf(-1)
		seq := left.DumpCoordinates()
		for i := range seq.Length() {
			p := seq.GetXY(i)
			v := (p.Y-float64(f.Origin.Y)/1e6)*cos - (p.X-float64(f.Origin.X)/1e6)*sin
			wantLo, wantHi = min(wantLo, v), max(wantHi, v)
		}
		if math.Abs(lo/1e6-wantLo) > 1e-3 || math.Abs(hi/1e6-wantHi) > 1e-3 {
			t.Fatalf("from %v to %v mm, the overlay has %v to %v", lo/1e6, hi/1e6, wantLo, wantHi)
		}
	})
}

// TestDoorSweepsWhatItTurnsThrough turns a door with its handle about the edge of its face,
// a degree at a time, by the plain rotation formula: no point of its face ever
// leaves the quarter, and where it stands open its handle is where opened puts it.
func TestDoorSweepsWhatItTurnsThrough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		place := geom.Box{U: drawSpan(t, "u"), V: geom.Span{Lo: 560 * mm, Hi: 578 * mm}}
		from := length.Length(rapid.Int64Range(0, int64(place.U.Size()/mm)).Draw(t, "from")) * mm
		out := length.Length(rapid.Int64Range(1, 60).Draw(t, "out")) * mm
		hinged := model.End(rapid.IntRange(0, 1).Draw(t, "hinged"))
		hinge, side := place.U.Lo, 1.0
		if hinged == model.Right {
			hinge, side = place.U.Hi, -1
		}
		turned := func(u, v float64, degrees float64) spot { // from the hinge
			sin, cos := math.Sincos(side * degrees * math.Pi / 180)
			return spot{float64(hinge) + u*cos - v*sin, float64(place.V.Hi) + u*sin + v*cos}
		}
		swept := quarter(geom.Frame{}, hinge, place.V.Hi, length.Length(side)*place.U.Size())
		for degree := range 91 {
			for _, share := range []float64{0, 0.25, 0.5, 0.75, 1} {
				p := turned(side*share*float64(place.U.Size()), 0, float64(degree))
				dot := shape{{p.x - 1, p.y - 1}, {p.x + 1, p.y - 1}, {p.x + 1, p.y + 1}, {p.x - 1, p.y + 1}}
				if deep := depth(dot, swept); deep < -touching*2 {
					t.Fatalf("%v nm outside the sweep at %v degrees", -deep, float64(degree))
				}
			}
		}
		line := float64(place.U.Size() - from)
		handle := geom.Box{U: geom.About(hinge+length.Length(side*line), 6*mm), V: geom.Span{Lo: place.V.Hi, Hi: place.V.Hi + out}}
		open, tip := opened(place, hinged, handle), turned(side*line, float64(out), 90)
		edge := open.U.Lo
		if hinged == model.Right {
			edge = open.U.Hi
		}
		if math.Abs(tip.x-float64(edge)) > 1 || math.Abs(tip.y-float64(open.V.Mid())) > 1 {
			t.Fatalf("the handle's tip turns to %v, but stands at %v in %v", tip, edge, open)
		}
	})
}

// TestRoomBesideWall has the figures of a plain sum: a door hangs half a gap behind the
// end of its box, and its handle reaches so much less than it stands out beyond that end.
// A wall that leans in by an angle takes the handle's distance from the face times its
// tangent; both from geometry, none from a table.
func TestRoomBesideWall(t *testing.T) {
	door := geom.Box{U: geom.Span{Lo: 1_500_000, Hi: 600 * mm}, V: geom.Span{Lo: 560 * mm, Hi: 578 * mm}}
	handle := geom.Box{U: geom.About(550*mm, 5*mm), V: geom.Span{Lo: 578 * mm, Hi: 613 * mm}}
	open := opened(door, model.Left, handle)
	plan := rectangle(geom.Frame{}, open.U, open.V)
	for _, test := range []struct {
		corner float64 // between the wall on the left and that of the run
		want   float64 // mm
	}{
		{90, 33.5},
		// The handle's far side is 578 + 548.5 + 2.5 = 1129 mm from the corner.
		{88, (33.5 + 1129*math.Tan(2*math.Pi/180)) * math.Cos(2*math.Pi/180)},
	} {
		wall := model.Wall{Length: 3 * length.Metre, Frame: geom.Frame{Turn: geom.Angle(math.Round(test.corner*1e6)) - 180*geom.Degree}}
		wall.Frame.Origin = geom.Frame{Turn: wall.Frame.Turn}.At(-wall.Length, 0)
		w := solid{kind: wallSolid, wall: &wall, plan: behind(&wall)}
		if got := w.past(&solid{plan: plan}) / 1e6; math.Abs(got-test.want) > 1e-3 {
			t.Errorf("at a corner of %v degrees: %v mm, want %v", test.corner, got, test.want)
		}
	}
}

// TestAisleAgainstRays sends rays straight out of a front, one to a millimetre, and takes
// the shortest to the edges of what stands before it.
func TestAisleAgainstRays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFrame(t)
		u := geom.Span{Hi: length.Length(rapid.Int64Range(100, 1_500).Draw(t, "wide")) * mm}
		away := length.Length(rapid.Int64Range(0, 1_200).Draw(t, "away")) * mm
		along := length.Length(rapid.Int64Range(-1_600, 1_600).Draw(t, "along")) * mm
		lean := geom.Angle(rapid.Int64Range(-40_000_000, 40_000_000).Draw(t, "lean"))
		opposite := geom.Frame{Origin: f.At(along, away+580*mm), Turn: f.Turn + 180*geom.Degree + lean}
		other := solid{run: 1, turn: opposite.Turn, plan: rectangle(opposite, geom.Span{Hi: 800 * mm}, geom.Span{Hi: 500 * mm})}
		front := solid{run: 0, turn: f.Turn}
		b := &rule.Build{Model: &model.Model{Runs: []model.Run{{Frame: f}, {Frame: opposite}}}}
		limit := 900 * mm
		got := before(b, newGround([]solid{other}), &front, u, float64(580*mm), limit)

		want, s := math.Inf(1), sightOf(f)
		for x := u.Lo + mm; x <= u.Hi-mm; x += mm {
			from, to := s.at(float64(x), float64(580*mm)), s.at(float64(x), float64(580*mm+limit))
			for i, p := range other.plan {
				q := other.plan[(i+1)%len(other.plan)]
				if share, ok := crossing(from, to, p, q); ok {
					want = min(want, share*float64(limit))
				}
			}
		}
		lo, _, ok := other.plan.within(f, u)
		switch {
		case ok && lo < float64(580*mm): // in the front already, which another rule tells
		case got.to == nil && want < float64(limit-2*mm):
			t.Fatalf("%v mm are left, but nothing is found", want/1e6)
		case got.to != nil && (got.wide > want+1000 || got.wide < want-float64(2*mm)):
			t.Fatalf("%v mm, by rays %v", got.wide/1e6, want/1e6)
		}
	})
}

// crossing is where two lines between points cross, as a share of the first.
func crossing(a, b, p, q spot) (share float64, ok bool) {
	dx, dy, ex, ey := b.x-a.x, b.y-a.y, q.x-p.x, q.y-p.y
	det := dx*ey - dy*ex
	if det == 0 {
		return 0, false
	}
	share = ((p.x-a.x)*ey - (p.y-a.y)*ex) / det
	other := ((p.x-a.x)*dy - (p.y-a.y)*dx) / det
	return share, share >= 0 && share <= 1 && other >= 0 && other <= 1
}
