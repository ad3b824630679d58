package router_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/compile/router/routertest"
	"barwright/lang/length"
)

const (
	mm   = length.Millimetre
	inch = length.Inch
)

func TestPlanRefuses(t *testing.T) {
	for _, c := range []struct {
		kind, text string
		change     func(r *router.Request)
	}{
		{"not-positive", "depth of the recess is 0 mm", func(r *router.Request) { r.Depth = 0 }},
		{"feed-too-slow", "0.7 mm in a minute where it goes slowest; programs are written from 12.7 mm", func(r *router.Request) { r.Tool.Plunge = 7 * mm / 10 }},
		{"not-positive", "step-over is -1 mm", func(r *router.Request) { r.Tool.Stepover = -mm }},
		{"not-positive", "finishing allowance is -0.25 mm", func(r *router.Request) { r.Tool.Finish = -mm / 4 }},
		{"not-positive", "corner radius is -1 mm", func(r *router.Request) { r.Corner = -mm }},
		{"not-positive", "width of the recess", func(r *router.Request) { r.Shape.X.Hi = r.Shape.X.Lo }},
		{"not-positive", "number of flutes", func(r *router.Request) { r.Tool.Flutes = 0 }},
		{"too-large", "feed is 10000.000001 mm", func(r *router.Request) { r.Tool.Feed = 10*length.Metre + 1 }},
		{"step-over-too-wide", "step-over is 6.351 mm, and the bit only 6.35 mm", func(r *router.Request) { r.Tool.Stepover = 6351 * length.Micrometre }},
		{"ramp-too-steep", "30.5 degrees", func(r *router.Request) { r.Tool.RampDegrees = 30.5 }},
		{"ramp-too-steep", "0 degrees", func(r *router.Request) { r.Tool.RampDegrees = 0 }},
		{"ramp-too-steep", "NaN", func(r *router.Request) { r.Tool.RampDegrees = math.NaN() }},
		{"finish-too-thick", "4 mm, more than the bit's radius of 3.175 mm", func(r *router.Request) { r.Tool.Finish = 4 * mm }},
		{"clearance-too-low", "clearance is 2 mm", func(r *router.Request) { r.Tool.Clearance = 2 * mm }},
		{"decimals-out-of-range", "writes 3 decimals", func(r *router.Request) { r.Tool.Dialect = model.Dialect{Inch: true, Decimals: 3} }},
		{"decimals-out-of-range", "writes 7 decimals", func(r *router.Request) { r.Tool.Dialect.Decimals = 7 }},
		{"bit-cuts-through", "38.1 mm deep, and the wood only 38.1 mm", func(r *router.Request) { r.Depth = r.Thick }},
		{"open-side-off-edge", "open at the bottom, but ends 1 mm", func(r *router.Request) { r.Shape.Y.Lo = mm }},
		{"open-side-off-edge", "open at the top, but ends 12.7 mm", func(r *router.Request) { r.Open = append(r.Open, model.Top) }},
		{"no-wall-left", "closed at the bottom, but ends on that edge", func(r *router.Request) { r.Open = nil }},
		{"recess-off-stock", "reaches 1.5 mm past the wood at the top", func(r *router.Request) { r.Shape.Y.Hi = r.Stock.Y.Hi + 3*mm/2 }},
		{"bit-too-wide", "recess is 6.8 mm wide; the bit needs 6.85 mm", func(r *router.Request) { r.Shape.X = geom.Span{Lo: 0, Hi: 68 * mm / 10} }},
		{"bit-too-wide", "no more than the finishing allowance", func(r *router.Request) {
			r.Shape.Y.Hi, r.Tool.Finish = mm/2, 3*mm
		}},
		{"corner-too-round", "side of the recess is 3 mm long; its rounded corners take 3.175 mm", func(r *router.Request) { r.Shape.Y.Hi = 3 * mm }},
		{"corner-too-round", "take 60 mm", func(r *router.Request) { r.Corner = 30 * mm }},
		{"no-room-to-ramp", "move by 3.15 mm inside the recess; to ramp down it needs 3.175 mm", func(r *router.Request) {
			r.Open, r.Shape = nil, geom.R(0, 10*mm, 685*mm/100, 20*mm)
		}},
		{"path-too-long", "more than 50000 moves", func(r *router.Request) { r.Tool.Stepover = length.Micrometre }},
		{"path-too-long", "more than 50000 moves", func(r *router.Request) { r.Tool.Stepdown = 1 }},
		{"path-too-long", "more than 50000 moves", func(r *router.Request) { r.Tool.RampDegrees = 0.0001 }},
		{"beyond-travel", "long in Y; the machine moves 50 mm", func(r *router.Request) { r.Tool.Travel.Y = 50 * mm }},
		{"beyond-travel", "long in Y; the machine moves 80 mm", func(r *router.Request) { // and back to Y0
			r.Open, r.Shape, r.Stock.Y.Hi, r.Tool.Travel.Y = nil, geom.R(-20*mm, 30*mm, 20*mm, 90*mm), 120*mm, 80*mm
		}},
		{"beyond-travel", "24.525 mm long in Z; the machine moves 20 mm", func(r *router.Request) { r.Tool.Travel.Z = 20 * mm }},
	} {
		r := routertest.Support()
		c.change(&r)
		p, refusal := router.Plan(r)
		if refusal == nil || refusal.Kind != c.kind || !strings.Contains(refusal.Text, c.text) {
			t.Errorf("%s, %q: got %+v", c.kind, c.text, refusal)
		}
		if len(p.Moves) != 0 || p.Name != "" {
			t.Errorf("%s: a program comes with the refusal", c.kind)
		}
	}
}

