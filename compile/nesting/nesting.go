// Package nesting lays rectangles out on sheets, so that those bought cost as little as can be.
// It is geometry only and knows nothing of a model. Equal jobs give equal layouts on every
// machine; how long is searched is counted in work, not by a clock.
package nesting

import (
	"slices"

	"barwright/compile/geom"
)

// Length is the measure of every layout.
type Length = geom.Length

// Size is an extent along a sheet (x), and across it (y).
type Size struct{ X, Y Length }

// Piece is a rectangle to be cut. One that turns may lie with its x up the sheet, its y from
// right to left. Notches are what is cut away from it, from its lower left corner; in a free
// layout others may lie in these where that saves money.
type Piece struct {
	Size
	Turns   bool
	Notches []geom.Rect
}

// Sheet is a size on sale or left over, without its trim: its price in any unit of money, and
// how many there are; 0 is any number. Where no sheet has a price, their areas count instead.
type Sheet struct {
	Size
	Price int64
	Most  int
}

// Job is a demand. Kerf is what a saw takes between two pieces, or how far a router's bit keeps
// them apart.
type Job struct {
	Pieces []Piece
	Sheets []Sheet
	Kerf   Length
	Free   bool // pieces lie anywhere; else each cut goes from edge to edge of what it parts
	Stages int  // how often cuts may change their direction; 0 is any number
	Work   int  // how long to search; a million takes some 10 ms
}

// Quick and Long are the work of a build, and of one that is let search on, for each stock: some
// 50 ms, and two seconds.
const (
	Quick = 3_000_000
	Long  = 200_000_000
)

// Placed is where a piece lies on its sheet, from the lower left corner.
type Placed struct {
	Piece  int
	At     geom.Point
	Turned bool
}

// Cut parts a rectangle of a sheet in two from edge to edge. All cuts of a rectangle in one
// direction come one after the other, then what they part is cut further.
type Cut struct {
	Of    geom.Rect // what is cut
	Along geom.Axis // geom.U: the cut runs along x, at a height; geom.V: along y
	At    Length    // where the kerf begins
}

// Used is a sheet with what is cut from it. Cuts are in the order of the saw; a free layout has
// none. Offcut is the largest clean rectangle that the cuts leave, empty if there is none.
type Used struct {
	Sheet  int
	Placed []Placed
	Cuts   []Cut
	Offcut geom.Rect
}

// Layout is what is bought for a job, by kind of sheet and the fullest first, what it costs, and
// the least that all pieces can cost, 0 if too few sheets are left for them: areas in square
// micrometres where no sheet has a price. It is true of what is sawn in so many stages, or of what
// lies free, as the job has it. Fewest is a lower bound for the number of sheets that cost
// anything, 0 likewise.
type Layout struct {
	Used           []Used
	Out            []int // pieces in no sheet: misfits, and those that too few sheets are left for
	Price, AtLeast int64
	Fewest         int
	Work           int
}

// Misfits are the pieces that no sheet can give, by index.
func (j *Job) Misfits() (out []int) {
	for i, p := range j.Pieces {
		if !j.gives(p) {
			out = append(out, i)
		}
	}
	return out
}

// gives reports whether there is a sheet that a piece can be cut from.
func (j *Job) gives(p Piece) bool {
	return slices.ContainsFunc(j.Sheets, func(s Sheet) bool {
		return j.lies(p.Size, s.Size) || p.Turns && j.lies(Size{p.Y, p.X}, s.Size)
	})
}

// lies reports whether a piece fits a sheet so, and can be cut: cuts in one direction leave it
// as wide or as high as the sheet.
func (j *Job) lies(p, s Size) bool {
	return p.X <= s.X && p.Y <= s.Y && (j.Free || j.Stages != 1 || p.X == s.X || p.Y == s.Y)
}
