package paint

import (
	"cmp"
	"math"
	"slices"
)

// touch is how far, in nanometres, solids may run into each other and still count as touching:
// more than rounding, less than any material is thick.
const touch = 50_000

// rounds is how often solids that hide each other in a ring are split before the ring is left.
const rounds = 8

// Order sorts solids so that each is painted after all that it hides.
//
// Of two whose pictures overlap, the plane of a face that parts them tells which may hide the
// other. Where parts are let into each other and no plane parts them, the one that holds for the
// most of them decides: it cuts off the least. Where solids hide each other in a ring, one of
// them is split along a face of another; what after some rounds of that is a ring still is painted
// from far to near, by the middles.
func (e Eye) Order(solids []Solid) []Solid {
	for round := 0; ; round++ {
		order, rings := e.sorted(solids)
		if len(rings) == 0 || round == rounds || !split(&solids, rings) {
			out := make([]Solid, len(order))
			for k, i := range order {
				out[k] = solids[i]
			}
			return out
		}
	}
}

// outline is what the painter looks at of a solid.
type outline struct {
	*Solid
	picture ring // convex
	bounds  bounds
	depth   float64 // of its middle; more is nearer
}

func (e Eye) outline(s *Solid) outline {
	o := outline{Solid: s, depth: middle(s.plan).dot(e.toward) + (s.lo+s.hi)/2}
	spots := make(ring, 0, 2*len(s.plan))
	for _, p := range s.plan {
		spots = append(spots, e.project(Vec{p.X, p.Y, s.lo}), e.project(Vec{p.X, p.Y, s.hi}))
	}
	o.picture = hull(spots)
	o.bounds = o.picture.bounds()
	return o
}

// extent is how far a solid reaches along a direction, which is level or upright.
func (s *Solid) extent(along Vec) (lo, hi float64) {
	if along.Z != 0 {
		return s.lo, s.hi
	}
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range s.plan {
		at := p.dot(along)
		lo, hi = min(lo, at), max(hi, at)
	}
	return lo, hi
}

var up = Vec{Z: 1}

// nearer tells which of two solids whose pictures overlap may hide the other: 1 a, -1 b, 0 neither.
func (e Eye) nearer(a, b *outline) int {
	mayA, mayB := true, true
	best, by := math.Inf(-1), 0
	for k := range 1 + len(a.axes) + len(b.axes) {
		n := up
		if k > len(a.axes) {
			n = b.axes[k-1-len(a.axes)]
		} else if k > 0 {
			n = a.axes[k-1]
		}
		facing := n.dot(e.toward)
		aLo, aHi := a.extent(n)
		bLo, bHi := b.extent(n)
		gap, hides := bLo-aHi, -1 // b lies further along
		if other := aLo - bHi; other > gap {
			gap, hides = other, 1
		}
		if facing < 0 {
			hides = -hides
		}
		apart := gap >= -touch
		if math.Abs(facing) <= edgeOn {
			if apart {
				return 0
			}
			continue
		}
		if apart {
			mayA, mayB = mayA && hides > 0, mayB && hides < 0
		}
		if gap > best {
			best, by = gap, hides
		}
	}
	switch {
	case mayA && mayB:
		return by
	case mayA:
		return 1
	case mayB:
		return -1
	}
	return 0
}

// sorted returns the order of solids by their numbers, and the rings that it had to break:
// each solid of one hides the next, the last the first.
func (e Eye) sorted(solids []Solid) (order []int, rings [][]int) {
	outlines := make([]outline, len(solids))
	frames := make([]bounds, len(solids))
	for i := range solids {
		outlines[i] = e.outline(&solids[i])
		frames[i] = outlines[i].bounds
	}
	behind := make([][]int, len(solids)) // what each hides
	overlaps(frames, func(i, j int) {
		a, b := &outlines[i], &outlines[j]
		if !a.picture.meets(b.picture) {
			return
		}
		switch e.nearer(a, b) {
		case 1:
			behind[i] = append(behind[i], j)
		case -1:
			behind[j] = append(behind[j], i)
		}
	})
	farFirst := func(i, j int) int {
		return cmp.Or(cmp.Compare(outlines[i].depth, outlines[j].depth), cmp.Compare(i, j))
	}
	t := topology{behind: behind, state: make([]int, len(solids))}
	all := make([]int, len(solids))
	for i := range all {
		all[i] = i
		slices.SortFunc(behind[i], farFirst)
	}
	slices.SortFunc(all, farFirst)
	for _, i := range all {
		t.visit(i)
	}
	return t.order, t.rings
}

// topology walks from each solid to those that it hides.
type topology struct {
	behind [][]int
	state  []int // 0 not met, 1 on the way, 2 done
	way    []int
	order  []int
	rings  [][]int
}

func (t *topology) visit(i int) {
	if t.state[i] != 0 {
		return
	}
	t.state[i] = 1
	t.way = append(t.way, i)
	for _, j := range t.behind[i] {
		if t.state[j] == 1 {
			t.rings = append(t.rings, slices.Clone(t.way[slices.Index(t.way, j):]))
			continue
		}
		t.visit(j)
	}
	t.way = t.way[:len(t.way)-1]
	t.state[i] = 2
	t.order = append(t.order, i)
}
