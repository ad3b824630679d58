package view

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/filename"
)

// Sticks returns a drawing of each stock of sticks or flat bar as it is cut, in the order of the
// layouts: its sticks one below the other. Their names begin with "sticks-".
func Sticks(m *model.Model) []model.View {
	var names filename.Names
	var views []model.View
	parts := m.PartsByID()
	for i := range m.Layouts {
		l := &m.Layouts[i]
		if l.Kind == model.Panel || len(l.Blanks) == 0 {
			continue
		}
		v := cutSticks(m, l, parts)
		_, name, _ := strings.Cut(l.Stock, ".")
		v.Name = "sticks-" + names.Of(name)
		views = append(views, v)
	}
	return views
}

// What is in the picture of sticks, in heights of its type: a stick, so that a label and a length
// stand in it, and the room between two, where those of short pieces stand.
const (
	stickTall  = 4
	stickApart = 3
)

// cutSticks shows what is cut from each stick, from left to right. Lengths are to scale.
func cutSticks(m *model.Model, l *model.Layout, parts map[string]*model.Part) model.View {
	h := l.Length / roomShare
	for i := range l.Blanks {
		h = max(h, l.Blanks[i].Length/roomShare)
	}
	row := func(i int, long Length) geom.Rect {
		top := -Length(i) * (stickTall + stickApart) * h
		return geom.R(0, top-stickTall*h, long, top)
	}
	last := len(l.Blanks) - 1
	s := newSheet(m, row(0, h*roomShare).Union(row(last, h*roomShare)), Type{Height: h}, roomShare)
	s.view.Title = l.Stock + ", " + sticksOf(l)
	s.view.Note = s.stickNote(m, l)
	for i := range l.Blanks {
		b := &l.Blanks[i]
		whole := row(i, b.Length)
		s.rect(model.ShapeOpening, whole, "", fmt.Sprintf("no. %d, %s", i+1, s.num(b.Length)))
		s.solid.add(upright(whole).box())
		for _, p := range b.Placed {
			part := parts[p.Part]
			s.rect(partKind(part), geom.Rect{X: p.At.X, Y: whole.Y}, part.ID, partTitle(part)+", "+s.caliper(p.At.X.Size()))
		}
		name := s.text(geom.Point{Y: whole.Y.Mid()}, 0, fmt.Sprintf("%d: %s", i+1, s.num(b.Length)))
		name.At.X = -h - name.Room/2
		s.put(name)
	}
	for i := range l.Blanks {
		s.nameCut(m, &l.Blanks[i], row(i, 0).Y, parts)
	}
	return s.finish()
}

// nameCut writes the label and the length of each piece of a stick, and what is left of it.
func (s *sheet) nameCut(m *model.Model, b *model.Blank, tall geom.Span, parts map[string]*model.Part) {
	rest := geom.Span{Hi: b.Length}
	for _, p := range b.Placed {
		label, long := parts[p.Part].Label, s.caliper(p.At.X.Size())
		home := upright(geom.Rect{X: p.At.X, Y: tall})
		if !s.inside(home, label, long) {
			s.callout(home.centre(), label+" "+long)
		}
		rest.Lo = max(rest.Lo, p.At.X.Hi+m.Saw.Kerf)
	}
	if rest.Size() > 0 {
		s.inside(upright(geom.Rect{X: rest, Y: tall}), "left over", s.caliper(m.Build.Usable(rest.Size())))
	}
}

// sticksOf says how many sticks there are: "1 stick", "6 sticks".
func sticksOf(l *model.Layout) string {
	word := "stick"
	if l.Kind == model.Steel {
		word = "bar"
	}
	if len(l.Blanks) != 1 {
		word += "s"
	}
	return strconv.Itoa(len(l.Blanks)) + " " + word
}

func (s *sheet) stickNote(m *model.Model, l *model.Layout) string {
	note := "Cut from the left; each piece bears its label and its length."
	i := slices.IndexFunc(m.Stock.Sticks, func(st model.Stick) bool { return st.Name == l.Stock })
	if i >= 0 && m.Stock.Sticks[i].Ends > 0 {
		note += " First " + s.num(m.Stock.Sticks[i].Ends) + " is cut off the end."
	}
	return note + " A cut takes " + s.num(m.Saw.Kerf) + ". Lengths are to scale, widths are not."
}
