package solve

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

func (v *values) length(b *lang.Block, name string) length.Length {
	return lengthOf(v.value(b, name))
}

func lengthOf(x expr.Value) length.Length {
	if x.Kind != expr.Length {
		return 0
	}
	l, _ := length.FromFloat(x.Num)
	return l
}

func (v *values) lengths(b *lang.Block, name string) []length.Length {
	x := v.value(b, name)
	out := make([]length.Length, len(x.Items))
	for i, item := range x.Items {
		out[i] = lengthOf(item)
	}
	return out
}

func (v *values) number(b *lang.Block, name string) float64 { return numberOf(v.value(b, name)) }

func numberOf(x expr.Value) float64 {
	if x.Num == nil {
		return 0
	}
	n, _ := x.Num.Float64()
	return n
}

func (v *values) numbers(b *lang.Block, name string) []float64 {
	x := v.value(b, name)
	out := make([]float64, len(x.Items))
	for i, item := range x.Items {
		out[i] = numberOf(item)
	}
	return out
}

func (v *values) count(b *lang.Block, name string) int { return int(v.number(b, name)) }

func (v *values) text(b *lang.Block, name string) string { return v.value(b, name).Text }

func (v *values) flag(b *lang.Block, name string) bool { return v.value(b, name).Flag }

// ref returns the block that an attribute names, nil where it is left out.
func (v *values) ref(b *lang.Block, name string) *lang.Block {
	return v.blocks[v.value(b, name).Text]
}

// field returns a field of an object attribute.
func (v *values) field(b *lang.Block, name, field string) expr.Value {
	x := v.value(b, name)
	i := slices.Index(x.Keys, field)
	if i < 0 {
		return expr.Value{}
	}
	return x.Items[i]
}

func (v *values) fieldLength(b *lang.Block, name, field string) length.Length {
	return lengthOf(v.field(b, name, field))
}

func (v *values) fieldRef(b *lang.Block, name, field string) *lang.Block {
	return v.blocks[v.field(b, name, field).Text]
}

// schemaLength is the default of an attribute of a block at the top, for a
// description that lacks the block.
func (v *values) schemaLength(kind, name string) length.Length {
	return lengthOf(v.defaultOf(schema.Kind(schema.Root(), kind).Attr(name), source.Range{}))
}
