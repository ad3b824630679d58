package expr

import (
	"math/big"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"barwright/lang/finding"
	"barwright/lang/length"
)

// function is one function of the language. least and most bound the number of
// its arguments; most is 0 where any number will do.
type function struct {
	name        string
	least, most int
	run         func(e evaluator, x *hclsyntax.FunctionCallExpr, args []Value) Value
}

func functions() []function {
	return []function{
		{"tape", 1, 1, tape},
		{"min", 1, 0, func(e evaluator, x *hclsyntax.FunctionCallExpr, args []Value) Value { return e.extreme(x, args, -1) }},
		{"max", 1, 0, func(e evaluator, x *hclsyntax.FunctionCallExpr, args []Value) Value { return e.extreme(x, args, 1) }},
		{"abs", 1, 1, abs},
		{"floor", 2, 2, func(e evaluator, x *hclsyntax.FunctionCallExpr, args []Value) Value { return e.step(x, args, down) }},
		{"ceil", 2, 2, func(e evaluator, x *hclsyntax.FunctionCallExpr, args []Value) Value { return e.step(x, args, up) }},
		{"round", 2, 2, func(e evaluator, x *hclsyntax.FunctionCallExpr, args []Value) Value { return e.step(x, args, nearest) }},
	}
}

func (e evaluator) call(x *hclsyntax.FunctionCallExpr) Value {
	var names []string
	for _, f := range functions() {
		if f.name != x.Name {
			names = append(names, f.name)
			continue
		}
		if n := len(x.Args); n < f.least || f.most > 0 && n > f.most || x.ExpandFinal {
			return e.fail("wrong-arguments", x.Range(), "", "%s takes %s; it has %d here.", f.name, argumentWords(f), n)
		}
		args := make([]Value, len(x.Args))
		for i, a := range x.Args {
			if args[i] = e.eval(a); args[i].Kind == Invalid {
				return Value{}
			}
		}
		return f.run(e, x, args)
	}
	return e.fail("unknown-function", x.NameRange, finding.Suggest(x.Name, names), "There is no function %q.", x.Name)
}

func argumentWords(f function) string {
	switch {
	case f.most == 0:
		return "one value or more"
	case f.most == 1:
		return "one value"
	}
	return "two values, the length and the step"
}

// tape reads a text as a tape is read.
func tape(e evaluator, x *hclsyntax.FunctionCallExpr, args []Value) Value {
	if args[0].Kind != Text {
		return e.fail("wrong-type", x.Args[0].Range(), `write the length in quotes, as in tape("19 1/2in")`, "tape reads a text, but this is %s.", args[0].Kind)
	}
	return e.measure(args[0], x.Args[0].Range())
}

func (e evaluator) extreme(x *hclsyntax.FunctionCallExpr, args []Value, sign int) Value {
	best := e.measure(args[0], x.Args[0].Range())
	for i, a := range args[1:] {
		if best.Kind == Invalid {
			return best
		}
		if a = e.measure(a, x.Args[i+1].Range()); a.Kind == Invalid {
			return a
		}
		if best, a = e.alike(best, a, x.Range()); best.Kind != Invalid && a.Num.Cmp(best.Num) == sign {
			best = a
		}
	}
	return best
}

func abs(e evaluator, x *hclsyntax.FunctionCallExpr, args []Value) Value {
	v := e.measure(args[0], x.Args[0].Range())
	if v.Kind != Invalid {
		v.Num = new(big.Float).Abs(v.Num)
	}
	return v
}

type rounding int

const (
	down rounding = iota
	up
	nearest
)

// step rounds a measure to a multiple of a step.
func (e evaluator) step(x *hclsyntax.FunctionCallExpr, args []Value, way rounding) Value {
	a, b := e.measure(args[0], x.Args[0].Range()), e.measure(args[1], x.Args[1].Range())
	if a.Kind == Invalid || b.Kind == Invalid {
		return Value{}
	}
	if a, b = e.alike(a, b, x.Range()); a.Kind == Invalid {
		return a
	}
	if b.Num.Sign() <= 0 {
		return e.fail("wrong-arguments", x.Args[1].Range(), "", "The step must be over 0.")
	}
	quotient := new(big.Float).SetPrec(precision).Quo(a.Num, b.Num)
	if quotient.MantExp(nil) > 80 {
		return e.fail("too-large", x.Range(), "", "The step is too small for this value.")
	}
	whole := new(big.Float).SetPrec(precision).SetInt(roundInt(quotient, way))
	a.Num = new(big.Float).SetPrec(precision).Mul(whole, b.Num)
	return a
}

// roundInt rounds to a whole number; nearest takes halves away from zero. A
// quotient is settled first, so that 0.3 / 0.1 is 3 whichever way it is rounded.
func roundInt(x *big.Float, way rounding) *big.Int {
	x = settled(x)
	if way == nearest {
		half := big.NewFloat(0.5)
		if x.Sign() < 0 {
			half.Neg(half)
		}
		n, _ := x.Add(x, half).Int(nil)
		return n
	}
	n, _ := x.Int(nil) // towards zero
	whole := new(big.Float).SetPrec(256).SetInt(n)
	switch {
	case way == down && x.Cmp(whole) < 0:
		n.Sub(n, big.NewInt(1))
	case way == up && x.Cmp(whole) > 0:
		n.Add(n, big.NewInt(1))
	}
	return n
}

// ToLength converts a value to a length: a bare number takes the unit of its
// file, a text is read as a tape. On failure it reports a finding at the
// value's place.
func ToLength(v Value, unit length.Unit, c *Context) (length.Length, bool) {
	e := evaluator{c, unit}
	switch v.Kind {
	case Invalid:
		return 0, false
	case Text:
		l, err := length.Parse(v.Text, unit)
		if err != nil {
			e.unreadable(v, err, v.At)
			return 0, false
		}
		return l, true
	case Number:
		at := v.At
		if v = e.toLength(v, hclRange(at)); v.Kind == Invalid {
			return 0, false
		}
		v.At = at
	case Length:
	default:
		c.Findings.Errorf("wrong-type", v.At, `a number, or a length in quotes, as in "30 1/2in"`, "A length is needed here, but this is %s.", v.Kind)
		return 0, false
	}
	l, ok := length.FromFloat(v.Num)
	if !ok {
		c.Findings.Errorf("too-large", v.At, "", "This comes out larger than anything in a room.")
	}
	return l, ok
}
