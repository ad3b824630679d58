package solve

import (
	"fmt"
	"math"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/spacing"
	"barwright/lang"
	"barwright/lang/length"
)

// top is a counter or a bar top while it is worked out.
type top struct {
	block, stock *lang.Block
	run          *model.Run    // under a counter; behind it stands the knee wall of a bar top
	origin       length.Length // where its seams count from, along the run
	code         string        // of its pieces' labels
	slab         model.Slab
}

// slabs places counters and bar tops.
func (s *solver) slabs() {
	for _, b := range s.Source.Top("counter") {
		run := s.runNamed(s.Ref(b, "over").Name)
		over := func(name string) length.Length { return s.FieldLength(b, "overhang", name) }
		s.slab(top{block: b, run: run, code: "C"}, geom.Box{
			U: geom.Span{Lo: -over("left"), Hi: run.Length + over("right")},
			V: geom.Span{Hi: run.Depth + over("front")},
			Z: geom.Span{Lo: run.Height, Hi: s.SolvedLength(b, "top")},
		})
	}
	for _, b := range s.Source.Top("bar_top") {
		name := s.Ref(b, "over").Name
		for i := range s.m.KneeWalls {
			wall := &s.m.KneeWalls[i]
			if wall.Name != name {
				continue
			}
			over := func(name string) length.Length { return s.FieldLength(b, "overhang", name) }
			f := wall.Framing
			wall.BarTop = b.Name
			s.slab(top{block: b, run: s.runNamed(wall.Run), code: "T", origin: f.U.Lo}, geom.Box{
				U: geom.Span{Lo: f.U.Lo - over("left"), Hi: f.U.Hi + over("right")},
				V: geom.Span{Lo: f.V.Lo - over("room"), Hi: f.V.Hi + over("work")},
				Z: geom.Span{Lo: f.Z.Hi, Hi: s.SolvedLength(b, "height")},
			})
			s.checkReach(b, wall, over("room"))
		}
	}
}

// slab adds a slab with what is cut out of it, and its pieces. There are no
// pieces where something about them is refused.
func (s *solver) slab(t top, box geom.Box) {
	t.stock = s.Ref(t.block, "slab")
	t.slab = model.Slab{
		Kind: t.block.Spec.Kind, Name: t.block.Name, Stock: t.stock.Key(), Frame: t.run.Frame, Box: box, Why: why(t.block),
	}
	if s.cutOuts(&t) && s.slabSeams(&t) && s.soundSize(&t) {
		s.slabPieces(&t)
	}
	s.m.Slabs = append(s.m.Slabs, t.slab)
}

// pieces are what the seams part a slab into.
func (t *top) pieces() []geom.Span { return spacing.Pieces(t.slab.Box.U, t.slab.Seams) }

// slabPieces makes the parts between the seams, and weighs them.
func (s *solver) slabPieces(t *top) {
	p := piece{name: "slab", out: above, face: "top", good: model.GoodDrawn}
	if s.Flag(t.stock, "solid") {
		p.grain = model.GrainX
	}
	pieces := t.pieces()
	mm3 := 0.0
	for i, u := range pieces {
		n := strconv.Itoa(i + 1)
		p.id, p.code = "piece-"+n, t.code+n
		if len(pieces) > 1 {
			p.name = "slab piece " + n
		}
		box := t.slab.Box.With(geom.U, u)
		part := s.part(t.block, t.stock, model.SlabPiece, t.slab.Frame, box, p)
		area := part.Outline.Area()
		for j := range t.slab.Cuts {
			if cut := &t.slab.Cuts[j]; box.U.Contains(cut.Box.U) {
				cut.Part = part.ID
				hole := cutThrough(part, cut)
				part.Openings = append(part.Openings, hole)
				area -= math.Abs(hole.Shape.Area())
			}
		}
		mm3 += float64(area * part.Thickness.MM())
		t.slab.Parts = append(t.slab.Parts, part.ID)
	}
	t.slab.WeightKg = math.Round(mm3/1e9*s.Number(t.stock, "density")*1000) / 1000
}

// cutThrough is what a sink or a tap cuts out of a piece.
func cutThrough(part *model.Part, cut *model.SlabCut) model.Opening {
	face, _ := part.Placement.Local(cut.Box)
	shape := geom.RoundedContour(face, cut.Radius)
	if cut.Kind == "tap" {
		shape = geom.CircleContour(geom.Point{X: face.X.Lo + cut.Radius, Y: face.Y.Lo + cut.Radius}, cut.Radius)
	}
	return model.Opening{Name: cut.Kind + " " + cut.Name, Shape: shape.Reversed(), Why: cut.Why}
}

// checkReach refuses steel that would show beyond the bar top's edge.
func (s *solver) checkReach(b *lang.Block, wall *model.KneeWall, overhang length.Length) {
	for _, sup := range wall.Supports[:min(1, len(wall.Supports))] {
		reach := wall.Framing.V.Lo - sup.Steel.V.Lo
		if reach < overhang {
			continue
		}
		end := "end flush with its edge"
		if reach > overhang {
			end = fmt.Sprintf("stand %s out from under it", s.Show(reach-overhang))
		}
		s.Findings.Errorf("support-shows", b.Head, "a shorter reach, or a larger overhang on the room's side",
			"The support plates reach %s from the framing, and the bar top %s: they would %s and show.",
			s.Show(reach), s.Show(overhang), end).Also(wall.Why.At, "the knee wall")
	}
}
