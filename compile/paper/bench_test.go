package paper_test

import (
	"os"
	"testing"

	"barwright/compile"
	"barwright/compile/paper"
	"barwright/compile/view"
	"barwright/lang"
	"barwright/lang/source"
)

// BenchmarkDrawings lays out the drawings of the boat shed on letter paper.
func BenchmarkDrawings(b *testing.B) {
	var files source.Files
	for _, name := range []string{"bar.hcl", "shop.hcl", "stock.hcl"} {
		text, err := os.ReadFile("../../examples/boatshed/" + name)
		if err != nil {
			b.Fatal(err)
		}
		files = append(files, source.File{Name: name, Text: text})
	}
	src, _ := lang.Read(files)
	m, _ := compile.Compile(src)
	for b.Loop() {
		paper.Drawings(m, view.Drawings(m), paper.Formats["letter"])
	}
}
