package reply

import (
	"strings"

	"barwright/compile/model"
)

// A chain is cut off where it grows beyond what anybody reads.
const (
	mostSteps = 12  // from the value that was asked for
	mostLines = 200 // of one value
)

// chain shows a value and what it follows from, the latter indented under what
// follows from it. Each value's own chain is shown once.
func chain(answers []model.Answer) []string {
	asked := &answers[0]
	head := equation(asked.Name, asked)
	if mm := inMillimetres(asked); mm != "" && mm != asked.Text {
		head += " (" + mm + ")"
	}
	out := wrapped(head, 4)
	if asked.Means != "" {
		out = append(out, wrapped("  "+asked.Means, 2)...)
	}
	out = append(out, source(asked)...)
	t := tree{known: map[string]*model.Answer{}, shown: map[string]bool{}}
	for i := range answers {
		t.known[answers[i].Name] = &answers[i]
	}
	t.under(asked, 2)
	out = append(out, aligned(t.rows)...)
	if t.cut {
		out = append(out, "    … cut short: ask for one of these to see further")
	}
	return out
}

// source tells where the value that was asked for comes from: the place and
// the text, where there is one, and what it follows from in words.
func source(a *model.Answer) []string {
	var out []string
	_, last := parted(a.Name)
	switch {
	case a.Origin == model.FromDefault:
		out = append(out, joined("  default", oneLine(a.Written)))
	case a.Origin == model.FromCommand:
		out = append(out, "  "+joined(a.At.Place(), last+" = "+oneLine(a.Written), a.Says))
	case a.Written != "":
		out = append(out, "  "+joined(a.At.Place(), last+" = "+oneLine(a.Written)))
	}
	if a.Says != "" && a.Origin != model.FromCommand {
		out = append(out, wrapped(joined("  solved", a.Says), 10)...)
	}
	return out
}

type tree struct {
	known map[string]*model.Answer // by name; lookup only
	shown map[string]bool          // whose chain has been shown; lookup only
	rows  []row
	cut   bool // something is left out
}

// under adds what a value follows from, at a depth.
func (t *tree) under(a *model.Answer, depth int) {
	for _, name := range a.From {
		from := t.known[name]
		if from == nil {
			continue
		}
		if len(t.rows) >= mostLines {
			t.cut = true
			return
		}
		r := row{strings.Repeat("  ", depth-1) + equation(name, from), because(from)}
		again := t.shown[name] && len(from.From) > 0
		if again {
			r.right = "as above"
		}
		t.rows = append(t.rows, r)
		t.shown[name] = true
		switch {
		case again || len(from.From) == 0:
		case depth > mostSteps:
			t.cut = true
		default:
			t.under(from, depth+1)
		}
	}
}
