package seats

import (
	"cmp"
	"fmt"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// toesWithoutRoom looks at the recess for the feet under the cabinets of each carcass.
func toesWithoutRoom(b *rule.Build) {
	var carcasses []*lang.Block
	under := map[*lang.Block][]*model.Box{} // lookup only
	fronts := map[*model.Box]geom.Length{}  // how thick they are before the box; lookup only
	for run, box := range b.Boxes(model.Cabinet) {
		c := b.CarcassOf(box)
		if under[c] == nil {
			carcasses = append(carcasses, c)
		}
		under[c] = append(under[c], box)
		fronts[box] = max(box.Foremost()-run.Depth, 0)
	}
	deep := func(box *model.Box) geom.Length { return box.ToeSetback + fronts[box] }
	high := func(box *model.Box) geom.Length { return box.ToeHeight }
	for _, c := range carcasses {
		toesUnder(b, c, under[c], "setback", "deep", deep)
		toesUnder(b, c, under[c], "height", "high", high)
	}
}

// toesUnder warns of the recess of a carcass, by a field of its toe_kick, where it is
// less deep or high under some of its boxes than feet take.
func toesUnder(b *rule.Build, carcass *lang.Block, boxes []*model.Box, field, how string, size func(*model.Box) geom.Length) {
	need := b.FieldLength(b.Limits, "toe_room", how)
	short := slices.DeleteFunc(slices.Clone(boxes), func(box *model.Box) bool { return size(box) >= need })
	if len(short) == 0 {
		return
	}
	worst := slices.MinFunc(short, func(x, y *model.Box) int { return cmp.Compare(size(x), size(y)) })
	lack := need - size(worst)
	text := fmt.Sprintf("The recess for the feet under %s is %s %s; toes take %s: %s too little.",
		worst.Words(), b.Show(size(worst)), how, b.Show(need), b.Show(lack))
	text += finding.Others(len(short)-1, " So it is under another cabinet.", " So it is under %d other cabinets.")
	at := carcass.Head
	if carcass.Attr("toe_kick") != nil {
		at = b.Field(carcass, "toe_kick", field).At
	}
	mend := fmt.Sprintf("%s = %q in its toe_kick", field, b.Show(length.Up(b.FieldLength(carcass, "toe_kick", field)+lack, b.Marks)))
	b.LimitOf(b.Findings.Warnf("toes-without-room", at, mend, "%s", text).
		Also(worst.Why.At, "the cabinet"), "toe_room")
}
