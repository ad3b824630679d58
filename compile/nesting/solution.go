package nesting

import "barwright/compile/geom"

// sheet is one sheet with what is cut from it, as a search changes it: a tree, which a saw can
// cut, or a bed, on which pieces lie anywhere.
type sheet[S any] interface {
	base() *blank
	// reset makes it an empty sheet of a kind.
	reset(s *search, kind int)
	// copyTo makes a sheet like this one of another, whose memory is used again, and tells the
	// work of that.
	copyTo(S) (work int)
	// gist tells of its offcuts.
	gist() gist
	// best has the search find the best place for a piece, if that is better than what it has.
	// The sheet is number i. upright and turned tell how some offcut may take the piece.
	best(s *search, i int, p *shape, upright, turned bool)
	put(s *search, piece int32, at spot)
	// ruin takes pieces out, about as many as told, and appends them.
	ruin(s *search, take int, out []int32) []int32
	// pieces appends all of them.
	pieces(out []int32) []int32
	// tell is what is cut in the end, pieces by their index in the job.
	tell(s *search, kerf Length, pieces []int) Used
}

// blank is what all sorts of sheets have in common.
type blank struct {
	kind  int     // which of the sheets on sale
	used  float64 // area of the pieces
	count int     // of the pieces
	held  int     // how many solutions hold it
}

func (b *blank) base() *blank { return b }

// gist is what most looks at a sheet need.
type gist struct {
	free       float64
	wide, high float64 // the most of any offcut
	spread     float64 // squares of the areas of all offcuts that do not overlap
	largest    float64 // square of the area of the largest
	changed    bool    // since the solution was copied
}

// spot is where a piece may go, and how much of the offcuts' worth is lost by it.
type spot struct {
	sheet          int
	node           int32 // of a tree, or the space of a bed
	turned, alongX bool
	loss           float64
	at             geom.Point // of a piece with notches on a bed: its lower left corner
}

// solution is a set of sheets, and the pieces that are in none.
type solution[S sheet[S]] struct {
	sheets []laid[S]
	out    []int32
	bought []int // of each kind
	price  int64
	cost   float64
}

// laid is a sheet of a solution.
type laid[S sheet[S]] struct {
	*blank // of the sheet
	gist
	on S
}

// copyTo makes a solution like this one of another, whose memory is used again.
func (x *solution[S]) copyTo(c *solution[S]) {
	sheets, out, bought := append(c.sheets[:0], x.sheets...), append(c.out[:0], x.out...), append(c.bought[:0], x.bought...)
	*c = *x
	c.sheets, c.out, c.bought = sheets, out, bought
	for i := range c.sheets {
		c.sheets[i].held++
		c.sheets[i].changed = false
	}
}

// emptiest is the sheet that holds the least.
func (x *solution[S]) emptiest() int {
	least := 0
	for i := range x.sheets {
		if x.sheets[i].used < x.sheets[least].used {
			least = i
		}
	}
	return least
}

// free is the area that is left of all sheets.
func (x *solution[S]) free() (sum float64) {
	for i := range x.sheets {
		sum += x.sheets[i].free
	}
	return sum
}

// largest is the square of the area of the largest offcut, of sheets that are cut at all.
func (x *solution[S]) largest() (most float64) {
	for i := range x.sheets {
		if l := &x.sheets[i]; l.count > 0 {
			most = max(most, l.largest)
		}
	}
	return most
}
