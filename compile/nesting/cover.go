package nesting

import (
	"cmp"
	"math"
	"slices"
)

// cover is what sheets give to a need, those that give most for their price first.
type cover struct {
	kinds []given
	tries int
}

type given struct {
	area  float64
	price int64
	most  int
}

// slack is what sums of floats are taken to be wrong by; it is far less.
const slack = 1e-9

func newCover(kinds []kind, area []float64) *cover {
	c := &cover{}
	for i, k := range kinds {
		if area[i] > 0 {
			c.kinds = append(c.kinds, given{area[i], k.price, k.most})
		}
	}
	slices.SortStableFunc(c.kinds, func(a, b given) int {
		return cmp.Compare(float64(a.price)*b.area, float64(b.price)*a.area)
	})
	return c
}

// part is the price if parts of sheets can be bought; infinite if all sheets are too few.
func (c *cover) part(need float64) float64 { return part(c.kinds, need-slack*max(1, need)) }

func part(kinds []given, need float64) (price float64) {
	for _, k := range kinds {
		if need <= slack {
			return price
		}
		n := need / k.area
		if n <= float64(k.most) {
			return price + float64(n*float64(k.price))
		}
		price += float64(float64(k.most) * float64(k.price))
		need -= float64(float64(k.most) * k.area)
	}
	if need > slack {
		return math.Inf(1)
	}
	return price
}

// enoughTries is how many sets of sheets are tried; the next better bound is that for parts of
// sheets.
const enoughTries = 20_000

// whole is the least price of whole sheets that cover a need, or 0 if all are too few.
func (c *cover) whole(need float64) int64 {
	need -= slack * max(1, need)
	if math.IsInf(part(c.kinds, need), 1) {
		return 0
	}
	c.tries = 0
	least := int64(math.MaxInt64)
	c.try(c.kinds, need, 0, &least)
	if c.tries > enoughTries {
		return up(part(c.kinds, need))
	}
	return least
}

func (c *cover) try(kinds []given, need float64, price int64, least *int64) {
	if need <= slack {
		*least = min(*least, price)
		return
	}
	if c.tries++; len(kinds) == 0 || c.tries > enoughTries {
		return
	}
	k := kinds[0]
	for n := int(min(math.Ceil(need/k.area), float64(k.most))); n >= 0; n-- {
		rest := need - float64(float64(n)*k.area)
		now := price + int64(n)*k.price
		if p := part(kinds[1:], max(0, rest)); n < int(math.Ceil(need/k.area)) && (math.IsInf(p, 1) || now+up(p) >= *least) {
			return
		}
		c.try(kinds[1:], rest, now, least)
	}
}

// up is the least whole price that is not less.
func up(price float64) int64 { return int64(math.Ceil(price - slack*max(1, price))) }
