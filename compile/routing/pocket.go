package routing

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/lang/length"
)

// pocket clears a rectangle as a recess for steel is cleared; a depth of 0 goes through.
func (b *board) pocket(work model.Work, r geom.Rect, round Length, open []model.Edge) (*cut, *Left) {
	tool, depth, thick := b.tool, work.Depth, b.thick
	if depth == 0 {
		depth, tool.Floor = b.through(), 0
		thick = depth + length.Millimetre
	}
	if work.Kind != "opening" || round > 0 {
		tool.Relief = "none"
	}
	if work.Kind == "cup" {
		tool.Entry = "helix"
	}
	tool.Finish = max(0, min(tool.Finish, (closedWidth(r, open)-2*b.radius)/2))
	program, refusal := router.Plan(router.Request{
		Part: b.part.ID, PartLabel: b.part.Label,
		Shape: r, Open: open, Corner: round, Stock: b.stock, Thick: thick, Depth: depth, Tool: tool, Show: b.show,
	})
	if refusal != nil {
		return nil, b.refused(work, refusal)
	}
	work.Shape, work.Open, work.Levels = program.Shape, program.Open, program.Levels
	if len(program.Reliefs) > 0 {
		square := geom.RectContour(r)
		bores := map[geom.Point]relief{}       // by corner; lookup only
		for i, bore := range program.Reliefs { // one at each corner, as all sides are closed
			if !b.free(bore, square[i].Point) {
				return nil, b.noRelief(work.Kind, work.Name)
			}
			bores[square[i].Point] = relief{bore: bore}
		}
		if !apart(square, bores) {
			return nil, b.noRelief(work.Kind, work.Name)
		}
		work.Shape = filleted(square, b.radius, bores)
	}
	return &cut{program.Moves, work}, nil
}

// closedWidth returns the lesser extent of a rectangle between two closed sides.
func closedWidth(r geom.Rect, open []model.Edge) Length {
	x, y := r.X.Size(), r.Y.Size()
	for _, e := range open {
		if e == model.LeftEdge || e == model.RightEdge {
			x = max(x, y)
		} else {
			y = max(x, y)
		}
	}
	return min(x, y)
}

// groove clears a groove or rabbet. Where it is open at an edge of the part it runs out of
// it, into the air or, in a blank, through what is cut away later.
func (b *board) groove(recess *model.Recess) (*cut, *Left) {
	work := model.Work{Kind: "groove", Name: recess.Name, Depth: recess.Depth}
	r, round, ok := box(b.contour(recess.Shape))
	if !ok || round > 0 {
		return nil, b.notRectangular(work)
	}
	if !b.blank {
		return b.pocket(work, r, 0, recess.Open)
	}
	for _, e := range recess.Open {
		r = e.Onward(r, b.tool.Diameter)
	}
	return b.pocket(work, r, 0, nil)
}

// freedFrom is how many bits wide an opening is at least for its middle not to be cleared
// but cut round and held by tabs: three bits of it are left between the cuts.
const freedFrom = 5

// opening cuts round a large opening, and clears a small one, or one without room for tabs,
// so that nothing loose is thrown.
func (b *board) opening(o *model.Opening) (*cut, *Left) {
	work := model.Work{Kind: "opening", Name: o.Name}
	c := b.contour(o.Shape)
	at, radius, isRound := c.Circle()
	r, round, isRectangular := box(c)
	if min(r.X.Size(), r.Y.Size()) > freedFrom*b.tool.Diameter {
		made, refused := b.round(work.Kind, work.Name, c)
		if refused == nil || !refused.tabs || !isRound && !isRectangular {
			return made, refused
		}
	}
	switch {
	case isRound:
		return b.hole(work, at, 2*radius)
	case !isRectangular:
		return nil, b.notRectangular(work)
	case round > 0:
		round = max(round, b.radius)
	}
	return b.pocket(work, r, round, nil)
}
