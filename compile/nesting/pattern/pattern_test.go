package pattern_test

import (
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/nesting/pattern"
)

// job is a small sheet with kinds and their worths.
type job struct {
	kinds  []pattern.Kind
	worths []int64
	w, h   pattern.Length
	stages int
}

func drawJob(t *rapid.T) job {
	length := func(most int, name string) pattern.Length {
		return pattern.Length(rapid.IntRange(1, most).Draw(t, name))
	}
	j := job{w: length(24, "W"), h: length(24, "H"), stages: rapid.IntRange(0, 4).Draw(t, "stages")}
	for range rapid.IntRange(1, 5).Draw(t, "kinds") {
		j.kinds = append(j.kinds, pattern.Kind{W: length(26, "w"), H: length(26, "h"), Turns: rapid.Bool().Draw(t, "turns"), Most: 30})
		j.worths = append(j.worths, int64(rapid.IntRange(0, 50).Draw(t, "worth")))
	}
	return j
}

// part is a rectangle that is cut further; along is how it was parted before, 0 if it was not.
type part struct {
	w, h          pattern.Length
	along, stages int
}

// most is what a rectangle can be worth, by trying every cut at every place. The parts of one
// stage are cut one after the other.
func (j job) most(p part, seen map[part]int64) (best int64) {
	if v, ok := seen[p]; ok {
		return v
	}
	for i, k := range j.kinds {
		if k.W == p.w && k.H == p.h || k.Turns && k.H == p.w && k.W == p.h {
			best = max(best, j.worths[i])
		}
	}
	for along := 1; along <= 2; along++ {
		left := p.stages
		if left > 0 && along != p.along {
			if left--; left == 0 {
				continue
			}
		}
		for at := pattern.Length(1); along == 1 && at < p.w; at++ {
			best = max(best, j.most(part{at, p.h, 1, left}, seen)+j.most(part{p.w - at, p.h, 1, left}, seen))
		}
		for at := pattern.Length(1); along == 2 && at < p.h; at++ {
			best = max(best, j.most(part{p.w, at, 2, left}, seen)+j.most(part{p.w, p.h - at, 2, left}, seen))
		}
	}
	seen[p] = best
	return best
}

// worth is that of a pattern, whose pieces must be those of the job, in so many stages.
func (j job) worth(t *rapid.T, p *pattern.Part) (sum int64) {
	n := make([]int, len(j.kinds))
	p.Count(n)
	for i, n := range n {
		sum += int64(n) * j.worths[i]
	}
	if p.W > j.w || p.H > j.h {
		t.Fatalf("%v by %v on a sheet %v by %v", p.W, p.H, j.w, j.h)
	}
	if s := j.cuts(t, p, j.w, j.h, 0); j.stages > 0 && s > j.stages {
		t.Fatalf("%d stages, %d allowed", s, j.stages)
	}
	return sum
}

// cuts is how often cuts change their direction to part a pattern from a rectangle that was parted
// along x (1), or y (2) before.
func (j job) cuts(t *rapid.T, p *pattern.Part, w, h pattern.Length, along int) int {
	if p.Kind >= 0 {
		k := j.kinds[p.Kind]
		if p.Turned && k.Turns {
			k.W, k.H = k.H, k.W
		}
		if k.W != p.W || k.H != p.H {
			t.Fatalf("piece %v by %v of kind %v", p.W, p.H, k)
		}
		stages := 0
		if w > p.W && along != 1 {
			stages++
		}
		if h > p.H && along != 2 {
			stages++
		}
		return stages
	}
	stages, now := 0, 2
	if p.AlongX {
		now = 1
	}
	for _, of := range p.Row() {
		if p.AlongX {
			stages = max(stages, j.cuts(t, of, of.W, h, 1))
		} else {
			stages = max(stages, j.cuts(t, of, w, of.H, 2))
		}
	}
	if now != along {
		stages++
	}
	return stages
}

// TestBest compares what patterns are worth with a search over all cuts.
func TestBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t)
		g := pattern.NewGrid(j.kinds, j.w, j.h, j.stages, 1_000_000)
		stages := j.stages
		if stages > 0 {
			stages++
		}
		want := j.most(part{j.w, j.h, 0, stages}, map[part]int64{})
		if got := g.Price(j.worths); got != want || !g.Whole {
			t.Fatalf("worth %d, %d by all cuts (all positions: %v)", got, want, g.Whole)
		}
		best := g.Best(0, 5)
		if (want > 0) != (len(best) > 0) {
			t.Fatalf("%d patterns for a worth of %d", len(best), want)
		}
		for i, p := range best {
			if w := j.worth(t, p); w > want || i == 0 && w != want {
				t.Fatalf("pattern %d is worth %d of %d", i, w, want)
			}
		}
	})
}

// TestHolds cuts a sheet up at random: what it gave is worth no more than the best pattern, though
// only as many pieces are thought to lie in a row as there are.
func TestHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rest := []pattern.Part{{W: 200, H: 150}}
		for range rapid.IntRange(0, 12).Draw(t, "cuts") {
			i := rapid.IntRange(0, len(rest)-1).Draw(t, "of")
			a, b := rest[i], rest[i]
			if rapid.Bool().Draw(t, "x") && a.W > 1 {
				a.W = pattern.Length(rapid.IntRange(1, int(a.W)-1).Draw(t, "at"))
				b.W -= a.W
			} else if a.H > 1 {
				a.H = pattern.Length(rapid.IntRange(1, int(a.H)-1).Draw(t, "at"))
				b.H -= a.H
			} else {
				continue
			}
			rest[i] = a
			rest = append(rest, b)
		}
		var kinds []pattern.Kind
		var worths []int64
		sum := int64(0)
		for _, r := range rest {
			worth := int64(rapid.IntRange(0, 50).Draw(t, "worth"))
			k := pattern.Kind{W: r.W, H: r.H, Most: 1}
			if k.Turns = rapid.Bool().Draw(t, "turns"); k.Turns {
				k.W, k.H = k.H, k.W
			}
			kinds, worths, sum = append(kinds, k), append(worths, worth), sum+worth
		}
		g := pattern.NewGrid(kinds, 200, 150, 0, 100_000_000)
		if got := g.Price(worths); g.Whole && got < sum {
			t.Fatalf("worth %d, but one way to cut the sheet gives %d", got, sum)
		}
	})
}

// TestRough finds patterns where not all positions can be tried.
func TestRough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t)
		g := pattern.NewGrid(j.kinds, j.w, j.h, j.stages, rapid.IntRange(1, 200).Draw(t, "work"))
		got := g.Price(j.worths)
		for i, p := range g.Best(0, 5) {
			if w := j.worth(t, p); i == 0 && w != got {
				t.Fatalf("the best pattern is worth %d of %d", w, got)
			}
		}
	})
}
