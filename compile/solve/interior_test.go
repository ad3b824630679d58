package solve_test

import (
	"slices"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// pinHole is a hole in a board that looks into a space, in the frame.
type pinHole struct{ v, z length.Length }

// holesInto lists the holes for pins in the face of a board that looks that
// way along u.
func holesInto(p *model.Part, toRight bool) []pinHole {
	var out []pinHole
	for _, b := range p.Bores {
		if b.Name != "shelf pin" || toRight != (p.Placement.Out.Neg == b.Far) {
			continue
		}
		at := inFrame(p, geom.R(b.At.X, b.At.Y, b.At.X, b.At.Y), span{})
		out = append(out, pinHole{at.V.Lo, at.Z.Lo})
	}
	return out
}

// checkInterior checks dividers, shelves and pins space by space.
func checkInterior(t *rapid.T, d *drawn, b *drawnBox, m *model.Model, box *model.Box) {
	part := func(id string) *model.Part { return partNamed(t, m, "cabinet."+box.Name+"/"+id) }
	top, clear := d.clearHeights()
	for i, at := range b.dividers {
		have := finished(part(numbered("divider", i)))
		want := geom.Box{V: span{Lo: d.backFace(), Hi: d.depth}, Z: span{Lo: d.toeHeight + d.board, Hi: top}}
		want.U.Lo = box.Hull.U.Lo + at - d.board/2
		want.U.Hi = want.U.Lo + d.board
		if have != want {
			t.Fatalf("divider at %v, want %v", have, want)
		}
	}
	bores := 0
	for space := range len(b.dividers) + 1 {
		l, r := b.beside(space)
		left, right := part(l), part(r)
		u := span{Lo: left.Placement.Box.U.Hi, Hi: right.Placement.Box.U.Lo}
		for i, h := range b.fixed {
			have := finished(part(numbered("fixed-shelf", space*len(b.fixed)+i)))
			if want := (geom.Box{U: u, V: span{Lo: d.backFace(), Hi: d.depth - d.setback}, Z: span{Lo: h - d.shelf, Hi: h}}); have != want {
				t.Fatalf("fixed shelf at %v, want %v", have, want)
			}
		}
		holes := holesInto(left, true)
		if !slices.Equal(holes, holesInto(right, false)) || (len(holes) > 0) != (b.shelves > 0) {
			t.Fatalf("holes on both sides of a space with %d shelves: %v and %v", b.shelves, holes, holesInto(right, false))
		}
		bores += 2 * len(holes)
		if b.shelves > 0 {
			checkRows(t, d, b, clear, holes)
		}
		checkShelves(t, d, b, u, clear, holes, part, space)
	}
	all := 0
	for _, p := range owned(m, "cabinet."+box.Name) {
		all += len(p.Bores)
	}
	if all != bores {
		t.Fatalf("%d holes, %d of them on the sides of spaces", all, bores)
	}
	if have, want := fittedFor(m, "shelf pin", "shelves of cabinet "+box.Name), 4*b.shelves*(len(b.dividers)+1); have != want {
		t.Fatalf("%d pins are counted, want %d", have, want)
	}
}

// checkRows checks the holes of one board against the description: two rows at
// like heights, each hole a whole number of pitches above the first, all there
// are but those that would touch a fixed shelf.
func checkRows(t *rapid.T, d *drawn, b *drawnBox, clear span, holes []pinHole) {
	var want []pinHole
	for _, v := range []length.Length{d.depth - d.fromFront, d.backFace() + d.fromBack} {
		for z := clear.Lo + d.fromEnds; z <= clear.Hi-d.fromEnds; z += d.pitch {
			free := true
			for _, h := range b.fixed {
				free = free && (z-d.pin/2 >= h || z-d.pin/2+d.pin <= h-d.shelf)
			}
			if free {
				want = append(want, pinHole{v, z})
			}
		}
	}
	if !slices.Equal(holes, want) {
		t.Fatalf("holes at %v, want %v", holes, want)
	}
}

// checkShelves checks that each shelf of a space lies on four pins, has its
// play and its setback, stands in the largest clear height, and is as even
// there as the pitch allows.
func checkShelves(t *rapid.T, d *drawn, b *drawnBox, u, clear span, holes []pinHole, part func(string) *model.Part, space int) {
	room := clear
	for _, h := range b.fixed { // there is one at most
		if room = (span{Lo: clear.Lo, Hi: h - d.shelf}); clear.Hi-h > room.Size() {
			room = span{Lo: h, Hi: clear.Hi}
		}
	}
	n, gap := length.Length(b.shelves), length.Length(0)
	if n > 0 {
		gap = (room.Size() - n*d.shelf) / (n + 1)
	}
	for i := range b.shelves {
		p := part(numbered("shelf", space*b.shelves+i))
		have := finished(p)
		if have.U != u.Grow(-d.shelfPlay) || have.V != (span{Lo: d.backFace() + d.shelfPlay, Hi: d.depth - d.setback}) || have.Z.Size() != d.shelf {
			t.Fatalf("shelf at %v in a space %v", have, u)
		}
		pins := slices.DeleteFunc(slices.Clone(holes), func(h pinHole) bool { return h.z+d.pin/2 != have.Z.Lo })
		if len(pins) != 2 || pins[0].v == pins[1].v {
			t.Fatalf("shelf at %v lies on the pins %v", have, pins)
		}
		for _, pin := range pins {
			if v := p.Placement.Box.V; pin.v-d.pin/2 < v.Lo || pin.v+d.pin/2 > v.Hi {
				t.Fatalf("shelf at %v lies beside a pin at %d", v, pin.v)
			}
		}
		off := have.Z.Lo - (room.Lo + gap*length.Length(i+1) + d.shelf*length.Length(i))
		if 2*max(off, -off) > d.pitch+2*(n+1) { // the gap is rounded
			t.Fatalf("shelf at %v is %d off its even place in %v", have.Z, off, room)
		}
	}
}
