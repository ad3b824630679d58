package solve_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	sf "github.com/peterstace/simplefeatures/geom"
	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/solve"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

const mm = length.Millimetre

// counterBuild is a run of boxes along a wall with a counter on them; its %s are
// what the slab says more, the run's boxes, and what the counter says more.
const counterBuild = `
build "bar" { unit = "mm" }
sheet "ply" {
  size      = [2440, 1220]
  thickness = 18
}
slab "oak" {
  thickness = 40
  density   = 700
%s}
carcass "base" {
  height = 860
  depth  = 580
  board  = sheet.ply
  back   = { board = sheet.ply }
}
room {
  wall "long" { length = 9000 }
  wall "side" { length = 3000 }
}
run "r" {
  along   = wall.long
  start   = 400
  carcass = carcass.base
%s}
counter "work" {
  over     = run.r
  slab     = slab.oak
%s}
`

func counterOf(slab, boxes, counter string) source.File {
	return source.File{Name: "bar.hcl", Text: fmt.Appendf(nil, counterBuild, slab, boxes, counter)}
}

// TestSlabWeight is worked out by hand: 2000 x 600 mm, less a cut-out of 400 x
// 300 whose corners have a radius of 50, and a hole of 35:
//
//	1 200 000 - (120 000 - (4 - pi) 50²) - pi 17.5² = 1 081 183.9 mm²
//	1 081 183.9 x 40 mm x 700 kg/m³ = 30.273 kg
func TestSlabWeight(t *testing.T) {
	m, _ := solved(t, counterOf("", "  cabinet \"a\" { width = 2000 }\n", `
  overhang = { front = 20 }
  sink "s" {
    in         = cabinet.a
    cut        = { width = 400, depth = 300, radius = 50 }
    from_front = 120
  }
  tap "t" { behind = sink.s }
`))
	if got := m.Slabs[0].WeightKg; math.Abs(got-30.273) > 0.0005 {
		t.Errorf("%v kg, want 30.273", got)
	}
}

// drawCounter draws a counter over boxes of which some have sinks and taps, with
// seams in some joints and some a little beside them.
func drawCounter(t *rapid.T) (boxes, counter string) {
	var seams []string
	at := 0
	n := rapid.IntRange(1, 4).Draw(t, "boxes")
	for i := range n {
		width := rapid.IntRange(600, 1100).Draw(t, "width")
		boxes += fmt.Sprintf("  cabinet \"b%d\" { width = %d }\n", i, width)
		if at += width; i < n-1 && rapid.Bool().Draw(t, "seam") {
			seams = append(seams, fmt.Sprint(at+rapid.IntRange(-10, 10).Draw(t, "beside the joint")))
		}
		if rapid.Bool().Draw(t, "sink") {
			w, d := rapid.IntRange(200, 400).Draw(t, "cut width"), rapid.IntRange(200, 380).Draw(t, "cut depth")
			counter += fmt.Sprintf("  sink \"s%d\" {\n    in = cabinet.b%[1]d\n    cut = { width = %d, depth = %d, radius = %d }\n    from_front = %d\n  }\n",
				i, w, d, rapid.IntRange(0, min(w, d)/2).Draw(t, "radius"), rapid.IntRange(50, 95).Draw(t, "from front"))
			if rapid.Bool().Draw(t, "tap") {
				counter += fmt.Sprintf("  tap \"t%d\" {\n    behind = sink.s%[1]d\n    from_rear = %d\n  }\n", i, rapid.IntRange(45, 65).Draw(t, "from rear"))
			}
		}
	}
	counter += fmt.Sprintf("  overhang = { front = %d, right = %d, left = %d }\n", rapid.IntRange(0, 30).Draw(t, "front"), rapid.IntRange(0, 50).Draw(t, "right"), rapid.IntRange(0, 50).Draw(t, "left"))
	if len(seams) > 0 {
		counter += "  seams = [" + strings.Join(seams, ", ") + "]\n"
	}
	return boxes, counter
}

// TestSlabPieces puts the pieces of random counters together again: they fill
// the slab and nothing else, and each cut-out lies in one of them, where it lies
// in the slab. Areas are compared with those of polygons, which have chords for
// arcs, and the weight with the areas.
func TestSlabPieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		boxes, counter := drawCounter(t)
		m, _ := solved(t, counterOf("", boxes, counter))
		slab := &m.Slabs[0]
		at, holes, mm2 := slab.Box.U.Lo, 0, 0.0
		for i, id := range slab.Parts {
			p := partNamed(t, m, id)
			box := p.Placement.Box
			if box.U.Lo != at || box.V != slab.Box.V || box.Z != slab.Box.Z || p.Placement.Frame != slab.Frame || p.Kind != model.SlabPiece {
				t.Fatalf("piece %d lies at %v of the slab %v, the one before ends at %d", i+1, box, slab.Box, at)
			}
			at = box.U.Hi
			checkBlank(t, p)
			area := areaOf(t, p)
			mm2 += area
			holes += len(p.Openings)
			checkHoles(t, slab, p)
		}
		if at != slab.Box.U.Hi || holes != len(slab.Cuts) || len(slab.Parts) != len(slab.Seams)+1 {
			t.Fatalf("%d pieces up to %d with %d holes, for %d seams and the slab %v with %d", len(slab.Parts), at, holes, len(slab.Seams), slab.Box, len(slab.Cuts))
		}
		if want := mm2 * 40 * 700 / 1e9; math.Abs(slab.WeightKg-want) > 0.0005+1e-9 {
			t.Fatalf("%v kg, by the area of its pieces %v", slab.WeightKg, want)
		}
	})
}

