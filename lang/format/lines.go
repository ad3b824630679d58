package format

import (
	"bytes"
	"slices"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// line is the tokens of one line, with what ends it: a new line, or a comment
// that takes the new line along. The last line of a text may lack an end.
type line []hclsyntax.Token

func (l line) blank() bool { return len(l) == 1 && l[0].Type == hclsyntax.TokenNewline }

// last is the last token that is neither a comment nor the end of the line.
func (l line) last() hclsyntax.TokenType {
	for _, t := range slices.Backward(l) {
		if t.Type != hclsyntax.TokenNewline && t.Type != hclsyntax.TokenComment {
			return t.Type
		}
	}
	return hclsyntax.TokenNil
}

// opens reports whether the line ends with a bracket that is still open.
func (l line) opens() bool {
	switch l.last() {
	case hclsyntax.TokenOBrace, hclsyntax.TokenOBrack, hclsyntax.TokenOParen, hclsyntax.TokenTemplateInterp, hclsyntax.TokenTemplateControl:
		return true
	}
	return false
}

// closes reports whether the line begins with a bracket that closes.
func (l line) closes() bool {
	switch l[0].Type {
	case hclsyntax.TokenCBrace, hclsyntax.TokenCBrack, hclsyntax.TokenCParen, hclsyntax.TokenTemplateSeqEnd:
		return true
	}
	return false
}

// holds reports whether the byte stands in the line.
func (l line) holds(at int) bool {
	return l[0].Range.Start.Byte <= at && at < l[len(l)-1].Range.End.Byte
}

// split parts tokens into lines. The end of the file is no line.
func split(tokens hclsyntax.Tokens) []line {
	var out []line
	from := 0
	for i, t := range tokens {
		switch {
		case t.Type == hclsyntax.TokenEOF:
			if from < i {
				out = append(out, ended(tokens[from:i]))
			}
			return out
		case t.Type == hclsyntax.TokenNewline, t.Type == hclsyntax.TokenComment && bytes.HasSuffix(t.Bytes, []byte("\n")):
			out = append(out, line(tokens[from:i+1]))
			from = i + 1
		}
	}
	return out
}

// ended gives the last line of a text its end, unless a comment will be it.
func ended(tokens hclsyntax.Tokens) line {
	last := tokens[len(tokens)-1]
	if last.Type == hclsyntax.TokenComment && !bytes.HasPrefix(last.Bytes, []byte("/*")) {
		return line(tokens)
	}
	return append(slices.Clone(line(tokens)), newLine(last.Range))
}

func newLine(after hcl.Range) hclsyntax.Token {
	after.Start = after.End
	return hclsyntax.Token{Type: hclsyntax.TokenNewline, Bytes: []byte("\n"), Range: after}
}

// gaps sets the blank lines: those of the author, one of several in a row and
// none beside a bracket or an end; and those that part blocks.
func gaps(lines []line, body *hclsyntax.Body) []line {
	parted := partings(lines, body)
	var out []line
	for i, l := range lines {
		switch {
		case !l.blank():
			out = append(out, l)
		case len(out) == 0 || out[len(out)-1].blank() || out[len(out)-1].opens():
		default:
			out = append(out, l)
		}
		if next := i + 1; next < len(lines) && lines[next].closes() {
			out = trimmed(out)
		}
		if parted[i] {
			out = append(out, line{newLine(l[len(l)-1].Range)})
		}
	}
	return trimmed(out)
}

// trimmed leaves out a blank line at the end.
func trimmed(lines []line) []line {
	if n := len(lines); n > 0 && lines[n-1].blank() {
		return lines[:n-1]
	}
	return lines
}

// partings finds the lines after which a blank one is due: each is the end of
// a block that another one follows, with one of them on several lines and no
// blank line in between. Comments in between belong to the second.
func partings(lines []line, body *hclsyntax.Body) map[int]bool {
	due := map[int]bool{} // lookup only
	var within func(*hclsyntax.Body)
	within = func(body *hclsyntax.Body) {
		for i, b := range body.Blocks {
			within(b.Body)
			if i == 0 {
				continue
			}
			a := body.Blocks[i-1]
			end := lineOf(lines, a.CloseBraceRange.Start.Byte)
			begin := lineOf(lines, b.TypeRange.Start.Byte)
			if (tall(a) || tall(b)) && onlyComments(lines[end+1:begin]) {
				due[end] = true
			}
		}
	}
	within(body)
	return due
}

func tall(b *hclsyntax.Block) bool {
	return b.TypeRange.Start.Line != b.CloseBraceRange.End.Line
}

func onlyComments(lines []line) bool {
	return !slices.ContainsFunc(lines, func(l line) bool {
		return l.blank() || l.last() != hclsyntax.TokenNil
	})
}

// lineOf finds the line that holds a byte of the text.
func lineOf(lines []line, at int) int {
	i, _ := slices.BinarySearchFunc(lines, at, func(l line, at int) int {
		switch {
		case l.holds(at):
			return 0
		case at < l[0].Range.Start.Byte:
			return 1
		}
		return -1
	})
	return i
}
