package place

import (
	"fmt"
	"testing"

	"barwright/compile/edittest"
	"barwright/compile/manybuild"
)

func BenchmarkOrder(b *testing.B) {
	for _, n := range []int{100, 400, 700} {
		build := built(b, manybuild.Files(n, "in", 1))
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
