package nesting_test

import (
	"fmt"
	"os"
	"testing"

	"barwright/compile/nesting"
	"barwright/compile/nesting/nestingtest"
)

const published = "../../../shared/bench"

// families are the published instances that are measured. Gap is the most that the sheets of a
// fifth of them may be above the best known, with the work of a build: 1.5 % is promised for the
// classes, and more is kept where it can be; for the others nothing is, for so little work.
var families = []struct {
	variant, only string
	turn, free    bool
	gap           float64
}{
	{"2BP|O|G", "class", false, false, 0.015},
	{"2BP|R|G", "class", true, false, 0.015},
	{"2BP|O|F", "class", false, true, 0.01},
	{"2BP|R|F", "class", true, true, 0.01},
	{"2BP|O|G", "cut", false, false, 0.02},
	{"2BP|R|G", "cut", true, false, 0.02},
	{"2BP|O|F", "cut", false, true, 0.02},
	{"2BP|R|F", "cut", true, true, 0.02},
}

// TestPublished lays out every fifth published instance: no count is under its bound, no bound
// of ours above the best known, and all are within what is promised for a build. The benchmark
// has the whole set.
func TestPublished(t *testing.T) {
	for _, f := range families {
		sheets, best, at := 0, 0, 0
		for _, c := range read(t, f.only, f.variant) {
			for _, in := range c.Instances {
				if at++; at%5 != 0 {
					continue
				}
				j := in.Job(f.turn)
				j.Free = f.free
				l := j.Solve()
				if err := nestingtest.Check(j, l); err != nil {
					t.Errorf("%s: %v", in.Name, err)
				}
				if len(l.Used) < in.AtLeast || l.Fewest > in.Best {
					t.Errorf("%s: %d sheets of at least %d or %d; %d are known", in.Name, len(l.Used), in.AtLeast, l.Fewest, in.Best)
				}
				sheets, best = sheets+len(l.Used), best+in.Best
			}
		}
		t.Logf("%s %s: %d sheets, best known %d", f.only, f.variant, sheets, best)
		if best == 0 || float64(sheets) > float64(best)*(1+f.gap) {
			t.Errorf("%s %s: %d sheets, best known %d", f.only, f.variant, sheets, best)
		}
	}
}

// read reads a family, or skips the test, aloud, where it is not beside the project.
func read(t testing.TB, only, variant string) []nestingtest.Class {
	t.Helper()
	classes, err := nestingtest.Read(published, only, variant)
	if err != nil && os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
		t.Fatal("the published instances are missing:", err)
	}
	if err != nil {
		t.Skip("OUTSIDE CHECK SKIPPED: the published instances are missing, nothing is measured:", err)
	}
	return classes
}

// BenchmarkPublished lays out all published instances with the work of a build, each class by
// itself.
func BenchmarkPublished(b *testing.B) {
	for _, f := range families {
		for _, c := range read(b, f.only, f.variant) {
			pieces := 0
			for _, in := range c.Instances {
				pieces += len(in.Job(f.turn).Pieces)
			}
			b.Run(fmt.Sprintf("%s/%s/instances=%d/pieces=%d", f.variant, c.Name, len(c.Instances), pieces), func(b *testing.B) {
				for b.Loop() {
					sheets, best := 0, 0
					for _, in := range c.Instances {
						j := in.Job(f.turn)
						j.Free = f.free
						sheets, best = sheets+len(j.Solve().Used), best+in.Best
					}
					b.ReportMetric(float64(sheets), "sheets")
					b.ReportMetric(100*float64(sheets-best)/float64(best), "%above")
				}
			})
		}
	}
}

// BenchmarkJob lays out a job as a bar has it with the work of a build.
func BenchmarkJob(b *testing.B) {
	j := nesting.Job{Sheets: []nesting.Sheet{{Size: size(2440, 1220)}}, Kerf: 32 * mm / 10, Work: nesting.Quick}
	for _, s := range []nesting.Size{size(580, 720), size(564, 560), size(1164, 100), size(600, 300), size(1250, 420)} {
		j.Pieces = append(j.Pieces, pieces(5, s.X/mm, s.Y/mm, s.X%3 == 0)...)
	}
	for b.Loop() {
		b.ReportMetric(float64(len(j.Solve().Used)), "sheets")
	}
}
