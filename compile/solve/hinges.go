package solve

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/spacing"
	"barwright/lang/length"
	"barwright/lang/source"
)

// hingeRows is how tall and how heavy a door may be for two hinges and for each
// more: common practice, from memory. Makers' charts differ by a hinge.
var hingeRows = []struct {
	height length.Length
	kg     float64
}{
	{900 * length.Millimetre, 6},
	{1600 * length.Millimetre, 12},
	{2000 * length.Millimetre, 17},
	{2400 * length.Millimetre, 22},
}

// hingeWidth is the width of door that the weights of hingeRows are for. A
// wider one pulls harder at its hinges, as its middle is further off.
const hingeWidth = 600 * length.Millimetre

// hingeCount is the number of hinges of a door; its weight is 0 where nobody
// says what the board weighs.
func hingeCount(width, height length.Length, kg float64) int {
	if width > hingeWidth {
		kg *= float64(width) / float64(hingeWidth)
	}
	n := 2
	for _, row := range hingeRows {
		if height <= row.height && kg <= row.kg {
			break
		}
		n++
	}
	return n
}

// hingeHeights are the heights of n hinges on a door: the outer ones end from
// its ends, the others even between, mirrored, at whole marks from the nearer
// end. The door must have room for them.
func hingeHeights(door geom.Span, n int, end, mark length.Length) []length.Length {
	even, refusal := spacing.Place(spacing.Ask{
		Stretch: door, Count: n, End: end, Fixed: []length.Length{door.Lo + end, door.Hi - end}, Mirrored: true, Mark: mark,
	})
	if refusal != nil {
		return nil
	}
	return even.Centres
}

func (f *closing) hinge(field string) length.Length {
	return f.s.FieldLength(f.carcass.block, "hinge", field)
}

// hang bores a door for its hinges, and the side that it hangs on for their
// plates.
func (f *closing) hang(part int, door *model.Front, asked source.Range) bool {
	side := f.side(door.Hinged)
	if !f.soundHinges(part, side) {
		return false
	}
	place, s := door.Place, f.s
	kg := s.Number(f.board.sheet, "density") * (place.U.Size().MM() / 1000) * (place.V.Size().MM() / 1000) * (place.Z.Size().MM() / 1000)
	n := hingeCount(place.U.Size(), place.Z.Size(), kg)
	if !f.roomForHinges(door, n, asked) {
		return false
	}
	door.Hinges = hingeHeights(place.Z, n, f.hinge("from_end"), s.Marks)
	in := f.hinge("from_edge") + f.hinge("cup")/2
	u := place.U.Lo + in
	if door.Hinged == model.Right {
		u = place.U.Hi - in
	}
	plate := s.plateLine(f.box)
	for _, z := range door.Hinges {
		cup := model.Bore{Name: "hinge cup", At: on(&s.m.Parts[part], u, place.V.Lo, z), Diameter: f.hinge("cup"), Depth: f.hinge("depth")}
		if !f.bore(part, cup, "hinge", asked) {
			return false
		}
		low := z - f.hinge("plate_pitch")/2
		for _, z := range []length.Length{low, low + f.hinge("plate_pitch")} {
			if !f.plateBore(side, plate, z, asked) {
				return false
			}
		}
	}
	return true
}

// plateLine is where the plates of a box's hinges are screwed to its sides, out from
// the rear.
func (s *solver) plateLine(box *model.Box) length.Length {
	b := s.Block("cabinet." + box.Name)
	c := s.carcassOf(b)
	return box.Hull.V.Hi - s.insetFronts(&c, b) - s.FieldLength(c.block, "hinge", "plate")
}

// plateBore bores a side for a hinge's plate. A pin's bore that stands in its
// way is left out.
func (f *closing) plateBore(side int, v, z length.Length, asked source.Range) bool {
	part := &f.s.m.Parts[side]
	bore := model.Bore{Name: "hinge plate", Diameter: f.hinge("plate_bore"), Depth: f.hinge("plate_depth")}
	at := on(part, part.Placement.Box.U.Lo, v, z)
	part.Bores = slices.DeleteFunc(part.Bores, func(pin model.Bore) bool {
		return pin.Name == "shelf pin" && closerThan(pin.At, at, max(pin.Diameter, bore.Diameter)*3/2)
	})
	bore.At = at
	return f.bore(side, bore, "hinge", asked)
}

// soundHinges refuses bores that go through their boards.
func (f *closing) soundHinges(part, side int) bool {
	at := f.carcass.at("hinge")
	if f.carcass.block.Attr("hinge") == nil {
		at = f.carcass.at("door")
	}
	for _, b := range []struct {
		what, field string
		board       *model.Part
	}{{"a hinge's cup", "depth", &f.s.m.Parts[part]}, {"a hinge's plate", "plate_depth", &f.s.m.Parts[side]}} {
		if deep, thick := f.hinge(b.field), b.board.Thickness; deep >= thick {
			f.s.Findings.Errorf("hinge-too-deep", at, "a thicker board, or hinge = { "+b.field+" = … } of less than "+f.s.Show(thick),
				"The bore for %s is %s deep, but its board is %s thick.", b.what, f.s.Show(deep), f.s.Show(thick))
			return false
		}
	}
	return true
}

// roomForHinges refuses a door on which hinges would stand in one another once
// they are at whole marks.
func (f *closing) roomForHinges(door *model.Front, n int, asked source.Range) bool {
	s, apart := f.s, max(f.hinge("cup"), f.hinge("plate_pitch")+f.hinge("plate_bore"))
	need := 2*f.hinge("from_end") + (apart+s.Marks)*length.Length(n-1)
	if door.Place.Z.Size() >= need {
		return true
	}
	s.Findings.Errorf("front-too-small", asked, "a higher door, or hinge = { from_end = … } of less",
		"The %s of %s is %s high; %d hinges, the outer ones %s from its ends, take %s.",
		door.Name, f.block.Describe(), s.Show(door.Place.Z.Size()), n, s.Show(f.hinge("from_end")), s.Show(need)).
		Also(f.carcass.at("hinge"), "where hinges stand")
	return false
}
