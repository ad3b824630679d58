package ngc_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/router/programtest"
	"barwright/emit/ngc/ngctest"
	"barwright/emit/ngc/replay"
)

// TestDraws has 300 programs of recesses as shops cut them written, each in a dialect
// of its own. Cut as simulated none gouges by more than 0.01 mm, or leaves 0.05 mm
// beside the corners, to which a second opinion, that shares no code with the
// first, agrees; and each takes as long as its record says, to a tenth of a second.
func TestDraws(t *testing.T) {
	for i, p := range programtest.Programs(t) {
		t.Run(fmt.Sprint(i), func(t *testing.T) {
			t.Parallel()
			text := text(t, p)
			if err := replay.Check(text, p); err != nil {
				t.Error(err)
			}
			if err := opinion(text, p); err != nil {
				t.Error(err)
			}
			took, err := replay.Measure(text, p)
			if err != nil {
				t.Fatal(err)
			}
			moving := took.Seconds - p.Tool.Dialect.SpinUp
			if d := p.Tool.Dialect; !d.Chords && math.Abs(moving-p.Seconds) > 0.051+1e-4*moving {
				t.Errorf("moves for %.3f s; the record says %.1f s", moving, p.Seconds)
			}
			if t.Failed() {
				t.Logf("%+v\n%s", p.Tool, text)
			}
		})
	}
}

// TestOpinionSees: of a recess that lies 0.02 mm aside, or is 0.2 mm wider, the path is
// another one's.
func TestOpinionSees(t *testing.T) {
	for i, p := range programtest.Programs(t)[:30] {
		text := text(t, p)
		aside, wider := *p, *p
		aside.Shape = p.Shape.Shifted(geom.Point{X: mm / 50, Y: mm / 50})
		wider.Shape = slices.Clone(p.Shape)
		for k, v := range wider.Shape {
			if v.X > p.Shape.Bounds().X.Mid() {
				wider.Shape[k].X += mm / 5
			}
		}
		for name, q := range map[string]*model.Program{"aside": &aside, "wider": &wider} {
			closed := len(p.Open) == 0
			if err := opinion(text, q); err == nil && closed {
				t.Errorf("%d: %s: passes", i, name)
			}
		}
	}
}

// plan is a recess seen from above, in mm: a rectangle, rounded in its closed corners,
// whose open sides lie far out.
type plan struct {
	low, high, corner [2]float64 // corner is where a rounded one's centre lies, from either side
	round             [4]bool    // counter-clockwise from the lower left
	shape             [2][2]float64
}

func planOf(p *model.Program) plan {
	b, far := p.Shape.Bounds(), 1000.0
	g := plan{
		low: [2]float64{b.X.Lo.MM(), b.Y.Lo.MM()}, high: [2]float64{b.X.Hi.MM(), b.Y.Hi.MM()},
		corner: [2]float64{p.Corner.MM(), p.Corner.MM()}, round: [4]bool{true, true, true, true},
	}
	g.shape = [2][2]float64{g.low, g.high}
	for _, e := range p.Open {
		switch e {
		case model.Bottom:
			g.low[1] -= far
		case model.RightEdge:
			g.high[0] += far
		case model.Top:
			g.high[1] += far
		case model.LeftEdge:
			g.low[0] -= far
		}
	}
	return g
}

// depth returns how far inside the border a point lies; below 0 it is outside. Where
// a side is open its corners are far away, and do not count.
func (g plan) depth(x, y float64) float64 {
	left, right, bottom, top := x-g.low[0], g.high[0]-x, y-g.low[1], g.high[1]-y
	d, r := min(left, right, bottom, top), g.corner[0]
	if u, v := r-min(left, right), r-min(bottom, top); u > 0 && v > 0 {
		d = min(d, r-math.Hypot(u, v))
	}
	return d
}

