package place

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile/edittest"
	"barwright/compile/geom"
	"barwright/lang/source"
)

// TestOutsideCorners: what lies behind the plane of a wall, in another part of the room, is set like all
// else: beyond an outside corner, and on both sides of a partition 3 in thick.
func TestOutsideCorners(t *testing.T) {
	for _, c := range []struct{ name, nose, wall string }{{"round a corner", "100", "nose"}, {"behind a partition", "3", "back"}} {
		b := built(t, source.Files{{Name: "bar.hcl", Text: []byte(shop + `
room {
  wall "front" {
    length = 100
    corner = 270
  }
  wall "nose" {
    length = ` + c.nose + `
    corner = 270
  }
  wall "back" { length = 100 }
}
run "here" {
  along   = wall.front
  start   = 40
  carcass = carcass.base
  cabinet "a" { width = 60 }
}
run "there" {
  along   = wall.` + c.wall + `
  carcass = carcass.base
  cabinet "b" { width = 60 }
}`)}})
		Order(b)
		if diff := cmp.Diff([]string{"set cabinet a: in from the front", "set cabinet b: in from the front"}, told(b)); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
		if f := found(b); len(f) > 0 {
			t.Errorf("%s: %+v", c.name, f)
		}
	}
}

// TestCutToWall: the strip of filler "wall" is 2 in wide, 1/2 in of that to be scribed off, at its left: it ends at
// the wall then.
func TestCutToWall(t *testing.T) {
	b := built(t, edittest.Folder(t, "../../examples/boatshed"))
	if got, want := newRoom(b).byName["filler wall"].hull.U, (geom.Span{Hi: inch * 3 / 2}); got != want {
		t.Errorf("it stands from %s to %s, not from %s to %s", b.Show(got.Lo), b.Show(got.Hi), b.Show(want.Lo), b.Show(want.Hi))
	}
}

// TestShutDoorway: a pipe as wide as the doorway and more stands out before it, up to 10 1/2 in below the ceiling. No
// box comes past that, nor round the far ends of floor and ceiling; and the pipe goes into none.
func TestShutDoorway(t *testing.T) {
	b := built(t, source.Files{{Name: "bar.hcl", Text: []byte(shop + `
room {
  ceiling = 90
  wall "north" {
    length = 300
    stub "duct" {
      at         = [56, 40]
      diameter   = 79
      stands_out = 30
    }
  }
  doorway {
    wall    = wall.north
    from    = 40
    to      = 72
    height  = 80
    landing = 4
  }
}
run "row" {
  along   = wall.north
  start   = 200
  carcass = carcass.base
  cabinet "a" { width = 30 }
}`)}})
	Order(b)
	want := `Cabinet "a" fits where it goes, but no straight slides take it there. Drawn out from its place it gets 104 1/2 in to the left, where the left side meets stub "duct"; 55 1/2 in up, where the left side meets the ceiling. It comes out of its place; turned there it may get further, which is not looked at.`
	if f := found(b); len(b.Setting.Steps) > 0 || len(f) != 1 || f[0].Text != want {
		t.Errorf("%v %+v", told(b), f)
	}
}

// TestNearbyOnly: walls of a bar open to one side turn by less than half a degree against one another. Slides to and fro
// along two of them would shift things sideways, half a kilometre off; none is told.
func TestNearbyOnly(t *testing.T) {
	files := edittest.Edited(t, edittest.Folder(t, "../../examples/boatshed"), `- room {
+ room {
+   ceiling = 105
+   doorway {
+     wall    = wall.north
+     from    = 56
+     to      = 70
+     height  = 21
+     landing = 30
+   }
`)
	b := built(t, files)
	Order(b)
	if len(b.Setting.Steps) == 0 {
		t.Fatal(*b.Findings)
	}
	for _, s := range b.Setting.Steps {
		for _, slide := range s.Slides {
			if slide.By > 1000*inch {
				t.Errorf("%s goes %s %s", s.What, b.Show(slide.By), slide.To)
			}
		}
	}
}
