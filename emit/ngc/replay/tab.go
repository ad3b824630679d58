package replay

import "barwright/compile/model"

// tab is wood that is left in the cut of what is freed: a strip with straight sides
// that runs from the work's ring across the cut.
type tab struct {
	out    stretch // from its middle on the ring, 1 mm into the waste
	half   float64 // of its width
	lo, hi float64 // where it ends, along out
	top    float64 // depth of its upper face
}

// newTab lays a tab across the cut: the bit's diameter wide, and what the last pass
// takes. Where the ring is bent the tab begins where the ring is farthest back.
func newTab(w *work, m model.Tab, t *task) tab {
	place := w.rings[0].place(mm(m.At))
	half := max(thinnest, m.Width.MM()/2)
	across := w.rings[0].between(place-half, place+half)
	first, last := across[0].a, across[len(across)-1].b
	at := w.rings[0].between(place, place+half)[0].a
	beside := stretch{first, last}
	off := beside.shifted(w.waste())
	out := tab{
		out:  stretch{at, spot{at.x + off.a.x - first.x, at.y + off.a.y - first.y}},
		half: half, top: t.under - m.Height.MM(),
	}
	bent := out.out.share(first)
	out.lo, out.hi = min(0, bent), max(0, bent)+t.tool.Diameter.MM()+t.tool.Finish.MM()
	return out
}

// ring returns the border of a tab. Its first three edges are those that do not lie on the
// work's ring.
func (t tab) ring() ring {
	left, right := t.out.shifted(t.half), t.out.shifted(-t.half)
	q := [4]spot{right.along(t.lo), right.along(t.hi), left.along(t.hi), left.along(t.lo)}
	edges := make([]edge, len(q))
	for i := range q {
		edges[i].stretch = stretch{q[i], q[(i+1)%len(q)]}
	}
	return ring{edges, boxOf(edges)}
}

func (t tab) rim() rim {
	r := t.ring()
	walls := make([]wall, 3)
	for i, e := range r.edges[:3] {
		walls[i] = wall{edge: e, slack: tabSlack}
	}
	return rim{r.box, walls}
}

// beside returns the parts of a line that lie beside all tabs, each larger all round by
// grown, as shares of its length.
func beside(line stretch, tabs []tab, grown float64) []interval {
	var on []interval
	for _, t := range tabs {
		if in := t.on(line, grown); in.lo <= in.hi {
			on = append(on, in)
		}
	}
	var out []interval
	at := 0.0
	for _, in := range append(joined(on), interval{1, 1}) {
		if in.lo > at {
			out = append(out, interval{at, in.lo})
		}
		at = in.hi
	}
	return out
}

// on returns the part of a line that lies on a tab, larger all round by grown, as shares
// of its length; it is empty (lo above hi) where none does.
func (t tab) on(line stretch, grown float64) interval {
	in := interval{0, 1}
	for _, slab := range [2]struct{ from, to, lo, hi float64 }{
		{t.out.side(line.a), t.out.side(line.b), -t.half - grown, t.half + grown},
		{t.out.share(line.a), t.out.share(line.b), t.lo - grown, t.hi + grown},
	} {
		if slab.from == slab.to {
			if slab.from < slab.lo || slab.from > slab.hi {
				return interval{1, 0}
			}
			continue
		}
		a, b := (slab.lo-slab.from)/(slab.to-slab.from), (slab.hi-slab.from)/(slab.to-slab.from)
		in = interval{max(in.lo, min(a, b)), min(in.hi, max(a, b))}
	}
	return in
}

// raised returns the line between the two places in the middle of the cut where the bit is
// as far from a tab as its radius.
func (t tab) raised(seams []seam, radius float64) (line stretch, ok bool) {
	found := [2]bool{}
	for _, s := range seams {
		from, to := t.out.side(s.middle.a), t.out.side(s.middle.b)
		for i, at := range [2]float64{t.half + radius, -t.half - radius} {
			if (from <= at) == (to <= at) {
				continue
			}
			p := s.middle.along((at - from) / (to - from))
			if n := t.out.share(p); n < t.lo-radius || n > t.hi+radius {
				continue
			}
			if found[i] = true; i == 0 {
				line.a = p
			} else {
				line.b = p
			}
		}
	}
	return line, found[0] && found[1]
}
