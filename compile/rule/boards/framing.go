package boards

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/length"
)

// share is a part of a width, to the nanometre.
func share(of float64, width length.Length) length.Length {
	return length.Length(math.Round(of * float64(width)))
}

// woodAt is what a hole leaves at the nearer edge of a stud; its centre is so far from
// one of them.
func woodAt(wide, hole, at length.Length) length.Length { return min(at, wide-at) - hole/2 }

func percent(part, whole length.Length) string {
	return strconv.FormatFloat(float64(part)/float64(whole)*100, 'f', 1, 64) + " %"
}

// studsTooFar looks for the widest gap between neighbouring studs of each knee wall.
func studsTooFar(b *rule.Build) {
	most := b.Length(b.Limits, "stud_spacing")
	for i := range b.KneeWalls {
		wall := &b.KneeWalls[i]
		widest := 1
		for j := 2; j < len(wall.Studs); j++ {
			if wall.Studs[j]-wall.Studs[j-1] > wall.Studs[widest]-wall.Studs[widest-1] {
				widest = j
			}
		}
		gap := wall.Studs[widest] - wall.Studs[widest-1]
		if gap <= most {
			continue
		}
		block := b.Block("knee_wall." + wall.Name)
		f := b.Findings.Warnf("studs-too-far", block.Said("spacing"), fmt.Sprintf("spacing = %q", b.Show(most)),
			"Studs %d and %d of %s stand %s apart, from centre to centre: %s more than %s.", widest, widest+1, block.Describe(), b.Show(gap), b.Show(gap-most), b.Show(most))
		b.LimitOf(f, "stud_spacing")
	}
}

// supportOffStud looks for the support of each knee wall that is furthest from any
// stud: between studs a plate bends and twists.
func supportOffStud(b *rule.Build) {
	most := b.Length(b.Limits, "support_to_stud")
	for i := range b.KneeWalls {
		wall := &b.KneeWalls[i]
		furthest, off := 0, length.Length(0)
		for j, s := range wall.Supports {
			if d := toNearest(wall.Studs, s.Centre); d > off {
				furthest, off = j+1, d
			}
		}
		if off <= most {
			continue
		}
		block := b.Block("knee_wall." + wall.Name)
		f := b.Findings.Notef("support-off-stud", block.Said("spacing"), "The centre of support %d of %s stands %s from that of the nearest stud, along the plate: %s more than %s.",
			furthest, block.Describe(), b.Show(off), b.Show(off-most), b.Show(most))
		f.Mend = fmt.Sprintf("spacing = %q, or less", b.Show(2*most))
		b.LimitOf(f, "support_to_stud")
	}
}

// toNearest is how far a place is from the nearest of some rising ones.
func toNearest(rising []length.Length, at length.Length) length.Length {
	i, _ := slices.BinarySearch(rising, at)
	off := length.Max
	if i > 0 {
		off = at - rising[i-1]
	}
	if i < len(rising) {
		off = min(off, rising[i]-at)
	}
	return off
}

// studBored holds the holes in studs to their size and to their place.
func studBored(b *rule.Build) {
	eachLumber(b, "bored", func(block *lang.Block, wide length.Length) {
		hole, at := holesIn(b, block, wide)
		most, edge := share(b.Number(b.Limits, "stud_bore"), wide), b.Length(b.Limits, "stud_edge")
		left := woodAt(wide, hole, at)
		var over []string
		if hole > most {
			over = append(over, fmt.Sprintf("are %s of their width, but %s is the most", percent(hole, wide), b.Show(most)))
		}
		if left < edge {
			over = append(over, fmt.Sprintf("leave %s of wood at an edge, but %s is the least", b.Show(max(left, 0)), b.Show(edge)))
		}
		if len(over) == 0 {
			return
		}
		fits := min(most, wide-2*edge)
		f := b.Findings.Warnf("stud-bored", block.Attr("bored").Expr.At, fmt.Sprintf("holes of %s at most, in the middle; or wider lumber", b.Show(fits)),
			"Holes %s across, in studs %s wide, %s.", b.Show(hole), b.Show(wide), strings.Join(over, "; and they "))
		f.Also(b.Ref(block, "lumber").Attr("width").Expr.At, "the width")
		b.LimitOf(f, "stud_bore")
		b.LimitOf(f, "stud_edge")
	})
	for i := range b.Ways {
		studBoredFor(b, &b.Ways[i])
	}
}

