package nesting_test

import (
	"reflect"
	"runtime"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/nesting"
	"barwright/compile/nesting/nestingtest"
)

const mm = 1_000_000

// drawJob draws a list of parts as a bar or its like has them, and odd ones: some with grain,
// some alike, with a kerf or none, for sheets on sale and few left over.
func drawJob(t *rapid.T) *nesting.Job {
	unit := rapid.SampledFrom([]nesting.Length{1, mm, 25_400_000 / 32}).Draw(t, "unit")
	length := func(least, most int, name string) nesting.Length {
		return nesting.Length(rapid.IntRange(least, most).Draw(t, name)) * unit
	}
	j := &nesting.Job{
		Kerf:   length(0, 5, "kerf"),
		Stages: rapid.SampledFrom([]int{0, 0, 1, 2, 3, 4}).Draw(t, "stages"),
		Free:   rapid.IntRange(0, 3).Draw(t, "free") == 0,
		Work:   60_000,
	}
	priced := rapid.Bool().Draw(t, "priced")
	for range rapid.IntRange(1, 4).Draw(t, "sheets") {
		s := nesting.Sheet{Size: nesting.Size{X: length(40, 250, "x"), Y: length(40, 150, "y")}}
		if priced {
			s.Price = int64(rapid.IntRange(0, 9000).Draw(t, "price"))
		}
		s.Most = rapid.SampledFrom([]int{0, 0, 1, 2}).Draw(t, "most")
		j.Sheets = append(j.Sheets, s)
	}
	for range rapid.IntRange(0, 12).Draw(t, "kinds") {
		p := nesting.Piece{
			Size:  nesting.Size{X: length(1, 160, "x"), Y: length(1, 110, "y")},
			Turns: rapid.Bool().Draw(t, "turns"),
		}
		if rapid.IntRange(0, 5).Draw(t, "full") == 0 {
			p.Y = j.Sheets[0].Y
		}
		for range rapid.SampledFrom([]int{0, 0, 0, 1, 2}).Draw(t, "notches") {
			x, y := length(0, 120, "x"), length(0, 80, "y")
			p.Notches = append(p.Notches, geom.R(x, y, x+length(1, 90, "w"), y+length(1, 60, "h")))
		}
		for range rapid.IntRange(1, 5).Draw(t, "copies") {
			j.Pieces = append(j.Pieces, p)
		}
	}
	return j
}

// TestRandom lays out 1 000 lists in ten runs of a hundred.
func TestRandom(t *testing.T) {
	for range 10 {
		rapid.Check(t, func(t *rapid.T) {
			j := drawJob(t)
			before := runtime.GOMAXPROCS(4)
			l := j.Solve()
			runtime.GOMAXPROCS(1)
			again := j.Solve()
			runtime.GOMAXPROCS(before)
			if err := nestingtest.Check(j, l); err != nil {
				t.Fatal(err)
			}
			if !reflect.DeepEqual(l, again) {
				t.Fatal("another layout on one processor")
			}
		})
	}
}
