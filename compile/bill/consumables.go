package bill

import (
	"math"
	"strconv"

	"barwright/compile/model"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// shims adds the wedges that level the boxes and fill behind them: two for
// each point, driven against each other, at the four corners of each cabinet
// and behind each screw into a wall of the room (common practice: shim up from
// the high point of the floor, and solid behind each wall screw). Bays stand
// on blocks and legs are turned level: they count for nothing.
func (b *builder) shims() {
	corners, screws := 0, 0
	for _, r := range b.Runs {
		for _, box := range r.Boxes {
			if box.Kind == model.Cabinet && len(box.Legs) == 0 {
				corners += 4
			}
		}
	}
	for _, f := range b.Fastening {
		if f.Backing != "" {
			screws += f.Count
		}
	}
	if corners+screws == 0 {
		return
	}
	shims := 2 * (corners + screws)
	b.add(model.BillLine{
		Section: "consumables", Item: "shims", Text: "wooden wedge shims", Use: "cabinet feet, behind wall screws",
		Quantity: float64(portions(shims, shimsPerPack)), Unit: "pack of " + strconv.Itoa(shimsPerPack),
		Needed: finding.Counted(shims, "shim") + ": a pair at " + finding.Counted(corners, "corner") + " and " + finding.Counted(screws, "wall screw"),
	})
}

// wallPlugs adds a plug for each screw into masonry, with the spare that the
// screws have (common practice: plug and drill as the plug's maker says).
func (b *builder) wallPlugs() {
	count := 0
	var screws list
	for _, f := range b.Fastening {
		if f.Backing == "masonry" {
			count += f.Count
			screws.add(f.Screw)
		}
	}
	if count == 0 {
		return
	}
	b.add(model.BillLine{
		Section: "consumables", Item: "wall plugs", Text: "wall plugs for " + screws.String() + ", and the masonry drill bit that their maker names",
		Use: "screws into masonry", Quantity: float64(withSpare(count)), Unit: "plug", Needed: finding.Counted(count, "screw") + " into masonry",
	})
}

// Adhesive comes in beads a quarter of an inch thick along the piece: two, and
// on pieces wider than 200 mm one for each 100 mm begun (common practice).
const (
	bead        = length.Inch / 4
	beadSpacing = 100 * length.Millimetre
)

func (b *builder) adhesive() {
	var beads model.Length
	glued := 0
	var owners list
	for i := range b.Parts {
		p := &b.Parts[i]
		if !p.Glued {
			continue
		}
		x, y := p.Size()
		beads += max(x, y) * max(2, (min(x, y)+beadSpacing-1)/beadSpacing)
		glued++
		owners.add(p.Owner)
	}
	if glued == 0 {
		return
	}
	d := bead.MM()
	ml := float64(math.Pi/4*float64(d*d)*beads.MM()) / 1000
	b.add(model.BillLine{
		Section: "consumables", Item: "adhesive", Text: "construction adhesive, tube of " + strconv.Itoa(tubeML) + " ml",
		Use: owners.String(), Quantity: math.Ceil(ml / tubeML), Unit: "tube",
		Needed: "a bead 1/4 in (6 mm) thick, " + b.long(beads) + " long, under " + finding.Counted(glued, "piece"),
	})
}

// nailPlates counts those before the holes of cables in studs; where the description lays
// no cable there, it reminds of what nobody can count.
func (b *builder) nailPlates() {
	if len(b.KneeWalls) == 0 {
		return
	}
	count, holes := b.plates()
	if holes > 0 && count == 0 {
		return
	}
	text, needed := "steel nail plates", "not known: as many as the electrician says; the local wiring rules decide"
	if b.Build.Unit.Imperial() {
		text += ", at least 1/16 in (1.6 mm) thick"
		needed = "not known: one for each edge of a stud nearer than 1 1/4 in (32 mm) to a cable's hole " +
			"(NEC 300.4(A)(1)); the electrician and the local code decide"
	}
	if count > 0 {
		needed = finding.Counted(count, "plate") + " before " + finding.Counted(holes, "hole") + " in studs; the local wiring rules decide"
	}
	b.add(model.BillLine{
		Section: "consumables", Item: "nail plates", Text: text,
		Use: "cables through the studs of the knee wall", Quantity: float64(count), Unit: "piece", Needed: needed,
	})
}

// routerBits adds one bit of each kind that the programs use.
func (b *builder) routerBits() {
	type kind struct {
		diameter model.Length
		flutes   int
	}
	var order []kind
	deepest, path, count := map[kind]model.Length{}, map[kind]model.Length{}, map[kind]int{} // lookup only
	use := func(t *model.Tool, cut, depth model.Length) {
		k := kind{t.Diameter, t.Flutes}
		if count[k] == 0 {
			order = append(order, k)
		}
		count[k]++
		path[k] += cut
		deepest[k] = max(deepest[k], depth)
	}
	for i := range b.Programs {
		if p := &b.Programs[i]; !p.Test {
			use(&p.Tool, p.CutLength, p.Depth)
		}
	}
	for i := range b.Routings {
		r := &b.Routings[i]
		_, z := r.Reach()
		use(&r.Tool, r.CutLength, -z.Lo)
	}
	for _, k := range order {
		b.add(model.BillLine{
			Section: "consumables", Item: "router bit",
			Text: "router bit, " + b.Build.Plain(k.diameter) + ", " + finding.Counted(k.flutes, "flute") +
				", cutting " + b.depth(deepest[k]) + " or deeper",
			Use: "router programs", Quantity: 1, Unit: "bit",
			Needed: finding.Counted(count[k], "program") + ", " + b.long(path[k]) + " of path",
		})
	}
}

// depth prints how deep a bit must cut: begun sixteenths of an inch, or begun
// millimetres, counted whole.
func (b *builder) depth(l model.Length) string {
	if b.Build.Unit.Imperial() {
		return length.Show(length.Up(l, length.Inch/16), length.Inches, length.Inch/16)
	}
	return b.Build.Plain(length.Up(l, length.Millimetre))
}
