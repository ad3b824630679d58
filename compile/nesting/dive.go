package nesting

import (
	"cmp"
	"math"
	"slices"

	"barwright/compile/nesting/pattern"
	"barwright/compile/simplex"
)

// dive buys what a program takes whole, then one of its largest part, and asks anew for what is
// left, until that is nothing. Where what is left can no longer beat the best it goes back, and
// takes the next part instead, a few times (Sadykov, Vanderbeck, Pessoa, Tahiri and Uchoa, "Primal
// heuristics for branch and price", INFORMS Journal on Computing 31, 2019).
type dive struct {
	*mix
	best *solution[*tree]
}

// purchase is what is bought on the way: recipes, what they cost, and what is left to be cut.
type purchase struct {
	tags  []int
	price int64
	left  []int
}

// share is how much of a sheet is taken of a recipe.
type share struct {
	tag int
	x   float64
}

// discrepancies is how often another part than the largest is taken on the way.
const discrepancies = 20

// dive returns the best solution that it finds.
func (m *mix) dive() *solution[*tree] {
	d := dive{mix: m}
	d.down(m.root, purchase{left: m.demand()}, discrepancies)
	return d.best
}

// down goes on with a solved program; others is how often another part may be taken below.
func (d *dive) down(p *program, bought purchase, others int) {
	parts := d.whole(p, &bought)
	if d.spent() || len(parts) == 0 || bought.done() {
		d.offer(bought)
		return
	}
	for i, part := range parts {
		if i > others || d.best != nil && (d.spent() || d.best.price <= d.atLeast) {
			return
		}
		next := purchase{slices.Clone(bought.tags), bought.price, slices.Clone(bought.left)}
		d.buy(&next, part.tag)
		if next.done() {
			d.offer(next)
			continue
		}
		q := d.program(slices.Clone(next.left))
		d.solve(q, d.until)
		if d.best == nil || next.price+d.least(q) < d.best.price {
			d.down(q, next, others-i)
		}
	}
}

func (d *dive) spent() bool { return d.work >= d.until }

// done tells whether nothing is left.
func (b *purchase) done() bool { return slices.Max(b.left) == 0 }

// least is what a program costs at least, as far as it knows: whole sheets if all cost the same.
func (d *dive) least(p *program) int64 {
	unit := float64(d.search.kinds[0].price)
	if len(d.search.kinds) > 1 {
		unit = 1
	}
	return int64(unit * math.Ceil(p.Value()/unit-1e-6))
}

// whole buys what a program takes whole, and tells what parts are left, the largest first.
func (d *dive) whole(p *program, bought *purchase) (parts []share) {
	p.Parts(func(c simplex.Column, x float64) {
		if c.Tag < 0 {
			return
		}
		for x += 1e-6; x >= 1 && d.asks(c.Tag, bought.left); x-- {
			d.buy(bought, c.Tag)
		}
		if x > 1e-5 {
			parts = append(parts, share{c.Tag, x})
		}
	})
	parts = slices.DeleteFunc(parts, func(s share) bool { return !d.gives(s.tag, bought.left) })
	slices.SortStableFunc(parts, func(a, b share) int { return cmp.Compare(b.x, a.x) })
	return parts
}

// asks reports whether all that a recipe gives is left to be cut.
func (d *dive) asks(tag int, left []int) bool {
	for k, n := range d.recipes[tag].gives {
		if n > left[k] {
			return false
		}
	}
	return true
}

// gives reports whether a recipe gives any of what is left.
func (d *dive) gives(tag int, left []int) bool {
	for k, n := range d.recipes[tag].gives {
		if n > 0 && left[k] > 0 {
			return true
		}
	}
	return false
}

// buy buys a sheet for a recipe.
func (d *dive) buy(b *purchase, tag int) {
	r := &d.recipes[tag]
	b.tags = append(b.tags, tag)
	b.price += d.search.kinds[r.sheet].price
	for k, n := range r.gives {
		b.left[k] -= min(n, b.left[k])
	}
}

// offer makes a solution of a purchase, lays what is left as it comes, and keeps the best.
func (d *dive) offer(b purchase) {
	x := &solution[*tree]{bought: make([]int, len(d.search.kinds))}
	left := d.demand()
	for _, tag := range b.tags {
		d.cut(x, tag, left)
	}
	for k, n := range left {
		x.out = append(x.out, d.copies[k][len(d.copies[k])-n:]...)
	}
	d.recreate(x, 0, none)
	d.prune(x)
	if d.best == nil || d.better(x, d.best) {
		x, d.best = d.best, x
	}
	if x != nil {
		d.release(x)
	}
}

// cut cuts a sheet by a recipe, save what is not left to be cut.
func (d *dive) cut(x *solution[*tree], tag int, left []int) {
	r := d.recipes[tag]
	part := asked(r.part, slices.Clone(left))
	if part == nil {
		return
	}
	t := d.take()
	t.reset(d.search, r.sheet)
	t.fill(root, part, func(kind int) int32 {
		left[kind]--
		c := d.copies[kind]
		return c[len(c)-left[kind]-1]
	})
	d.add(x, t)
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
