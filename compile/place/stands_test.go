package place

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile/edittest"
	"barwright/compile/model"
	"barwright/lang/length"
	"barwright/lang/source"
)

// island is a row away from all walls of a box on legs, one on a base, an anchored one and a bay with blocks, under a
// counter. Each of %s says that it stands, or nothing.
const island = `
stick "block" {
  thickness = 1.5
  width     = 3.5
  lengths   = ["8ft"]
}
carcass "low" {
  height    = 34.5
  depth     = 24
  board     = sheet.ply
  back      = { board = sheet.thin }
  stands_on = "base"
}
room {
  wall "north" { length = 200 }
}
run "based" {
  along   = wall.north
  carcass = carcass.low
  cabinet "plinth" {
    width = 24
    %[1]s
  }
}
run "row" {
  along   = wall.north
  start   = 40
  carcass = carcass.base
  cabinet "tied" {
    width = 24
    %[2]s
  }
  bay "cool" {
    appliance = { width = 23.5, height = 31, depth = 22.5 }
    gap       = 0.25
    blocks    = stick.block
    %[3]s
  }
  cabinet "plain" { width = 24 }
  anchor "tie" {
    under = cabinet.tied
    block = stick.block
    fixed = "adhesive"
  }
}
counter "top" {
  over = run.row
  slab = slab.maple
}
`

// TestStands: what says that it stands has no step, nor has what belongs to it: its base, its anchor, its
// blocks, its appliance. The rest is set about it.
func TestStands(t *testing.T) {
	const stands = "stands = true"
	all := []string{"anchor tie", "base of cabinet plinth", "cabinet plinth", "cabinet tied", "cabinet plain", "blocks of bay cool", "counter top", "appliance of bay cool"}
	for _, test := range []struct {
		based, tied, cool string
		stand             []string
	}{
		{},
		{based: stands, stand: []string{"base of cabinet plinth", "cabinet plinth"}},
		{tied: stands, stand: []string{"anchor tie", "cabinet tied"}},
		{cool: stands, stand: []string{"blocks of bay cool", "appliance of bay cool"}},
	} {
		b := built(t, source.Files{{Name: "bar.hcl", Text: []byte(shop + fmt.Sprintf(island, test.based, test.tied, test.cool))}})
		if b.Findings.HasErrors() {
			t.Fatal(*b.Findings)
		}
		Order(b)
		stand := map[string]bool{} // lookup only
		for _, name := range test.stand {
			stand[name] = true
		}
		var want, got []string
		for _, name := range all {
			if !stand[name] {
				want = append(want, name)
			}
		}
		for _, s := range b.Setting.Steps {
			got = append(got, s.What)
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%+v: %s", test, diff)
		}
		if f := found(b); len(f) > 0 {
			t.Errorf("%+v: %+v", test, f)
		}
	}
}

// TestOff: cabinets are set without what moves or comes off: nothing of theirs stands out of their boards.
func TestOff(t *testing.T) {
	b := built(t, edittest.Folder(t, "../../examples/servery"))
	r := newRoom(b)
	drawers := 0
	for run, box := range b.Boxes(model.Cabinet) {
		drawers += len(box.Fronts)
		deep := length.Length(0)
		for _, p := range b.PartsOf(box.Key()) {
			if p.Is("cabinet", "side-left") || p.Is("cabinet", "bottom") {
				deep = max(deep, p.Placement.Box.V.Hi)
			}
		}
		if got := r.byName[box.Words()].hull.V.Hi; deep == 0 || got != deep {
			t.Errorf("%s of run %s is %s deep, its boards are %s", box.Words(), run.Name, b.Show(got), b.Show(deep))
		}
	}
	if drawers == 0 {
		t.Error("no fronts")
	}
}
