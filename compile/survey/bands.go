package survey

import (
	"math"

	"barwright/compile/geom"
)

// bands parts the longer side of what readings cover into bands of one width, as many as the
// root of the number of triangles, and lists in each those that reach into it, in their order: of
// many triangles a point is then looked for in few.
type bands struct {
	alongY bool
	from   Length
	wide   Length
	reach  [][]int // indices of triangles
}

func (s *Surface) banded() bands {
	if len(s.triangles) == 0 {
		return bands{}
	}
	low, high := s.readings[0].At, s.readings[0].At
	for _, r := range s.readings {
		low = geom.Point{X: min(low.X, r.At.X), Y: min(low.Y, r.At.Y)}
		high = geom.Point{X: max(high.X, r.At.X), Y: max(high.Y, r.At.Y)}
	}
	b := bands{alongY: high.Y-low.Y > high.X-low.X}
	b.from = b.on(low)
	count := int(math.Ceil(math.Sqrt(float64(len(s.triangles)))))
	b.wide = (b.on(high)-b.from)/Length(count) + 1
	b.reach = make([][]int, count)
	for n, t := range s.triangles {
		p, q, r := b.on(s.readings[t[0]].At), b.on(s.readings[t[1]].At), b.on(s.readings[t[2]].At)
		for k := (min(p, q, r) - b.from) / b.wide; k <= (max(p, q, r)-b.from)/b.wide; k++ {
			b.reach[k] = append(b.reach[k], n)
		}
	}
	return b
}

// on is where a point is along the bands.
func (b *bands) on(p geom.Point) Length {
	if b.alongY {
		return p.Y
	}
	return p.X
}

// at lists the triangles that may hold a point.
func (b *bands) at(p geom.Point) []int {
	on := b.on(p) - b.from
	if on < 0 || len(b.reach) == 0 || int(on/b.wide) >= len(b.reach) {
		return nil
	}
	return b.reach[on/b.wide]
}

// between lists the triangles that may meet the line between two points, by bands.
func (b *bands) between(from, to geom.Point) [][]int {
	if len(b.reach) == 0 {
		return nil
	}
	low, high := min(b.on(from), b.on(to))-b.from, max(b.on(from), b.on(to))-b.from
	if high < 0 {
		return nil
	}
	last := Length(len(b.reach) - 1)
	return b.reach[min(max(low, 0)/b.wide, last) : min(high/b.wide, last)+1]
}
