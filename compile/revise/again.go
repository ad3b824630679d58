package revise

import (
	"barwright/compile/bill"
	"barwright/compile/model"
)

// again lays out what is to be cut anew: the parts that no piece serves for, nor its
// offcut.
func again(r *model.Revision) []model.BillLine {
	var parts []model.Part
	for i := range r.Fates {
		f := &r.Fates[i]
		if (f.Kind == model.MakeAgain || f.Kind == model.NewPart) && f.Offcut < 0 {
			parts = append(parts, r.New.Parts[f.New])
		}
	}
	return bill.CutFrom(r.New, parts)
}
