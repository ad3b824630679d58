package replay

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// What is let through, in mm.
const (
	sideSlack   = 0.01 - 2*sag // into a wall
	depthSlack  = 0.01         // the last decimal of the text
	tabSlack    = 0.05         // of a tab's ends and height
	leftBeside  = 0.012        // of a wall: wood closer to it is not asked for
	nearBy      = 0.045        // off a wall: a cut through the wood must reach so near
	rowStep     = 0.025        // between rows, and the longest gap in one
	rampStep    = 0.05         // height of the level pieces that stand for a ramp
	aboveWood   = 0.5          // where a rapid move down must end
	travelSlack = 0.01         // the last decimal of the text
	aroundBit   = 5.0          // how far the bit may leave what it cuts, beyond its diameter
)

// cutter is the bit, and the wood that it has not yet cut.
type cutter struct {
	*task
	layers    []*layer
	sites     []*site
	radius    float64
	floor     float64 // depth, of the deepest work
	stepdown  float64
	clearance float64
	feed      float64
	plunge    float64
	steepest  float64       // tangent of the ramp angle
	chord     float64       // how far a straight piece may leave an arc
	reach     box           // where the bit's centre may be
	risen     bool          // above the top, since the last plunge
	climbed   []swath       // round the lines of last passes along walls, which are on their right
	against   []stretch     // such lines that have one on their left only
	touched   map[turn]bool // that touch nothing; for lookup only
}

// site is what has been cut of a work.
type site struct {
	*work
	reach box
	grid  *grid
	level []swath   // cut level
	deep  []float64 // how deep, each
	used  []bool    // which of the levels
}

// turn is an arc of a helix, in plan, within a layer.
type turn struct {
	from, to, centre spot
	layer            *layer
}

func newCutter(t *task) *cutter {
	c := &cutter{
		task:      t,
		layers:    t.layers(),
		radius:    t.tool.Diameter.MM() / 2,
		floor:     t.deepest(),
		stepdown:  t.tool.Stepdown.MM(),
		clearance: t.tool.Clearance.MM(),
		feed:      t.tool.Feed.MM(),
		plunge:    t.tool.Plunge.MM(),
		steepest:  math.Tan((t.tool.RampDegrees + 0.05) * math.Pi / 180),
		reach:     box{}.grown(t.tool.Diameter.MM() + aroundBit),
		touched:   map[turn]bool{},
	}
	if t.tool.Dialect.Chords {
		c.chord = t.tool.Dialect.Chord.MM()
	}
	for _, w := range t.works {
		s := &site{work: w, reach: t.reach(w), grid: newGrid(t, w), used: make([]bool, len(w.levels))}
		c.sites, c.reach = append(c.sites, s), c.reach.union(s.reach)
	}
	return c
}

// motion judges a move and takes away the wood.
func (c *cutter) motion(m Motion) error {
	plan := path(m)
	if !within(c.reach, plan) {
		return errors.New("the bit travels far from what it cuts")
	}
	switch {
	case max(m.From.Z, m.To.Z) > c.clearance+depthSlack:
		return errors.New("the bit rises above the clearance")
	case m.Sweep < 0 && !c.turns:
		return errors.New("an arc clockwise, which leaves the wood on the wrong side")
	case m.To.Z < -c.floor-depthSlack:
		return fmt.Errorf("%.3f mm below the floor of what it cuts", -c.floor-m.To.Z)
	}
	if m.Rapid {
		return c.rapid(m)
	}
	if !m.Spinning {
		return errors.New("a feed move while the spindle stands")
	}
	if err := c.fed(m); err != nil {
		return err
	}
	c.risen = c.risen || m.From.Z >= -depthSlack
	if min(m.From.Z, m.To.Z) >= -depthSlack {
		return nil
	}
	at := c.at(plan)
	if len(at) == 0 {
		return errors.New("the bit travels far from what it cuts")
	}
	if m.From.Z == m.To.Z && !c.levelled(at, plan, -m.To.Z) && !c.flat(m) {
		return fmt.Errorf("cuts level at Z%.3f, which is none of the levels", m.To.Z)
	}
	if err := c.touches(m, plan); err != nil {
		return err
	}
	c.sweep(m)
	return c.cut(m, plan, at)
}

