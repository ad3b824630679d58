// Package sawlist writes how a plain cut list comes out of sheets or sticks, as text for whoever
// cuts it. It takes a model that has parts, stock and one layout, and chooses words only.
package sawlist

import (
	"bufio"
	"cmp"
	"fmt"
	"io"

	"barwright/compile/model"
	"barwright/lang/finding"
)

// Text writes what is cut from what, and how good that is: a line for the whole, and for each sheet
// or stick the pieces that it gives. With cuts it tells the order of the saw too. The error is the
// writer's.
func Text(w io.Writer, m *model.Model, cuts bool) error {
	out := bufio.NewWriter(w)
	t := texts{out, m, m.PartsByID()}
	for i := range m.Layouts {
		l := &m.Layouts[i]
		t.head(l)
		for k := range l.Blanks {
			t.blank(l, k)
			if cuts {
				t.cuts(&l.Blanks[k])
			}
		}
	}
	return out.Flush()
}

type texts struct {
	*bufio.Writer
	m     *model.Model
	parts map[string]*model.Part // by ID; lookup only
}

// word is what a layout is cut from.
func word(l *model.Layout) string {
	if l.Kind == model.Panel {
		return "sheet"
	}
	return "stick"
}

// head tells what is bought: "3 sheets, the least possible: 2 of 96 in x 48 in, …".
func (t texts) head(l *model.Layout) {
	what := " from " + finding.Counted(l.Bought, word(l))
	switch {
	case l.Bought == 0:
		what = ", for which nothing is bought"
	case l.Least:
		what += ", the least possible"
	case l.AtLeast > 0:
		what += fmt.Sprintf(", and fewer than %d cannot do", l.AtLeast)
	}
	fmt.Fprintf(t, "%s%s; %.1f %% waste\n", finding.Counted(l.Pieces, "piece"), what, l.Waste*100)
	for i := 0; i < len(l.Blanks); {
		b, n := &l.Blanks[i], 1
		for i+n < len(l.Blanks) && l.Blanks[i+n].Own == b.Own && t.size(&l.Blanks[i+n]) == t.size(b) {
			n++
		}
		i += n
		if b.Own {
			fmt.Fprintf(t, "  %s of %s, there already\n", finding.Counted(n, "offcut"), t.size(b))
			continue
		}
		fmt.Fprintf(t, "  %s of %s", finding.Counted(n, word(l)), t.size(b))
		if price, ok := t.price(b); ok {
			fmt.Fprintf(t, ", %.2f each, %.2f in all", price, price*float64(n))
		}
		fmt.Fprintln(t)
	}
	edge := "  %s trimmed off each edge of a sheet\n"
	if l.Free {
		edge = "  %s kept from each edge\n"
		fmt.Fprintf(t, "  %s between pieces that lie anywhere\n", t.m.Build.Plain(t.m.Table.Spacing))
	} else {
		fmt.Fprintf(t, "  %s taken by each cut\n", t.m.Build.Plain(t.m.Saw.Kerf))
	}
	if width := t.m.SheetEdge(); width > 0 && l.Kind == model.Panel {
		fmt.Fprintf(t, edge, t.m.Build.Plain(width))
	}
}

// size of a sheet or a stick.
func (t texts) size(b *model.Blank) string {
	if b.Width == 0 {
		return t.m.Build.Plain(b.Length)
	}
	return t.m.Build.Plain(b.Length) + " x " + t.m.Build.Plain(b.Width)
}

// price of a sheet or a stick; ok is false where none is given.
func (t texts) price(b *model.Blank) (price float64, ok bool) {
	for i := range t.m.Stock.Sheets {
		for _, s := range t.m.Stock.Sheets[i].Sizes() {
			if s.Length == b.Length && s.Width == b.Width {
				return s.Price, s.Priced
			}
		}
	}
	for i := range t.m.Stock.Sticks {
		for _, s := range t.m.Stock.Sticks[i].Lengths {
			if s.Length == b.Length {
				return s.Price, s.Priced
			}
		}
	}
	return 0, false
}

// blank tells the pieces of one sheet or stick, equal ones in a line.
func (t texts) blank(l *model.Layout, k int) {
	b, what := &l.Blanks[k], finding.Capital(word(l))
	if b.Own {
		what = "Offcut"
	}
	fmt.Fprintf(t, "\n%s %d of %d: %s", what, k+1, len(l.Blanks), t.size(b))
	if x, y := b.Offcut.X.Size(), b.Offcut.Y.Size(); x > 0 && y > 0 {
		fmt.Fprintf(t, "; %s x %s is left", t.m.Build.Plain(t.m.Build.Usable(x)), t.m.Build.Plain(t.m.Build.Usable(y)))
	} else if n := len(b.Placed); b.Width == 0 && n > 0 {
		if left := b.Length - b.Placed[n-1].At.X.Hi - t.m.Saw.Kerf; left > 0 {
			fmt.Fprintf(t, "; %s is left", t.m.Build.Plain(left))
		}
	}
	fmt.Fprintln(t)
	var order []string
	count := map[string]int{} // lookup only
	for i := range b.Placed {
		text := t.piece(l, &b.Placed[i])
		if count[text] == 0 {
			order = append(order, text)
		}
		count[text]++
	}
	for _, text := range order {
		fmt.Fprintf(t, "  %3d  %s\n", count[text], text)
	}
}

// piece is a piece and its size along the grain and across it.
func (t texts) piece(l *model.Layout, p *model.Placed) string {
	part := t.parts[p.Part]
	x, y := part.Size()
	text := t.m.Build.Plain(x)
	if l.Kind == model.Panel {
		text += " x " + t.m.Build.Plain(y)
	}
	if p.Turned {
		text += ", turned"
	}
	for _, more := range []string{part.Label, part.Name} {
		if more = finding.OneLine(more); more != "" {
			text += "  " + more
		}
	}
	return text
}

// cuts tells the order of the saw, and which pieces each cut gives as they are to be.
func (t texts) cuts(b *model.Blank) {
	if len(b.Cuts) > 0 {
		fmt.Fprintln(t, "  Cuts in their order, each from edge to edge of a piece, so far from its left or its lower edge:")
	}
	for i, c := range b.Cuts {
		way, at := "across", c.At-c.Of.X.Lo
		if c.Along {
			way, at = "along", c.At-c.Of.Y.Lo
		}
		show := t.m.Build.Plain
		fmt.Fprintf(t, "  %3d. %s at %s of %s x %s", i+1, way, show(at), show(c.Of.X.Size()), show(c.Of.Y.Size()))
		for k, id := range b.Gives(c, t.m.Saw.Kerf) {
			fmt.Fprintf(t, "%s %s", []string{": gives", " and"}[k], cmp.Or(finding.OneLine(t.parts[id].Label), "a piece"))
		}
		fmt.Fprintln(t)
	}
}
