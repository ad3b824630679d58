package solve_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// TestFronts looks at the fronts of random cabinets: where they stand, what
// lies between them, and that they stand in nothing.
func TestFronts(t *testing.T) {
	seen := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		d := drawFronts(t)
		m, _ := solved(t, d.file())
		for i := range d.cabinets {
			box := &m.Runs[0].Boxes[i]
			d.checkColumn(t, &d.cabinets[i], box)
			d.checkPlaces(t, m, box)
			if i > 0 && !d.inset {
				d.checkNeighbours(t, &m.Runs[0].Boxes[i-1], box)
			}
			for _, f := range box.Fronts {
				seen[f.Kind.String()]++
			}
		}
	})
	for _, kind := range []model.FrontKind{model.Door, model.Drawer, model.FalseFront} {
		if seen[kind.String()] == 0 {
			t.Errorf("no %s was drawn", kind)
		}
	}
}

// area is what the fronts of a cabinet may cover, in u and z.
func (d *drawnFronts) area(hull geom.Box) geom.Rect {
	if d.inset {
		return geom.Rect{X: hull.U.Grow(-d.board - d.gap), Y: span{Lo: d.toeHeight + d.board + d.gap, Hi: d.height - d.board - d.gap}}
	}
	return geom.Rect{X: span{Lo: hull.U.Lo + d.gap/2, Hi: hull.U.Hi - (d.gap - d.gap/2)}, Y: span{Lo: d.toeHeight + d.bottom, Hi: d.height - d.top}}
}

// checkColumn goes down the fronts of a cabinet, with a gap between two.
func (d *drawnFronts) checkColumn(t *rapid.T, c *drawnCabinet, box *model.Box) {
	area := d.area(box.Hull)
	var want []length.Length // heights; 0 where the text gives none
	if c.blind > 0 {
		want = append(want, c.blind)
	}
	want = append(want, c.drawers...)
	if len(box.Fronts) != len(want)+c.doors {
		t.Fatalf("%d fronts of %+v", len(box.Fronts), c)
	}
	top := area.Y.Hi
	var shares []length.Length
	for i, f := range box.Fronts {
		if i >= len(want) || want[i] == 0 {
			shares = append(shares, f.Place.Z.Size())
		}
		door := i >= len(want)
		if f.Place.Z.Hi != top || door != (f.Kind == model.Door) || !door && want[i] > 0 && f.Place.Z.Size() != want[i] {
			t.Fatalf("%s of %+v is at %v under %d", f.Name, c, f.Place.Z, top)
		}
		if !door || c.doors == 1 {
			if f.Place.U != area.X {
				t.Fatalf("%s is at %v, not %v", f.Name, f.Place.U, area.X)
			}
		}
		if door {
			if f.Place.Z.Lo != area.Y.Lo {
				t.Fatalf("%s ends at %d, not %d", f.Name, f.Place.Z.Lo, area.Y.Lo)
			}
			continue
		}
		top = f.Place.Z.Lo - d.gap
	}
	for i, h := range shares {
		if h != shares[0] && h != shares[0]-1 || i > 0 && h > shares[i-1] {
			t.Fatalf("the rest is shared as %v", shares)
		}
	}
	if c.doors == 2 {
		left, right := box.Fronts[len(want)].Place.U, box.Fronts[len(want)+1].Place.U
		if left.Lo != area.X.Lo || right.Hi != area.X.Hi || right.Lo-left.Hi != d.gap || left.Size() != right.Size() && left.Size() != right.Size()+1 {
			t.Fatalf("doors at %v and %v in %v", left, right, area.X)
		}
	}
	if last := box.Fronts; len(last) > 0 && c.closed() && last[len(last)-1].Place.Z.Lo != area.Y.Lo {
		t.Fatalf("the fronts end at %v, not %d", last[len(last)-1].Place.Z, area.Y.Lo)
	}
}

