package ask_test

import (
	"slices"
	"strings"
	"testing"

	"barwright/compile/ask"
	"barwright/compile/model"
	"barwright/compile/view/viewtest"
	"barwright/lang/length"
)

// Figures are worked out by hand from the fixture, in micrometres. A left side is
// 23 1/16 in wide, 585 787.5; its second row of pins stands 37 mm from the rear. The
// door's board begins 4 in and its banding of 1/2 mm over the floor, at 102 100, and
// its cups are at 7 5/32 in, 181 768.75, and at 24 in. The screw line is 2 in from
// the box's end less a side of 23/32 in.
func TestFinished(t *testing.T) {
	book := ask.Open(nil, viewtest.Fitted())
	const um = length.Micrometre
	for _, c := range []struct {
		name, text, means string
		lengths           []model.Length
	}{
		{"part.urn-l.bore.1", "", "shelf pin, 5 mm across, 12 mm deep", []model.Length{37_000 * um, 152_400 * um}},
		{"part.urn-l.bore.2", "", "shelf pin", []model.Length{548_787_500, 152_400 * um}},
		{"part.urn-l.bore.41", "", "hinge plate", []model.Length{50_000 * um, 165_768_750}},
		{"part.urn-l.banded", "left edge", "not in its size", nil},
		{"part.urn-l.good", "the drawn one", "", nil},
		{"part.urn-DO.bore.1", "", "from the face behind", []model.Length{22_000 * um, 79_668_750}},
		{"part.urn-DO.bore.2", "", "hinge cup", []model.Length{22_000 * um, 507_500 * um}},
		{"part.urn-DO.bore.3", "", "handle, 3/16 in across, through", nil},
		{"part.urn-DO.banded", "bottom edge", "", nil},
		{"part.K-P1.bore.3", "", "1/4 in across, 3/4 in long along y, through, sunk to 1/2 in, from the face behind", nil},
		{"part.urn-BK.outlet.urn.bores", "", "1/2 in across", nil},
		{"part.urn-BK.mark.1.to", "", "stud 2", []model.Length{387_350 * um, 882_650 * um}},
		{"cabinet.urn.placed.door.hinges", "[7 5/32 in, 24 in]", "above the floor", []model.Length{181_768_750, 609_600 * um}},
		{"cabinet.cups.placed.right_door.hinged", "right", "", nil},
		{"cabinet.sink.placed.false_front.z", "28 3/4 in … 34 5/8 in", "", nil},
		{"cabinet.bins.placed.studs", "[1 9/32 in]", "from the inner face of its left side", []model.Length{32_543_750}},
		{"cabinet.bins.placed.studs.z", "5 in … 33 in", "above the floor", nil},
		{"knee_wall.bar.placed.uneven.1", "1/2 in", "to the left: how far stud 3 stands", nil},
		{"outlet.guests.placed.face", "room", "", nil},
		{"outlet.guests.placed.cover.height", "24 in", "follows from the rule", nil},
		{"outlet.mixer.placed.cover.centre", "44 in", "", nil},
		{"skin.room.placed.battens", "[1 in, 24 in, 36 in, 48 in]", "", nil},
		{"skin.room.placed.seams", "[48 in]", "", nil},
		{"switch.lamp.placed.room", "[100 in, 0 in, 48 in]", "", nil},
		{"wall.north.placed.baseboard.along", "0 in … 123 1/4 in", "4 in high, 1/2 in thick", nil},
		{"counter.work.placed.parts", "WORK-C1, WORK-C2", "", nil},
	} {
		r, ok := book.Ask(c.name)
		if !ok || len(r.Answers) == 0 {
			t.Errorf("%s: no answer", c.name)
			continue
		}
		a := r.Answers[0]
		if !strings.HasPrefix(a.Text, c.text) || !strings.Contains(a.Means, c.means) || c.lengths != nil && !slices.Equal(a.Lengths, c.lengths) {
			t.Errorf("%s = %s %d (%s), want %s %d (%s)", c.name, a.Text, a.Lengths, a.Means, c.text, c.lengths, c.means)
		}
	}
	if _, ok := book.Ask("vent.air.placed.room"); !ok {
		t.Error("a vent has no place")
	}
}
