package nesting

// gist tells of a tree's offcuts.
func (t *tree) gist() (g gist) {
	for i := range t.rests {
		r := &t.rests[i]
		g.wide, g.high = max(g.wide, r.w), max(g.high, r.h)
		g.spread += r.square
		g.largest = max(g.largest, r.square)
	}
	return g
}

// best looks for the offcut of which a piece leaves the largest rectangles.
func (t *tree) best(s *search, i int, p *shape, upright, turned bool) {
	s.work += len(t.rests)
	w, h := float64(p.w), float64(p.h)
	for k := range t.rests {
		r := &t.rests[k]
		if upright && w <= r.w && h <= r.h {
			t.weigh(s, i, r, p.w, p.h, false)
		}
		if turned && h <= r.w && w <= r.h {
			t.weigh(s, i, r, p.h, p.w, true)
		}
	}
}

// weigh compares both ways to cut a piece from an offcut with the best so far.
func (t *tree) weigh(s *search, i int, r *rest, w, h Length, turned bool) {
	if s.passes() {
		return
	}
	fw, fh := float64(w), float64(h)
	rest, strip := (r.w-fw)*r.h, fw*(r.h-fh)
	x := r.square - float64(rest*rest) - float64(strip*strip)
	rest, strip = (r.h-fh)*r.w, fh*(r.w-fw)
	y := r.square - float64(rest*rest) - float64(strip*strip)
	if x < s.found.loss && (s.stages == 0 || t.stages(r.node, w, h, true) <= s.stages) {
		s.found = spot{sheet: i, node: r.node, turned: turned, alongX: true, loss: x}
	}
	if y < s.found.loss && (s.stages == 0 || t.stages(r.node, w, h, false) <= s.stages) {
		s.found = spot{sheet: i, node: r.node, turned: turned, loss: y}
	}
}

func (t *tree) put(s *search, piece int32, at spot) {
	w, h := s.shapes[piece].w, s.shapes[piece].h
	if at.turned {
		w, h = h, w
	}
	t.place(at.node, piece, w, h, at.turned, at.alongX)
}

// ruin takes pieces out, with what lies in one part of the tree with them.
func (t *tree) ruin(s *search, take int, out []int32) []int32 {
	for to := len(out) + take; len(out) < to && t.count > 0; {
		i := int32(s.below(len(t.nodes)))
		if n := &t.nodes[i]; n.piece < 0 && (n.piece != cut || i == root && s.below(3) > 0) {
			continue
		}
		out = t.clear(i, out)
	}
	return out
}

func (t *tree) pieces(out []int32) []int32 { return t.below(root, out) }

// below appends the pieces that are cut from a node.
func (t *tree) below(i int32, out []int32) []int32 {
	if n := &t.nodes[i]; n.piece >= 0 {
		return append(out, n.piece)
	}
	for c := t.nodes[i].child; c != none; c = t.nodes[c].next {
		out = t.below(c, out)
	}
	return out
}
