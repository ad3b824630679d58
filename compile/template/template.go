// Package template shapes the boards that lead a router by hand round the recesses: the
// opening in which a guide bush or a bearing runs, and the lines by which it is laid on the
// wood (SPEC.md 13.7). How wide the rim is and how far the bit runs out are common practice.
package template

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/router"
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
	// barb is how far the arrow's tip is from its ends, each way.
	barb = 8 * length.Millimetre
)

// Templates are those of all routers that are led by hand, one for recesses that are alike,
// corners of their steel too.
// What no template can do is an error.
func Templates(v *values.Values, m *model.Model, recesses []solve.Recess, findings *finding.List) (all []model.Template) {
	var names filename.Names
	var first []*model.Recess // that each was made for
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
		t := j.template(recess, part, r.Centre)
		place := model.TemplatePlace{Recess: recess.ID, Part: part.ID, Mark: r.Centre}
		i := 0
		for i < len(all) && !(alike(&all[i], &t) && first[i].Radius == recess.Radius) {
			i++
		}
		if i < len(all) {
			all[i].Places = append(all[i].Places, place)
			continue
		}
		t.Name = names.Free(r.File)
		t.Places = []model.TemplatePlace{place}
		all, first = append(all, t), append(first, recess)
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
	return a.Router == b.Router && a.Depth == b.Depth && a.Run == b.Run && a.Wood == b.Wood && slices.Equal(a.Opening, b.Opening)
}

// job makes the templates of one router.
type job struct {
	*values.Values
	findings *finding.List
	router   *lang.Block
	guide    model.Guide
	board    length.Length // how thick it is
}

// template shapes the board of a recess in a part, in coordinates of the part but for x,
// which is 0 on the recess's centre line; that lies at centre.
func (j job) template(recess *model.Recess, part *model.Part, centre length.Length) model.Template {
	corner := j.corner(recess)
	opening := j.opening(recess.Shape.Bounds().Shift(geom.Point{X: -centre}), recess.Open, corner)
	inner := opening.Bounds()
	t := model.Template{
		Router: j.router.Name, Guide: j.guide, Thickness: j.board, Depth: recess.Depth, Corner: corner,
		Wood: part.Outline.Bounds().Y, Run: part.Sides()[0].Edge,
		Outline: geom.RectContour(inner.Grow(rim)), Opening: opening,
	}
	t.Marks = marks(&t)
	return t
}

// corner is the radius that the bit led by hand leaves between two closed sides of a recess,
// 0 where it has no such corner.
func (j job) corner(recess *model.Recess) length.Length {
	for e := range model.Edge(4) {
		if !slices.Contains(recess.Open, e) && !slices.Contains(recess.Open, (e+3)%4) {
			return max(recess.Radius, (j.guide.Bit+1)/2)
		}
	}
	return 0
}

// opening is a recess with its closed sides moved out by as much as the round guide is
// wider than the bit, and its open ones so far that the bit passes the edge. Its corners are
// no rounder than lets the guide lie in them.
func (j job) opening(r geom.Rect, open []model.Edge, corner length.Length) geom.Contour {
	round := j.guide.Round()
	wider, out := (round-j.guide.Bit)/2, (round+j.guide.Bit)/2+router.Overrun
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
// which ends in an arrow to the run, and the edges of the wood, where a fence goes under it.
func marks(t *model.Template) (lines []model.Mark) {
	inner, outer := t.Opening.Bounds(), t.Outline.Bounds()
	line := func(name string, x0, y0, x1, y1 length.Length) {
		lines = append(lines, model.Mark{Name: name, From: geom.Point{X: x0, Y: y0}, To: geom.Point{X: x1, Y: y1}})
	}
	line("centre", 0, outer.Y.Lo, 0, inner.Y.Lo)
	line("centre", 0, inner.Y.Hi, 0, outer.Y.Hi)
	tip, end := outer.Y.Lo, outer.Y.Lo+barb
	if t.Run == model.Top {
		tip, end = outer.Y.Hi, outer.Y.Hi-barb
	}
	line("to the run", 0, tip, -barb, end)
	line("to the run", 0, tip, barb, end)
	for _, y := range [...]length.Length{t.Wood.Lo, t.Wood.Hi} {
		if outer.Y.Holds(y) {
			line("edge", outer.X.Lo, y, inner.X.Lo, y)
			line("edge", inner.X.Hi, y, outer.X.Hi, y)
		}
	}
	return lines
}
