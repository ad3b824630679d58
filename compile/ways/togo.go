package ways

import (
	"math"
	"slices"

	"barwright/compile/geom"
)

// never is how much is in the way where no lanes lead on.
const never = math.MaxInt32

// toGo is how much that a way may not go through it has to go through at least from each
// crossing on, after coming through so many boxes. With nothing in the way it tells where
// ends are joined, by far sooner than a search for the shortest way would.
func (g *grid) toGo(a *Ask) [][]int32 {
	layers := make([][]int32, len(a.Through)+1)
	for through := len(a.Through); through >= 0; through-- {
		f := &flood{grid: g, least: slices.Repeat([]int32{never}, g.size)}
		if through == len(a.Through) {
			for _, p := range a.To {
				f.reach(g.number(p), 0)
			}
		} else {
			box := a.Through[through]
			g.each(geom.V, g.touching(box), func(_ *piece, at int) {
				f.reach(at, layers[a.comeThrough(g.spot(at), through)][at])
			})
		}
		f.run()
		layers[through] = f.least
	}
	return layers
}

// flood spreads from crossings, level by level of what is in the way.
type flood struct {
	*grid
	least  []int32
	levels [][]int
}

func (f *flood) reach(at int, level int32) {
	if level >= f.least[at] {
		return
	}
	f.least[at] = level
	for len(f.levels) <= int(level) {
		f.levels = append(f.levels, nil)
	}
	f.levels[level] = append(f.levels[level], at)
}

func (f *flood) run() {
	for level := int32(0); int(level) < len(f.levels); level++ {
		for i := 0; i < len(f.levels[level]); i++ {
			at := f.levels[level][i]
			if f.least[at] < level {
				continue
			}
			for axis := range f.steps {
				for _, by := range [2]int{-1, 1} {
					if to, begins, ok := f.beside(at, axis, by); ok && f.pieces[axis][begins].lane {
						f.reach(to, level+f.pieces[axis][begins].shut)
					}
				}
			}
		}
	}
}
