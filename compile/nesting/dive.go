package nesting

import (
	"slices"

	"barwright/compile/nesting/pattern"
	"barwright/compile/simplex"
)

// dive buys what a mix takes whole, then its largest part, and asks anew for what is left, until
// that is nothing or work is done; then pieces that are left are laid as they come. The largest
// part is that which looks so by chance, save the first time.
type dive struct {
	*mix
	left  []int
	x     *solution
	first bool
}

func (m *mix) dive(first bool) *solution {
	d := dive{m, m.demand(), &solution{bought: make([]int, len(m.search.kinds))}, first}
	for p := m.root; d.buy(p) && m.work < m.until; {
		p = m.program(slices.Clone(d.left))
		m.solve(p, m.until)
	}
	for k, n := range d.left {
		d.x.out = append(d.x.out, m.copies[k][len(m.copies[k])-n:]...)
	}
	m.recreate(d.x, 0, none)
	m.prune(d.x)
	return d.x
}

// buy buys what a program takes whole, and then its largest part. It reports whether it bought any,
// and some is left.
func (d *dive) buy(p *program) (any bool) {
	tag, most := 0, 0.0
	p.Parts(func(c simplex.Column, n float64) {
		if c.Tag < 0 {
			return
		}
		for n += 1e-6; n >= 1 && d.asks(c.Tag); n-- {
			d.cut(c.Tag)
			any = true
		}
		if !d.first {
			n *= 1 - float64(0.5*d.unit())
		}
		if n > most {
			most, tag = n, c.Tag
		}
	})
	if most > 1e-5 {
		any = d.cut(tag) || any
	}
	return any && slices.Max(d.left) > 0
}

// asks reports whether all that a recipe gives is left to be cut.
func (d *dive) asks(tag int) bool {
	for k, n := range d.recipes[tag].gives {
		if n > d.left[k] {
			return false
		}
	}
	return true
}

// cut buys a sheet and cuts it by a recipe, save what is not asked for; it reports whether anything is.
func (d *dive) cut(tag int) bool {
	r := d.recipes[tag]
	part := asked(r.part, slices.Clone(d.left))
	if part == nil {
		return false
	}
	k, t := d.search.kinds[r.sheet], d.tree()
	t.reset(r.sheet, k.w, k.h)
	t.fill(root, part, func(kind int) int32 {
		d.left[kind]--
		c := d.copies[kind]
		return c[len(c)-d.left[kind]-1]
	})
	d.add(d.x, t)
	return true
}

// add puts a tree into a solution.
func (s *search) add(x *solution, t *tree) {
	x.trees, x.gists = append(x.trees, t), append(x.gists, gist{})
	s.note(x, len(x.trees)-1)
	x.bought[t.kind]++
	x.price += s.kinds[t.kind].price
}

// asked is a part without the pieces that are not left; nil is nothing.
func asked(p *pattern.Part, left []int) *pattern.Part {
	if p.Kind >= 0 {
		if left[p.Kind]--; left[p.Kind] < 0 {
			return nil
		}
		return p
	}
	a, b := asked(p.Of[0], left), asked(p.Of[1], left)
	switch {
	case a == nil:
		return b
	case b == nil:
		return a
	}
	return pattern.Join(a, b, p.AlongX)
}

// fill cuts an offcut as a part is cut, with the pieces that take gives.
func (t *tree) fill(at int32, p *pattern.Part, take func(kind int) int32) {
	if p.Kind >= 0 {
		t.place(at, take(p.Kind), p.W, p.H, p.Turned, true)
		return
	}
	t.take(at)
	n := &t.nodes[at]
	n.piece, n.alongX = cut, p.AlongX
	w, h := n.w, n.h
	over := node{w: w, h: h}
	if p.AlongX {
		over.w -= p.W
	} else {
		over.h -= p.H
	}
	if over.w > 0 && over.h > 0 {
		t.leave(t.add(at, over))
	}
	for _, c := range p.Row() {
		part := node{w: c.W, h: h}
		if !p.AlongX {
			part = node{w: w, h: c.H}
		}
		i := t.add(at, part)
		t.leave(i)
		t.fill(i, c, take)
	}
}
