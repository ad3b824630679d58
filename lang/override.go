package lang

import (
	"bytes"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// overrides is the name of the file that holds the words of the command line.
const overrides = "--set"

// Override gives a given another value, as `--set NAME=VALUE` does. The value
// is a number, or a text where it reads as a tape (42-1/2 is no subtraction
// here), or an expression, or else a text. The words of the command line become lines of a file of the Source, so that findings can
// show them.
func (s *Source) Override(name, value string) finding.List {
	from, equals, to := s.writeOverride(name, value)
	var known []string
	for _, b := range s.Top("given") {
		for _, a := range b.Attrs {
			if a.Name == name {
				syntax := overriding([]byte(value), after(equals, "="), to)
				a.Expr = expr.Expr{Syntax: syntax, Unit: b.Unit, At: expr.RangeOf(span(after(equals, "="), to))}
				a.Overridden = true
				return nil
			}
			known = append(known, a.Name)
		}
	}
	var findings finding.List
	findings.Errorf("unknown-name", expr.RangeOf(span(from, equals)), finding.Suggest(name, known), "No given is called %q.", name)
	return findings
}

// writeOverride adds a line to the file of overrides, and tells where it, its
// equals sign and its end stand.
func (s *Source) writeOverride(name, value string) (from, equals, to hcl.Pos) {
	i := len(s.Files) - 1
	if i < 0 || s.Files[i].Name != overrides {
		s.Files = append(s.Files[:i+1:i+1], source.File{Name: overrides})
		i++
	}
	f := &s.Files[i]
	from = after(hcl.InitialPos, string(f.Text))
	f.Text = append(bytes.Clone(f.Text), name+"="+value+"\n"...)
	equals = after(from, name)
	return from, equals, after(equals, "="+value)
}

// after is the place behind a text that starts at a place. Columns count
// characters, which is near enough for a command line.
func after(p hcl.Pos, text string) hcl.Pos {
	for _, c := range text {
		p.Column++
		if c == '\n' {
			p.Line++
			p.Column = 1
		}
	}
	p.Byte += len(text)
	return p
}

func span(from, to hcl.Pos) hcl.Range { return hcl.Range{Filename: overrides, Start: from, End: to} }

func overriding(value []byte, from, to hcl.Pos) hclsyntax.Expression {
	if len(value) < MaxFileBytes {
		tokens, _ := hclsyntax.LexExpression(value, overrides, from)
		if _, deep := tooDeep(tokens); !deep {
			parsed, diags := hclsyntax.ParseExpression(value, overrides, from)
			if !diags.HasErrors() && !isWord(parsed) && (isNumber(parsed) || !isTape(value)) {
				return parsed
			}
		}
	}
	return &hclsyntax.LiteralValueExpr{Val: cty.StringVal(string(value)), SrcRange: span(from, to)}
}

func isNumber(x hclsyntax.Expression) bool {
	if sign, ok := x.(*hclsyntax.UnaryOpExpr); ok && sign.Op == hclsyntax.OpNegate {
		x = sign.Val
	}
	_, ok := x.(*hclsyntax.LiteralValueExpr)
	return ok
}

func isTape(value []byte) bool {
	_, err := length.Parse(string(value), length.Inches)
	return err == nil
}

// isWord reports whether an expression is one plain word, which a shell passes
// where the text would have quotes.
func isWord(x hclsyntax.Expression) bool {
	t, ok := x.(*hclsyntax.ScopeTraversalExpr)
	return ok && len(t.Traversal) == 1 && t.Traversal.RootName() != "rest"
}
