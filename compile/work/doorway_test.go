package work

import (
	"fmt"
	"testing"

	"barwright/compile/rule/ruletest"
	"barwright/lang/length"
)

// TestLowestDoorway: the doorway of the room and that which `carry` tells are both on the way in:
// the lower one counts, and what does not pass is told where it is written.
func TestLowestDoorway(t *testing.T) {
	for _, c := range []struct {
		room, carry, want length.Length // in inches; 0 where nothing is said
		line              int           // of the finding, 0 where all passes
	}{
		{0, 0, 0, 0}, {80, 0, 80, 0}, {0, 70, 70, 0}, {80, 70, 70, 0}, {70, 80, 70, 0},
		{20, 0, 20, 9}, {0, 20, 20, 30}, {20, 30, 20, 9}, {30, 20, 20, 30}, {20, 20, 20, 9},
	} {
		door, carry := "doorway {\nwall = wall.east\nfrom = 10\nto = 50\nheight = "+fmt.Sprint(int64(c.room))+"\n}", "carry { doorway = "+fmt.Sprint(int64(c.carry))+" }"
		if c.room == 0 {
			door = "\n\n\n\n\n"
		}
		if c.carry == 0 {
			carry = ""
		}
		b := ruletest.Build(t, ruletest.Bar(`build "bar" { unit = "in" }
room {
wall "north" { length = 100 }
wall "east" { length = 100 }
`+door+`
}
sheet "ply" {
size = [96, 48]
thickness = 0.75
}
carcass "base" {
height = 34.5
depth = 24
board = sheet.ply
back = { board = sheet.ply }
}
run "back" {
along = wall.north
carcass = carcass.base
cabinet "cups" { width = 30 }
}



`+carry+"\n"))
		way, _ := Carry(b)
		if way.Doorway != c.want*length.Inch {
			t.Errorf("room %d, carry %d: %v", c.room, c.carry, way.Doorway)
		}
		line := 0
		for _, f := range *b.Findings {
			if f.Slug == "will-not-pass" {
				line = f.At.Start.Line
			}
		}
		if line != c.line {
			t.Errorf("room %d, carry %d: told on line %d, not %d", c.room, c.carry, line, c.line)
		}
	}
}
