package solve

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/ways"
	"barwright/lang"
	"barwright/lang/length"
)

// ending is where a cable leaves an electrical box: spots beside it, and lanes that lead
// from there to those of the run.
type ending struct {
	box   geom.Box // in the run's frame
	spots []ways.Spot
	lanes []geom.Box
}

// inBox is the point of the box that is nearest to a spot.
func (e *ending) inBox(p ways.Spot) ways.Spot {
	return ways.Spot{clamp(p[0], e.box.U), clamp(p[1], e.box.V), clamp(p[2], e.box.Z)}
}

// ending finds the ends of a cable at a box, if it is at a run: in the knee wall behind it,
// or in a wall behind or beside its boxes.
func (w *laying) ending(run *model.Run, device *lang.Block, keep *keepOff) (ending, bool) {
	if device.Parent.Spec.Kind == "knee_wall" {
		return w.inKneeWall(run, device, keep)
	}
	wall := w.wall(device.Parent.Name)
	i := slices.IndexFunc(wall.Outlets, func(o model.Outlet) bool { return o.Kind == device.Spec.Kind && o.Name == device.Name })
	return w.inWall(run, wall, &wall.Outlets[i], keep)
}

func (w *laying) inKneeWall(run *model.Run, device *lang.Block, keep *keepOff) (ending, bool) {
	k := w.kneeBehind(run)
	if k == nil || k.Name != device.Parent.Name {
		return ending{}, false
	}
	o := k.Outlets[slices.IndexFunc(k.Outlets, func(o model.KneeOutlet) bool { return o.Name == device.Name })]
	v := w.boredAt(k)
	return ending{box: o.Box, spots: beside(keep.off(o.Box, 0), v, o.Box)}, true
}

// beside are the middles of the four sides of a box as one faces it, at a depth v; what is
// in the middle is that of another box.
func beside(b geom.Box, v length.Length, of geom.Box) []ways.Spot {
	u, z := of.U.Mid(), of.Z.Mid()
	return []ways.Spot{{b.U.Lo, v, z}, {b.U.Hi, v, z}, {u, v, b.Z.Lo}, {u, v, b.Z.Hi}}
}

// inWall has a cable come out of the face of a wall beside the cover plate, and beside what
// is cut for the box.
func (w *laying) inWall(run *model.Run, wall *model.Wall, o *model.Outlet, keep *keepOff) (e ending, ok bool) {
	seen := func(face geom.Rect, v geom.Span) geom.Box {
		return run.Frame.Around(wall.Frame, geom.Box{U: face.X, V: v, Z: face.Y})
	}
	box, face := around(o.Along, o.Height, o.Box.Width, o.Box.Height), w.faceAt(wall, o.Along, o.Height)
	e.box = seen(box, geom.Span{Lo: o.StandsOut - o.Box.Depth, Hi: o.StandsOut}.Shift(face))
	cover := seen(o.Plate().Union(box.Grow(o.Clearance+keep.edge)), geom.Span{Hi: o.StandsOut + w.limit("plug_room")}.Shift(face))
	at := seen(around(o.Along, o.Height, 0, 0), geom.Span{Lo: face, Hi: face})
	if o.Height > run.Height {
		return e, false
	}
	u, v := at.U.Lo, at.V.Lo
	behind := cover.U.Size() >= cover.V.Size() // the wall lies behind the run, not at one of its ends
	if behind {
		ok = geom.Span{Hi: run.Length}.Holds(u) && -standsAgainst <= v && v <= run.Depth
		e.spots = beside(keep.off(cover, 0), v, at)
		return e, ok
	}
	ok = geom.Span{Hi: run.Depth}.Holds(v) && (length.Apart(u, 0) <= standsAgainst || length.Apart(u, run.Length) <= standsAgainst)
	off := keep.off(cover, 0)
	e.spots = []ways.Spot{{u, off.V.Lo, at.Z.Mid()}, {u, off.V.Hi, at.Z.Mid()}, {u, v, off.Z.Lo}, {u, v, off.Z.Hi}}
	if i := nearestCabinet(run, u); ok && i >= 0 {
		for _, p := range e.spots {
			hull := run.Boxes[i].Hull.U
			e.lanes = append(e.lanes, geom.Box{U: hull.Union(geom.Span{Lo: u, Hi: u}), V: geom.Span{Lo: p[1], Hi: p[1]}, Z: geom.Span{Lo: p[2], Hi: p[2]}})
		}
	}
	return e, ok
}

// nearestCabinet is the cabinet of a run that is nearest to a place along it; -1 where it
// has none.
func nearestCabinet(run *model.Run, u length.Length) int {
	best, far := -1, length.Max
	for i := range run.Boxes {
		if hull := run.Boxes[i].Hull.U; run.Boxes[i].Kind == model.Cabinet {
			if d := length.Apart(clamp(u, hull), u); d < far {
				best, far = i, d
			}
		}
	}
	return best
}
