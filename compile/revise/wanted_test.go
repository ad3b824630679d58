package revise_test

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"barwright/compile/model"
)

// wanted is a line of a scenario's fates:
//
//	make again|new|dropped  LABELS
//	rework|patch            LABELS [<- LABELS|any]: STEP; STEP
//	relabel                 LABEL -> LABEL, or LABELS @ WHERE of what stands elsewhere
//	unchanged               COUNT
//
// LABELS are some, with A-S1 … A-S9 for a row of them and A-* for all of a block; "2 of"
// before them leaves open which. Behind <- stand the pieces that serve, in any order, where
// they are not those of the same labels; with any, also what is left over is open. A STEP is
// its kind, or kinds with / between of which any will do; then what it is done to, where that
// is fixed; then figures of its text: "trim/cut top edge | 1 in". Steps that are alike are
// one. A step … leaves all of them open. Pieces whose own parts are made again need not be
// told to be dropped.
type wanted struct {
	text   string
	kind   model.FateKind
	count  int
	labels []string // of parts; of what is dropped, of pieces
	from   []string // nil: the labels; "any"
	steps  []string // nil: open
	stands string   // of what is relabelled
}

var kinds = []model.FateKind{model.Unchanged, model.Relabel, model.Rework, model.Patch, model.MakeAgain, model.NewPart, model.Dropped}

var (
	some = regexp.MustCompile(`^(\d+) of `)
	row  = regexp.MustCompile(`([A-Z]+-[A-Z]+)(\d+) … [A-Z]+-[A-Z]+(\d+)`)
)

func wantedIn(t *testing.T, r *model.Revision, line string) wanted {
	t.Helper()
	word, rest, ok := strings.Cut(line, "  ")
	at := slices.IndexFunc(kinds, func(k model.FateKind) bool { return k.String() == word })
	if !ok || at < 0 {
		t.Fatalf("%q begins with no fate", line)
	}
	w := wanted{text: line, kind: kinds[at]}
	rest = strings.TrimSpace(rest)
	if w.kind == model.Unchanged {
		var err error
		if w.count, err = strconv.Atoi(rest); err != nil {
			t.Fatal(err)
		}
		return w
	}
	labels, steps, stepped := strings.Cut(rest, ": ")
	if stepped != (w.kind == model.Rework || w.kind == model.Patch) {
		t.Fatalf("%q: steps are told of what is reworked or patched", line)
	}
	if stepped && steps != "…" {
		w.steps = strings.Split(steps, "; ")
	}
	labels, w.stands, _ = strings.Cut(labels, " @ ")
	if from, to, ok := strings.Cut(labels, " -> "); ok {
		w.from, labels = all(r.Old, from), to
	}
	to, from, ok := strings.Cut(labels, " <- ")
	if from == "any" {
		w.from = []string{from}
	} else if ok {
		w.from = all(r.Old, some.ReplaceAllString(from, ""))
	}
	of := r.New
	if w.kind == model.Dropped {
		of = r.Old
	}
	w.labels = all(of, some.ReplaceAllString(to, ""))
	w.count = len(w.labels)
	if m := some.FindStringSubmatch(to); m != nil {
		w.count, _ = strconv.Atoi(m[1])
	}
	return w
}

// all writes labels out.
func all(m *model.Model, text string) (labels []string) {
	text = row.ReplaceAllStringFunc(text, func(s string) string {
		m := row.FindStringSubmatch(s)
		from, _ := strconv.Atoi(m[2])
		to, _ := strconv.Atoi(m[3])
		var out []string
		for n := from; n <= to; n++ {
			out = append(out, fmt.Sprint(m[1], n))
		}
		return strings.Join(out, " ")
	})
	for _, label := range strings.Fields(text) {
		block, every := strings.CutSuffix(label, "*")
		if !every {
			labels = append(labels, label)
			continue
		}
		for i := range m.Parts {
			if strings.HasPrefix(m.Parts[i].Label, block) {
				labels = append(labels, m.Parts[i].Label)
			}
		}
	}
	return labels
}

// board ticks off the fates that were wanted.
type board struct {
	t     *testing.T
	r     *model.Revision
	taken []bool
}

// take ticks off what a line wants.
func (b *board) take(w wanted) {
	b.t.Helper()
	if w.kind == model.Unchanged {
		if n := b.r.Count(model.Unchanged); n != w.count {
			b.t.Errorf("%d are unchanged, not %d", n, w.count)
		}
		return
	}
	found := 0
	var otherwise []string
	for i := range b.r.Fates {
		f := &b.r.Fates[i]
		if !slices.Contains(w.labels, label(b.r, f)) || w.kind == model.Dropped != (f.Kind == model.Dropped) {
			continue
		}
		if !b.taken[i] && found < w.count && w.is(b.r, f) {
			b.taken[i] = true
			found++
			continue
		}
		otherwise = append(otherwise, written(b.r, f))
	}
	if found < w.count {
		b.t.Errorf("%d of %d are as wanted: %s\nbut\n%s", found, w.count, w.text, strings.Join(otherwise, "\n"))
	}
}

// is reports whether a fate is the one that is wanted.
func (w *wanted) is(r *model.Revision, f *model.Fate) bool {
	if f.Kind != w.kind || f.Kind == model.Relabel && f.Stands != w.stands {
		return false
	}
	if f.Kind == model.Rework || f.Kind == model.Patch || f.Kind == model.Relabel {
		from := w.from
		if from == nil {
			from = []string{label(r, f)}
		}
		if from[0] != "any" && !slices.Contains(from, r.Old.Parts[f.Old].Label) {
			return false
		}
	}
	if w.steps == nil {
		return true
	}
	have := slices.Clone(f.Steps)
	for _, want := range w.steps {
		have = slices.DeleteFunc(have, func(s model.Step) bool { return isStep(s, want) })
	}
	return len(have) == 0 && !slices.ContainsFunc(w.steps, func(want string) bool {
		return !slices.ContainsFunc(f.Steps, func(s model.Step) bool { return isStep(s, want) })
	})
}

func isStep(s model.Step, want string) bool {
	fields := strings.Split(want, " | ")
	kind, what, _ := strings.Cut(fields[0], " ")
	return slices.Contains(strings.Split(kind, "/"), s.Kind.String()) && (what == "" || what == s.What) &&
		!slices.ContainsFunc(fields[1:], func(figure string) bool { return !strings.Contains(s.Text, figure) })
}

// label is the part's, or of what is dropped the piece's.
func label(r *model.Revision, f *model.Fate) string {
	if f.New >= 0 {
		return r.New.Parts[f.New].Label
	}
	return r.Old.Parts[f.Old].Label
}

// written is a fate in the form of a scenario, with the steps' texts.
func written(r *model.Revision, f *model.Fate) string {
	text := fmt.Sprintf("%s  %s", f.Kind, label(r, f))
	if f.New >= 0 && f.Old >= 0 && r.Old.Parts[f.Old].Label != label(r, f) {
		text += " <- " + r.Old.Parts[f.Old].Label
	}
	if f.Stands != "" {
		text += " @ " + f.Stands
	}
	for i, s := range f.Steps {
		text += fmt.Sprintf("%s %s %s | %s", [2]string{":", ";"}[min(i, 1)], s.Kind, s.What, s.Text)
	}
	return text
}
