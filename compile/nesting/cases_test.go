package nesting_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/nesting"
	"barwright/compile/nesting/nestingtest"
)

func size(x, y nesting.Length) nesting.Size { return nesting.Size{X: x * mm, Y: y * mm} }

func pieces(n int, x, y nesting.Length, turns bool) []nesting.Piece {
	return slices.Repeat([]nesting.Piece{{Size: size(x, y), Turns: turns}}, n)
}

// TestCases lays out jobs whose least is known, by the working in the comments.
func TestCases(t *testing.T) {
	full := nesting.Sheet{Size: size(2440, 1220)}
	for name, c := range map[string]struct {
		job    nesting.Job
		sheets []int // of each kind
		out    int
	}{
		// 4 x 607 + 3 x 4 = 2440, and 2 x 608 + 4 = 1220. With a nanometre more 3 go to a sheet.
		"kerf exactly":  {nesting.Job{Pieces: pieces(8, 607, 608, false), Sheets: []nesting.Sheet{full}, Kerf: 4 * mm}, []int{1}, 0},
		"kerf too wide": {nesting.Job{Pieces: pieces(8, 607, 608, false), Sheets: []nesting.Sheet{full}, Kerf: 4*mm + 1}, []int{3}, 0},
		// 1300 is more than a sheet is high.
		"grain":  {nesting.Job{Pieces: pieces(2, 500, 1300, false), Sheets: []nesting.Sheet{full}}, []int{0}, 2},
		"turned": {nesting.Job{Pieces: pieces(2, 500, 1300, true), Sheets: []nesting.Sheet{full}}, []int{1}, 0},
		// Two small ones at 30 hold what a large one at 70 does.
		"small are cheaper": {nesting.Job{Pieces: pieces(2, 1200, 1200, false), Sheets: []nesting.Sheet{
			{Size: full.Size, Price: 70}, {Size: size(1220, 1220), Price: 30}}}, []int{0, 2}, 0},
		"a large one is cheaper": {nesting.Job{Pieces: pieces(2, 1200, 1200, false), Sheets: []nesting.Sheet{
			{Size: full.Size, Price: 55}, {Size: size(1220, 1220), Price: 30}}}, []int{1, 0}, 0},
		// One offcut is left over, and free; the second piece needs a sheet.
		"offcut in stock": {nesting.Job{Pieces: pieces(2, 600, 600, false), Sheets: []nesting.Sheet{
			{Size: full.Size, Price: 55}, {Size: size(700, 700), Most: 1}}}, []int{1, 0}, 0},
		"offcut will do": {nesting.Job{Pieces: pieces(1, 600, 600, false), Sheets: []nesting.Sheet{
			{Size: full.Size, Price: 55}, {Size: size(700, 700), Most: 1}}}, []int{0, 1}, 0},
		"too few": {nesting.Job{Pieces: pieces(5, 1200, 1200, false), Sheets: []nesting.Sheet{
			{Size: full.Size, Most: 2}}}, []int{2}, 1},
		// 1220 high strips need one stage; others two; and what is shorter than its strip three.
		"one stage": {nesting.Job{Pieces: append(pieces(3, 800, 1220, false), pieces(1, 30, 900, false)...),
			Sheets: []nesting.Sheet{full}, Stages: 1}, []int{1}, 1},
		// Strips of 700 and 500 high, the lower with a piece 400 high in it that is trimmed.
		"three stages": {nesting.Job{Pieces: slices.Concat(pieces(2, 1200, 700, false), pieces(1, 1200, 500, false), pieces(1, 1200, 400, false)),
			Sheets: []nesting.Sheet{full}, Stages: 3}, []int{1}, 0},
	} {
		t.Run(name, func(t *testing.T) {
			l, got := solved(t, &c.job)
			if !slices.Equal(got, c.sheets) || len(l.Out) != c.out {
				t.Errorf("sheets %v, %d out; want %v, %d", got, len(l.Out), c.sheets, c.out)
			}
		})
	}
}

// solved lays a job out quickly, and counts the sheets of each kind that it takes.
func solved(t *testing.T, j *nesting.Job) (l nesting.Layout, sheets []int) {
	t.Helper()
	j.Work = nesting.Quick
	l = j.Solve()
	if err := nestingtest.Check(j, l); err != nil {
		t.Fatal(err)
	}
	sheets = make([]int, len(j.Sheets))
	for _, u := range l.Used {
		sheets[u.Sheet]++
	}
	return l, sheets
}

