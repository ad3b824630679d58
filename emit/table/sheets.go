package table

import (
	"io"
	"strconv"
	"strings"

	"barwright/compile/model"
)

// Sheets writes which part lies where on which sheet, one record for each: x along the sheet from
// its left end, y across it from its lower edge, to the lower left corner of the rectangle that
// the part is cut from. A part that is turned has its own x across the sheet.
func Sheets(w io.Writer, m *model.Model) error {
	records := [][]string{{"stock", "sheet", "of", "label", "name", "x", "y", "along", "across", "turned", "x_mm", "y_mm", "along_mm", "across_mm"}}
	parts := m.PartsByID()
	eachSheet(m, func(l *model.Layout, k int) {
		for _, p := range l.Blanks[k].Placed {
			part := parts[p.Part]
			record := []string{plain(l.Stock), strconv.Itoa(k + 1), strconv.Itoa(len(l.Blanks)), plain(part.Label), plain(part.Name)}
			figures := []model.Length{p.At.X.Lo, p.At.Y.Lo, p.At.X.Size(), p.At.Y.Size()}
			record = append(append(record, shown(m, figures)...), yes(p.Turned))
			records = append(records, append(record, inMM(figures)...))
		}
	})
	return write(w, records)
}

// SawCuts writes the cuts of each sheet in the order of the saw, after its edges are trimmed. Each
// goes from edge to edge of the piece that it parts, which lies at x and y and is so long along
// the sheet and across it; at is how far the near side of the cut is from its left or lower edge.
// What it gives are the labels of the parts that are cut to size by then, the near one first.
func SawCuts(w io.Writer, m *model.Model) error {
	records := [][]string{{"stock", "sheet", "cut", "runs", "at", "x", "y", "along", "across", "gives", "at_mm", "x_mm", "y_mm", "along_mm", "across_mm"}}
	labels := labelled(m)
	eachSheet(m, func(l *model.Layout, k int) {
		b := &l.Blanks[k]
		for n, c := range b.Cuts {
			runs, at := "across", c.At-c.Of.X.Lo
			if c.Along {
				runs, at = "along", c.At-c.Of.Y.Lo
			}
			record := []string{plain(l.Stock), strconv.Itoa(k + 1), strconv.Itoa(n + 1), runs}
			figures := []model.Length{at, c.Of.X.Lo, c.Of.Y.Lo, c.Of.X.Size(), c.Of.Y.Size()}
			var gives []string
			for _, id := range b.Gives(c, m.Saw.Kerf) {
				gives = append(gives, labels[id])
			}
			record = append(append(record, shown(m, figures)...), plain(strings.Join(gives, "; ")))
			records = append(records, append(record, inMM(figures)...))
		}
	})
	return write(w, records)
}

// labelled are the labels of parts by their ID. For lookup.
func labelled(m *model.Model) map[string]string {
	labels := map[string]string{}
	for i := range m.Parts {
		labels[m.Parts[i].ID] = m.Parts[i].Label
	}
	return labels
}

func eachSheet(m *model.Model, f func(l *model.Layout, blank int)) {
	for i := range m.Layouts {
		if l := &m.Layouts[i]; l.Kind == model.Panel {
			for k := range l.Blanks {
				f(l, k)
			}
		}
	}
}

func shown(m *model.Model, figures []model.Length) (out []string) {
	for _, l := range figures {
		out = append(out, m.Build.Plain(l))
	}
	return out
}

func inMM(figures []model.Length) (out []string) {
	for _, l := range figures {
		out = append(out, mm(l))
	}
	return out
}
