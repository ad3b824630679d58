// Package compile turns a Source into a Model: it solves the description, then
// adds what follows from the solved parts: programs for the router, the cut
// list, layouts, the bill and the drawings.
package compile

import (
	"fmt"
	"slices"

	"barwright/compile/atonce"
	"barwright/compile/bill"
	"barwright/compile/geom"
	"barwright/compile/layout"
	"barwright/compile/model"
	"barwright/compile/nesting"
	"barwright/compile/place"
	"barwright/compile/router"
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
	"barwright/lang/source"
)

// Effort is how long is searched for layouts: work for each stock, as nesting.Job has it.
type Effort int

// Job is how a description is compiled.
type Job struct {
	Effort Effort
	Tell   func(stage string) // called with what is done next, in plain words; may be nil
}

func (j Job) tell(stage string) {
	if j.Tell != nil {
		j.Tell(stage)
	}
}

// Compile solves a description of which no blocks are lost. The model is nil
// where a finding is an error, here or in the reading; drawings are what drew its views,
// and draw them for paper. Findings are sorted.
func (j Job) Compile(src *lang.Source) (*model.Model, []view.Titled, finding.List) {
	return compiled(src, all.Rules(), j)
}

// Compile does so with the effort of an everyday build, and tells nobody.
func Compile(src *lang.Source) (*model.Model, finding.List) {
	m, _, findings := Job{Effort: nesting.Quick}.Compile(src)
	return m, findings
}

func compiled(src *lang.Source, rules []rule.Rule, j Job) (*model.Model, []view.Titled, finding.List) {
	var drawings []view.Titled
	m, findings := priced(src, rules, j, func(m *model.Model) {
		drawings = view.Drawings(m)
		m.Views = view.Drawn(drawings)
	})
	if m != nil {
		j.tell("drawing")
		m.Sheets, m.Sticks = view.Sheets(m), view.Sticks(m)
	}
	return m, drawings, findings
}

// Shown does so for who looks at the build on a screen: a large one, which would take long to draw, has
// no drawings but those of sticks; view.Listed lists the others, and draws them when they are asked for.
func Shown(src *lang.Source) (*model.Model, finding.List) {
	m, findings := priced(src, all.Rules(), Job{Effort: nesting.Quick}, func(m *model.Model) {
		if !m.Large() {
			m.Views = view.Views(m)
		}
	})
	if m != nil {
		m.Sticks = view.Sticks(m)
		if !m.Large() {
			m.Sheets = view.Sheets(m)
		}
	}
	return m, findings
}

// Priced does so for who compares builds: the model has no drawings.
func Priced(src *lang.Source) (*model.Model, finding.List) {
	return priced(src, all.Rules(), Job{Effort: nesting.Quick}, undrawn)
}

func undrawn(*model.Model) {}

func priced(src *lang.Source, rules []rule.Rule, j Job, draw func(*model.Model)) (*model.Model, finding.List) {
	m, findings, solved := checked(src, rules, j, draw)
	if m != nil {
		atonce.All(
			func() { m.Values = values.Recorded(solved.Explain()) },
			func() { m.Bill = bill.Lines(m) },
		)
	}
	return m, findings
}

// Asked does so for who asks what stands in a build: the model has no bill and no drawings.
func Asked(src *lang.Source) (*model.Model, finding.List) {
	m, findings, _ := checked(src, all.Rules(), Job{Effort: nesting.Quick}, undrawn)
	return m, findings
}

// Check does so for who wants the findings: the model has no cut list, no order of work, no bill
// and no drawings, in which nothing can be found, and layouts only where something may be found in
// them.
func (j Job) Check(src *lang.Source) (*model.Model, finding.List) {
	m, findings, _ := checked(src, all.Rules(), j, nil)
	return m, findings
}

// layoutsTell reports whether one layout may have a finding that another has not: where parts lie on
// sheets for a table, and where there are offcuts, of which there may be too few.
func layoutsTell(m *model.Model) bool {
	return m.Table.Free || m.Table.Files == "sheets" ||
		slices.ContainsFunc(m.Stock.Sheets, func(s model.Sheet) bool { return len(s.Offcuts) > 0 })
}

// Check does so with the effort of an everyday build.
func Check(src *lang.Source) (*model.Model, finding.List) {
	return Job{Effort: nesting.Quick}.Check(src)
}

