package main

import (
	"path/filepath"
	"testing"

	"barwright/cmd/barwright/folder"
	"barwright/emit/dxf/dxftest"
)

// TestExamplesParsedDXF has the cut files of both examples, in both versions, read by a
// general library, and compares every contour, its layer and its bulges with the model.
func TestExamplesParsedDXF(t *testing.T) {
	for _, name := range examples {
		for version, r2000 := range map[string]bool{"AC1009": false, "AC1015": true} {
			m, dir := compiled(t, name), t.TempDir()
			m.Table.R2000 = r2000
			var files []string
			var want [][]dxftest.Contour
			var lines []int
			add := func(file string, contours []dxftest.Contour, marks int) {
				files = append(files, filepath.Join(dir, "out", "parts", file))
				want, lines = append(want, contours), append(lines, marks)
			}
			for i := range m.Parts {
				p := &m.Parts[i]
				lines := len(p.Marks)
				if p.FarBores() {
					lines++ // across the corner where zero is when it is turned over
				}
				add(p.Label+".dxf", dxftest.Of(p), lines)
				if p.FarBores() {
					add(p.Label+"-far.dxf", dxftest.OfFar(p), 0)
				}
			}
			if err := folder.Replace(t.Context(), filepath.Join(dir, "out"), cutFiles(m)); err != nil {
				t.Fatal(err)
			}
			for i, p := range dxftest.Parse(t, files) {
				for _, d := range p.Differences(want[i], lines[i]) {
					t.Error(d)
				}
				if p.Version != version {
					t.Errorf("%s is %s, not %s", p.File, p.Version, version)
				}
			}
		}
	}
}
