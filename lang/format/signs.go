package format

import (
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/hashicorp/hcl/v2/hclwrite"
)

// signs sets the space after each minus: none after a sign, one after a
// subtraction. The library guesses from the same line only. And it sets one
// where a dot would otherwise make one number of two.
func signs(words hclwrite.Tokens) {
	before := hclsyntax.TokenNil // the last word that is neither comment nor line end
	for i, w := range words {
		if w.Type == hclsyntax.TokenMinus && i+1 < len(words) && words[i+1].Type != hclsyntax.TokenNewline {
			words[i+1].SpacesBefore = 0
			if endsValue(before) || words[i+1].Type == hclsyntax.TokenComment {
				words[i+1].SpacesBefore = 1
			}
		}
		if w.Type == hclsyntax.TokenDot && before == hclsyntax.TokenNumberLit {
			w.SpacesBefore = 1
		}
		switch {
		case w.Type == hclsyntax.TokenNewline, w.Type == hclsyntax.TokenComment:
		case w.Type == hclsyntax.TokenStar && before == hclsyntax.TokenDot: // all of a list
			before = hclsyntax.TokenIdent
		default:
			before = w.Type
		}
	}
}

// endsValue reports whether something can be subtracted from what ends so.
func endsValue(t hclsyntax.TokenType) bool {
	switch t {
	case hclsyntax.TokenIdent, hclsyntax.TokenNumberLit, hclsyntax.TokenCQuote, hclsyntax.TokenCHeredoc,
		hclsyntax.TokenCBrace, hclsyntax.TokenCBrack, hclsyntax.TokenCParen:
		return true
	}
	return false
}
