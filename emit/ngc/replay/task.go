package replay

import (
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// task is what a text must cut, by one bit.
type task struct {
	tool  model.Tool
	stock box     // holds all works
	wood  ring    // before anything is cut
	piece ring    // what stays of it, but for the works inside
	under float64 // depth of the wood's lower face
	works []*work
}

// work is one shape that is cut. Depths are in mm below the top.
type work struct {
	name     string
	rings    []ring    // what is cut: the shape, and the bores of its reliefs; of an outline what stays
	outline  bool      // cut round the outside
	through  bool      // nothing of it stays, however deep
	freed    bool      // cut round, and not cleared
	straight bool      // bored by a bit of its own size
	depth    float64   // how deep the bit must go
	levels   []float64 // where it moves level
	tabs     []tab
}

// bitWide is how far a hole's diameter may be from the bit's that bores it straight down, in mm.
const bitWide = 0.1

func taskOf(p *model.Program) *task {
	stock := ringOf(geom.RectContour(p.Stock))
	w := &work{name: "the recess", rings: []ring{ringOf(p.Shape)}, depth: p.Depth.MM(), levels: depths(p.Levels)}
	for _, c := range p.Reliefs {
		w.rings = append(w.rings, bored(mm(c), p.Tool.Diameter.MM()/2))
	}
	return &task{tool: p.Tool, stock: stock.box, wood: stock, piece: stock, under: math.Inf(1), works: []*work{w}}
}

func taskOfRouting(r *model.Routing) *task {
	stock, piece := ringOf(geom.RectContour(r.Stock)), ringOf(r.Piece)
	t := &task{tool: r.Tool, stock: stock.box, wood: piece, piece: piece, under: r.Thick.MM()}
	for _, m := range r.Works {
		w := &work{
			name:    m.Kind + " " + m.Name,
			rings:   []ring{ringOf(m.Shape)},
			outline: m.Kind == "outline",
			through: m.Depth == 0,
			freed:   m.Freed,
			depth:   m.Depth.MM(),
			levels:  depths(m.Levels),
		}
		if w.through {
			w.depth = (r.Thick + r.Under).MM()
		}
		if c, radius, ok := m.Shape.Circle(); ok && m.Kind == "pin" && math.Abs((2*radius-r.Tool.Diameter).MM()) <= bitWide {
			w.straight, w.rings[0] = true, bored(mm(c), r.Tool.Diameter.MM()/2)
		}
		if w.outline {
			t.wood, t.piece = stock, w.rings[0]
		}
		for _, m := range m.Tabs {
			w.tabs = append(w.tabs, newTab(w, m, t))
		}
		t.works = append(t.works, w)
	}
	return t
}

func depths(levels []model.Length) []float64 {
	out := make([]float64, len(levels))
	for i, l := range levels {
		out[i] = l.MM()
	}
	return out
}

// deepest is how far below the top the bit may go.
func (t *task) deepest() float64 {
	d := 0.0
	for _, w := range t.works {
		d = max(d, w.depth)
	}
	return d
}

// waste tells on which side of a work's ring the wood goes that does not stay: 1 on
// its left, which is inside, or -1.
func (w *work) waste() float64 {
	if w.outline {
		return -1
	}
	return 1
}

// reach is the box in which the bit's centre may be, below the top, for a work.
func (t *task) reach(w *work) box { return w.rings[0].box.grown(t.tool.Diameter.MM() + aroundBit) }

// tab is wood that is left in the cut of what is freed.
type tab struct {
	ring   ring
	sides  []edge    // of the ring, beside the one on the work's
	middle []stretch // through it, along the middle of the cut
	top    float64   // depth of its upper face
}

// newTab lays a tab across the cut: the bit's diameter wide, and what the last pass
// takes.
func newTab(w *work, m model.Tab, t *task) tab {
	shape, half := w.rings[0], m.Width.MM()/2
	at := shape.place(mm(m.At))
	out := tab{top: t.under - m.Height.MM()}
	bit, across := t.tool.Diameter.MM(), t.tool.Diameter.MM()+t.tool.Finish.MM()
	var inner, outer []stretch
	for _, s := range shape.between(at-half, at+half) {
		inner = append(inner, s)
		outer = append(outer, s.shifted(w.waste()*across))
		out.middle = append(out.middle, s.shifted(w.waste()*bit/2))
	}
	from := inner[0].a
	out.sides = []edge{{stretch: stretch{from, outer[0].a}}}
	for i, s := range outer {
		if i > 0 {
			out.sides = append(out.sides, edge{stretch: stretch{outer[i-1].b, s.a}})
		}
		out.sides = append(out.sides, edge{stretch: s})
	}
	last := len(inner) - 1
	out.sides = append(out.sides, edge{stretch: stretch{outer[last].b, inner[last].b}})
	edges := slices.Clone(out.sides)
	for i := last; i >= 0; i-- {
		edges = append(edges, edge{stretch: stretch{inner[i].b, inner[i].a}})
	}
	out.ring = ring{edges, boxOf(edges)}
	return out
}
