package paper

import (
	"fmt"
	"slices"

	"barwright/compile/atonce"
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view"
)

// Drawings lays out the views that a model has, by what drew them, and its sheets as they are cut, on
// paper of a size. Views keep their order and share a paper where they fit.
func Drawings(m *model.Model, drawings []view.Titled, size geom.Point) []model.Paper {
	views := slices.Concat(m.Views, m.Sheets)
	draws := slices.Concat(drawings, view.SheetDrawings(m))
	items := make([][]item, len(views)) // each at the scales that suit
	atonce.Each(len(views), func(i int) { items[i] = fit(m, &views[i], draws[i].Draw, inner(size)) })
	all := shelves(items, inner(size))
	clear(items)
	papers := make([]model.Paper, len(all))
	for i, rows := range all {
		s := newSheet(size)
		s.Number, s.Of = i+1, len(all)
		s.Name = fmt.Sprintf("%02d-%s", s.Number, rows[0].items[0].view.Name)
		s.fill(m, rows)
		for _, r := range rows {
			for i := range r.items {
				s.Views = append(s.Views, r.items[i].view.Name)
			}
		}
		s.frame(m, slices.Concat(rowItems(rows)...))
		papers[i], all[i] = s.Paper, nil // with its views, which take much memory
	}
	return papers
}

// row is what stands side by side on a paper.
type row struct {
	items []item
	wide  Length // with the air between items
	high  Length
}

// shelves puts items on papers in their order, in rows from the top: each at the largest of its
// scales that the last paper has room for, or on a new one. Where that has no room, all of it is
// laid anew with titles beside the views.
func shelves(items [][]item, room geom.Rect) (papers [][]row) {
	first := 0 // of those on the last paper
	for i, scales := range items {
		if n := len(papers); n > 0 {
			rows, ok := joined(papers[n-1], scales, room)
			if !ok {
				rows, ok = laidBeside(items[first:i+1], room)
			}
			if ok {
				papers[n-1] = rows
				continue
			}
		}
		first = i
		papers = append(papers, []row{newRow(scales[0])})
	}
	return papers
}

// laidBeside puts items on one paper, all with their titles beside them, if it can.
func laidBeside(items [][]item, room geom.Rect) (rows []row, ok bool) {
	for i, scales := range items {
		scales = slices.DeleteFunc(slices.Clone(scales), func(it item) bool { return !it.beside })
		switch {
		case len(scales) == 0:
			return nil, false
		case i == 0:
			rows = []row{newRow(scales[0])}
		default:
			if rows, ok = joined(rows, scales, room); !ok {
				return nil, false
			}
		}
	}
	return rows, ok
}

func newRow(it item) row { return row{[]item{it}, it.wide, it.high} }

// joined puts an item at one of its scales on a paper that has rows, if it can.
func joined(rows []row, scales []item, room geom.Rect) ([]row, bool) {
	high := Length(0) - between
	for _, r := range rows {
		high += r.high + between
	}
	last := &rows[len(rows)-1]
	scales = slices.Clone(scales)
	slices.SortStableFunc(scales, func(a, b item) int { return likeFirst(a, b, last.items[0].scale) })
	for _, it := range scales {
		taller := max(0, it.high-last.high)
		if last.wide+between+it.wide <= room.X.Size() && high+taller <= room.Y.Size() {
			last.items, last.wide, last.high = append(last.items, it), last.wide+between+it.wide, last.high+taller
			return rows, true
		}
		if high+between+it.high <= room.Y.Size() {
			return append(rows, newRow(it)), true
		}
	}
	return rows, false
}

// likeFirst puts items at a scale before others.
func likeFirst(a, b item, n scale) int {
	switch {
	case a.scale == b.scale:
		return 0
	case a.scale == n:
		return -1
	case b.scale == n:
		return 1
	}
	return 0
}

// rowItems are the items of some rows.
func rowItems(rows []row) (items [][]item) {
	for _, r := range rows {
		items = append(items, r.items)
	}
	return items
}

// fill draws rows on a paper: what is left of it is shared out, so that each view stands in the
// middle of a place of its own, with its title at the upper left corner of that.
func (s *sheet) fill(m *model.Model, rows []row) {
	room := inner(s.Size)
	spare := room.Y.Size() + between
	for _, r := range rows {
		spare -= r.high + between
	}
	top := room.Y.Hi
	for _, r := range rows {
		high := r.high + spare/Length(len(rows))
		x, more := room.X.Lo, (room.X.Size()-r.wide)/Length(len(r.items))
		for i := range r.items {
			it := &r.items[i]
			s.item(m, it, geom.R(x, top-high, x+it.wide+more, top))
			x += it.wide + more + between
		}
		top -= high + between
	}
}

// item draws a view within its place.
func (s *sheet) item(m *model.Model, it *item, place geom.Rect) {
	x, y := place.X.Lo+indent, place.Y.Hi
	for _, l := range it.title {
		y -= heading * leading / 100
		s.words(geom.Point{X: x, Y: y + heading/4}, heading, model.Start, true, l)
	}
	for _, l := range it.note {
		y -= note * leading / 100
		s.words(geom.Point{X: x, Y: y + note/4}, note, model.Start, false, l)
	}
	if it.barAfter {
		s.bar(m, it.scale, geom.Point{X: x + it.scaleWidth(), Y: y + note/4})
	} else {
		s.bar(m, it.scale, geom.Point{X: x, Y: y - 2*note + note/4})
	}
	if it.beside {
		place.X.Lo += it.said
	} else {
		place.Y.Hi -= it.head()
	}
	size := it.size()
	at := geom.Point{X: place.X.Lo + (place.X.Size()-size.X)/2, Y: place.Y.Lo + (place.Y.Size()-size.Y)/2}
	s.put(&it.view, it.scale, at)
}
