package paper

import (
	"fmt"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view"
)

// Drawings lays out all views of a model, which has them already, on paper of a size. A view of
// the whole build has a sheet of its own unless two fit; parts share sheets.
func Drawings(m *model.Model, size geom.Point) []model.Paper {
	var items []item
	for i, d := range view.Drawings(m) {
		items = append(items, fit(m, &m.Views[i], d, size))
	}
	sheets := shelves(items, size, m)
	papers := make([]model.Paper, len(sheets))
	for i, s := range sheets {
		s.Number, s.Of = i+1, len(sheets)
		s.Name = fmt.Sprintf("%02d-%s", s.Number, s.Name)
		s.frame(m)
		papers[i] = s.Paper
	}
	return papers
}

// item is a view at its scale, with what is written over it.
type item struct {
	view  model.View
	scale scale
	note  []string // its lines
	wide  Length
	high  Length
}

// fit finds the scale of a view: the largest at which it fits the paper, or a good half of it
// where it is one part.
func fit(m *model.Model, first *model.View, draw view.Drawing, size geom.Point) item {
	room := inner(size)
	scales := scalesOf(m.Build.Unit)
	for i := 0; ; i++ {
		last := i >= len(scales)-1
		n := scales[min(i, len(scales)-1)]
		if last {
			n <<= i - (len(scales) - 1)
		}
		share := Length(100)
		if first.Part != "" && n < 4 {
			continue
		}
		if first.Part != "" && n < 8 {
			share = 45
		}
		if n.on(first.Bounds.X.Size()-2*first.TextHeight) > room.X.Size()*share/100*9/8 {
			continue
		}
		it := item{view: draw(typeOn * Length(n)), scale: n}
		it.view.Name = first.Name
		it.measure(m, room.X.Size())
		if n > 10_000 || it.wide <= room.X.Size()*share/100 && it.high <= room.Y.Size()*share/100 {
			return it
		}
	}
}

// measure breaks the note into lines and tells how much of a paper the item takes.
func (it *item) measure(m *model.Model, most Length) {
	w := it.scale.on(it.view.Bounds.X.Size())
	title := view.TypeWidth(it.view.Title, heading) + air + it.barWidth(m)
	it.wide = min(max(w, title), most)
	it.note = wrap(it.view.Note, note, max(it.wide, min(most, 110*mm)))
	for _, l := range it.note {
		it.wide = max(it.wide, view.TypeWidth(l, note))
	}
	it.high = it.scale.on(it.view.Bounds.Y.Size()) + it.head()
}

// head is the height of title, bar and note.
func (it *item) head() Length {
	return heading*15/10 + note*15/10*Length(len(it.note)) + 3*note
}

// wrap breaks a text into lines that are no wider than most.
func wrap(text string, height, most Length) (lines []string) {
	line := ""
	for _, word := range strings.Fields(text) {
		next := strings.TrimSpace(line + " " + word)
		if line != "" && view.TypeWidth(next, height) > most {
			lines = append(lines, line)
			next = word
		}
		line = next
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// shelves puts items on sheets in their order, in rows from the top.
func shelves(items []item, size geom.Point, m *model.Model) (sheets []*sheet) {
	room := inner(size)
	var s *sheet
	var x, top, row Length // of the row: where the next item begins, its top, its height
	for i := range items {
		it := &items[i]
		if s != nil && x+it.wide > room.X.Hi { // a new row
			x, top, row = room.X.Lo, top-row-air, 0
		}
		if s == nil || top-it.high < room.Y.Lo {
			s = newSheet(size)
			s.Name, s.Title = it.view.Name, it.view.Title
			sheets = append(sheets, s)
			x, top, row = room.X.Lo, room.Y.Hi, 0
		}
		s.item(m, it, geom.Point{X: x, Y: top})
		x += it.wide + 2*air
		row = max(row, it.high)
	}
	return sheets
}

// item puts a view on the sheet, with its upper left corner at a point.
func (s *sheet) item(m *model.Model, it *item, at geom.Point) {
	switch {
	case s.scale == 0 && !s.mixed:
		s.scale = it.scale
	case s.scale != it.scale:
		s.scale, s.mixed = 0, true
	}
	y := at.Y - heading
	s.words(geom.Point{X: at.X, Y: y}, heading, model.Start, true, it.view.Title)
	for _, l := range it.note {
		y -= note * 15 / 10
		s.words(geom.Point{X: at.X, Y: y}, note, model.Start, false, l)
	}
	y -= note * 2
	s.bar(m, it.scale, geom.Point{X: at.X, Y: y})
	free := it.wide - it.scale.on(it.view.Bounds.X.Size())
	s.put(&it.view, it.scale, geom.Point{X: at.X + free/2, Y: at.Y - it.high})
}
