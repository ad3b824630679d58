package paper

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view"
)

// table is a list with columns; shares are their widths in hundredths of the paper.
type table struct {
	heads  []string
	shares []Length
	rows   [][]string
}

// table sets a list, on further papers where one does not hold it.
func (f *flow) table(t *table) {
	f.row(t, t.heads, true)
	for _, r := range t.rows {
		if f.y-f.rowHeight(t, r) < f.room().Y.Lo {
			s := f.last()
			f.open(s.Name, continued(s.Title), "", s.cautions...)
			f.row(t, t.heads, true)
		}
		f.row(t, r, false)
	}
}

const rowLeading = figures * 13 / 10

func (t *table) cell(i int, text string, wide Length) []string {
	return lines(text, figures, wide*t.shares[i]/100-2*mm)
}

func (f *flow) rowHeight(t *table, cells []string) Length {
	most := 1
	for i, c := range cells {
		most = max(most, len(t.cell(i, c, f.room().X.Size())))
	}
	return Length(most)*rowLeading + 15*mm/10
}

func (f *flow) row(t *table, cells []string, bold bool) {
	room, s := f.room(), f.last()
	x := room.X.Lo
	for i, c := range cells {
		y := f.y
		for _, l := range t.cell(i, c, room.X.Size()) {
			y -= rowLeading
			s.words(geom.Point{X: x, Y: y}, figures, model.Start, bold, l)
		}
		x += room.X.Size() * t.shares[i] / 100
	}
	f.y -= f.rowHeight(t, cells)
	s.line(model.ShapeRule, geom.Point{X: room.X.Lo, Y: f.y}, geom.Point{X: room.X.Hi, Y: f.y})
}

// several puts small views side by side, all at one scale, each with its title over it.
func (f *flow) several(draws []view.Drawing, next func()) {
	room := f.room()
	x, row, n := room.X.Lo, Length(0), scale(1)
	for _, draw := range draws {
		_, fit := f.fits(draw, room.X.Size()*31/100, room.Y.Size()*40/100)
		n = max(n, fit)
	}
	for _, draw := range draws {
		v := draw(view.Type{Height: figures * Length(n)})
		title := lines(v.Title, figures, room.X.Size()*31/100)
		head := Length(len(title)) * rowLeading
		wide, high := n.on(v.Bounds.X.Size()), n.on(v.Bounds.Y.Size())+head
		for _, l := range title {
			wide = max(wide, view.TypeWidth(l, figures))
		}
		if x > room.X.Lo && x+wide > room.X.Hi {
			x, f.y, row = room.X.Lo, f.y-row-2*air, 0
		}
		if f.y-high < room.Y.Lo {
			next()
			x, row = room.X.Lo, 0
		}
		s, y := f.last(), f.y
		for _, l := range title {
			y -= rowLeading
			s.words(geom.Point{X: x, Y: y}, figures, model.Start, true, l)
		}
		f.scaled(n)
		s.put(&v, n, geom.Point{X: x, Y: f.y - high})
		x, row = x+wide+3*air, max(row, high)
	}
}

// siteFrame draws the frame, the foot with what is to be heeded, and the title block.
func (s *siteSheet) siteFrame(m *model.Model) {
	w := s.Size.X - 2*margin
	s.rect(model.ShapeFrame, geom.R(margin, margin, margin+w, s.Size.Y-margin))
	top := margin + siteBlock
	s.line(model.ShapeFrame, geom.Point{X: margin, Y: top}, geom.Point{X: margin + w, Y: top})
	foot := again
	for _, c := range s.cautions {
		foot += " " + c
	}
	if slices.ContainsFunc(s.Lettering, func(l model.Lettering) bool { return strings.Contains(l.Text, "~") }) {
		foot += " " + m.Build.Rounding()
	}
	foots := lines(foot, smallest, w-2*air)
	y := top + 2*mm + Length(len(foots)-1)*smallest*13/10
	for _, l := range foots {
		s.words(geom.Point{X: margin + air, Y: y}, smallest, model.Start, true, l)
		y -= smallest * 13 / 10
	}
	cells := []cell{
		{46, "Build", m.Build.Name},
		{15, "Scale", cmp.Or(s.ratio, none)},
		{13, "Sizes in", unitName(m.Build.Unit)},
		{13, "Revision", cmp.Or(m.Build.Revision, none)},
		{13, "Sheet", fmt.Sprintf("%d of %d", s.Number, s.Of)},
	}
	x := margin
	for i, c := range cells {
		if i > 0 {
			s.line(model.ShapeRule, geom.Point{X: x, Y: margin}, geom.Point{X: x, Y: top})
		}
		wide := w * c.share / 100
		s.words(geom.Point{X: x + 2*mm, Y: top - 45*mm/10}, smallest, model.Start, false, c.name)
		s.words(geom.Point{X: x + 2*mm, Y: margin + 3*mm}, smallest+mm, model.Start, true, clipped(c.value, smallest+mm, wide-3*mm))
		x += wide
	}
}

// continued is the title of a paper that goes on with what the one before began.
func continued(title string) string { return strings.TrimSuffix(title, more) + more }

const more = ", continued"

// clipped shortens a text that is wider than most.
func clipped(text string, height, most Length) string {
	if view.TypeWidth(text, height) <= most {
		return text
	}
	runes := []rune(text)
	for len(runes) > 0 && view.TypeWidth(string(runes)+"…", height) > most {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "…"
}

// lines breaks a text into lines that are no wider than most; a fraction and a unit stay with their number.
func lines(text string, height, most Length) (out []string) {
	var words []string
	for _, word := range strings.Fields(text) {
		if last := len(words) - 1; last >= 0 && boundTo(words[last], word) {
			words[last] += " " + word
		} else {
			words = append(words, word)
		}
	}
	line := ""
	for _, word := range words {
		next := strings.TrimSpace(line + " " + word)
		if line != "" && view.TypeWidth(next, height) > most {
			out, next = append(out, line), word
		}
		line = next
	}
	return append(out, line)
}

// boundTo reports whether a word is a fraction or a unit of the number before it.
func boundTo(before, word string) bool {
	unit := strings.TrimRight(word, ".,;")
	return digit(before[len(before)-1]) && (unit == "in" || unit == "mm" || strings.Contains(word, "/") && digit(word[0]))
}

func digit(b byte) bool { return '0' <= b && b <= '9' }
