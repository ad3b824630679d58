package expr

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// evaluate reads and evaluates an expression of a file in a unit. It may use
// given.three_in (a length), given.mm5 and given.in5 (the bare number 5 of a
// file in that unit), given.pure5 (a count), given.bad (a text that is no
// length) and sheet.ply.
func evaluate(t interface {
	Helper()
	Fatalf(string, ...any)
}, text string, unit length.Unit) (Value, finding.List) {
	t.Helper()
	syntax, diags := hclsyntax.ParseExpression([]byte(text), "bar.hcl", hcl.InitialPos)
	if diags.HasErrors() {
		t.Fatalf("%s: %v", text, diags)
	}
	var findings finding.List
	five := func(scale Scale, unit length.Unit) Value {
		return Value{Kind: Number, Num: big.NewFloat(5), Scale: scale, Unit: unit}
	}
	known := map[string]Value{
		"given.three_in": OfLength(3 * length.Inch), "given.mm5": five(Bare, length.Millimetres),
		"given.in5": five(Bare, length.Inches), "given.pure5": five(Pure, length.Inches), "given.bad": OfText("3 foo"), "sheet.ply": OfRef("sheet.ply"),
	}
	context := &Context{Findings: &findings, Resolve: func(name []string, at source.Range) Value {
		v, ok := known[strings.Join(name, ".")]
		if !ok {
			findings.Errorf("unknown-name", at, "", "There is no %s.", strings.Join(name, "."))
		}
		return v
	}}
	return Expr{Syntax: syntax, Unit: unit, At: RangeOf(syntax.Range())}.Eval(context), findings
}

// brief writes a value as one line.
func brief(v Value) string {
	switch v.Kind {
	case Number:
		return v.Num.Text('g', 20) + [...]string{Pure: "", Bare: " " + v.Unit.String() + "?", Mixed: " mixed"}[v.Scale]
	case Length:
		l, ok := length.FromFloat(v.Num)
		if !ok {
			return "too large"
		}
		return l.Decimal(length.Millimetres, 9) + " mm"
	case Text:
		return fmt.Sprintf("%q", v.Text)
	case Flag:
		return fmt.Sprint(v.Flag)
	case Ref:
		return "->" + v.Text
	case Rest:
		return "rest"
	case List, Object:
		var items []string
		for i, item := range v.Items {
			if text := brief(item); v.Kind == Object {
				items = append(items, v.Keys[i]+"="+text)
			} else {
				items = append(items, text)
			}
		}
		return "[" + strings.Join(items, ", ") + "]"
	}
	return "nothing"
}

