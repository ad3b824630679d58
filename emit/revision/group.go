package revision

import (
	"slices"
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/lang/finding"
)

// group is parts that fare alike.
type group struct {
	kind   model.FateKind
	fates  []*model.Fate
	labels string   // "BAR-S1 … BAR-S9"
	what   string   // "studs 1 to 9 of knee wall bar"
	words  []string // what is to be done, or why
	cause  string   // empty where it goes without saying
}

// gathered gathers all that are not unchanged, from the least to the most trouble; in
// Cut, those that are still to be cut are only counted.
func (r *report) gathered() []group {
	var out []group
	at := map[string]int{} // lookup only
	for i := range r.Fates {
		f := &r.Fates[i]
		if f.Kind == model.Unchanged || f.Kind == model.NewPart && r.Cut {
			continue
		}
		g := group{kind: f.Kind, words: r.words(f), cause: r.cause(f.Because)}
		key := strings.Join(append([]string{f.Kind.String(), r.alike(f), g.cause}, g.words...), "\x00")
		if j, ok := at[key]; ok {
			out[j].fates = append(out[j].fates, f)
			continue
		}
		at[key], g.fates = len(out), []*model.Fate{f}
		out = append(out, g)
	}
	for i := range out {
		g := &out[i]
		parts := r.parts(g)
		g.labels, g.what = ranges(parts), called(parts)
		if g.kind == model.Relabel {
			g.words = append([]string{r.renamed(g)}, g.words...)
		}
		g.what += r.from(g)
	}
	slices.SortStableFunc(out, func(a, b group) int { return int(a.kind) - int(b.kind) })
	return out
}

// part is the part that a fate is of: the new one, or what is dropped.
func (r *report) part(f *model.Fate) *model.Part {
	if f.New < 0 {
		return &r.Old.Parts[f.Old]
	}
	return &r.New.Parts[f.New]
}

func (r *report) parts(g *group) []*model.Part {
	out := make([]*model.Part, len(g.fates))
	for i, f := range g.fates {
		out[i] = r.part(f)
	}
	return out
}

// alike is the same for parts that are told of together if they fare alike: those that
// keep their piece, or whose pieces come from one owner.
func (r *report) alike(f *model.Fate) string {
	if f.Kind != model.Relabel && !r.elsewhere(f) {
		return ""
	}
	old, p := &r.Old.Parts[f.Old], &r.New.Parts[f.New]
	return old.Owner + "\x00" + p.Owner + "\x00" + strconv.FormatBool(old.Label == p.Label)
}

// elsewhere reports whether the piece that serves for a part is called otherwise.
func (r *report) elsewhere(f *model.Fate) bool {
	return f.Old >= 0 && f.New >= 0 && r.Old.Parts[f.Old].Label != r.New.Parts[f.New].Label
}

// renamed tells what pieces are called now; of many that keep the end of their labels
// only how these begin.
func (r *report) renamed(g *group) string {
	if !r.elsewhere(g.fates[0]) {
		return "as cut, elsewhere"
	}
	if before, now, ok := r.beginnings(g); ok {
		return before + "-… is now " + now + "-…"
	}
	var out []string
	for _, f := range g.fates {
		out = append(out, r.Old.Parts[f.Old].Label+" is now "+r.New.Parts[f.New].Label)
	}
	return enumerated(out)
}

// from tells out of which pieces with other labels the parts of a group are made, in the
// order of these.
func (r *report) from(g *group) string {
	if g.kind == model.Relabel || !r.elsewhere(g.fates[0]) {
		return ""
	}
	if before, _, ok := r.beginnings(g); ok {
		return ", out of " + before + "-…"
	}
	pieces := make([]*model.Part, len(g.fates))
	for i, f := range g.fates {
		pieces[i] = &r.Old.Parts[f.Old]
	}
	return ", out of " + ranges(pieces)
}

// beginnings are those of the labels before and now, if more than two keep their ends.
func (r *report) beginnings(g *group) (before, now string, ok bool) {
	for i, f := range g.fates {
		old, end, _ := strings.Cut(r.Old.Parts[f.Old].Label, "-")
		is, same, _ := strings.Cut(r.New.Parts[f.New].Label, "-")
		if end != same || i > 0 && (old != before || is != now) {
			return "", "", false
		}
		before, now = old, is
	}
	return before, now, len(g.fates) > 2
}

