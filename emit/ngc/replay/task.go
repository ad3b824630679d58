package replay

import (
	"fmt"
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// task is what a text must cut, by one bit.
type task struct {
	tool  model.Tool
	stock box     // holds all works
	wood  ring    // before anything is cut
	piece ring    // what stays of it, but for the works inside
	under float64 // depth of the wood's lower face
	turns bool    // arcs may be clockwise
	works []*work
	given string // all that it follows from but the stock and names of programs
}

// work is one shape that is cut. Depths are in mm below the top.
type work struct {
	name     string
	rings    []ring    // what is cut: the shape, and the bores of its reliefs; of an outline what stays
	outline  bool      // cut round the outside
	through  bool      // nothing of it stays, however deep
	freed    bool      // cut round, and not cleared
	straight bool      // round, and as wide as the bit: it may be bored
	depth    float64   // how deep the bit must go
	levels   []float64 // where it moves level
	tabs     []tab
}

// taskOf is a program's, cut out of so much of its stock.
func taskOf(p *model.Program, of geom.Rect) *task {
	wood := ringOf(geom.RectContour(of))
	w := &work{name: "the recess", rings: []ring{ringOf(p.Shape)}, depth: p.Depth.MM(), levels: depths(p.Levels)}
	for _, c := range p.Reliefs {
		w.rings = append(w.rings, bored(mm(c), p.Tool.Diameter.MM()/2))
	}
	return &task{
		tool: p.Tool, stock: ringOf(geom.RectContour(p.Stock)).box, wood: wood, piece: wood, under: math.Inf(1), works: []*work{w},
		given: given(p.Tool, of, p.Shape, p.Reliefs, p.Depth, p.Levels),
	}
}

func taskOfRouting(r *model.Routing) *task {
	stock, piece := ringOf(geom.RectContour(r.Stock)), ringOf(r.Piece)
	t := &task{
		tool: r.Tool, stock: stock.box, wood: piece, piece: piece, under: r.Thick.MM(), turns: true,
		given: given(r.Tool, r.Stock, r.Piece, r.Thick, r.Under, r.Works),
	}
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
		if _, radius, ok := m.Shape.Circle(); ok && !m.Freed {
			w.straight = math.Abs((2*radius - r.Tool.Diameter).MM()) <= sideSlack
		}
		if w.outline {
			t.wood, t.piece = stock, w.rings[0]
		}
		if len(w.rings[0].edges) > 0 {
			for _, m := range m.Tabs {
				w.tabs = append(w.tabs, newTab(w, m, t))
			}
		}
		t.works = append(t.works, w)
	}
	return t
}

// woodNear is the wood of a program as far as a bit may come that is to cut its shape and to end at X0 Y0: a
// cutter's reach, and once more as far.
func woodNear(p *model.Program) geom.Rect {
	far := 2 * (p.Tool.Diameter + aroundBit*length.Millimetre)
	return p.Stock.Intersect(p.Shape.Bounds().Union(geom.Rect{}).Grow(far))
}

// given is all that a task follows from, in Go's syntax, which is exact.
func given(what ...any) string { return fmt.Sprintf("%#v", what) }

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

// reach is the box in which the bit's centre may be, below the top, for a work.
func (t *task) reach(w *work) box { return w.rings[0].box.grown(t.tool.Diameter.MM() + aroundBit) }

// waste tells on which side of a work's ring the wood goes that does not stay: 1 on
// its left, which is inside, or -1.
func (w *work) waste() float64 {
	if w.outline {
		return -1
	}
	return 1
}
