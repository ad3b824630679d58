package boards

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// heavyPiece looks for what is too heavy for two to carry: pieces of slabs, and boxes as
// they leave the bench, without their fronts, drawers and loose shelves.
func heavyPiece(b *rule.Build) {
	slabs, boxes := map[string][]*model.Part{}, map[string]float64{} // by block; lookup only
	for i := range b.Parts {
		switch p := &b.Parts[i]; {
		case p.Kind == model.SlabPiece:
			slabs[p.Block()] = append(slabs[p.Block()], p)
		case p.BlockKind() == "cabinet" && !comesOut(p):
			boxes[p.Block()] += weight(b, p)
		}
	}
	for i := range b.Runs {
		for j := range b.Runs[i].Boxes {
			if box := &b.Runs[i].Boxes[j]; box.Kind == model.Cabinet {
				heavyBox(b, "cabinet."+box.Name, boxes["cabinet."+box.Name])
			}
		}
	}
	for i := range b.Slabs {
		heavySlab(b, slabs[b.Slabs[i].Key()])
	}
}

func comesOut(p *model.Part) bool {
	return slices.ContainsFunc([]string{"shelf", "door", "drawer", "false-front"}, func(name string) bool { return p.Is("cabinet", name) })
}

// weight is what a part weighs, in kg, without what is cut out of it. It is not a number
// where nothing says what its stock weighs, and no sum with it is.
func weight(b *rule.Build, p *model.Part) float64 {
	density := b.Number(b.Block(p.Stock), "density")
	if density == 0 {
		return math.NaN()
	}
	mm2 := math.Abs(p.Outline.Area())
	for i := range p.Openings {
		if o := &p.Openings[i]; !o.Notch {
			mm2 -= math.Abs(o.Shape.Area())
		}
	}
	return mm2 * p.Thickness.MM() / 1e9 * density
}

func heavyBox(b *rule.Build, key string, kg float64) {
	if most := b.Number(b.Limits, "lift"); kg > most {
		block := b.Block(key)
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
		if w := weight(b, p); w > most {
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

// heft shows a weight, in kg, as the build's people weigh.
func showMass(b *rule.Build, kg float64) string {
	if b.Source.Unit.Imperial() {
		return strconv.FormatFloat(kg/0.45359237, 'f', 1, 64) + " lb"
	}
	return strconv.FormatFloat(kg, 'f', 2, 64) + " kg"
}