// stem is a part's name without its numbers and without its side: "drawer side" of
// "drawer 1 left side".
func stem(name string) string {
	return strings.Join(slices.DeleteFunc(strings.Fields(name), func(w string) bool {
		return isNumber(w) || w == "left" || w == "right"
	}), " ")
}

func isNumber(word string) bool {
	_, err := strconv.Atoi(word)
	return err == nil
}

// numbered splits a trailing number from a text; n is -1 where it has none.
func numbered(text string) (before string, n int) {
	before = strings.TrimRight(text, "0123456789")
	n, err := strconv.Atoi(text[len(before):])
	if err != nil {
		return text, -1
	}
	return before, n
}

// ranges lists labels, those that count on from one another by their ends.
func ranges(parts []*model.Part) string {
	var out []string
	for i := 0; i < len(parts); {
		end := i
		for end+1 < len(parts) && follows(parts[end].Label, parts[end+1].Label) {
			end++
		}
		switch {
		case end < i+2:
			out = append(out, parts[i].Label)
			i++
		default:
			out = append(out, parts[i].Label+" … "+parts[end].Label)
			i = end + 1
		}
	}
	return enumeratedTo(mostLabels, out)
}

// follows reports whether a text is another with its number counted on.
func follows(a, b string) bool {
	x, n := numbered(a)
	y, m := numbered(b)
	return x == y && n >= 0 && m == n+1
}

// called names parts: "stud 3 of knee wall bar", "studs 1 to 9 of knee wall bar",
// "6 sides of cabinets urn, cups and sink".
func called(parts []*model.Part) string {
	first, last := parts[0], parts[len(parts)-1]
	of := " of " + owners(parts)
	if len(parts) == 1 {
		return first.Name + of
	}
	counting, name := true, stem(first.Name)
	for i, p := range parts {
		counting = counting && (i == 0 || follows(parts[i-1].Name, p.Name))
		if stem(p.Name) != name {
			name = "part"
		}
	}
	if counting {
		_, from := numbered(first.Name)
		_, to := numbered(last.Name)
		between := " to "
		if len(parts) == 2 {
			between = " and "
		}
		return plural(name) + " " + strconv.Itoa(from) + between + strconv.Itoa(to) + of
	}
	return strconv.Itoa(len(parts)) + " " + plural(name) + of
}

// owners names what parts belong to, those of one kind together.
func owners(parts []*model.Part) string {
	var kinds []string
	of := map[string][]string{} // lookup only
	for _, p := range parts {
		at := strings.LastIndexByte(p.Owner, ' ')
		kind, name := p.Owner[:max(at, 0)], p.Owner[at+1:]
		if of[kind] == nil {
			kinds = append(kinds, kind)
		}
		if !slices.Contains(of[kind], name) {
			of[kind] = append(of[kind], name)
		}
	}
	out := make([]string, len(kinds))
	for i, kind := range kinds {
		own := of[kind]
		if len(own) > 1 && kind != "" {
			kind = plural(kind)
		}
		out[i] = strings.TrimSpace(kind + " " + enumerated(own))
	}
	if slices.ContainsFunc(kinds, func(kind string) bool { return len(of[kind]) > 1 }) {
		return strings.Join(out, ", ")
	}
	return enumerated(out)
}

// plural of a name of ours.
func plural(name string) string {
	switch {
	case strings.HasSuffix(name, "shelf"):
		return strings.TrimSuffix(name, "f") + "ves"
	case strings.HasSuffix(name, "box"), strings.HasSuffix(name, "s"):
		return name + "es"
	}
	return name + "s"
}

// mostListed is how many names a sentence lists, and mostLabels how many labels of
// pieces, which are looked for one by one.
const (
	mostListed = 8
	mostLabels = 24
)

// enumerated lists names in a sentence.
func enumerated(names []string) string { return enumeratedTo(mostListed, names) }

func enumeratedTo(most int, names []string) string {
	if more := len(names) - most; more > 1 {
		return strings.Join(names[:most], ", ") + " and " + strconv.Itoa(more) + " more"
	}
	return finding.Listed(names)
}
