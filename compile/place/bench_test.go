package place

import (
	"fmt"
	"strings"
	"testing"

	"barwright/compile/edittest"
	"barwright/compile/rule"
	"barwright/compile/solve"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// many is a store of runs of 25 cabinets along walls, every tenth cabinet over a pipe.
func many(t testing.TB, n int) *rule.Build {
	t.Helper()
	var text strings.Builder
	text.WriteString(`
build "stores" { unit = "in" }
sheet "birch" {
  size      = [96, 48]
  thickness = "23/32in"
}
sheet "thin" {
  size      = [96, 48]
  thickness = "7/32in"
}
slab "maple" { thickness = 1.5 }
carcass "base" {
  height = 34.5
  depth  = 22.75
  board  = sheet.birch
  back   = { board = sheet.thin }
}
room {
`)
	const row = 25
	for i := range n / row {
		fmt.Fprintf(&text, "wall \"w%d\" {\nlength = 700\ncorner = 180\n", i)
		for k := 0; k < row; k += 10 {
			fmt.Fprintf(&text, "stub \"s%d_%d\" {\nat = [%d, 20]\ndiameter = 2\nstands_out = 3\n}\n", i, k, 12+k*24)
		}
		text.WriteString("}\n")
	}
	text.WriteString("}\n")
	for i := range n / row {
		fmt.Fprintf(&text, "run \"r%d\" {\nalong = wall.w%d\ncarcass = carcass.base\n", i, i)
		for k := range row {
			fmt.Fprintf(&text, "cabinet \"c%d_%d\" { width = 24 }\n", i, k)
		}
		fmt.Fprintf(&text, "}\ncounter \"t%d\" {\nover = run.r%d\nslab = slab.maple\n}\n", i, i)
	}
	src, found := lang.Read(source.Files{{Name: "bar.hcl", Text: []byte(text.String())}})
	solution := solve.Solve(src)
	if solution.Model == nil {
		t.Fatal(found, solution.Findings)
	}
	return rule.NewBuild(solution.Values, solution.Model, &finding.List{})
}

func BenchmarkOrder(b *testing.B) {
	for _, n := range []int{100, 500, 1000} {
		build := many(b, n)
		b.Run(fmt.Sprint(n, " cabinets"), func(b *testing.B) {
			for b.Loop() {
				Order(build)
				if len(build.Setting.Steps) < n {
					b.Fatal(*build.Findings)
				}
			}
		})
	}
}

func BenchmarkBoatshed(b *testing.B) {
	build := built(b, edittest.Folder(b, "../../examples/boatshed"))
	for b.Loop() {
		Order(build)
		if len(build.Setting.Steps) == 0 {
			b.Fatal(*build.Findings)
		}
	}
}
