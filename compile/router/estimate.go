package router

import (
	"math"
	"slices"

	"barwright/compile/model"
	"barwright/lang/length"
)

// Estimate returns the length of all moves at feed, and the time of all moves
// in seconds, to a tenth: every move starts and ends at rest, as a control
// does that follows the path exactly, and speeds up and slows down evenly, by
// the tool's acceleration. An acceleration of 0 takes no time, nor does a rapid
// rate of 0: they are not known. The first move only says where the bit starts;
// after the last one the bit goes to X0 Y0. Spindle start and dwells are not counted.
func Estimate(moves []model.Move, t model.Tool) (cut Length, seconds float64) {
	if len(moves) > 0 {
		moves = append(slices.Clip(moves), model.Move{Kind: model.MoveRapid, Z: moves[len(moves)-1].Z})
	}
	for i := 1; i < len(moves); i++ {
		from, m := moves[i-1], moves[i]
		l, rate := distance(from, m), t.Feed.MM()
		switch {
		case m.Kind == model.MoveRapid:
			rate = t.Rapid.MM()
		case m.Kind == model.MoveRamp, arc(m) && m.Z < from.Z: // a helix
			rate = t.Plunge.MM()
		}
		speed := rate / 60
		if arc(m) && t.Accelerate > 0 {
			speed = min(speed, math.Sqrt(float64(t.Accelerate*radius(m))))
		}
		if m.Kind != model.MoveRapid {
			cut += Length(math.Round(l * float64(length.Millimetre)))
		}
		seconds += restToRest(l, speed, t.Accelerate)
	}
	return cut, math.Round(seconds*10) / 10
}

// restToRest is the time of a straight run of l mm at v mm/s, speeding up and
// slowing down evenly.
func restToRest(l, v, acceleration float64) float64 {
	switch {
	case v <= 0:
		return 0
	case acceleration <= 0:
		return l / v
	case l*acceleration >= float64(v*v):
		return l/v + v/acceleration
	}
	return 2 * math.Sqrt(l/acceleration)
}

// distance returns the length of a move in mm.
func distance(from, m model.Move) float64 {
	if arc(m) {
		round, rise := radius(m)*sweep(from, m), (m.Z - from.Z).MM()
		return math.Sqrt(float64(round*round) + float64(rise*rise))
	}
	return norm(m.X-from.X, m.Y-from.Y, m.Z-from.Z)
}

func arc(m model.Move) bool { return m.Kind == model.MoveCW || m.Kind == model.MoveCCW }

func radius(m model.Move) float64 { return norm(m.X-m.CX, m.Y-m.CY) }

// sweep returns the angle of an arc, above 0 and at most a full turn.
func sweep(from, m model.Move) float64 {
	a := math.Atan2(float64(from.Y-m.CY), float64(from.X-m.CX))
	b := math.Atan2(float64(m.Y-m.CY), float64(m.X-m.CX))
	turn := b - a
	if m.Kind == model.MoveCW {
		turn = -turn
	}
	if turn <= 1e-12 {
		turn += 2 * math.Pi
	}
	return turn
}

// norm returns the length in mm of a step.
func norm(steps ...Length) float64 {
	sum := 0.0
	for _, s := range steps {
		sum += float64(s.MM() * s.MM())
	}
	return math.Sqrt(sum)
}