// checked finds what there is to find; where it is given how to draw, it makes all that work goes by,
// too. It draws beside the layouts, which take as long, what no rule has found an error in.
func checked(src *lang.Source, rules []rule.Rule, j Job, draw func(*model.Model)) (*model.Model, finding.List, *values.Values) {
	j.tell("solving")
	solution := solve.Solve(src)
	m, findings, whole := solution.Model, solution.Findings, draw != nil
	if m != nil {
		j.tell("judging, and laying out sheets")
		shop := layout.Shop{Saw: m.Saw, Table: m.Table, Work: int(j.Effort)}
		var misfits []layout.Misfit
		var layouts []model.Layout // with cuts, for the model once nobody looks at it
		var cuts []model.Cut
		atonce.All(func() {
			if whole {
				cuts = layout.Cuts(m.Parts)
			}
			if whole || layoutsTell(m) {
				layouts, misfits = layout.Layouts(m.Parts, m.Stock, shop)
			} else {
				misfits = layout.Misfits(m.Parts, m.Stock, shop)
			}
		}, func() {
			rule.Judge(solution.Values, m, rules, &findings)
			var names filename.Names // of programs
			programs(solution.Values, m, solution.Recesses, &names, &findings)
			m.Programs = append(testPieces(m, &names), m.Programs...)
			m.Routings = routing.Routings(solution.Values, m, &findings)
			m.Templates = template.Templates(solution.Values, m, solution.Recesses, &findings)
			if whole && !findings.HasErrors() {
				draw(m)
			}
		})
		m.Cuts, m.Layouts = cuts, layouts
		tellMisfits(m, misfits, &findings)
		cutsApart(src, m, &findings)
		j.tell("looking for an order of setting and work")
		b := rule.NewBuild(solution.Values, m, &findings)
		if len(rules) > 0 {
			place.Order(b)
		}
		m.Carry, m.Rough = work.Carry(b)
		if whole && !findings.HasErrors() {
			m.Work = work.Order(b)
		}
	}
	findings.Sort()
	if m == nil || findings.HasErrors() {
		return nil, findings, solution.Values
	}
	m.Findings = findings
	return m, findings, solution.Values
}

// programs plans the router's path for each recess.
func programs(v *values.Values, m *model.Model, recesses []solve.Recess, names *filename.Names, findings *finding.List) {
	var refused refusals
	var laid setups
	for _, r := range recesses {
		part := &m.Parts[r.Part]
		recess := &part.Recesses[r.Recess]
		zero, words, number, on := laid.lay(r, recess.Shape.Bounds(), recess.Name)
		toZero := geom.Point{X: -zero}
		program, refusal := router.Plan(router.Request{
			Name: names.Free(r.File), Part: part.ID, PartLabel: part.Label, Recess: recess.Name, RecessID: recess.ID,
			Zero: words, Mark: zero, Setup: number, MovedOn: on,
			Shape: recess.Shape.Bounds().Shift(toZero), Open: recess.Open, Corner: recess.Radius,
			Stock: part.Outline.Bounds().Shift(toZero), Thick: part.Thickness,
			Depth: recess.Depth, Tool: r.Tool, Show: m.Build.Plain,
		})
		if refusal != nil {
			refused.add(v, r, recess.Name, refusal)
			continue
		}
		m.Programs = append(m.Programs, program)
	}
	refused.tell(v, findings)
}

// tellMisfits makes an error of stock that is too small for parts, which names the one that misses
// by most.
func tellMisfits(m *model.Model, misfits []layout.Misfit, findings *finding.List) {
	var stocks []string
	for _, miss := range misfits {
		if !slices.Contains(stocks, miss.Stock) {
			stocks = append(stocks, miss.Stock)
		}
	}
	for _, stock := range stocks {
		tooSmall(m, stock, misfits, findings)
	}
}

func tooSmall(m *model.Model, stock string, misfits []layout.Misfit, findings *finding.List) {
	var worst layout.Misfit
	others := -1
	for _, miss := range misfits {
		if miss.Stock != stock {
			continue
		}
		others++
		if worst.Part == "" || max(miss.OverLength, miss.OverWidth) > max(worst.OverLength, worst.OverWidth) {
			worst = miss
		}
	}
	over := fmt.Sprintf("%s too long", m.Build.Plain(worst.OverLength))
	switch {
	case worst.OverLength > 0 && worst.OverWidth > 0:
		over += fmt.Sprintf(" and %s too wide", m.Build.Plain(worst.OverWidth))
	case worst.OverWidth > 0:
		over = fmt.Sprintf("%s too wide", m.Build.Plain(worst.OverWidth))
	}
	part := m.PartsByID()[worst.Part]
	x, y := part.Size()
	text := fmt.Sprintf("%s, %s of %s, is %s x %s: %s for the largest %s on sale, its trimmed edges taken off.",
		part.Label, part.Named(), part.Owner, m.Build.Plain(x), m.Build.Plain(y), over, stock)
	text += finding.Others(others, " So is another part.", " So are %d other parts.")
	findings.Errorf("part-too-large", stockPlace(m, stock), "a larger size, or smaller parts", "%s", text).
		Also(part.Why.At, "the part is asked for here")
}

func stockPlace(m *model.Model, name string) source.Range {
	for _, s := range m.Stock.Sheets {
		if s.Name == name {
			return s.Why.At
		}
	}
	for _, s := range m.Stock.Sticks {
		if s.Name == name {
			return s.Why.At
		}
	}
	panic("no stock " + name)
}
