package main

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile"
	"barwright/compile/edittest"
	"barwright/compile/model"
	"barwright/compile/view"
	"barwright/lang"
)

// Everything that a router can be asked for, in both examples: each program cuts right in
// the simulator, or outputs fails, and each kind of work is there.
func TestAllOtherWork(t *testing.T) {
	const all = "also = { openings = true, outlines = true, cups = true, pins = true, grooves = true }\n"
	for _, test := range []struct {
		example, edits string
		left           []string // kinds of which nothing is cut
	}{
		{"boatshed", "- bit      = \"1/4in\"\n+ bit = \"5mm\"\n+ " + all, nil},
		{"servery", "- bit      = 8\n+ bit = 5\n+ arcs = \"chords\"\n+ " + all, nil},
		{"servery", "- bit      = 8\n+ bit = 8\n+ relief = \"diagonal\"\n+ " + strings.ReplaceAll(all, "outlines = true, ", ""), []string{"outline", "pin"}},
	} {
		src, found := lang.Read(edittest.Edited(t, edittest.Folder(t, "../../examples/"+test.example), test.edits))
		if found.HasErrors() {
			t.Fatal(found)
		}
		m, found := compile.Check(src)
		if m == nil {
			t.Fatal(found)
		}
		if _, err := outputs(m, view.Drawings(m), ""); err != nil {
			t.Errorf("%s: %v", test.example, err)
		}
		got, want := map[string]int{}, worksIn(m)
		for _, r := range m.Routings {
			for _, w := range r.Works {
				got[w.Kind]++
			}
		}
		for _, kind := range test.left {
			delete(want, kind)
		}
		// Some grooves are narrower than the bit.
		if got["groove"] == 0 || got["groove"] > want["groove"] {
			t.Errorf("%s: %d of %d grooves are cut", test.example, got["groove"], want["groove"])
		}
		delete(got, "groove")
		delete(want, "groove")
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s (-there +cut):\n%s", test.example, diff)
		}
	}
}

// worksIn counts what there is in the panels, by kind.
func worksIn(m *model.Model) map[string]int {
	kinds := map[string]string{"hinge cup": "cup", "shelf pin": "pin", "hinge plate": "pin"}
	out := map[string]int{}
	for _, p := range m.Parts {
		if p.Kind != model.Panel {
			continue
		}
		out["outline"]++
		for _, o := range p.Openings {
			if !o.Notch {
				out["opening"]++
			}
		}
		for _, b := range p.Bores {
			if kind := kinds[b.Name]; kind != "" {
				out[kind]++
			}
		}
		for _, r := range p.Recesses {
			if !r.Routed {
				out["groove"]++
			}
		}
	}
	return out
}
