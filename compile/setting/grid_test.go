package setting_test

import (
	"fmt"
	"math/bits"
	"math/rand/v2"
	"slices"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/setting"
	"barwright/lang/length"
)

// cell is the side of the cubes that the oracle's rooms are made of.
const cell = 100 * length.Millimetre

// cube is a cube of the grid, or a displacement on it.
type cube [3]int

func (c cube) plus(d cube) cube { return cube{c[0] + d[0], c[1] + d[1], c[2] + d[2]} }

var units = []cube{{1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}, {0, 0, 1}, {0, 0, -1}}

func cells(lo, hi cube) geom.Box {
	at := func(i int) geom.Span {
		return geom.Span{Lo: setting.Length(lo[i]) * cell, Hi: setting.Length(hi[i]) * cell}
	}
	return geom.Box{U: at(0), V: at(1), Z: at(2)}
}

// cubes are those that solids fill.
func cubes(solids []setting.Solid) []cube {
	var out []cube
	for _, s := range solids {
		b := s.Box
		for x := b.U.Lo / cell; x < b.U.Hi/cell; x++ {
			for y := b.V.Lo / cell; y < b.V.Hi/cell; y++ {
				for z := b.Z.Lo / cell; z < b.Z.Hi/cell; z++ {
					out = append(out, cube{int(x), int(y), int(z)})
				}
			}
		}
	}
	return out
}

// far is a displacement that clears all that a drawn room holds; the oracle looks no further.
const far = 8

// grid is the oracle: it knows nothing but cubes, moves one body at a time by one cube in six
// directions, and tries all orders.
type grid struct {
	room   setting.Room
	bodies [][]cube
	fixed  []cube
	// meets has, for each body at each displacement, a bit for each body that it is in,
	// and the next one for what is fixed.
	meets [][]uint8
	open  map[uint8]bool // whether what still stands comes apart; lookup only
	stand uint8          // the bodies that stand
}

func index(d cube) int {
	const n = 2*far + 1
	return ((d[0]+far)*n+d[1]+far)*n + d[2] + far
}

func newGrid(r setting.Room) *grid {
	g := &grid{room: r, fixed: cubes(r.Fixed), open: map[uint8]bool{0: true}}
	for i, b := range r.Bodies {
		g.bodies = append(g.bodies, cubes(b.Solids))
		if b.Stands {
			g.stand |= 1 << i
		}
	}
	for a := range g.bodies {
		at := make([]uint8, index(cube{far, far, far})+1)
		for b, others := range append(slices.Clone(g.bodies), g.fixed) {
			for _, p := range g.bodies[a] {
				for _, q := range others {
					if a != b {
						at[index(cube{q[0] - p[0], q[1] - p[1], q[2] - p[2]})] |= 1 << b
					}
				}
			}
		}
		g.meets = append(g.meets, at)
	}
	return g
}

// apart reports whether the bodies of a set can leave one after another.
func (g *grid) apart(set uint8) bool {
	if open, known := g.open[set]; known {
		return open
	}
	open := false
	for b := 0; b < len(g.bodies) && !open; b++ {
		rest := set &^ (1 << b)
		open = rest != set && g.leaves(b, rest) && g.apart(rest)
	}
	g.open[set] = open
	return open
}

// held reports whether one of a set rests on a body.
func (g *grid) held(b int, set uint8) bool {
	for i, o := range g.room.Bodies {
		if set&(1<<i) != 0 && slices.Contains(o.On, g.room.Bodies[b].Name) {
			return true
		}
	}
	return false
}

// leaves reports whether a body gets away among a set and what is fixed.
func (g *grid) leaves(b int, set uint8) bool {
	if g.held(b, set) {
		return false
	}
	return g.floods(b, set, func(at cube) bool { return g.out(b, at.plus(at)) })
}

// comesOut reports whether a body comes along x or y by as much as it is long, among a set and what is fixed.
func (g *grid) comesOut(b int, set uint8) bool {
	lo, hi := g.bodies[b][0], g.bodies[b][0]
	for _, c := range g.bodies[b] {
		for i := range c {
			lo[i], hi[i] = min(lo[i], c[i]), max(hi[i], c[i])
		}
	}
	return g.floods(b, set, func(at cube) bool {
		return max(at[0], -at[0]) > hi[0]-lo[0] || max(at[1], -at[1]) > hi[1]-lo[1]
	})
}

