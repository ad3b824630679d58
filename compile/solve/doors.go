package solve

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
	"barwright/lang/source"
)

// doors hangs one door, or two side by side, on the cabinet's own sides.
func (f *closing) doors(r row) bool {
	whole := f.area.U
	if f.s.Count(f.block, "doors") == 1 {
		hinged := endNamed(f.s.Text(f.block, "hinged"))
		return f.door(r, whole, model.Front{Name: "door", Hinged: hinged}, piece{id: "door", code: "D", name: "door"})
	}
	half := (whole.Size() - f.gap) / 2
	return f.door(r, geom.Span{Lo: whole.Lo, Hi: whole.Hi - half - f.gap}, model.Front{Name: "left door", Hinged: model.Left}, piece{id: "door-left", code: "DL", name: "left door"}) &&
		f.door(r, geom.Span{Lo: whole.Hi - half, Hi: whole.Hi}, model.Front{Name: "right door", Hinged: model.Right}, piece{id: "door-right", code: "DR", name: "right door"})
}

// door makes one door with the boring for its hinges and its handle.
func (f *closing) door(r row, u geom.Span, front model.Front, p piece) bool {
	front.Kind = model.Door
	part, ok := f.front(r, u, front, p)
	if !ok {
		return false
	}
	hung := &f.box.Fronts[len(f.box.Fronts)-1]
	return f.hang(part, hung, r.at) && f.handleDoor(part, hung, r.at)
}

// handled reports whether fronts that open get a handle.
func (f *closing) handled() bool { return f.carcass.block.Attr("handle") != nil }

func (f *closing) handle(field string) length.Length {
	return f.s.FieldLength(f.carcass.block, "handle", field)
}

// handleDoor bores for a handle upright near the edge that opens, its upper
// hole near the door's upper edge.
func (f *closing) handleDoor(part int, door *model.Front, at source.Range) bool {
	if !f.handled() {
		return true
	}
	u, z := door.Place.U.Hi-f.handle("from_edge"), door.Place.Z.Hi-f.handle("from_edge")
	if door.Hinged == model.Right {
		u = door.Place.U.Lo + f.handle("from_edge")
	}
	return f.handleBore(part, u, z, at) && (f.handle("pitch") == 0 || f.handleBore(part, u, z-f.handle("pitch"), at))
}

// handleDrawer bores for a level handle in the middle of a drawer's front, and
// through the front of its box where that stands behind.
func (f *closing) handleDrawer(front, boxFront int, place geom.Box, at source.Range) bool {
	if !f.handled() {
		return true
	}
	pitch := f.handle("pitch")
	left, z := place.U.Mid()-pitch/2, place.Z.Hi-f.handle("from_edge")
	for _, u := range []length.Length{left, left + pitch} {
		if !f.handleBore(front, u, z, at) {
			return false
		}
		if box := f.s.m.Parts[boxFront].Placement.Box; (geom.Rect{X: box.U, Y: box.Z}).Contains(around(u, z, f.handle("bore"), f.handle("bore"))) &&
			!f.handleBore(boxFront, u, z, at) {
			return false
		}
		if pitch == 0 {
			break
		}
	}
	return true
}

func (f *closing) handleBore(part int, u, z length.Length, at source.Range) bool {
	p := &f.s.m.Parts[part]
	return f.bore(part, model.Bore{Name: "handle", At: on(p, u, p.Placement.Box.V.Lo, z), Diameter: f.handle("bore")}, "handle", at)
}

// bore drills a part. A bore that does not lie in the part, or that runs into
// another one, is refused.
func (f *closing) bore(index int, bore model.Bore, object string, asked source.Range) bool {
	s, part := f.s, &f.s.m.Parts[index]
	bore.Why = model.Why{Block: f.carcass.block.Path(), At: f.carcass.at(object)}
	round := around(bore.At.X, bore.At.Y, bore.Diameter, bore.Diameter)
	if blank := part.Placement.Blank(); !blank.Contains(round) {
		s.Findings.Errorf("front-too-small", asked, "a larger front, or "+object+" = { … } with smaller figures",
			"The %s of %s is %s wide and %s high: the bore for its %s, %s across, would not lie in it.",
			part.Name, f.block.Describe(), s.Show(blank.X.Size()), s.Show(blank.Y.Size()), bore.Name, s.Show(bore.Diameter)).
			Also(bore.Why.At, "where it is bored")
		return false
	}
	for _, other := range part.Bores {
		if closerThan(other.At, bore.At, (other.Diameter+bore.Diameter)/2) {
			s.Findings.Errorf("front-too-small", asked, "a larger front, or "+object+" = { … } with other figures",
				"In the %s of %s the bores for %s and %s would run into one another.", part.Name, f.block.Describe(), other.Name, bore.Name).
				Also(bore.Why.At, "where it is bored")
			return false
		}
	}
	part.Bores = append(part.Bores, bore)
	return true
}

// closerThan reports whether two points are nearer than a limit, which is small
// enough that its square is no large number.
func closerThan(a, b geom.Point, limit length.Length) bool {
	d := a.Sub(b)
	return max(d.X, -d.X) < limit && max(d.Y, -d.Y) < limit && d.X*d.X+d.Y*d.Y < limit*limit
}
