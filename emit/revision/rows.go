package revision

import (
	"slices"
	"strconv"
	"strings"

	"barwright/lang/finding"
)

const (
	mostLines = 150 // of a list on a terminal
	leftMost  = 36  // columns of what stands at the left
	midMost   = 28
)

// row is a line of a list: what it is of, what there is to say, and a remark that
// stands right of it where there is room.
type row struct {
	left, mid, right string
	below            []string // further things to say, a line each
	tint             string   // of the left one
	cause            string   // empty where it goes without saying
}

// byCause prints rows under what they are because of, or each with it where hardly two
// share one.
func (p *terminal) byCause(rows []row, left int) {
	rank := map[string]int{} // lookup only
	for i := range rows {
		if _, known := rank[rows[i].cause]; !known {
			rank[rows[i].cause] = p.rank(rows[i].cause)
		}
	}
	if len(rows) < 2*len(rank) {
		for i := range rows {
			if r := &rows[i]; r.cause != "" {
				r.mid += " (" + because(r.cause) + ")"
			}
		}
		p.list(rows, left)
		return
	}
	rows = slices.Clone(rows)
	slices.SortStableFunc(rows, func(a, b row) int { return rank[a.cause] - rank[b.cause] })
	for from := 0; from < len(rows); {
		to := from
		for ; to < len(rows) && rows[to].cause == rows[from].cause; to++ {
		}
		if says := because(rows[from].cause); says != "" {
			p.lines(p.paragraph("  ", "  ", says))
			p.indent = "  "
		}
		p.list(rows[from:to], left)
		p.indent, from = "", to
	}
}

// inColumn sets the figures of sums under one another.
func inColumn(rows []row) []row {
	figures := func(text string) bool { return strings.Trim(text, "+− 0123456789.") == "" }
	wide := 0
	for i := range rows {
		if n := finding.Columns(rows[i].right); figures(rows[i].right) {
			wide = max(wide, n)
		}
	}
	for i := range rows {
		if r := &rows[i]; r.right != "" && figures(r.right) {
			r.right = strings.Repeat(" ", wide-finding.Columns(r.right)) + r.right
		}
	}
	return rows
}

// list prints rows under one another, as many as anybody reads. What stands at the left
// has so many columns at least.
func (p *terminal) list(rows []row, left int) {
	mid := 0
	for i := range rows {
		r := &rows[i]
		r.left, r.mid = finding.OneLine(r.left), finding.OneLine(r.mid)
		if r.right = finding.Clean(r.right); strings.TrimSpace(r.right) == "" {
			r.right = ""
		}
		if n := finding.Columns(r.left); n <= leftMost {
			left = max(left, n)
		}
		if n := finding.Columns(r.mid); n <= midMost {
			mid = max(mid, n)
		}
	}
	printed := 0
	for i := range rows {
		lines := p.laidOut(&rows[i], left, mid)
		if printed += len(lines); printed > mostLines && i > 0 && i+1 < len(rows) {
			p.lines([]string{"  and " + strconv.Itoa(len(rows)-i) + " more; --format json lists them all"})
			return
		}
		p.lines(lines)
	}
}

func (p *terminal) laidOut(r *row, left, mid int) []string {
	edge := p.indent + "  "
	hang := edge + strings.Repeat(" ", left+2)
	used := finding.Columns(hang)
	first := edge + p.paint(r.tint, r.left) + strings.Repeat(" ", max(0, left-finding.Columns(r.left))) + "  "
	var out []string
	if finding.Columns(r.left) > left {
		out, first = p.paragraph(edge, edge+"  ", r.left), hang
	}
	if all := pad(r.mid, mid) + "   " + r.right; r.right != "" && used+finding.Columns(all) <= p.style.Width {
		out = append(out, first+all)
	} else {
		out = append(out, p.wrapped(first, used, hang, r.mid)...)
		if r.right != "" {
			out = append(out, p.paragraph(hang, hang, r.right)...)
		}
	}
	for _, b := range r.below {
		out = append(out, p.paragraph(hang+"- ", hang+"  ", b)...)
	}
	return out
}

// paragraph breaks a text at spaces.
func (p *terminal) paragraph(first, hang, text string) []string {
	return p.wrapped(first, finding.Columns(first), hang, finding.OneLine(text))
}

// wrapped does so after a beginning that is so many columns wide.
func (p *terminal) wrapped(first string, used int, hang, text string) []string {
	var out []string
	line, empty := first, true
	for _, word := range strings.Fields(text) {
		n := finding.Columns(word)
		if !empty && used+1+n > p.style.Width {
			out = append(out, line)
			line, used, empty = hang, len(hang), true
		}
		if !empty {
			line, used = line+" ", used+1
		}
		line, used, empty = line+word, used+n, false
	}
	return append(out, line)
}

func (p *terminal) head(text string) {
	if p.out.Len() > 0 {
		p.out.WriteByte('\n')
	}
	p.lines(p.paragraph("", "  ", text))
}

func (p *terminal) lines(lines []string) {
	for _, l := range lines {
		p.out.WriteString(strings.TrimRight(l, " ") + "\n")
	}
}

func (p *terminal) paint(tint, text string) string {
	if !p.style.Color || tint == "" {
		return text
	}
	return tint + text + "\x1b[0m"
}

func pad(text string, width int) string {
	return text + strings.Repeat(" ", max(0, width-finding.Columns(text)))
}
