package bill

import (
	"barwright/compile/model"
)

// drains adds what each drain takes, in the words of the trade: pipe by whole feet or metres,
// its trap with what leads down to it, an elbow at each turn, what joins the stub, and the
// hangers of level pipe. Of a loop vent the pipe is not counted: its way is not described.
// What is cut off, glued and primed is for whoever lays it.
func (b *builder) drains() {
	for i := range b.Drains {
		d := &b.Drains[i]
		way, size := b.WayOf(d), b.Build.Plain(d.Size)
		add := func(count int, item, text, needed string) {
			if count > 0 {
				b.add(model.BillLine{Section: "fittings", Item: d.Key() + " " + item, Text: text, Use: d.Words(), Quantity: float64(count), Unit: "piece", Needed: needed})
			}
		}
		b.pipe(d, way.Length)
		add(1, "strainer", "sink strainer with tailpiece, "+b.Build.Plain(d.TrapSize), "")
		add(1, "trap", "P-trap, "+b.Build.Plain(d.TrapSize)+", seal of "+b.Build.Plain(d.Seal), "")
		add(d.Elbows, "elbow", "elbow, 90 degrees, "+size, "")
		if d.Straight {
			add(1, "coupling", "coupling to stub "+d.Stub+", "+size, "")
		}
		switch d.Vent {
		case "valve":
			add(1, "tee", "sanitary tee, "+size, "behind the trap")
			add(1, "valve", "air admittance valve, for "+size+" pipe", "")
		case "island":
			add(1, "tee", "sanitary tee, "+size, "behind the trap; the loop is not counted")
		}
		add(way.Supports, "hanger", "pipe hanger, "+size, "")
	}
}

// pipe adds what is cut of a drain's pipe.
func (b *builder) pipe(d *model.Drain, long model.Length) {
	if long == 0 {
		return
	}
	quantity, unit := b.begun(long)
	b.add(model.BillLine{
		Section: "fittings", Item: d.Key() + " pipe", Text: "drain pipe, " + b.Build.Plain(d.Size) + ", " + b.Build.Plain(d.Diameter) + " outside",
		Use: d.Words(), Quantity: quantity, Unit: unit, Needed: b.long(long),
	})
}
