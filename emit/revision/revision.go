// Package revision tells what one build differs in from an older one: as text for a
// terminal, as Markdown for a merge request, as JSON for programs, and as a page with
// both builds over each other. It takes a comparison and changes nothing of it; the
// same comparison gives the same bytes.
//
// Many parts that fare alike are told of once; JSON lists each.
package revision

import (
	"slices"
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/emit/page"
	"barwright/lang/finding"
)

// Names are the two sides as the person named them.
type Names struct{ Old, New string }

// report is a revision in words, as people read it.
type report struct {
	*model.Revision
	names Names
	// root is the one thing that the text says otherwise, where all else follows
	// from it; empty otherwise.
	root   string
	olds   map[string]int // the old part of an ID; lookup only
	serves map[int]int    // the new part that an old one serves for; lookup only
	groups []group
}

func reported(r *model.Revision, names Names) *report {
	out := &report{Revision: r, names: names, root: onlyCause(r), olds: map[string]int{}, serves: map[int]int{}}
	for i := range r.Old.Parts {
		out.olds[r.Old.Parts[i].ID] = i
	}
	for i := range r.Fates {
		if f := &r.Fates[i]; f.Old >= 0 && f.New >= 0 {
			out.serves[f.Old] = f.New
		}
	}
	out.groups = out.gathered()
	return out
}

// onlyCause is the one changed name of a revision that has no other.
func onlyCause(r *model.Revision) string {
	name := ""
	for i := range r.Changes {
		c := &r.Changes[i]
		switch {
		case c.Kind >= model.Follows:
		case name != "":
			return ""
		default:
			name = c.Name
		}
	}
	other := func(because []string) bool { return len(because) > 0 && because[len(because)-1] != name }
	if slices.ContainsFunc(r.Changes, func(c model.Change) bool { return other(c.Because) }) ||
		slices.ContainsFunc(r.Fates, func(f model.Fate) bool { return other(f.Because) }) {
		return ""
	}
	return name
}

// mostBetween is how many names of the way from the changed text are told.
const mostBetween = 2

// because tells the way from the changed text; empty where it goes without saying.
func (r *report) because(way []string) string {
	if len(way) == 0 {
		return ""
	}
	last := len(way) - 1
	var said []string
	if way[last] != r.root {
		said = append(said, "because of "+way[last])
	}
	if between := way[:last]; 0 < last && last <= mostBetween {
		between = slices.Clone(between)
		slices.Reverse(between)
		said = append(said, "through "+strings.Join(between, " and "))
	}
	return strings.Join(said, ", ")
}

// rootSays tells of the one cause of all.
func (r *report) rootSays() string {
	if r.root == "" || len(r.Changes) == 1 && len(r.Fates) == r.Count(model.Unchanged) {
		return ""
	}
	return "All that is told from here on follows from " + r.root + "."
}

// told is a part of the report that lists names.
type told struct {
	head    string
	changes []*model.Change
}

// changes parts them into what the text says, what follows and what moved.
func (r *report) changes() []told {
	out := []told{{head: "changed"}, {head: "follows"}, {head: "moved"}}
	for i := range r.Changes {
		c := &r.Changes[i]
		at := &out[max(0, int(c.Kind-model.Follows)+1)]
		at.changes = append(at.changes, c)
	}
	return slices.DeleteFunc(out, func(t told) bool { return len(t.changes) == 0 })
}

// change tells what a name says otherwise.
func change(c *model.Change) string {
	switch {
	case c.Kind == model.Came || c.Kind == model.Went:
		return strings.TrimSuffix(c.Kind.String()+": "+c.Means, ": ")
	case c.Text != "":
		return c.Text
	}
	said := func(value, written string) string {
		switch {
		case value == "" && written == "":
			return "nothing"
		case written == "" || written == value:
			return value
		case value == "":
			return written
		}
		return value + " (" + written + ")"
	}
	return said(c.Old, c.OldWritten) + " → " + said(c.New, c.NewWritten)
}

// fate names what becomes of a part.
func (r *report) fate(kind model.FateKind) string {
	if kind == model.NewPart && r.Cut {
		return "still to cut"
	}
	return kind.String()
}

