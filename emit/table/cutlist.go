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
// the part as drawn should be the better ones: "drawn", "far", "both", "none". Laid tells
// where each comes out of its sheet or stick: "URN-L: 2 at 24 1/2in, 1/4in" is on sheet 2, so
// far from its left end and its lower edge; in it are all but pieces of slabs. Where the
// table asks for it, small is "yes" for pieces that need holding down.
func CutList(w io.Writer, m *model.Model) error {
	records := [][]string{{"count", "labels", "name", "kind", "stock", "length", "width", "thickness",
		"length_mm", "width_mm", "thickness_mm", "grain", "where", "banded", "good_face"}}
	flags := m.Table.Small > 0
	if flags {
		records[0] = append(records[0], "small")
	}
	records[0] = append(records[0], "laid")
	small, laid := m.SmallParts(), m.Laid()
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
		if flags {
			record = append(record, yes(small[c.Parts[0]]))
		}
		records = append(records, append(record, plain(places(m, &c, laid))))
	}
	return write(w, records)
}

// places tells where the pieces of a line lie, in its order.
func places(m *model.Model, c *model.Cut, laid map[string]model.Laid) string {
	var out []string
	for _, label := range c.Parts {
		l, ok := laid[label]
		if !ok {
			continue
		}
		at := m.Build.Plain(l.At.X.Lo)
		if l.Kind == model.Panel {
			at += ", " + m.Build.Plain(l.At.Y.Lo)
		}
		out = append(out, label+": "+strconv.Itoa(l.Number)+" at "+at)
	}
	return strings.Join(out, "; ")
}
