package place

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/lang/finding"
	"barwright/lang/source"
)

// TestRooms holds what is told of rooms against what was worked out by hand.
func TestRooms(t *testing.T) {
	for _, test := range []struct {
		name, text string
		steps      []string
		found      []string // slug, text and mend of what is found of the order
	}{
		{
			// The waste is 12 in off the east wall and 2 in across: its far side is at 13 in. Sink, dry and pots fill the
			// wall of 84 in, so dry can make way to the front alone. The sink passes it behind: with its rear before the
			// waste, at 13 in, its front is at 37 in.
			name: "both neighbours stand",
			text: `
room {
  wall "north" {
    length = 130
    stub "waste" {
      at         = [118, 14]
      diameter   = 2
      stands_out = 3
    }
  }
  wall "east" { length = 84 }
  wall "south" { length = 130 }
}
run "wash" {
  along   = wall.east
  carcass = carcass.base
  cabinet "sink" { width = 36 }
  cabinet "dry" {
    width  = 24
    stands = true
  }
  cabinet "pots" {
    width  = 24
    stands = true
  }
}`,
			steps: []string{
				"move aside cabinet dry: 37 in to the front",
				"set cabinet sink: in from the front, then 3 in to the right, then 13 in to the rear, then 3 in to the left, over stub waste",
				"move back cabinet dry: 37 in to the rear",
			},
			found: []string{
				`warning stands-in-the-way: Cabinet "dry" stands where cabinet "sink" comes in. It has to move 37 in to the front; then cabinet "sink" is set, in from the front, then 3 in to the right, then 13 in to the rear, then 3 in to the left, over stub waste; then it slides back.`,
				`a slot for stub waste: cut = "slot", open_to = "rear"`,
			},
		},
		{
			// The riser is 18 in off the east wall and 12 in across: its far side is at 24 in, where the box's front is. So
			// the box passes behind its neighbour with its rear at 24 in and its front at 48 in.
			name: "a thick pipe",
			text: `
room {
  ceiling = 60
  wall "north" {
    length = 130
    stub "riser" {
      at         = [112, 17]
      diameter   = 12
      stands_out = 5
    }
  }
  wall "east" { length = 60 }
  wall "south" { length = 130 }
}
run "wash" {
  along   = wall.east
  carcass = carcass.base
  cabinet "tall" { width = 36 }
  cabinet "low" {
    width  = 24
    stands = true
  }
}`,
			steps: []string{
				"move aside cabinet low: 48 in to the front",
				"set cabinet tall: in from the right, then 24 in to the rear, then 5 in to the left, over stub riser",
				"move back cabinet low: 48 in to the rear",
			},
			found: []string{
				`warning stands-in-the-way: Cabinet "low" stands where cabinet "tall" comes in. It has to move 48 in to the front; then cabinet "tall" is set, in from the right, then 24 in to the rear, then 5 in to the left, over stub riser; then it slides back.`,
				`a slot for stub riser: cut = "slot", open_to = "bottom"`,
			},
		},
		{
			// The wall opposite is 40 in off: the neighbour can make way by 16 in, and what is 24 in deep has no room before its
			// place. As near as that it stands before the whole doorway.
			name: "no room to move the neighbour",
			text: `
room {
  ceiling = 50
  wall "opposite" { length = 84 }
  wall "north" {
    length = 40
    stub "waste" {
      at         = [28, 14]
      diameter   = 2
      stands_out = 3
    }
  }
  wall "east" { length = 84 }
  wall "south" { length = 40 }
  doorway {
    wall   = wall.opposite
    from   = 2
    to     = 32
    height = 48
  }
}
run "wash" {
  along   = wall.east
  carcass = carcass.base
  cabinet "sink" { width = 36 }
  cabinet "dry" {
    width  = 24
    stands = true
  }
  cabinet "pots" {
    width  = 24
    stands = true
  }
}`,
			found: []string{
				`warning stands-before-doorway: Cabinet "dry" stands before the doorway, which is 30 in wide: nothing of it is left free, and 24 in are needed to go in. What is set after it cannot be brought in.`,
				"",
				`error cannot-be-set: Cabinet "sink" fits where it goes, but no straight slides take it there. Stub "waste" goes 3 in into it: it is clear of that once it is 3 in further off wall "north". Drawn out from its place it gets 1/8 in to the front and 1/8 in up, where the left side meets stub "waste"; no way to the right, where the right side meets the left side of cabinet "dry". Cabinet "dry" stands already, and moving it aside does not let this one in.`,
				"",
			},
		},
		{
			// A passage 28 in wide leads to the room, which is 60 in deep: a box 44 in wide does not come through, one of 22 in
			// does. Drawn out to the front it meets the walls beside the passage after 60 - 24 in; beside it are 2 in to the left
			// and 100 - 2 - 44 in to the right; over it 60 - 34 1/2 in.
			name: "a passage too narrow",
			text: passage("", ""),
			found: []string{
				`warning cannot-be-set: Cabinet "wide" fits where it goes, but no straight slides take it there. Drawn out from its place it gets 36 in to the front, where the left side meets wall "lip"; 54 in to the right, where the right side meets wall "south"; 2 in to the left, where the left side meets wall "north"; 25 1/2 in up, where the left side meets the ceiling. It comes out of its place; turned there it may get further, which is not looked at.`,
				`two cabinets instead of "wide", each 22 in wide`,
			},
		},
		{
			// With a divider in its middle no box can be made of either half as it is: that is not told.
			name: "a passage too narrow for what has a divider",
			text: passage("", "dividers = [22]"),
			found: []string{
				`warning cannot-be-set: Cabinet "wide" fits where it goes, but no straight slides take it there. Drawn out from its place it gets 36 in to the front, where the left side meets wall "lip"; 54 in to the right, where the right side meets wall "south"; 2 in to the left, where the left side meets wall "north"; 25 1/2 in up, where the left side meets the ceiling. It comes out of its place; turned there it may get further, which is not looked at.`,
				"",
			},
		},
		{
			// Two boxes fill the wall with a pipe out of either end: TestSetting's, and the slot is made already for
			// the far one. The near one comes over the waste first, then the other straight in.
			name: "a slot for one of two",
			text: `
room {
  wall "north" {
    length = 130
    stub "waste" {
      at         = [118, 14]
      diameter   = 2
      stands_out = 3
    }
  }
  wall "east" { length = 60 }
  wall "south" {
    length = 130
    stub "far" {
      at         = [12, 14]
      diameter   = 2
      stands_out = 3
      cut        = "slot"
      open_to    = "rear"
    }
  }
}
run "wash" {
  along   = wall.east
  carcass = carcass.base
  cabinet "sink" { width = 36 }
  cabinet "dry" { width = 24 }
}`,
			steps: []string{
				"set cabinet sink: in from the front, then 3 in to the left, over stub waste",
				"set cabinet dry: in from the front, over stub far",
			},
		},
		{
			// An outlet behind the middle of it, 2 + 22 in along the wall, would come where the sides of two meet: a rule would
			// warn of that (opening-meets-joint), and they are not told either.
			name: "a passage too narrow for what has an outlet behind it",
			text: passage("outlet \"kettle\" { at = [24, 20] }", ""),
			found: []string{
				`warning cannot-be-set: Cabinet "wide" fits where it goes, but no straight slides take it there. Drawn out from its place it gets 36 in to the front, where the left side meets wall "lip"; 54 in to the right, where the right side meets wall "south"; 2 in to the left, where the left side meets wall "north"; 25 1/2 in up, where the left side meets the ceiling. It comes out of its place; turned there it may get further, which is not looked at.`,
				"",
			},
		},
		{
			// The appliance is in the corner, between a box that stands and the end of run "wash", which begins 24 in along
			// the east wall and comes before it in the text: the appliance has to be there first. The south wall
			// is opposite; it comes before the box that stands, 24 in less the inch that is left behind it.
			name: "an appliance in a corner",
			text: corner(""),
			steps: []string{
				"set appliance of bay cool: in from the left, then 23 in to the rear",
				"set cabinet dry: in from the front",
			},
		},
		{
			// The same where the neighbour stands, between the appliance and the south wall: the appliance is 24 1/2 in wide, and
			// passes between the run, 24 in deep, and the neighbour, 24 + 24 1/2 in away. Its rear is then 23 in off its
			// place, before the other cabinet's front: 24 in less the inch that the bay leaves behind it. It ends 1/4 in
			// off the east wall.
			name: "an appliance behind what stands",
			text: corner("stands = true"),
			steps: []string{
				"move aside cabinet dry: 48 1/2 in to the front",
				"set appliance of bay cool: in from the front, then 23 3/4 in to the right, then 23 in to the rear",
				"move back cabinet dry: 48 1/2 in to the rear",
			},
			found: []string{
				`warning stands-in-the-way: Cabinet "dry" stands where the appliance of bay "cool" comes in. It has to move 48 1/2 in to the front; then the appliance of bay "cool" is set, in from the front, then 23 3/4 in to the right, then 23 in to the rear; then it slides back.`,
				"",
			},
		},
		{
			// The doorway is 60 in to 92 in off the east wall. A thing is in where the middle of its depth is as far: 12 in of a
			// box's, 12 1/2 in of the counter's, 1 + 22 1/2 / 2 in of the appliance's. Box a ends at 46 in of 100 in, 42 in more than the
			// landing of 12 in lets it. The counter is as long as the room, so it comes from the front alone.
			name: "a counter between two walls",
			text: "room {\nceiling = 36.5\n" + fourWalls + "}\n" + longRun,
			steps: []string{
				"set cabinet a: from the doorway 42 in to the left, then 80 in to the rear",
				"set cabinet b: from the doorway 48 in to the rear",
				"set counter top: from the doorway 47 1/2 in to the rear",
				"set appliance of bay cool: from the doorway 47 3/4 in to the rear",
			},
		},
		{
			// The doorway is 2 in to 34 in off the east wall, opposite the run, 100 in off; the landing ends at 88 in. Boxes 24 in
			// deep start 64 in off their places, the middle of b at 34 in of 37 + 47/2 in, that of a at 34 in of 84 + 46/2 in. The
			// counter is as long as the wall, 25 in deep and lies before the whole opening, though not with its middle.
			name: "a counter as long as the wall with the doorway",
			text: `
room {
  ceiling = 40
  wall "north" { length = 130 }
  wall "east" { length = 100 }
  wall "south" { length = 130 }
  wall "west" { length = 100 }
  doorway {
    wall    = wall.south
    from    = 2
    to      = 34
    height  = 38
    landing = 12
  }
}
run "wash" {
  along   = wall.north
  carcass = carcass.base
  cabinet "a" { width = 46 }
  cabinet "b" { width = 47 }
  cabinet "c" { width = 37 }
}
counter "top" {
  over     = run.wash
  slab     = slab.maple
  overhang = { front = 1 }
}`,
			steps: []string{
				"set cabinet a: from the doorway 73 in to the left, then 64 in to the rear",
				"set cabinet b: from the doorway 26 1/2 in to the left, then 64 in to the rear",
				"set cabinet c: from the doorway 64 in to the rear",
				"set counter top: from the doorway 63 in to the rear",
			},
		},
		{
			// Another counter along the north wall, first in the text, lies across that way, 26 in to 70 in off the east wall. There
			// is half an inch over it: the long one goes first. What goes there has its middle 48 in off the east wall, and its front 24 in or
			// 25 in off the north wall; the landing ends at 88 in.
			name: "a counter in the way of a longer one",
			text: "room {\nceiling = 36.5\n" + fourWalls + "}\n" + `
run "side" {
  along   = wall.north
  carcass = carcass.base
  start   = 60
  cabinet "tall" { width = 44 }
}
counter "side" {
  over     = run.side
  slab     = slab.maple
  overhang = { front = 1 }
}` + longRun,
			steps: []string{
				"set cabinet tall: from the doorway 12 in to the right, then 64 in to the rear",
				"set cabinet a: from the doorway 48 in to the rear, then 42 in to the left",
				"set cabinet b: from the doorway 48 in to the rear",
				"set counter top: from the doorway 47 1/2 in to the rear",
				"set counter side: from the doorway 12 in to the right, then 63 in to the rear",
				"set appliance of bay cool: from the doorway 47 3/4 in to the rear",
			},
		},
	} {
		t.Run(test.name, func(t *testing.T) {
			b := built(t, source.Files{{Name: "bar.hcl", Text: []byte(shop + test.text)}})
			if b.Findings.HasErrors() {
				t.Fatal(*b.Findings)
			}
			Order(b)
			if diff := cmp.Diff(test.steps, told(b)); diff != "" {
				t.Error(diff)
			}
			if diff := cmp.Diff(test.found, texts(found(b))); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func texts(list finding.List) (out []string) {
	for _, f := range list {
		out = append(out, f.Severity.String()+" "+f.Slug+": "+f.Text, f.Mend)
	}
	return out
}
