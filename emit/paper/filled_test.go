package paper

import (
	"bytes"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/atonce"
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/paper"
	"barwright/compile/view"
	"barwright/compile/view/viewtest"
)

// TestSameAsTheLibrary: the outcome is what the library writes where it draws and compresses the pages itself, of random
// builds, of papers without a text, a shape or both.
func TestSameAsTheLibrary(t *testing.T) {
	compare := func(name string, papers []model.Paper) {
		var got bytes.Buffer
		if err := WritePDF(&got, name, papers, atonce.Each); err != nil {
			t.Fatal(err)
		}
		if want := byLibrary(t, name, papers); !bytes.Equal(got.Bytes(), want) {
			t.Errorf("%s: %d bytes, not the library's %d", name, got.Len(), len(want))
		}
	}
	for seed := range 12 {
		m := rapid.Custom(viewtest.Random).Example(seed)
		m.Views = view.Views(m)
		papers := paper.Drawings(m, paper.Formats[paper.Names[seed%len(paper.Names)]])
		compare("a build", papers)
		for i := range papers {
			switch (i + seed) % 4 {
			case 0:
				papers[i].Lettering = nil
			case 1:
				papers[i].Shapes = nil
			case 2:
				papers[i].Shapes, papers[i].Lettering = nil, nil
			}
		}
		compare("papers that lack something", papers)
	}
	odd := model.Paper{Title: "odd (signs)", Size: paper.Formats["A4"]}
	for i, text := range []string{`a\b (c) 1 3/8`, "⌀5 木 Щ", "3/8", "", "\r"} {
		for _, turn := range []int{0, 30, 90} {
			l := model.Lettering{Text: text, Bold: i%2 == 0, Height: 3_000_000, Turn: geom.Angle(turn) * geom.Degree}
			odd.Lettering = append(odd.Lettering, l)
		}
	}
	compare("odd signs", []model.Paper{odd, odd})
}
