package paint

import (
	"slices"

	"barwright/compile/geom"
)

// Gaps returns of each line what no face covers, as if all lines lay behind all faces.
func Gaps(seen []Seen, lines [][2]geom.Point) [][][2]geom.Point {
	rings := make([]ring, len(seen))
	frames := make([]bounds, 0, len(seen)+len(lines))
	for i := range seen {
		rings[i] = seen[i].ring()
		frames = append(frames, rings[i].bounds())
	}
	for _, l := range lines {
		b := ring{{float64(l[0].X), float64(l[0].Y)}, {float64(l[1].X), float64(l[1].Y)}}.bounds()
		frames = append(frames, bounds{b.x0 - 2*touch, b.y0 - 2*touch, b.x1 + 2*touch, b.y1 + 2*touch})
	}
	over := make([][]ring, len(lines))
	overlaps(frames, func(i, j int) {
		if i, j = min(i, j), max(i, j); i < len(seen) && j >= len(seen) {
			over[j-len(seen)] = append(over[j-len(seen)], rings[i])
		}
	})
	gaps := make([][][2]geom.Point, len(lines))
	for k, l := range lines {
		gaps[k] = uncovered(l, over[k])
	}
	return gaps
}

// uncovered is what of a line lies in none of some rings.
func uncovered(l [2]geom.Point, over []ring) (free [][2]geom.Point) {
	a, b := spot{float64(l[0].X), float64(l[0].Y)}, spot{float64(l[1].X), float64(l[1].Y)}
	at := func(t float64) spot { return spot{a.x + float64((b.x-a.x)*t), a.y + float64((b.y-a.y)*t)} }
	marks := []float64{0, 1}
	for _, r := range over {
		for i, p := range r {
			q := r[(i+1)%len(r)]
			from, to := turn(p, q, a), turn(p, q, b)
			if (from < 0) != (to < 0) {
				marks = append(marks, from/(from-to))
			}
		}
	}
	slices.Sort(marks)
	last := -1.0
	for i := 1; i < len(marks); i++ {
		t, u := marks[i-1], marks[i]
		mid := at((t + u) / 2)
		if u-t < 1e-9 || slices.ContainsFunc(over, func(r ring) bool { return r.holds(mid) }) {
			continue
		}
		if len(free) > 0 && last == t {
			free[len(free)-1][1] = at(u).point()
		} else {
			free = append(free, [2]geom.Point{at(t).point(), at(u).point()})
		}
		last = u
	}
	return free
}
