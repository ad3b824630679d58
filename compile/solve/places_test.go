package solve_test

import (
	"strconv"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

func numbered(id string, i int) string { return id + "-" + strconv.Itoa(i+1) }

// finished is the place of a part with its banding.
func finished(p *model.Part) geom.Box {
	all := solids(p)
	out := all[0]
	for _, b := range all {
		out = out.Union(b)
	}
	return out
}

// checkPlaces checks what touching does not tell: flush edges, setbacks and
// widths.
func checkPlaces(t *rapid.T, d *drawn, m *model.Model, box *model.Box) {
	part := func(id string) geom.Box { return finished(partNamed(t, m, "cabinet."+box.Name+"/"+id)) }
	bottom, kick, rear, back := part("bottom"), part("toe-kick"), part("stretcher-rear"), part("back")
	top, _ := d.clearHeights()
	type measure struct {
		name       string
		have, want length.Length
	}
	all := []measure{
		{"toe kick behind its setback", kick.V.Hi, d.depth - d.toeSetback},
		{"bottom flush with the front", bottom.V.Hi, d.depth},
		{"left side flush with the front", part("side-left").V.Hi, d.depth},
		{"right side flush with the front", part("side-right").V.Hi, d.depth},
		{"rear stretcher at the top of the clear inside", rear.Z.Hi, top},
		{"height of the rear stretcher", rear.Z.Size(), d.stretcher},
		{"thickness of the bottom", bottom.Z.Size(), d.board},
		{"thickness of the back", back.V.Size(), d.back},
	}
	if d.top == "stretchers" {
		front := part("stretcher-front")
		all = append(all, measure{"front stretcher flush with the top", front.Z.Hi, d.height},
			measure{"front stretcher flush with the front", front.V.Hi, d.depth}, measure{"width of the front stretcher", front.V.Size(), d.stretcher})
	} else {
		all = append(all, measure{"top flush with the front", part("top").V.Hi, d.depth}, measure{"top flush with the top", part("top").Z.Hi, d.height})
	}
	if d.fixed != "captured" {
		all = append(all, measure{"back flush with the rear", back.V.Lo, 0}, measure{"back flush with the top", back.Z.Hi, d.height},
			measure{"back flush with the underside of the bottom", back.Z.Lo, d.toeHeight})
	} else {
		all = append(all, measure{"inset of the back", back.V.Lo, d.inset})
	}
	foot := length.Length(0)
	if d.stands != "sides" {
		foot = d.toeHeight
		all = append(all, measure{"toe kick as wide as the box", kick.U.Size(), box.Hull.U.Size()})
	}
	for _, id := range []string{"side-left", "side-right"} {
		all = append(all, measure{"foot of " + id, part(id).Z.Lo, foot})
	}
	if d.stands == "base" {
		all = append(all, measure{"rear of the base", part("base-rear").V.Lo, d.baseRear}, measure{"length of the base", part("base-rear").U.Size(), box.Hull.U.Size()},
			measure{"left end of the base", part("base-left").U.Lo, box.Hull.U.Lo}, measure{"right end of the base", part("base-right").U.Hi, box.Hull.U.Hi})
		checkApart(t, d, owned(m, "cabinet."+box.Name))
	}
	for _, a := range all {
		if a.have != a.want {
			t.Fatalf("%s: %d, want %d", a.name, a.have, a.want)
		}
	}
}

// checkApart checks that crosspieces are even to the nanometre and as few as
// their distance allows.
func checkApart(t *rapid.T, d *drawn, parts []*model.Part) {
	var at []length.Length
	for _, p := range parts {
		if id := suffix(p); id == "base-left" || id == "base-right" || len(id) > 10 && id[:10] == "base-cross" {
			at = append(at, p.Placement.Box.U.Mid())
		}
	}
	even(t, at, d.baseApart)
}

func even(t *rapid.T, at []length.Length, most length.Length) {
	n := length.Length(len(at) - 1)
	if whole := at[n] - at[0]; n > 1 && whole <= (n-1)*most {
		t.Fatalf("%d gaps of %d at most in %d", n, most, whole)
	}
	for i := range at[1:] {
		if gap := at[i+1] - at[i]; gap > most || gap < (at[n]-at[0])/n || gap > (at[n]-at[0])/n+1 {
			t.Fatalf("%d apart in %v, at most %d", gap, at, most)
		}
	}
}

// checkLegs checks both rows, and that a leg has the space to itself.
func checkLegs(t *rapid.T, d *drawn, m *model.Model, box *model.Box, parts []*model.Part) {
	if d.stands != "legs" {
		if len(box.Legs) > 0 {
			t.Fatalf("a box that stands on %s has legs", d.stands)
		}
		return
	}
	rows := [2][]length.Length{}
	for i, leg := range box.Legs {
		row, v := 0, d.legInset
		if i >= len(box.Legs)/2 {
			row, v = 1, d.depth-d.toeSetback-d.legInset
		}
		rows[row] = append(rows[row], leg.U.Lo+d.legAcross/2-box.Hull.U.Lo)
		if leg.V.Lo+d.legAcross/2 != v || leg.V.Size() != d.legAcross || leg.U.Size() != d.legAcross || leg.Z != (span{Hi: d.toeHeight}) {
			t.Fatalf("leg %d at %v", i, leg)
		}
		for _, p := range parts {
			if p.Placement.Box.Overlaps(leg) {
				t.Fatalf("a leg at %v stands in %s", leg, p.ID)
			}
		}
	}
	for _, row := range rows {
		even(t, row, d.legApart)
		if row[0] != d.legInset || row[len(row)-1] != box.Hull.U.Size()-d.legInset {
			t.Fatalf("a row of legs at %v in a box %d wide", row, box.Hull.U.Size())
		}
	}
	if have := fittedFor(m, "leg", "under cabinet "+box.Name); have != len(box.Legs) {
		t.Fatalf("%d legs, %d counted", len(box.Legs), have)
	}
}

func fittedFor(m *model.Model, kind, use string) int {
	n := 0
	for _, f := range m.Fitted {
		if f.Kind == kind && f.Use == use {
			n += f.Count
		}
	}
	return n
}

// checkRecesses works out each groove and rabbet from the description, in the
// coordinates of the blank as it is cut and drawn: a left side's x runs from
// its front edge to the rear, a right side's from the rear to the front, a
// bottom's y from its front edge to the rear, a top's from the rear to the
// front.
func checkRecesses(t *rapid.T, d *drawn, m *model.Model, box *model.Box) {
	cut := d.depth - d.band // where the front edges are before they are banded
	foot := length.Length(0)
	if d.stands != "sides" {
		foot = d.toeHeight
	}
	want := map[string]geom.Rect{}
	switch width := box.Hull.U.Size() - 2*d.board; d.fixed {
	case "captured":
		near, far := d.inset-d.play/2, d.inset+d.back+(d.play-d.play/2) // from the rear edges
		low, high := d.toeHeight+d.board-d.groove-foot, d.height-foot
		if d.top == "full" {
			high += d.groove - d.board
			want["top"] = geom.R(0, near, width, far)
		}
		want["side-left"], want["side-right"] = geom.R(cut-far, low, cut-near, high), geom.R(near, low, far, high)
		want["bottom"] = geom.R(0, cut-far, width, cut-near)
	case "rabbeted":
		low, high := d.toeHeight-foot, d.height-foot
		want["side-left"], want["side-right"] = geom.R(cut-d.back, low, cut, high), geom.R(0, low, d.back, high)
	}
	for _, p := range owned(m, "cabinet."+box.Name) {
		w, should := want[suffix(p)]
		if !should {
			if len(p.Recesses) != 0 {
				t.Fatalf("%s has a recess, with a back that is %s", p.ID, d.fixed)
			}
			continue
		}
		if len(p.Recesses) != 1 {
			t.Fatalf("%s has %d recesses", p.ID, len(p.Recesses))
		}
		r := p.Recesses[0]
		if r.Shape.Bounds() != w || len(r.Shape) != 4 || r.Depth != d.groove {
			t.Fatalf("recess of %s: %v, %d deep; want %v, %d deep", p.ID, r.Shape.Bounds(), r.Depth, w, d.groove)
		}
		checkOpen(t, p, &r)
	}
	if d.fixed != "applied" { // half the play at each edge of the back that is held
		back, enters := partNamed(t, m, "cabinet."+box.Name+"/back").Placement.Box, d.groove-d.play/2
		if back.U != box.Hull.U.Grow(enters-d.board) {
			t.Fatalf("back at %v, entering %d", back, enters)
		}
	}
}

// checkOpen compares the edges that a recess says it reaches with those that it
// reaches.
func checkOpen(t *rapid.T, p *model.Part, r *model.Recess) {
	blank, b := p.Outline.Bounds(), r.Shape.Bounds()
	for edge, reaches := range map[model.Edge]bool{
		model.LeftEdge: b.X.Lo == blank.X.Lo, model.RightEdge: b.X.Hi == blank.X.Hi,
		model.Bottom: b.Y.Lo == blank.Y.Lo, model.Top: b.Y.Hi == blank.Y.Hi,
	} {
		says := false
		for _, e := range r.Open {
			says = says || e == edge
		}
		if says != reaches {
			t.Fatalf("the recess of %s at %v in %v reaches its %s edge: %v; it says %v", p.ID, b, blank, edge, reaches, r.Open)
		}
	}
}
