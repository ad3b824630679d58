package replay

import (
	"cmp"
	"math"
	"slices"

	"barwright/compile/model"
)

// Measures are what a program takes and does, as simulated.
type Measures struct {
	Seconds float64 // of all moves and waits
	Cut     float64 // length of the moves at feed, in mm
	Air     float64 // length of the rapid moves
	Removed float64 // wood, in mm³
}

// Measure reads a program's text and tells its measures. Every move starts and ends
// at rest, as on a control that follows the path exactly: it speeds up and slows
// down evenly, by the machine's acceleration; on an arc of radius r it goes at
// √(a·r) at most. An acceleration of 0 takes no time, nor does a rapid rate of 0:
// they are not known. The first two moves, up and across, only say where the bit starts.
func Measure(text []byte, p *model.Program) (Measures, error) {
	return taskOf(p, p.Stock).measure(text)
}

// MeasureRouting is Measure for what a router cuts beside recesses. The wood ends at the
// board's lower face, and at the part's edge where no outline is cut.
func MeasureRouting(text []byte, r *model.Routing) (Measures, error) {
	return taskOfRouting(r).measure(text)
}

func (t *task) measure(text []byte) (Measures, error) {
	tape, err := Read(text, t.tool.Dialect)
	if err != nil {
		return Measures{}, err
	}
	out := Measures{Seconds: tape.Dwell, Removed: t.removed(tape)}
	for _, m := range tape.Motions {
		l, rate := m.length(), m.Feed
		if m.Rapid {
			rate = t.tool.Rapid.MM()
			out.Air += l
		} else {
			out.Cut += l
		}
		out.Seconds += restToRest(l, m.speed(rate/60, t.tool.Accelerate), t.tool.Accelerate)
	}
	return out, nil
}

// length returns the length of a move in mm.
func (m Motion) length() float64 {
	rise := m.To.Z - m.From.Z
	if m.Arc {
		return math.Hypot(m.radius()*m.Sweep, rise)
	}
	return math.Hypot(math.Hypot(m.To.X-m.From.X, m.To.Y-m.From.Y), rise)
}

func (m Motion) radius() float64 { return math.Hypot(m.From.X-m.CX, m.From.Y-m.CY) }

// speed returns how fast a move may go that is told to go at v mm/s.
func (m Motion) speed(v, acceleration float64) float64 {
	if m.Arc && acceleration > 0 {
		return min(v, math.Sqrt(acceleration*m.radius()))
	}
	return v
}

// restToRest is the time of a run of l mm at v mm/s, speeding up and slowing down
// evenly.
func restToRest(l, v, acceleration float64) float64 {
	switch {
	case v <= 0:
		return 0
	case acceleration <= 0:
		return l / v
	case l*acceleration >= v*v:
		return l/v + v/acceleration
	}
	return 2 * math.Sqrt(l/acceleration)
}

// areaStep is how far the rows are apart that measure an area, in mm, where that is not
// more than areaRows.
const (
	areaStep = 0.05
	areaRows = 4000
)

// removed returns the volume that is cut out of the wood: of each layer between two
// heights where the bit moves level, or to which it bores, all that it sweeps there or
// deeper. Ramps are left out, as the level below each sweeps them.
func (t *task) removed(tape *Tape) float64 {
	var level []Motion
	for _, m := range tape.Motions {
		bored := m.From.X == m.To.X && m.From.Y == m.To.Y && !m.Arc && m.From.Z > m.To.Z
		if !m.Rapid && (m.From.Z == m.To.Z || bored) && m.To.Z < 0 {
			level = append(level, m)
		}
	}
	slices.SortStableFunc(level, func(a, b Motion) int { return cmp.Compare(a.To.Z, b.To.Z) })
	volume, covered := 0.0, 0.0
	var cut []swath
	known, measured := map[swath]bool{}, 0 // lookup only; swaths of which the area is known
	for i, m := range level {
		for _, s := range m.level(t.tool.Diameter.MM() / 2) {
			if !known[s] {
				known[s], cut = true, append(cut, s)
			}
		}
		above := 0.0
		if i+1 < len(level) {
			above = max(level[i+1].To.Z, -t.under)
		}
		if thick := above - max(m.To.Z, -t.under); thick > 0 {
			if len(cut) > measured {
				covered, measured = area(cut, t.wood), len(cut)
			}
			volume += float64(covered * thick)
		}
	}
	return volume
}

// area returns how much of the wood the swaths cover, in mm².
func area(cut []swath, wood ring) float64 {
	from, to := math.Inf(1), math.Inf(-1)
	for _, s := range cut {
		b := s.box()
		from, to = min(from, b.low.y), max(to, b.high.y)
	}
	from, to = max(from, wood.box.low.y), min(to, wood.box.high.y)
	n := min(areaRows, math.Ceil((to-from)/areaStep))
	step, sum := (to-from)/n, 0.0
	var inWood, cutWood []interval
	_ = rows(cut, from, to, step, func(y float64, covered []interval) error {
		inWood = wood.across(y, inWood[:0])
		cutWood = common(covered, inWood, cutWood[:0])
		for _, in := range cutWood {
			sum += float64((in.hi - in.lo) * step)
		}
		return nil
	})
	return sum
}
