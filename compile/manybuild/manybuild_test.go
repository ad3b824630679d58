package manybuild_test

import (
	"fmt"
	"reflect"
	"testing"

	"barwright/compile"
	"barwright/compile/manybuild"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
)

// TestFiles holds builds to what they are for: they can be built, and have the cabinets and
// about the parts that are said.
func TestFiles(t *testing.T) {
	for _, n := range []int{1, 7, 100, 1000} {
		if n == 1000 && testing.Short() {
			break
		}
		for _, unit := range []string{"in", "mm"} {
			t.Run(fmt.Sprint(n, unit), func(t *testing.T) {
				src, found := lang.Read(manybuild.Files(n, unit, 1))
				if len(found) > 0 {
					t.Fatal(found)
				}
				m, found := compile.Check(src)
				if m == nil || found.Count(finding.Warning) > 0 {
					t.Fatal(found)
				}
				cabinets := 0
				for _, r := range m.Runs {
					for _, box := range r.Boxes {
						if box.Kind == model.Cabinet {
							cabinets++
						}
					}
				}
				if cabinets != n || len(m.Parts) < 12*n || len(m.Parts) > 18*n {
					t.Errorf("%d cabinets and %d parts; want %d, and 12 to 18 parts each", cabinets, len(m.Parts), n)
				}
			})
		}
	}
}

// TestMost reads as many cabinets as there are to be, which the limits of a description allow.
func TestMost(t *testing.T) {
	files := manybuild.Files(10_000, "in", 1)
	if !reflect.DeepEqual(files, manybuild.Files(10_000, "in", 1)) {
		t.Error("the same arguments give another text")
	}
	if reflect.DeepEqual(files, manybuild.Files(10_000, "in", 2)) {
		t.Error("another seed gives the same text")
	}
	if _, found := lang.Read(files); len(found) > 0 {
		t.Error(found)
	}
}
