package format

import (
	"bytes"
	"slices"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// SameWords reports whether two expressions differ at most in white space and comments,
// which do not count outside quotes.
func SameWords(a, b string) bool {
	return a == b || slices.EqualFunc(spoken(a), spoken(b), func(x, y hclsyntax.Token) bool {
		return x.Type == y.Type && bytes.Equal(x.Bytes, y.Bytes)
	})
}

// spoken are the tokens of an expression that count.
func spoken(expression string) hclsyntax.Tokens {
	tokens, _ := hclsyntax.LexExpression([]byte(expression), "", hcl.InitialPos)
	return slices.DeleteFunc(tokens, func(t hclsyntax.Token) bool {
		return t.Type == hclsyntax.TokenComment || t.Type == hclsyntax.TokenNewline
	})
}
