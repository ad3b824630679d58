package solve_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/solve"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// drawnPipe is a pipe end in the wall that a drawn run stands at.
type drawnPipe struct{ along, height, diameter, out, clearance length.Length }

// TestProjectionAgainstBoxes puts one pipe end of a random size somewhere into
// the wall, and works out by plain subtraction where it meets each board: the
// pipe as a box, moved into the run, shared with the board's box, and laid on
// the board as it is drawn.
func TestProjectionAgainstBoxes(t *testing.T) {
	met := 0
	rapid.Check(t, func(t *rapid.T) {
		d := drawRun(t, false)
		pipe := drawnPipe{
			along: d.start + drawFine(t, d.unit, "along", 100, 1500), height: drawFine(t, d.unit, "height", 0, 1000),
			diameter: drawFine(t, d.unit, "diameter", 5, 120), clearance: drawFine(t, d.unit, "clearance", 0, 10),
			out: rapid.SampledFrom([]length.Length{5, 20, 60, 150, 400, 900}).Draw(t, "out") * length.Millimetre,
		}
		switch { // somewhere at the run
		case d.outFrom:
			pipe.along = 3*length.Metre + drawFine(t, d.unit, "along", -100, 800)
		case d.fromRight:
			pipe.along = d.wall - pipe.along
		}
		text := strings.Replace(d.text(), "  wall \"w\" {\n", "  wall \"w\" {\n"+pipe.text(), 1)
		src, findings := lang.Read(source.Files{{Name: "bar.hcl", Text: []byte(text)}})
		if findings.HasErrors() {
			t.Fatalf("%v", findings)
		}
		solution := solve.Solve(src)
		if solution.Model == nil {
			refused := []string{"opening-parts-panel", "outside-wall", "thing-in-the-way"}
			for _, f := range solution.Findings {
				if f.Severity == finding.Error && !slices.Contains(refused, f.Slug) {
					t.Fatalf("%s: %s", f.Slug, f.Text)
				}
			}
			t.Skip("the pipe cannot be there")
		}
		want := map[string]geom.Rect{}
		for i := range solution.Model.Parts {
			p := &solution.Model.Parts[i]
			if face, ok := pipe.meets(&d, &solution.Model.Runs[0], p); ok {
				want[p.ID] = face
			}
		}
		got := map[string]geom.Rect{}
		for i := range solution.Model.Parts {
			for _, o := range solution.Model.Parts[i].Openings {
				got[solution.Model.Parts[i].ID] = o.Shape.Bounds()
			}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Fatalf("openings (-by subtraction +solved):\n%s", diff)
		}
		met += len(want)
	})
	t.Logf("the pipes met %d boards", met)
	if met < 5 {
		t.Errorf("the pipes met only %d boards in all", met)
	}
}

// text writes the pipe as a block of its wall.
func (pipe *drawnPipe) text() string {
	mm := func(l length.Length) string { return `"` + l.Decimal(length.Millimetres, 6) + `mm"` }
	return fmt.Sprintf("    stub \"p\" {\n      at = [%s, %s]\n      diameter = %s\n      stands_out = %s\n      clearance = %s\n    }\n",
		mm(pipe.along), mm(pipe.height), mm(pipe.diameter), mm(pipe.out), mm(pipe.clearance))
}

// meets is the part of a pipe's box that is in a board, as it is drawn.
func (pipe *drawnPipe) meets(d *drawn, run *model.Run, p *model.Part) (geom.Rect, bool) {
	if p.Kind != model.Panel {
		return geom.Rect{}, false
	}
	across := 2 * ((pipe.diameter+1)/2 + pipe.clearance)                     // a radius is whole
	u := span{Lo: pipe.along - across/2, Hi: pipe.along - across/2 + across} // along the wall
	v := span{Hi: pipe.out + pipe.clearance}                                 // out of it
	if strings.HasSuffix(p.ID, "/strip") {                                   // it reaches into the wall until it is scribed
		v.Lo = -length.Metre
	}
	b := geom.Box{Z: span{Lo: pipe.height - across/2, Hi: pipe.height - across/2 + across}}
	switch {
	case d.outFrom: // it looks left: its rear edges are at 3 m and its depth
		rear := 3*length.Metre + d.depth
		b.U, b.V = v, span{Lo: rear - u.Hi, Hi: rear - u.Lo}
	case d.fromRight:
		b.U, b.V = u.Shift(-(d.wall - d.start - run.Length)), v
	default:
		b.U, b.V = u.Shift(-d.start), v
	}
	board := p.Placement.Box
	shared := geom.Box{U: b.U.Intersect(board.U), V: b.V.Intersect(board.V), Z: b.Z.Intersect(board.Z)}
	if shared.U.Size() <= 0 || shared.V.Size() <= 0 || shared.Z.Size() <= 0 {
		return geom.Rect{}, false
	}
	up := shared.Z.Shift(-board.Z.Lo)
	right := shared.U.Shift(-board.U.Lo)
	rearward := span{Lo: board.V.Hi - shared.V.Hi, Hi: board.V.Hi - shared.V.Lo}
	forward := shared.V.Shift(-board.V.Lo)
	face := geom.Rect{X: right, Y: up}
	switch id := suffix(p); {
	case id == "side-left", strings.HasPrefix(id, "divider"), strings.HasPrefix(id, "base-") && id != "base-rear":
		face = geom.Rect{X: rearward, Y: up}
	case id == "side-right":
		face = geom.Rect{X: forward, Y: up}
	case id == "top":
		face = geom.Rect{X: right, Y: forward}
	case id == "bottom", id == "stretcher-front", strings.Contains(id, "shelf"):
		face = geom.Rect{X: right, Y: rearward}
	}
	return face, !d.cutAway(p, shared)
}

// cutAway reports whether something is wholly in the recess for the feet of a
// side, or where a divider is cut out for a stretcher.
func (d *drawn) cutAway(p *model.Part, b geom.Box) bool {
	top, _ := d.clearHeights()
	rear := span{Lo: d.backFace(), Hi: d.backFace() + d.board}
	switch id := suffix(p); {
	case strings.HasPrefix(id, "side-"):
		return d.stands == "sides" && b.Z.Hi <= d.toeHeight && b.V.Lo >= d.depth-d.toeSetback
	case strings.HasPrefix(id, "divider"):
		return d.top == "stretchers" && b.Z.Lo >= d.height-d.board && b.V.Lo >= d.depth-d.stretcher ||
			!d.stretcherBehind() && b.Z.Lo >= top-d.stretcher && rear.Contains(b.V)
	}
	return false
}