func TestEval(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		// Numbers carry the unit of their file until a length needs it.
		{"3", "3 in?"}, {"3.25", "3.25 in?"}, {"-3", "-3 in?"}, {"1e3", "1000 in?"}, {"1 + 2 * 3", "7 in?"}, {"(1 + 2) * 3", "9 in?"},
		{"7 / 2", "3.5 in?"}, {"7 - 10", "-3 in?"}, {"-(-3)", "3 in?"},
		{"given.pure5 + given.pure5", "10"}, {"given.pure5 * 2", "10 in?"}, {"given.mm5 + given.in5", "10 mixed"}, {"given.mm5 * 2", "10 mixed"},
		// Lengths.
		{"given.three_in", "76.2 mm"}, {`tape("19 1/2in")`, "495.3 mm"}, {`tape("19 1/2")`, "495.3 mm"}, {`tape("1.2m")`, "1200 mm"},
		{"mm", "1 mm"}, {"2 * in", "50.8 mm"}, {"ft", "304.8 mm"}, {"cm * 3", "30 mm"}, {"1.5 * m", "1500 mm"},
		{`tape("19 1/2in") + 2 * mm`, "497.3 mm"}, {`"19 1/2in" + 2 * mm`, "497.3 mm"}, {`"3in" * 2`, "152.4 mm"}, {`-"3in"`, "-76.2 mm"},
		{`"3in" + 1`, "101.6 mm"}, {`1 + "3in"`, "101.6 mm"}, {`"3in" - 5`, "-50.8 mm"}, {`"3in" + given.mm5`, "81.2 mm"}, {`"3in" + given.pure5`, "203.2 mm"},
		{`"3in" / 2`, "38.1 mm"}, {`"1in" / 3`, "8.466667 mm"}, {`"1in" / 3 * 3`, "25.4 mm"}, {`"3in" / "1in"`, "3"}, {`36 / "1ft"`, "3"}, {`"1m" / given.mm5`, "200 mm"}, {`given.mm5 / "1mm"`, "5"},
		// Comparisons.
		{"3 > 2", "true"}, {`"1ft" == 12`, "true"}, {`12 == "1ft"`, "true"}, {`"1ft" != "12in"`, "true"}, {`tape("1ft") != tape("12in")`, "false"}, {`"3in" >= given.three_in`, "true"},
		{`"3in" < "4in"`, "true"}, {"3 <= 2", "false"}, {`"a" == "a"`, "true"}, {`"a" != "b"`, "true"}, {"sheet.ply == sheet.ply", "true"}, {"true == false", "false"}, {"true != false", "true"},
		// Fractions that binary numbers cannot hold are equal where a person would say so.
		{"0.1 + 0.2 == 0.3", "true"}, {"1 / 3 * 3 == 1", "true"}, {"0.1 * 3 > 0.3", "false"}, {"2 / 3 + 2 / 3 <= 4 / 3", "true"}, {`"1in" / 7 * 7 == "1in"`, "true"},
		{"true && false", "false"}, {"true || false", "true"}, {"!true", "false"},
		{"3 > 2 ? 10 : 20", "10 in?"}, {"3 < 2 ? 10 : given.nothing", "nothing"}, {"3 > 2 ? 10 : given.nothing", "10 in?"},
		// Functions.
		{"min(3, 2, 4)", "2 in?"}, {`max("3in", 2, "1ft")`, "304.8 mm"}, {"min(5)", "5 in?"}, {`abs(-"3in")`, "76.2 mm"}, {"abs(3 - 5)", "2 in?"},
		{`round("3 3/8in", "1/4in")`, "88.9 mm"}, {`floor("3 3/8in", "1/4in")`, "82.55 mm"}, {`ceil("3 3/8in", "1/4in")`, "88.9 mm"},
		{`round(-"3 3/8in", "1/4in")`, "-88.9 mm"}, {`floor(-"3 3/8in", "1/4in")`, "-88.9 mm"}, {`ceil(-"3 3/8in", "1/4in")`, "-82.55 mm"},
		{`round("100mm", 1)`, "101.6 mm"}, {"round(7, 3)", "6 in?"}, {"floor(0.3, 0.1) / 0.1", "3 in?"}, {"ceil(0.3, 0.1) / 0.1", "3 in?"},
		// Texts.
		{`"north"`, `"north"`}, {`""`, `""`}, {`"run ${3 + 4}"`, `"run 7"`}, {`"${"a"}${"b"}"`, `"ab"`}, {`"${3}"`, "3 in?"}, {`"w ${given.three_in}"`, `"w 3 in"`}, {`"%{if 3 > 2}x%{else}y%{endif}"`, `"x"`},
		{`"7' 6\""`, `"7' 6\""`},
		// The rest.
		{"sheet.ply", "->sheet.ply"}, {"rest", "rest"}, {"[1, \"2in\", sheet.ply]", `[1 in?, "2in", ->sheet.ply]`}, {"{ a = 1, b = { c = 2 } }", "[a=1 in?, b=[c=2 in?]]"},
		{"given.nothing", "nothing"},
	} {
		v, findings := evaluate(t, c.text, length.Inches)
		if got := brief(v); got != c.want {
			t.Errorf("%s is %s, want %s", c.text, got, c.want)
		}
		if (v.Kind == Invalid) != (len(findings) == 1) {
			t.Errorf("%s is %s, with findings %v", c.text, brief(v), findings)
		}
		if v.At.Start.Byte != 0 || v.At.End.Byte != len(c.text) {
			t.Errorf("%s was written at %v", c.text, v.At)
		}
	}
}

