package water

import (
	"strings"

	"barwright/compile/geom"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
)

func drainNarrows(b *rule.Build) {
	for _, o := range outflowsOf(b) {
		if o.TrapSize > o.Size {
			b.Findings.Warnf("drain-narrows", o.block.Said("trap"), "a trap of "+b.Show(o.Size)+", or a wider pipe",
				"%s leads from a trap of %s; its pipe of %s is %s narrower, and what passes the one stops in the other.",
				finding.Capital(o.block.Describe()), b.Show(o.TrapSize), b.Show(o.Size), b.Show(o.TrapSize-o.Size))
			continue
		}
		if size := b.Length(o.stubText, "size"); size != 0 && o.Size > size {
			narrowsAtStub(b, &o, "a pipe of "+b.Show(o.Size), "of "+b.Show(size), o.Size-size, "size")
		} else if size == 0 && o.Diameter > o.stub.Diameter {
			narrowsAtStub(b, &o, "a pipe "+b.Show(o.Diameter)+" across", b.Show(o.stub.Diameter)+" across at its widest fitting", o.Diameter-o.stub.Diameter, "diameter")
		}
	}
}

func narrowsAtStub(b *rule.Build, o *outflow, pipe, stub string, by geom.Length, judged string) {
	b.Findings.Warnf("drain-narrows", o.block.Said("size", "diameter"), "a narrower drain, or a wider stub",
		"%s, %s, leads into stub %q, which is %s: %s narrower, and what passes the one stops in the other.",
		finding.Capital(o.block.Describe()), pipe, o.stub.Name, stub, b.Show(by)).
		Also(o.stubText.Attr(judged).Expr.At, "the stub's own")
}

func trapTooSmall(b *rule.Build) {
	if !limitsWater(b, "trap_size") {
		return
	}
	least := b.Length(b.Limits, "trap_size")
	for _, o := range outflowsOf(b) {
		if o.TrapSize >= least {
			continue
		}
		f := b.Findings.Warnf("trap-too-small", o.block.Said("trap", "size", "diameter"), "a trap of "+b.Show(least)+", and a pipe that is no narrower",
			"The trap of %s is of %s, but %s asks for %s at a sink of a bar: %s too small.",
			o.block.Describe(), b.Show(o.TrapSize), waterFrom(b, "trap_size"), b.Show(least), b.Show(least-o.TrapSize))
		b.LimitOf(f, "trap_size")
	}
}

func stubTooHigh(b *rule.Build) {
	for _, o := range outflowsOf(b) {
		lack := o.lacks()
		if lack <= 0 {
			continue
		}
		b.Findings.Warnf("stub-too-high", o.stubAt(), o.drained(b),
			"Stub %q is at %s, and %s falls %s on its way there. Under the bowl, at %s, trap and tailpiece take %s: the stub is %s too high to drain it.",
			o.stub.Name, b.Level(o.stub.Height), o.block.Describe(), b.Show(o.Fall), b.Show(o.from.bowl.Z.Lo), b.Show(o.drop), b.Show(lack)).
			Also(o.from.block.Head, "its bowl hangs here")
	}
}

// drained is the mend of a stub that is too high: one that leaves the trap its room, a
// bowl that is less deep, or else words.
func (o *outflow) drained(b *rule.Build) string {
	var ways []string
	low := length.Down(o.stub.Height-o.lacks(), b.Marks)
	trap := o.Under - (o.stub.Height - low)
	if low >= o.Diameter/2 && (o.Vent != "wall" || trap >= o.from.cabinet().Inside.Z.Lo) {
		ways = append(ways, "the stub at "+o.stubAs(b, low, false)+" at most")
	}
	if deep := length.Down(o.from.top-(o.from.bowl.Z.Lo+o.lacks()), b.Marks); deep > o.from.top-o.from.bowl.Z.Hi {
		ways = append(ways, "a bowl "+b.Show(deep)+" deep at most")
	}
	if len(ways) == 0 {
		return "a sink nearer to the stub"
	}
	return strings.Join(ways, ", or ")
}

// stubAs is how high the stub is to be, as it is measured on its wall.
func (o *outflow) stubAs(b *rule.Build, z geom.Length, higher bool) string {
	for i := range b.Room.Walls {
		w := &b.Room.Walls[i]
		for j := range w.Stubs {
			if w.Stubs[j].Name == o.stub.Name {
				return b.Measured(w, o.stub.Along, z, higher)
			}
		}
	}
	return b.Show(z)
}

// lacks is how much too high the stub is for the bowl to drain into it.
func (o *outflow) lacks() geom.Length { return o.stub.Height + o.Fall + o.drop - o.from.bowl.Z.Lo }

func stubTooLow(b *rule.Build) {
	for _, o := range outflowsOf(b) {
		if o.Vent != "wall" {
			continue // where the vent is nearer, the pipe may drop behind it
		}
		box := o.from.cabinet()
		under, long := box.Inside.Z.Lo-o.Under, geom.Length(0)
		if limitsWater(b, "tailpiece") {
			long = o.from.bowl.Z.Lo - o.Weir - b.Length(b.Limits, "tailpiece")
		}
		lack := max(under, long)
		if lack <= 0 {
			continue
		}
		mend := "the stub at " + o.stubAs(b, o.stub.Height+lack, true) + " at least"
		if under >= long {
			b.Findings.Warnf("stub-too-low", o.stubAt(), mend,
				"Stub %q is at %s: with its fall, the trap of %s reaches down to %s, %s lower than the upper face of the bottom of cabinet %s.",
				o.stub.Name, b.Level(o.stub.Height), o.block.Describe(), b.Show(o.Under), b.Show(under), box.Name).
				Also(box.Why.At, "the sink hangs in it")
			continue
		}
		f := b.Findings.Warnf("stub-too-low", o.stubAt(), mend,
			"Stub %q is at %s: with its fall, water leaves the trap of %s %s under the bowl. %s allows %s: %s too much.",
			o.stub.Name, b.Level(o.stub.Height), o.block.Describe(), b.Show(o.from.bowl.Z.Lo-o.Weir),
			finding.Capital(waterFrom(b, "tailpiece")), b.Show(b.Length(b.Limits, "tailpiece")), b.Show(long)).
			Also(o.from.block.Head, "its bowl hangs here")
		b.LimitOf(f, "tailpiece")
	}
}
