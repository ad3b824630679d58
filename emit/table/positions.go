package table

import (
	"io"
	"strconv"

	"barwright/compile/model"
)

// Positions writes where each piece of the layouts comes out of what is cut: a record a piece, in
// the order of the sheets and sticks. x and y are those of its lower left corner, from the lower
// left corner of its sheet or the left end of its stick; along and across are its own sizes by the
// grain, and where turned is "yes" it lies with the one across the other's way. own is "yes" where
// the sheet was there already. Pieces of sticks have no size across, and no y.
func Positions(w io.Writer, m *model.Model) error {
	parts := m.PartsByID()
	records := [][]string{{"piece", "more", "stock", "sheet", "sheet_length", "sheet_width", "own", "along", "across", "x", "y", "turned",
		"along_mm", "across_mm", "x_mm", "y_mm"}}
	show := m.Build.Plain
	for i := range m.Layouts {
		l := &m.Layouts[i]
		for k := range l.Blanks {
			b := &l.Blanks[k]
			for _, p := range b.Placed {
				part := parts[p.Part]
				x, y := part.Size()
				at := p.At
				r := []string{
					plain(part.Label), plain(part.Name), plain(l.Stock), strconv.Itoa(k + 1), show(b.Length), show(b.Width), yes(b.Own),
					show(x), show(y), show(at.X.Lo), show(at.Y.Lo), yes(p.Turned), mm(x), mm(y), mm(at.X.Lo), mm(at.Y.Lo),
				}
				if l.Kind != model.Panel {
					for _, none := range []int{5, 8, 10, 13, 15} {
						r[none] = ""
					}
				}
				records = append(records, r)
			}
		}
	}
	return write(w, records)
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return ""
}
