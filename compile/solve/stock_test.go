package solve_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"barwright/compile/model"
	"barwright/lang/length"
	"barwright/lang/source"
)

// What is bought by the piece and by the roll, and slabs with their sizes on
// sale, reach the model in the order of the text, defaults with them.
func TestStockReachesTheModel(t *testing.T) {
	m, findings := solved(t, source.File{Name: "bar.hcl", Text: []byte(`
build "bar" { unit = "in" }
fitting "knob" {}
fitting "pin" {
  label    = "pin 5 mm"
  per_pack = 25
  price    = 3.5
}
banding "birch" {
  thickness = "1mm"
  width     = "7/8in"
  roll      = "25ft"
  price     = 9
}
banding "oak" {
  label     = "oak, glued"
  thickness = "0.5mm"
  roll      = "50ft"
  spare     = 0
}
slab "oak" {
  thickness = 1.5
  size      = [96, 25.5]
  solid     = true
  density   = 720
  price     = 200
}
slab "stone" { thickness = 1 }
`)})
	if len(findings) > 0 {
		t.Errorf("%v", findings)
	}
	want := model.Stock{
		Fittings: []model.Fitting{
			{Name: "fitting.knob", Text: "knob", PerPack: 1},
			{Name: "fitting.pin", Text: "pin 5 mm", PerPack: 25, Price: 3.5, Priced: true},
		},
		Bandings: []model.Banding{
			{Name: "banding.birch", Text: "birch, 0.039 in x 7/8 in", Thickness: mm, Roll: 25 * length.Foot, Spare: inch, Price: 9, Priced: true},
			{Name: "banding.oak", Text: "oak, glued", Thickness: mm / 2, Roll: 50 * length.Foot},
		},
		Slabs: []model.SlabStock{
			{Name: "slab.oak", Text: "oak, 1 1/2 in thick", Thickness: 3 * inch / 2, Length: 96 * inch, Width: 51 * inch / 2, Solid: true, Density: 720, Price: 200, Priced: true},
			{Name: "slab.stone", Text: "stone, 1 in thick", Thickness: inch},
		},
	}
	if diff := cmp.Diff(want, m.Stock, cmpopts.IgnoreTypes(model.Why{})); diff != "" {
		t.Errorf("stock (-want +got):\n%s", diff)
	}
}
