package standing

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/length"
)

// solid is one upright thing that stands in the room.
type solid struct {
	kind solidKind
	of   string // what it belongs to: a block's key, or of a front its part's ID
	what string // "cabinet sink", "the left door of cabinet sink"
	plan shape
	z    geom.Span
	run  int // index; noRun for walls and what stands out of them
	turn geom.Angle
	wall *model.Wall // of a wall
	why  model.Why
}

type solidKind int

const (
	hullSolid  solidKind = iota // a box of a run, as a whole
	endSolid                    // an end panel
	frontSolid                  // a closed front
	handleSolid
	applianceSolid
	slabSolid
	framingSolid // a piece of a knee wall, or of what covers it
	wallSolid
	stubSolid // what stands out of a wall
)

const noRun = -1

// touching is how far rounding may push two neighbours into one another, in
// nanometres.
const touching = float64(100 * length.Micrometre)

// into is how far two solids stand in one another; 0 or less where they do not.
func (s *solid) into(o *solid) float64 {
	if !s.z.Overlaps(o.z) {
		return 0
	}
	deep := depth(s.plan, o.plan)
	if deep > 0 && o.wall != nil {
		return o.past(s)
	}
	return deep
}

// past is how far a solid reaches behind the face of a wall, between the wall's ends.
func (w *solid) past(s *solid) float64 {
	lo, _, ok := s.plan.within(w.wall.Frame, geom.Span{Hi: w.wall.Length})
	if !ok {
		return 0
	}
	return float64(deepest(w.wall)) - lo
}

// groundOf is the ground of a build, which all rules look at.
func groundOf(b *rule.Build) *ground {
	return rule.Once(b, func(b *rule.Build) *ground { return newGround(solidsOf(b)) })
}

// solidsOf lists all that stands in the room: of each run the boxes, what closes them
// and what fills bays, then slabs, framing and end panels, then the room itself.
func solidsOf(b *rule.Build) []solid {
	var out []solid
	byFrame := map[geom.Frame]int{} // lookup only
	for i := range b.Runs {
		byFrame[b.Runs[i].Frame] = i
		for j := range b.Runs[i].Boxes {
			out = append(out, boxSolids(b, i, &b.Runs[i].Boxes[j])...)
		}
	}
	for i := range b.Slabs {
		s := &b.Slabs[i]
		what := s.Words()
		out = append(out, inRun(b, byFrame[s.Frame], slabSolid, s.Key(), what, s.Box, s.Why))
	}
	for i := range b.Parts {
		p := &b.Parts[i]
		kind := framingSolid
		switch p.BlockKind() {
		case "end_panel":
			kind = endSolid
		case "knee_wall", "skin", "corner":
		default:
			continue
		}
		box := p.Fitted()
		if kind == endSolid {
			box.V.Lo = max(box.V.Lo, 0) // the rest is cut to the wall
		}
		out = append(out, inRun(b, byFrame[p.Placement.Frame], kind, p.Block(), p.Owner, box, p.Why))
	}
	for i := range b.Room.Walls {
		out = append(out, wallSolids(&b.Room.Walls[i])...)
	}
	return out
}

func inRun(b *rule.Build, run int, kind solidKind, of, what string, box geom.Box, why model.Why) solid {
	f := b.Runs[run].Frame
	return solid{kind: kind, of: of, what: what, plan: rectangle(f, box.U, box.V), z: box.Z, run: run, turn: f.Turn, why: why}
}

// boxSolids are a box, above and behind its recess for the feet, its fronts with
// their handles, and its appliance.
func boxSolids(b *rule.Build, run int, box *model.Box) []solid {
	name := box.Words()
	add := func(kind solidKind, of, what string, place geom.Box) solid {
		return inRun(b, run, kind, of, what, place, box.Why)
	}
	key := box.Key()
	upper, lower := box.Hull, box.Hull
	upper.Z.Lo, lower.Z.Hi = box.ToeHeight, box.ToeHeight
	lower.V.Hi -= box.ToeSetback
	out := []solid{add(hullSolid, key, name, upper), add(hullSolid, key, name, lower)}
	for i := range box.Fronts {
		front := &box.Fronts[i]
		what := frontOf(front, box)
		out = append(out, add(frontSolid, front.Part, what, front.Place))
		if handle, ok := handleOf(b, box, front); ok {
			out = append(out, add(handleSolid, front.Part, "the handle of "+what, handle))
		}
	}
	if box.Kind == model.Bay {
		out = append(out, add(applianceSolid, key, "the appliance of "+name, box.Appliance))
	}
	return out
}

