package ngc

import (
	"fmt"
	"slices"
	"strings"
)

// entry is what the sheet says of one program, in rows.
type entry struct {
	title, router string
	rows          []row
}

// row is a label and lines of text. A usual one may be the same for all programs of a
// router, and is then said once.
type row struct {
	label, text string
	usual       bool
}

func (e *entry) own(label string, lines ...string) {
	e.rows = append(e.rows, row{label, strings.Join(lines, "\n"), false})
}

func (e *entry) usual(label string, lines ...string) {
	e.rows = append(e.rows, row{label, strings.Join(lines, "\n"), true})
}

// entries writes what all programs of a router have in common, router by router, and
// then each program with the rest.
func (s *sheet) entries(all []entry) {
	common := map[string][]row{} // by router; lookup only
	for i := range all {
		router := all[i].router
		if _, done := common[router]; done {
			continue
		}
		common[router] = inCommon(all[i:], router)
		if rows := common[router]; len(rows) > 0 {
			fmt.Fprintf(s.buf, "\nRouter %s: what all of these programs share\n", router)
			s.rows(rows)
		}
	}
	for i := range all {
		e := &all[i]
		fmt.Fprintf(s.buf, "\n%s\n", e.title)
		if len(common[e.router]) > 0 {
			s.row("router", e.router+": bit, speeds and what else is shared stand above")
		}
		s.rows(slices.DeleteFunc(slices.Clone(e.rows), func(r row) bool { return slices.Contains(common[e.router], r) }))
	}
}

// inCommon returns the usual rows that all entries of a router have; none where it has
// one entry only.
func inCommon(all []entry, router string) []row {
	of := slices.DeleteFunc(slices.Clone(all), func(e entry) bool { return e.router != router })
	if len(of) < 2 {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(of[0].rows), func(r row) bool {
		return !r.usual || slices.ContainsFunc(of, func(e entry) bool { return !slices.Contains(e.rows, r) })
	})
}

func (s *sheet) rows(rows []row) {
	for _, r := range rows {
		label := r.label
		for line := range strings.SplitSeq(r.text, "\n") {
			s.row(label, line)
			label = ""
		}
	}
}
