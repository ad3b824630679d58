package layout

import "barwright/compile/model"

// Checked tells what is wrong with layouts of all parts.
func Checked(parts []model.Part, stock model.Stock, shop Shop, layouts []model.Layout) error {
	return check(parts, stock, shop, layouts, nil)
}
