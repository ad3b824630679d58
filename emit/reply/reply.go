// Package reply prints what is known of the names that somebody asked for: as
// text, with the chain of what each value follows from, or as JSON. It takes
// replies and prints all of what they hold, but for chains that grow beyond
// what anybody reads.
package reply

import (
	"bufio"
	"io"
	"strings"
	"unicode"

	"barwright/compile/model"
	"barwright/lang/length"
)

// Text writes replies for a person, parted by empty lines. It reports the
// first error of w.
func Text(w io.Writer, replies []model.Reply) error {
	out := bufio.NewWriter(w)
	for i, r := range replies {
		if i > 0 {
			out.WriteByte('\n')
		}
		var lines []string
		switch {
		case r.Lists && r.Asked == "":
			lines = overview(r.Answers)
		case r.Lists:
			lines = listing(r.Asked, r.Answers)
		default:
			lines = chain(r.Answers)
		}
		for _, line := range lines {
			out.WriteString(strings.TrimRight(strings.Map(harmless, line), " ") + "\n")
		}
	}
	return out.Flush()
}

// harmless keeps control characters of a hostile file off the terminal.
func harmless(c rune) rune {
	switch {
	case c == '\t':
		return ' '
	case unicode.IsControl(c) || unicode.Is(unicode.Bidi_Control, c):
		return '·'
	}
	return c
}

// equation is a name and its value in the build's unit.
func equation(name string, a *model.Answer) string {
	switch a.Kind {
	case model.NoAnswer:
		return name + ": left out"
	case model.InError:
		return name + ": in error"
	}
	return name + " = " + shortened(a.Text, mostValue)
}

// inMillimetres is the value again, in millimetres.
func inMillimetres(a *model.Answer) string {
	if len(a.Lengths) == 0 {
		return ""
	}
	texts := make([]string, len(a.Lengths))
	for i, l := range a.Lengths {
		texts[i] = l.Decimal(length.Millimetres, length.MaxPlaces) + " mm"
	}
	switch a.Kind {
	case model.AsSpan:
		return strings.Join(texts, " … ")
	case model.AsList:
		return "[" + strings.Join(texts, ", ") + "]"
	}
	return texts[0]
}

// overview names all blocks, those of one kind on a line.
func overview(answers []model.Answer) []string {
	var out, words []string
	kind := ""
	end := func() {
		if len(words) > 0 {
			out = append(out, wrapped(pad(kind, overviewColumn)+strings.Join(words, ", "), overviewColumn)...)
		}
		words = nil
	}
	for i := range answers {
		first, rest, _ := strings.Cut(answers[i].Name, ".")
		if first != kind {
			end()
			kind = first
		}
		words = append(words, rest)
	}
	end()
	return out
}

const overviewColumn = 12

// listing shows what begins with a name: a line each, values without their
// chains; what is left out comes last.
func listing(asked string, answers []model.Answer) []string {
	var out, leftOut []string
	if head := &answers[0]; head.Name == asked {
		out = append(out, heading(head)...)
		answers = answers[1:]
	}
	rows := make([]row, 0, len(answers))
	for i := range answers {
		a := &answers[i]
		name := strings.TrimPrefix(a.Name, asked+".")
		switch {
		case a.Kind == model.NoAnswer:
			leftOut = append(leftOut, name)
		case a.Kind == model.AsBlock:
			rows = append(rows, row{name, joined(a.At.Place(), a.Means)})
		default:
			rows = append(rows, row{equation(name, a), because(a)})
		}
	}
	out = append(out, aligned(rows)...)
	if len(leftOut) > 0 {
		out = append(out, wrapped("  left out: "+strings.Join(leftOut, ", "), 4)...)
	}
	return out
}

// heading says what a block is.
func heading(a *model.Answer) []string {
	out := wrapped(joined(a.Name, a.At.Place(), a.Means), 4)
	if a.Says != "" {
		out = append(out, "  "+a.Says)
	}
	if len(a.Inside) > 0 {
		out = append(out, wrapped("  inside: "+strings.Join(a.Inside, ", "), 4)...)
	}
	return out
}

// because tells in a line where a value comes from.
func because(a *model.Answer) string {
	switch a.Origin {
	case model.FromDefault:
		return joined("default", oneLine(a.Written))
	case model.FromPlacing:
		return a.Means
	case model.FromText:
		if a.Says != "" {
			return joined(a.At.Place(), oneLine(a.Written)+": "+a.Says)
		}
	}
	return joined(a.At.Place(), oneLine(a.Written), a.Says)
}
