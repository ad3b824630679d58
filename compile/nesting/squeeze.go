package nesting

// squeezed is the tree cut anew for the same pieces: no strip is wider than the widest of what is
// cut from it, and what that frees goes to the offcut beside the strip. So cuts are fewer, most of
// their distances are sizes of pieces, and offcuts lie together. Where the largest offcut would
// be smaller by it, the tree stays as it is.
func (t *tree) squeezed(s *search) *tree {
	best, most := t, t.gist().largest
	ways := []bool{t.nodes[root].alongX}
	if s.stages == 0 {
		ways = append(ways, !t.nodes[root].alongX)
	}
	for _, alongX := range ways {
		q := squeeze{from: t, need: make([]Size, len(t.nodes)), to: &tree{}}
		q.measure(root)
		q.to.reset(s, t.kind)
		q.to.take(root)
		q.to.used, q.to.count = t.used, t.count
		q.lay(root, root, alongX)
		if g := q.to.gist().largest; g > most || best == t && g == most {
			best, most = q.to, g
		}
	}
	return best
}

// squeeze cuts one tree after another.
type squeeze struct {
	from, to *tree
	need     []Size // of nodes of the one: what the pieces below them take
}

// measure finds out what a node and those below it need.
func (q *squeeze) measure(i int32) {
	n := &q.from.nodes[i]
	if n.piece >= 0 {
		q.need[i] = Size{n.w, n.h}
	}
	for _, c := range q.kids(i) {
		q.measure(c)
		if size := q.need[c]; n.alongX {
			q.need[i] = Size{q.need[i].X + size.X, max(q.need[i].Y, size.Y)}
		} else {
			q.need[i] = Size{max(q.need[i].X, size.X), q.need[i].Y + size.Y}
		}
	}
}

// kids are the children of a node that are no offcuts.
func (q *squeeze) kids(i int32) (out []int32) {
	if q.from.nodes[i].piece != cut {
		return nil
	}
	for c := q.from.nodes[i].child; c != none; c = q.from.nodes[c].next {
		if q.from.nodes[c].piece != offcut {
			out = append(out, c)
		}
	}
	return out
}

// lay cuts what a node of the one tree holds from a node of the other, which is cut in a direction
// if it is cut at all.
func (q *squeeze) lay(at, i int32, alongX bool) {
	n, to := q.from.nodes[i], &q.to.nodes[at]
	if n.piece >= 0 && n.w == to.w && n.h == to.h {
		to.piece, to.turned = n.piece, n.turned
		return
	}
	size := Size{to.w, to.h}
	parts := q.parts(nil, i, alongX, across(size, alongX))
	over := along(size, alongX)
	for _, p := range parts {
		over -= along(q.need[p], alongX)
	}
	if len(parts) == 1 && over == 0 {
		q.lay(at, parts[0], !alongX)
		return
	}
	to.piece, to.alongX = cut, alongX
	strip := func(wide Length) int32 {
		if alongX {
			return q.to.add(at, node{w: wide, h: size.Y})
		}
		return q.to.add(at, node{w: size.X, h: wide})
	}
	if over > 0 {
		q.to.leave(strip(over))
	}
	for _, p := range parts {
		q.lay(strip(along(q.need[p], alongX)), p, !alongX)
	}
}

// parts are the nodes that what one holds is cut into in a direction, where they reach as far
// across it: strips that would be filled by one node are left out.
func (q *squeeze) parts(out []int32, i int32, alongX bool, far Length) []int32 {
	kids := q.kids(i)
	if q.from.nodes[i].alongX == alongX && len(kids) > 0 || len(kids) == 1 && across(q.need[kids[0]], alongX) == far {
		for _, c := range kids {
			out = q.parts(out, c, alongX, far)
		}
		return out
	}
	return append(out, i)
}

// along is the extent in a direction, and across the other.
func along(s Size, alongX bool) Length {
	if alongX {
		return s.X
	}
	return s.Y
}

func across(s Size, alongX bool) Length { return along(s, !alongX) }
