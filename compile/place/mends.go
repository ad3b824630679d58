package place

import (
	"fmt"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/rule"
	"barwright/compile/rule/all"
	"barwright/compile/setting"
	"barwright/compile/solve"
	"barwright/lang"
	"barwright/lang/finding"
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

// tries is how many slots are tried, each by solving the description anew: few of a large one,
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
	src := r.Source.With(r.Block(r.key(name)), lang.Word{Attr: "cut", Word: "slot"}, lang.Word{Attr: "open_to", Word: edge})
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

// split is the mend that two boxes instead of one are: tried with the same boards, parted in
// the middle, where each half has a side of its own.
func (r *room) split(b *setting.Blocked) string {
	for _, name := range b.Bodies {
		o := r.byName[name]
		if len(o.parts) == 0 || o.parts[0].BlockKind() != "cabinet" {
			continue
		}
		left, right := halves(o)
		if _, blocked := r.tried(r.finished.With(name, left, right)); blocked == nil {
			return fmt.Sprintf("two cabinets instead of %q, side by side, each half as wide", r.Block(o.block).Name)
		}
	}
	return ""
}

// halves are a cabinet parted in the middle of its width.
func halves(o *body) (left, right setting.Body) {
	mid, side := o.hull.U.Mid(), o.parts[0].Thickness
	half := func(name string, u, board geom.Span) setting.Body {
		out := setting.Body{Name: name, On: o.On}
		own := o.Solids[0]
		own.Name, own.Box = "the new side", geom.Box{U: board, V: o.hull.V, Z: o.hull.Z}
		for _, s := range o.Solids {
			if s.Box.U = s.Box.U.Intersect(u); s.Box.U.Size() > 0 {
				out.Solids = append(out.Solids, s)
			}
		}
		out.Solids = append(out.Solids, own)
		return out
	}
	return half(o.Name, geom.Span{Lo: o.hull.U.Lo, Hi: mid}, geom.Span{Lo: mid - side, Hi: mid}),
		half(o.Name+", its right half", geom.Span{Lo: mid, Hi: o.hull.U.Hi}, geom.Span{Lo: mid, Hi: mid + side})
}
