package rule

import (
	"barwright/compile/geom"
	"barwright/lang"
)

var seats = []Rule{
	{"counter-off-height", counterOffHeight},
	{"bar-off-height", barOffHeight},
	{"seats-too-narrow", seatsTooNarrow},
	{"knees-too-shallow", kneesTooShallow},
	{"no-room-behind-seats", noRoomBehindSeats},
}

func counterOffHeight(b *Build) {
	for i := range b.Slabs {
		s := &b.Slabs[i]
		if usual := b.usual("counter_height"); s.Kind == "counter" && !usual.Contains(geom.Span{Lo: s.Box.Z.Hi, Hi: s.Box.Z.Hi}) {
			b.limitOf(b.Findings.Notef("counter-off-height", s.Why.At, "%s", b.offHeight(s.Kind+" "+s.Name, s.Box.Z.Hi, usual)), "counter_height")
		}
	}
}

func barOffHeight(b *Build) {
	for i := range b.Slabs {
		s := &b.Slabs[i]
		if usual := b.usual("bar_height"); s.Kind == "bar_top" && !usual.Contains(geom.Span{Lo: s.Box.Z.Hi, Hi: s.Box.Z.Hi}) {
			b.limitOf(b.Findings.Notef("bar-off-height", s.Why.At, "%s", b.offHeight(lang.KindWords(s.Kind)+" "+s.Name, s.Box.Z.Hi, usual)), "bar_height")
		}
	}
}

func (b *Build) usual(limit string) geom.Span {
	return geom.Span{Lo: b.FieldLength(b.Limits, limit, "from"), Hi: b.FieldLength(b.Limits, limit, "to")}
}

func (b *Build) offHeight(what string, height geom.Length, usual geom.Span) string {
	off, way := usual.Lo-height, "lower"
	if height > usual.Hi {
		off, way = height-usual.Hi, "higher"
	}
	return "The top of " + what + " is at " + b.Show(height) + ": " + b.Show(off) + " " + way + " than is usual, which is " +
		b.Show(usual.Lo) + " to " + b.Show(usual.Hi) + "."
}