// checkPlaces demands that each front stands as deep as its board, is cut to
// its place less the banding, and stands in no other part.
func (d *drawnFronts) checkPlaces(t *rapid.T, m *model.Model, box *model.Box) {
	v := span{Lo: d.depth, Hi: d.depth + d.door}
	if d.inset {
		v = span{Lo: d.depth - d.door, Hi: d.depth}
	}
	parts := owned(m, "cabinet."+box.Name)
	for _, f := range box.Fronts {
		p := partNamed(t, m, f.Part)
		cut := geom.Box{U: f.Place.U.Grow(-d.banding), V: f.Place.V, Z: f.Place.Z.Grow(-d.banding)}
		if f.Place.V != v || p.Placement.Box != cut || p.Good != model.GoodFar || (p.Grain == model.GrainX) != d.along {
			t.Fatalf("%s at %v is cut as %v, grain %v, good %v", f.Name, f.Place, p.Placement.Box, p.Grain, p.Good)
		}
		checkBlank(t, p)
		if d.banding > 0 && len(p.Bands) != 4 {
			t.Fatalf("%s has %d banded edges", f.Name, len(p.Bands))
		}
		for _, o := range parts {
			if o != p && o.Placement.Box.Overlaps(f.Place) {
				t.Fatalf("%s at %v stands in %s at %v", f.Name, f.Place, o.ID, o.Placement.Box)
			}
		}
		for _, o := range box.Fronts {
			if o.Part != f.Part && o.Place.Overlaps(f.Place) {
				t.Fatalf("%s and %s overlap", f.Name, o.Name)
			}
		}
	}
}

// checkNeighbours demands one gap between the overlay fronts of two cabinets.
func (d *drawnFronts) checkNeighbours(t *rapid.T, left, right *model.Box) {
	if len(left.Fronts) == 0 || len(right.Fronts) == 0 {
		return
	}
	end, begin := left.Fronts[len(left.Fronts)-1].Place.U.Hi, right.Fronts[0].Place.U.Lo
	if last := right.Fronts[len(right.Fronts)-1]; last.Name == "left door" || last.Name == "door" {
		begin = last.Place.U.Lo
	}
	if begin-end != d.gap {
		t.Fatalf("fronts end at %d and begin at %d, the gap is %d", end, begin, d.gap)
	}
}

// inRoom turns a point of a part's face back into u, v and z of its run; the
// axis that the face looks along is that of the face.
func inRoom(p *model.Part, at geom.Point) [3]length.Length {
	var out [3]length.Length
	back := func(d geom.Dir, x length.Length) {
		s := p.Placement.Box.Along(d.Axis)
		if out[d.Axis] = s.Lo + x; d.Neg {
			out[d.Axis] = s.Hi - x
		}
	}
	back(p.Placement.X, at.X)
	back(p.Placement.Y, at.Y)
	back(geom.Dir{Axis: p.Placement.Out.Axis, Neg: !p.Placement.Out.Neg}, 0)
	return out
}

func boresNamed(p *model.Part, name string) []model.Bore {
	return slices.DeleteFunc(slices.Clone(p.Bores), func(b model.Bore) bool { return b.Name != name })
}

// TestHinges turns cups and plates back into the room: each hinge has its cup in
// the inside of its door and two holes about the same height in the inside of
// the side that it hangs on.
func TestHinges(t *testing.T) {
	doors := 0
	rapid.Check(t, func(t *rapid.T) {
		d := drawFronts(t)
		m, _ := solved(t, d.file())
		for i, c := range d.cabinets {
			box := &m.Runs[0].Boxes[i]
			used := 0
			for _, f := range box.Fronts {
				if f.Kind != model.Door {
					continue
				}
				doors++
				if c.doors == 1 && (f.Hinged == model.Right) != c.right {
					t.Fatalf("%s hangs on the %s", f.Name, f.Hinged)
				}
				used += d.checkDoor(t, m, box, &f)
			}
			plates := 0
			for _, side := range []string{"left", "right"} {
				plates += len(boresNamed(partNamed(t, m, "cabinet."+box.Name+"/side-"+side), "hinge plate"))
			}
			if plates != 2*used {
				t.Fatalf("%d holes for the plates of %d hinges", plates, used)
			}
		}
	})
	if doors == 0 {
		t.Error("no door was drawn")
	}
}

