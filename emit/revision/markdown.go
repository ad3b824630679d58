package revision

import (
	"bufio"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"barwright/compile/model"
	"barwright/emit/page"
	"barwright/lang/finding"
)

// mostRows is how many rows of a table a merge request is given.
const mostRows = 100

// Markdown writes a revision for a merge request, in CommonMark with tables; nothing
// where the builds differ in nothing. The error is the writer's.
func Markdown(w io.Writer, r *model.Revision, names Names) error {
	if r.Empty() {
		return nil
	}
	m := markdown{bufio.NewWriter(w), reported(r, names)}
	m.line("### " + quoted(r.New.Build.Name) + ": what differs")
	m.line("")
	m.line("- old: " + quoted(names.Old) + ", " + quoted(titled(r.Old)))
	m.line("- new: " + quoted(names.New) + ", " + quoted(titled(r.New)))
	for i, s := range m.sums() {
		if i == 0 {
			m.line("")
		}
		m.line("- " + quoted(s))
	}
	m.changeTables()
	m.partTable()
	m.findingList()
	m.billTables()
	if len(r.Notes) > 0 {
		m.head("Notes")
	}
	for _, n := range r.Notes {
		m.line("- " + quoted(n))
	}
	return m.out.Flush()
}

// markdown writes a report. What is not its own is quoted.
type markdown struct {
	out *bufio.Writer
	*report
}

func (m *markdown) line(text string) { m.out.WriteString(text + "\n") }

func (m *markdown) head(text string) {
	m.line("")
	m.line("**" + text + "**")
	m.line("")
}

// table writes a table whose cells are quoted; numbered columns stand at the right. A
// long one is folded away, a very long one is cut.
func (m *markdown) table(heads []string, numbered int, rows [][]string) {
	const folded = 15
	if len(rows) > folded {
		m.line("<details><summary>" + finding.Counted(len(rows), "line") + "</summary>")
		m.line("")
	}
	m.line("| " + strings.Join(heads, " | ") + " |")
	m.line("|" + strings.Repeat(" --- |", len(heads)-numbered) + strings.Repeat(" ---: |", numbered))
	for i, row := range rows {
		if i == mostRows && len(rows) > mostRows+1 {
			break
		}
		cells := make([]string, len(row))
		for j, text := range row {
			cells[j] = quoted(text)
		}
		m.line("| " + strings.Join(cells, " | ") + " |")
	}
	if len(rows) > mostRows+1 {
		m.line("")
		m.line("and " + strconv.Itoa(len(rows)-mostRows) + " more; `--format json` lists them all")
	}
	if len(rows) > folded {
		m.line("")
		m.line("</details>")
	}
}

func (m *markdown) changeTables() {
	for _, t := range m.told() {
		m.head(finding.Capital(t.head))
		heads, rows := []string{"name", "what differs"}, make([][]string, len(t.lines))
		for i, l := range t.lines {
			rows[i] = []string{l.name, l.says}
		}
		if slices.ContainsFunc(t.lines, func(l entry) bool { return l.why() != "" }) {
			heads = append(heads, "why")
			for i := range t.lines {
				rows[i] = append(rows[i], t.lines[i].why())
			}
		}
		m.table(heads, 0, rows)
		if says := m.rootSays(); t.head == "changed" && says != "" {
			m.line("")
			m.line(quoted(says))
		}
	}
}

func (m *markdown) partTable() {
	if len(m.groups) == 0 {
		return
	}
	m.head("Parts")
	heads, rows := []string{"fate", "labels", "parts", "what to do, or why"}, make([][]string, len(m.groups))
	for i := range m.groups {
		g := &m.groups[i]
		rows[i] = []string{g.kind.String(), g.labels, g.what, strings.Join(g.words, "; ")}
	}
	if m.manyCauses() {
		heads = append(heads, "because of")
		for i := range m.groups {
			rows[i] = append(rows[i], m.groups[i].cause)
		}
	}
	m.table(heads, 0, rows)
}

func (m *markdown) findingList() {
	if len(m.Findings) == 0 {
		return
	}
	m.head("Findings: " + strings.Join(m.findingCounts(), " · "))
	for i := range m.Findings {
		f := &m.Findings[i]
		m.line("- " + came(f) + ": " + quoted(findingSays(f)))
		if f.Old != nil && f.New != nil {
			m.line("  - was: " + quoted(f.Old.Text))
		}
	}
}

func (m *markdown) billTables() {
	if len(m.Bill) > 0 {
		m.head("Bill: " + m.billSum())
		rows := make([][]string, len(m.Bill))
		for i := range m.Bill {
			what, quantity, cost := bought(&m.Bill[i])
			rows[i] = []string{what, quantity, cost}
		}
		m.table([]string{"what", "quantity", "cost"}, 1, rows)
	}
	if len(m.Again) > 0 {
		m.head(finding.Capital(m.againHead()) + ": " + m.againSum())
		rows := make([][]string, len(m.Again))
		for i := range m.Again {
			l := &m.Again[i]
			rows[i] = []string{item(l), page.Pieces(l.Quantity, l.Unit), cost(l)}
		}
		m.table([]string{"what", "quantity", "cost"}, 1, rows)
	}
}

// quoted writes a text so that it is nothing but text: no markup, no cell's end, no
// list or heading where it begins a line, and no mention of a person or of another
// request, for which a sign of no width stands before its name.
func quoted(text string) string {
	const joiner = "\u2060"
	var out strings.Builder
	runes := []rune(finding.OneLine(text))
	blank := func(i int) bool { return i >= len(runes) || unicode.IsSpace(runes[i]) }
	digits := 0
	for i, c := range runes {
		if i == digits && unicode.IsDigit(c) {
			digits++
		}
		switch {
		case strings.ContainsRune("\\`*_{}[]<>#|~&!@$", c), i == 0 && strings.ContainsRune("+-=", c), i == digits && i > 0 && (c == '.' || c == ')') && blank(i+1):
			out.WriteByte('\\')
		case strings.ContainsRune(":/", c) && i+1 < len(runes) && runes[i+1] == '/', c == '.' && i >= 3 && strings.EqualFold(string(runes[i-3:i]), "www"):
			out.WriteByte('\\')
		}
		out.WriteRune(c)
		if strings.ContainsRune("@#!&", c) && !blank(i+1) {
			out.WriteString(joiner)
		}
	}
	return out.String()
}
