package place

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/lang/source"
)

// TestFramedLate: a knee wall and its run reach from the east wall to 30 in before the west wall, or
// to 50 in before it. Nothing is turned on its way, so through 30 in no cabinet 40 in wide comes behind it:
// those of run "back" stand first, and it is framed then. Through 50 in they come, and it is framed before all.
func TestFramedLate(t *testing.T) {
	for _, c := range []struct {
		wide int
		want []string
	}{
		{23, []string{"set cabinet a", "set cabinet b", "frame knee wall bar", "set cabinet c", "set cabinet d", "set cabinet e"}},
		{13, []string{"frame knee wall bar", "set cabinet a", "set cabinet b", "set cabinet c", "set cabinet d", "set cabinet e"}},
	} {
		b := built(t, source.Files{{Name: "bar.hcl", Text: fmt.Appendf(nil, `
build "bar" { unit = "in" }
sheet "ply" {
  size      = [96, 48]
  thickness = 0.75
}
stick "two_by_four" {
  thickness = 1.5
  width     = 3.5
  lengths   = ["10ft"]
}
room {
  ceiling = 60
  wall "west" { length = 200 }
  wall "north" { length = 100 }
  wall "east" { length = 200 }
  wall "south" { length = 100 }
  doorway {
    wall   = wall.south
    from   = 10
    to     = 90
    height = 59
  }
}
carcass "base" {
  height = 34.5
  depth  = 24
  board  = sheet.ply
  back   = { board = sheet.ply }
}
run "back" {
  along   = wall.north
  carcass = carcass.base
  cabinet "a" { width = 40 }
  cabinet "b" { width = 40 }
}
run "front" {
  out_from = wall.east
  at       = 66
  carcass  = carcass.base
  cabinet "c" { width = %[1]d }
  cabinet "d" { width = %[1]d }
  cabinet "e" { width = 24 }
}
knee_wall "bar" {
  behind = run.front
  top    = 42
  lumber = stick.two_by_four
}
`, c.wide)}})
		Order(b)
		var have []string
		for _, s := range b.Setting.Steps {
			have = append(have, fmt.Sprint(s.Does, " ", s.What))
		}
		if diff := cmp.Diff(c.want, have); diff != "" {
			t.Errorf("%d in: (-want +got)\n%s%v", c.wide, diff, found(b))
		}
		replay(t, b)
	}
}
