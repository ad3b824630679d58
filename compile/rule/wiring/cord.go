package wiring

import (
	"fmt"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/length"
	"barwright/lang/source"
)

// runBox is a box of a run.
type runBox struct {
	run *model.Run
	nth int
}

func (p runBox) box() *model.Box { return &p.run.Boxes[p.nth] }

// plugged is an appliance and the outlet that it is plugged into.
type plugged struct {
	bay, in runBox // in is where the outlet lies, if within says that it is in a box
	within  bool
	outlet  device
	cord    *lang.Block  // nil where a bay alone says so
	at      source.Range // where it is said
}

// pluggedIn lists what cords say, then the plugs of bays that no cord repeats.
func pluggedIn(b *rule.Build, outlets []device) []plugged {
	bays := bayPlaces(b)
	byName := map[string]*device{} // lookup only
	for i := range outlets {
		byName[outlets[i].block.Name] = &outlets[i]
	}
	var out []plugged
	told := map[[2]string]bool{} // lookup only
	add := func(bay, outlet, cord *lang.Block, at source.Range) {
		key := [2]string{bay.Name, outlet.Name}
		if cord == nil && told[key] {
			return
		}
		told[key] = true
		p := plugged{bay: bays[bay.Name], outlet: *byName[outlet.Name], cord: cord, at: at}
		p.in, p.within = boxAround(b, &p.outlet)
		out = append(out, p)
	}
	for _, c := range b.Source.Top("cord") {
		add(b.Ref(c, "of"), b.Ref(c, "to"), c, c.Attr("to").Expr.At)
	}
	for _, run := range b.Source.Top("run") {
		for _, bay := range run.Inner("bay") {
			if a := bay.Attr("plug"); a != nil {
				add(bay, b.Ref(bay, "plug"), nil, a.Expr.At)
			}
		}
	}
	return out
}

// bayPlaces finds the bays of the build by their names.
func bayPlaces(b *rule.Build) map[string]runBox {
	out := map[string]runBox{} // lookup only
	for i := range b.Runs {
		for j := range b.Runs[i].Boxes {
			if b.Runs[i].Boxes[j].Kind == model.Bay {
				out[b.Runs[i].Boxes[j].Name] = runBox{&b.Runs[i], j}
			}
		}
	}
	return out
}

// seenFrom is the extent of a device, where it is used from, in another frame.
func (d *device) seenFrom(f geom.Frame) geom.Box {
	lu, lv := f.Local(d.frame.At(d.used.U.Lo, d.used.V.Lo))
	hu, hv := f.Local(d.frame.At(d.used.U.Hi, d.used.V.Lo))
	return geom.Box{U: geom.Between(lu, hu), V: geom.Between(lv, hv), Z: d.used.Z}
}

// besideRun is how far behind a run a device may lie and still be its boxes': that
// of the projection (SPEC.md 7.1).
const besideRun = 50 * length.Millimetre

// boxAround is the box of a run that a device lies in, its middle seen from above, if
// it lies under their top.
func boxAround(b *rule.Build, d *device) (runBox, bool) {
	for i := range b.Runs {
		run := &b.Runs[i]
		at := d.seenFrom(run.Frame)
		u, v := at.U.Mid(), at.V.Mid()
		if at.Z.Mid() > run.Height || v < -besideRun || v > run.Depth {
			continue
		}
		if j := slices.IndexFunc(run.Boxes, func(box model.Box) bool { return box.Hull.U.Holds(u) }); j >= 0 {
			return runBox{run, j}, true
		}
	}
	return runBox{}, false
}

func plugOutOfReach(b *rule.Build) {
	outlets := outletsOf(b)
	var inside map[*model.Box]string // the first outlet in a cabinet; lookup only
	for _, p := range pluggedIn(b, outlets) {
		why := whyNotPlugged(b, &p)
		if why == "" {
			continue
		}
		if inside == nil {
			inside = outletsInside(b, outlets)
		}
		b.Findings.Warnf("plug-out-of-reach", p.at, besides(b, &p, inside), "%s", why).
			Also(p.outlet.block.Head, "the outlet")
	}
}

// whyNotPlugged says why nobody can plug an appliance in where it is said to be; it is
// empty where nothing is known against it.
func whyNotPlugged(b *rule.Build, p *plugged) string {
	whose := fmt.Sprintf("The appliance of bay %q is to be plugged into %s", p.bay.box().Name, p.outlet.block.Describe())
	switch {
	case p.outlet.knee != nil && p.outlet.knee.Face == "room":
		return whose + ", which is on the far side of its knee wall."
	case p.behind():
		at, a := p.outlet.seenFrom(p.in.run.Frame), p.in.box().Appliance
		return fmt.Sprintf("%s, which is behind the appliance of bay %q, %s from its rear: no hand gets there while that stands, and the plug may keep it from going back.",
			whose, p.in.box().Name, b.Show(max(a.V.Lo-at.V.Hi, 0)))
	case p.within && p.in.run != p.bay.run:
		return fmt.Sprintf("%s, which is used from inside %s %s of another run: no cord goes from one to the other.", whose, p.in.box().Kind, p.in.box().Name)
	}
	if out := p.outlet.seenFrom(p.bay.run.Frame).V.Lo - p.bay.run.Depth; out > 0 {
		return fmt.Sprintf("%s, which lies %s out before the boxes of run %q: the cord would cross the floor where people walk.", whose, b.Show(out), p.bay.run.Name)
	}
	return ""
}

// behind reports whether the outlet lies behind an appliance, in its width and height.
func (p *plugged) behind() bool {
	if !p.within || p.in.box().Kind != model.Bay {
		return false
	}
	at, a := p.outlet.seenFrom(p.in.run.Frame), p.in.box().Appliance
	return at.U.Overlaps(a.U) && at.Z.Overlaps(a.Z)
}