// fed judges the feed of a move: that of ramps on the way down.
func (c *cutter) fed(m Motion) error {
	want := c.feed
	if m.To.Z < m.From.Z {
		want = c.plunge
	}
	is := func(feed float64) bool { return math.Abs(m.Feed-feed) <= feed*0.001 }
	if is(want) || c.flat(m) && is(c.plunge) {
		return nil
	}
	return fmt.Errorf("feed %.1f mm/min instead of %.1f", m.Feed, want)
}

// flat reports whether a move may be of a ramp, and too short for its fall to show.
func (c *cutter) flat(m Motion) bool {
	return m.From.Z == m.To.Z && m.length()*c.steepest <= rounding
}

func within(b box, plan []slope) bool {
	return !slices.ContainsFunc(plan, func(s slope) bool { return !b.holds(s.a) || !b.holds(s.b) })
}

// at returns the sites that a path is at: no farther from their shape than the bit need go.
func (c *cutter) at(plan []slope) []*site {
	var out []*site
	for _, s := range c.sites {
		if within(s.reach, plan) && !(s.outline && c.piece.inside(plan[0].a)) {
			out = append(out, s)
		}
	}
	return out
}

// levelled reports whether a depth is a level of one of the sites, and notes where the
// bit moved level.
func (c *cutter) levelled(at []*site, plan []slope, depth float64) bool {
	found := false
	for _, s := range at {
		for i, level := range s.levels {
			if math.Abs(level-depth) > depthSlack {
				continue
			}
			found = true
			s.used[i] = s.used[i] || s.outline || slices.ContainsFunc(plan, func(p slope) bool { return s.rings[0].inside(p.a) })
		}
	}
	return found
}

// sweep notes what a move cuts level, or straight down.
func (c *cutter) sweep(m Motion) {
	down := !m.Arc && m.From.X == m.To.X && m.From.Y == m.To.Y && m.From.Z > m.To.Z
	if m.From.Z != m.To.Z && !down {
		return
	}
	for _, swath := range m.level(c.radius) {
		for _, s := range c.sites {
			if !swath.box().apart(s.reach) {
				s.level, s.deep = append(s.level, swath), append(s.deep, -m.To.Z)
			}
		}
	}
}

// level returns what a bit sweeps along a move, in plan.
func (m Motion) level(radius float64) []swath {
	from, to := spot{m.From.X, m.From.Y}, spot{m.To.X, m.To.Y}
	if !m.Arc {
		return []swath{straight(stretch{from, to}, radius)}
	}
	c := spot{m.CX, m.CY}
	start, half := math.Atan2(from.y-c.y, from.x-c.x), m.Sweep/2
	middle := spot{c.x + float64(m.radius()*math.Cos(start+half)), c.y + float64(m.radius()*math.Sin(start+half))}
	bend := arc{c, m.radius(), half}
	return []swath{{stretch: stretch{from, middle}, r: radius, arc: bend}, {stretch: stretch{middle, to}, r: radius, arc: bend}}
}

// rapid lets the bit up anywhere, down to above the wood, and sideways at the
// clearance only.
func (c *cutter) rapid(m Motion) error {
	c.risen = c.risen || m.To.Z >= -depthSlack
	switch sideways := m.From.X != m.To.X || m.From.Y != m.To.Y; {
	case sideways && min(m.From.Z, m.To.Z) < c.clearance-depthSlack:
		return errors.New("a rapid move sideways, below the clearance")
	case m.To.Z < m.From.Z && m.To.Z < aboveWood:
		return errors.New("a rapid move down into the wood")
	case m.To.Z < m.From.Z && !m.Spinning:
		return errors.New("a rapid move down while the spindle stands")
	}
	return nil
}

// slope is a straight piece of a path, with its heights at both ends.
type slope struct {
	stretch
	from, to float64
}

