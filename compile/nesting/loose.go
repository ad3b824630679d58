package nesting

import (
	"math"
	"slices"

	"barwright/compile/geom"
)

// free looks for free layouts, by ruin and recreate as search does for sawn ones: a few pieces
// that lie together are taken from a few sheets, and are laid anew in the smallest space that
// takes them, in the corner where they touch most.
type free struct {
	*search
	least  Size             // no piece has less in x, nor in y
	solids [][2][]geom.Rect // of each piece, upright and turned; none where it lies as its box
	pool   []*bed
}

// loose is a set of sheets with free layouts, and the pieces that are in none.
type loose struct {
	beds   []*bed
	out    []int32
	bought []int // of each kind
	price  int64
	cost   float64
}

// copyTo makes a solution like this one of another, whose memory is used again.
func (x *loose) copyTo(c *loose) {
	beds, out, bought := append(c.beds[:0], x.beds...), append(c.out[:0], x.out...), append(c.bought[:0], x.bought...)
	*c = *x
	c.beds, c.out, c.bought = beds, out, bought
	for _, b := range c.beds {
		b.held++
	}
}

// release gives back the beds that no other solution holds.
func (f *free) release(x *loose) {
	for _, b := range x.beds {
		f.drop(b)
	}
	x.beds = x.beds[:0]
}

func (f *free) drop(b *bed) {
	if b.held--; b.held == 0 {
		f.pool = append(f.pool, b)
	}
}

func (f *free) bed() *bed {
	last := len(f.pool) - 1
	if last < 0 {
		return &bed{}
	}
	b := f.pool[last]
	f.pool = f.pool[:last]
	return b
}

// own makes sure that no other solution holds a bed, and returns it.
func (f *free) own(x *loose, i int) *bed {
	b := x.beds[i]
	if b.held > 1 {
		c := f.bed()
		b.copyTo(c)
		b.held--
		x.beds[i] = c
		return c
	}
	return b
}

// remove takes a sheet away, with its pieces out.
func (f *free) remove(x *loose, i int) {
	b := x.beds[i]
	for _, l := range b.lies {
		x.out = append(x.out, l.piece)
	}
	x.bought[b.kind]--
	x.price -= f.kinds[b.kind].price
	f.drop(b)
	x.beds = slices.Delete(x.beds, i, i+1)
}

// prune gives back sheets that nothing lies on.
func (f *free) prune(x *loose) {
	for i := len(x.beds) - 1; i >= 0; i-- {
		if len(x.beds[i].lies) == 0 {
			f.remove(x, i)
		}
	}
}

// open adds any empty sheet that a piece fits, if one may be bought.
func (f *free) open(x *loose, piece int32) bool {
	found, ways := none, 0
	for k := range f.kinds {
		if !f.search.from(k, f.shapes[piece]) || x.bought[k] >= f.kinds[k].most || f.kinds[k].price > f.most-x.price {
			continue
		}
		if ways++; f.below(ways) == 0 {
			found = k
		}
	}
	if found == none {
		return false
	}
	b := f.bed()
	b.reset(found)
	b.survey(f.kinds[found], f.least)
	x.beds = append(x.beds, b)
	x.bought[found]++
	x.price += f.kinds[found].price
	return true
}

// emptiest is the sheet that holds the least.
func (x *loose) emptiest() int {
	least := 0
	for i, b := range x.beds {
		if b.used < x.beds[least].used {
			least = i
		}
	}
	return least
}

// largest is the area of the largest space on sheets that anything lies on.
func (x *loose) largest() (most float64) {
	for _, b := range x.beds {
		if len(b.lies) > 0 {
			most = max(most, area(b.largest()))
		}
	}
	return most
}

// outside is the area of the pieces that are out.
func (f *free) outside(x *loose) (sum float64) {
	for _, p := range x.out {
		sum += f.shapes[p].area
	}
	return sum
}

func (f *free) measure(x *loose) { x.cost = f.outside(x) }

// place is where a piece may lie: somewhere in a space, or with a solid of it in the space.
type place struct {
	bed    int
	space  geom.Rect
	turned bool
	loss   float64   // area of the space to that of the piece, or of its solid
	at     geom.Rect // of a piece with solids
}

