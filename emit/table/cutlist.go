package table

import (
	"io"
	"strconv"
	"strings"

	"barwright/compile/model"
)

// CutList writes the cut list of a model, one record for each distinct
// piece. Labels and places are joined with semicolons. Grain is "along" where
// the length runs with it, "none" where it does not matter. Banded names the edges
// that get banding, which is no part of the sizes; good_face tells which faces of
// the part as drawn should be the better ones: "drawn", "far", "both", "none". Where the
// table asks for it, small is "yes" for pieces that need holding down.
func CutList(w io.Writer, m *model.Model) error {
	records := [][]string{{"count", "labels", "name", "kind", "stock", "length", "width", "thickness",
		"length_mm", "width_mm", "thickness_mm", "grain", "where", "banded", "good_face"}}
	flags := m.Table.Small > 0
	if flags {
		records[0] = append(records[0], "small")
	}
	small := m.SmallParts()
	for _, c := range m.Cuts {
		grain := "along"
		if c.Grain == model.GrainNone {
			grain = "none"
		}
		show := m.Build.Plain
		record := []string{
			strconv.Itoa(c.Count), plain(strings.Join(c.Parts, "; ")), plain(c.Name), c.Kind.String(), plain(c.Stock),
			show(c.Length), show(c.Width), show(c.Thickness), mm(c.Length), mm(c.Width), mm(c.Thickness),
			grain, plain(strings.Join(c.Where, "; ")), plain(c.Banded), c.Good.String(),
		}
		if flags && small[c.Parts[0]] {
			record = append(record, "yes")
		} else if flags {
			record = append(record, "")
		}
		records = append(records, record)
	}
	return write(w, records)
}
