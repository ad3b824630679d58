package expr

import (
	"math/big"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// Expr is an expression that waits to be evaluated.
type Expr struct {
	Syntax hclsyntax.Expression
	Unit   length.Unit // of bare numbers in its file
	At     source.Range
}

// IsNumber reports whether a plain number is written.
func (x Expr) IsNumber() bool {
	v, ok := x.Syntax.(*hclsyntax.LiteralValueExpr)
	return ok && v.Val.Type() == cty.Number
}

// Context is what an expression may use. Resolve looks up a dotted name and
// reports its own findings; it returns a value of kind Invalid after one.
type Context struct {
	Resolve  func(name []string, at source.Range) Value
	Findings *finding.List
}

// RangeOf converts a range of the syntax library.
func RangeOf(r hcl.Range) source.Range {
	return source.Range{File: r.Filename, Start: posOf(r.Start), End: posOf(r.End)}
}

func posOf(p hcl.Pos) source.Pos { return source.Pos{Line: p.Line, Column: p.Column, Byte: p.Byte} }

// Eval evaluates an expression. On error it reports a finding and returns a
// value of kind Invalid.
func (e Expr) Eval(c *Context) Value {
	v := evaluator{c, e.Unit}.eval(e.Syntax)
	v.At = e.At
	return v
}

type evaluator struct {
	*Context
	unit length.Unit
}

func (e evaluator) fail(slug string, at hcl.Range, mend, format string, args ...any) Value {
	e.Findings.Errorf(slug, RangeOf(at), mend, format, args...)
	return Value{}
}

func (e evaluator) eval(x hclsyntax.Expression) Value {
	switch x := x.(type) {
	case *hclsyntax.LiteralValueExpr:
		return e.literal(x)
	case *hclsyntax.ParenthesesExpr:
		return e.eval(x.Expression)
	case *hclsyntax.TemplateExpr:
		return e.template(x)
	case *hclsyntax.TemplateWrapExpr:
		return e.eval(x.Wrapped)
	case *hclsyntax.ScopeTraversalExpr:
		return e.name(x)
	case *hclsyntax.BinaryOpExpr:
		return e.binary(x)
	case *hclsyntax.UnaryOpExpr:
		return e.unary(x)
	case *hclsyntax.ConditionalExpr:
		return e.conditional(x)
	case *hclsyntax.FunctionCallExpr:
		return e.call(x)
	case *hclsyntax.TupleConsExpr:
		return e.list(x)
	case *hclsyntax.ObjectConsExpr:
		return e.object(x)
	}
	return e.fail("not-in-language", x.Range(), "", "This form of expression is not part of the language.")
}

func (e evaluator) literal(x *hclsyntax.LiteralValueExpr) Value {
	switch x.Val.Type() {
	case cty.Number:
		return e.bounded(Value{Kind: Number, Num: x.Val.AsBigFloat(), Scale: Bare, Unit: e.unit}, x.Range())
	case cty.Bool:
		return OfFlag(x.Val.True())
	case cty.String:
		return OfText(x.Val.AsString())
	}
	return e.fail("not-in-language", x.Range(), "leave the attribute out", "null is not part of the language.")
}

func (e evaluator) template(x *hclsyntax.TemplateExpr) Value {
	text := ""
	for _, part := range x.Parts {
		if len(text) > maxText {
			return e.fail("too-large", x.Range(), "", "This text comes out longer than %d characters.", maxText)
		}
		v := e.eval(part)
		switch v.Kind {
		case Invalid:
			return v
		case Text:
			text += v.Text
		case Number:
			text += v.Num.Text('g', 12)
		case Length:
			l, _ := length.FromFloat(v.Num)
			text += length.Show(l, e.unit, 0)
		default:
			return e.fail("wrong-type", part.Range(), "", "A text can hold numbers, lengths and texts, but this is %s.", v.Kind)
		}
	}
	v := OfText(text)
	// Escapes would put the text's bytes elsewhere than they stand.
	if at := RangeOf(x.Range()); (x.IsStringLiteral() || text == "") && at.End.Byte-at.Start.Byte == len(text)+len(`""`) {
		v.Quoted = at
	}
	return v
}

// maxText bounds texts that are put together from others.
const maxText = 1000

// constant is a unit as a length, or a word of the language.
func (e evaluator) constant(word string) (Value, bool) {
	if u, ok := length.UnitNamed(word); ok {
		return OfLength(u.Size()), true
	}
	if word == "rest" {
		return Value{Kind: Rest}, true
	}
	return Value{}, false
}

func (e evaluator) name(x *hclsyntax.ScopeTraversalExpr) Value {
	names := make([]string, 0, len(x.Traversal))
	for _, step := range x.Traversal {
		switch step := step.(type) {
		case hcl.TraverseRoot:
			names = append(names, step.Name)
		case hcl.TraverseAttr:
			names = append(names, step.Name)
		default:
			return e.fail("not-in-language", step.SourceRange(), "", "Names are joined by dots; brackets are not part of the language.")
		}
	}
	if len(names) == 1 {
		if v, ok := e.constant(names[0]); ok {
			return v
		}
	}
	return e.Resolve(names, RangeOf(x.Range()))
}

func (e evaluator) list(x *hclsyntax.TupleConsExpr) Value {
	v := Value{Kind: List, Items: make([]Value, len(x.Exprs))}
	for i, item := range x.Exprs {
		v.Items[i] = e.eval(item)
		v.Items[i].At = RangeOf(item.Range())
		if v.Items[i].Kind == Invalid {
			return Value{}
		}
	}
	return v
}

func (e evaluator) object(x *hclsyntax.ObjectConsExpr) Value {
	v := Value{Kind: Object}
	for _, item := range x.Items {
		key := hcl.ExprAsKeyword(item.KeyExpr)
		if key == "" {
			return e.fail("not-in-language", item.KeyExpr.Range(), "", "The name of a field is a plain word.")
		}
		value := e.eval(item.ValueExpr)
		if value.Kind == Invalid {
			return value
		}
		value.At = RangeOf(item.ValueExpr.Range())
		v.Keys = append(v.Keys, key)
		v.KeyAt = append(v.KeyAt, RangeOf(item.KeyExpr.Range()))
		v.Items = append(v.Items, value)
	}
	return v
}

func (e evaluator) conditional(x *hclsyntax.ConditionalExpr) Value {
	cond := e.eval(x.Condition)
	switch {
	case cond.Kind == Invalid:
		return cond
	case cond.Kind != Flag:
		return e.fail("wrong-type", x.Condition.Range(), "", "The part before ? must be true or false, but it is %s.", cond.Kind)
	case cond.Flag:
		return e.eval(x.TrueResult)
	}
	return e.eval(x.FalseResult)
}

func (e evaluator) unary(x *hclsyntax.UnaryOpExpr) Value {
	v := e.eval(x.Val)
	switch {
	case v.Kind == Invalid:
		return v
	case x.Op == hclsyntax.OpLogicalNot && v.Kind == Flag:
		return OfFlag(!v.Flag)
	case x.Op == hclsyntax.OpNegate:
		if v = e.measure(v, x.Val.Range()); v.Kind != Invalid {
			v.Num = new(big.Float).Neg(v.Num)
		}
		return v
	}
	return e.fail("wrong-type", x.Val.Range(), "", "! needs true or false, but this is %s.", v.Kind)
}

// measure makes a value fit for arithmetic: a text is read as a tape.
func (e evaluator) measure(v Value, at hcl.Range) Value {
	switch v.Kind {
	case Invalid, Number, Length:
		return v
	case Text:
		l, err := length.Parse(v.Text, e.unit)
		if err != nil {
			return e.unreadable(v, err, RangeOf(at))
		}
		return OfLength(l)
	}
	f := e.Findings.Errorf("wrong-type", RangeOf(at), "", "Arithmetic needs a number or a length, but this is %s.", v.Kind)
	comesFrom(f, v)
	return Value{}
}

// comesFrom adds the place of the value that a name led to.
func comesFrom(f *finding.Finding, v Value) {
	if !v.From.IsZero() && !overlap(f.At, v.From) {
		f.Also(v.From, "the value comes from here")
	}
}

// unreadable refuses a text that was used as a length at some place.
func (e evaluator) unreadable(v Value, err *length.SyntaxError, used source.Range) Value {
	at, caret := v.place(err.Offset, used)
	f := e.Findings.Errorf("unreadable-length", at, err.Mend, "%q is no length: %s", v.Text, err.Sentence())
	f.Caret = caret
	if !overlap(at, used) {
		f.Also(used, "it is used here")
	}
	comesFrom(f, v)
	return Value{}
}

func overlap(a, b source.Range) bool {
	return a.File == b.File && a.Start.Byte < b.End.Byte && b.Start.Byte < a.End.Byte
}