// TestRefused lists what has no value, the slug, and the words that it points
// at. Each gives one finding, however deep the mistake is.
func TestRefused(t *testing.T) {
	for _, c := range []struct{ text, slug, at string }{
		{"1 / 0", "division-by-zero", "0"}, {"1 / (2 - 2)", "division-by-zero", "(2 - 2)"},
		{`"2in" * "3in"`, "wrong-type", `"2in" * "3in"`}, {"3 + true", "wrong-type", "true"}, {"[1] * 2", "wrong-type", "[1]"}, {"rest - 1", "wrong-type", "rest"}, {"sheet.ply + 1", "wrong-type", "sheet.ply"},
		{"-true", "wrong-type", "true"}, {"!3", "wrong-type", "3"}, {"3 && true", "wrong-type", "3 && true"}, {"3 ? 1 : 2", "wrong-type", "3"}, {`"x${[1]}"`, "wrong-type", "[1]"}, {"tape(3)", "wrong-type", "3"},
		{`"x" == 3`, "unreadable-length", `"x"`}, {`"3 foo" + 1`, "unreadable-length", `"3 foo"`}, {"given.bad * 2", "unreadable-length", "given.bad"}, {`max(1, "191/2in")`, "unreadable-length", `"191/2in"`},
		{"given.mm5 + given.in5 + tape(\"1in\")", "unit-unclear", "given.mm5 + given.in5 + tape(\"1in\")"},
		{"rond(3, 1)", "unknown-function", "rond"}, {"round(3)", "wrong-arguments", "round(3)"}, {"tape()", "wrong-arguments", "tape()"}, {"min()", "wrong-arguments", "min()"}, {"round(3, 0)", "wrong-arguments", "0"}, {"min([1, 2]...)", "wrong-arguments", "min([1, 2]...)"},
		{"7 % 2", "not-in-language", "7 % 2"}, {"null", "not-in-language", "null"}, {"[1][0]", "not-in-language", "[1][0]"}, {"given.a[0]", "not-in-language", "[0]"}, {"[for x in [1]: x]", "not-in-language", "[for x in [1]: x]"}, {"given.*.a", "not-in-language", "given.*.a"},
		{`{ "a" = 1 }`, "not-in-language", `"a"`},
		{"1e30", "too-large", "1e30"}, {"1e20 * 1e20", "too-large", "1e20 * 1e20"}, {"1e-200", "too-small", "1e-200"}, {"round(1e20, 1e-20)", "too-large", "round(1e20, 1e-20)"},
		{"1e999999999", "too-large", "1e999999999"}, {"1e999999999 * 0", "too-large", "1e999999999"},
		{"1 + (2 * (given.nothing + 3))", "unknown-name", "given.nothing"}, {"[1, [2, given.nothing]]", "unknown-name", "given.nothing"}, {"{ a = given.nothing }", "unknown-name", "given.nothing"},
	} {
		v, findings := evaluate(t, c.text, length.Inches)
		if v.Kind != Invalid || len(findings) != 1 {
			t.Errorf("%s is %s, findings %v", c.text, brief(v), findings)
			continue
		}
		f := findings[0]
		if at := c.text[f.At.Start.Byte:f.At.End.Byte]; f.Slug != c.slug || at != c.at {
			t.Errorf("%s: %s at %q, want %s at %q", c.text, f.Slug, at, c.slug, c.at)
		}
	}
}

