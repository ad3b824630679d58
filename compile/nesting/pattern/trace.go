package pattern

import (
	"cmp"
	"iter"
	"slices"
)

// cell is a part of a grid, at a level.
type cell struct{ level, x, y int }

// way parts a cell in two, or leaves it whole: then the level of b is -1.
type way struct {
	a, b   cell
	alongX bool
}

// ways are those that a cell can be parted in at its level.
func (g *Grid) ways(c cell) iter.Seq[way] {
	return func(yield func(way) bool) {
		l := &g.levels[c.level]
		if g.stages == 0 || l.alongX {
			for _, p := range g.x.of(c.x) {
				if !yield(way{cell{c.level, int(p.a), c.y}, cell{c.level, int(p.b), c.y}, true}) {
					return
				}
			}
		}
		if g.stages == 0 || !l.alongX {
			for _, p := range g.y.of(c.y) {
				if !yield(way{cell{c.level, c.x, int(p.a)}, cell{c.level, c.x, int(p.b)}, false}) {
					return
				}
			}
		}
	}
}

// at is the worth of a cell; level -1 is nothing.
func (g *Grid) at(c cell) int64 {
	if c.level < 0 {
		return 0
	}
	return g.levels[c.level].worth[c.x*len(g.y.at)+c.y]
}

func (g *Grid) sum(w way) int64 { return g.at(w.a) + g.at(w.b) }

// Best are some patterns that are worth more than so much, the best first, which differ in their
// first cut. The grid was priced.
func (g *Grid) Best(over int64, n int) (out []*Part) {
	top := cell{x: len(g.x.at) - 1, y: len(g.y.at) - 1}
	if top.x < 0 || top.y < 0 {
		return nil
	}
	var ways []way
	for top.level = max(0, 2*g.stages-1); top.level < len(g.levels); top.level++ {
		if g.at(top) > over {
			ways = append(ways, way{a: top, b: cell{level: -1}})
		}
		for w := range g.ways(top) {
			if g.sum(w) > over {
				ways = append(ways, w)
			}
		}
	}
	slices.SortStableFunc(ways, func(a, b way) int { return cmp.Compare(g.sum(b), g.sum(a)) })
	for _, w := range ways[:min(n, len(ways))] {
		out = append(out, g.join(w))
	}
	return out
}

func (g *Grid) join(w way) *Part {
	a, b := g.trace(w.a), g.trace(w.b)
	switch {
	case a == nil:
		return b
	case b == nil:
		return a
	}
	return Join(a, b, w.alongX)
}

// trace finds how a part comes to its worth; nil is nothing.
func (g *Grid) trace(c cell) *Part {
	v := g.at(c)
	if v == 0 {
		return nil
	}
	if c.level == 0 {
		if p := g.piece(c, v); p != nil {
			return p
		}
	} else if o := g.less(c, v); o != c {
		return g.trace(o)
	}
	for w := range g.ways(c) {
		if g.sum(w) == v {
			return g.join(w)
		}
	}
	panic("pattern: a worth that nothing gives")
}

// less is a part of fewer stages that is worth as much, or one that is less long, or the same.
func (g *Grid) less(c cell, worth int64) cell {
	below, short := c, c
	if g.levels[c.level].alongX {
		below.level, short.x = max(0, c.level-1), c.x-1
	} else {
		below.level, short.y = max(0, c.level-3), c.y-1
	}
	if g.at(below) == worth {
		return below
	}
	if short.x >= 0 && short.y >= 0 && g.at(short) == worth {
		return short
	}
	return c
}

// piece is one that is worth so much and fits.
func (g *Grid) piece(c cell, worth int64) *Part {
	for _, s := range g.sizes {
		fits := s.x <= c.x && s.y <= c.y && (g.stages == 0 || s.x == c.x && s.y == c.y)
		if !fits || g.worths[s.kind] != worth {
			continue
		}
		k := g.kinds[s.kind]
		if s.turned {
			k.W, k.H = k.H, k.W
		}
		return &Part{W: k.W, H: k.H, Kind: s.kind, Turned: s.turned}
	}
	return nil
}
