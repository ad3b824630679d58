package boards

import (
	"fmt"
	"strconv"

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
		heavySlab(b, b.PartsOf(b.Slabs[i].Key()))
	}
}

func heavyBox(b *rule.Build, box *model.Box) {
	kg := 0.0
	for _, p := range b.FastIn(box.Key()) {
		kg += b.Mass(p)
	}
	if most := b.Number(b.Limits, "lift"); kg > most {
		block := b.Block(box.Key())
		f := b.Findings.Notef("heavy-piece", block.Head, "%s weighs %s without its fronts, drawers and loose shelves; two carry %s.",
			finding.Capital(block.Describe()), showMass(b, kg), showMass(b, most))
		f.Mend = "two narrower boxes; or more hands, and limits { lift = … }"
		b.LimitOf(f, "lift")
	}
}

// heavySlab looks for the heaviest piece of a slab.
func heavySlab(b *rule.Build, pieces []*model.Part) {
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
	long, _ := heaviest.Size()
	text := fmt.Sprintf("%s, %s of %s, weighs %s; two carry %s.", heaviest.Label, heaviest.Named(), heaviest.Owner, showMass(b, kg), showMass(b, most))
	if others > 0 {
		text += fmt.Sprintf(" It is the heaviest of %d such pieces.", others+1)
	}
	f := b.Findings.Notef("heavy-piece", block.Head, "%s", text)
	f.Mend = fmt.Sprintf("seams = [ … ], so that no piece is longer than %s; or more hands, and limits { lift = … }",
		b.Show(length.Down(length.Length(float64(long)*most/kg), b.Marks)))
	f.Also(b.Ref(block, "slab").Attr("density").Expr.At, "what it weighs")
	b.LimitOf(f, "lift")
}

// showMass shows a weight, in kg, as the build's people weigh.
func showMass(b *rule.Build, kg float64) string {
	if b.Source.Unit.Imperial() {
		return strconv.FormatFloat(kg/0.45359237, 'f', 1, 64) + " lb"
	}
	return strconv.FormatFloat(kg, 'f', 2, 64) + " kg"
}
