package lang

import (
	"bytes"
	"slices"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// Overrides is the name of the file that holds the words of the command line.
const Overrides = "--set"

// Override gives a given another value, as `--set NAME=VALUE` does. The value
// is a number, or a text where it reads as a tape (42-1/2 is no subtraction
// here), or an expression, or else a text. The words of the command line become lines of a file of the Source, so that findings can
// show them.
func (s *Source) Override(name, value string) finding.List {
	from, equals, to := s.writeOverride(name, value)
	at := span(after(equals, "="), to)
	return s.override(name, expr.RangeOf(span(from, equals)), overriding([]byte(value), at.Start, to), at)
}

// OverrideFile gives givens the values that a file of attributes says, as
// `--set-file FILE` does: NAME = VALUE, a line each.
func (s *Source) OverrideFile(f source.File) finding.List {
	r := &reader{src: s}
	s.Files = append(slices.Clip(s.Files), f)
	body := r.parse(f)
	s.Faulty = s.Faulty || body == nil || len(body.Blocks) > 0
	if body == nil {
		return r.findings
	}
	for _, b := range body.Blocks {
		r.findings.Errorf("unknown-block", expr.RangeOf(b.TypeRange), "NAME = VALUE, a line each", "A file of given values has no blocks.")
	}
	for _, a := range sortedAttrs(body) {
		r.findings = append(r.findings, s.override(a.Name, expr.RangeOf(a.NameRange), a.Expr, a.Expr.Range())...)
	}
	return r.findings
}

// override puts an expression in the place of a given's own.
func (s *Source) override(name string, nameAt source.Range, value hclsyntax.Expression, at hcl.Range) finding.List {
	var known []string
	for _, b := range s.Top("given") {
		for _, g := range b.Givens() {
			if g.Name == name && g.Value != nil {
				g.Value.Expr = expr.Expr{Syntax: value, Unit: b.Unit, At: expr.RangeOf(at)}
				g.Value.Overridden = true
				return nil
			}
			known = append(known, g.Name)
		}
	}
	var findings finding.List
	s.Faulty = true
	findings.Errorf("unknown-name", nameAt, finding.Suggest(name, known), "No given is called %q.", name)
	return findings
}

// writeOverride adds a line to the file of Overrides, and tells where it, its
// equals sign and its end stand.
func (s *Source) writeOverride(name, value string) (from, equals, to hcl.Pos) {
	i := len(s.Files) - 1
	if i < 0 || s.Files[i].Name != Overrides {
		s.Files = append(s.Files[:i+1:i+1], source.File{Name: Overrides})
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

func span(from, to hcl.Pos) hcl.Range { return hcl.Range{Filename: Overrides, Start: from, End: to} }

func overriding(value []byte, from, to hcl.Pos) hclsyntax.Expression {
	if len(value) < MaxFileBytes {
		tokens, _ := hclsyntax.LexExpression(value, Overrides, from)
		_, deep := tooDeep(tokens)
		if _, long := heredoc(tokens); !deep && !long {
			parsed, diags := hclsyntax.ParseExpression(value, Overrides, from)
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