// floods reports whether a displacement that will do can be reached past a set and what is fixed.
func (g *grid) floods(b int, set uint8, does func(at cube) bool) bool {
	set |= g.stand | 1<<len(g.bodies)
	seen := make([]bool, len(g.meets[b]))
	queue := []cube{{}}
	seen[index(cube{})] = true
	for len(queue) > 0 {
		at := queue[0]
		queue = queue[1:]
		if does(at) {
			return true
		}
		for _, d := range units {
			next := at.plus(d)
			if max(next[0], -next[0], next[1], -next[1], next[2], -next[2]) > far || g.lifted(next.plus(next)) {
				continue
			}
			if i := index(next); !seen[i] && g.meets[b][i]&set == 0 {
				seen[i] = true
				queue = append(queue, next)
			}
		}
	}
	return false
}

// lifted reports whether a displacement in half cubes is too high.
func (g *grid) lifted(half cube) bool {
	return g.room.Lift > 0 && setting.Length(half[2])*cell/2 > g.room.Lift
}

// out reports whether a body displaced by half cubes is away from all, or in by the door: with its middle before it, or
// all across it.
func (g *grid) out(b int, half cube) bool {
	if g.room.Door == nil {
		return max(half[0], -half[0], half[1], -half[1], half[2], -half[2]) == 2*far
	}
	lo, hi := g.bodies[b][0], g.bodies[b][0]
	for _, c := range g.bodies[b] {
		for i := range c {
			lo[i], hi[i] = min(lo[i], c[i]), max(hi[i], c[i])
		}
	}
	door := g.room.Door
	middle, near := setting.Length(lo[0]+hi[0]+1+half[0])*cell/2, setting.Length(2*lo[1]+half[1])*cell/2
	covers := setting.Length(2*lo[0]+half[0])*cell/2 <= door.Span.Lo && setting.Length(2*hi[0]+2+half[0])*cell/2 >= door.Span.Hi
	return (door.Span.Holds(middle) || covers) && 0 <= near && near <= door.Landing
}

// follows walks an order by half cubes and tells the first collision.
func (g *grid) follows(order []setting.Step) error {
	if want := len(g.bodies) - bits.OnesCount8(g.stand); len(order) != want {
		return fmt.Errorf("%d steps for %d bodies", len(order), want)
	}
	full := make(map[cube]bool) // lookup only
	for _, c := range g.fixed {
		full[c] = true
	}
	set := g.stand
	for b := range g.bodies {
		for _, c := range g.bodies[b] {
			full[c] = full[c] || g.stand&(1<<b) != 0
		}
	}
	for _, step := range order {
		b := slices.Index(g.names(), step.Body)
		if g.held(b, set) {
			return fmt.Errorf("%s comes under what rests on it", step.Body)
		}
		set |= 1 << b
		begins, err := g.walk(b, step, full)
		if err != nil {
			return err
		}
		if g.room.Door != nil && !g.out(b, begins) {
			return fmt.Errorf("%s begins at %v, not at the door", step.Body, begins)
		}
		for _, c := range g.bodies[b] {
			full[c] = true
		}
	}
	return nil
}

// walk takes a body out of its place as it came, and tells where that ends, in half cubes.
func (g *grid) walk(b int, step setting.Step, full map[cube]bool) (at cube, err error) {
	for i, s := range slices.Backward(step.Slides) {
		n := s.By / (cell / 2)
		if s.By%(cell/2) != 0 || s.Turn != 0 {
			return at, fmt.Errorf("%s: slide %v is off the grid", step.Body, s)
		}
		if i == 0 && g.room.Door == nil {
			n = 4 * far
		}
		for range n {
			at = at.plus(unit(s.Dir.Opposite()))
			if g.lifted(at) {
				return at, fmt.Errorf("%s is lifted too high, by %v", step.Body, at)
			}
			if hit := slices.IndexFunc(g.bodies[b], func(c cube) bool { return meets(full, c, at) }); hit >= 0 {
				return at, fmt.Errorf("%s, displaced by %v, is in something with %v", step.Body, at, g.bodies[b][hit])
			}
		}
	}
	return at, nil
}

// meets reports whether a cube, displaced by half cubes, is in a full one.
func meets(full map[cube]bool, c, half cube) bool {
	var lo, n cube
	for i, h := range half {
		lo[i], n[i] = c[i]+(h>>1), 1+h&1
	}
	for x := range n[0] {
		for y := range n[1] {
			for z := range n[2] {
				if full[lo.plus(cube{x, y, z})] {
					return true
				}
			}
		}
	}
	return false
}

func unit(d geom.Dir) cube {
	var out cube
	out[d.Axis] = 1
	if d.Neg {
		out[d.Axis] = -1
	}
	return out
}

