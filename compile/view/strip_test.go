package view

import (
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// On a strip of 200 the texts at 10 and 20, of 50 each, stand to the right, the first over the second; those
// at 160 and 190 to the left, the last over the other. On one of 60 a text of 50 fits neither way at 30.
func TestPennants(t *testing.T) {
	lay := func(strip Length, at ...Length) []pennant {
		s := newSheet(&model.Model{}, geom.R(0, 0, strip, 1), Type{Height: 10}, roomShare)
		var r row
		for _, x := range at {
			r.add(x, "1 stud")
		}
		out, _ := s.pennants(&r, 1)
		return out
	}
	wide := TypeWidth("1 stud", 10) + 10
	strip := 6 * wide
	out := lay(strip, 10, 20, strip-wide/2, strip-5)
	want := []struct {
		left bool
		row  int
	}{{false, 1}, {false, 0}, {true, 0}, {true, 1}}
	if len(out) != len(want) {
		t.Fatal(out)
	}
	for i, w := range want {
		if out[i].left != w.left || out[i].row != w.row {
			t.Errorf("text %d is %+v", i+1, out[i])
		}
	}
	if out := lay(wide+2, wide/2); out != nil {
		t.Errorf("it does not fit, and is %v", out)
	}
}
