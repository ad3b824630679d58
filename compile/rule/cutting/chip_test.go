package cutting

import (
	"testing"

	"barwright/compile/model"
	"barwright/lang/length"
)

// published are ranges of two general articles on feeds in wood, of rigid machines with a
// bit of 1/4 in, in thousandths of an inch.
var published = map[string][2]length.Length{ // lookup only
	"softwood": {10, 20}, "plywood": {10, 18}, "hardwood": {5, 10}, "mdf": {15, 25},
}

func TestCommonAgainstPublished(t *testing.T) {
	for _, wood := range []string{"softwood", "plywood", "hardwood", "mdf"} {
		tool := model.Tool{Wood: wood, Machine: "rigid", Diameter: length.Inch / 4}
		want := published[wood]
		if c, where := common(tool); c.least != want[0]*thou || c.most != want[1]*thou || where != "a rigid machine in "+wood {
			t.Errorf("%s: %v on %s, published %v", wood, c, where, want)
		}
		tool.Diameter /= 2 // "about half"
		if c, _ := common(tool); 2*c.least != want[0]*thou || 2*c.most != want[1]*thou {
			t.Errorf("%s with half the bit: %v, published is about half of %v", wood, c, want)
		}
		tool.Diameter *= 4 // "more"
		if c, _ := common(tool); c.least != want[0]*thou || c.most != 0 {
			t.Errorf("%s with twice the bit: %v, published is more than %v", wood, c, want)
		}
	}
}

func TestCommonBetweenBits(t *testing.T) {
	for _, c := range []struct {
		bit         length.Length
		least, most length.Length // tenths of a thousandth
	}{
		{length.Inch/8 - 1, 0, 0},
		{length.Inch / 8, 30, 50},
		{3 * length.Inch / 16, 35, 65},
		{length.Inch / 4, 40, 80},
		{3 * length.Inch / 8, 60, 100},
		{length.Inch / 2, 80, 120},
		{length.Inch/2 + 1, 80, 0},
	} {
		got, where := common(model.Tool{Wood: "mdf", Machine: "light", Diameter: c.bit})
		if got.least != c.least*thou/10 || got.most != c.most*thou/10 || where != "a light machine" {
			t.Errorf("%s: %v on %s", length.Show(c.bit, length.Inches, 0), got, where)
		}
	}
}
