package values

import (
	"fmt"
	"strings"

	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// given finds the input that a name in an expression stands for.
func (v *Values) given(names []string, at source.Range) expr.Value {
	if g, ok := v.inputs[strings.Join(names[1:], ".")]; ok && g.Value != nil {
		value := v.givenValue(g)
		value.From = g.Value.Expr.At
		return value
	}
	name := strings.Join(names[1:], ".")
	mend := v.suggest(name, v.inputNames)
	first, rest, minus := strings.Cut(name, "-")
	switch _, known := v.inputs[first]; {
	case len(v.inputs) == 0:
		mend = "given { NAME = … }"
	case minus && known:
		mend = fmt.Sprintf("write spaces round the minus: given.%s - %s", first, rest)
	}
	v.Findings.Errorf("unknown-name", at, mend, "There is no %s.", strings.Join(names, "."))
	return expr.Value{}
}

func (v *Values) inputNames() []string {
	var out []string
	for _, b := range v.Source.Top("given") {
		for _, g := range b.Givens() {
			out = append(out, g.Name)
		}
	}
	return out
}

// givenValue is an input's value, Invalid where it is not what the input says
// that it may be.
func (v *Values) givenValue(g lang.Given) expr.Value {
	if g.Block.Name == "" {
		return v.Value(g.Block, g.Value.Name)
	}
	return v.memo(cellKey{g.Block, "checked value", true}, g.Value.Expr.At, func() expr.Value {
		value := v.Value(g.Block, "value")
		if value.Kind == expr.Invalid || !v.within(g, value) || !v.among(g, value) {
			return expr.Value{}
		}
		return value
	})
}

// within compares an input with its range.
func (v *Values) within(g lang.Given, value expr.Value) bool {
	for _, limit := range []struct {
		name  string
		wrong int
		text  string
	}{{"from", 1, "least"}, {"to", -1, "most"}} {
		if g.Block.Attr(limit.name) == nil {
			continue
		}
		bound := v.Value(g.Block, limit.name)
		if bound.Kind == expr.Invalid {
			return false
		}
		order, ok := expr.Compare(bound, value, g.Block.Unit, v.context())
		if !ok {
			return false
		}
		if order == limit.wrong {
			v.refuseGiven(g, value, fmt.Sprintf("the %s is %s", limit.text, v.plain(bound)),
				fmt.Sprintf("%s at %s", v.plain(bound), limit.text), bound.At)
			return false
		}
	}
	return true
}

// among looks for an input in the list of what it may be.
func (v *Values) among(g lang.Given, value expr.Value) bool {
	if g.Block.Attr("choices") == nil {
		return true
	}
	choices := v.Value(g.Block, "choices")
	if choices.Kind == expr.Invalid {
		return false
	}
	var words []string
	for _, c := range choices.Items {
		switch {
		case c.Kind == value.Kind && c.Kind != expr.Number && c.Kind != expr.Length:
			if c.Text == value.Text && c.Flag == value.Flag {
				return true
			}
		default:
			if order, ok := expr.Compare(c, value, g.Block.Unit, v.context()); !ok || order == 0 {
				return ok
			}
		}
		words = append(words, v.plain(c))
	}
	v.refuseGiven(g, value, "it can be one of "+strings.Join(words, ", "), finding.Nearest(v.plain(value), words), choices.At)
	return false
}

func (v *Values) refuseGiven(g lang.Given, value expr.Value, why, mend string, at source.Range) {
	text := fmt.Sprintf("given.%s is %s; %s.", g.Name, v.plain(value), why)
	if note := v.Value(g.Block, "note"); note.Kind == expr.Text {
		text += " " + note.Text
	}
	v.Findings.Errorf("given-refused", g.Value.Expr.At, mend, "%s", text).Also(at, "said here")
}

// Givens lists the inputs for the model.
func (v *Values) Givens() []model.Given {
	var out []model.Given
	for _, b := range v.Source.Top("given") {
		for _, g := range b.Givens() {
			out = append(out, model.Given{
				Name: g.Name, Value: v.plain(v.givenValue(g)), Overridden: g.Value.Overridden,
				Why: model.Why{Block: "given." + g.Name, At: g.Value.Expr.At},
			})
		}
	}
	return out
}

// plain prints a value in the words of a description.
func (v *Values) plain(x expr.Value) string {
	switch x.Kind {
	case expr.Number:
		return x.Num.Text('g', 12)
	case expr.Length:
		return v.Exact(LengthOf(x))
	case expr.Flag:
		return fmt.Sprint(x.Flag)
	}
	return x.Text
}

// NotMade tells of what is read and checked, but not built yet: whoever wrote
// it must not believe that it is.
func (v *Values) NotMade() {
	v.Source.Each(func(b *lang.Block) {
		if b.Spec.Later {
			v.Findings.Notef("not-made-yet", b.Head, "%s is read and checked, but nothing is made of it yet: the build is as if it were not there.", finding.Capital(b.Describe()))
		}
	})
}