// TestBounds bounds jobs for several sizes, by the working in the comments.
func TestBounds(t *testing.T) {
	full, half, own := nesting.Sheet{Size: size(2440, 1220), Price: 70}, nesting.Sheet{Size: size(1220, 1220), Price: 40}, nesting.Sheet{Size: size(700, 700), Most: 1}
	for name, c := range map[string]struct {
		pieces         []nesting.Piece
		sheets         []nesting.Sheet
		price          int64
		sheetsAt, used int
	}{
		// The offcut takes 0.49 of 0.72 m², and a half what is left, or all.
		"an offcut and a half": {pieces(2, 600, 600, false), []nesting.Sheet{full, half, own}, 40, 1, 1},
		"all from the offcut":  {pieces(1, 600, 600, false), []nesting.Sheet{full, half, own}, 0, 0, 1},
		// Nine of 600 x 600 are 3.24 m²: beside the offcut 2.75, one full sheet's 2.98.
		"a full one": {pieces(9, 600, 600, false), []nesting.Sheet{full, half, own}, 70, 1, 2},
		// Longer than half a sheet and higher too: one to a sheet, and none of the offcut.
		"one to each": {pieces(3, 1230, 620, false), []nesting.Sheet{full, own}, 210, 3, 3},
		// No area tells that the smaller one is too short.
		"only a full one is long enough": {pieces(1, 2300, 100, false), []nesting.Sheet{full, {Size: size(2000, 1220), Price: 50}}, 70, 1, 1},
		// 2 x 2.4 m² of 1000 x 2400 lie across no half; the third piece fits one.
		"two full ones and a half": {slices.Concat(pieces(2, 2400, 1000, false), pieces(1, 1200, 1200, false)), []nesting.Sheet{full, half}, 180, 3, 3},
	} {
		t.Run(name, func(t *testing.T) {
			j := nesting.Job{Pieces: c.pieces, Sheets: c.sheets, Work: nesting.Quick}
			l := j.Solve()
			if err := nestingtest.Check(&j, l); err != nil {
				t.Fatal(err)
			}
			if l.AtLeast != c.price || l.Price != c.price || l.Fewest != c.sheetsAt || len(l.Used) != c.used {
				t.Errorf("%d sheets at %d, at least %d at %d; want %d at %d, at least %d", len(l.Used), l.Price, l.Fewest, l.AtLeast, c.used, c.price, c.sheetsAt)
			}
		})
	}
}

// TestTooFew ends soon where no search can find room: four sheets do not hold five pieces each
// larger than half a sheet, either way.
func TestTooFew(t *testing.T) {
	for _, free := range []bool{false, true} {
		j := nesting.Job{Pieces: pieces(5, 1200, 1000, true), Sheets: []nesting.Sheet{{Size: size(1300, 1300), Most: 4}}, Work: 1000 * nesting.Quick, Free: free}
		l := j.Solve()
		if err := nestingtest.Check(&j, l); err != nil {
			t.Fatal(err)
		}
		if len(l.Out) != 1 || l.AtLeast != 0 || l.Fewest != 0 || l.Work > nesting.Quick/100 {
			t.Errorf("free %v: %d out, at least %d at %d, work %d", free, len(l.Out), l.Fewest, l.AtLeast, l.Work)
		}
	}
}

// TestOffcut leaves the largest rectangle: strips of 300 and 400 side by side leave 1740 by 1220.
func TestOffcut(t *testing.T) {
	j := nesting.Job{
		Pieces: slices.Concat(pieces(4, 300, 305, true), pieces(2, 400, 610, true)),
		Sheets: []nesting.Sheet{{Size: size(2440, 1220)}},
		Work:   nesting.Quick,
	}
	l := j.Solve()
	if err := nestingtest.Check(&j, l); err != nil {
		t.Fatal(err)
	}
	if got, want := l.Used[0].Offcut, geom.R(700*mm, 0, 2440*mm, 1220*mm); got != want {
		t.Errorf("offcut %v, want %v", got, want)
	}
}

// TestWhole cuts sheets up at random, and finds how to cut them with nothing left.
func TestWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sheet := nesting.Size{X: 100, Y: 60}
		j := nesting.Job{Sheets: []nesting.Sheet{{Size: sheet, Price: 7}}, Work: 10 * nesting.Quick}
		sheets := rapid.IntRange(1, 2).Draw(t, "sheets")
		for range sheets {
			parts := []nesting.Size{sheet}
			for range rapid.IntRange(0, 4).Draw(t, "cuts") {
				i := rapid.IntRange(0, len(parts)-1).Draw(t, "of")
				p := parts[i]
				a, b := p, p
				if rapid.Bool().Draw(t, "x") && p.X > 1 {
					a.X = nesting.Length(rapid.IntRange(1, int(p.X)-1).Draw(t, "at"))
					b.X -= a.X
				} else if p.Y > 1 {
					a.Y = nesting.Length(rapid.IntRange(1, int(p.Y)-1).Draw(t, "at"))
					b.Y -= a.Y
				} else {
					continue
				}
				parts[i] = a
				parts = append(parts, b)
			}
			for _, p := range parts {
				j.Pieces = append(j.Pieces, nesting.Piece{Size: p})
			}
		}
		l := j.Solve()
		if err := nestingtest.Check(&j, l); err != nil {
			t.Fatal(err)
		}
		if len(l.Used) != sheets || l.Fewest != sheets || l.Price != l.AtLeast {
			t.Fatalf("%d sheets of at least %d, cut from %d", len(l.Used), l.Fewest, sheets)
		}
	})
}