// checkHoles works out from the slab where each hole of a piece should be drawn:
// x from the piece's left end, y from its front edge.
func checkHoles(t *rapid.T, slab *model.Slab, p *model.Part) {
	box := p.Placement.Box
	for _, c := range slab.Cuts {
		if c.Part != p.ID {
			continue
		}
		want := geom.R(c.Box.U.Lo-box.U.Lo, box.V.Hi-c.Box.V.Hi, c.Box.U.Hi-box.U.Lo, box.V.Hi-c.Box.V.Lo)
		found := 0
		for _, o := range p.Openings {
			if o.Name == c.Kind+" "+c.Name {
				found++
				if got := o.Shape.Bounds(); got != want || o.Shape.Area() >= 0 {
					t.Fatalf("%s is drawn at %v, want %v clockwise", o.Name, got, want)
				}
			}
		}
		if blank := p.Placement.Blank(); found != 1 || !blank.Contains(want) {
			t.Fatalf("%s %s lies %d times in %s, at %v of %v", c.Kind, c.Name, found, p.ID, want, blank)
		}
	}
}

// areaOf is the area of a piece with its openings, compared with the overlay of
// polygons. A chord over an angle d leaves out about r² d³ / 12 of a cut-out.
func areaOf(t *rapid.T, p *model.Part) float64 {
	own, left := p.Outline.Area(), 1e-3
	shape := chordsOf(p.Outline).AsGeometry()
	for _, o := range p.Openings {
		own += o.Shape.Area()
		for i, v := range o.Shape {
			if v.Bulge != 0 {
				arc := geom.ArcOf(v, o.Shape[(i+1)%len(o.Shape)].Point)
				left += arc.R * arc.R / 1e12 * math.Pow(math.Abs(arc.Turn), 3) / (12 * chords * chords)
			}
		}
		cut, err := sf.Difference(shape, chordsOf(o.Shape).AsGeometry())
		if err != nil {
			t.Fatalf("%v", err)
		}
		shape = cut
	}
	if polygon := shape.Area(); own > polygon+1e-3 || own < polygon-left {
		t.Fatalf("%s has %.3f mm², its polygon %.3f, of which chords may be %.3f", p.ID, own, polygon, left)
	}
	return own
}

// chords stand for each arc.
const chords = 30

// chordsOf is a contour in millimetres, without arcs.
func chordsOf(c geom.Contour) sf.Polygon {
	var xy []float64
	for i, v := range c {
		xy = append(xy, v.X.MM(), v.Y.MM())
		if v.Bulge == 0 {
			continue
		}
		arc := geom.ArcOf(v, c[(i+1)%len(c)].Point)
		for k := 1; k < chords; k++ {
			sin, cos := math.Sincos(arc.Start + arc.Turn*float64(k)/chords)
			xy = append(xy, (arc.CX+arc.R*cos)/1e6, (arc.CY+arc.R*sin)/1e6)
		}
	}
	xy = append(xy, xy[:2]...)
	return sf.NewPolygon([]sf.LineString{sf.NewLineString(sf.NewSequence(xy, sf.DimXY))})
}

// TestProposedSeams follows the seams that the answer proposes for slabs that
// are too long: with them nothing is refused.
func TestProposedSeams(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		boxes, counter := drawCounter(t)
		solid := ""
		if rapid.Bool().Draw(t, "solid") {
			solid = "  solid = true\n"
		}
		followSeams(t, fmt.Sprintf("  size = [%d, 650]\n%s", rapid.IntRange(500, 2500).Draw(t, "on sale"), solid), boxes, counter)
	})
	boxes := "  cabinet \"a\" { width = 900 }\n  cabinet \"b\" { width = 1100 }\n"
	for _, long := range []int{500, 1000, 1500, 1999} {
		if !followSeams(t, fmt.Sprintf("  size = [%d, 650]\n", long), boxes, "") {
			t.Errorf("no seams are proposed for 2000 mm of slabs that are %d mm long", long)
		}
	}
}

// followSeams follows the seams that are proposed for a counter; ok is false where none are.
func followSeams(t rapid.TB, slab, boxes, counter string) (ok bool) {
	mend := ""
	for _, f := range refused(counterOf(slab, boxes, counter)) {
		if f.Slug != "slab-too-large" {
			t.Fatalf("%s: %s", f.Slug, f.Text)
		}
		mend = f.Mend
	}
	if mend == "" {
		return false
	}
	before, _, _ := strings.Cut(counter, "  seams = ")
	for _, f := range refused(counterOf(slab, boxes, before+"  "+mend+"\n")) {
		t.Fatalf("%s is answered %s: %s", mend, f.Slug, f.Text)
	}
	return true
}

// refused lists the errors of a description that is sound as text.
func refused(file source.File) (out finding.List) {
	src, findings := lang.Read(source.Files{file})
	for _, f := range append(findings, solve.Solve(src).Findings...) {
		if f.Severity == finding.Error {
			out = append(out, f)
		}
	}
	return out
}
