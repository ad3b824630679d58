package wiring

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// gauges are the wires that a box may hold, from thick to thin, with the volume in
// cubic inches that each takes (NEC Table 314.16(B)).
var gauges = []struct {
	field  string
	volume float64
}{{"awg6", 5}, {"awg8", 3}, {"awg10", 2.5}, {"awg12", 2.25}, {"awg14", 2}, {"awg16", 1.75}, {"awg18", 1.5}}

// fill is what a box holds, in cubic inches.
type fill struct {
	total float64
	parts []string // "4 conductors 9"
}

func (f *fill) add(n float64, what string, each float64) {
	if n > 0 {
		f.total += float64(n * each)
		f.parts = append(f.parts, what+" "+model.Thousandths(n*each))
	}
}

// fillOf adds up what a box holds (NEC 314.16(B)). Clamps, grounds, fittings and
// devices take the volume of the thickest conductor; ok is false where no conductor
// is told of.
func fillOf(b *rule.Build, d *device) (f fill, ok bool) {
	if d.block.Attr("wires") == nil {
		return f, false
	}
	told := func(field string) float64 { return b.FieldNumber(d.block, "wires", field) }
	largest := 0.0
	for _, g := range gauges {
		if n := told(g.field); n > 0 {
			largest = max(largest, g.volume)
			f.add(n, finding.Counted(int(n), "conductor"), g.volume)
		}
	}
	if grounds := told("grounds"); grounds > 0 {
		f.add(1+max(0, grounds-4)/4, finding.Counted(int(grounds), "ground"), largest)
	}
	f.add(2*told("devices"), finding.Counted(int(told("devices")), "device"), largest)
	f.add(told("fittings"), finding.Counted(int(told("fittings")), "fitting"), largest)
	if b.Field(d.block, "wires", "clamps").Flag {
		f.add(1, "clamps", largest)
	}
	return f, largest > 0
}

// metalBoxes are boxes whose volume is published (NEC Table 314.16(A)), in
// sixteenths of an inch: by the sides of their front and their depth.
var metalBoxes = []struct {
	short, long, depth length.Length
	volume             float64
}{
	{32, 48, 32, 10}, {32, 48, 36, 10.5}, {32, 48, 40, 12.5}, {32, 48, 44, 14}, {32, 48, 56, 18},
	{64, 64, 24, 21}, {64, 64, 34, 30.3},
}

// volumeOf is the volume of a box in cubic inches: as marked on it, or as published
// for one of its size; 0 where neither is known.
func volumeOf(b *rule.Build, d *device) float64 {
	if marked := b.FieldNumber(d.block, "box", "volume"); marked > 0 {
		return marked
	}
	size := func(side string) length.Length { return b.FieldLength(d.block, "box", side) }
	w, h := size("width"), size("height")
	for _, m := range metalBoxes {
		const step = length.Inch / 16
		if min(w, h) == m.short*step && max(w, h) == m.long*step && size("depth") == m.depth*step {
			return m.volume
		}
	}
	return 0
}

func boxOverfilled(b *rule.Build) {
	if !b.WiredByCode() {
		return
	}
	for _, d := range devicesOf(b) {
		f, ok := fillOf(b, &d)
		have := volumeOf(b, &d)
		if !ok || have == 0 || f.total <= have {
			continue
		}
		b.Findings.Warnf("box-overfilled", d.block.Attr("wires").Expr.At, fmt.Sprintf("a box of %s cubic inches or more, as marked on it", model.Thousandths(f.total)),
			"The wires of %s take %s cubic inches (%s), but its box has %s: %s too little.",
			d.block.Describe(), model.Thousandths(f.total), strings.Join(f.parts, ", "), model.Thousandths(have), model.Thousandths(f.total-have))
	}
}

