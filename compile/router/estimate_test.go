package router

import (
	"math"
	"testing"

	"barwright/compile/model"
	"barwright/lang/length"
)

// TestEstimateWorkedExample follows the worked example of the project's G-code
// reference, section 8, and its tool's self-test: a recess of 100 x 40 x
// 6.3 mm, three levels, rings 2.5 mm apart. It prints 4694.36 mm and, stopping
// at each of the 117 moves, 136.2 s.
func TestEstimateWorkedExample(t *testing.T) {
	const (
		mm   = length.Millimetre
		half = 17.0
	)
	var moves []model.Move
	add := func(kind model.MoveKind, x, y, z float64) {
		at := func(v float64) Length { return Length(math.Round(v * float64(mm))) }
		moves = append(moves, model.Move{Kind: kind, X: at(x), Y: at(y), Z: at(z)})
	}
	const left, right, y = 30 + 3 + half, 130 - 3 - half, 50
	add(model.MoveRapid, left, y, 15)
	add(model.MoveRapid, left, y, 2)
	add(model.MoveRamp, left, y, 0)
	z := 0.0
	for level := 1.0; level <= 3; level++ {
		z = -2.1 * level
		add(model.MoveRamp, right, y, z)
		add(model.MoveLine, left, y, z)
		for k := 0.0; k < half; {
			k = min(half, k+2.5)
			add(model.MoveLine, left-k, y-k, z)
			add(model.MoveLine, right+k, y-k, z)
			add(model.MoveLine, right+k, y+k, z)
			add(model.MoveLine, left-k, y+k, z)
			add(model.MoveLine, left-k, y-k, z)
		}
		add(model.MoveLine, left, y, z)
	}
	add(model.MoveRapid, left, y, 15)

	if n := len(moves) - 1; n != 117 {
		t.Errorf("%d moves, want 117", n)
	}
	for i := range moves { // so that X0 Y0 is where the bit ends
		moves[i].X, moves[i].Y = moves[i].X-50*mm, moves[i].Y-50*mm
	}
	tool := model.Tool{Feed: 2400 * mm, Plunge: 800 * mm, Rapid: 6000 * mm, Accelerate: 500}
	cut, seconds := Estimate(moves, tool)
	if math.Abs(cut.MM()-4694.36) > 0.005 {
		t.Errorf("length %.3f mm, want 4694.36", cut.MM())
	}
	if math.Abs(seconds-136.2) > 0.05 {
		t.Errorf("%.1f s, want 136.2", seconds)
	}
}

// TestRestToRest has the figures of the same section.
func TestRestToRest(t *testing.T) {
	for _, c := range []struct{ length, want, by float64 }{
		{100, 2.1, 1e-9},
		{5, 0.2, 1e-9}, // where trapezoid and triangle meet
		{2, 0.126, 5e-4},
		{0, 0, 0},
	} {
		if got := restToRest(c.length, 50, 500); math.Abs(got-c.want) > c.by {
			t.Errorf("%g mm at 50 mm/s: %g s, want %g", c.length, got, c.want)
		}
	}
}

// TestEstimateArcs: on an arc of radius r the speed is at most sqrt(a r): 1 mm
// at 500 mm/s2 gives 22.4 mm/s (same section).
func TestEstimateArcs(t *testing.T) {
	const mm = length.Millimetre
	quarter := []model.Move{
		{},
		{Kind: model.MoveCCW, X: -mm, Y: mm, CX: -mm},
		{Kind: model.MoveCW, CX: -mm},
	}
	cut, seconds := Estimate(quarter, model.Tool{Feed: 6000 * mm, Plunge: mm, Accelerate: 500})
	if math.Abs(cut.MM()-math.Pi) > 1e-5 {
		t.Errorf("two quarters of radius 1: %.6f mm", cut.MM())
	}
	v := math.Sqrt(500.0)
	if want := 2 * (math.Pi/2/v + v/500); math.Abs(seconds-want) > 0.05 {
		t.Errorf("%.2f s, want %.2f", seconds, want)
	}
	around, _ := Estimate([]model.Move{{X: mm}, {Kind: model.MoveCW, X: mm}}, model.Tool{Feed: mm, Plunge: mm})
	if math.Abs(around.MM()-2*math.Pi) > 1e-5 {
		t.Errorf("full circle: %.6f mm", around.MM())
	}
}