// TestPlanOnTheLimit: the least recess that each limit lets through.
func TestPlanOnTheLimit(t *testing.T) {
	for name, change := range map[string]func(r *router.Request){
		"bit and allowance wide": func(r *router.Request) { r.Shape.X = geom.Span{Lo: 0, Hi: 685 * mm / 100} },
		"step-over of the bit":   func(r *router.Request) { r.Tool.Stepover = r.Tool.Diameter },
		"steepest ramp":          func(r *router.Request) { r.Tool.RampDegrees = 30 },
		"a skin of wood below":   func(r *router.Request) { r.Depth = r.Thick - mm/10 },
		"room to ramp": func(r *router.Request) {
			r.Open, r.Shape = nil, geom.R(0, 10*mm, 685*mm/100, 10*mm+10025*length.Micrometre)
		},
		"round": func(r *router.Request) {
			r.Open, r.Shape, r.Corner = nil, geom.R(0, 10*mm, 30*mm, 40*mm), 15*mm
		},
	} {
		r := routertest.Support()
		change(&r)
		if _, refusal := router.Plan(r); refusal != nil {
			t.Errorf("%s: %+v", name, refusal)
		}
	}
}

func TestPlanSupport(t *testing.T) {
	p, refusal := router.Plan(routertest.Support())
	if refusal != nil {
		t.Fatal(refusal)
	}
	if want := []length.Length{inch / 8, inch / 4, 3 * inch / 8}; !slices.Equal(p.Levels, want) {
		t.Errorf("levels %v, want %v", p.Levels, want)
	}
	if p.Corner != inch/8 {
		t.Errorf("corner %v, want the bit's radius", p.Corner)
	}
	half, r := inch+inch/64, inch/8
	want := geom.Contour{
		{Point: geom.Point{X: -half}},
		{Point: geom.Point{X: half}},
		{Point: geom.Point{X: half, Y: 3*inch - r}, Bulge: geom.QuarterBulge},
		{Point: geom.Point{X: half - r, Y: 3 * inch}},
		{Point: geom.Point{X: r - half, Y: 3 * inch}, Bulge: geom.QuarterBulge},
		{Point: geom.Point{X: -half, Y: 3*inch - r}},
	}
	if diff := cmp.Diff(want, p.Shape); diff != "" {
		t.Errorf("shape (-want +got):\n%s", diff)
	}
	plan, z := p.Reach()
	if over := -plan.Y.Lo; over < r+2*mm || over > r+3*mm {
		t.Errorf("overruns the open side by %v", over)
	}
	if plan.X != (geom.Span{Lo: r - half, Hi: half - r}) || plan.Y.Hi != 3*inch-r {
		t.Errorf("the bit's edge does not end on the walls: %v", plan)
	}
	if z != (geom.Span{Lo: -3 * inch / 8, Hi: 15 * mm}) {
		t.Errorf("heights %v", z)
	}
}

// TestPlanKeepsItsWord states what holds for every path.
func TestPlanKeepsItsWord(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := routertest.Requests().Draw(t, "request")
		p, refusal := router.Plan(r)
		if refusal != nil {
			t.Fatalf("refused: %+v", refusal)
		}
		again, _ := router.Plan(r)
		if diff := cmp.Diff(p, again); diff != "" {
			t.Fatalf("planned twice:\n%s", diff)
		}
		first, last := p.Moves[0], p.Moves[len(p.Moves)-1]
		if first.Kind != model.MoveRapid || last.Kind != model.MoveRapid || min(first.Z, last.Z) != r.Tool.Clearance {
			t.Fatalf("begins with %+v and ends with %+v", first, last)
		}
		at := first
		for _, m := range p.Moves[1:] {
			run := math.Hypot((m.X - at.X).MM(), (m.Y - at.Y).MM())
			drop := (at.Z - m.Z).MM()
			arc := m.Kind == model.MoveCCW
			if arc {
				run = math.Pi * math.Hypot((m.X-m.CX).MM(), (m.Y-m.CY).MM()) // helices go in half turns
			}
			switch down := m.Kind == model.MoveRamp || arc && drop > 0; {
			case m.Kind == model.MoveRapid && run > 0:
				t.Fatalf("rapid move sideways: %+v to %+v", at, m)
			case m.Kind == model.MoveRapid && drop > 0 && m.Z < mm:
				t.Fatalf("rapid move down to %+v", m)
			case down && run == 0 && (inAir(r, m) || m.Z >= mm/2):
			case down && !(drop > 0 && drop <= run*math.Tan(r.Tool.RampDegrees*math.Pi/180)+1e-6):
				t.Fatalf("ramp of %v over %v mm: %+v", drop, run, m)
			case down, m.Kind == model.MoveRapid:
			case drop != 0 || run == 0 && m.Kind == model.MoveLine:
				t.Fatalf("%+v to %+v", at, m)
			case !slices.Contains(p.Levels, -m.Z):
				t.Fatalf("cuts on no level: %+v", m)
			case m.Kind == model.MoveCW:
				t.Fatalf("goes round clockwise, which is no climb milling: %+v", m)
			}
			at = m
		}
		if p.Seconds <= 0 || p.CutLength <= 0 {
			t.Fatalf("takes %v s for %v", p.Seconds, p.CutLength)
		}
	})
}

// inAir reports whether the bit, with its edge, is 2 mm clear of the wood.
func inAir(r router.Request, m model.Move) bool {
	clear := r.Stock.Grow((r.Tool.Diameter+1)/2 + 2*mm)
	return m.X <= clear.X.Lo || m.X >= clear.X.Hi || m.Y <= clear.Y.Lo || m.Y >= clear.Y.Hi
}

func BenchmarkPlan(b *testing.B) {
	r := routertest.Support()
	for b.Loop() {
		if _, refusal := router.Plan(r); refusal != nil {
			b.Fatal(refusal)
		}
	}
}
