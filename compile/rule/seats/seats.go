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
	{Slug: "toes-without-room", Look: toesWithoutRoom},
	{Slug: "seats-too-narrow", Look: seatsTooNarrow},
	{Slug: "knees-too-shallow", Look: kneesTooShallow},
	{Slug: "no-room-behind-seats", Look: noRoomBehindSeats},
}

func counterOffHeight(b *rule.Build) {
	offHeight(b, "counter-off-height", "counter", "counter_height")
}

func barOffHeight(b *rule.Build) { offHeight(b, "bar-off-height", "bar_top", "bar_height") }

// offHeight looks for slabs of a kind whose top is not at a usual height.
func offHeight(b *rule.Build, slug, kind, limit string) {
	usual := geom.Span{Lo: b.FieldLength(b.Limits, limit, "from"), Hi: b.FieldLength(b.Limits, limit, "to")}
	for i := range b.Slabs {
		s := &b.Slabs[i]
		height := s.Box.Z.Hi
		if s.Kind != kind || usual.Holds(height) {
			continue
		}
		off, way := usual.Lo-height, "lower"
		if height > usual.Hi {
			off, way = height-usual.Hi, "higher"
		}
		b.LimitOf(b.Findings.Notef(slug, s.Why.At, "The top of %s is at %s: %s %s than is usual, which is %s to %s.",
			s.Words(), b.Show(height), b.Show(off), way, b.Show(usual.Lo), b.Show(usual.Hi)), limit)
	}
}
