package revise_test

import (
	"fmt"
	"strings"
	"testing"

	"barwright/compile/bill"
	"barwright/compile/model"
	"barwright/compile/revise"
	"barwright/compile/solve"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/length"
	"barwright/lang/source"
)

// BenchmarkCompare compares two builds of 1 000 cabinets, no two alike, which differ in
// the width of one of them, or in the height of all; the latter is tried both ways.
func BenchmarkCompare(b *testing.B) {
	base, wider, lower := manyCabinets(b, 1000, 34.5, 0), manyCabinets(b, 1000, 34.5, 0.5), manyCabinets(b, 1000, 34, 0)
	for _, test := range []struct {
		name     string
		old, new *model.Model
	}{{"one_wider", base, wider}, {"all_lower", base, lower}, {"all_higher", lower, base}} {
		b.Run("1000_cabinets/"+test.name, func(b *testing.B) {
			b.ReportAllocs()
			var r *model.Revision
			for b.Loop() {
				r = revise.Compare(test.old, test.new, revise.Options{Within: length.Inch / 64})
			}
			for kind := model.Unchanged; kind <= model.Dropped; kind++ {
				b.ReportMetric(float64(r.Count(kind)), strings.ReplaceAll(kind.String(), " ", "_"))
			}
		})
	}
}

// manyCabinets solves a run of cabinets of different widths, in inches, with shelves and
// doors or drawers, of which one is wider than it would be. It has no layouts.
func manyCabinets(t testing.TB, n int, height, wider float64) *model.Model {
	t.Helper()
	var text strings.Builder
	fmt.Fprintf(&text, `
build "stores" { unit = "in" }
room {
  wall "long" {
    length  = "990m"
    backing = "planks"
    outlet "lamp" { at = [400, 20] }
  }
}
sheet "birch" {
  size      = [96, 48]
  thickness = "23/32in"
}
sheet "thin" {
  size      = [96, 48]
  thickness = "7/32in"
}
sheet "half" {
  size      = [60, 60]
  thickness = "15/32in"
}
carcass "base" {
  height = %g
  depth  = 22.75
  board  = sheet.birch
  back   = { board = sheet.thin }
  door   = { board = sheet.birch }
  drawer = { board = sheet.half, bottom = sheet.thin }
}
run "stores" {
  along   = wall.long
  carcass = carcass.base
`, height)
	for i := range n {
		width := 20 + 12*float64(i)/float64(n)
		if i == n/2 {
			width += wider
		}
		inside := "doors = 2\n    shelves = 3"
		if i%3 == 0 {
			inside = fmt.Sprintf("drawers = [%g, rest, rest]", 5+float64(i%7)/8)
		}
		fmt.Fprintf(&text, "  cabinet \"c%d\" {\n    width = %.3f\n    %s\n  }\n", i, width, inside)
	}
	text.WriteString("}\n")
	src, findings := lang.Read(source.Files{{Name: "stores.hcl", Text: []byte(text.String())}})
	if findings.HasErrors() {
		t.Fatal(findings)
	}
	solution := solve.Solve(src)
	if solution.Model == nil || solution.Findings.HasErrors() {
		t.Fatal(solution.Findings)
	}
	m := solution.Model
	m.Values = values.Recorded(solution.Values.Explain())
	m.Bill = bill.Lines(m)
	m.Findings = solution.Findings
	return m
}
