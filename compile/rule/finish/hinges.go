package finish

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// hingeMeetsShelf looks for shelves where the hinges of doors are.
func hingeMeetsShelf(b *rule.Build) {
	for _, box := range b.Boxes(model.Cabinet) {
		hingesAmong(b, box)
	}
}

// hinged is a shelf that comes too near to a hinge.
type hinged struct {
	door  *model.Front
	z     geom.Length // of the hinge
	shelf *model.Part
	by    geom.Length
}

// hingesAmong tells of the hinge that a shelf of a cabinet comes nearest to, one
// that is fixed before one on pins.
func hingesAmong(b *rule.Build, box *model.Box) {
	half, back := b.FieldLength(b.Limits, "hinge_room", "half"), b.FieldLength(b.Limits, "hinge_room", "back")
	var worst hinged
	met := map[geom.Span]bool{} // by height; lookup only
	for i := range box.Fronts {
		door := &box.Fronts[i]
		room := geom.Box{U: geom.Span{Lo: box.Inside.U.Lo, Hi: box.Inside.U.Lo + half}, V: geom.Span{Lo: door.Place.V.Lo - back, Hi: door.Place.V.Lo}}
		if door.Hinged == model.Right {
			room.U = geom.Span{Lo: box.Inside.U.Hi - half, Hi: box.Inside.U.Hi}
		}
		for _, z := range door.Hinges {
			room.Z = geom.Span{Lo: z - half, Hi: z + half}
			for _, p := range b.PartsOf(box.Key()) {
				if !fixed(p) && !p.Is("cabinet", "shelf") || !p.Placement.Box.Overlaps(room) {
					continue
				}
				met[p.Placement.Box.Z] = true
				by := half - max(p.Placement.Box.Z.Lo-z, z-p.Placement.Box.Z.Hi)
				if worst.shelf == nil || fixed(p) && !fixed(worst.shelf) || fixed(p) == fixed(worst.shelf) && by > worst.by {
					worst = hinged{door, z, p, by}
				}
			}
		}
	}
	if worst.shelf != nil {
		hingeMet(b, box, worst, len(met)-1, half)
	}
}

func fixed(shelf *model.Part) bool { return shelf.Is("cabinet", "fixed-shelf") }

func hingeMet(b *rule.Build, box *model.Box, h hinged, others int, half geom.Length) {
	cabinet, z := b.Block(box.Key()), h.shelf.Placement.Box.Z
	text := fmt.Sprintf("A hinge of the %s of cabinet %s stands at %s, and its %s lies from %s to %s; a hinge takes %s over and under its centre: %s too near.",
		h.door.Name, box.Name, b.Show(h.z), h.shelf.Name, b.Show(z.Lo), b.Show(z.Hi), b.Show(half), b.Show(h.by))
	text += finding.Others(others, " So is another shelf.", " So are %d other shelves.")
	if fixed(h.shelf) {
		lower, higher := length.Down(h.z-half, b.Marks), length.Up(h.z+half+z.Size(), b.Marks)
		b.LimitOf(b.Findings.Warnf("hinge-meets-shelf", heightAt(b, cabinet, z.Hi), "its upper face at "+b.Show(lower)+" or lower, or at "+b.Show(higher)+" or higher", "%s", text), "hinge_room")
		return
	}
	b.LimitOf(b.Findings.Notef("hinge-meets-shelf", cabinet.Attr("shelves").Expr.At, "%s It is on pins: lay it on others.", text), "hinge_room")
}

// heightAt is where the text gives the height of a fixed shelf.
func heightAt(b *rule.Build, cabinet *lang.Block, z geom.Length) source.Range {
	for _, item := range b.Value(cabinet, "fixed_shelves").Items {
		if values.LengthOf(item) == z {
			return item.At
		}
	}
	return cabinet.Head
}

// hingedUnused looks for the side of a door that is not there, or of two.
func hingedUnused(b *rule.Build) {
	for _, run := range b.Source.Top("run") {
		for _, c := range run.Inner("cabinet") {
			a, doors := c.Attr("hinged"), b.Count(c, "doors")
			if a == nil || doors == 1 {
				continue
			}
			has := "no door"
			if doors > 1 {
				has = finding.Counted(doors, "door") + ", one on either side"
			}
			f := b.Findings.Notef("hinged-unused", a.NameAt, "hinged says where one door hangs, but %s has %s.", c.Describe(), has)
			f.Mend = "leave it out, or doors = 1"
		}
	}
}
