package spacing

import (
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
)

// What some share comes to the whole again, no two shares differ by more than a
// nanometre, and the larger ones come first.
func TestShare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		total, n := Length(rapid.Int64Range(0, 1e12).Draw(t, "total")), rapid.IntRange(1, 40).Draw(t, "n")
		sum, before := Length(0), Share(total, n, 0)
		for i := range n {
			share := Share(total, n, i)
			if share > before || Share(total, n, 0)-share > 1 {
				t.Fatalf("share %d of %d is %d after %d", i, n, share, before)
			}
			sum, before = sum+share, share
		}
		if sum != total {
			t.Errorf("%d shares of %d come to %d", n, total, sum)
		}
	})
}

// Pieces from the left are the fewest, join up, and each but the last reaches as
// far as any place lets it.
func TestSplitFromLeft(t *testing.T) {
	for _, test := range []struct {
		at   []Length
		ends []Length // nil: there is no way
	}{
		{nil, nil},
		{[]Length{40, 60, 100, 120}, []Length{60, 120, 150}},
		{[]Length{70, 140}, []Length{70, 140, 150}},
		{[]Length{71, 90}, nil},
	} {
		stretch := geom.Span{Hi: 150}
		at, ok := SplitFromLeft(stretch, 70, test.at)
		if ok != (test.ends != nil) {
			t.Errorf("%v: %t", test.at, ok)
			continue
		}
		end := stretch.Lo
		for i, piece := range Pieces(stretch, at) {
			if ok && (piece.Lo != end || piece.Hi != test.ends[i]) {
				t.Errorf("%v: piece %d is %v", test.at, i, piece)
			}
			end = piece.Hi
		}
	}
}