// frontOf names a front: "the left door of cabinet sink", "drawer 2 of cabinet cups".
func frontOf(front *model.Front, box *model.Box) string {
	article := "the "
	if front.Kind == model.Drawer {
		article = ""
	}
	return article + front.Name + " of " + box.Words()
}

// handleOf is what a front's handle fills: from its face outwards, as wide as its bores.
func handleOf(b *rule.Build, box *model.Box, front *model.Front) (geom.Box, bool) {
	if front.Kind == model.FalseFront {
		return geom.Box{}, false
	}
	c := b.CarcassOf(box)
	if c.Attr("handle") == nil {
		return geom.Box{}, false
	}
	of := func(field string) length.Length { return b.FieldLength(c, "handle", field) }
	pitch, bore, from, place := of("pitch"), of("bore"), of("from_edge"), front.Place
	out := geom.Box{V: geom.Span{Lo: place.V.Hi, Hi: place.V.Hi + of("stands_out")}}
	if front.Kind == model.Drawer {
		out.U, out.Z = geom.About(place.U.Mid(), pitch+bore), geom.About(place.Z.Hi-from, bore)
		return out, true
	}
	line := place.U.Hi - from
	if front.Hinged == model.Right {
		line = place.U.Lo + from
	}
	top := place.Z.Hi - from
	out.U, out.Z = geom.About(line, bore), geom.Span{Lo: top - pitch, Hi: top}.Grow(bore/2)
	return out, true
}

// wallDepth is how much of a wall counts as solid behind its face: no wall is thinner, so
// that nothing which stands on its other side is in it.
const wallDepth = 25 * length.Millimetre

// wallSolids are a wall and what stands out of it.
func wallSolids(w *model.Wall) []solid {
	tall := geom.Span{Lo: -length.Max, Hi: length.Max}
	out := []solid{{kind: wallSolid, of: "wall." + w.Name, what: "wall " + w.Name, plan: behind(w), z: tall, run: noRun, turn: w.Frame.Turn, wall: w, why: w.Why}}
	for _, o := range w.Fixtures() {
		if o.StandsOut == 0 {
			continue
		}
		out = append(out, solid{
			kind: stubSolid, of: o.Key(), what: o.Words(), run: noRun, turn: w.Frame.Turn, why: o.Why,
			plan: rectangle(w.Frame, o.Face.X, o.Out), z: o.Face.Y,
		})
	}
	return out
}

// behind is a strip of a wall behind its face. It narrows towards its ends, so that it
// does not come out of the wall beside it at an outside corner.
func behind(w *model.Wall) shape {
	deep, end := float64(wallDepth), float64(w.Length)
	in := min(deep, end/2)
	s := sightOf(w.Frame)
	face := float64(deepest(w))
	return shape{s.at(0, face), s.at(end, face), s.at(end-in, face-deep), s.at(in, face-deep)}
}

// deepest is how far the face of a wall comes behind its straight plane, 0 or less. What a run
// has before it of a face that was read, it is set and cut to.
func deepest(w *model.Wall) length.Length {
	back := length.Length(0)
	for _, r := range w.Read {
		back = min(back, r.Off)
	}
	return back
}

// turned is how far the places of what stands askew may be rounded, in nanometres.
const turned = float64(length.Micrometre)

// up rounds nanometres up to a mark that a tape shows.
func up(b *rule.Build, nm float64) length.Length {
	return length.Up(length.Length(math.Ceil(nm-turned)), b.Marks)
}
