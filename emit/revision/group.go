package revision

import (
	"slices"
	"strconv"
	"strings"

	"barwright/compile/model"
)

// group is parts that fare alike.
type group struct {
	kind    model.FateKind
	fates   []*model.Fate
	labels  string   // "BAR-S1 … BAR-S9"
	what    string   // "studs 1 to 9 of knee wall bar"
	words   []string // what is to be done, or why
	because string
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
		g := group{kind: f.Kind, words: r.words(f), because: r.because(f.Because)}
		key := strings.Join(append([]string{f.Kind.String(), r.alike(f), g.because}, g.words...), "\x00")
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

// alike is the same for parts that are told of together if they fare alike: of one
// name but for its number, or renamed from one owner to another.
func (r *report) alike(f *model.Fate) string {
	if f.Kind == model.Relabel {
		old, p := &r.Old.Parts[f.Old], &r.New.Parts[f.New]
		return old.Owner + "\x00" + p.Owner + "\x00" + strconv.FormatBool(old.Label == p.Label)
	}
	return stem(r.part(f).Name)
}

// renamed tells what pieces are called now.
func (r *report) renamed(g *group) string {
	var out []string
	for _, f := range g.fates {
		old, p := &r.Old.Parts[f.Old], &r.New.Parts[f.New]
		if old.Label == p.Label {
			return "as cut, elsewhere"
		}
		out = append(out, old.Label+" is now "+p.Label)
	}
	return enumerated(out)
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
	return enumerated(out)
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

// owners names what parts belong to.
func owners(parts []*model.Part) string {
	var out []string
	kind := ""
	for _, p := range parts {
		if slices.Contains(out, p.Owner) {
			continue
		}
		out = append(out, p.Owner)
		own := p.Owner[:max(0, strings.LastIndexByte(p.Owner, ' '))]
		if len(out) > 1 && own != kind {
			own = ""
		}
		kind = own
	}
	if len(out) == 1 || kind == "" {
		return enumerated(out)
	}
	for i := range out {
		out[i] = strings.TrimPrefix(out[i], kind+" ")
	}
	return plural(kind) + " " + enumerated(out)
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

// mostListed is how many names a sentence lists.
const mostListed = 8

// enumerated lists names in a sentence.
func enumerated(names []string) string {
	if more := len(names) - mostListed; more > 1 {
		return strings.Join(names[:mostListed], ", ") + " and " + strconv.Itoa(more) + " more"
	}
	last := len(names) - 1
	if last < 1 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:last], ", ") + " and " + names[last]
}
