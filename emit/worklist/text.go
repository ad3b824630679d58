package worklist

import (
	"bufio"
	"io"
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/lang/finding"
)

const (
	columns = 78
	indent  = 8 // of what belongs to a step
	blank   = "________"
)

// sheet prints lines of no more than 78 columns where it can.
type sheet struct{ *bufio.Writer }

func (s sheet) line(text string) { _, _ = s.WriteString(strings.TrimRight(text, " ") + "\n") }

// wrapped prints a text after what its first line begins with; what follows stands under a
// column.
func (s sheet) wrapped(first, text string, under int) {
	for _, l := range wrap(first, finding.Clean(text), under) {
		s.line(l)
	}
}

// numbered prints a text behind a number.
func (s sheet) numbered(number, mark, text string) {
	s.wrapped(strings.Repeat(" ", max(0, 3-len(number)))+number+" "+mark, text, 4+len(mark))
}

// Text writes the list. The error is the writer's.
func Text(w io.Writer, m *model.Model) error {
	out := sheet{bufio.NewWriter(w)}
	out.wrapped("", "Order of work: "+m.Build.Titled(), 0)
	out.line("")
	out.wrapped("", Opening, 0)
	numbers, phase := Numbers(m), ""
	for i := range m.Work {
		t := &m.Work[i]
		if t.Phase != phase {
			phase = t.Phase
			out.line("")
			out.line(strings.ToUpper(phase))
		}
		out.line("")
		out.numbered(strconv.Itoa(i+1), "[ ] ", t.Title)
		for _, c := range t.Checks {
			out.wrapped(strings.Repeat(" ", indent)+"[ ] ", c.What+": "+c.Figure+"  "+blank, indent+4)
		}
		for _, f := range Facts(m, numbers, t) {
			name := f.Name
			if f.Name == "hold" || f.Name == "caution" {
				name = strings.ToUpper(name)
			}
			out.wrapped(strings.Repeat(" ", indent)+name+": ", f.Text, indent+2)
		}
	}
	return out.Flush()
}

// Opening says how the list is to be read.
const Opening = "No step waits for a later one; what it waits for stands behind \"after\", by number. Tick a step when it is done, " +
	"and a figure when it was measured; write what differs on its line, change the description and build again before going on. " +
	"Weights are computed. Local code and licensed practice go before all of this."

// wrap breaks a text into lines of no more than 78 columns where it can; what follows the
// first line, which begins with some text, stands under a column.
func wrap(first, text string, under int) (lines []string) {
	line, width, fresh := first, finding.Columns(first), true
	for _, word := range strings.Fields(text) {
		w := finding.Columns(word)
		if !fresh && width+1+w > columns {
			lines = append(lines, line)
			line, width, fresh = strings.Repeat(" ", under), under, true
		}
		if !fresh {
			line, width = line+" ", width+1
		}
		line, width, fresh = line+word, width+w, false
	}
	return append(lines, line)
}
