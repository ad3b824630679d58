package replay

import (
	"math"
	"slices"
)

// layer is the wood that must stay where the bit's end is within a range of depths:
// a bit takes all that is above its end.
type layer struct {
	to     float64 // depth
	piece  ring
	rooms  []room // that are cut as deep
	tabs   []ring // that stand so high
	border []rim
}

// room is a ring inside which nothing stays.
type room struct {
	ring
	work *work
}

// rim is what is left of one ring's border, in its order.
type rim struct {
	box   box
	walls []wall
}

// wall is a piece of the border of what must stay.
type wall struct {
	edge
	slack float64 // how far the bit may come in
	work  *work   // whose it is; nil at the edges of the wood, and of tabs
}

// thinnest is how wide wood is at least that is asked to stay, in mm.
const thinnest = 4 * sag

// layers returns the layers of a task from the top down.
func (t *task) layers() []*layer {
	ends := []float64{math.Inf(1)}
	for _, w := range t.works {
		if !w.through {
			ends = append(ends, w.depth+depthSlack)
		}
		for _, tab := range w.tabs {
			ends = append(ends, tab.top+tabSlack)
		}
	}
	slices.Sort(ends)
	ends = slices.Compact(ends)
	out := make([]*layer, len(ends))
	from := 0.0
	for i, to := range ends {
		out[i] = t.layer(from, to)
		from = to
	}
	return out
}

func (t *task) layer(from, to float64) *layer {
	l := &layer{to: to, piece: t.piece}
	var outline *work
	for _, w := range t.works {
		switch {
		case w.outline:
			outline = w
		case w.through || w.depth+depthSlack >= to:
			for _, r := range w.rings {
				l.rooms = append(l.rooms, room{r, w})
			}
		}
	}
	l.border = append(l.border, l.rim(-1, l.piece, outline))
	for i, r := range l.rooms {
		l.border = append(l.border, l.rim(i, r.ring, r.work))
	}
	for _, w := range t.works {
		for _, tab := range w.tabs {
			if tab.top+tabSlack <= from {
				l.tabs = append(l.tabs, tab.ring())
				l.border = append(l.border, tab.rim())
			}
		}
	}
	return l
}

// rim returns what of a ring is a border of what must stay: the pieces that have it on
// one side. The ring is that of a room, or for -1 the piece's.
func (l *layer) rim(at int, r ring, w *work) rim {
	others := l.near(at, r.box)
	var walls []wall
	for i, e := range r.edges {
		if len(others) == 0 && i > 0 {
			if len(walls) > 0 {
				walls = append(walls, wall{e, sideSlack, w})
			}
			continue
		}
		for _, s := range e.split(others) {
			if l.beside(s) {
				walls = append(walls, wall{edge{s, e.round}, sideSlack, w})
			}
		}
	}
	return rim{r.box, walls}
}

// near returns the edges that meet a box, of all rings but one.
func (l *layer) near(but int, b box) []edge {
	var out []edge
	add := func(i int, r ring) {
		if i == but || b.apart(r.box) {
			return
		}
		for _, e := range r.edges {
			if !b.diagonal().farther(e.stretch, shortest) {
				out = append(out, e)
			}
		}
	}
	add(-1, l.piece)
	for i, r := range l.rooms {
		add(i, r.ring)
	}
	return out
}

// beside reports whether wood that must stay is on just one side of a stretch.
func (l *layer) beside(s stretch) bool {
	return l.uncut(s.shifted(thinnest/2).along(0.5)) != l.uncut(s.shifted(-thinnest/2).along(0.5))
}

// holds reports whether a point lies in the wood that must stay.
func (l *layer) holds(p spot) bool {
	return l.uncut(p) || slices.ContainsFunc(l.tabs, func(r ring) bool { return r.inside(p) })
}

// uncut reports whether a point lies in the piece, and in no room.
func (l *layer) uncut(p spot) bool {
	return l.piece.inside(p) && !slices.ContainsFunc(l.rooms, func(r room) bool { return r.inside(p) })
}
