package solve

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// catalogue finds parts that have been made; parts are only ever added. Its maps are for
// lookup only.
type catalogue struct {
	known   int // how many of the model's parts are in it
	byID    map[string]int
	byFrame map[geom.Frame][]int // in the order of the parts
}

// catalogued is the catalogue of all parts up to now.
func (s *solver) catalogued() *catalogue {
	c := &s.catalogue
	if c.byID == nil {
		c.byID, c.byFrame = map[string]int{}, map[geom.Frame][]int{}
	}
	for ; c.known < len(s.m.Parts); c.known++ {
		p := &s.m.Parts[c.known]
		c.byID[p.ID] = c.known
		c.byFrame[p.Placement.Frame] = append(c.byFrame[p.Placement.Frame], c.known)
	}
	return c
}

// partsIn are the parts of a run, its knee wall and its slabs: all that stand in a frame.
func (s *solver) partsIn(f geom.Frame) []int { return s.catalogued().byFrame[f] }

// nearby is how far from all of a run in plan a thing must end to be no matter for it: more
// than any clearance, and than the metre that depthToInside looks into a box.
const nearby = 2 * length.Metre

// thingsBy lists for each run the things that may pass something of it, in their order. Most
// things are in another corner of the room.
func (s *solver) thingsBy(things []thing) [][]int {
	ways := make([]geom.Rect, len(things))
	for i := range things {
		ways[i] = things[i].way()
	}
	near := make([][]int, len(s.stands))
	for i := range s.stands {
		covers := s.covers(&s.m.Runs[i]).Grow(nearby)
		for j := range ways {
			if ways[j].Overlaps(covers) {
				near[i] = append(near[i], j)
			}
		}
	}
	return near
}

// way is what a thing takes of the room's plan.
func (t *thing) way() geom.Rect {
	return inPlan(t.wall.Frame, t.clear.X, geom.Span{Lo: t.face.Lo, Hi: t.face.Hi + t.out})
}

// covers is what a run takes of the room's plan, with all that stands in its frame.
func (s *solver) covers(run *model.Run) geom.Rect {
	u, v := geom.Span{Hi: run.Length}, geom.Span{Hi: run.Depth}
	for i := range run.Boxes {
		box := &run.Boxes[i]
		u, v = u.Union(box.Hull.U).Union(box.Appliance.U), v.Union(box.Hull.V).Union(box.Appliance.V)
	}
	for _, i := range s.partsIn(run.Frame) {
		box := s.m.Parts[i].Placement.Box
		u, v = u.Union(box.U), v.Union(box.V)
	}
	return inPlan(run.Frame, u, v)
}

// inPlan is the least rectangle of the room's plan about one of a frame.
func inPlan(f geom.Frame, u, v geom.Span) geom.Rect {
	var out geom.Rect
	for i, p := range f.Corners(u, v) {
		at := geom.Rect{X: geom.Span{Lo: p.X, Hi: p.X}, Y: geom.Span{Lo: p.Y, Hi: p.Y}}
		if i == 0 {
			out = at
		}
		out = out.Union(at)
	}
	return out
}