// path returns a move as straight pieces; those of an arc are all as long.
func path(m Motion) []slope {
	from, to := spot{m.From.X, m.From.Y}, spot{m.To.X, m.To.Y}
	if !m.Arc {
		return []slope{{stretch{from, to}, m.From.Z, m.To.Z}}
	}
	pieces := chords(from, to, m.CX, m.CY, m.Sweep)
	out := make([]slope, len(pieces))
	z, drop := m.From.Z, m.From.Z-m.To.Z
	for i, piece := range pieces {
		next := m.To.Z
		if i+1 < len(pieces) {
			next = m.From.Z - drop*float64(i+1)/float64(len(pieces))
		}
		out[i] = slope{piece, z, next}
		z = next
	}
	return out
}

// touches reports wood that must stay and that the bit comes into, in each layer that
// the move passes through.
func (c *cutter) touches(m Motion, plan []slope) error {
	from := depthSlack
	for _, l := range c.layers {
		if low := -min(m.From.Z, m.To.Z); low > from {
			if err := c.touchesIn(l, m, plan, from); err != nil {
				return err
			}
		}
		from = l.to
	}
	return nil
}

// touchesIn is exact: the bit meets the wood if its centre is in it, or nearer to its
// border than the bit's radius.
func (c *cutter) touchesIn(l *layer, m Motion, plan []slope, from float64) error {
	high := -max(m.From.Z, m.To.Z)
	whole := high > from && -min(m.From.Z, m.To.Z) <= l.to
	key := turn{plan[0].a, plan[len(plan)-1].b, spot{m.CX, m.CY}, l}
	helix := m.Arc && whole && m.From.Z != m.To.Z
	if helix && c.touched[key] {
		return nil
	}
	first := true
	for _, piece := range plan {
		piece, ok := piece.amid(from, l.to)
		if !ok {
			continue
		}
		if first && l.holds(piece.a) {
			return fmt.Errorf("the bit is in wood that must stay, at X%.3f Y%.3f", piece.a.x, piece.a.y)
		}
		first = false
		if err := c.beside(l, piece); err != nil {
			return err
		}
	}
	if helix {
		c.touched[key] = true
	}
	return nil
}

// amid returns what of a slope lies between two depths, the lower one included; ok is
// false where nothing does.
func (s slope) amid(from, to float64) (part slope, ok bool) {
	if s.from == s.to {
		return s, -s.from > from && -s.from <= to
	}
	// The shares of its length where it passes them.
	a, b := (s.from+from)/(s.from-s.to), (s.from+to)/(s.from-s.to)
	lo, hi := max(0, min(a, b)), min(1, max(a, b))
	if lo >= hi {
		return s, false
	}
	drop := s.from - s.to
	return slope{s.part(lo, hi), s.from - float64(drop*lo), s.from - float64(drop*hi)}, true
}

// beside judges a piece of a path by the walls beside it.
func (c *cutter) beside(l *layer, piece slope) error {
	onLeft, onRight := false, false
	for _, rim := range l.border {
		if piece.farther(rim.box.diagonal(), c.radius+leftBeside) {
			continue
		}
		for _, w := range rim.walls {
			if piece.farther(w.stretch, c.radius+leftBeside) {
				continue
			}
			d := piece.distance(w.stretch)
			if d < c.radius-w.slack {
				return fmt.Errorf("the bit cuts %.3f mm into wood that must stay, near X%.3f Y%.3f", c.radius-d, w.a.x, w.a.y)
			}
			if d <= c.radius+leftBeside && c.follows(piece, w) {
				left := piece.side(w.along(0.5)) > 0
				onLeft, onRight = onLeft || left, onRight || !left
			}
		}
	}
	switch {
	case onRight:
		c.climbed = append(c.climbed, straight(piece.stretch, leftBeside))
	case onLeft:
		c.against = append(c.against, piece.stretch)
	}
	return nil
}

// follows reports whether a piece is of a last pass along a wall, which is climb milling:
// level, as deep as the wall's work, and beside it all the way. Passes to and fro need not be.
func (c *cutter) follows(piece slope, w wall) bool {
	return w.work != nil && (c.tool.Passes != "parallel" || w.work.freed || w.work.outline) &&
		piece.from == piece.to && math.Abs(w.work.depth+piece.to) <= depthSlack &&
		piece.length() > 0 && piece.parallel(w.stretch) &&
		max(w.off(piece.a), w.off(piece.b)) <= c.radius+leftBeside
}
