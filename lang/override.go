package lang

import (
	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// Override gives a given another value, as `--set NAME=VALUE` does. The value
// is an expression, or else a text that may be read as a tape. The words of
// the command line become a file of the Source, so that findings can show them.
func (s *Source) Override(name, value string) finding.List {
	var findings finding.List
	file := source.File{Name: "--set", Text: []byte(name + "=" + value)}
	start := hcl.Pos{Line: 1, Column: 1 + len(name) + 1, Byte: len(name) + 1}
	at := expr.RangeOf(hcl.Range{Filename: file.Name, Start: hcl.InitialPos, End: hcl.Pos{Line: 1, Column: start.Column - 1, Byte: len(name)}})
	s.Files = append(s.Files, file)
	var known []string
	for _, b := range s.Top("given") {
		for _, a := range b.Attrs {
			if a.Name == name {
				a.Expr = expr.Expr{Syntax: overriding([]byte(value), file.Name, start), Unit: b.Unit, At: valueRange(at, value)}
				a.Overridden = true
				return nil
			}
			known = append(known, a.Name)
		}
	}
	findings.Errorf("unknown-name", at, finding.Suggest(name, known), "No given is called %q.", name)
	return findings
}

func overriding(value []byte, file string, start hcl.Pos) hclsyntax.Expression {
	tokens, _ := hclsyntax.LexExpression(value, file, start)
	if _, deep := tooDeep(tokens); !deep && len(value) < MaxFileBytes {
		if parsed, diags := hclsyntax.ParseExpression(value, file, start); !diags.HasErrors() && !isWord(parsed) {
			return parsed
		}
	}
	end := start
	end.Column += len(value)
	end.Byte += len(value)
	return &hclsyntax.LiteralValueExpr{Val: cty.StringVal(string(value)), SrcRange: hcl.Range{Filename: file, Start: start, End: end}}
}

// isWord reports whether an expression is one plain word, which a shell passes
// where the text would have quotes.
func isWord(x hclsyntax.Expression) bool {
	t, ok := x.(*hclsyntax.ScopeTraversalExpr)
	return ok && len(t.Traversal) == 1
}

func valueRange(name source.Range, value string) source.Range {
	from := source.Pos{Line: 1, Column: name.End.Column + 1, Byte: name.End.Byte + 1}
	to := source.Pos{Line: 1, Column: from.Column + len(value), Byte: from.Byte + len(value)}
	return source.Range{File: name.File, Start: from, End: to}
}