// counts are the parts of each fate that there are any of.
func (r *report) counts() []string {
	var out []string
	for kind := model.Unchanged; kind <= model.Dropped; kind++ {
		if n := r.Count(kind); n > 0 {
			out = append(out, strconv.Itoa(n)+" "+r.fate(kind))
		}
	}
	return out
}

// againHead says what the bill of the parts to be cut is of.
func (r *report) againHead() string {
	if r.Cut {
		return "still to cut and to make again"
	}
	return "to make again and new"
}

// titled is a build as its heading says it.
func titled(m *model.Model) string {
	if m.Build.Revision == "" {
		return m.Build.Name
	}
	return m.Build.Name + ", revision " + m.Build.Revision
}

// came says which of the builds has a finding: "came", "went" or "figures".
func came(f *model.FindingChange) string {
	switch {
	case f.Old == nil:
		return "came"
	case f.New == nil:
		return "went"
	}
	return "figures"
}

// place is where a finding points to: "bar.hcl:12".
func place(f *finding.Finding) string {
	if f.At.IsZero() {
		return ""
	}
	return f.At.File + ":" + strconv.Itoa(f.At.Start.Line)
}

// findingCounts are the findings that came, went or have other figures.
func (r *report) findingCounts() []string {
	var out []string
	for _, kind := range [...]struct{ key, says string }{{"came", " came"}, {"went", " went"}, {"figures", " with other figures"}} {
		n := 0
		for i := range r.Findings {
			if came(&r.Findings[i]) == kind.key {
				n++
			}
		}
		if n > 0 {
			out = append(out, strconv.Itoa(n)+kind.says)
		}
	}
	return out
}

// item is what one asks for at the counter.
func item(l *model.BillLine) string {
	if l.Text == "" {
		return l.Item
	}
	return l.Text
}

// bought tells how a line of the bill differs: what it is, its quantities, and what it
// costs more.
func bought(b *model.BillChange) (what, quantity, cost string) {
	before, after, known := b.Costs()
	if cost = difference(after - before); !known {
		cost = "price not known"
	}
	amount := func(l *model.BillLine) string {
		if l == nil {
			return "none"
		}
		if said := page.Pieces(l.Quantity, l.Unit); said != "" {
			return said
		}
		return "not known"
	}
	line, old, now := b.New, amount(b.Old), amount(b.New)
	switch {
	case line == nil:
		line = b.Old
	case b.Old != nil && old == now && b.Old.Price != b.New.Price:
		return item(line), now + " at " + page.Money(b.Old.Price) + " → " + page.Money(b.New.Price), cost
	case b.Old != nil && old == now:
		return item(line), now + " as before; used of it: " + b.New.Needed, cost
	}
	return item(line), old + " → " + now, cost
}

// difference writes a cost with its sign; nothing where it is none.
func difference(x float64) string {
	text := page.Money(max(x, -x))
	switch {
	case text == page.Money(0):
		return ""
	case x < 0:
		return "− " + text
	}
	return "+ " + text
}

// billSum tells what all lines of the bill together cost more.
func (r *report) billSum() string {
	sum, unknown := 0.0, 0
	for i := range r.Bill {
		before, after, known := r.Bill[i].Costs()
		if !known {
			unknown++
			continue
		}
		sum += after - before
	}
	text := difference(sum)
	if text == "" {
		text = "costs the same"
	}
	if unknown > 0 {
		text += ", without " + finding.Counted(unknown, "line") + " whose price is not known"
	}
	return text
}

// againSum tells what the parts to be cut cost.
func (r *report) againSum() string {
	cost, unpriced := model.Total(r.Again)
	text := "in all " + page.Money(cost)
	switch {
	case unpriced == len(r.Again):
		return "without prices"
	case unpriced > 0:
		text += ", without " + finding.Counted(unpriced, "line") + " that has no price"
	}
	return text
}

// cost is what a line costs.
func cost(l *model.BillLine) string {
	if !l.Priced {
		return ""
	}
	return page.Money(l.Cost())
}
