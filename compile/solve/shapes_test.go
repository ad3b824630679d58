package solve_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/solve"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// TestOpeningsAndWhatIsLeft cuts a vent or a pipe out of a box in a random way,
// and demands of each part that its outline and what is missing make up the
// blank; and of each bore that it stays inside its opening and touches it.
func TestOpeningsAndWhatIsLeft(t *testing.T) {
	drawing := rapid.Custom(drawCut)
	rapid.Check(t, func(t *rapid.T) { checkCut(t, drawing.Draw(t, "run")) })
	// What is looked at is counted where the same is drawn each time.
	met, bored := 0, 0
	for seed := range 40 {
		openings, bores := checkCut(t, drawing.Example(seed))
		met, bored = met+openings, bored+bores
	}
	if met < 20 || bored < 20 {
		t.Errorf("only %d openings and %d bores were looked at", met, bored)
	}
}

// cutRun is a run with one box, and a vent or a pipe that is cut out of it.
type cutRun struct {
	drawn
	file string
}

func drawCut(t *rapid.T) cutRun {
	d := drawRun(t, false)
	d.outFrom, d.fromRight, d.long = false, false, 0
	d.boxes = []drawnBox{{kind: "cabinet", name: "b0", width: drawFine(t, d.unit, "width of the box", 600, 1200)}}
	mm := func(name string, low, high int) string {
		return `"` + drawFine(t, d.unit, name, low, high).Decimal(length.Millimetres, 6) + `mm"`
	}
	at := fmt.Sprintf("at = [%q, %s]", (d.start+drawFine(t, d.unit, "along", 100, 500)).Decimal(length.Millimetres, 6)+"mm", mm("height", 100, 600))
	cut := fmt.Sprintf("cut = %q\n", rapid.SampledFrom([]string{"hole", "slot", "notch"}).Draw(t, "cut"))
	if !strings.Contains(cut, "hole") {
		cut += fmt.Sprintf("open_to = %q\n", rapid.SampledFrom([]string{"bottom", "top", "rear", "front", "left", "right"}).Draw(t, "open to"))
	}
	thing := fmt.Sprintf("vent \"x\" {\n%s\nwidth = %s\nheight = %s\ncorner = %s\nstands_out = %s\n%s}\n", at,
		mm("wide", 30, 200), mm("tall", 30, 200), mm("corner", 0, 20), mm("out", 0, 200), cut)
	if rapid.Bool().Draw(t, "pipe") {
		thing = fmt.Sprintf("stub \"x\" {\n%s\ndiameter = %s\nstands_out = %s\n%s}\n", at, mm("across", 20, 80), mm("out", 10, 300), cut)
	}
	text := strings.Replace(d.text(), "  wall \"w\" {\n", "  wall \"w\" {\n"+thing, 1) + "saw { corner_bit = " + mm("bit", 3, 30) + " }\n"
	return cutRun{d, text}
}

// checkCut counts the openings that it looks at, and the bores in their corners; there are none where the
// thing cannot be there.
func checkCut(t rapid.TB, run cutRun) (met, bored int) {
	src, findings := lang.Read(source.Files{{Name: "bar.hcl", Text: []byte(run.file)}})
	if findings.HasErrors() {
		t.Fatalf("%v", findings)
	}
	solution := solve.Solve(src)
	for _, f := range solution.Findings {
		refused := []string{"opening-parts-panel", "outside-wall", "opening-too-round", "thing-in-the-way"} // the last by a leg
		if f.Severity == finding.Error && !slices.Contains(refused, f.Slug) {
			t.Fatalf("%s: %s", f.Slug, f.Text)
		}
	}
	if solution.Model == nil {
		return 0, 0
	}
	for i := range solution.Model.Parts {
		p := &solution.Model.Parts[i]
		for j := range p.Openings {
			met++
			bored += checkBores(t, p, &p.Openings[j])
		}
		checkRest(t, &run.drawn, p)
	}
	return met, bored
}

// checkRest adds up the areas of a part, of its notches and of its recess for
// the feet. Where a notch runs into that recess, only bounds are known.
func checkRest(t rapid.TB, d *drawn, p *model.Part) {
	blank := p.Placement.Blank()
	x, y := blank.X.Size(), blank.Y.Size()
	want := x.MM() * y.MM()
	toe := geom.R(-2, -2, -1, -1)
	setback := d.toeSetback - d.band // the banding stands before what is cut
	switch {
	case d.stands != "sides":
	case p.Name == "left side":
		toe = geom.R(0, 0, setback, d.toeHeight)
	case p.Name == "right side":
		toe = geom.R(x-setback, 0, x, d.toeHeight)
	}
	if toe.X.Lo >= 0 {
		want -= setback.MM() * d.toeHeight.MM()
	}
	for _, o := range p.Openings {
		if o.Notch && o.Shape.Bounds().Overlaps(toe) {
			return
		}
		if o.Notch {
			want -= math.Abs(o.Shape.Area())
		}
	}
	if got := p.Outline.Area(); math.Abs(got-want) > 0.01 {
		t.Fatalf("%s has %v mm² inside its outline %v, want %v", p.ID, got, p.Outline, want)
	}
}

// checkBores demands that each bore is in the opening, and nearer to its edge
// than a hair: the nearest point of the outline is one radius off.
func checkBores(t rapid.TB, p *model.Part, o *model.Opening) int {
	for _, c := range o.Corners {
		least := math.Inf(1)
		b := o.Shape.Bounds()
		if !b.Contains(geom.R(c.X, c.Y, c.X, c.Y)) {
			t.Fatalf("%s: a bore at %v is outside %v", p.ID, c, b)
		}
		blank := p.Placement.Blank()
		for i, v := range o.Shape {
			next := o.Shape[(i+1)%len(o.Shape)].Point
			if open := o.Notch && (v.X == next.X && (v.X == blank.X.Lo || v.X == blank.X.Hi) || v.Y == next.Y && (v.Y == blank.Y.Lo || v.Y == blank.Y.Hi)); !open {
				least = min(least, off(c, v, next))
			}
		}
		radius := float64(o.Bit) / 2
		if least < radius-1 || least > radius+3 { // whole nanometres
			t.Fatalf("%s: a bore of %v at %v is %v off the edge of %v", p.ID, o.Bit, c, least, o.Shape)
		}
	}
	return len(o.Corners)
}

// off is how far a point is from an edge of a contour.
func off(c geom.Point, v geom.Vertex, next geom.Point) float64 {
	if v.Bulge != 0 {
		a := geom.ArcOf(v, next)
		dx, dy := float64(c.X)-a.CX, float64(c.Y)-a.CY
		along := math.Mod((math.Atan2(dy, dx)-a.Start)*math.Copysign(1, a.Turn)+4*math.Pi, 2*math.Pi)
		if away := math.Hypot(dx, dy); away < 2 || along < math.Abs(a.Turn) {
			return a.R - away
		}
		return math.Inf(1) // an end of the arc is nearest, which the next edge has too
	}
	clamp := func(at, lo, hi length.Length) float64 { return float64(at - max(min(lo, hi), min(at, max(lo, hi)))) }
	return math.Hypot(clamp(c.X, v.X, next.X), clamp(c.Y, v.Y, next.Y))
}
