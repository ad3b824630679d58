package onsite_test

import (
	"testing"

	"barwright/compile/geom"
	"barwright/compile/onsite"
)

// The pole of the wall "north": studs from 9 1/2 on every 16 in; boxes 30, 24 1/4, 42 and 1 1/2 wide with
// what is left of 136 1/8, which is 38 3/8, between the last two.
func TestPoleOfBoatshed(t *testing.T) {
	poles := onsite.Poles(example(t, "boatshed"))
	want := []struct{ at, what string }{
		{"9 1/2", "stud"}, {"14 1/2", "outlet kettle"}, {"25 1/2", "stud"}, {"30", "kettle right, cooler left"},
		{"41 1/2", "stud"}, {"54 1/4", "cooler right, cups left"}, {"57 1/2", "stud"}, {"62 1/2", "outlet cooler"},
		{"73 1/2", "stud"}, {"83 3/8", "outlet grinder"}, {"89 1/2", "stud"}, {"96 1/4", "cups right, beans left"},
		{"105 1/2", "stud"}, {"121 1/2", "stud"}, {"134 5/8", "beans right, corner left"}, {"136 1/8", "corner right"}, {"136 1/8", "end of the wall"},
	}
	marks := poles[0].Marks
	if len(marks) != len(want) {
		t.Fatalf("%d marks, not %d: %v", len(marks), len(want), marks)
	}
	for i, w := range want {
		if marks[i].At != inches(t, w.at) || marks[i].What != w.what {
			t.Errorf("mark %d is %v, not %v", i+1, marks[i], w)
		}
	}
}

// From the inner face of the left side: the sides are 23/32 thick. In the run "back" the stud at 9 1/2 is
// 9 1/2 - 23/32 = 8 25/32 into kettle, whose left end is the wall's, and that at 57 1/2 is
// 57 1/2 - 54 1/4 - 23/32 = 2 17/32 into cups. The middle of a rear stretcher of 4 in under the
// boxes' top, 34 1/2, is 32 1/2 up, and a bottom of 23/32 lies on a toe kick of 4: 27 25/32 over it.
func TestScrewLinesOfBoatshed(t *testing.T) {
	insides := onsite.Insides(example(t, "boatshed"))
	first := map[string]string{"kettle": "8 25/32", "cups": "2 17/32"} // lookup only
	seen := 0
	for _, in := range insides {
		if in.Stretcher != inches(t, "27 25/32") {
			t.Errorf("%s: stretcher at %d", in.Box, in.Stretcher)
		}
		if want, ok := first[in.Box]; ok {
			seen++
			if in.Lines[0].FromLeft != inches(t, want) || in.Into != "wall north" {
				t.Errorf("%s: %v", in.Box, in)
			}
		}
	}
	if seen != len(first) || len(insides) != 7 {
		t.Errorf("%d of %d are seen", seen, len(insides))
	}
}

// The cable between the outlets of the knee wall goes through four studs, at the boxes' height, 37 1/2 over the
// datum; studs stand on a plate of 1 1/2.
func TestDrillsOfBoatshed(t *testing.T) {
	drills := onsite.Drills(example(t, "boatshed"))
	if len(drills) != 4 {
		t.Fatal(drills)
	}
	for _, d := range drills {
		if d.Height != inches(t, "37 1/2") || d.FromEnd != inches(t, "36") || d.Diameter != inches(t, "3/4") {
			t.Errorf("%v", d)
		}
	}
}

// The sink's cabinet comes in from the right, to the rear, and 2 in to the left over the stubs: its way
// ends 2 in from where its last slide begins, in the middle of its place.
func TestMovesOfBoatshed(t *testing.T) {
	for _, mv := range onsite.Moves(example(t, "boatshed")) {
		if mv.Step.Block != "cabinet.sink" {
			continue
		}
		n := len(mv.Path)
		if n != 4 {
			t.Fatalf("%d points", n)
		}
		u, v := mv.Frame.Local(mv.Path[n-1])
		before, _ := mv.Frame.Local(mv.Path[n-2])
		middle := geom.Point{X: mv.Place.U.Mid(), Y: mv.Place.V.Mid()}
		const turned = 2 // nanometres
		if off := before - u - inches(t, "2"); max(off, -off) > turned || max(u-middle.X, middle.X-u) > turned || max(v-middle.Y, middle.Y-v) > turned {
			t.Errorf("from %d to %d, %d", before, u, v)
		}
	}
}
