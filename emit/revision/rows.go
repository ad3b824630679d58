package revision

import (
	"strconv"
	"strings"

	"barwright/lang/finding"
)

const (
	mostLines = 40 // of a list on a terminal
	leftMost  = 40 // columns of what stands at the left
	midMost   = 28
)

// row is a line of a list: what it is of, what there is to say, and a remark that
// stands right of it where there is room.
type row struct {
	left, mid, right string
	below            []string // further things to say, a line each
	tint             string   // of the left one
}

// list prints rows under one another, as many as anybody reads. What stands at the left
// has so many columns at least.
func (p *terminal) list(rows []row, left int) {
	mid := 0
	for i := range rows {
		r := &rows[i]
		r.left, r.mid, r.right = clean(r.left), clean(r.mid), clean(r.right)
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
	hang := strings.Repeat(" ", left+4)
	first := "  " + p.paint(r.tint, r.left) + strings.Repeat(" ", max(0, left-finding.Columns(r.left))) + "  "
	var out []string
	if finding.Columns(r.left) > left {
		out, first = []string{"  " + p.paint(r.tint, r.left)}, hang
	}
	if all := pad(r.mid, mid) + "   " + r.right; r.right != "" && left+4+finding.Columns(all) <= p.style.Width {
		out = append(out, first+all)
	} else {
		out = append(out, p.wrapped(first, left+4, hang, r.mid)...)
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
	return p.wrapped(first, finding.Columns(first), hang, clean(text))
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

// clean makes one line of a text that holds nothing which a terminal obeys.
func clean(text string) string { return strings.Join(strings.Fields(finding.Clean(text)), " ") }
