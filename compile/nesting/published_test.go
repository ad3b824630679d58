package nesting_test

import (
	"testing"

	"barwright/compile/nesting"
	"barwright/compile/nesting/nestingtest"
)

const published = "../../../shared/bench"

// TestPublished lays out every fifth published instance: no count is under its bound, no bound
// of ours above the best known, and all are within what is promised for a build.
func TestPublished(t *testing.T) {
	for _, v := range []struct {
		variant, only string
		turn          bool
		gap           float64 // most that all sheets are above the best known
	}{
		{"2BP|O|G", "class", false, 0.015},
		{"2BP|R|G", "class", true, 0.015},
		{"2BP|O|G", "cut", false, 0.02},
		{"2BP|R|G", "cut", true, 0.02},
	} {
		classes, err := nestingtest.Read(published, v.only, v.variant)
		if err != nil {
			t.Skipf("PUBLISHED INSTANCES ARE NOT THERE, NOTHING IS MEASURED: %v", err)
		}
		sheets, best, at := 0, 0, 0
		for _, c := range classes {
			for _, in := range c.Instances {
				if at++; at%5 != 0 {
					continue
				}
				j := in.Job(v.turn)
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
		t.Logf("%s %s: %d sheets, best known %d", v.only, v.variant, sheets, best)
		if float64(sheets) > float64(best)*(1+v.gap) {
			t.Errorf("%s %s: %d sheets, best known %d", v.only, v.variant, sheets, best)
		}
	}
}

// BenchmarkPublished lays all published classes out with the work of a build.
func BenchmarkPublished(b *testing.B) {
	classes, err := nestingtest.Read(published, "class", "2BP|O|G")
	if err != nil {
		b.Skipf("PUBLISHED INSTANCES ARE NOT THERE, NOTHING IS MEASURED: %v", err)
	}
	for b.Loop() {
		sheets, best := 0, 0
		for _, c := range classes {
			for _, in := range c.Instances {
				sheets += len(in.Job(false).Solve().Used)
				best += in.Best
			}
		}
		b.ReportMetric(float64(sheets), "sheets")
		b.ReportMetric(100*float64(sheets-best)/float64(best), "%above")
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