// opinion reads a program's text and follows the bit in steps of 0.2 mm: nowhere below
// the top does it reach 0.01 mm beyond the recess and its reliefs. Then 500
// points are drawn, 0.05 mm inside the recess at least: on the floor it comes to each.
func opinion(text []byte, p *model.Program) error {
	tape, err := replay.Read(text, p.Tool.Dialect)
	if err != nil {
		return err
	}
	g, r := planOf(p), p.Tool.Diameter.MM()/2
	var floor [][2][2]float64
	for _, m := range tape.Motions {
		at := follow(m)
		for i, q := range at {
			if z := min(m.From.Z, m.To.Z); z < -p.Depth.MM()-0.01 {
				return fmt.Errorf("line %d: %.3f mm below the floor", m.Line, -p.Depth.MM()-z)
			} else if z >= -0.001 {
				break
			}
			if gouge := r - g.depth(q[0], q[1]); gouge > 0.01 && !inReliefs(g, p, q) {
				return fmt.Errorf("line %d: gouges by %.3f mm at X%.3f Y%.3f", m.Line, gouge, q[0], q[1])
			}
			if m.Arc && i > 0 && max(m.From.Z, m.To.Z) < -p.Depth.MM()+0.01 {
				floor = append(floor, [2][2]float64{at[i-1], q})
			}
		}
		if !m.Arc && max(m.From.Z, m.To.Z) < -p.Depth.MM()+0.01 {
			floor = append(floor, [2][2]float64{at[0], at[len(at)-1]})
		}
	}
	draw := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		var q [2]float64
		for k := range q {
			q[k] = g.shape[0][k] + draw.Float64()*(g.shape[1][k]-g.shape[0][k])
		}
		covered := func(s [2][2]float64) bool { return apart(s, q) <= r }
		if g.depth(q[0], q[1]) > 0.05 && !slices.ContainsFunc(floor, covered) {
			return fmt.Errorf("wood is left at X%.3f Y%.3f", q[0], q[1])
		}
	}
	return nil
}

// inReliefs reports whether the bit, where it reaches out of a recess, stays in its reliefs.
func inReliefs(g plan, p *model.Program, at [2]float64) bool {
	r := p.Tool.Diameter.MM() / 2
	for k := range 360 {
		sin, cos := math.Sincos(float64(k) * math.Pi / 180)
		x, y := at[0]+(r-0.01)*cos, at[1]+(r-0.01)*sin
		if g.depth(x, y) < 0 && !slices.ContainsFunc(p.Reliefs, func(c geom.Point) bool { return math.Hypot(x-c.X.MM(), y-c.Y.MM()) <= r }) {
			return false
		}
	}
	return len(p.Reliefs) > 0
}

// follow returns points of a move, 0.2 mm apart at most.
func follow(m replay.Motion) [][2]float64 {
	dx, dy := m.To.X-m.From.X, m.To.Y-m.From.Y
	run, radius := math.Hypot(dx, dy), math.Hypot(m.From.X-m.CX, m.From.Y-m.CY)
	start := math.Atan2(m.From.Y-m.CY, m.From.X-m.CX)
	if m.Arc {
		run = radius * math.Abs(m.Sweep)
	}
	n := max(1, math.Ceil(run/0.2))
	var out [][2]float64
	for k := 0.0; k <= n; k++ {
		q := [2]float64{m.From.X + dx*k/n, m.From.Y + dy*k/n}
		if m.Arc {
			sin, cos := math.Sincos(start + m.Sweep*k/n)
			q = [2]float64{m.CX + radius*cos, m.CY + radius*sin}
		}
		out = append(out, q)
	}
	return out
}

// apart is the distance of a point from a stretch.
func apart(s [2][2]float64, q [2]float64) float64 {
	dx, dy := s[1][0]-s[0][0], s[1][1]-s[0][1]
	t := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		t = max(0, min(1, ((q[0]-s[0][0])*dx+(q[1]-s[0][1])*dy)/l))
	}
	return math.Hypot(q[0]-s[0][0]-t*dx, q[1]-s[0][1]-t*dy)
}

// TestOutsideDraws has the first of these judged from outside.
func TestOutsideDraws(t *testing.T) {
	var cases []ngctest.Case
	for _, p := range programtest.Programs(t)[:*recesses] {
		cases = append(cases, ngctest.Case{Program: p, Text: text(t, p)})
	}
	ngctest.InspectAll(t, cases)
}
