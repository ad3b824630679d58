package router

import (
	"fmt"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// Refusal says in plain words why a recess cannot be cut as asked.
type Refusal struct {
	Kind       string // "bit-too-wide"
	Text       string // with the figures
	Have, Need Length // what is there and what the limit is; 0 where the figures are no lengths

	// What the router says that is at fault: "stepover", "travel.x"; "" where it is the
	// recess. One of the others may say what it can be.
	Attr        string
	Least, Most Length
	Mend        string
}

// largest bounds every figure, so that no sum overflows.
const largest = 10 * length.Metre

// FastestFeed is the most in a minute; no router goes as fast through wood.
const FastestFeed = 60 * length.Metre

// maxMoves bounds the path, so that a slip of the pen cannot fill a disk.
const maxMoves = 50_000

// slowest is the least feed in a minute: from there on a program, which writes
// three decimals of its unit, states it to a thousandth, be it in inches.
const slowest = length.Inch / 2

// positive refuses figures that must be above zero and are not.
func positive(r Request) *Refusal {
	t := r.Tool
	for _, n := range [...]struct {
		name, attr string
		value      Length
		zeroOK     bool
	}{
		{"width of the recess", "", r.Shape.X.Size(), false},
		{"height of the recess", "", r.Shape.Y.Size(), false},
		{"depth of the recess", "", r.Depth, false},
		{"corner radius", "", r.Corner, true},
		{"thickness of the wood", "", r.Thick, false},
		{"diameter of the bit", "bit", t.Diameter, false},
		{"feed", "feed", t.Feed, false},
		{"feed on ramps", "plunge", t.Plunge, false},
		{"step-down", "stepdown", t.Stepdown, false},
		{"step-over", "stepover", t.Stepover, false},
		{"finishing allowance", "finish", t.Finish, true},
		{"allowance on the floor", "floor", t.Floor, true},
		{"clearance above the wood", "clearance", t.Clearance, false},
	} {
		isFeed := n.attr == "feed" || n.attr == "plunge"
		switch {
		case n.value < 0 || n.value == 0 && !n.zeroOK:
			return &Refusal{Kind: "not-positive", Attr: n.attr, Have: n.value, Text: fmt.Sprintf(
				"The %s is %s; it must be above zero.", n.name, r.show(n.value))}
		case isFeed && n.value > FastestFeed:
			return r.refuse("feed-too-fast", n.value, FastestFeed,
				"The "+n.name+" is %s in a minute; programs are written up to %s.").most(n.attr, FastestFeed)
		case !isFeed && n.value > largest:
			return r.refuse("too-large", n.value, largest,
				"The "+n.name+" is %s; no figure of a recess may be above %s.").most(n.attr, largest)
		}
	}
	for _, n := range [...]struct {
		attr, name string
		value      int
	}{{"rpm", "turns in a minute", t.RPM}, {"flutes", "flutes", t.Flutes}} {
		if n.value <= 0 {
			return &Refusal{Kind: "not-positive", Attr: n.attr, Text: fmt.Sprintf("The bit has %d %s; it must be above zero.", n.value, n.name)}
		}
	}
	return nil
}

// toolLimits refuses settings that no path can make up for.
func toolLimits(r Request) *Refusal {
	t := r.Tool
	switch slow := min(t.Feed, t.Plunge); {
	case slow < slowest:
		attr := "plunge"
		if t.Feed == slow {
			attr = "feed"
		}
		return r.refuse("feed-too-slow", slow, slowest,
			"The bit would move by %s in a minute where it goes slowest; programs are written from %s on.").least(attr, slowest)
	case t.Stepover > t.Diameter:
		return r.refuse("step-over-too-wide", t.Stepover, t.Diameter,
			"The step-over is %s, and the bit only %s wide: ridges would be left.").most("stepover", t.Diameter*2/5)
	case !(t.RampDegrees > 0 && t.RampDegrees <= 30) || rampAngle(t.RampDegrees) == 0:
		return &Refusal{Kind: "ramp-too-steep", Attr: "ramp", Mend: "ramp = 3", Text: fmt.Sprintf(
			"The ramp angle is %s degrees; it must be above 0 and at most 30.", strconv.FormatFloat(t.RampDegrees, 'f', -1, 64))}
	case t.Finish > bitRadius(r):
		return r.refuse("finish-too-thick", t.Finish, t.Diameter,
			"The finishing allowance is %s, more than half of what the bit is wide, %s.").most("finish", t.Diameter/2)
	case t.Floor >= r.Depth:
		return r.refuse("finish-too-thick", t.Floor, r.Depth,
			"%s are left on the floor for the last pass, but the recess is only %s deep.").most("floor", min(r.Depth/2, t.Stepdown))
	case t.Floor > t.Stepdown:
		return r.refuse("finish-too-thick", t.Floor, t.Stepdown,
			"%s are left on the floor for the last pass, more than the step-down of %s.").most("floor", min(r.Depth/2, t.Stepdown))
	case t.Clearance <= approach:
		refusal := r.refuse("clearance-too-low", t.Clearance, approach,
			"The clearance is %s; the bit already slows down %s above the wood.")
		refusal.Attr, refusal.Mend = "clearance", "more than clamps and warped boards stand up: "+r.show(15*length.Millimetre)+" where nothing does"
		return refusal
	}
	if n, least := t.Dialect.Decimals, leastDecimals(t.Dialect); n < least || n > mostDecimals {
		return &Refusal{Kind: "decimals-out-of-range", Attr: "decimals", Mend: fmt.Sprintf("decimals = %d", min(max(n, least), mostDecimals)),
			Text: fmt.Sprintf("Figures have %s. Arcs need %d at least to end on their circle, and more than %d mean nothing.",
				finding.Counted(n, "decimal"), least, mostDecimals)}
	}
	return nil
}

const mostDecimals = 6

// leastDecimals keeps the two radii of a quarter circle, once rounded, within
// the 0.002 mm or 0.0002 in that RS274/NGC allows (NISTIR 6556, arcs in centre
// format): they differ by two steps of the last decimal at most.
func leastDecimals(d model.Dialect) int {
	if d.Inch {
		return 4
	}
	return 3
}

// place refuses a recess that does not lie in the wood as it should.
func place(r Request) *Refusal {
	if r.Depth >= r.Thick {
		return r.refuse("bit-cuts-through", r.Depth, r.Thick,
			"The recess is %s deep, and the wood only %s thick: the bit would come through.")
	}
	open := sidesOf(r.Open)
	s, w := r.Shape, r.Stock
	for e, margin := range [4]Length{s.Y.Lo - w.Y.Lo, w.X.Hi - s.X.Hi, w.Y.Hi - s.Y.Hi, s.X.Lo - w.X.Lo} {
		side := model.Edge(e)
		switch {
		case margin < 0:
			return &Refusal{Kind: "recess-off-stock", Have: -margin, Text: fmt.Sprintf(
				"The recess reaches %s past the wood at the %s.", r.show(-margin), side)}
		case open[e] && margin != 0:
			return &Refusal{Kind: "open-side-off-edge", Have: margin, Text: fmt.Sprintf(
				"The recess is open at the %s, but ends %s from that edge of the wood.", side, r.show(margin))}
		case !open[e] && margin == 0:
			return &Refusal{Kind: "no-wall-left", Text: fmt.Sprintf(
				"The recess is closed at the %s, but ends on that edge of the wood: no wall is left.", side)}
		}
	}
	return nil
}

// room refuses a bit that does not fit, or has no room to come down in.
func (j *job) room(r Request) *Refusal {
	bit := 2 * (bitRadius(r) + r.Tool.Finish)
	for axis, size := range [2]Length{r.Shape.X.Size(), r.Shape.Y.Size()} {
		low, high := [2]model.Edge{model.LeftEdge, model.Bottom}[axis], [2]model.Edge{model.RightEdge, model.Top}[axis]
		if !j.open[low] && !j.open[high] && size < bit {
			return r.refuse("bit-too-wide", size, bit,
				"The recess is %s wide; the bit needs %s, the finishing allowance of both sides included.")
		}
	}
	if size := j.air.rect; size.X.Size() < 0 || size.Y.Size() < 0 {
		return r.refuse("bit-too-wide", min(r.Shape.X.Size(), r.Shape.Y.Size()), r.Tool.Finish,
			"The recess is %s deep from its open side, no more than the finishing allowance of %s.")
	}
	for side := range 4 {
		a, b := j.shape.corner(side), j.shape.corner(after(side))
		have := (b.X-a.X)*heading[side].X + (b.Y-a.Y)*heading[side].Y
		if need := j.shape.round[side] + j.shape.round[after(side)]; need > have {
			return r.refuse("corner-too-round", have, need,
				"A side of the recess is %s long; its rounded corners take %s.")
		}
	}
	long := j.rough.long()
	if least := bitRadius(r); len(r.Open) == 0 && long < least {
		return r.refuse("no-room-to-ramp", long, least,
			"The bit can move by %s inside the recess; to ramp down it needs %s.")
	}
	return nil
}

// effort refuses a path of absurdly many moves.
func (j *job) effort(r Request) *Refusal {
	n, rings := Length(len(j.levels)), Length(len(j.rings))
	if j.passes != nil {
		rings += ceilDiv(2*j.passes.half(), j.step)
	}
	drop := r.Depth/n + approach
	legs := 2 + 4*ceilDiv(rampLength(drop, r.Tool.RampDegrees), j.radius)
	if n < maxMoves && rings < maxMoves && n*(9*rings+legs+24) < maxMoves {
		return nil
	}
	return &Refusal{Kind: "path-too-long", Text: fmt.Sprintf(
		"The path would have more than %d moves: %d levels of %d rings or passes. Look at the step-over, step-down and ramp angle.",
		maxMoves, n, rings)}
}

// withinTravel refuses a path that the machine cannot reach.
func (r Request) withinTravel(moves []model.Move) *Refusal {
	plan, z := (&model.Program{Moves: moves}).Reach()
	travel := r.Tool.Travel
	plan = plan.Union(geom.Rect{}) // a program ends at X0 Y0
	for _, a := range [...]struct {
		name         string
		have, travel Length
	}{
		{"X", plan.X.Size(), travel.X},
		{"Y", plan.Y.Size(), travel.Y},
		{"Z", z.Size(), travel.Z},
	} {
		if a.travel > 0 && a.have > a.travel {
			return r.refuse("beyond-travel", a.have, a.travel,
				"The path is %s long in "+a.name+"; the machine moves %s.").least("travel."+strings.ToLower(a.name), a.have)
		}
	}
	return nil
}

// refuse makes a refusal whose text takes both figures.
func (r Request) refuse(kind string, have, need Length, format string) *Refusal {
	return &Refusal{Kind: kind, Have: have, Need: need,
		Text: fmt.Sprintf(format, r.show(have), r.show(need))}
}

// least says which figure of the router is at fault, and from where on it would do.
func (f *Refusal) least(attr string, l Length) *Refusal {
	f.Attr, f.Least = attr, l
	return f
}

// most likewise says up to where it would do.
func (f *Refusal) most(attr string, l Length) *Refusal {
	f.Attr, f.Most = attr, l
	return f
}

func (r Request) show(l Length) string {
	if r.Show != nil {
		return r.Show(l)
	}
	return length.Show(l, length.Millimetres, 0)
}
