package compile

import (
	"slices"
	"testing"

	"barwright/compile/edittest"
	"barwright/compile/manybuild"
	"barwright/compile/model"
	"barwright/compile/view"
	"barwright/lang"
	"barwright/lang/source"

	"github.com/google/go-cmp/cmp"
)

// What lists pictures lists those that are drawn, in their order, and draws each as it is.
func TestPicturesAreListed(t *testing.T) {
	for name, files := range map[string]source.Files{
		"boatshed": edittest.Folder(t, "../examples/boatshed"),
		"servery":  edittest.Folder(t, "../examples/servery"),
		"many":     manybuild.Files(40, "mm", 3),
	} {
		src, findings := lang.Read(files)
		m, more := Compile(src)
		if m == nil {
			t.Fatal(name, findings, more)
		}
		listed := view.Listed(m)
		for _, set := range [][2][]model.View{{listed.Views, m.Views}, {listed.Sheets, m.Sheets}} {
			got, want := set[0], slices.Clone(set[1])
			for i := range want {
				v := &want[i]
				if drawn, ok := listed.Draw(v.Name); !ok || !cmp.Equal(drawn, *v) {
					t.Errorf("%s: %s is not drawn as it is", name, v.Name)
				}
				*v = model.View{Name: v.Name, Title: v.Title, Part: v.Part, Alike: v.Alike, Apart: v.Apart}
			}
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("%s: %s", name, diff)
			}
		}
		for _, v := range m.Sticks {
			if drawn, ok := listed.Draw(v.Name); !ok || !cmp.Equal(drawn, v) {
				t.Errorf("%s: %s is not drawn as it is", name, v.Name)
			}
		}
		if _, ok := listed.Draw("no-such"); ok {
			t.Error("there is a picture of nothing")
		}
	}
}
