package view

import (
	"math"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view/paint"
	"barwright/lang/length"
)

// How far an exploded picture draws things apart. Shares are hundredths of the way from the middle
// of what a thing belongs to.
const (
	runsApart  = 110 // runs from the middle of all, and runsMost at most
	boxesApart = 85  // boxes along their run
	partsApart = 35  // parts of a box, square to their faces

	runsMost   = 950 * length.Millimetre
	frontsOut  = 300 * length.Millimetre // from their box
	drawersOut = 650 * length.Millimetre
	kneeBack   = 1100 * length.Millimetre // a knee wall from its run
	skinsOff   = 350 * length.Millimetre  // from the framing; what covers their seams as far again
	steelUp    = 200 * length.Millimetre
	slabsUp    = 900 * length.Millimetre
	barTopUp   = 800 * length.Millimetre
	leastLine  = 60 * length.Millimetre // a centre line that is shorter tells nothing
)

// fewUnseen is how many hidden things a note names one by one.
const fewUnseen = 12

// unseen tells in a sentence what no face of is seen; it is empty where all is.
func unseen(all []body, seen []paint.Seen) string {
	shown := map[string]bool{} // lookup only
	for i := range seen {
		shown[all[seen[i].Of].id] = true
	}
	var hidden []string
	for i := range all {
		if !shown[all[i].id] {
			hidden = append(hidden, all[i].name)
		}
	}
	switch n := len(hidden); {
	case n == 0:
		return ""
	case n > fewUnseen:
		return " Not seen from here: " + strconv.Itoa(n) + " parts."
	}
	return " Not seen from here: " + strings.Join(hidden, ", ") + "."
}

// explosion tells where the things of one run go.
type explosion struct {
	run   *model.Run
	knee  *model.KneeWall // that stands behind it; nil where none does
	hull  geom.Box
	moved geom.Spot             // all of it, in its own frame
	boxes map[string]*model.Box // by their keys; lookup only
}

// apart moves bodies from each other.
func apart(m *model.Model, all []body) {
	runs := explosions(m)
	for i := range all {
		b := &all[i]
		for j := range runs {
			if x := &runs[j]; b.place.Frame == x.run.Frame {
				home, own := x.way(b)
				b.home = inRoom(b.place.Frame, x.moved, home)
				b.moved = inRoom(b.place.Frame, x.moved, home, own)
				break
			}
		}
	}
}

// inRoom adds up moves in a frame as one in the room.
func inRoom(f geom.Frame, moves ...geom.Spot) paint.Vec {
	f.Origin = geom.Point{}
	var sum paint.Vec
	for _, by := range moves {
		sum = sum.Add(paint.At(f, by))
	}
	return sum
}

// explosions are those of all runs; each is moved from the middle of all.
func explosions(m *model.Model) (runs []explosion) {
	var middles []geom.Point
	var sum geom.Point
	for i := range m.Runs {
		r := &m.Runs[i]
		x := explosion{run: r, hull: runHull(r), boxes: map[string]*model.Box{}}
		for j := range r.Boxes {
			x.boxes[r.Boxes[j].Key()] = &r.Boxes[j]
		}
		for j := range m.KneeWalls {
			if k := &m.KneeWalls[j]; k.Run == r.Name {
				x.knee = k
			}
		}
		mid := r.Frame.At(x.hull.U.Mid(), x.hull.V.Mid())
		runs, middles, sum = append(runs, x), append(middles, mid), sum.Add(mid)
	}
	n := Length(max(len(runs), 1))
	for i := range runs {
		x := &runs[i]
		off := middles[i].Sub(geom.Point{X: sum.X / n, Y: sum.Y / n})
		f := x.run.Frame
		f.Origin = geom.Point{}
		u, v := f.Local(off)
		x.moved = geom.Spot{U: share(u, runsApart), V: share(v, runsApart)}
		if far := inRoom(f, x.moved).Long(); far > float64(runsMost) {
			nearer := func(l Length) Length { return Length(math.Round(float64(l) * (float64(runsMost) / far))) }
			x.moved.U, x.moved.V = nearer(x.moved.U), nearer(x.moved.V)
		}
	}
	return runs
}

