package place

import (
	"fmt"
	"slices"

	"barwright/compile/rule"
	"barwright/compile/rule/all"
	"barwright/compile/setting"
	"barwright/compile/solve"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// edges are those that a slot may be open to, the commonest first.
var edges = [...]string{"rear", "bottom", "front", "left", "right", "top"}

// slot is the mend that a slot instead of a hole is, empty where none frees them. Each is tried: the
// description is solved with it, judged by all rules, and has an order.
func (r *room) slot(b *setting.Blocked) string {
	tries := r.tries()
	for _, name := range r.pierces(b) {
		for _, edge := range edges {
			if tries--; tries < 0 {
				return ""
			}
			if r.frees(name, edge) {
				return fmt.Sprintf("a slot for %s: cut = \"slot\", open_to = %q", name, edge)
			}
		}
	}
	return ""
}

// tries is how many mends of a kind are tried, each by solving the description anew: few of a large one,
// so that nobody waits for it.
func (r *room) tries() int {
	if len(r.bodies) > 200 {
		return 3
	}
	return 18
}

// pierces lists what stands out of the walls and stops those that are blocked.
func (r *room) pierces(b *setting.Blocked) (names []string) {
	for _, h := range b.Hits {
		if r.key(h.By) != "" && !slices.Contains(names, h.By) {
			names = append(names, h.By)
		}
	}
	return names
}

// key is that of the block of what stands out of a wall; empty for anything else.
func (r *room) key(name string) string {
	for i := range r.Room.Walls {
		for _, f := range r.Room.Walls[i].Fixtures() {
			if f.Words() == name && f.StandsOut > 0 {
				return f.Key()
			}
		}
	}
	return ""
}

// frees tries a slot.
func (r *room) frees(name, edge string) bool {
	return r.hasOrder(r.Source.With(r.Block(r.key(name)), lang.Word{Attr: "cut", Word: "slot"}, lang.Word{Attr: "open_to", Word: edge}))
}

// hasOrder solves a changed description and reports whether it has an order, and no rule finds trouble that the
// first one had not.
func (r *room) hasOrder(src *lang.Source) bool {
	solved := solve.Solve(src)
	if solved.Model == nil {
		return false
	}
	found := solved.Findings
	rule.Judge(solved.Values, solved.Model, all.Rules(), &found)
	if slices.ContainsFunc(found, r.isNew) {
		return false
	}
	_, blocked := newRoom(rule.NewBuild(solved.Values, solved.Model, &found)).order()
	return blocked == nil
}

// isNew reports whether a finding tells of trouble that the description had not.
func (r *room) isNew(f finding.Finding) bool {
	return f.Severity != finding.Note && !slices.ContainsFunc(*r.Findings, func(g finding.Finding) bool { return f.Slug == g.Slug && f.Text == g.Text })
}

// split is the mend that two boxes instead of one are, each half as wide, empty where that frees
// none: tried as a slot is.
func (r *room) split(b *setting.Blocked) string {
	tries := r.tries()
	for _, name := range b.Bodies {
		o := r.byName[name]
		block := r.Block(o.block)
		if block == nil || block.Spec.Kind != "cabinet" {
			continue
		}
		if tries--; tries < 0 {
			return ""
		}
		half := o.hull.U.Size() / 2
		width := lang.Word{Attr: "width", Word: fmt.Sprintf("%d.%06dmm", half/length.Millimetre, half%length.Millimetre)}
		if r.hasOrder(r.Source.InTwo(block, block.Name+"_right", width)) {
			return fmt.Sprintf("two cabinets instead of %q, each %s wide", block.Name, r.Show(half))
		}
	}
	return ""
}
