package nesting

import (
	"testing"

	"barwright/compile/geom"
)

// TestSqueezed cuts two pieces of one width from two strips that reach over the whole sheet: one
// cut along both leaves more.
func TestSqueezed(t *testing.T) {
	s := &search{kinds: []kind{{w: 20, h: 20}}}
	on := &tree{}
	on.reset(s, 0)
	on.place(root, 0, 5, 4, false, false)
	for i := range on.rests {
		if r := on.rests[i]; r.w == 20 {
			on.place(r.node, 1, 5, 3, false, false)
			break
		}
	}
	pieces := []int{0, 1}
	loose := Used{}
	on.saw(root, geom.Point{}, 0, pieces, &loose)
	tight := on.tell(s, 0, pieces)
	if len(loose.Cuts) != 4 || len(tight.Cuts) != 3 || area(tight.Offcut) != 15*20 || len(tight.Placed) != 2 {
		t.Errorf("%d cuts became %d, and %d pieces lie beside an offcut of %v", len(loose.Cuts), len(tight.Cuts), len(tight.Placed), tight.Offcut)
	}
	s.stages = 2
	if tight := on.tell(s, 0, pieces); len(tight.Cuts) != 4 {
		t.Errorf("with two stages %d cuts", len(tight.Cuts))
	}
}
