package survey

import (
	"cmp"
	"math"
	"math/big"
	"slices"

	"barwright/compile/geom"
)

// mesh is a triangulation as its directed edges, each with the corner across it in the
// triangle on its positive side. A map is for lookup only.
type mesh map[[2]int]int

func (m mesh) add(a, b, c int) {
	m[[2]int{a, b}], m[[2]int{b, c}], m[[2]int{c, a}] = c, a, b
}

// triangulate finds the Delaunay triangulation. It takes the readings in their order, so
// that each lies beyond the hull of those before it, joins it to the edges that it sees, and
// turns edges until the circle about no triangle holds a reading (C. L. Lawson's flips). All
// decisions are exact. Where four stand on one circle either diagonal would do, and the
// order of the readings says which it is.
func (s *Surface) triangulate() {
	first := slices.IndexFunc(s.readings, func(r Reading) bool {
		return len(s.readings) > 1 && side(s.readings[0].At, s.readings[1].At, r.At) != 0
	})
	if first < 0 {
		for n := 1; n < len(s.readings); n++ {
			s.rim = append(s.rim, [2]int{n - 1, n})
		}
		return
	}
	m := mesh{}
	hull := s.fan(m, first)
	for n := first + 1; n < len(s.readings); n++ {
		hull = s.join(m, hull, n)
	}
	s.flip(m)
	for edge, c := range m {
		if edge[0] < edge[1] && edge[0] < c {
			s.triangles = append(s.triangles, [3]int{edge[0], edge[1], c})
		}
	}
	slices.SortFunc(s.triangles, func(a, b [3]int) int { return slices.Compare(a[:], b[:]) })
	for k, a := range hull {
		s.rim = append(s.rim, [2]int{a, hull[(k+1)%len(hull)]})
	}
}

// fan joins the readings of one line to the first beside it, and returns the hull, the
// positive way round.
func (s *Surface) fan(m mesh, apex int) (hull []int) {
	for n := range apex {
		hull = append(hull, n)
	}
	if side(s.readings[0].At, s.readings[1].At, s.readings[apex].At) < 0 {
		slices.Reverse(hull)
	}
	for k := 1; k < apex; k++ {
		m.add(hull[k-1], hull[k], apex)
	}
	return append(hull, apex)
}

// join adds a reading beyond the hull, with a triangle on every edge that it sees, and
// returns the hull with it.
func (s *Surface) join(m mesh, hull []int, n int) []int {
	sees := func(k int) bool {
		return side(s.readings[hull[k]].At, s.readings[hull[(k+1)%len(hull)]].At, s.readings[n].At) < 0
	}
	start := 0 // the first edge that it sees after one that it does not
	for sees(start) || !sees((start+1)%len(hull)) {
		start++
	}
	hull = slices.Concat(hull[start+1:], hull[:start+1])
	last := 0
	for ; sees(last); last++ {
		m.add(hull[last+1], hull[last], n)
	}
	return append(hull[last:], hull[0], n)
}

// flip turns edges between two triangles until none lies in the other's circle.
func (s *Surface) flip(m mesh) {
	var look [][2]int
	for edge := range m {
		look = append(look, edge)
	}
	slices.SortFunc(look, func(a, b [2]int) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
	for len(look) > 0 {
		a, b := look[len(look)-1][0], look[len(look)-1][1]
		look = look[:len(look)-1]
		c, left := m[[2]int{a, b}]
		d, right := m[[2]int{b, a}]
		if !left || !right || !encircles(s.readings[a].At, s.readings[b].At, s.readings[c].At, s.readings[d].At) {
			continue
		}
		delete(m, [2]int{a, b})
		delete(m, [2]int{b, a})
		m.add(a, d, c)
		m.add(d, b, c)
		look = append(look, [2]int{a, d}, [2]int{d, b}, [2]int{b, c}, [2]int{c, a})
	}
}

// side tells on which side of the line from a to b a point lies: 1 on the positive one,
// 0 on the line. It is exact: where rounding could decide, whole numbers do.
func side(a, b, p geom.Point) int {
	left := float64(b.X-a.X) * float64(p.Y-a.Y)
	right := float64(b.Y-a.Y) * float64(p.X-a.X)
	const rounding = 1e-15 // over six roundings of half a unit in the last place
	if d := left - right; math.Abs(d) > float64(rounding*(math.Abs(left)+math.Abs(right))) {
		return cmp.Compare(d, 0)
	}
	return cross(a, b, p).Sign()
}

// cross is twice the area of the triangle a, b, p, positive the positive way round.
func cross(a, b, p geom.Point) *big.Int {
	u, v := b.Sub(a), p.Sub(a)
	return minor(u.X, u.Y, v.X, v.Y)
}

// minor is a*d - b*c.
func minor(a, b, c, d Length) *big.Int {
	ad, bc := product(a, d), product(b, c)
	return ad.Sub(ad, bc)
}

func product(a, b Length) *big.Int {
	return new(big.Int).Mul(big.NewInt(int64(a)), big.NewInt(int64(b)))
}

// encircles reports whether d lies inside the circle through a, b and c, which go the
// positive way round. It is exact, as side is.
func encircles(a, b, c, d geom.Point) bool {
	a, b, c = a.Sub(d), b.Sub(d), c.Sub(d)
	about, most := 0.0, 0.0
	for _, row := range [3][3]geom.Point{{a, b, c}, {b, c, a}, {c, a, b}} {
		p, q, r := row[0], row[1], row[2]
		square := float64(float64(p.X)*float64(p.X)) + float64(float64(p.Y)*float64(p.Y))
		left, right := float64(q.X)*float64(r.Y), float64(q.Y)*float64(r.X)
		about += float64(square * (left - right))
		most += float64(square * (math.Abs(left) + math.Abs(right)))
	}
	const rounding = 1e-14 // over twenty roundings of half a unit in the last place
	if math.Abs(about) > float64(rounding*most) {
		return about > 0
	}
	sum := new(big.Int)
	for _, row := range [3][3]geom.Point{{a, b, c}, {b, c, a}, {c, a, b}} {
		p, q, r := row[0], row[1], row[2]
		square := product(p.X, p.X)
		square.Add(square, product(p.Y, p.Y))
		sum.Add(sum, square.Mul(square, minor(q.X, q.Y, r.X, r.Y)))
	}
	return sum.Sign() > 0
}