// best finds the smallest space for a piece, on any sheet or on those that no other solution has.
func (f *free) best(x *loose, piece int32, changed bool) (place, bool) {
	p := &f.shapes[piece]
	least := place{loss: math.Inf(1)}
	for i, b := range x.beds {
		if changed && b.held > 1 || f.kinds[b.kind].area-b.used < p.area*(1-1e-9) {
			continue
		}
		f.work += len(b.spaces)
		if f.solids != nil && f.solids[piece][0] != nil {
			f.nest(i, b, piece, &least)
			continue
		}
		for _, s := range b.spaces {
			w, h := s.X.Size(), s.Y.Size()
			upright, turned := p.w <= w && p.h <= h, p.turns && p.h <= w && p.w <= h
			if !upright && !turned {
				continue
			}
			if f.skip--; f.skip < 0 {
				f.skip = f.below(2 * blink)
				continue
			}
			if a := float64(w) * float64(h) / p.area; a < least.loss {
				least = place{bed: i, space: s, turned: !upright || turned && f.below(2) == 0, loss: a}
			}
		}
	}
	f.work += 2 + len(x.beds)/8
	return least, !math.IsInf(least.loss, 1)
}

// recreate lays what it can of a solution's pieces that are out, the large ones first. As many
// as are stuck are known to fit no sheet that was not changed.
func (f *free) recreate(x *loose, stuck int) {
	for i, p := range x.out {
		f.stuck[p] = i < stuck
	}
	f.order(x.out)
	rest := x.out[:0]
	for _, p := range x.out {
		at, ok := f.best(x, p, f.stuck[p])
		if !ok && f.open(x, p) {
			for !ok {
				at, ok = f.best(x, p, true)
			}
		}
		if !ok {
			rest = append(rest, p)
			continue
		}
		f.put(x, p, at)
	}
	x.out = rest
}

func (f *free) put(x *loose, piece int32, at place) {
	b, p := f.own(x, at.bed), f.shapes[piece]
	l := lying{piece: piece, turned: at.turned, at: at.at, area: p.area}
	if f.solids != nil {
		l.solids = f.solids[piece][index(at.turned)]
	}
	if l.solids == nil {
		if at.turned {
			p.w, p.h = p.h, p.w
		}
		l.at = b.corner(at.space, p.w, p.h, f.kinds[b.kind])
	}
	b.lay(l, f.least)
	f.work += len(b.lies) + 2*len(b.spaces)
}

// ruin takes pieces out of up to three sheets, mostly of those that hold little.
func (f *free) ruin(x *loose) {
	if len(f.kinds) > 1 && len(x.beds) > 0 && f.below(8) == 0 {
		f.remove(x, f.emptier(x))
	}
	if len(x.beds) == 0 {
		return
	}
	take := 1 + f.below(5)
	for range 1 + f.below(3) {
		i := f.below(len(x.beds))
		if f.below(5) > 0 {
			i = f.emptier(x)
		}
		if len(x.beds[i].lies) == 0 {
			continue
		}
		b := f.own(x, i)
		n := min(take, len(b.lies))
		if f.below(8) == 0 {
			n = len(b.lies)
		}
		x.out = f.lift(b, n, x.out)
	}
}

// lift takes n pieces that lie together from a bed.
func (f *free) lift(b *bed, n int, out []int32) []int32 {
	at := b.lies[f.below(len(b.lies))].at
	for range n {
		near, next := Length(math.MaxInt64), 0
		for i := range b.lies {
			o := &b.lies[i].at
			d := max(at.X.Lo-o.X.Hi, o.X.Lo-at.X.Hi, at.Y.Lo-o.Y.Hi, o.Y.Lo-at.Y.Hi)
			if d < near || d == near && f.below(3) == 0 {
				near, next = d, i
			}
		}
		out = append(out, b.lift(next).piece)
	}
	b.survey(f.kinds[b.kind], f.least)
	f.work += len(b.lies) * (2 + len(b.spaces)/2)
	return out
}

// emptier draws a sheet, and of four the one that holds the least.
func (f *free) emptier(x *loose) int {
	i := f.below(len(x.beds))
	for range 3 {
		if o := f.below(len(x.beds)); x.beds[o].used < x.beds[i].used {
			i = o
		}
	}
	return i
}
