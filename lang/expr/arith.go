package expr

import (
	"math/big"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"barwright/lang/length"
	"barwright/lang/source"
)

func (e evaluator) binary(x *hclsyntax.BinaryOpExpr) Value {
	a := e.eval(x.LHS)
	if a.Kind == Invalid {
		return a
	}
	b := e.eval(x.RHS)
	if b.Kind == Invalid {
		return b
	}
	switch x.Op {
	case hclsyntax.OpLogicalAnd, hclsyntax.OpLogicalOr:
		if a.Kind != Flag || b.Kind != Flag {
			return e.fail("wrong-type", x.Range(), "", "Both sides must be true or false, but they are %s and %s.", a.Kind, b.Kind)
		}
		if x.Op == hclsyntax.OpLogicalAnd {
			return OfFlag(a.Flag && b.Flag)
		}
		return OfFlag(a.Flag || b.Flag)
	case hclsyntax.OpEqual, hclsyntax.OpNotEqual:
		if a.Kind == b.Kind && (a.Kind == Text || a.Kind == Ref) {
			return OfFlag((a.Text == b.Text) == (x.Op == hclsyntax.OpEqual))
		}
		if a.Kind == Flag && b.Kind == Flag {
			return OfFlag((a.Flag == b.Flag) == (x.Op == hclsyntax.OpEqual))
		}
	}
	if a, b = e.measure(a, x.LHS.Range()), e.measure(b, x.RHS.Range()); a.Kind == Invalid || b.Kind == Invalid {
		return Value{}
	}
	switch x.Op {
	case hclsyntax.OpMultiply:
		return e.multiply(factor(x.LHS, a, b), factor(x.RHS, b, a), x.Range())
	case hclsyntax.OpDivide:
		b = factor(x.RHS, b, a)
		return e.divide(a, b, x)
	}
	if a, b = e.alike(a, b, x.Range()); a.Kind == Invalid {
		return a
	}
	return e.sumOrCompare(x, a, b)
}

// factor is a number as it counts in a product with another: one that is
// written there leaves the unit to a bare number that has come by name, as 2
// does in 2 * given.depth.
func factor(x hclsyntax.Expression, v, other Value) Value {
	if _, written := x.(*hclsyntax.LiteralValueExpr); written && v.Scale == Bare && other.Scale != Pure && !other.From.IsZero() {
		v.Scale = Pure
	}
	return v
}

func (e evaluator) sumOrCompare(x *hclsyntax.BinaryOpExpr, a, b Value) Value {
	sum, cmp := new(big.Float).SetPrec(precision), settled(a.Num).Cmp(settled(b.Num))
	switch x.Op {
	case hclsyntax.OpAdd:
		a.Num = sum.Add(a.Num, b.Num)
	case hclsyntax.OpSubtract:
		a.Num = sum.Sub(a.Num, b.Num)
	case hclsyntax.OpEqual:
		return OfFlag(cmp == 0)
	case hclsyntax.OpNotEqual:
		return OfFlag(cmp != 0)
	case hclsyntax.OpGreaterThan:
		return OfFlag(cmp > 0)
	case hclsyntax.OpGreaterThanOrEqual:
		return OfFlag(cmp >= 0)
	case hclsyntax.OpLessThan:
		return OfFlag(cmp < 0)
	case hclsyntax.OpLessThanOrEqual:
		return OfFlag(cmp <= 0)
	default:
		return e.fail("not-in-language", x.Range(), "", "This operator is not part of the language.")
	}
	return e.bounded(a, x.Range())
}

// alike brings two measures to one kind: a bare number beside a length becomes
// a length, two bare numbers agree on their unit.
func (e evaluator) alike(a, b Value, at hcl.Range) (Value, Value) {
	switch {
	case a.Kind == b.Kind:
		a.Scale, a.Unit = merge(a, b)
		b.Scale, b.Unit = a.Scale, a.Unit
	case a.Kind == Length:
		b = e.toLength(b, at)
	default:
		a = e.toLength(a, at)
	}
	if b.Kind == Invalid {
		a = b
	}
	return a, b
}