// way is how a body is moved in its frame: with what it belongs to, and of its own.
func (x *explosion) way(b *body) (home, own geom.Spot) {
	at := b.place.Box
	switch kind := blockKind(b); {
	case kind == "counter":
		return home, geom.Spot{U: share(at.U.Mid()-x.hull.U.Mid(), boxesApart), Z: slabsUp}
	case kind == "bar_top":
		return geom.Spot{V: -kneeBack}, geom.Spot{Z: barTopUp}
	case kind == "end_panel":
		home.U = share(at.U.Mid()-x.hull.U.Mid(), boxesApart)
		return home, geom.Spot{U: share(at.U.Mid()-x.hull.U.Mid(), partsApart)}
	case x.knee != nil && (kind == "knee_wall" || kind == "skin" || kind == "corner"):
		return geom.Spot{V: -kneeBack}, x.framing(b)
	}
	return x.inBox(b)
}

// framing is how a part of a knee wall is moved from it.
func (x *explosion) framing(b *body) (own geom.Spot) {
	at, k := b.place.Box, x.knee.Framing
	if blockKind(b) != "knee_wall" {
		off := Length(skinsOff)
		if !strings.Contains(b.id, "/piece-") {
			off *= 2
		}
		return onward(b.place.Out, off)
	}
	if b.kind == model.ShapeSteel {
		own.Z = steelUp
	}
	if at.Z.Size() < at.U.Size() { // no stud
		own.Z += share(at.Z.Mid()-k.Z.Mid(), partsApart)
	}
	return own
}

// inBox is how a part of a box is moved with it and from it. What lies in no box goes with the
// nearest, under it.
func (x *explosion) inBox(b *body) (home, own geom.Spot) {
	at := b.place.Box
	box := x.boxOf(b)
	if box == nil {
		return home, own
	}
	home.U = share(box.Hull.U.Mid()-x.hull.U.Mid(), boxesApart)
	for i := range box.Fronts {
		f := &box.Fronts[i]
		switch {
		case f.Part == b.id && f.Box != geom.Box{}:
			return home, geom.Spot{V: drawersOut + frontsOut}
		case f.Part == b.id:
			return home, geom.Spot{V: frontsOut}
		case strings.Contains(b.id, "/drawer-") && f.Box.Overlaps(at):
			own = square(b.place, f.Box)
			own.V += drawersOut
			return home, own
		}
	}
	if b.part == nil {
		return home, own
	}
	return home, square(b.place, box.Hull)
}

// boxOf is the box that a body belongs to, or else the one over it.
func (x *explosion) boxOf(b *body) *model.Box {
	block, _, _ := strings.Cut(b.id, "/")
	if box := x.boxes[block]; box != nil {
		return box
	}
	for i := range x.run.Boxes {
		if box := &x.run.Boxes[i]; box.Hull.U.Holds(b.place.Box.U.Mid()) {
			return box
		}
	}
	return nil
}

// square moves a part from the middle of what it is a part of, square to its face.
func square(at geom.Placement, whole geom.Box) geom.Spot {
	axis := at.Out.Axis
	return onward(geom.Dir{Axis: axis}, share(at.Box.Along(axis).Mid()-whole.Along(axis).Mid(), partsApart))
}

// onward is a move in one direction.
func onward(d geom.Dir, by Length) (s geom.Spot) {
	if d.Neg {
		by = -by
	}
	*[...]*Length{&s.U, &s.V, &s.Z}[d.Axis] = by
	return s
}

func share(of Length, hundredths Length) Length { return of * hundredths / 100 }

// blockKind is the kind of the block that a body belongs to.
func blockKind(b *body) string {
	kind, _, _ := strings.Cut(b.id, ".")
	return kind
}

// centreLines leads from each body that is drawn apart to where it goes; what faces stand before
// them is left out.
func (s *sheet) centreLines(e paint.Eye, all []body, seen []paint.Seen) {
	var lines [][2]geom.Point
	var of []int
	for i := range all {
		b := &all[i]
		mid := b.middle()
		if b.moved.Sub(b.home).Long() >= float64(leastLine) {
			lines = append(lines, [2]geom.Point{e.Project(mid.Add(b.moved)), e.Project(mid.Add(b.home))})
			of = append(of, i)
		}
	}
	for i, gaps := range paint.Gaps(seen, lines) {
		for _, gap := range gaps {
			if gap[0] != gap[1] {
				s.line(model.ShapeCentre, all[of[i]].id, "", gap[0], gap[1])
			}
		}
	}
}