// shuffled is any order that keeps to After.
func shuffled(rng *rand.Rand, steps []setting.Step) []setting.Step {
	var out []setting.Step
	for rest := slices.Clone(steps); len(rest) > 0; {
		ready := func(s setting.Step) bool {
			return !slices.ContainsFunc(rest, func(o setting.Step) bool { return slices.Contains(s.After, o.Body) })
		}
		i := rng.IntN(len(rest))
		if ready(rest[i]) {
			out = append(out, rest[i])
			rest = slices.Delete(rest, i, i+1)
		}
	}
	return out
}

// TestGrid draws rooms and compares with the oracle, both ways: an order is found exactly where
// there is one, and it collides with nothing, nor does any other that keeps to After. So it is in the
// room turned as a whole.
func TestGrid(t *testing.T) {
	const rooms = 2000
	rng := rand.New(rand.NewPCG(8, 2))
	var orders, blocks, pairs, outs, turns int
	for i := range rooms {
		r := drawnRoom(rng)
		g := newGrid(r)
		can := g.apart((1<<len(r.Bodies) - 1) &^ g.stand)
		steps, blocked := r.Order()
		if turned, blocked := askew(r).Order(); (blocked == nil) != can {
			t.Fatalf("room %d, askew: comes apart: %v, blocked: %+v\n%+v", i, can, blocked, r)
		} else if i%50 == 0 {
			if err := audit(askew(r), turned); err != nil {
				t.Fatalf("room %d, askew: %v\n%+v\n%+v", i, err, turned, r)
			}
		}
		switch {
		case can != (blocked == nil):
			t.Fatalf("room %d: comes apart: %v, blocked: %+v\n%+v", i, can, blocked, r)
		case can:
			orders++
			if err := g.follows(steps); err != nil {
				t.Fatalf("room %d: %v\n%+v\n%+v", i, err, steps, r)
			}
			if err := g.follows(shuffled(rng, steps)); err != nil {
				t.Fatalf("room %d: another order: %v\n%+v\n%+v", i, err, steps, r)
			}
			if slices.ContainsFunc(steps, func(s setting.Step) bool { return len(s.Slides) > 1 }) {
				turns++
			}
		default:
			blocks++
			if err := g.explains(blocked); err != nil {
				t.Fatalf("room %d: %v\n%+v", i, err, r)
			}
			if len(blocked.Bodies) > 1 {
				pairs++
			}
			if blocked.Out {
				outs++
			}
		}
	}
	t.Logf("%d orders, %d of them with more than one slide; %d blocked, %d of them by one another, %d though they come out of their places", orders, turns, blocks, pairs, outs)
	if 3*(turns+blocks) < rooms || min(orders, pairs, outs) < rooms/50 {
		t.Errorf("too few of a kind")
	}
}

// explains checks that the bodies named are blocked by themselves, and that none of fewer is
// where they are three or more; and each first hit.
func (g *grid) explains(b *setting.Blocked) error {
	set := g.set(b.Bodies)
	for i := range g.bodies {
		if set&(1<<i) != 0 && g.leaves(i, set&^(1<<i)) {
			return fmt.Errorf("%s leaves: %+v", g.room.Bodies[i].Name, b)
		}
	}
	for one := range g.bodies {
		for other := range one + 1 {
			if len(b.Bodies) > len(slices.Compact([]int{one, other})) && !g.apart((1<<one|1<<other)&^g.stand) {
				return fmt.Errorf("%s and %s block one another alone: %+v", g.room.Bodies[one].Name, g.room.Bodies[other].Name, b)
			}
		}
	}
	first := slices.Index(g.names(), b.Bodies[0])
	if out := g.comesOut(first, set&^(1<<first)); out != b.Out {
		return fmt.Errorf("%s comes out of its place: %v, told %v", b.Bodies[0], out, b.Out)
	}
	for _, h := range b.Hits {
		i := slices.Index(g.names(), h.Body)
		d := unit(h.Slide.Dir)
		at := cube{}
		for range h.Slide.By / cell {
			at = at.plus(d)
			if g.meets[i][index(at)]&(set|g.stand|1<<len(g.bodies)) != 0 {
				return fmt.Errorf("%+v: stopped before", h)
			}
		}
		by := slices.Index(g.names(), h.By)
		if by < 0 {
			by = len(g.bodies)
		}
		if g.meets[i][index(at.plus(d))]&(1<<by) == 0 {
			return fmt.Errorf("%+v: not stopped by it", h)
		}
	}
	return nil
}

func (g *grid) names() []string {
	var out []string
	for _, b := range g.room.Bodies {
		out = append(out, b.Name)
	}
	return out
}

func (g *grid) set(names []string) (set uint8) {
	for i, n := range g.names() {
		if slices.Contains(names, n) {
			set |= 1 << i
		}
	}
	return set
}
