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
	"unicode"

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

// told is a part of the report that lists names.
type told struct {
	head  string
	lines []entry
}

// entry tells of a name, or of things that moved alike.
type entry struct {
	name, means, says string
	cause             string // empty where it goes without saying
	through           string // the nearest name on the way from there
}

// why tells what an entry is because of, and through what.
func (l entry) why() string {
	return strings.Trim(because(l.cause)+", "+l.through, ", ")
}

// told parts the changes into what the text says, what follows and what moved.
func (r *report) told() []told {
	var said, follows []entry
	var moved []*model.Change
	for i := range r.Changes {
		c := &r.Changes[i]
		l := entry{name: c.Name, means: c.Means, says: change(c), cause: r.cause(c.Because)}
		switch {
		case c.Kind == model.Moved:
			moved = append(moved, c)
		case c.Kind == model.Follows:
			if len(c.Because) > 1 {
				l.through = "through " + c.Because[0]
			}
			follows = append(follows, l)
		default:
			said = append(said, l)
		}
	}
	out := []told{{"changed", said}, {"follows", follows}, {"moved", r.movedLines(moved)}}
	return slices.DeleteFunc(out, func(t told) bool { return len(t.lines) == 0 })
}

// change tells what a name says otherwise.
func change(c *model.Change) string {
	switch {
	case c.Text != "":
		return c.Text
	case c.Kind == model.Came || c.Kind == model.Went:
		return strings.TrimSuffix(c.Kind.String()+": "+c.Means, ": ")
	}
	figures := c.Old != c.New && bare(c.OldWritten, c.Old) && bare(c.NewWritten, c.New)
	said := func(value, written string) string {
		switch {
		case value == "" && written == "":
			return "nothing"
		case written == "" || written == value || figures && value != "":
			return value
		case value == "":
			return written
		}
		return value + " (" + written + ")"
	}
	return said(c.Old, c.OldWritten) + " → " + said(c.New, c.NewWritten)
}

// bare reports whether what the text says tells no more than its value: it names
// nothing but units.
func bare(written, value string) bool {
	if written == value || written == strings.Trim(value, `"`) {
		return true
	}
	words := strings.FieldsFunc(written, func(c rune) bool { return !unicode.IsLetter(c) && c != '_' })
	return !slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(units, w) })
}

// units are those that lengths are written in.
var units = []string{"in", "ft", "mm", "cm", "m"}

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
			out = append(out, strconv.Itoa(n)+" "+toDo[kind]+r.fate(kind))
		}
	}
	return out
}

// toDo says which fates want something done.
var toDo = [...]string{model.Relabel: "to ", model.Rework: "to ", model.Patch: "to ", model.MakeAgain: "to ", model.Dropped: ""}

// sums are what one wants to know first: how the parts fare, and what it costs.
func (r *report) sums() []string {
	var costs []string
	if len(r.Again) > 0 {
		costs = append(costs, r.againHead()+": "+r.againSum())
	}
	if len(r.Bill) > 0 {
		costs = append(costs, "bill: "+r.billSum())
	}
	var out []string
	if counts := r.counts(); len(counts) > 0 {
		out = append(out, "parts: "+strings.Join(counts, " · "))
	}
	if len(costs) > 0 {
		out = append(out, strings.Join(costs, " · "))
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
		return item(line), now + " as before" + needs(b.Old, b.New), cost
	}
	return item(line), old + " → " + now, cost
}

// needs tells what is needed otherwise of as much: ": 27 pieces instead of 26".
func needs(old, now *model.BillLine) string {
	was, is := amounts(old), amounts(now)
	if len(was) == len(is) {
		var out []string
		for i := range is {
			if was[i] != is[i] {
				out = append(out, instead(is[i], was[i]))
			}
		}
		return ": " + strings.Join(out, ", ")
	}
	without := func(list, others []string) string {
		return strings.Join(slices.DeleteFunc(slices.Clone(list), func(s string) bool { return slices.Contains(others, s) }), ", ")
	}
	came, went := without(is, was), without(was, is)
	switch {
	case went == "":
		return ": now " + came
	case came == "":
		return ": no longer " + went
	}
	return ": " + instead(came, went)
}

// amounts are what is used of a line, one by one.
func amounts(l *model.BillLine) []string {
	return strings.Split(strings.ReplaceAll(l.WithoutWeight(), ", ", "; "), "; ")
}

// instead tells two amounts, as short as they can be told apart.
func instead(is, was string) string {
	for _, rest := range [...]string{" in all", ": ", " and "} {
		a, _, _ := strings.Cut(is, rest)
		b, _, _ := strings.Cut(was, rest)
		if a != b {
			is, was = a, b
		}
	}
	_, what, _ := strings.Cut(is, " ")
	if n, same, _ := strings.Cut(was, " "); same == what {
		was = n
	}
	return is + " instead of " + was
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
		text += ", without " + finding.Counted(unpriced, "line") + " whose price is not known"
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