// studBoredFor holds the hole of a way that leaves the least wood in a stud likewise. Where
// steel plates are to go before it is counted in the bill.
func studBoredFor(b *rule.Build, w *model.Way) {
	edge := b.Length(b.Limits, "stud_edge")
	for _, h := range w.Holes {
		part := b.Part(h.Part)
		if part.Kind != model.Lumber {
			continue
		}
		wide := part.Placement.Box.V.Size()
		most := share(b.Number(b.Limits, "stud_bore"), wide)
		if h.Wide <= most && h.Edge >= edge {
			continue
		}
		block := b.Block(w.Key())
		f := b.Findings.Warnf("stud-bored", block.Said("diameter"), fmt.Sprintf("a hole of %s at most; or wider lumber", b.Show(min(most, h.Wide-2*max(edge-h.Edge, 0)))),
			"The hole of %s in %s of %s, %s across, takes %s of a width of %s, of which %s is the most, and leaves %s of wood at an edge, of which %s is the least.",
			block.Describe(), part.Named(), part.Owner, b.Show(h.Wide), percent(h.Wide, wide), b.Show(wide), b.Show(most), b.Show(max(h.Edge, 0)), b.Show(edge)).
			Also(part.Why.At, "the knee wall")
		b.LimitOf(f, "stud_bore")
		b.LimitOf(f, "stud_edge")
		return
	}
}

// holesIn is the diameter of the holes in the studs of a knee wall, and how far their
// centres lie from the face on the work side.
func holesIn(b *rule.Build, block *lang.Block, wide length.Length) (hole, at length.Length) {
	hole, at = b.FieldLength(block, "bored", "diameter"), b.FieldLength(block, "bored", "from_work")
	if at == 0 {
		at = wide / 2
	}
	return hole, at
}

// nailPlateNeeded looks for holes so near to an edge of a stud that a nail or a screw through
// a board before it reaches what runs there.
func nailPlateNeeded(b *rule.Build) {
	if !b.WiredByCode() && !b.LimitsSay("nail_plate") {
		return
	}
	least := b.Length(b.Limits, "nail_plate")
	eachLumber(b, "bored", func(block *lang.Block, wide length.Length) {
		at := block.Attr("bored").Expr.At
		hole, from := holesIn(b, block, wide)
		left := woodAt(wide, hole, from)
		if left >= least || b.Field(block, "bored", "plates").Flag || b.Findings.Has("stud-bored", at) {
			return
		}
		f := b.Findings.Notef("nail-plate-needed", at, "Holes of %s leave %s of wood at an edge of studs %s wide: %s less than %s. Cables and most pipes in them want steel plates before them, against nails and screws.",
			b.Show(hole), b.Show(left), b.Show(wide), b.Show(least-left), b.Show(least))
		f.Mend = "plates = true in bored, with a plate on each stud"
		if fits := wide - 2*least; fits > 0 {
			f.Mend += fmt.Sprintf("; or holes of %s at most, in the middle", b.Show(fits))
		}
		b.LimitOf(f.Also(b.Ref(block, "lumber").Attr("width").Expr.At, "the width"), "nail_plate")
	})
}

