package boards

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// heavyPiece looks for what is too heavy for two to carry: pieces of slabs, and boxes as
// they leave the bench, without their fronts, drawers and loose shelves.
func heavyPiece(b *rule.Build) {
	for _, box := range b.Boxes(model.Cabinet) {
		heavyBox(b, box)
	}
	for i := range b.Slabs {
		heavySlab(b, &b.Slabs[i], b.PartsOf(b.Slabs[i].Key()))
	}
}

func heavyBox(b *rule.Build, box *model.Box) {
	kg := b.Together(b.FastIn(box.Key()))
	if most := b.Number(b.Limits, "lift"); kg > most {
		block := b.Block(box.Key())
		f := b.Findings.Notef("heavy-piece", block.Head, "%s weighs %s without its fronts, drawers and loose shelves; two carry %s.",
			finding.Capital(block.Describe()), showMass(b, kg), showMass(b, most))
		f.Mend = "two narrower boxes; or more hands, and limits { lift = … } in kg"
		b.LimitOf(f, "lift")
	}
}

// heavySlab looks for the heaviest piece of a slab.
func heavySlab(b *rule.Build, s *model.Slab, pieces []*model.Part) {
	most, heaviest, kg, others := b.Number(b.Limits, "lift"), (*model.Part)(nil), 0.0, -1
	for _, p := range pieces {
		if w := b.Mass(p); w > most {
			others++
			if w > kg {
				heaviest, kg = p, w
			}
		}
	}
	if others < 0 {
		return
	}
	block := b.Block(heaviest.Block())
	text := fmt.Sprintf("%s, %s of %s, weighs %s; two carry %s.", heaviest.Label, heaviest.Named(), heaviest.Owner, showMass(b, kg), showMass(b, most))
	if others > 0 {
		text += fmt.Sprintf(" It is the heaviest of %d such pieces.", others+1)
	}
	f := b.Findings.Notef("heavy-piece", block.Head, "%s", text)
	whole := s.Box.V.Size().MM() * s.Box.Z.Size().MM() / 1e9 * b.Number(b.Ref(block, "slab"), "density") // of a millimetre
	longest := length.Down(length.Length(most/whole*float64(length.Millimetre)), b.Marks)
	seams := "seams = [ … ]"
	if at := seamsOverSides(b, s, longest); len(at) > 0 {
		seams = "seams = [" + strings.Join(at, ", ") + "]"
	}
	f.Mend = fmt.Sprintf("%s, so that no piece is longer than %s; or more hands, and limits { lift = … } in kg", seams, b.Show(longest))
	f.Also(b.Ref(block, "slab").Attr("density").Expr.At, "what it weighs")
	b.LimitOf(f, "lift")
}

// besideCut is what a seam keeps from a cut-out (SPEC.md 6.18).
const besideCut = 3 * length.Inch

// seamsOverSides parts a counter into pieces no longer than that, over sides of cabinets, as
// the text would say; nothing where that cannot be.
func seamsOverSides(b *rule.Build, s *model.Slab, longest length.Length) (seams []string) {
	i := slices.IndexFunc(b.Runs, func(r model.Run) bool { return r.Frame == s.Frame })
	if s.Kind != "counter" || i < 0 {
		return nil
	}
	least, from := b.Length(b.Limits, "piece_least"), s.Box.U.Lo
	for from+longest < s.Box.U.Hi {
		over, at := "", from
		look := func(side length.Length, name string) {
			cut := slices.ContainsFunc(s.Cuts, func(c model.SlabCut) bool { return c.Box.U.Grow(besideCut).Holds(side) })
			if side > at && side >= from+least && side <= min(from+longest, s.Box.U.Hi-least) && !cut {
				over, at = name, side
			}
		}
		for j := range b.Runs[i].Boxes {
			if box := &b.Runs[i].Boxes[j]; box.Kind == model.Cabinet {
				look(box.Hull.U.Lo, box.Key()+".left")
				look(box.Hull.U.Hi, box.Key()+".right")
			}
		}
		if over == "" {
			return nil
		}
		seams, from = append(seams, over), at
	}
	return seams
}

// showMass shows a weight, in kg, as the build's people weigh.
func showMass(b *rule.Build, kg float64) string {
	if b.Source.Unit.Imperial() {
		return strconv.FormatFloat(kg/0.45359237, 'f', 1, 64) + " lb"
	}
	return strconv.FormatFloat(kg, 'f', 2, 64) + " kg"
}
