package solve_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile/model"
	"barwright/lang/source"
)

// TestGoodFaces holds the parts of two boxes, of which the right one stands at
// a free end, to the table in 6.13 of SPEC.md, without and with an end panel.
func TestGoodFaces(t *testing.T) {
	const text = `
build "bar" { unit = "mm" }
sheet "ply" {
  size      = [2440, 1220]
  thickness = 18
}
carcass "base" {
  height    = 870
  depth     = 560
  board     = sheet.ply
  back      = { board = sheet.ply }
  stands_on = "base"
}
carcass "other" {
  height = 870
  depth  = 560
  board  = sheet.ply
  back   = { board = sheet.ply, fixed = "captured" }
  top    = "full"
  pins   = { depth = 8 }
}
room {
  wall "north" { length = 3000 }
}
run "back" {
  out_from = wall.north
  at       = 1000
  carcass  = carcass.base
  cabinet "a" {
    width         = 800
    carcass       = carcass.other
    dividers      = [400]
    fixed_shelves = [300]
    shelves       = 1
  }
  cabinet "b" { width = 800 }
PANEL
}
`
	want := map[string]model.Good{
		"a/side-left": model.GoodDrawn, "a/side-right": model.GoodDrawn, "a/bottom": model.GoodDrawn, "a/top": model.GoodDrawn, "a/back": model.GoodDrawn,
		"a/stretcher-rear": model.GoodNone, "a/toe-kick": model.GoodDrawn, "a/divider-1": model.GoodBoth,
		"a/fixed-shelf-1": model.GoodDrawn, "a/fixed-shelf-2": model.GoodDrawn, "a/shelf-1": model.GoodDrawn, "a/shelf-2": model.GoodDrawn,
		"b/side-left": model.GoodDrawn, "b/side-right": model.GoodBoth, "b/bottom": model.GoodDrawn, "b/back": model.GoodDrawn,
		"b/stretcher-front": model.GoodFar, "b/stretcher-rear": model.GoodDrawn, "b/toe-kick": model.GoodDrawn,
		"b/base-rear": model.GoodNone, "b/base-left": model.GoodNone, "b/base-cross-1": model.GoodNone, "b/base-right": model.GoodDrawn,
	}
	good := func(panel string) map[string]model.Good {
		m, _ := solved(t, source.File{Name: "bar.hcl", Text: []byte(strings.Replace(text, "PANEL", panel, 1))})
		have := map[string]model.Good{}
		for _, p := range m.Parts {
			if id, ok := strings.CutPrefix(p.ID, "cabinet."); ok {
				have[id] = p.Good
			}
		}
		return have
	}
	if diff := cmp.Diff(want, good("")); diff != "" {
		t.Errorf("good faces (-want +have):\n%s", diff)
	}
	want["b/side-right"], want["b/base-right"] = model.GoodDrawn, model.GoodNone
	if diff := cmp.Diff(want, good("  end_panel \"end\" {\n    end   = \"right\"\n    board = sheet.ply\n  }")); diff != "" {
		t.Errorf("good faces beside an end panel (-want +have):\n%s", diff)
	}
}
