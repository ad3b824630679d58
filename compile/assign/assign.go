// Package assign solves the assignment problem: which row gets which column, so that
// as many as can be get one, at the least cost.
package assign

// Edge says that a row may have a column, and what that costs.
type Edge struct {
	Row, Col int
	Cost     int64
}

// Least returns the column of each row, -1 for none: as many pairs as there can be, and
// among all ways to make so many, one whose costs add up to the least. Which of
// equally good ways depends on nothing but the order of the edges.
func Least(rows, cols int, edges []Edge) []int { return nil }