func merge(a, b Value) (Scale, length.Unit) {
	switch {
	case a.Scale == Pure:
		return b.Scale, b.Unit
	case b.Scale == Pure || a.Scale == b.Scale && a.Unit == b.Unit:
		return a.Scale, a.Unit
	}
	return Mixed, a.Unit
}

// toLength gives a number its unit.
func (e evaluator) toLength(v Value, at hcl.Range) Value {
	unit := v.Unit
	switch v.Scale {
	case Pure:
		unit = e.unit
	case Mixed:
		return e.fail("unit-unclear", at, `write the unit, as in "36in" or "900mm"`,
			"Bare numbers of files with different units meet here; which unit is meant is unclear.")
	}
	size := new(big.Float).SetInt64(int64(unit.Size()))
	return Value{Kind: Length, Num: new(big.Float).SetPrec(precision).Mul(v.Num, size)}
}

func (e evaluator) multiply(a, b Value, at hcl.Range) Value {
	if a.Kind == Length && b.Kind == Length {
		return e.fail("wrong-type", at, "", "A length times a length is an area; the language has none.")
	}
	product := Value{Kind: Number, Num: new(big.Float).SetPrec(precision).Mul(a.Num, b.Num)}
	if a.Kind == Length || b.Kind == Length {
		product.Kind = Length
	} else {
		product.Scale, product.Unit = merge(a, b)
	}
	return e.bounded(product, at)
}

func (e evaluator) divide(a, b Value, x *hclsyntax.BinaryOpExpr) Value {
	if b.Num.Sign() == 0 {
		return e.fail("division-by-zero", x.RHS.Range(), "", "This is 0; nothing can be divided by it.")
	}
	if a.Kind == Number && b.Kind == Length {
		if a = e.toLength(a, x.LHS.Range()); a.Kind == Invalid {
			return a
		}
	}
	quotient := Value{Kind: a.Kind, Num: new(big.Float).SetPrec(precision).Quo(a.Num, b.Num)}
	switch {
	case a.Kind == Length && b.Kind == Length:
		quotient.Kind = Number
	case a.Kind == Number:
		quotient.Scale, quotient.Unit = merge(a, b)
	}
	return e.bounded(quotient, x.Range())
}

// settled drops the digits that a fraction such as 1/3 leaves uncertain.
func settled(x *big.Float) *big.Float { return new(big.Float).SetPrec(precision / 2).Set(x) }

// bounded refuses numbers that no build can mean.
func (e evaluator) bounded(v Value, at hcl.Range) Value {
	switch exponent := v.Num.MantExp(nil); {
	case v.Num.IsInf() || exponent > 80:
		return e.fail("too-large", at, "", "This comes out larger than anything in a room.")
	case exponent < -300:
		return e.fail("too-small", at, "", "This comes out smaller than anything that can be measured.")
	}
	return v
}

// Compare orders two measures; a text is read as a tape, and a bare number
// beside a length takes its unit. ok is false where they cannot be compared,
// which has been reported at b's place.
func Compare(a, b Value, unit length.Unit, c *Context) (order int, ok bool) {
	e, at := evaluator{c, unit}, hclRange(b.At)
	if a, b = e.measure(a, at), e.measure(b, at); a.Kind == Invalid || b.Kind == Invalid {
		return 0, false
	}
	if a, b = e.alike(a, b, at); a.Kind == Invalid {
		return 0, false
	}
	return a.Num.Cmp(b.Num), true
}

func hclRange(r source.Range) hcl.Range {
	at := func(p source.Pos) hcl.Pos { return hcl.Pos{Line: p.Line, Column: p.Column, Byte: p.Byte} }
	return hcl.Range{Filename: r.File, Start: at(r.Start), End: at(r.End)}
}
