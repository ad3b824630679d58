package reply

import (
	"bufio"
	"io"
	"slices"
	"strings"

	"barwright/compile/model"
)

// Lines writes all that is known of a build, each value, part, finding and line of the
// bill on a line of its own, for programs that compare lines. Values stand in the
// order of their names, so that a text that only says them elsewhere gives the same
// lines; defaults and what is left out are not told, nor places in the text. The model
// is nil where the build has errors. Lines reports the first error of w.
func Lines(w io.Writer, answers []model.Answer, m *model.Model) error {
	answers = slices.Clone(answers)
	placed := slices.IndexFunc(answers, func(a model.Answer) bool { return a.Origin == model.FromPlacing })
	if placed < 0 {
		placed = len(answers)
	}
	slices.SortStableFunc(answers[:placed], func(a, b model.Answer) int { return strings.Compare(a.Name, b.Name) })
	out := bufio.NewWriter(w)
	line := func(text string) { out.WriteString(strings.Map(harmless, text) + "\n") }
	for i := range answers {
		a := &answers[i]
		inParts := a.Kind == model.AsObject && i+1 < len(answers) && strings.HasPrefix(answers[i+1].Name, a.Name+".")
		if text := told(a); text != "" && !inParts {
			line(text)
		}
	}
	if m != nil {
		for _, f := range m.Findings {
			line(f.Severity.String() + " " + f.Slug + ": " + f.Text)
		}
		for _, l := range m.Bill {
			line("bill " + billed(&l))
		}
	}
	return out.Flush()
}

// told is a value in a line, empty of what is not told.
func told(a *model.Answer) string {
	switch {
	case a.Kind == model.NoAnswer || a.Kind == model.InError || a.Origin == model.FromDefault:
		return ""
	case a.Kind == model.AsBlock && strings.HasPrefix(a.Name, "part."):
		return a.Name + ": " + a.Means
	case a.Kind == model.AsBlock:
		return a.Name
	case a.Origin == model.FromPlacing && a.Means != "":
		return a.Name + " = " + a.Text + "  # " + a.Means
	}
	written := strings.Join(strings.Fields(a.Written), " ")
	if written == "" || written == a.Text || a.Origin == model.FromPlacing {
		return a.Name + " = " + a.Text
	}
	return a.Name + " = " + a.Text + "  # " + written
}

// billed is a line of the bill, without what is not known of it.
func billed(l *model.BillLine) string {
	out := []string{l.Section + " " + l.Item, l.Text, l.Use, l.Needed}
	if l.Quantity > 0 {
		out = append(out, model.Thousandths(l.Quantity)+" "+l.Unit)
	}
	if l.Priced {
		out = append(out, "at "+model.Thousandths(l.Price)+" each")
	}
	return strings.Join(slices.DeleteFunc(out, func(s string) bool { return s == "" }), "; ")
}
