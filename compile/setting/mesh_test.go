package setting_test

import (
	"math"
	"slices"

	"barwright/compile/setting"
)

// mesh is the oracle for rooms whose walls and bodies stand askew to one another. It knows polygons
// and places on a grid, moves one body at a time by one step along x, y or a level up or down, and
// tries all orders. On a grid it cannot be exact, so there are two of them: where things are
// grown by half a step, what it finds is a way; where they are shrunk by all that may lie between two places, no
// way is missed. A room is decided where both agree.
type mesh struct {
	room   setting.Room
	bodies [][]upright
	tall   int     // levels
	slack  float64 // how far before or beyond the landing may be, in paces
	// meets has, for each body at each displacement, a bit for each body that it is in,
	// and the next one for what is fixed.
	meets [][]uint8
	open  map[uint8]bool // whether what still stands comes apart; lookup only
}

const (
	level = 90 * mm     // all heights are whole levels
	pace  = level / 6   // from place to place in plan
	reach = 62          // places to each side of the start
	side  = 2*reach + 1 // places across
)

// xy is a place in plan, in paces.
type xy struct{ x, y float64 }

// upright is a solid in plan and the levels between which it is.
type upright struct {
	plan   []xy
	lo, hi int
}

func uprights(solids []setting.Solid) (out []upright) {
	for _, s := range solids {
		u := upright{lo: int(math.Round(float64(s.Box.Z.Lo) / float64(level))), hi: int(math.Round(float64(s.Box.Z.Hi) / float64(level)))}
		for _, c := range s.Frame.Corners(s.Box.U, s.Box.V) {
			u.plan = append(u.plan, xy{float64(c.X) / float64(pace), float64(c.Y) / float64(pace)})
		}
		out = append(out, u)
	}
	return out
}

// newMesh makes one whose things are grown by some paces, or shrunk by as many less than none.
func newMesh(r setting.Room, tall int, grown float64) *mesh {
	m := &mesh{room: r, tall: tall, slack: max(0, -grown), open: map[uint8]bool{0: true}}
	for _, b := range r.Bodies {
		m.bodies = append(m.bodies, uprights(b.Solids))
	}
	others := append(slices.Clone(m.bodies), uprights(r.Fixed))
	for a, body := range m.bodies {
		at := make([]uint8, side*side*(2*tall+1))
		for b, other := range others {
			if a == b {
				continue
			}
			for _, p := range body {
				for _, q := range other {
					m.mark(at, p, q, grown, 1<<b)
				}
			}
		}
		m.meets = append(m.meets, at)
	}
	return m
}

func (m *mesh) index(x, y, z int) int { return ((z+m.tall)*side+y+reach)*side + x + reach }

// mark marks the displacements of p at which it is in q.
func (m *mesh) mark(at []uint8, p, q upright, grown float64, bit uint8) {
	var apart []xy
	for _, a := range p.plan {
		for _, b := range q.plan {
			apart = append(apart, xy{b.x - a.x, b.y - a.y})
		}
	}
	edges := halfPlanes(apart)
	for y := -reach; y <= reach; y++ {
		lo, hi := math.Inf(-1), math.Inf(1)
		for _, e := range edges {
			switch rest := e.off + grown - e.y*float64(y); {
			case e.x > 1e-12:
				hi = min(hi, rest/e.x)
			case e.x < -1e-12:
				lo = max(lo, rest/e.x)
			case rest <= 0:
				hi = math.Inf(-1)
			}
		}
		for x := int(max(-reach, math.Floor(lo)+1)); x <= reach && float64(x) < hi; x++ {
			for z := max(-m.tall, q.lo-p.hi+1); z <= min(m.tall, q.hi-p.lo-1); z++ {
				at[m.index(x, y, z)] |= bit
			}
		}
	}
}

// halfPlane is where x*p.x + y*p.y < off; its normal is one long.
type halfPlane struct{ x, y, off float64 }

// halfPlanes are those whose common part is the hull of points: through two of them each, with none beyond.
func halfPlanes(points []xy) (out []halfPlane) {
	for _, a := range points {
		for _, b := range points {
			long := math.Hypot(b.x-a.x, b.y-a.y)
			if long < 1e-9 {
				continue
			}
			h := halfPlane{x: (b.y - a.y) / long, y: (a.x - b.x) / long}
			h.off = h.x*a.x + h.y*a.y
			beyond := func(p xy) bool { return h.x*p.x+h.y*p.y > h.off+1e-9 }
			same := func(o halfPlane) bool { return math.Hypot(o.x-h.x, o.y-h.y) < 1e-9 }
			if !slices.ContainsFunc(points, beyond) && !slices.ContainsFunc(out, same) {
				out = append(out, h)
			}
		}
	}
	return out
}

// apart reports whether the bodies of a set can leave one after another.
func (m *mesh) apart(set uint8) bool {
	if open, known := m.open[set]; known {
		return open
	}
	open := false
	for b := 0; b < len(m.bodies) && !open; b++ {
		rest := set &^ (1 << b)
		open = rest != set && m.leaves(b, rest) && m.apart(rest)
	}
	m.open[set] = open
	return open
}

// leaves floods the displacements of a body among a set and what is fixed.
func (m *mesh) leaves(b int, set uint8) bool {
	set |= 1 << len(m.bodies)
	seen := make([]bool, len(m.meets[b]))
	if m.meets[b][m.index(0, 0, 0)]&set != 0 {
		return false
	}
	queue := []cube{{}}
	seen[m.index(0, 0, 0)] = true
	for len(queue) > 0 {
		at := queue[0]
		queue = queue[1:]
		if m.out(b, at) {
			return true
		}
		for _, d := range units {
			next := at.plus(d)
			if max(next[0], -next[0], next[1], -next[1]) > reach || max(next[2], -next[2]) > m.tall || m.room.Lift > 0 && setting.Length(next[2])*level > m.room.Lift {
				continue
			}
			if i := m.index(next[0], next[1], next[2]); !seen[i] && m.meets[b][i]&set == 0 {
				seen[i] = true
				queue = append(queue, next)
			}
		}
	}
	return false
}

// out reports whether a displaced body is away from all, or in by the door, which is in the wall at y = 0.
func (m *mesh) out(b int, at cube) bool {
	if m.room.Door == nil {
		return max(at[0], -at[0], at[1], -at[1]) == reach || at[2] == m.tall
	}
	lo, hi := xy{math.Inf(1), math.Inf(1)}, math.Inf(-1)
	for _, u := range m.bodies[b] {
		for _, p := range u.plan {
			lo, hi = xy{min(lo.x, p.x), min(lo.y, p.y)}, max(hi, p.x)
		}
	}
	door := m.room.Door
	middle, near := (lo.x+hi)/2+float64(at[0]), lo.y+float64(at[1])
	before := func(x float64, lo, hi setting.Length) bool {
		return float64(lo)/float64(pace)-m.slack <= x && x <= float64(hi)/float64(pace)+m.slack
	}
	covers := lo.x+float64(at[0]) <= float64(door.Span.Lo)/float64(pace)+m.slack && hi+float64(at[0]) >= float64(door.Span.Hi)/float64(pace)-m.slack
	return (covers || before(middle, door.Span.Lo, door.Span.Hi)) && before(near, 0, door.Landing)
}
