// Package wiring judges outlets, their boxes, and the cords and air of appliances
// (SPEC.md 11.9).
package wiring

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// Rules are those of the section, in its order.
var Rules = []rule.Rule{
	{Slug: "ground-fault-missing", Look: groundFaultMissing},
	{Slug: "ground-fault-area", Look: groundFaultArea},
	{Slug: "wiring-not-judged", Look: wiringNotJudged},
	{Slug: "box-overfilled", Look: boxOverfilled},
	{Slug: "box-volume-unknown", Look: boxVolumeUnknown},
	{Slug: "box-too-deep", Look: boxTooDeep},
	{Slug: "box-behind-panel", Look: boxBehindPanel},
	{Slug: "plug-out-of-reach", Look: plugOutOfReach},
	{Slug: "cord-too-short", Look: cordTooShort},
	{Slug: "no-air-path", Look: noAirPath},
	{Slug: "cable-near-water", Look: cableNearWater},
}

// device is an outlet or a switch of the build.
type device struct {
	block  *lang.Block
	wall   *model.Wall       // that it is in; nil of one in a knee wall
	in     *model.Outlet     // of a wall
	knee   *model.KneeOutlet // of a knee wall
	frame  geom.Frame        // of the wall, or of the knee wall's run
	face   geom.Length       // of the wall there, out from its straight plane
	panels []*model.Part     // that let it through
	// used is the rectangle of its box where it is used from: as far out of its wall
	// as the last of the panels, or on its face.
	used geom.Box
}

// devicesOf lists outlets and switches: those of the walls, then those of knee walls.
func devicesOf(b *rule.Build) []device {
	panels := panelsAround(b)
	var out []device
	for i := range b.Room.Walls {
		w := &b.Room.Walls[i]
		surface := w.Face()
		for j := range w.Outlets {
			o := &w.Outlets[j]
			face, _ := surface.At(geom.Point{X: o.Along, Y: o.Height})
			d := device{block: b.Block(o.Kind + "." + o.Name), wall: w, in: o, frame: w.Frame, face: face, panels: panels[o.Why.At]}
			off := o.StandsOut
			for _, p := range d.panels {
				off = max(off, d.through(p))
			}
			d.used = geom.Box{U: geom.About(o.Along, o.Box.Width), V: geom.About(face+off, 0), Z: geom.About(o.Height, o.Box.Height)}
			out = append(out, d)
		}
	}
	for i := range b.KneeWalls {
		k := &b.KneeWalls[i]
		for j := range k.Outlets {
			o := &k.Outlets[j]
			out = append(out, device{block: b.Block("outlet." + o.Name), knee: o, frame: k.Frame, used: geom.Box{U: o.Box.U, V: o.Cover.V, Z: o.Box.Z}})
		}
	}
	return out
}

// outletsOf are the devices that something can be plugged into.
func outletsOf(b *rule.Build) []device {
	return slices.DeleteFunc(devicesOf(b), func(d device) bool { return d.block.Spec.Kind != "outlet" })
}

// panelsAround finds the panels that let each thing of a wall through, by its place
// in the text.
func panelsAround(b *rule.Build) map[source.Range][]*model.Part {
	out := map[source.Range][]*model.Part{} // lookup only
	for i := range b.Parts {
		p := &b.Parts[i]
		for j := range p.Openings {
			at := p.Openings[j].Why.At
			if list := out[at]; len(list) == 0 || list[len(list)-1] != p {
				out[at] = append(list, p)
			}
		}
	}
	return out
}

// through is how far out of its wall's face the middle of a device leaves a panel; 0 where
// it misses it.
func (d *device) through(p *model.Part) geom.Length {
	f, box := p.Placement.Frame, p.Placement.Box
	nearU, nearV := f.Local(d.frame.At(d.in.Along, d.face))
	farU, farV := f.Local(d.frame.At(d.in.Along, d.face+farOut))
	enter, leave := 0.0, 1.0
	for _, c := range []struct {
		near, far geom.Length
		on        geom.Span
	}{{nearU, farU, box.U}, {nearV, farV, box.V}} {
		if c.near == c.far && !c.on.Holds(c.near) {
			return 0
		}
		if step := float64(c.far - c.near); step != 0 {
			s, t := float64(c.on.Lo-c.near)/step, float64(c.on.Hi-c.near)/step
			enter, leave = max(enter, min(s, t)), min(leave, max(s, t))
		}
	}
	if enter > leave {
		return 0
	}
	return geom.Length(float64(leave*float64(farOut)) + 0.5)
}

// farOut is further than any panel that lets a device through stands off its wall.
const farOut = 10 * length.Metre

// alsoDevices tells that the same holds of other devices, and where the first few are.
func alsoDevices(f *finding.Finding, others []device) {
	f.Text += finding.Others(len(others), " So it is with one other.", " So it is with %d others.")
	for _, d := range others[:min(len(others), 3)] {
		f.Also(d.block.Head, "likewise")
	}
}
