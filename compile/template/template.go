// Package template shapes the boards that lead a router by hand round the recesses: the
// opening in which a guide bush or a bearing runs, and the lines by which it is laid on the
// wood (SPEC.md 13.7). How wide the rim is and how far the bit runs out are common practice.
package template

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/solve"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/filename"
	"barwright/lang/finding"
	"barwright/lang/length"
)

const (
	// rim is the least wood round an opening: clamps go there, and the base lies on it.
	rim = 75 * length.Millimetre
	// overrun is how far the bit's edge passes an open side of a recess, so that the mouth
	// is as wide as the rest.
	overrun = 2 * length.Millimetre
)

// Templates are those of all routers that are led by hand, one for recesses that are alike.
// What no template can do is an error.
func Templates(v *values.Values, m *model.Model, recesses []solve.Recess, findings *finding.List) (all []model.Template) {
	var names filename.Names
	for _, r := range recesses {
		block := v.Block("router." + r.Tool.Router)
		if block.Attr("guide") == nil {
			continue
		}
		part := &m.Parts[r.Part]
		recess := &part.Recesses[r.Recess]
		guide, board := guideOf(v, block)
		j := job{v, findings, block, guide, v.Length(board, "thickness")}
		if !j.sound(recess) {
			continue
		}
		t := j.template(recess, part.Outline.Bounds(), r.Centre)
		place := model.TemplatePlace{Recess: recess.ID, Part: part.ID, Mark: r.Centre}
		if i := slices.IndexFunc(all, func(o model.Template) bool { return alike(&o, &t) }); i >= 0 {
			all[i].Places = append(all[i].Places, place)
			continue
		}
		t.Name = names.Free(r.File)
		t.Places = []model.TemplatePlace{place}
		all = append(all, t)
	}
	return all
}

func guideOf(v *values.Values, block *lang.Block) (g model.Guide, board *lang.Block) {
	of := func(name string) length.Length { return v.FieldLength(block, "guide", name) }
	board = v.FieldRef(block, "guide", "board")
	return model.Guide{Bush: of("bush"), Bearing: of("bearing"), Bit: of("bit"), Collar: of("collar"), Board: board.Key()}, board
}

// alike reports whether one board does for both.
func alike(a, b *model.Template) bool {
	return a.Router == b.Router && a.Depth == b.Depth && a.Wood == b.Wood && slices.Equal(a.Opening, b.Opening)
}

// job makes the templates of one router.
type job struct {
	*values.Values
	findings *finding.List
	router   *lang.Block
	guide    model.Guide
	board    length.Length // how thick it is
}

// template shapes the board of a recess on a blank, both in coordinates of the part; the
// recess's centre line lies at centre.
func (j job) template(recess *model.Recess, blank geom.Rect, centre length.Length) model.Template {
	toZero := geom.Point{X: -centre}
	opening := j.opening(recess.Shape.Bounds().Shift(toZero), recess.Open, recess.Radius)
	wood := blank.Shift(toZero).Y
	inner := opening.Bounds()
	outer := inner.Grow(rim)
	return model.Template{
		Router: j.router.Name, Guide: j.guide, Thickness: j.board, Depth: recess.Depth, Corner: recess.Radius, Wood: wood,
		Outline: geom.RectContour(outer), Opening: opening, Marks: marks(inner, outer, wood),
	}
}

// opening is a recess with its closed sides moved out by as much as the round guide is
// wider than the bit, and its open ones so far that the bit passes the edge. Its corners are
// no rounder than lets the guide lie in them.
func (j job) opening(r geom.Rect, open []model.Edge, corner length.Length) geom.Contour {
	round := j.guide.Round()
	wider, out := (round-j.guide.Bit)/2, (round+j.guide.Bit)/2+overrun
	by, radius := [4]length.Length{}, [4]length.Length{}
	for e := range by {
		before := model.Edge((e + 3) % 4)
		isOpen := slices.Contains(open, model.Edge(e))
		if by[e] = wider; isOpen {
			by[e] = out
		}
		if radius[e] = corner + wider; isOpen || slices.Contains(open, before) {
			radius[e] = (round + 1) / 2
		}
	}
	r.Y.Lo -= by[model.Bottom]
	r.X.Hi += by[model.RightEdge]
	r.Y.Hi += by[model.Top]
	r.X.Lo -= by[model.LeftEdge]
	return geom.CornersRounded(r, radius)
}

// marks are lines from the opening to the board's outer edge: the recess's centre line,
// and the edges of the wood, where a fence goes under it.
func marks(inner, outer geom.Rect, wood geom.Span) (lines []model.Mark) {
	line := func(name string, x0, y0, x1, y1 length.Length) {
		lines = append(lines, model.Mark{Name: name, From: geom.Point{X: x0, Y: y0}, To: geom.Point{X: x1, Y: y1}})
	}
	line("centre", 0, outer.Y.Lo, 0, inner.Y.Lo)
	line("centre", 0, inner.Y.Hi, 0, outer.Y.Hi)
	for _, y := range [...]length.Length{wood.Lo, wood.Hi} {
		if outer.Y.Holds(y) {
			line("edge", outer.X.Lo, y, inner.X.Lo, y)
			line("edge", inner.X.Hi, y, outer.X.Hi, y)
		}
	}
	return lines
}
