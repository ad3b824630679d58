package loads

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/rule"
	"barwright/lang/length"
)

// soldBars are the widths and thicknesses of flat bar that mends name, as common
// practice has them on the rack, from the least.
func soldBars(b *rule.Build) (wide, thick []geom.Length) {
	if b.Source.Unit.Imperial() {
		for _, quarters := range []geom.Length{8, 10, 12, 16, 20, 24} {
			wide = append(wide, quarters*length.Inch/4)
		}
		for _, eighths := range []geom.Length{3, 4, 5, 6, 8} {
			thick = append(thick, eighths*length.Inch/8)
		}
		return wide, thick
	}
	for _, mm := range []geom.Length{50, 60, 80, 100, 120, 150} {
		wide = append(wide, mm*length.Millimetre)
	}
	for _, mm := range []geom.Length{8, 10, 12, 15, 20, 25} {
		thick = append(thick, mm*length.Millimetre)
	}
	return wide, thick
}

// of is a bar with other steel. What goes through it stays where it is.
func (t bar) of(wide, thick geom.Length) bar {
	t.plates = slices.Clone(t.plates)
	for i := range t.plates {
		p := &t.plates[i]
		support := *p.Support
		support.Steel.Z.Lo = support.Steel.Z.Hi - thick
		support.Steel.U = geom.Span{Lo: support.Centre - wide/2, Hi: support.Centre + wide/2}
		p.Support = &support
		p.beam.width, p.beam.thick = wide.MM(), thick.MM()
	}
	return t
}

// carries reports whether the steel of a bar does all that is asked of it: strong
// and stiff enough, in recesses that leave enough wood, and without taking from
// screws that hold, by those of it as it is, the thread that they need.
func (t bar) carries(b *rule.Build, held bool) bool {
	_, weak := t.weakest(b)
	_, low := t.lowest(b)
	return !weak && !low && t.recess() <= t.mostRecess(b) && (!held || t.screwsHold(b))
}

// stouter is the mend for steel that does too little: the least flat bar that is
// sold and does, wider or thicker, or what else helps where there is none.
func stouter(b *rule.Build, t *bar) string {
	wide, thick := soldBars(b)
	w, h, held := t.plates[0].Steel.U.Size(), t.plates[0].Steel.Z.Size(), t.screwsHold(b)
	text := ""
	for _, wider := range wide {
		if wider > w && t.of(wider, h).carries(b, held) {
			text = "flat bar that is " + b.Show(wider) + " wide"
			break
		}
	}
	for _, thicker := range thick {
		if thicker > h && t.of(w, thicker).carries(b, held) {
			if text != "" {
				return text + ", or one that is " + b.Show(thicker) + " thick"
			}
			return "flat bar that is " + b.Show(thicker) + " thick"
		}
	}
	if text != "" {
		return text
	}
	for _, wider := range wide {
		for _, thicker := range thick {
			if wider > w && thicker > h && t.of(wider, thicker).carries(b, held) {
				return "flat bar that is " + b.Show(wider) + " wide and " + b.Show(thicker) + " thick"
			}
		}
	}
	return "less overhang on the room's side, supports nearer to the ends, or top_plates = 2 with thicker flat bar and longer screws"
}
