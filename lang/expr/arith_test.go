package expr

import (
	"fmt"
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"barwright/lang/length"
)

// sample is an expression with its exact value: a number, or nanometres.
type sample struct {
	text  string
	kind  Kind
	exact *big.Rat
}

var inch = big.NewRat(int64(length.Inch), 1)

// asLength gives a bare number of the inch file its unit.
func (s sample) asLength() *big.Rat {
	if s.kind == Number {
		return new(big.Rat).Mul(s.exact, inch)
	}
	return s.exact
}

// drawSample draws an expression of a file in inches, with operators nested to
// a depth.
func drawSample(t *rapid.T, depth int) sample {
	if depth == 0 {
		return drawLeaf(t)
	}
	a, b := drawSample(t, depth-1), drawSample(t, rapid.IntRange(0, depth-1).Draw(t, "depth"))
	exact := new(big.Rat)
	switch op := rapid.SampledFrom([]string{"+", "-", "*", "/", "neg", "abs", "min", "max", "floor", "ceil", "round"}).Draw(t, "operator"); op {
	case "neg":
		return sample{"-(" + a.text + ")", a.kind, exact.Neg(a.exact)}
	case "abs":
		return sample{"abs(" + a.text + ")", a.kind, exact.Abs(a.exact)}
	case "*":
		if a.kind == Length && b.kind == Length {
			return a
		}
		return sample{fmt.Sprintf("(%s) * (%s)", a.text, b.text), max(a.kind, b.kind), exact.Mul(a.exact, b.exact)}
	case "/":
		switch {
		case b.exact.Sign() == 0:
			return a
		case b.kind == Length:
			return sample{fmt.Sprintf("(%s) / (%s)", a.text, b.text), Number, exact.Quo(a.asLength(), b.exact)}
		}
		return sample{fmt.Sprintf("(%s) / (%s)", a.text, b.text), a.kind, exact.Quo(a.exact, b.exact)}
	default:
		if steps := op == "floor" || op == "ceil" || op == "round"; steps && b.exact.Sign() <= 0 {
			return a
		}
		kind, x, y := a.kind, a.exact, b.exact
		if a.kind != b.kind {
			kind, x, y = Length, a.asLength(), b.asLength()
		}
		return combine(op, sample{a.text, kind, x}, sample{b.text, kind, y})
	}
}

// combine joins two samples of one kind.
func combine(op string, a, b sample) sample {
	exact := new(big.Rat)
	call := func(x *big.Rat) sample { return sample{fmt.Sprintf("%s(%s, %s)", op, a.text, b.text), a.kind, x} }
	switch op {
	case "+":
		return sample{fmt.Sprintf("(%s) + (%s)", a.text, b.text), a.kind, exact.Add(a.exact, b.exact)}
	case "-":
		return sample{fmt.Sprintf("(%s) - (%s)", a.text, b.text), a.kind, exact.Sub(a.exact, b.exact)}
	case "min", "max":
		if (a.exact.Cmp(b.exact) <= 0) == (op == "min") {
			return call(a.exact)
		}
		return call(b.exact)
	}
	return call(exact.Mul(stepsOf(exact.Quo(a.exact, b.exact), op), b.exact))
}

// stepsOf rounds to a whole number.
func stepsOf(x *big.Rat, way string) *big.Rat {
	floor := func(x *big.Rat) *big.Int { return new(big.Int).Div(x.Num(), x.Denom()) } // Div rounds down: the denominator is positive
	switch way {
	case "floor":
		return new(big.Rat).SetInt(floor(x))
	case "ceil":
		return new(big.Rat).Neg(new(big.Rat).SetInt(floor(new(big.Rat).Neg(x))))
	}
	half := big.NewRat(1, 2)
	if x.Sign() < 0 {
		return new(big.Rat).Neg(stepsOf(new(big.Rat).Neg(x), way))
	}
	return new(big.Rat).SetInt(floor(new(big.Rat).Add(x, half)))
}

func drawLeaf(t *rapid.T) sample {
	n := rapid.Int64Range(0, 999).Draw(t, "n")
	switch rapid.IntRange(0, 3).Draw(t, "leaf") {
	case 0:
		return sample{fmt.Sprint(n), Number, big.NewRat(n, 1)}
	case 1:
		return sample{fmt.Sprintf("%d.%02d", n/100, n%100), Number, big.NewRat(n, 100)}
	case 2:
		sixteenths := big.NewRat(n%16, 16)
		exact := sixteenths.Add(sixteenths, big.NewRat(n, 1))
		return sample{fmt.Sprintf(`tape("%d %d/16in")`, n, n%16), Length, exact.Mul(exact, inch)}
	}
	return sample{fmt.Sprintf("%d * mm", n), Length, new(big.Rat).SetInt64(n * int64(length.Millimetre))}
}

// TestArithmeticAgainstFractions compares nested arithmetic with exact
// fractions: the value to many digits, and the nanometre exactly.
func TestArithmeticAgainstFractions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSample(t, rapid.IntRange(0, 4).Draw(t, "nested"))
		v, findings := evaluate(t, s.text, length.Inches)
		if len(findings) > 0 {
			if slug := findings[0].Slug; slug != "too-large" && slug != "too-small" {
				t.Fatalf("%s: %v", s.text, findings)
			}
			return
		}
		if v.Kind != s.kind {
			t.Fatalf("%s is %s, want %s", s.text, v.Kind, s.kind)
		}
		exact := new(big.Float).SetPrec(1000).SetRat(s.exact)
		miss := new(big.Float).SetPrec(1000).Sub(v.Num, exact)
		if miss.Sign() != 0 && miss.MantExp(nil) > max(exact.MantExp(nil), 0)-200 {
			t.Fatalf("%s is %s, want %s", s.text, v.Num.Text('g', 40), exact.Text('g', 40))
		}
		got, ok := ToLength(v, length.Inches, &Context{Findings: &findings})
		want := stepsOf(s.asLength(), "round")
		if !ok {
			if new(big.Rat).Abs(want).Cmp(new(big.Rat).SetInt64(int64(length.Max))) <= 0 {
				t.Fatalf("%s is refused: %v", s.text, findings)
			}
			return
		}
		if want.Cmp(new(big.Rat).SetInt64(int64(got))) != 0 {
			t.Fatalf("%s is %d nm, want %s", s.text, got, want)
		}
	})
}
