package routing

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// tabsAlong places tabs on the edges of a contour, each edge's evenly: as many as its
// length holds spacings, to the nearest one. Where that gives too few, further ones go
// where those of an edge stand farthest apart. Each has two bits of edge beside it, on which
// the bit comes down. ok is false where so many have no room.
func tabsAlong(c geom.Contour, tool *model.Tool, thick Length, t *model.Tabs) (tabs []model.Tab, ok bool) {
	bit := tool.Diameter
	es := edges(c)
	counts, room := make([]int, len(es)), make([]int, len(es))
	total := 0
	for i := range es {
		e := &es[i]
		if e.round && (e.arc.R < 2*float64(t.Width+bit) || e.arc.Turn < 0 && tool.Dialect.Chords) {
			continue // it bends too much
		}
		room[i] = int(e.long() / float64(t.Width+2*bit))
		counts[i] = min(room[i], int(e.long()/float64(t.Spacing)+0.5))
		total += counts[i]
	}
	for ; total < t.Least; total++ {
		best, apart := -1, 0.0
		for i := range es {
			if d := es[i].long() / float64(counts[i]+1); counts[i] < room[i] && d > apart+1 {
				best, apart = i, d
			}
		}
		if best < 0 {
			return nil, false
		}
		counts[best]++
	}
	for i := range es {
		for k := range counts[i] {
			tabs = append(tabs, model.Tab{
				At:    es[i].at(es[i].long() * (float64(k) + 0.5) / float64(counts[i])),
				Width: t.Width, Height: min(t.Height, thick/2),
			})
		}
	}
	return tabs, true
}

// stretch is a part of a way, from lo to hi; hi may be beyond the way's end.
type stretch struct{ lo, hi float64 }

// raised returns where the bit's centre is above tabs, in the order of the way.
func raised(w *way, tabs []model.Tab, radius Length) []stretch {
	out := make([]stretch, len(tabs))
	for i, t := range tabs {
		s, bend := w.nearest(t.At)
		half := float64(t.Width/2 + radius)
		if bend > 0 { // as wide straight across
			half = bend * math.Asin(min(1, half/bend))
		}
		out[i] = stretch{s - half, s + half}
	}
	return inOrder(out)
}

// inOrder turns a cyclic list so that it begins with the lowest one.
func inOrder(all []stretch) []stretch {
	first := 0
	for i := range all {
		if all[i].lo < all[first].lo {
			first = i
		}
	}
	return append(append([]stretch{}, all[first:]...), all[:first]...)
}
