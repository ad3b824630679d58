package paper

import (
	"cmp"
	"fmt"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view"
	"barwright/lang/length"
)

// cell is a field of the title block.
type cell struct {
	share       Length // of the block's width, in hundredths
	name, value string
}

// frame draws the frame and the title block. Its fields follow the habits of ISO 7200 (from
// memory); there is no date, for the same build gives the same papers on any day.
func (s *sheet) frame(m *model.Model, items []item) {
	s.Title = titles(items, s.Size.X)
	s.rect(model.ShapeFrame, geom.R(margin, margin, s.Size.X-margin, s.Size.Y-margin))
	s.line(model.ShapeFrame, geom.Point{X: margin, Y: margin + block}, geom.Point{X: s.Size.X - margin, Y: margin + block})
	s.line(model.ShapeRule, geom.Point{X: margin, Y: margin + block/2}, geom.Point{X: s.Size.X - margin, Y: margin + block/2})
	scales := items[0].scale.words(m.Build.Unit)
	for i := range items {
		if items[i].scale != items[0].scale {
			scales = "as beside each view"
		}
	}
	s.cells(margin+block/2, []cell{
		{44, "Build", m.Build.Name},
		{24, "Scale", scales},
		{10, "Sizes in", unitName(m.Build.Unit)},
		{11, "Revision", cmp.Or(m.Build.Revision, none)},
		{11, "Sheet", fmt.Sprintf("%d of %d", s.Number, s.Of)},
	})
	x := s.cells(margin, []cell{{onIt, "On it", s.Title}})
	s.check(m, geom.Point{X: x + 2*mm, Y: margin})
}

// none stands in a field that has nothing.
const none = "–"

func unitName(u length.Unit) string {
	if u.Imperial() {
		return "inches"
	}
	return "mm"
}

// onIt is how much of the title block tells what is on the paper.
const onIt = 44

// cells writes fields of a row of the title block from its lower edge. It returns where the
// last one ends.
func (s *sheet) cells(y Length, cells []cell) (x Length) {
	x = margin
	for _, c := range cells {
		if x > margin {
			s.line(model.ShapeRule, geom.Point{X: x, Y: y}, geom.Point{X: x, Y: y + block/2})
		}
		wide := (s.Size.X - 2*margin) * c.share / 100
		s.words(geom.Point{X: x + 2*mm, Y: y + block/2 - 27*mm/10}, 19*mm/10, model.Start, false, c.name)
		height := 32 * mm / 10
		for height > 18*mm/10 && view.TypeWidth(c.value, height) > wide-4*mm {
			height -= mm / 10
		}
		s.words(geom.Point{X: x + 2*mm, Y: y + 18*mm/10}, height, model.Start, true, clipped(c.value, height, wide-4*mm))
		x += wide
	}
	return x
}

// check draws a bar of a length that is true on paper, to be measured after printing.
func (s *sheet) check(m *model.Model, at geom.Point) {
	s.line(model.ShapeRule, geom.Point{X: at.X - 2*mm, Y: at.Y}, geom.Point{X: at.X - 2*mm, Y: at.Y + block/2})
	step, n := 20*mm, Length(5)
	if m.Build.Unit.Imperial() {
		step, n = length.Inch, 4
	}
	s.words(geom.Point{X: at.X, Y: at.Y + block/2 - 27*mm/10}, 19*mm/10, model.Start, false, "Measure this bar: it is "+barWords(m.Build.Unit)+" where the printer kept to size")
	s.stripes(geom.Point{X: at.X, Y: at.Y + 2*mm}, step, n, mm)
}

// barWords tell how long the bar is that is true on paper.
func barWords(u length.Unit) string {
	if u.Imperial() {
		return "4 in"
	}
	return "100 mm"
}

// stripes draws a bar of so many steps, black and white in turn, from its lower left corner.
func (s *sheet) stripes(at geom.Point, step, n, high Length) {
	for i := range n {
		r := geom.R(at.X+i*step, at.Y, at.X+(i+1)*step, at.Y+high)
		if i%2 == 0 {
			s.rect(model.ShapeInk, r)
		} else {
			s.rect(model.ShapeRing, r)
		}
	}
}

// titles tells what is on a paper of a width: in full, or by the first words of each, or by the
// first and how many more there are.
func titles(items []item, width Length) string {
	room := (width-2*margin)*onIt/100 - 4*mm
	fits := func(text string) bool { return view.TypeWidth(text, 25*mm/10) <= room }
	var full, short []string
	for i := range items {
		title := items[i].view.Title
		first, _, _ := strings.Cut(title, ", ")
		full, short = append(full, title), append(short, first)
	}
	for _, text := range []string{strings.Join(full, "; "), strings.Join(short, "; ")} {
		if fits(text) || len(items) == 1 {
			return text
		}
	}
	return fmt.Sprintf("%s and %d more", short[0], len(items)-1)
}