func boxVolumeUnknown(b *rule.Build) {
	if !b.WiredByCode() {
		return
	}
	for _, d := range devicesOf(b) {
		if f, ok := fillOf(b, &d); ok && volumeOf(b, &d) == 0 {
			b.Findings.Notef("box-volume-unknown", d.block.Attr("wires").Expr.At,
				"The wires of %s take %s cubic inches (%s), but how much its box holds is not said.",
				d.block.Describe(), model.Thousandths(f.total), strings.Join(f.parts, ", ")).
				Mend = "box = { volume = … } in cubic inches, as marked on the box"
		}
	}
}

// boxTooDeep looks at the boxes of each wall, of which the one that is most too deep
// stands for all.
func boxTooDeep(b *rule.Build) {
	devices := devicesOf(b)
	for len(devices) > 0 && devices[0].wall != nil {
		wall := devices[0].wall
		n := 1
		for n < len(devices) && devices[n].wall == wall {
			n++
		}
		tooDeep(b, b.Block("wall."+wall.Name), devices[:n])
		devices = devices[n:]
	}
}

func tooDeep(b *rule.Build, wall *lang.Block, devices []device) {
	stated := wall.Attr("cavity")
	if stated == nil && b.Text(wall, "backing") != "studs" {
		return
	}
	cavity := b.Length(wall, "cavity")
	into := func(d device) geom.Length { return d.in.Box.Depth - d.in.StandsOut }
	deep := slices.DeleteFunc(slices.Clone(devices), func(d device) bool { return into(d) <= cavity })
	slices.SortStableFunc(deep, func(x, y device) int { return cmp.Compare(into(y), into(x)) })
	if len(deep) == 0 {
		return
	}
	d, room := deep[0], "has"
	if stated == nil {
		room = "is taken to have"
	}
	f := b.Findings.Warnf("box-too-deep", d.block.Said("box"), fmt.Sprintf("a box at most %s deep, or the cavity of the wall as measured", b.Show(cavity+d.in.StandsOut)),
		"The box of %s reaches %s behind the face of %s, which %s %s of room there: %s too deep.",
		d.block.Describe(), b.Show(into(d)), wall.Describe(), room, b.Show(cavity), b.Show(into(d)-cavity))
	alsoDevices(f, deep[1:])
	if stated != nil {
		f.Also(stated.Expr.At, "the cavity")
	}
}

// boxBehindPanel looks for boxes in a wall whose front lies behind the face of a
// board that they are used through. The one that lies furthest back stands for all.
func boxBehindPanel(b *rule.Build) {
	if !b.WiredByCode() {
		return
	}
	back := func(d device) (by geom.Length, board *model.Part) {
		if d.wall == nil || b.Flag(d.block, "extender") || b.Flag(d.block.Parent, "extenders") {
			return 0, nil
		}
		for _, p := range d.panels {
			if off := d.through(p) - d.in.StandsOut; off > by && !d.bare(p) {
				by, board = off, p
			}
		}
		return by, board
	}
	behind := slices.DeleteFunc(devicesOf(b), func(d device) bool { _, board := back(d); return board == nil })
	if len(behind) == 0 {
		return
	}
	slices.SortStableFunc(behind, func(x, y device) int {
		xBy, _ := back(x)
		yBy, _ := back(y)
		return cmp.Compare(yBy, xBy)
	})
	d := behind[0]
	by, board := back(d)
	f := b.Findings.Warnf("box-behind-panel", d.block.Head, "extender = true, or extenders = true of the wall, with rings that bring boxes out to that face",
		"The front of the box of %s lies %s behind the face of %s of %s, through which it is used. In wood or another surface that burns it is flush or stands out.",
		d.block.Describe(), b.Show(by), board.Named(), board.Owner)
	alsoDevices(f.Also(board.Why.At, "the board"), behind[1:])
}

// bare reports whether the opening of a device in a panel is as large as its cover
// plate, which then lies on the wall.
func (d *device) bare(p *model.Part) bool {
	for i := range p.Openings {
		if o := &p.Openings[i]; o.Why.At == d.in.Why.At {
			size := o.Shape.Bounds()
			if size.X.Size() >= d.in.Cover.Width && size.Y.Size() >= d.in.Cover.Height {
				return true
			}
		}
	}
	return false
}
