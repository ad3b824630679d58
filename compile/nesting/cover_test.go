package nesting

import "testing"

// TestCoverOfAnyArea bounds sheets of an inch's odd fractions, where what is left of a need after
// parts of sheets is no exact 0.
func TestCoverOfAnyArea(t *testing.T) {
	const inch = 25_400_000
	j := Job{Kerf: inch / 8, Work: 10_000, Sheets: []Sheet{{Size: Size{96 * inch, 48 * inch}}}}
	for range 20 {
		j.Pieces = append(j.Pieces, Piece{Size: Size{40 * inch, 20 * inch}, Turns: true})
	}
	// By area alone, 20 times 40 1/8 x 20 1/8 fill 3.5 of 96 1/8 x 48 1/8.
	if l := j.Solve(); l.Fewest < 4 || l.Fewest > len(l.Used) || l.AtLeast <= 0 || l.AtLeast > l.Price {
		t.Errorf("%d sheets of at least %d, at %d of at least %d", len(l.Used), l.Fewest, l.Price, l.AtLeast)
	}
}
