package routing

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// approach is how far above the wood rapid moves end.
const approach = 2 * length.Millimetre

// rider takes the bit along and collects its moves.
type rider struct {
	moves []model.Move
	at    geom.Point
	z     Length
}

func (r *rider) add(m model.Move) {
	m.X, m.Y, m.Z = r.at.X, r.at.Y, r.z
	r.moves = append(r.moves, m)
}

// over brings the bit through the air to just above a point.
func (r *rider) over(p geom.Point, clearance Length) {
	r.at, r.z = p, clearance
	r.add(model.Move{Kind: model.MoveRapid})
	r.rapid(approach)
}

// rapid moves the bit up or down, in the air.
func (r *rider) rapid(z Length) {
	r.z = z
	r.add(model.Move{Kind: model.MoveRapid})
}

// rise lifts the bit at its feed, to go on from there.
func (r *rider) rise(z Length) {
	if z > r.z {
		r.z = z
		r.add(model.Move{Kind: model.MoveLine})
	}
}

// down goes straight down, at the feed of ramps.
func (r *rider) down(z Length) {
	r.z = z
	r.add(model.Move{Kind: model.MoveRamp})
}

func (r *rider) line(to geom.Point) {
	if to != r.at {
		r.at = to
		r.add(model.Move{Kind: model.MoveLine})
	}
}

// follow goes along pieces, and evenly down to z.
func (r *rider) follow(pieces []piece, z Length) {
	long, gone, top := 0.0, 0.0, r.z
	for i := range pieces {
		long += pieces[i].long
	}
	for i := range pieces {
		p := &pieces[i]
		gone += p.long
		before := r.z
		if r.at, r.z = p.to, z; i+1 < len(pieces) {
			r.z = top - Length(math.Round(float64(top-z)*gone/long))
		}
		m := model.Move{Kind: model.MoveLine, CX: p.centre.X, CY: p.centre.Y}
		switch {
		case p.turn > 0:
			m.Kind = model.MoveCCW
		case p.turn < 0:
			m.Kind = model.MoveCW
		case r.z < before:
			m.Kind = model.MoveRamp
		}
		r.add(m)
	}
}

// back goes back along pieces that it has come.
func (r *rider) back(pieces []piece, z Length) {
	out := make([]piece, len(pieces))
	for i, p := range pieces {
		out[len(pieces)-1-i] = p.reversed()
	}
	r.follow(out, z)
}

// rampRun returns how far a ramp runs for a drop, in nanometres.
func rampRun(drop Length, t *model.Tool) float64 {
	sin, cos := geom.Angle(math.Round(t.RampDegrees * float64(geom.Degree))).SinCos()
	return math.Ceil(float64(float64(drop)*cos) / sin)
}

// levels returns depths from one to another, evenly apart, as few as the step-down allows;
// the last one is the lower depth.
func levels(from, to, stepdown Length) []Length {
	n := (to - from + stepdown - 1) / stepdown
	out := make([]Length, 0, n)
	for i := range n {
		out = append(out, from+(to-from)*(i+1)/n)
	}
	return out
}
