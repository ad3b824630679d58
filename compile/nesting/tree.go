package nesting

// tree is one sheet and how it is cut: its root is the sheet, each node is cut from edge to
// edge into its children, along x if it is turned and along y otherwise, and the children of
// these the other way. A leaf is a piece or an offcut. No node has two offcuts among its
// children, for they could lie side by side and be one; nor a single child. All sizes have a
// kerf added.
type tree struct {
	blank
	nodes []node
	spare int32 // the first node not in use, or none
	rests []rest
}

type node struct {
	w, h                Length
	parent, child, next int32 // the first child, and the next of the parent's
	piece               int32 // of a leaf; offcut, or cut
	rest                int32 // of an offcut, where it stands among the tree's
	turned              bool  // the piece lies turned
	alongX              bool  // the children lie along x
}

// rest is an offcut as a search looks at it.
type rest struct {
	w, h, square float64 // square: of the area
	node         int32
}

const (
	none   = -1
	offcut = -1 // a leaf without a piece
	cut    = -2 // a node with children
	unused = -3
	root   = 0
)

// reset makes an empty sheet of a tree.
func (t *tree) reset(s *search, kind int) {
	*t = tree{nodes: t.nodes[:0], rests: t.rests[:0], spare: none, blank: blank{kind: kind, held: 1}}
	t.nodes = append(t.nodes, node{parent: none, child: none, next: none, w: s.kinds[kind].w, h: s.kinds[kind].h})
	t.leave(root)
}

// copyTo makes a tree like this one of another, whose memory is used again.
func (t *tree) copyTo(c *tree) (work int) {
	nodes, rests := append(c.nodes[:0], t.nodes...), append(c.rests[:0], t.rests...)
	*c = *t
	c.nodes, c.rests, c.held = nodes, rests, 1
	return len(nodes) / 8
}

func (t *tree) new(n node) int32 {
	if i := t.spare; i != none {
		t.spare = t.nodes[i].next
		t.nodes[i] = n
		return i
	}
	t.nodes = append(t.nodes, n)
	return int32(len(t.nodes) - 1)
}

func (t *tree) drop(i int32) {
	t.nodes[i] = node{next: t.spare, piece: unused}
	t.spare = i
}

// leave makes an offcut of a node that has no children.
func (t *tree) leave(i int32) {
	n := &t.nodes[i]
	n.piece, n.child, n.turned, n.rest = offcut, none, false, int32(len(t.rests))
	w, h := float64(n.w), float64(n.h)
	t.rests = append(t.rests, rest{w, h, w * h * (w * h), i})
}

// take makes an offcut none.
func (t *tree) take(i int32) {
	at, last := t.nodes[i].rest, len(t.rests)-1
	t.rests[at] = t.rests[last]
	t.nodes[t.rests[at].node].rest = at
	t.rests = t.rests[:last]
}

// add puts a new child before the others of a node.
func (t *tree) add(parent int32, n node) int32 {
	n.parent, n.next, n.child = parent, t.nodes[parent].child, none
	i := t.new(n)
	t.nodes[parent].child = i
	return i
}

// unlink takes a child out of its parent's list.
func (t *tree) unlink(i int32) {
	at := &t.nodes[t.nodes[i].parent].child
	for *at != i {
		at = &t.nodes[*at].next
	}
	*at = t.nodes[i].next
}

// place puts a piece of a size that fits into an offcut. alongX tells whether the first cut
// parts a strip as wide as the piece from it.
func (t *tree) place(at, piece int32, w, h Length, turned, alongX bool) {
	n := &t.nodes[at]
	t.used += float64(float64(w) * float64(h))
	t.count++
	t.take(at)
	W, H := n.w, n.h
	if w == W && h == H {
		n.piece, n.turned = piece, turned
		return
	}
	alongX = firstCut(W, H, w, h, alongX)
	over, strip := node{w: W, h: H}, node{w: W, h: H, piece: cut, alongX: !alongX}
	if alongX {
		over.w, strip.w = W-w, w
	} else {
		over.h, strip.h = H-h, h
	}
	within := at // the node that the strip and what is over lie in
	if p := n.parent; p != none && t.nodes[p].alongX == alongX {
		within = p
		t.unlink(at)
		t.drop(at)
	} else {
		n.piece, n.alongX = cut, alongX
	}
	t.leave(t.add(within, over))
	leaf := node{w: w, h: h, piece: piece, turned: turned}
	if strip.w == w && strip.h == h {
		t.add(within, leaf)
		return
	}
	s := t.add(within, strip)
	over = node{w: strip.w, h: strip.h}
	if alongX {
		over.h -= h
	} else {
		over.w -= w
	}
	t.leave(t.add(s, over))
	t.add(s, leaf)
}

// firstCut tells how a piece w x h is parted first from an offcut W x H that is larger.
func firstCut(W, H, w, h Length, alongX bool) bool {
	return h == H || alongX && w != W
}

// stages is how often cuts have changed their direction, the first counted, when a piece is
// placed so.
func (t *tree) stages(at int32, w, h Length, alongX bool) int {
	n := &t.nodes[at]
	deep := 0
	for p := n.parent; p != none; p = t.nodes[p].parent {
		deep++
	}
	if w == n.w && h == n.h {
		return deep
	}
	alongX = firstCut(n.w, n.h, w, h, alongX)
	if n.parent == none || t.nodes[n.parent].alongX != alongX {
		deep++
	}
	if w != n.w && h != n.h {
		deep++
	}
	return deep
}

// clear makes an offcut of a node and all that is cut from it, one with the offcuts beside it,
// and appends the pieces that this frees.
func (t *tree) clear(i int32, out []int32) []int32 {
	out = t.empty(i, out)
	for {
		p := t.nodes[i].parent
		if p == none {
			break
		}
		over := node{w: t.nodes[p].w, h: t.nodes[p].h}
		kept := t.unite(p, i, &over)
		if kept {
			t.leave(t.add(p, over))
			return out
		}
		t.nodes[p].child = none
		i = p
	}
	t.leave(i)
	return out
}

// unite drops a child and those that are offcuts, and measures what they leave together. It
// reports whether other children are left.
func (t *tree) unite(p, i int32, over *node) (kept bool) {
	alongX := t.nodes[p].alongX
	var sum Length
	at := &t.nodes[p].child
	for *at != none {
		c := *at
		n := &t.nodes[c]
		if c != i && n.piece != offcut {
			kept = true
			at = &n.next
			continue
		}
		if alongX {
			sum += n.w
		} else {
			sum += n.h
		}
		*at = n.next
		if c != i {
			t.take(c)
		}
		t.drop(c)
	}
	if alongX {
		over.w = sum
	} else {
		over.h = sum
	}
	return kept
}

// empty drops all below a node.
func (t *tree) empty(i int32, out []int32) []int32 {
	n := t.nodes[i]
	switch n.piece {
	case offcut:
		t.take(i)
		return out
	case cut:
	default:
		t.used -= float64(float64(n.w) * float64(n.h))
		t.count--
		return append(out, n.piece)
	}
	for c := n.child; c != none; {
		next := t.nodes[c].next
		out = t.empty(c, out)
		t.drop(c)
		c = next
	}
	t.nodes[i].child = none
	return out
}
