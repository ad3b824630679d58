// Package seats judges heights of counters and bars, and the room of who sits there
// (SPEC.md 11.5).
package seats

import (
	"barwright/compile/geom"
	"barwright/compile/rule"
)

// Rules are those of the section, in its order.
var Rules = []rule.Rule{
	{Slug: "counter-off-height", Look: counterOffHeight},
	{Slug: "bar-off-height", Look: barOffHeight},
	{Slug: "seats-too-narrow", Look: seatsTooNarrow},
	{Slug: "knees-too-shallow", Look: kneesTooShallow},
	{Slug: "no-room-behind-seats", Look: noRoomBehindSeats},
}

func counterOffHeight(b *rule.Build) {
	for i := range b.Slabs {
		s := &b.Slabs[i]
		if usual := usualHeight(b, "counter_height"); s.Kind == "counter" && !usual.Holds(s.Box.Z.Hi) {
			b.LimitOf(b.Findings.Notef("counter-off-height", s.Why.At, "%s", offHeight(b, s.Kind+" "+s.Name, s.Box.Z.Hi, usual)), "counter_height")
		}
	}
}

func barOffHeight(b *rule.Build) {
	for i := range b.Slabs {
		s := &b.Slabs[i]
		if usual := usualHeight(b, "bar_height"); s.Kind == "bar_top" && !usual.Holds(s.Box.Z.Hi) {
			b.LimitOf(b.Findings.Notef("bar-off-height", s.Why.At, "%s", offHeight(b, s.Words(), s.Box.Z.Hi, usual)), "bar_height")
		}
	}
}

func usualHeight(b *rule.Build, limit string) geom.Span {
	return geom.Span{Lo: b.FieldLength(b.Limits, limit, "from"), Hi: b.FieldLength(b.Limits, limit, "to")}
}

func offHeight(b *rule.Build, what string, height geom.Length, usual geom.Span) string {
	off, way := usual.Lo-height, "lower"
	if height > usual.Hi {
		off, way = height-usual.Hi, "higher"
	}
	return "The top of " + what + " is at " + b.Show(height) + ": " + b.Show(off) + " " + way + " than is usual, which is " +
		b.Show(usual.Lo) + " to " + b.Show(usual.Hi) + "."
}
