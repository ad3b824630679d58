package nesting

import (
	"cmp"
	"math"
	"slices"

	"barwright/compile/geom"
)

// tell tells what a tree cuts: pieces by their index in the job, and cuts in the order of the
// saw, all of one direction before what they part is cut further. Offcuts come last, away from
// the lower left corner.
func (t *tree) tell(s *search, kerf Length, pieces []int) Used {
	t = t.squeezed(s)
	u := Used{Sheet: t.kind}
	t.saw(root, geom.Point{}, kerf, pieces, &u)
	return u
}

func (t *tree) saw(i int32, at geom.Point, kerf Length, pieces []int, u *Used) {
	n := t.nodes[i]
	box := geom.R(at.X, at.Y, at.X+n.w-kerf, at.Y+n.h-kerf)
	switch n.piece {
	case cut:
	case offcut:
		if area(box) > area(u.Offcut) {
			u.Offcut = box
		}
		return
	default:
		u.Placed = append(u.Placed, Placed{Piece: pieces[n.piece], At: at, Turned: n.turned})
		return
	}
	order := t.children(i)
	corners := make([]geom.Point, len(order))
	for k, c := range order {
		corners[k] = at
		if n.alongX {
			at.X += t.nodes[c].w
		} else {
			at.Y += t.nodes[c].h
		}
		if k == len(order)-1 {
			break
		}
		if n.alongX {
			u.Cuts = append(u.Cuts, Cut{Of: box, Along: geom.V, At: at.X - kerf})
			box.X.Lo = at.X
		} else {
			u.Cuts = append(u.Cuts, Cut{Of: box, Along: geom.U, At: at.Y - kerf})
			box.Y.Lo = at.Y
		}
	}
	for k, c := range order {
		t.saw(c, corners[k], kerf, pieces, u)
	}
}

// children are those of a node from the widest to the least, an offcut last.
func (t *tree) children(i int32) (out []int32) {
	for c := t.nodes[i].child; c != none; c = t.nodes[c].next {
		out = append(out, c)
	}
	slices.SortFunc(out, func(a, b int32) int {
		m, n := &t.nodes[a], &t.nodes[b]
		if m.piece == offcut {
			return 1
		}
		if n.piece == offcut {
			return -1
		}
		return cmp.Or(cmp.Compare(n.w, m.w), cmp.Compare(n.h, m.h), cmp.Compare(t.first(a), t.first(b)))
	})
	return out
}

// first is the least index of a piece that is cut from a node.
func (t *tree) first(i int32) int32 {
	n := t.nodes[i]
	if n.piece >= 0 {
		return n.piece
	}
	least := int32(math.MaxInt32)
	for c := n.child; n.piece == cut && c != none; c = t.nodes[c].next {
		least = min(least, t.first(c))
	}
	return least
}

// area is that of a rectangle, and none of one that a kerf has taken whole.
func area(r geom.Rect) float64 {
	return float64(max(0, r.X.Size())) * float64(max(0, r.Y.Size()))
}
