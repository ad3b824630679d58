package main

import (
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"barwright/cmd/barwright/folder"
	"barwright/compile/geom"
	"barwright/compile/layout"
	"barwright/compile/model"
	"barwright/emit/dxf/dxftest"
	"barwright/lang/length"
)

// TestExamplesOutsideSheets has the sheets of one example, cut by a saw, and of the other, cut by a
// table, audited by an independent reader and read by another: what each part's own file holds lies
// where the layout has it, each part is named, and the edges of the sheet are drawn.
func TestExamplesOutsideSheets(t *testing.T) {
	for _, name := range examples {
		m := compiled(t, name)
		if name == "servery" {
			m.Table.Free, m.Table.Spacing, m.Table.Margin = true, 9*length.Millimetre, 7*length.Millimetre
			m.Layouts, _ = layout.Layouts(m.Parts, m.Stock, layout.Shop{Saw: m.Saw, Table: m.Table})
		}
		auditSheets(t, m)
	}
}

func auditSheets(t *testing.T, m *model.Model) {
	t.Helper()
	c, dir := newCutting(m, cutOptions(m)), filepath.Join(t.TempDir(), "out")
	laid := c.laid()
	if err := folder.Replace(t.Context(), dir, laid); err != nil {
		t.Fatal(err)
	}
	var files []string
	for _, f := range laid {
		files = append(files, filepath.Join(dir, f.Name))
	}
	audited, parsed := dxftest.Inspect(t, files), dxftest.Parse(t, files)
	for i := range m.Layouts {
		l := &m.Layouts[i]
		if c.sheets[l.Stock] == nil {
			continue
		}
		for k := range l.Blanks {
			b := &l.Blanks[k]
			a, p := audited[0], parsed[0]
			audited, parsed = audited[1:], parsed[1:]
			if a.AuditErrors == nil || *a.AuditErrors+*a.AuditFixes+len(a.Problems) != 0 {
				t.Errorf("%s: problems %q", a.File, a.Problems)
			}
			var want []dxftest.Contour
			for _, placed := range b.Placed {
				want = append(want, onSheet(c.parts[placed.Part], &placed)...)
			}
			compare(t, a, want)
			everyName(t, p, c.parts, b)
		}
	}
	if len(audited) > 0 {
		t.Errorf("%d files of no sheet", len(audited))
	}
}

// onSheet are the contours of a part's own file, moved to where it lies.
func onSheet(p *model.Part, at *model.Placed) (out []dxftest.Contour) {
	all := dxftest.Of(p)
	outline := turned(all[len(all)-1].Shape, at.Turned).Bounds()
	for _, c := range all {
		if c.Layer != "MARK" && c.Layer != "NOTE" {
			c.Shape = turned(c.Shape, at.Turned)
			for i := range c.Shape {
				c.Shape[i].X += at.At.X.Lo - outline.X.Lo
				c.Shape[i].Y += at.At.Y.Lo - outline.Y.Lo
			}
			out = append(out, c)
		}
	}
	return out
}

// turned is a contour a quarter turn to the left, if so said.
func turned(c geom.Contour, turn bool) geom.Contour {
	c = slices.Clone(c)
	for i, v := range c {
		if turn {
			c[i].Point = geom.Point{X: -v.Y, Y: v.X}
		}
	}
	return c
}

func compare(t *testing.T, r dxftest.Result, want []dxftest.Contour) {
	t.Helper()
	if len(r.Contours) != len(want) {
		t.Errorf("%s: %d closed contours, want %d", r.File, len(r.Contours), len(want))
		return
	}
	for i, got := range r.Contours {
		box := want[i].Shape.Bounds()
		near := math.Abs(got.Area-math.Abs(want[i].Shape.Area())) < 1e-3
		for k, edge := range []length.Length{box.X.Lo, box.Y.Lo, box.X.Hi, box.Y.Hi} {
			near = near && math.Abs(got.Box[k]-edge.MM()) < 1e-3
		}
		if got.Layer != want[i].Layer || !near {
			t.Errorf("%s: contour %d is %+v, want %s in %v", r.File, i, got, want[i].Layer, box)
		}
	}
}

// everyName looks for the label of each part and its outline, and for the edges of the sheet.
func everyName(t *testing.T, p dxftest.Parsed, parts map[string]*model.Part, b *model.Blank) {
	t.Helper()
	outlines, edges := 0, 0
	var said []string
	for _, e := range p.Entities {
		switch {
		case e.Layer == "EDGE" && e.Closed:
			outlines++
		case e.Layer == "SHEET" && e.Closed && len(e.Vertices) == 4 && slices.Contains(e.Vertices, [3]float64{b.Length.MM(), b.Width.MM()}):
			edges++
		case e.Text != "" && e.Layer != "NOTE":
			t.Errorf("%s: %q stands on layer %s", p.File, e.Text, e.Layer)
		case e.Text != "":
			said = append(said, strings.Fields(e.Text)[0])
		}
	}
	if outlines != len(b.Placed) || edges != 1 {
		t.Errorf("%s: %d outlines of %d parts, edges drawn %d times", p.File, outlines, len(b.Placed), edges)
	}
	for _, placed := range b.Placed {
		if label := parts[placed.Part].Label; !slices.Contains(said, label) {
			t.Errorf("%s: nothing says %s", p.File, label)
		}
	}
}
