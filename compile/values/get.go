package values

import (
	"slices"

	"barwright/lang"
	"barwright/lang/expr"
	"barwright/lang/length"
	"barwright/lang/schema"
	"barwright/lang/source"
)

// The getters below return values that are known to be valid: they are called
// only once all values have been evaluated without an error. An attribute that
// is left out and has no default gives the zero value.

// Length returns a length of a block.
func (v *Values) Length(b *lang.Block, name string) length.Length {
	return LengthOf(v.Value(b, name))
}

// LengthOf returns a value as a length, 0 where it is none.
func LengthOf(x expr.Value) length.Length {
	if x.Kind != expr.Length {
		return 0
	}
	l, _ := length.FromFloat(x.Num)
	return l
}

// Lengths returns a list of lengths.
func (v *Values) Lengths(b *lang.Block, name string) []length.Length {
	x := v.Value(b, name)
	out := make([]length.Length, len(x.Items))
	for i, item := range x.Items {
		out[i] = LengthOf(item)
	}
	return out
}

// Number returns a number of a block.
func (v *Values) Number(b *lang.Block, name string) float64 { return NumberOf(v.Value(b, name)) }

// NumberOf returns a value as a number, 0 where it has none.
func NumberOf(x expr.Value) float64 {
	if x.Num == nil {
		return 0
	}
	n, _ := x.Num.Float64()
	return n
}

// Numbers returns a list of numbers.
func (v *Values) Numbers(b *lang.Block, name string) []float64 {
	x := v.Value(b, name)
	out := make([]float64, len(x.Items))
	for i, item := range x.Items {
		out[i] = NumberOf(item)
	}
	return out
}

// Count returns a whole number.
func (v *Values) Count(b *lang.Block, name string) int { return int(v.Number(b, name)) }

// Text returns a text or a word.
func (v *Values) Text(b *lang.Block, name string) string { return v.Value(b, name).Text }

// Flag returns a truth value.
func (v *Values) Flag(b *lang.Block, name string) bool { return v.Value(b, name).Flag }

// Ref returns the block that an attribute names, nil where it is left out.
func (v *Values) Ref(b *lang.Block, name string) *lang.Block {
	return v.blocks[v.Value(b, name).Text]
}

// Field returns a field of an object attribute.
func (v *Values) Field(b *lang.Block, name, field string) expr.Value {
	x := v.Value(b, name)
	i := slices.Index(x.Keys, field)
	if i < 0 {
		return expr.Value{}
	}
	return x.Items[i]
}

// FieldLength returns a length of an object attribute.
func (v *Values) FieldLength(b *lang.Block, name, field string) length.Length {
	return LengthOf(v.Field(b, name, field))
}

// FieldNumber returns a number of an object attribute.
func (v *Values) FieldNumber(b *lang.Block, name, field string) float64 {
	return NumberOf(v.Field(b, name, field))
}

// FieldRef returns the block that a field names, nil where it is left out.
func (v *Values) FieldRef(b *lang.Block, name, field string) *lang.Block {
	return v.blocks[v.Field(b, name, field).Text]
}

// SchemaLength is the default of an attribute of a block at the top, for a
// description that lacks the block.
func (v *Values) SchemaLength(kind, name string) length.Length {
	return LengthOf(v.defaultOf(schema.Kind(schema.Root(), kind).Attr(name), source.Range{}))
}
