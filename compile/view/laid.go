package view

import (
	"fmt"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/filename"
)

// Sheets returns a drawing of each sheet as it is laid out, in the order of the layouts and of
// their blanks. Their names begin with "sheet-".
func Sheets(m *model.Model) []model.View {
	var names filename.Names
	var views []model.View
	parts := map[string]*model.Part{} // by ID; lookup only
	for i := range m.Parts {
		parts[m.Parts[i].ID] = &m.Parts[i]
	}
	for i := range m.Layouts {
		l := &m.Layouts[i]
		for k := range l.Blanks {
			if l.Kind != model.Panel {
				continue
			}
			v := laidOut(m, l, k, parts)
			name := filename.With(strings.TrimPrefix(l.Stock, "sheet."), fmt.Sprintf("-%d", k+1))
			v.Name = "sheet-" + names.Free(name)
			views = append(views, v)
		}
	}
	return views
}

// laidOut shows a sheet with its parts, the cuts of the saw in their order, and the offcut. A
// cut bears its number and how far it is from the near edge of what it parts.
func laidOut(m *model.Model, l *model.Layout, k int, parts map[string]*model.Part) model.View {
	b := &l.Blanks[k]
	whole := geom.R(0, 0, b.Length, b.Width)
	s := newSheet(m, whole, roomShare)
	s.view.Title = fmt.Sprintf("%s, no. %d of %d", l.Stock, k+1, len(l.Blanks))
	s.view.Note = s.laidNote(m, l, b)
	s.rect(model.ShapeOpening, whole, "", s.num(b.Length)+" × "+s.num(b.Width))
	for _, p := range b.Placed {
		part := parts[p.Part]
		s.area(model.ShapePanel, p.Outline(part), part.ID, partTitle(part))
	}
	for _, c := range b.Cuts {
		from, to := ends(c, m.Saw.Kerf)
		s.line(model.ShapeThin, "", "", from, to)
	}
	for _, p := range b.Placed {
		s.nameLying(parts[p.Part], p.At)
	}
	if size := b.Offcut; min(size.X.Size(), size.Y.Size()) > 2*s.h {
		s.rect(model.ShapeHidden, size, "", "offcut")
		s.inside(upright(size), "offcut", s.num(size.X.Size())+" × "+s.num(size.Y.Size()))
	}
	for n, c := range b.Cuts {
		s.number(n+1, c, m.Saw.Kerf)
	}
	return s.finish()
}

func (s *sheet) laidNote(m *model.Model, l *model.Layout, b *model.Blank) string {
	note := s.num(b.Length) + " × " + s.num(b.Width)
	if b.Own {
		note += ", an offcut that is there"
	}
	for i := range m.Stock.Sheets {
		if sheet := &m.Stock.Sheets[i]; sheet.Name == l.Stock && sheet.Grain {
			note += "; the grain runs from left to right"
		}
	}
	switch {
	case l.Free:
		return note + ". Parts lie " + s.num(m.Table.Spacing) + " apart and " + s.num(m.Table.Margin) + " from the edges, at least."
	case !b.Own && m.Saw.Trim > 0:
		note += ". First " + s.num(m.Saw.Trim) + " is trimmed off each edge"
	}
	return note + ". A line is a cut: its number in the order, and its distance from the left or lower edge of the piece that it parts."
}

// nameLying writes a part's label, and its size where there is room for it.
func (s *sheet) nameLying(p *model.Part, at geom.Rect) {
	size := s.caliper(at.X.Size()) + " × " + s.caliper(at.Y.Size())
	if home := upright(at); !s.inside(home, p.Label, size) && !s.inside(home, p.Label) {
		s.callout(geom.Point{X: at.X.Mid(), Y: at.Y.Mid()}, p.Label)
	}
}

// ends are those of the middle of a cut.
func ends(c model.SawCut, kerf Length) (from, to geom.Point) {
	at := c.At + kerf/2
	if c.Along {
		return geom.Point{X: c.Of.X.Lo, Y: at}, geom.Point{X: c.Of.X.Hi, Y: at}
	}
	return geom.Point{X: at, Y: c.Of.Y.Lo}, geom.Point{X: at, Y: c.Of.Y.Hi}
}

// number writes a cut's number beside its line where there is room, or else leads to it.
func (s *sheet) number(n int, c model.SawCut, kerf Length) {
	from, to := ends(c, kerf)
	near, turn := c.At-c.Of.X.Lo, 90*geom.Degree
	if c.Along {
		near, turn = c.At-c.Of.Y.Lo, 0
	}
	text := fmt.Sprintf("%d: %s", n, s.caliper(near))
	for _, strictly := range []bool{true, false} {
		for step := Length(1); step < 20; step++ {
			on := geom.Point{X: from.X + (to.X-from.X)*step/20, Y: from.Y + (to.Y-from.Y)*step/20}
			for _, side := range []Length{1, -1} {
				at := geom.Point{X: on.X - side*s.h*3/4, Y: on.Y}
				if c.Along {
					at = geom.Point{X: on.X, Y: on.Y + side*s.h*3/4}
				}
				t := s.text(at, turn, text)
				if s.core.Contains(s.boxOf(t).bounds()) && s.free(s.boxOf(t), strictly) {
					s.put(t)
					return
				}
			}
		}
	}
	s.callout(geom.Point{X: from.X + (to.X-from.X)/2, Y: from.Y + (to.Y-from.Y)/2}, text)
}
