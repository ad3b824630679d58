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

// Sheets returns a drawing of each sheet as it is laid out, in the order of the layouts and of
// their blanks. Their names begin with "sheet-".
func Sheets(m *model.Model) []model.View { return Drawn(SheetDrawings(m)) }

// SheetDrawings returns what draws each of the sheets, in their order.
func SheetDrawings(m *model.Model) (all []Titled) {
	parts := m.PartsByID()
	var names filename.Names
	for i := range m.Layouts {
		l := &m.Layouts[i]
		if l.Kind != model.Panel {
			continue
		}
		for k := range l.Blanks {
			name := filename.With(strings.TrimPrefix(l.Stock, "sheet."), fmt.Sprintf("-%d", k+1))
			head := Head{Name: "sheet-" + names.Free(name), Title: fmt.Sprintf("%s, no. %d of %d", l.Stock, k+1, len(l.Blanks))}
			all = append(all, titled(head, func(as Type) model.View { return laidOut(m, l, k, parts, as) }))
		}
	}
	return all
}

// laidOut shows a sheet with its parts, the cuts of the saw in their order, and the offcut. A
// cut bears its number and how far it is from the near edge of what it parts.
func laidOut(m *model.Model, l *model.Layout, k int, parts map[string]*model.Part, as Type) model.View {
	b := &l.Blanks[k]
	whole := geom.R(0, 0, b.Length, b.Width)
	s := newSheet(m, whole, as, roomShare)
	s.view.Note = s.laidNote(m, l, b)
	s.rect(model.ShapeOpening, whole, "", s.num(b.Length)+" × "+s.num(b.Width))
	for _, p := range b.Placed {
		part := parts[p.Part]
		s.area(model.ShapePanel, p.Outline(part), part.ID, partTitle(part))
	}
	if grained(m, l) {
		s.grain()
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
		s.inside(upright(size), "offcut", s.caliper(m.Build.Usable(size.X.Size()))+" × "+s.caliper(m.Build.Usable(size.Y.Size())))
	}
	var apart []string
	for n, c := range b.Cuts {
		if figure := s.number(n+1, c, m.Saw.Kerf); figure != "" {
			apart = append(apart, figure)
		}
	}
	if len(apart) > 0 {
		s.view.Note += " Where there is no room for the distance, it stands here: " + strings.Join(apart, "; ") + "."
	}
	return s.finish()
}

// grained reports whether what is laid out has a grain.
func grained(m *model.Model, l *model.Layout) bool {
	return slices.ContainsFunc(m.Stock.Sheets, func(s model.Sheet) bool { return s.Name == l.Stock && s.Grain })
}

// grain draws below a sheet which way its grain runs.
func (s *sheet) grain() {
	long, head, at := 8*s.h, s.h/2, geom.Point{Y: -3 * s.h / 2}
	end := at.Add(geom.Point{X: long})
	s.line(model.ShapeThin, "", "", at, end)
	for _, tip := range []struct {
		geom.Point
		to Length
	}{{at, head}, {end, -head}} {
		s.line(model.ShapeThin, "", "", geom.Point{X: tip.X + tip.to, Y: tip.Y + head/2}, tip.Point, geom.Point{X: tip.X + tip.to, Y: tip.Y - head/2})
	}
	word := s.text(at, 0, "grain")
	word.At.X = long + s.h/2 + word.Room/2
	s.put(word)
}

func (s *sheet) laidNote(m *model.Model, l *model.Layout, b *model.Blank) string {
	note := s.num(b.Length) + " × " + s.num(b.Width)
	if b.Own {
		note += ", an offcut that is there"
	}
	if grained(m, l) {
		note += "; the grain runs from left to right"
	}
	switch {
	case l.Free:
		return note + ". Parts lie " + s.num(m.Table.Spacing) + " apart and " + s.num(m.Table.Margin) + " from the edges, at least."
	case !b.Own && m.Saw.Trim > 0:
		note += ". First " + s.num(m.Saw.Trim) + " is trimmed off each edge"
	}
	return note + ". A line is a cut: its number in the order, and its distance from the left or lower edge of the piece that it parts."
}

// Captioned is a picture of a sheet to be printed alone: its title and what is said of it stand
// below it.
func Captioned(v model.View) model.View {
	lines := []string{v.Title}
	for _, word := range strings.Split(v.Note, " ") {
		last := &lines[len(lines)-1]
		if longer := *last + " " + word; len(lines) > 1 && TypeWidth(longer, v.TextHeight) <= v.Bounds.X.Size() {
			*last = longer
		} else {
			lines = append(lines, word)
		}
	}
	v.Texts = slices.Clone(v.Texts)
	s := begun(v)
	for _, line := range lines {
		s.put(s.text(geom.Point{X: v.Bounds.X.Mid(), Y: s.view.Bounds.Y.Lo - s.lineHeight()/2}, 0, line))
	}
	return s.view
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

// number writes a cut's number and its distance beside its line where there is room; or else the
// number alone, and returns both; or leads to them. None is broken into lines.
func (s *sheet) number(n int, c model.SawCut, kerf Length) (apart string) {
	near := c.At - c.Of.X.Lo
	if c.Along {
		near = c.At - c.Of.Y.Lo
	}
	text := fmt.Sprintf("%d: %s", n, s.caliper(near))
	whole := strings.ReplaceAll(text, " ", "\u00a0")
	switch from, to := ends(c, kerf); {
	case s.beside(from, to, text, true):
	case s.beside(from, to, strconv.Itoa(n), true):
		return whole
	case !s.beside(from, to, text, false):
		s.callout(geom.Point{X: from.X + (to.X-from.X)/2, Y: from.Y + (to.Y-from.Y)/2}, whole)
	}
	return ""
}

// beside writes a text along a line, to the left of it or above it, or else to the other side.
func (s *sheet) beside(from, to geom.Point, text string, strictly bool) bool {
	side, turn := geom.Point{X: -s.h * 3 / 4}, 90*geom.Degree
	if from.Y == to.Y {
		side, turn = geom.Point{Y: s.h * 3 / 4}, 0
	}
	for step := Length(1); step < 20; step++ {
		on := geom.Point{X: from.X + (to.X-from.X)*step/20, Y: from.Y + (to.Y-from.Y)*step/20}
		for _, at := range []geom.Point{on.Add(side), on.Sub(side)} {
			t := s.text(at, turn, text)
			if s.core.Contains(s.boxOf(t).bounds()) && s.free(s.boxOf(t), strictly) {
				s.put(t)
				return true
			}
		}
	}
	return false
}