// TestCaret checks that an unreadable length is marked at its wrong character.
func TestCaret(t *testing.T) {
	for _, c := range []struct {
		text, from string // from the wrong character on; empty where no one is marked
	}{
		{`"191/2in"`, `191/2in"`}, {`"3 foo"`, `foo"`}, {`"12 1/2 ix"`, `ix"`}, {`"34,5in"`, `,5in"`}, {`"½x"`, `½x"`}, {`"3ft é"`, `é"`},
		{`""`, `"`}, {`"3/"`, `"`}, {`"  "`, `"`},
		{`"7' 11/2\""`, ""}, {`given.bad`, ""}, {`true ? "3 foo" : "1"`, `foo" : "1"`}, {`"3${" foo"}"`, ""},
	} {
		v, findings := evaluate(t, c.text, length.Inches)
		if _, ok := ToLength(v, length.Inches, &Context{Findings: &findings}); ok || len(findings) == 0 {
			t.Errorf("%s is read as %s", c.text, brief(v))
			continue
		}
		f := findings[0]
		got := ""
		if f.Caret > 0 {
			got = c.text[f.At.Start.Byte+f.Caret:]
		}
		if got != c.from {
			t.Errorf("%s is marked from %q, want %q", c.text, got, c.from)
		}
	}
}

func TestToLength(t *testing.T) {
	for _, c := range []struct {
		text string
		unit length.Unit
		want length.Length
		slug string
	}{
		{"3", length.Inches, 3 * length.Inch, ""}, {"3", length.Feet, 3 * length.Foot, ""}, {"2.5", length.Metres, 2500 * length.Millimetre, ""},
		{`"3"`, length.Inches, 3 * length.Inch, ""}, {`"3mm"`, length.Inches, 3 * length.Millimetre, ""}, {"-3", length.Millimetres, -3 * length.Millimetre, ""},
		{"given.pure5", length.Inches, 5 * length.Inch, ""}, {"given.mm5", length.Inches, 5 * length.Millimetre, ""}, {"given.three_in / 7 * 7", length.Inches, 3 * length.Inch, ""},
		{"0.0000005", length.Millimetres, 1, ""}, {"-0.0000005", length.Millimetres, -1, ""}, {"0.00000049", length.Millimetres, 0, ""}, // halves away from zero
		{"1000", length.Metres, length.Max, ""}, {"1000.0001", length.Metres, 0, "too-large"}, {"1e20", length.Metres, 0, "too-large"},
		{"given.mm5 + given.in5", length.Inches, 0, "unit-unclear"}, {"rest", length.Inches, 0, "wrong-type"}, {"[1]", length.Inches, 0, "wrong-type"},
		{"given.nothing", length.Inches, 0, "unknown-name"},
	} {
		v, findings := evaluate(t, c.text, c.unit)
		got, ok := ToLength(v, c.unit, &Context{Findings: &findings})
		slug := ""
		if len(findings) > 0 {
			slug = findings[0].Slug
		}
		if len(findings) > 1 || ok != (c.slug == "") || ok && got != c.want || slug != c.slug {
			t.Errorf("%s in %v: %d nm, %v, %v; want %d nm, %q", c.text, c.unit, got, ok, findings, c.want, c.slug)
		}
	}
}

// TestOperandsAreLeftAlone evaluates one expression twice: numbers are shared
// between uses, and must not be worked on in place.
func TestOperandsAreLeftAlone(t *testing.T) {
	shared := OfLength(3 * length.Inch)
	before := new(big.Float).Copy(shared.Num)
	var findings finding.List
	context := &Context{Findings: &findings, Resolve: func([]string, source.Range) Value { return shared }}
	for _, text := range []string{"a + a", "a - 1", "-a", "abs(a)", "a * 2", "2 * a", "a / 2", "a / a", "min(a, a)", `round(a, "1in")`, "a > a", "1 + a"} {
		syntax, _ := hclsyntax.ParseExpression([]byte(text), "bar.hcl", hcl.InitialPos)
		Expr{Syntax: syntax, Unit: length.Inches}.Eval(context)
		if shared.Num.Cmp(before) != 0 {
			t.Fatalf("%s changed its operand", text)
		}
	}
	if diff := cmp.Diff(0, len(findings)); diff != "" {
		t.Error(findings)
	}
}
