package work

import (
	"fmt"
	"strings"
	"testing"

	"barwright/compile/rule/ruletest"
)

// BenchmarkOrder puts 1 000 cabinets in order, with doors and shelves.
func BenchmarkOrder(b *testing.B) {
	var text strings.Builder
	text.WriteString(`
build "stores" { unit = "mm" }
room {
  wall "long" {
    length  = "990m"
    backing = "planks"
  }
}
sheet "ply" {
  size      = [2440, 1220]
  thickness = 18
  density   = 680
}
screw "box" {
  diameter = 4
  length   = 45
  per_box  = 200
}
carcass "base" {
  height = 860
  depth  = 580
  board  = sheet.ply
  screws = screw.box
  back   = { board = sheet.ply, fixed = "applied" }
  door   = { board = sheet.ply }
}
run "stores" {
  along   = wall.long
  carcass = carcass.base
`)
	for i := range 1000 {
		fmt.Fprintf(&text, "  cabinet \"c%d\" {\n    width   = %g\n    doors   = 2\n    shelves = 3\n  }\n", i, 700+float64(i)/10)
	}
	build := ruletest.Build(b, ruletest.Bar(text.String()+"}\n"))
	b.ReportAllocs()
	for b.Loop() {
		if n := len(Order(build)); n < 2000 {
			b.Fatal(n)
		}
	}
}
