package lang

import (
	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// maxRow is the most operators that may follow one another in an expression:
// each makes its syntax tree one step deeper.
const maxRow = 10 * MaxNesting

// tooDeep finds the place from where on a reader would have to go too deep:
// brackets within brackets, or a long row of operators.
func tooDeep(tokens hclsyntax.Tokens) (hcl.Range, bool) {
	rows := []int{0}       // operators in a row, by bracket that is open
	braces := []bool{true} // whether a new line ends the row there
	for _, t := range tokens {
		inner := len(rows) - 1
		switch t.Type {
		case hclsyntax.TokenOBrace, hclsyntax.TokenOBrack, hclsyntax.TokenOParen, hclsyntax.TokenOQuote,
			hclsyntax.TokenOHeredoc, hclsyntax.TokenTemplateInterp, hclsyntax.TokenTemplateControl:
			if t.Type == hclsyntax.TokenTemplateControl {
				rows[inner]++ // an if holds the text up to its end
			}
			rows, braces = append(rows, 0), append(braces, t.Type == hclsyntax.TokenOBrace)
		case hclsyntax.TokenCBrace, hclsyntax.TokenCBrack, hclsyntax.TokenCParen, hclsyntax.TokenCQuote,
			hclsyntax.TokenCHeredoc, hclsyntax.TokenTemplateSeqEnd:
			if inner > 0 {
				rows, braces = rows[:inner], braces[:inner]
			}
		case hclsyntax.TokenNewline:
			if braces[inner] {
				rows[inner] = 0
			}
		case hclsyntax.TokenComma:
			rows[inner] = 0
		case hclsyntax.TokenIdent, hclsyntax.TokenNumberLit, hclsyntax.TokenStringLit, hclsyntax.TokenQuotedLit,
			hclsyntax.TokenEqual, hclsyntax.TokenComment:
		default:
			rows[inner]++
		}
		if len(rows) > MaxNesting+1 || rows[len(rows)-1] > maxRow {
			return t.Range, true
		}
	}
	return hcl.Range{}, false
}

// heredoc finds a text after <<: the library takes time by the square of its
// lines.
func heredoc(tokens hclsyntax.Tokens) (hcl.Range, bool) {
	for _, t := range tokens {
		if t.Type == hclsyntax.TokenOHeredoc {
			return t.Range, true
		}
	}
	return hcl.Range{}, false
}
