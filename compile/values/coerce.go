package values

import (
	"math/big"
	"slices"
	"strings"

	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/schema"
	"barwright/lang/source"
)

// coerce brings a value to the form that an attribute's type demands, and
// checks its range. Lengths come out whole nanometres.
func (v *Values) coerce(spec *schema.Attr, raw expr.Value, unit length.Unit) expr.Value {
	switch spec.Type {
	case schema.Text:
		return v.demand(spec, raw, expr.Text)
	case schema.Choice:
		return v.toChoice(spec, raw)
	case schema.Flag:
		return v.demand(spec, raw, expr.Flag)
	case schema.Count, schema.Whole, schema.Number, schema.Angle:
		return v.toNumber(spec, raw)
	case schema.Width:
		if raw.Kind == expr.Rest {
			return raw
		}
		return v.toLength(spec, raw, unit)
	case schema.Length, schema.Reach, schema.Place:
		return v.toLength(spec, raw, unit)
	case schema.Series:
		if raw.Kind == expr.Object {
			return v.toObject(spec, raw, unit)
		}
		return v.toList(spec, raw, unit)
	case schema.Lengths, schema.Widths, schema.Places, schema.Pair, schema.SheetSize, schema.Spot, schema.Numbers, schema.RefList:
		return v.toList(spec, raw, unit)
	case schema.Ref:
		return v.toRef(spec, raw)
	case schema.Object:
		return v.toObject(spec, raw, unit)
	case schema.Any:
		return raw
	case schema.AnyList:
		return v.demand(spec, raw, expr.List)
	}
	panic("type of " + spec.Name)
}

func (v *Values) demand(spec *schema.Attr, raw expr.Value, kind expr.Kind) expr.Value {
	if raw.Kind != kind {
		v.Findings.Errorf("wrong-type", raw.At, spec.Example(), "%s is %s; it must be %s.", spec.Name, raw.Kind, wanted(spec))
		return expr.Value{}
	}
	return raw
}

// wanted says in words what an attribute must be.
func wanted(spec *schema.Attr) string {
	switch spec.Type {
	case schema.Text:
		return "a text in quotes"
	case schema.Choice:
		return "one of the words " + strings.Join(spec.Choices, ", ")
	case schema.Count, schema.Whole:
		return "a whole number"
	case schema.Angle:
		return "a number of degrees"
	case schema.Number:
		return "a number"
	case schema.Ref:
		return "the name of a " + spec.Refs[0]
	case schema.Object:
		return "in braces: { " + strings.Join(schema.Names(spec.Fields), ", ") + " }"
	case schema.Series:
		return "a list of places in brackets, or in braces: { first, spacing, last }"
	case schema.Lengths, schema.Widths, schema.Places, schema.Numbers, schema.RefList, schema.AnyList:
		return "a " + spec.Type.String() + " in brackets"
	}
	return spec.Type.String()
}

func (v *Values) toChoice(spec *schema.Attr, raw expr.Value) expr.Value {
	if raw = v.demand(spec, raw, expr.Text); raw.Kind == expr.Invalid {
		return raw
	}
	if !slices.Contains(spec.Choices, raw.Text) {
		v.Findings.Errorf("unknown-word", raw.At, finding.Suggest(raw.Text, spec.Choices), "%s cannot be %q.", spec.Name, raw.Text)
		return expr.Value{}
	}
	return raw
}

func (v *Values) toNumber(spec *schema.Attr, raw expr.Value) expr.Value {
	if raw = v.demand(spec, raw, expr.Number); raw.Kind == expr.Invalid {
		return raw
	}
	refuse := func(slug, need string) expr.Value {
		v.Findings.Errorf(slug, raw.At, "", "%s is %s; it must be %s.", spec.Name, raw.Num.Text('g', 10), need)
		return expr.Value{}
	}
	switch {
	case spec.Type == schema.Count && (!raw.Num.IsInt() || raw.Num.Sign() <= 0 || raw.Num.Cmp(big.NewFloat(1e6)) > 0):
		return refuse("not-a-count", "a whole number from 1 to 1000000")
	case spec.Type == schema.Whole && (!raw.Num.IsInt() || raw.Num.Sign() < 0 || raw.Num.Cmp(big.NewFloat(1e6)) > 0):
		return refuse("not-a-count", "a whole number from 0 to 1000000")
	case spec.Type == schema.Angle && (raw.Num.Sign() <= 0 || raw.Num.Cmp(big.NewFloat(360)) >= 0):
		return refuse("not-an-angle", "over 0 and under 360 degrees")
	case raw.Num.Sign() < 0:
		return refuse("negative", "0 or more")
	case raw.Num.Cmp(big.NewFloat(1e9)) > 0:
		return refuse("too-large", "1000000000 at most")
	}
	if spec.Type == schema.Count || spec.Type == schema.Whole {
		raw.Scale = expr.Pure
	}
	return raw
}

// anySign reports whether lengths of a type may be negative.
func anySign(t schema.Type) bool {
	switch t {
	case schema.Place, schema.Places, schema.Series, schema.Pair, schema.Spot:
		return true
	}
	return false
}

// toLength makes a length of a value. Only a Place may be negative, and only a
// Place or a Reach may be 0.
func (v *Values) toLength(spec *schema.Attr, raw expr.Value, unit length.Unit) expr.Value {
	l, ok := expr.ToLength(raw, unit, v.context())
	if !ok {
		return expr.Value{}
	}
	switch {
	case l < 0 && !anySign(spec.Type):
		v.Findings.Errorf("negative", raw.At, "", "%s is %s; it cannot be less than 0.", spec.Name, v.Show(l))
		return expr.Value{}
	case l == 0 && (spec.Type == schema.Length || spec.Type == schema.Width || spec.Type == schema.Lengths || spec.Type == schema.SheetSize):
		v.Findings.Errorf("zero", raw.At, "", "%s is 0; it must have a size.", spec.Name)
		return expr.Value{}
	}
	out := expr.OfLength(l)
	out.At = raw.At
	return out
}