// outletsInside finds an outlet that is used from inside each cabinet that has one.
func outletsInside(b *rule.Build, outlets []device) map[*model.Box]string {
	out := map[*model.Box]string{} // lookup only
	for _, d := range outlets {
		if in, ok := boxAround(b, &d); ok && in.box().Kind == model.Cabinet && out[in.box()] == "" {
			out[in.box()] = d.block.Key()
		}
	}
	return out
}

// besides is an outlet that is used from a cabinet beside a bay, or where there is room
// for one.
func besides(b *rule.Build, p *plugged, inside map[*model.Box]string) string {
	run, room := p.bay.run, ""
	for _, nth := range []int{p.bay.nth - 1, p.bay.nth + 1} {
		if nth < 0 || nth >= len(run.Boxes) || run.Boxes[nth].Kind != model.Cabinet {
			continue
		}
		box := &run.Boxes[nth]
		if outlet := inside[box]; outlet != "" {
			return outlet + ", which is used from inside the box beside it"
		}
		drawer := slices.ContainsFunc(box.Fronts, func(f model.Front) bool { return f.Kind == model.Drawer })
		if d := &p.outlet; room == "" && !drawer && d.wall != nil && d.wall.Name == run.Wall && run.Along {
			from, _ := d.frame.Local(run.Frame.At(box.Inside.U.Lo, 0))
			half := d.in.Cover.Width - d.in.Cover.Width/2
			room = fmt.Sprintf("; from %s to %s along the wall it is in %s",
				b.Show(length.Up(from+half, b.Marks)), b.Show(length.Down(from+box.Inside.U.Size()-half, b.Marks)), box.Words())
		}
	}
	return "an outlet that is used from inside the box beside the bay" + room
}

// cordTooShort measures a cord along its way through the sides between, where it has one;
// any other from the middle of the foot of the appliance's rear, along the run, across it
// and up, to the middle of the outlet.
func cordTooShort(b *rule.Build) {
	for _, p := range pluggedIn(b, outletsOf(b)) {
		if p.cord == nil || whyNotPlugged(b, &p) != "" {
			continue
		}
		goes, far := cordGoes(b, &p)
		slack, long := b.Length(p.cord, "slack"), b.Length(p.cord, "length")
		need := far + slack
		if need <= long {
			continue
		}
		b.Findings.Warnf("cord-too-short", p.cord.Attr("length").Expr.At, fmt.Sprintf("a cord of %s, or an outlet that is nearer", b.Show(need)),
			"From the foot of the appliance's rear to %s a cord goes %s, and %s of slack: it needs %s and is %s too short.",
			p.outlet.block.Describe(), goes, b.Show(slack), b.Show(need), b.Show(need-long)).
			Also(p.outlet.block.Head, "the outlet")
	}
}

// cordGoes tells how a cord goes, and how far.
func cordGoes(b *rule.Build, p *plugged) (goes string, far length.Length) {
	i := slices.IndexFunc(b.Ways, func(w model.Way) bool { return w.Kind == "cord" && w.Name == p.cord.Name })
	if i < 0 {
		a, at := p.bay.box().Appliance, p.outlet.seenFrom(p.bay.run.Frame)
		along, across, up := length.Apart(at.U.Mid(), a.U.Mid()), length.Apart(at.V.Mid(), a.V.Lo), length.Apart(at.Z.Mid(), a.Z.Lo)
		return fmt.Sprintf("%s along the run, %s across and %s up or down", b.Show(along), b.Show(across), b.Show(up)), along + across + up
	}
	var past []string
	for _, h := range b.Ways[i].Holes {
		part := b.Part(h.Part)
		past = append(past, part.Named()+" of "+part.Owner)
	}
	return fmt.Sprintf("%s, through %s", b.Show(b.Ways[i].Length), strings.Join(past, " and ")), b.Ways[i].Length
}

func noAirPath(b *rule.Build) {
	bays := bayPlaces(b)
	for _, run := range b.Source.Top("run") {
		for _, bay := range run.Inner("bay") {
			if b.Text(bay, "air") == "rear" {
				rearAir(b, bay, bays[bay.Name].box())
			}
		}
	}
}

// rearAir looks at the gaps round an appliance that breathes at its rear.
func rearAir(b *rule.Build, bay *lang.Block, box *model.Box) {
	at := bay.Attr("air").Expr.At
	var short, mend []string
	for _, g := range []struct {
		attr, field, where string
	}{{"back_gap", "back", "behind it"}, {"top_gap", "top", "over it"}, {"gap", "sides", "on each side"}} {
		have, need := b.Length(bay, g.attr), b.FieldLength(b.Limits, "air_gap", g.field)
		if have >= need {
			continue
		}
		short = append(short, fmt.Sprintf("%s %s, %s too little", b.Show(have), g.where, b.Show(need-have)))
		if a := bay.Attr(g.attr); a != nil && len(short) == 1 {
			at = a.Expr.At
		}
		if g.attr == "top_gap" && box.BlockHeight < need-have {
			mend = append(mend, fmt.Sprintf("a carcass %s higher, for top_gap = %q", b.Show(need-have-box.BlockHeight), b.Show(need)))
			continue
		}
		mend = append(mend, fmt.Sprintf("%s = %q", g.attr, b.Show(need)))
	}
	if len(short) == 0 {
		return
	}
	b.LimitOf(b.Findings.Warnf("no-air-path", at, strings.Join(mend, ", "),
		"The appliance of bay %q breathes at its rear, where its air must rise and leave at the top. It has %s.", bay.Name, strings.Join(short, "; ")), "air_gap")
}
