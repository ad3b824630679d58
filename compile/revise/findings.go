package revise

import (
	"cmp"
	"slices"
	"strings"

	"github.com/agext/levenshtein"

	"barwright/compile/model"
	"barwright/lang/finding"
)

// alike is how like one another the words of two findings of a rule must be to be one
// finding with other figures, where their figures are not all that differs. It is our
// own choice, by eye.
const alike = 0.8

// findings pairs those of two builds, and lists what is not in both: in the order of
// the new build, then those that went. Places move as lines are added: findings are
// known by their words.
func findings(old, new finding.List) []model.FindingChange {
	partner := make([]int, len(new)) // in old; -1 where there is none
	for i := range partner {
		partner[i] = -1
	}
	paired := make([]bool, len(old))
	pair := func(i, j int) { partner[i], paired[j] = j, true }
	for _, key := range []func(*finding.Finding) string{whole, masked} {
		byKey := map[string][]int{} // lookup only
		for j := range old {
			if !paired[j] {
				byKey[key(&old[j])] = append(byKey[key(&old[j])], j)
			}
		}
		for i := range new {
			if of := byKey[key(&new[i])]; partner[i] < 0 && len(of) > 0 {
				pair(i, of[0])
				byKey[key(&new[i])] = of[1:]
			}
		}
	}
	pairAlike(old, new, partner, paired, pair)
	var out []model.FindingChange
	for i := range new {
		switch j := partner[i]; {
		case j < 0:
			out = append(out, model.FindingChange{New: &new[i]})
		case whole(&old[j]) != whole(&new[i]):
			out = append(out, model.FindingChange{Old: &old[j], New: &new[i]})
		}
	}
	for j := range old {
		if !paired[j] {
			out = append(out, model.FindingChange{Old: &old[j]})
		}
	}
	return out
}

// mostAlike bounds how many findings of one rule are looked at for likeness.
const mostAlike = 50

// pairAlike pairs what is left of each rule, the likest first, where both name the same.
func pairAlike(old, new finding.List, partner []int, paired []bool, pair func(i, j int)) {
	bySlug := map[string][]int{} // of old; lookup only
	for j := range old {
		if !paired[j] && len(bySlug[old[j].Slug]) < mostAlike {
			bySlug[old[j].Slug] = append(bySlug[old[j].Slug], j)
		}
	}
	type match struct {
		i, j int
		like float64
	}
	var matches []match
	tried := map[string]int{} // lookup only
	for i := range new {
		f := &new[i]
		if partner[i] >= 0 || tried[f.Slug] >= mostAlike {
			continue
		}
		tried[f.Slug]++
		for _, j := range bySlug[f.Slug] {
			if quoted(f.Text) != quoted(old[j].Text) {
				continue
			}
			if like := levenshtein.Similarity(masked(f), masked(&old[j]), nil); like >= alike {
				matches = append(matches, match{i, j, like})
			}
		}
	}
	slices.SortStableFunc(matches, func(a, b match) int { return cmp.Compare(b.like, a.like) })
	for _, m := range matches {
		if partner[m.i] < 0 && !paired[m.j] {
			pair(m.i, m.j)
		}
	}
}

func whole(f *finding.Finding) string { return f.Severity.String() + " " + f.Slug + " " + f.Text }

// masked is a finding without its figures. Digits in quotes are part of a name.
func masked(f *finding.Finding) string {
	var out strings.Builder
	out.WriteString(f.Slug + " ")
	inName, inFigure := false, false
	for _, c := range f.Text {
		inName = inName != (c == '"')
		figure := !inName && (c >= '0' && c <= '9' || inFigure && strings.ContainsRune("./ ", c))
		switch {
		case !figure:
			out.WriteRune(c)
		case !inFigure:
			out.WriteByte('#')
		}
		inFigure = figure
	}
	return out.String()
}

// quoted lists the names in quotes.
func quoted(text string) string {
	var names []string
	for i, piece := range strings.Split(text, `"`) {
		if i%2 == 1 {
			names = append(names, piece)
		}
	}
	return strings.Join(names, `"`)
}