// fixedLength is how many values a list of a type has.
var fixedLength = map[schema.Type]int{schema.Pair: 2, schema.SheetSize: 2, schema.Spot: 3} // lookup only

func (v *Values) toList(spec *schema.Attr, raw expr.Value, unit length.Unit) expr.Value {
	if raw = v.demand(spec, raw, expr.List); raw.Kind == expr.Invalid {
		return raw
	}
	if n := fixedLength[spec.Type]; n > 0 {
		if len(raw.Items) != n {
			v.Findings.Errorf("wrong-type", raw.At, "", "%s has %s; it must be %s.", spec.Name, finding.Counted(len(raw.Items), "value"), spec.Type)
			return expr.Value{}
		}
	}
	if len(raw.Items) == 0 {
		v.Findings.Errorf("empty-list", raw.At, "leave it out", "%s has no values.", spec.Name)
		return expr.Value{}
	}
	out := expr.Value{Kind: expr.List, At: raw.At, Items: make([]expr.Value, len(raw.Items))}
	for i, item := range raw.Items {
		switch spec.Type {
		case schema.Numbers:
			out.Items[i] = v.toNumber(&schema.Attr{Name: spec.Name, Type: schema.Number}, item)
		case schema.RefList:
			out.Items[i] = v.toRef(spec, item)
		case schema.Widths:
			out.Items[i] = v.coerce(&schema.Attr{Name: spec.Name, Type: schema.Width}, item, unit)
		default:
			out.Items[i] = v.toLength(spec, item, unit)
		}
		if out.Items[i].Kind == expr.Invalid {
			return expr.Value{}
		}
		if rising := spec.Type == schema.Lengths || spec.Type == schema.Places || spec.Type == schema.Series; rising && i > 0 &&
			out.Items[i].Num.Cmp(out.Items[i-1].Num) <= 0 {
			v.Findings.Errorf("not-rising", item.At, "", "%s must rise from value to value; this one does not.", spec.Name)
			return expr.Value{}
		}
	}
	return out
}

func (v *Values) toRef(spec *schema.Attr, raw expr.Value) expr.Value {
	if raw.Kind == expr.Text {
		v.Findings.Errorf("wrong-type", raw.At, "write it without quotes: "+v.refMeant(spec, raw.Text), "%s is a text; it must be %s.", spec.Name, wanted(spec))
		return expr.Value{}
	}
	if raw = v.demand(spec, raw, expr.Ref); raw.Kind == expr.Invalid {
		return raw
	}
	if kind := v.blocks[raw.Text].Spec.Kind; !slices.Contains(spec.Refs, kind) {
		v.Findings.Errorf("wrong-type", raw.At, finding.Suggest("", v.keys(spec.Refs...)), "%s names a %s; it must name a %s.", spec.Name, kind, spec.Refs[0])
		return expr.Value{}
	}
	return raw
}

// refMeant is how an attribute names what a text most likely meant.
func (v *Values) refMeant(spec *schema.Attr, text string) string {
	for _, key := range v.keys(spec.Refs...) {
		if key == text || strings.HasSuffix(key, "."+text) {
			return spec.Name + " = " + key
		}
	}
	return spec.Example()
}

// toObject checks the fields of an object; those left out take their defaults.
// Fields come out in the order of the schema; one that is left out and has no
// default is Invalid.
func (v *Values) toObject(spec *schema.Attr, raw expr.Value, unit length.Unit) expr.Value {
	if raw = v.demand(spec, raw, expr.Object); raw.Kind == expr.Invalid {
		return raw
	}
	ok := true
	for i, key := range raw.Keys {
		switch {
		case spec.Field(key) == nil:
			v.Findings.Errorf("unknown-attribute", raw.KeyAt[i], finding.Suggest(key, schema.Names(spec.Fields)), "%s has no field %q.", spec.Name, key)
			ok = false
		case slices.Index(raw.Keys, key) != i:
			v.Findings.Errorf("said-twice", raw.KeyAt[i], "leave one of them out", "%s has two fields %q.", spec.Name, key)
			ok = false
		}
	}
	out := expr.Value{Kind: expr.Object, At: raw.At, Keys: schema.Names(spec.Fields)}
	for i := range spec.Fields {
		field := &spec.Fields[i]
		at := slices.Index(raw.Keys, field.Name)
		switch {
		case at >= 0:
			out.Items = append(out.Items, v.coerce(field, raw.Items[at], unit))
			ok = ok && out.Items[i].Kind != expr.Invalid
		case field.Required:
			v.Findings.Errorf("attribute-missing", raw.At, field.Example(), "Something is missing: %s needs %s.", spec.Name, field.Name)
			ok = false
			fallthrough
		default:
			out.Items = append(out.Items, v.defaultOf(field, raw.At))
		}
	}
	if !ok || v.reversed(spec, out, raw.At) {
		return expr.Value{}
	}
	return out
}

// reversed refuses a range of limits whose two ends changed places.
func (v *Values) reversed(spec *schema.Attr, object expr.Value, at source.Range) bool {
	from, to := slices.Index(object.Keys, "from"), slices.Index(object.Keys, "to")
	if from < 0 || to < 0 || spec.Fields[from].Type != schema.Reach {
		return false
	}
	lo, hi := LengthOf(object.Items[from]), LengthOf(object.Items[to])
	if lo <= hi {
		return false
	}
	v.Findings.Errorf("not-rising", at, "", "%s goes from %s to %s; it must rise.", spec.Name, v.Show(lo), v.Show(hi))
	return true
}
