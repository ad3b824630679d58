// Package finding holds the product's voice: what is wrong with a
// description, where, by how much, and what would mend it.
package finding

import (
	"cmp"
	"fmt"
	"slices"

	"barwright/lang/source"
)

// Severity tells what a finding does to a build.
type Severity int

const (
	Note    Severity = iota // worth knowing
	Warning                 // worth a second look; the build goes on
	Error                   // stops the build
)

func (s Severity) String() string { return [...]string{"note", "warning", "error"}[s] }

// Finding is one answer to the author of a description.
type Finding struct {
	Severity Severity
	Slug     string       // stable, plain words: "box-meets-plate"
	At       source.Range // tight: the attribute, not its block
	Caret    int          // bytes into At where the fault is; 0 marks all of At
	Text     string       // what is there, what is needed, by how much it misses
	Related  []Related    // the other thing and its place
	Mend     string       // the edit that mends it; empty where none is known
}

// Related is another place that a finding speaks of.
type Related struct {
	At   source.Range
	Text string // "the plate comes from here"
}

// List gathers findings; the zero List is ready for use.
type List []Finding

// Errorf adds an error. mend may be empty.
func (l *List) Errorf(slug string, at source.Range, mend, format string, args ...any) *Finding {
	return l.add(Finding{Severity: Error, Slug: slug, At: at, Mend: mend, Text: fmt.Sprintf(format, args...)})
}

// Warnf adds a warning. mend may be empty.
func (l *List) Warnf(slug string, at source.Range, mend, format string, args ...any) *Finding {
	return l.add(Finding{Severity: Warning, Slug: slug, At: at, Mend: mend, Text: fmt.Sprintf(format, args...)})
}

// Notef adds a note.
func (l *List) Notef(slug string, at source.Range, format string, args ...any) *Finding {
	return l.add(Finding{Severity: Note, Slug: slug, At: at, Text: fmt.Sprintf(format, args...)})
}

func (l *List) add(f Finding) *Finding {
	if f.Slug == "" {
		panic("a finding without a slug")
	}
	*l = append(*l, f)
	return &(*l)[len(*l)-1]
}

// Also adds a related place.
func (f *Finding) Also(at source.Range, format string, args ...any) *Finding {
	f.Related = append(f.Related, Related{At: at, Text: fmt.Sprintf(format, args...)})
	return f
}

// Shows reports whether the finding points at a place already.
func (f *Finding) Shows(at source.Range) bool {
	return f.At == at || slices.ContainsFunc(f.Related, func(r Related) bool { return r.At == at })
}

// HasErrors reports whether any finding stops the build.
func (l List) HasErrors() bool {
	return slices.ContainsFunc(l, func(f Finding) bool { return f.Severity == Error })
}

// Has reports whether a finding of a slug stands at a place.
func (l List) Has(slug string, at source.Range) bool {
	return slices.ContainsFunc(l, func(f Finding) bool { return f.Slug == slug && f.At == at })
}

// Count returns how many findings have that severity.
func (l List) Count(s Severity) int {
	n := 0
	for _, f := range l {
		if f.Severity == s {
			n++
		}
	}
	return n
}

// Sort orders findings by place and drops those said twice. It is called once,
// before a list is printed, stored or compared.
func (l *List) Sort() {
	slices.SortStableFunc(*l, compare)
	*l = slices.CompactFunc(*l, func(a, b Finding) bool { return compare(a, b) == 0 })
}

func compare(a, b Finding) int {
	return cmp.Or(a.At.Compare(b.At), -cmp.Compare(a.Severity, b.Severity),
		cmp.Compare(a.Slug, b.Slug), cmp.Compare(a.Text, b.Text))
}
