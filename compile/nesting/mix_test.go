package nesting_test

import (
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/nesting"
	"barwright/compile/nesting/nestingtest"
)

// TestMany lays out pieces in many copies, whose least is known by the working in the comments.
func TestMany(t *testing.T) {
	// Two of each go round a hole of 200 on a free sheet. Sawn, a sheet gives three at most.
	wheel := slices.Concat(pieces(20, 600, 400, false), pieces(20, 400, 600, false))
	square := []nesting.Sheet{{Size: size(1000, 1000), Price: 5}}
	for name, c := range map[string]struct {
		job    nesting.Job
		sheets []int // of each kind
	}{
		"round a hole":       {nesting.Job{Pieces: wheel, Sheets: square, Free: true}, []int{10}},
		"sawn round no hole": {nesting.Job{Pieces: wheel, Sheets: square}, []int{14}},
		// A sheet holds one of 510, and beside it one of 490, and as much again with three of 330.
		"three patterns": {nesting.Job{Pieces: slices.Concat(pieces(60, 510, 1000, false), pieces(60, 490, 500, false), pieces(180, 163, 500, false)),
			Sheets: square}, []int{60}},
		// 2 x 498 + 4 = 1000; a small sheet holds one piece for 2, a large one four for 5.
		"two sizes of sheets": {nesting.Job{Pieces: pieces(41, 498, 498, true), Sheets: append(square, nesting.Sheet{Size: size(500, 500), Price: 2}), Kerf: 4 * mm},
			[]int{10, 1}},
	} {
		t.Run(name, func(t *testing.T) {
			l, got := solved(t, &c.job)
			if !slices.Equal(got, c.sheets) || l.Price != l.AtLeast {
				t.Errorf("sheets %v for %d of at least %d; want %v", got, l.Price, l.AtLeast, c.sheets)
			}
		})
	}
}

// TestRandomMany lays out lists of few kinds in many copies.
func TestRandomMany(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := func(least, most int, name string) nesting.Length {
			return nesting.Length(rapid.IntRange(least, most).Draw(t, name)) * mm
		}
		j := &nesting.Job{
			Kerf:   length(0, 5, "kerf"),
			Stages: rapid.SampledFrom([]int{0, 0, 1, 2, 3, 4}).Draw(t, "stages"),
			Free:   rapid.IntRange(0, 3).Draw(t, "free") == 0,
			Work:   400_000,
		}
		for range rapid.IntRange(1, 3).Draw(t, "sheets") {
			j.Sheets = append(j.Sheets, nesting.Sheet{Size: nesting.Size{X: length(100, 250, "x"), Y: length(80, 150, "y")},
				Price: int64(rapid.IntRange(0, 9).Draw(t, "price")), Most: rapid.SampledFrom([]int{0, 0, 0, 1, 5}).Draw(t, "most")})
		}
		for range rapid.IntRange(1, 6).Draw(t, "kinds") {
			p := nesting.Piece{Size: nesting.Size{X: length(20, 160, "x"), Y: length(20, 110, "y")}, Turns: rapid.Bool().Draw(t, "turns")}
			if j.Stages == 1 {
				p.Y = j.Sheets[0].Y
			}
			j.Pieces = append(j.Pieces, slices.Repeat([]nesting.Piece{p}, rapid.IntRange(1, 30).Draw(t, "copies"))...)
		}
		l := j.Solve()
		if err := nestingtest.Check(j, l); err != nil {
			t.Fatal(err)
		}
		if again := j.Solve(); !reflect.DeepEqual(l, again) {
			t.Fatal("another layout of the same job")
		}
	})
}
