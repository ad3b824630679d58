package spacing_test

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/spacing"
)

// best is the rule read word by word.
func best(a spacing.Ask) []geom.Length {
	image := func(x geom.Length) geom.Length { return a.Stretch.Lo + a.Stretch.Hi - x }
	fixed := slices.Clone(a.Fixed)
	for _, x := range a.Fixed {
		if a.Mirrored {
			fixed = append(fixed, image(x))
		}
	}
	slices.Sort(fixed)
	fixed = slices.Compact(fixed)
	for _, x := range fixed {
		if !open(a, x) {
			return nil
		}
	}
	var marks []geom.Length
	for x := a.Stretch.Lo; x <= a.Stretch.Hi; x++ {
		if min(x-a.Stretch.Lo, a.Stretch.Hi-x)%a.Mark == 0 && open(a, x) {
			marks = append(marks, x)
		}
	}
	counts := []int{a.Count}
	if a.Count == 0 {
		counts = []int{1, 2, 3, 4, 5, 6, 7, 8, 9}
		if !a.HalfEnds {
			counts = counts[1:]
		}
	}
	for _, n := range counts {
		if row := bestOf(a, n, marks, fixed, image); row != nil {
			return row
		}
	}
	return nil
}

func bestOf(a spacing.Ask, n int, marks, fixed []geom.Length, image func(geom.Length) geom.Length) []geom.Length {
	places := slices.Clone(marks)
	mid := a.Stretch.Mid()
	if n == 1 || a.Mirrored && n%2 == 1 {
		if open(a, mid) {
			places = append(places, mid)
		}
	}
	half := a.HalfEnds || n == 1
	if !half {
		if len(marks) == 0 {
			return nil
		}
		first, last := marks[0], marks[0]
		for _, x := range marks {
			if to := a.Stretch.Lo + a.End; max(x-to, to-x) < max(first-to, to-first) {
				first = x
			}
			if to := a.Stretch.Hi - a.End; max(x-to, to-x) < max(last-to, to-last) {
				last = x
			}
		}
		if a.Mirrored {
			last = image(first)
		}
		if first >= last {
			return nil
		}
		if len(fixed) > 0 {
			first, last = min(first, fixed[0]), max(last, fixed[len(fixed)-1])
		}
		fixed = append(slices.Clone(fixed), first, last)
		places = slices.DeleteFunc(places, func(x geom.Length) bool { return x < first || x > last })
	}
	places = append(places, fixed...)
	slices.Sort(places)
	places = slices.Compact(places)
	var found []geom.Length
	var cost geom.Length
	row := make([]geom.Length, n)
	var try func(i, from int)
	try = func(i, from int) {
		if i == n {
			for _, x := range fixed {
				if !slices.Contains(row, x) {
					return
				}
			}
			before, after := row[0]-a.Stretch.Lo, a.Stretch.Hi-row[n-1]
			if a.Most > 0 && max(before, after) > a.Most {
				return
			}
			total := geom.Length(0)
			if half {
				total = 2*before*before + 2*after*after
			}
			for j := range n {
				if a.Mirrored && 2*j+1 == n {
					if row[j] != mid {
						return
					}
				} else if a.Mirrored && row[n-1-j] != image(row[j]) {
					return
				}
				if j > 0 {
					total += (row[j] - row[j-1]) * (row[j] - row[j-1])
				}
			}
			if found == nil || total < cost {
				found, cost = slices.Clone(row), total
			}
			return
		}
		for j := from; j < len(places); j++ {
			if i > 0 {
				if gap := places[j] - row[i-1]; gap < a.Least || a.Most > 0 && gap > a.Most {
					continue
				}
			}
			row[i] = places[j]
			try(i+1, j+1)
		}
	}
	try(0, 0)
	return found
}
