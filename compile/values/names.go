package values

import (
	"fmt"
	"slices"
	"strings"

	"barwright/lang"
	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/schema"
	"barwright/lang/source"
)

// resolve finds what a dotted name in an expression stands for: given.NAME, a
// block by kind and name, or a value of that block, as written or as solved.
func (v *Values) resolve(names []string, at source.Range) expr.Value {
	unknown := func(mend, format string, args ...any) expr.Value {
		v.Findings.Errorf("unknown-name", at, mend, format, args...)
		return expr.Value{}
	}
	if n := len(v.open); n > 0 {
		v.open[n-1].uses = append(v.open[n-1].uses, use{strings.Join(names, "."), at})
	}
	kinds := v.kinds
	switch {
	case !slices.Contains(kinds, names[0]):
		return unknown(v.wordMeant(names, kinds), "There is nothing called %q.", strings.Join(names, "."))
	case names[0] == "given":
		return v.given(names, at)
	}
	key, rest := names[0], names[1:]
	if v.blocks[key] == nil {
		if len(names) == 1 {
			return unknown(finding.Suggest("", v.keys(key)), "This names a kind of block, but no block of it.")
		}
		key, rest = names[0]+"."+names[1], names[2:]
	}
	b := v.blocks[key]
	if b == nil {
		if len(*v.Findings) >= mostSuggested {
			return unknown("", "There is no %s %q.", names[0], names[1])
		}
		known := v.named(names[0])
		if len(known) == 0 {
			return unknown(fmt.Sprintf("write a block %s %q { … }, or include a file that has it", names[0], names[1]),
				"There is no %s %q, and no other %[1]s.", names[0], names[1])
		}
		return unknown(finding.Suggest(names[1], known), "There is no %s %q.", names[0], names[1])
	}
	if len(rest) == 0 {
		return expr.OfRef(key)
	}
	return v.property(b, rest, at)
}

// wordMeant is the mend for a name that is no kind of block.
func (v *Values) wordMeant(names, kinds []string) string {
	if len(names) > 1 {
		return finding.Suggest(names[0], kinds)
	}
	word := names[0]
	if _, ok := v.inputs[word]; ok {
		return "write given." + word
	}
	words := []string{"rest", "true", "false"}
	for _, u := range []length.Unit{length.Millimetres, length.Centimetres, length.Metres, length.Inches, length.Feet} {
		// A unit in full reads as one of a tape.
		if l, err := length.Parse("1 "+word, length.Millimetres); err == nil && l == u.Size() {
			return "write " + u.String()
		}
		words = append(words, u.String())
	}
	if near := finding.Nearest(word, words); near != "" {
		return fmt.Sprintf("did you mean %s?", near)
	}
	return fmt.Sprintf("put it in quotes if it is a word: %q", word)
}

// mostSuggested is how many findings still get a nearest name: looking for it
// costs time, and nobody reads so many.
const mostSuggested = 100

// suggest is the mend for an unknown name.
func (v *Values) suggest(name string, candidates func() []string) string {
	if len(*v.Findings) >= mostSuggested {
		return ""
	}
	return finding.Suggest(name, candidates())
}

// property looks up a value of a block, solved before written.
func (v *Values) property(b *lang.Block, names []string, at source.Range) expr.Value {
	var value expr.Value
	known := slices.Contains(v.solvedNames(b.Spec.Kind), names[0])
	attr := b.Spec.Attr(names[0])
	switch {
	case known:
		value = v.solved(b, names[0])
	case attr == nil:
		v.Findings.Errorf("unknown-name", at, finding.Suggest(names[0], v.valueNames(b.Spec)),
			"%s has no value %q.", finding.Capital(b.Describe()), names[0])
		return expr.Value{}
	case b.Attr(names[0]) == nil && attr.Default == "" && attr.Type != schema.Object:
		v.Findings.Errorf("unknown-name", at, "", "%s does not say its %s.", finding.Capital(b.Describe()), names[0]).Also(b.Head, "it stands here")
		return expr.Value{}
	default:
		value = v.Value(b, names[0])
	}
	for _, field := range names[1:] {
		if value.Kind == expr.Invalid {
			return value
		}
		i := slices.Index(value.Keys, field)
		if value.Kind != expr.Object || i < 0 {
			v.Findings.Errorf("unknown-name", at, finding.Suggest(field, value.Keys), "%s of %s has no field %q.", names[0], b.Describe(), field)
			return expr.Value{}
		}
		if value = value.Items[i]; value.Kind == expr.Invalid {
			v.Findings.Errorf("unknown-name", at, "", "%s of %s does not say its %s.", names[0], b.Describe(), field)
		}
	}
	return value
}

// nameable lists the kinds of blocks that an expression may name.
func nameable() []string {
	var out []string
	var walk func([]*schema.Block)
	walk = func(blocks []*schema.Block) {
		for _, b := range blocks {
			out = append(out, b.Kind)
			walk(b.Blocks)
		}
	}
	walk(schema.Root())
	return out
}

// valueNames lists the values that a block of a kind may have.
func (v *Values) valueNames(spec *schema.Block) []string {
	out := v.solvedNames(spec.Kind)
	for _, name := range schema.Names(spec.Attrs) {
		if !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}

// keys lists the blocks of some kinds as references name them.
func (v *Values) keys(kinds ...string) []string {
	var out []string
	for _, kind := range kinds {
		for _, name := range v.named(kind) {
			out = append(out, kind+"."+name)
		}
	}
	return out
}

// named lists the names of a kind, in the order of the text.
func (v *Values) named(kind string) []string {
	var out []string
	v.Source.Each(func(b *lang.Block) {
		if b.Spec.Kind == kind && b.Name != "" {
			out = append(out, b.Name)
		}
	})
	return out
}