// checkDoor returns how many hinges a door has.
func (d *drawnFronts) checkDoor(t *rapid.T, m *model.Model, box *model.Box, f *model.Front) int {
	door, side := partNamed(t, m, f.Part), partNamed(t, m, "cabinet."+box.Name+"/side-"+f.Hinged.String())
	cups, plates := boresNamed(door, "hinge cup"), boresNamed(side, "hinge plate")
	h := &d.hinge
	edge, inner := f.Place.U.Lo+h.edge+h.cup/2, box.Hull.U.Lo+d.board
	if f.Hinged == model.Right {
		edge, inner = f.Place.U.Hi-h.edge-h.cup/2, box.Hull.U.Hi-d.board
	}
	front := d.depth - h.plate
	if d.inset {
		front -= d.door
	}
	if len(cups) != len(f.Hinges) || len(cups) < 2 || f.Hinges[0]-f.Place.Z.Lo != h.end || f.Place.Z.Hi-f.Hinges[len(cups)-1] != h.end {
		t.Fatalf("hinges of %s at %v: %v", f.Name, f.Place.Z, f.Hinges)
	}
	for i, z := range f.Hinges {
		if mirror := f.Place.Z.Lo + f.Place.Z.Hi - f.Hinges[len(cups)-1-i]; max(z-mirror, mirror-z) > 1 {
			t.Fatalf("hinges of %s at %v are not mirrored: %v", f.Name, f.Place.Z, f.Hinges)
		}
		if at := inRoom(door, cups[i].At); at != [3]length.Length{edge, f.Place.V.Lo, z} || cups[i].Diameter != h.cup || cups[i].Depth != h.depth || cups[i].Far {
			t.Fatalf("cup %d of %s at %v, want %d, %d, %d", i, f.Name, at, edge, f.Place.V.Lo, z)
		}
		var about []length.Length
		for _, b := range plates {
			if at := inRoom(side, b.At); at[0] != inner || at[1] != front || b.Diameter != h.bore {
				t.Fatalf("hole for a plate at %v, want %d, %d", at, inner, front)
			} else if max(at[2]-z, z-at[2]) <= h.pitch {
				about = append(about, at[2])
			}
		}
		if !slices.Contains(about, z-h.pitch/2) || !slices.Contains(about, z-h.pitch/2+h.pitch) {
			t.Fatalf("holes about the hinge at %d: %v", z, about)
		}
	}
	d.checkHandle(t, f, boresNamed(door, "handle"), door)
	return len(cups)
}

// checkHandle looks at a door's handle: near the edge that opens.
func (d *drawnFronts) checkHandle(t *rapid.T, f *model.Front, bores []model.Bore, door *model.Part) {
	var want [][3]length.Length
	if d.handle {
		u := f.Place.U.Hi - d.fromEdge
		if f.Hinged == model.Right {
			u = f.Place.U.Lo + d.fromEdge
		}
		want = append(want, [3]length.Length{u, f.Place.V.Lo, f.Place.Z.Hi - d.fromEdge})
		if d.pitch > 0 {
			want = append(want, [3]length.Length{u, f.Place.V.Lo, f.Place.Z.Hi - d.fromEdge - d.pitch})
		}
	}
	var have [][3]length.Length
	for _, b := range bores {
		if have = append(have, inRoom(door, b.At)); b.Depth != 0 {
			t.Fatalf("a handle's hole %d deep", b.Depth)
		}
	}
	if !slices.Equal(have, want) {
		t.Fatalf("handle of %s at %v, want %v", f.Name, have, want)
	}
}

// TestDrawers puts the boxes of drawers together again.
func TestDrawers(t *testing.T) {
	drawers := 0
	rapid.Check(t, func(t *rapid.T) {
		d := drawFronts(t)
		m, _ := solved(t, d.file())
		for i := range d.cabinets {
			box := &m.Runs[0].Boxes[i]
			for _, f := range box.Fronts {
				if f.Kind == model.Drawer {
					drawers++
					d.checkDrawer(t, m, box, &f)
				}
			}
		}
		d.checkFitted(t, m)
	})
	if drawers == 0 {
		t.Error("no drawer was drawn")
	}
}

func (d *drawnFronts) checkDrawer(t *rapid.T, m *model.Model, box *model.Box, f *model.Front) {
	key := "cabinet." + box.Name + "/" + strings.ReplaceAll(f.Name, " ", "-") + "-box-"
	var boards []*model.Part
	var bottom *model.Part
	for _, p := range owned(m, "cabinet."+box.Name) {
		checkBlank(t, p)
		switch {
		case p.ID == key+"bottom":
			bottom = p
		case strings.HasPrefix(p.ID, key):
			boards = append(boards, p)
		case p.ID != f.Part && p.Placement.Box.Overlaps(f.Box):
			t.Fatalf("the box at %v stands in %s at %v", f.Box, p.ID, p.Placement.Box)
		}
	}
	if len(boards) != 4 || bounding(boards) != f.Box {
		t.Fatalf("%d boards reach %v, not %v", len(boards), bounding(boards), f.Box)
	}
	low, slide := f.Place.Z.Lo+d.up, f.Box.V.Size()
	want := geom.Box{U: box.Hull.U.Grow(-d.board - d.clearance), V: span{Lo: f.Place.V.Lo - slide, Hi: f.Place.V.Lo}, Z: span{Lo: low, Hi: low + f.Place.Z.Size() - d.lower}}
	if f.Box != want {
		t.Fatalf("box at %v, want %v", f.Box, want)
	}
	ring := 2 * (d.box.MM()*f.Box.V.Size().MM() + d.box.MM()*(f.Box.U.Size()-2*d.box).MM()) // seen from above
	for i, a := range boards {
		ring -= a.Placement.Box.U.Size().MM() * a.Placement.Box.V.Size().MM()
		if a.Placement.Box.Z != f.Box.Z {
			t.Fatalf("%s is at %v in %v", a.ID, a.Placement.Box.Z, f.Box.Z)
		}
		for _, b := range boards[:i] {
			if a.Placement.Box.Overlaps(b.Placement.Box) {
				t.Fatalf("%s and %s share room", a.ID, b.ID)
			}
		}
		d.checkInGroove(t, a, bottom)
	}
	if ring > 0.001 || ring < -0.001 {
		t.Fatalf("the boards leave %g mm2 of their ring", ring)
	}
	d.checkSlide(t, m, box, f)
}

