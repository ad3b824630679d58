package solve

import (
	"fmt"
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/length"
)

// slabs places counters and bar tops.
func (s *solver) slabs() {
	for _, b := range s.src.Top("counter") {
		run := s.runNamed(s.ref(b, "over").Name)
		over := func(name string) length.Length { return s.fieldLength(b, "overhang", name) }
		s.slab(b, run.Frame, geom.Box{
			U: geom.Span{Lo: -over("left"), Hi: run.Length + over("right")},
			V: geom.Span{Hi: run.Depth + over("front")},
			Z: geom.Span{Lo: run.Height, Hi: s.solvedLength(b, "top")},
		})
	}
	for _, b := range s.src.Top("bar_top") {
		name := s.ref(b, "over").Name
		for i := range s.m.KneeWalls {
			wall := &s.m.KneeWalls[i]
			if wall.Name != name {
				continue
			}
			over := func(name string) length.Length { return s.fieldLength(b, "overhang", name) }
			f := wall.Framing
			wall.BarTop = b.Name
			s.slab(b, wall.Frame, geom.Box{
				U: geom.Span{Lo: f.U.Lo - over("left"), Hi: f.U.Hi + over("right")},
				V: geom.Span{Lo: f.V.Lo - over("room"), Hi: f.V.Hi + over("work")},
				Z: geom.Span{Lo: f.Z.Hi, Hi: s.solvedLength(b, "height")},
			})
			s.checkReach(b, wall, over("room"))
		}
	}
}

func (s *solver) slab(b *lang.Block, frame geom.Frame, box geom.Box) {
	density := s.number(s.ref(b, "slab"), "density")
	m3 := box.U.Size().MM() * box.V.Size().MM() * box.Z.Size().MM() / 1e9
	s.m.Slabs = append(s.m.Slabs, model.Slab{
		Kind: b.Spec.Kind, Name: b.Name, Stock: s.ref(b, "slab").Key(), Frame: frame, Box: box,
		WeightKg: math.Round(m3*density*1000) / 1000, Why: why(b),
	})
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
			end = fmt.Sprintf("stand %s out from under it", s.show(reach-overhang))
		}
		s.findings.Errorf("support-shows", b.Head, "a shorter reach, or a larger overhang on the room's side",
			"The support plates reach %s from the framing, and the bar top %s: they would %s and show.",
			s.show(reach), s.show(overhang), end).Also(wall.Why.At, "the knee wall")
	}
}