// studNotched holds notches in studs to their depth.
func studNotched(b *rule.Build) {
	eachLumber(b, "notched", func(block *lang.Block, wide length.Length) {
		deep, most := b.Length(block, "notched"), share(b.Number(b.Limits, "stud_notch"), wide)
		if deep <= most {
			return
		}
		f := b.Findings.Warnf("stud-notched", block.Attr("notched").Expr.At, fmt.Sprintf("notched = %q, or wider lumber", b.Show(length.Down(most, b.Marks))),
			"Notches %s deep take %s of studs %s wide: %s more than the %s that they may.", b.Show(deep), percent(deep, wide), b.Show(wide), b.Show(deep-most), b.Show(most))
		f.Also(b.Ref(block, "lumber").Attr("width").Expr.At, "the width")
		b.LimitOf(f, "stud_notch")
	})
}

// eachLumber calls for each knee wall that states an attribute, with the width of its
// lumber.
func eachLumber(b *rule.Build, stated string, look func(block *lang.Block, wide length.Length)) {
	for i := range b.KneeWalls {
		if block := b.Block("knee_wall." + b.KneeWalls[i].Name); block.Attr(stated) != nil {
			look(block, b.KneeWalls[i].Framing.V.Size())
		}
	}
}

// plateCut looks at what is cut out of the plates of knee walls for pipes and boxes.
func plateCut(b *rule.Build) {
	for i := range b.Parts {
		if p := &b.Parts[i]; p.Is("knee_wall", "plate") && len(p.Openings) > 0 {
			cutOfPlate(b, p)
		}
	}
}

func cutOfPlate(b *rule.Build, p *model.Part) {
	blank := p.Placement.Blank()
	var cuts []cutOut
	for i := range p.Openings {
		// A strip along the floor takes a slice off the plate's end: no weak place.
		if o := &p.Openings[i]; o.Shape.Bounds().Y.Size() < blank.Y.Size() {
			cuts = append(cuts, cutOut{o.Shape.Bounds().Intersect(blank), o})
		}
	}
	wide, at := deepest(cuts)
	most := share(b.Number(b.Limits, "plate_cut"), blank.Y.Size())
	if wide <= most || b.Findings.Has("plate-cut", at[0].Why.At) { // as in the plate under it
		return
	}
	names := make([]string, len(at))
	for i, o := range at {
		names[i] = o.Name
	}
	f := b.Findings.Warnf("plate-cut", at[0].Why.At, fmt.Sprintf("cut out %s at most, clearances counted; or tie the plate across the cut", b.Show(length.Down(most, b.Marks))),
		"%s, %s of %s, loses %s of its %s to %s: %s, but %s is the most.", p.Label, p.Named(), p.Owner, b.Show(wide), b.Show(blank.Y.Size()), strings.Join(names, " and "),
		percent(wide, blank.Y.Size()), strconv.FormatFloat(b.Number(b.Limits, "plate_cut")*100, 'g', 3, 64)+" %")
	f.Also(p.Why.At, "the plate")
	b.LimitOf(f, "plate_cut")
}

// cutOut is what an opening takes of a plate.
type cutOut struct {
	at geom.Rect
	*model.Opening
}

// deepest is the most width that is cut away at one section across a plate, and what
// is cut there, in the order of the width.
func deepest(cuts []cutOut) (wide length.Length, at []cutOut) {
	slices.SortStableFunc(cuts, func(a, b cutOut) int { return cmp.Compare(a.at.Y.Lo, b.at.Y.Lo) })
	for _, c := range cuts { // one of them begins at the deepest section
		var taken, reached length.Length
		var there []cutOut
		for _, d := range cuts {
			if d.at.X.Lo > c.at.X.Lo || c.at.X.Lo >= d.at.X.Hi {
				continue
			}
			from := d.at.Y.Lo
			if len(there) > 0 {
				from = max(from, reached)
			}
			taken += max(d.at.Y.Hi-from, 0)
			reached, there = max(d.at.Y.Hi, from), append(there, d)
		}
		if taken > wide {
			wide, at = taken, there
		}
	}
	return wide, at
}