// checkInGroove demands that the bottom enters a board by its groove's depth
// less half the play, with half the play over and under it.
func (d *drawnFronts) checkInGroove(t *rapid.T, board, bottom *model.Part) {
	a, b := board.Placement.Box, bottom.Placement.Box
	face, depth := board.Placement.Local(geom.Box{U: a.U.Intersect(b.U), V: a.V.Intersect(b.V), Z: a.Z.Intersect(b.Z)})
	groove := board.Recesses[0]
	at := groove.Shape.Bounds()
	if len(board.Recesses) != 1 || groove.Depth != d.groove || at.X != board.Placement.Blank().X || at.Y != (span{Lo: d.grooveUp, Hi: d.grooveUp + d.back + d.play}) {
		t.Fatalf("groove of %s at %v, %d deep", board.ID, at, groove.Depth)
	}
	if depth != (span{Hi: d.groove - d.play/2}) || face.Y.Lo-at.Y.Lo != d.play/2 || face.Y.Size() != d.back {
		t.Fatalf("the bottom lies %v deep at %v in the groove of %s at %v", depth, face, board.ID, at)
	}
}

// checkSlide demands the longest slides that leave room behind, and their lines
// on both sides.
func (d *drawnFronts) checkSlide(t *rapid.T, m *model.Model, box *model.Box, f *model.Front) {
	rear := d.back // its front face, from the rear edges
	if d.captured {
		rear += 25 * length.Millimetre
	}
	if s := partNamed(t, m, "cabinet."+box.Name+"/stretcher-rear").Placement.Box; s.Z.Overlaps(f.Box.Z.Grow(1)) {
		rear = max(rear, s.V.Hi)
	}
	room, longest := f.Place.V.Lo-rear-d.behind, length.Length(0)
	for _, l := range d.slides {
		if l <= room {
			longest = l
		}
	}
	if f.Box.V.Size() != longest {
		t.Fatalf("slides of %d where %d fit", f.Box.V.Size(), longest)
	}
	for _, id := range []string{"side-left", "side-right"} {
		side := partNamed(t, m, "cabinet."+box.Name+"/"+id)
		marks := slices.DeleteFunc(slices.Clone(side.Marks), func(k model.Mark) bool { return k.Name != "slide of "+f.Name })
		if len(marks) != 1 {
			t.Fatalf("%s has the marks %v", id, side.Marks)
		}
		from, to := inRoom(side, marks[0].From), inRoom(side, marks[0].To)
		if from[1] != f.Box.V.Hi || to[1] != f.Box.V.Lo || from[2] != to[2] || from[2] != f.Box.Z.Mid() {
			t.Fatalf("the slide's line runs from %v to %v, the box is at %v", from, to, f.Box)
		}
	}
}

// checkFitted counts what is bought for the fronts of each cabinet.
func (d *drawnFronts) checkFitted(t *rapid.T, m *model.Model) {
	have := map[string]int{}
	for _, f := range m.Fitted {
		if have[f.Kind+" "+f.Use] = f.Count; f.Fitting != map[string]string{"hinge": "fitting.hinge", "slides": "fitting.slides"}[f.Kind] {
			t.Fatalf("%s is bought as %q", f.Kind, f.Fitting)
		}
	}
	for i, c := range d.cabinets {
		hinges, handles := 0, 0
		for _, f := range m.Runs[0].Boxes[i].Fronts {
			hinges += len(f.Hinges)
		}
		if d.handle {
			handles = c.doors + len(c.drawers)
		}
		for use, want := range map[string]int{"hinge doors": hinges, "slides drawers": len(c.drawers), "handle fronts": handles} {
			if got := have[use+" of cabinet "+c.name]; got != want {
				t.Fatalf("%s of %s: %d, want %d", use, c.name, got, want)
			}
		}
	}
}
