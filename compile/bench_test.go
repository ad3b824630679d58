package compile

import (
	"fmt"
	"testing"

	"barwright/compile/bill"
	"barwright/compile/layout"
	"barwright/compile/manybuild"
	"barwright/compile/model"
	"barwright/compile/nesting"
	"barwright/compile/paper"
	"barwright/compile/place"
	"barwright/compile/routing"
	"barwright/compile/rule"
	"barwright/compile/rule/all"
	"barwright/compile/solve"
	"barwright/compile/template"
	"barwright/compile/values"
	"barwright/compile/view"
	"barwright/compile/work"
	"barwright/lang"
	"barwright/lang/filename"
	"barwright/lang/finding"
)

// BenchmarkStages times each stage of a build of many cabinets, on what the stages before it
// give. DEVELOPERS.md has the figures; -short leaves out the largest build.
func BenchmarkStages(b *testing.B) {
	for _, n := range []int{100, 1000, 10_000} {
		if n == 10_000 && testing.Short() {
			continue
		}
		b.Run(fmt.Sprint(n), func(b *testing.B) { stages(b, n) })
	}
}

func stages(b *testing.B, n int) {
	files := manybuild.Files(n, "in", 1)
	src, _ := lang.Read(files)
	solution := solve.Solve(src)
	v, m := solution.Values, solution.Model
	if m == nil {
		b.Fatal("the build has errors")
	}
	var found finding.List
	build := rule.NewBuild(v, m, &found)
	rules := all.Rules()
	m.Cuts = layout.Cuts(m.Parts)
	for _, stage := range []struct {
		name string
		do   func()
	}{
		{"read", func() { lang.Read(files) }},
		{"values", func() { values.New(src, &finding.List{}).All() }},
		{"solve", func() { solve.Solve(src) }},
		{"rules", func() { rule.Judge(v, m, rules, &finding.List{}) }},
		{"router", func() {
			m.Programs = nil
			programs(v, m, solution.Recesses, &filename.Names{}, &finding.List{})
		}},
		{"routings", func() { m.Routings = routing.Routings(v, m, &finding.List{}) }},
		{"templates", func() { m.Templates = template.Templates(v, m, solution.Recesses, &finding.List{}) }},
		{"cuts", func() { m.Cuts = layout.Cuts(m.Parts) }},
		{"layouts", func() {
			m.Layouts, _ = layout.Layouts(m.Parts, m.Stock, layout.Shop{Saw: m.Saw, Table: m.Table, Work: nesting.Quick})
		}},
		{"apart", func() { cutsApart(src, m, &finding.List{}) }},
		{"setting", func() { place.Order(build) }},
		{"work", func() {
			m.Carry, m.Rough = work.Carry(build)
			m.Work = work.Order(build)
		}},
		{"explained", func() { m.Values = values.Recorded(v.Explain()) }},
		{"bill", func() { m.Bill = bill.Lines(m) }},
		{"views", func() { m.Views, m.Sheets, m.Sticks = view.Views(m), view.Sheets(m), view.Sticks(m) }},
		{"papers", func() { paper.Drawings(m, view.Drawings(m), paper.Formats["letter"]) }},
	} {
		b.Run(stage.name, func(b *testing.B) { timed(b, m, n, stage.do) })
	}
}

func timed(b *testing.B, m *model.Model, cabinets int, do func()) {
	b.ReportAllocs()
	do() // so that later stages have it where only they are asked for
	for b.Loop() {
		do()
	}
	b.ReportMetric(float64(cabinets), "cabinets")
	b.ReportMetric(float64(len(m.Parts)), "parts")
}
