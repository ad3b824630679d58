package setting_test

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/setting"
)

// drawnRoom has up to six bodies, which leave one another and what is fixed no more room than they
// need: each is a few boxes less all drawn before. So they interlock, have holes and slots.
func drawnRoom(rng *rand.Rand) setting.Room {
	var r setting.Room
	size := cube{3 + rng.IntN(3), 3 + rng.IntN(2), 3}
	var taken []geom.Box
	fix := func(name string, b geom.Box) {
		r.Fixed = append(r.Fixed, setting.Solid{Name: name, Box: b})
		taken = append(taken, b)
	}
	whole := cube{-1, -1, -1}
	past := cube{size[0] + 1, size[1] + 1, size[2] + 1}
	fix("floor", cells(whole, cube{past[0], past[1], 0}))
	if rng.IntN(3) > 0 {
		fix("left wall", cells(whole, cube{0, past[1], past[2]}))
	}
	if rng.IntN(3) > 0 {
		fix("right wall", cells(cube{size[0], -1, -1}, past))
	}
	if rng.IntN(3) > 0 {
		fix("far wall", cells(cube{-1, size[1], -1}, past))
	}
	if rng.IntN(2) > 0 {
		fix("ceiling", cells(cube{-1, -1, size[2]}, past))
	}
	if rng.IntN(2) > 0 {
		r.Lift = setting.Length(rng.IntN(3)) * cell
	}
	if rng.IntN(2) > 0 {
		at := rng.IntN(size[0])
		wide := 1 + rng.IntN(size[0]-at)
		r.Door = &setting.Door{Span: geom.Span{Lo: setting.Length(at) * cell, Hi: setting.Length(at+wide) * cell}, Landing: setting.Length(rng.IntN(2)) * cell}
		fix("near wall", cells(whole, cube{at, 0, past[2]}))
		fix("near wall", cells(cube{at + wide, -1, -1}, cube{past[0], 0, past[2]}))
	} else {
		fix("near wall", cells(whole, cube{past[0], 0, past[2]}))
	}
	for i := range rng.IntN(3) {
		along := rng.IntN(3)
		lo := cube{rng.IntN(size[0]), rng.IntN(size[1]), rng.IntN(size[2])}
		hi := lo.plus(cube{1, 1, 1})
		lo[along], hi[along] = 0, 1+rng.IntN(size[along])
		fix(fmt.Sprint("stub ", i+1), cells(lo, hi))
	}
	for i := range 1 + rng.IntN(6) {
		b := setting.Body{Name: fmt.Sprint("body ", i+1), Stands: rng.IntN(8) == 0}
		if n := len(r.Bodies); n > 0 && !b.Stands && rng.IntN(4) == 0 {
			b.On = []string{r.Bodies[rng.IntN(n)].Name}
		}
		for range 1 + rng.IntN(3) {
			var lo, hi cube
			for k := range lo {
				lo[k] = rng.IntN(size[k])
				hi[k] = lo[k] + 1 + rng.IntN(min(3, size[k]-lo[k]))
			}
			for _, box := range less(cells(lo, hi), taken) {
				b.Solids = append(b.Solids, setting.Solid{Name: fmt.Sprint("part ", len(b.Solids)+1), Box: box})
				taken = append(taken, box)
			}
		}
		if len(b.Solids) > 0 {
			r.Bodies = append(r.Bodies, b)
		}
	}
	return r
}

// less is a box less others.
func less(b geom.Box, others []geom.Box) []geom.Box {
	left := []geom.Box{b}
	for _, o := range others {
		var next []geom.Box
		for _, l := range left {
			next = append(next, setting.Less(l, o)...)
		}
		left = next
	}
	return left
}

// askew is the room turned as a whole, with a post far below in the old frame: then bodies can
// slide four ways more, and what can be set is the same.
func askew(r setting.Room) setting.Room {
	f := geom.Frame{Origin: geom.Point{X: 7 * cell, Y: -3 * cell}, Turn: 904 * geom.Degree / 10}
	turned := func(solids []setting.Solid) []setting.Solid {
		solids = slices.Clone(solids)
		for i := range solids {
			solids[i].Frame = f
		}
		return solids
	}
	r.Fixed = append(turned(r.Fixed), setting.Solid{Name: "post", Box: cells(cube{0, 0, -999}, cube{1, 1, -998})})
	r.Bodies = slices.Clone(r.Bodies)
	for i := range r.Bodies {
		r.Bodies[i].Solids = turned(r.Bodies[i].Solids)
	}
	if r.Door != nil {
		door := *r.Door
		door.Frame = f
		r.Door = &door
	}
	return r
}
