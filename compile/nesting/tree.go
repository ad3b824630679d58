package nesting

// tree is one sheet and how it is cut: its root is the sheet, each node is cut from edge to
// edge into its children, along x if it is turned and along y otherwise, and the children of
// these the other way. A leaf is a piece or an offcut. No node has two offcuts among its
// children, for they could lie side by side and be one; nor a single child.
type tree struct {
	nodes []node
	spare int32 // the first node not in use, or none
	sheet int   // which of the job's
	used  int64 // area of the pieces
	count int   // of the pieces
}

type node struct {
	w, h                int32
	parent, child, next int32 // the first child, and the next of the parent's
	piece               int32 // of a leaf; offcut, or cut
	turned              bool  // the piece lies turned
	alongX              bool  // the children lie along x
}

const (
	none   = -1
	offcut = -1 // a leaf without a piece
	cut    = -2 // a node with children
	root   = 0
)

func newTree(sheet int, w, h int32) *tree {
	return &tree{nodes: []node{{w: w, h: h, parent: none, child: none, next: none, piece: offcut}}, spare: none, sheet: sheet}
}

func (t *tree) clone() *tree {
	c := *t
	c.nodes = make([]node, len(t.nodes), len(t.nodes)+8)
	copy(c.nodes, t.nodes)
	return &c
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
	t.nodes[i] = node{next: t.spare, parent: -2, piece: -3}
	t.spare = i
}

// add puts a new child before the others of a node.
func (t *tree) add(parent int32, n node) int32 {
	n.parent, n.next = parent, t.nodes[parent].child
	i := t.new(n)
	t.nodes[parent].child = i
	return i
}

// unlink takes a child out of its parent's list.
func (t *tree) unlink(i int32) {
	p := t.nodes[i].parent
	at := &t.nodes[p].child
	for *at != i {
		at = &t.nodes[*at].next
	}
	*at = t.nodes[i].next
}

// place puts a piece of a size that fits into an offcut. alongX tells whether the first cut
// parts a strip as wide as the piece from it.
func (t *tree) place(at int32, piece int32, w, h int32, turned, alongX bool) {
	n := &t.nodes[at]
	t.used += int64(w) * int64(h)
	t.count++
	W, H := n.w, n.h
	leaf := node{w: w, h: h, child: none, piece: piece, turned: turned}
	if w == W && h == H {
		n.piece, n.turned = piece, turned
		return
	}
	if w == W {
		alongX = false
	} else if h == H {
		alongX = true
	}
	rest := node{w: W, h: H, child: none, piece: offcut}
	strip := node{w: W, h: H, child: none, piece: cut, alongX: !alongX}
	if alongX {
		rest.w, strip.w = W-w, w
	} else {
		rest.h, strip.h = H-h, h
	}
	within := at // the node that the strip and the rest lie in
	if p := n.parent; p != none && t.nodes[p].alongX == alongX {
		within = p
		t.unlink(at)
		t.drop(at)
	} else {
		n.piece, n.alongX = cut, alongX
	}
	t.add(within, rest)
	if strip.w == w && strip.h == h {
		t.add(within, leaf)
		return
	}
	s := t.add(within, strip)
	over := node{w: strip.w, h: strip.h, child: none, piece: offcut}
	if alongX {
		over.h -= h
	} else {
		over.w -= w
	}
	t.add(s, over)
	t.add(s, leaf)
}

// clear makes an offcut of a node and all that is cut from it, and tells f which pieces
// that frees.
func (t *tree) clear(i int32, f func(piece int32)) {
	t.empty(i, f)
	n := &t.nodes[i]
	n.piece, n.child, n.turned = offcut, none, false
	for {
		p := t.nodes[i].parent
		if p == none {
			return
		}
		// One offcut among the children, the first.
		var sum int32
		children := 0
		at := &t.nodes[p].child
		for *at != none {
			c := *at
			if t.nodes[c].piece == offcut {
				if t.nodes[p].alongX {
					sum += t.nodes[c].w
				} else {
					sum += t.nodes[c].h
				}
				*at = t.nodes[c].next
				t.drop(c)
				continue
			}
			children++
			at = &t.nodes[c].next
		}
		P := &t.nodes[p]
		if children == 0 {
			P.piece, P.child = offcut, none
			i = p
			continue
		}
		rest := node{w: P.w, h: P.h, child: none, piece: offcut}
		if P.alongX {
			rest.w = sum
		} else {
			rest.h = sum
		}
		t.add(p, rest)
		return
	}
}

func (t *tree) empty(i int32, f func(piece int32)) {
	n := t.nodes[i]
	if n.piece >= 0 {
		t.used -= int64(n.w) * int64(n.h)
		t.count--
		f(n.piece)
		return
	}
	for c := n.child; n.piece == cut && c != none; {
		next := t.nodes[c].next
		t.empty(c, f)
		t.drop(c)
		c = next
	}
}
