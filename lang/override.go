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

// Override gives a given another value, as `--set NAME=VALUE` does. The value
// is a number, or a text where it reads as a tape (42-1/2 is no subtraction
// here), or an expression, or else a text. The words of the command line become
// lines of a file of the Source, called as their flag, so that findings can show them.
//
// Elsewhere are the givens of another build that the same words are for: a value for
// one that only that build has is no mistake.
func (s *Source) Override(flag, name, value string, elsewhere ...string) finding.List {
	from, equals, to := s.writeOverride(flag, name, value)
	span := func(from, to hcl.Pos) hcl.Range { return hcl.Range{Filename: flag, Start: from, End: to} }
	at := span(after(equals, "="), to)
	return s.override(name, expr.RangeOf(span(from, equals)), overriding([]byte(value), at), at, elsewhere)
}

// OverrideFile gives givens the values that a file of attributes says, as
// `--set-file FILE` does: NAME = VALUE, a line each. Elsewhere is as in Override.
func (s *Source) OverrideFile(f source.File, elsewhere ...string) finding.List {
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
		r.findings = append(r.findings, s.override(a.Name, expr.RangeOf(a.NameRange), a.Expr, a.Expr.Range(), elsewhere)...)
	}
	return r.findings
}

// override puts an expression in the place of a given's own.
func (s *Source) override(name string, nameAt source.Range, value hclsyntax.Expression, at hcl.Range, elsewhere []string) finding.List {
	for _, b := range s.Top("given") {
		for _, g := range b.Givens() {
			if g.Name == name && g.Value != nil {
				g.Value.Expr = expr.Expr{Syntax: value, Unit: b.Unit, At: expr.RangeOf(at)}
				g.Value.Overridden = true
				return nil
			}
		}
	}
	if slices.Contains(elsewhere, name) {
		return nil
	}
	var findings finding.List
	s.Faulty = true
	findings.Errorf("unknown-name", nameAt, finding.Suggest(name, s.GivenNames()), "No given is called %q.", name)
	return findings
}

// writeOverride adds a line to the file of a flag's words, and tells where it, its
// equals sign and its end stand.
func (s *Source) writeOverride(flag, name, value string) (from, equals, to hcl.Pos) {
	i := len(s.Files) - 1
	if i < 0 || s.Files[i].Name != flag {
		s.Files = append(s.Files[:i+1:i+1], source.File{Name: flag})
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

func overriding(value []byte, at hcl.Range) hclsyntax.Expression {
	if len(value) < MaxFileBytes {
		tokens, _ := hclsyntax.LexExpression(value, at.Filename, at.Start)
		_, deep := tooDeep(tokens)
		if _, long := heredoc(tokens); !deep && !long {
			parsed, diags := hclsyntax.ParseExpression(value, at.Filename, at.Start)
			if !diags.HasErrors() && !isWord(parsed) && (isNumber(parsed) || !isTape(value)) {
				return parsed
			}
		}
	}
	return &hclsyntax.LiteralValueExpr{Val: cty.StringVal(string(value)), SrcRange: at}
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
