package solve

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"barwright/lang"
	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/schema"
	"barwright/lang/source"
)

// values evaluates attributes on demand, along the graph of uses, each once.
type values struct {
	src      *lang.Source
	findings *finding.List
	blocks   map[string]*lang.Block // by key; lookup only
	inputs   map[string]lang.Given  // by name; lookup only
	cells    map[cellKey]*cell      // lookup only
	open     []*cell                // being evaluated, outermost first
	solvable map[string][]solvedValue
	kinds    []string // that an expression may name
	// neighbour is the box to the left of a box in its run; lookup only.
	neighbour map[*lang.Block]*lang.Block
	// sharers are the boxes of a run that take the rest, with their order;
	// lookup only.
	sharers map[*lang.Block]map[*lang.Block]int
	marks   length.Length
}

// cellKey names one value of a block. Solved values are kept apart from
// written ones by the flag.
type cellKey struct {
	block  *lang.Block
	name   string
	solved bool
}

// String is the name that a description would use for the value.
func (k cellKey) String() string {
	name := k.name
	if name == fillable {
		name = "length"
	}
	return k.block.Key() + "." + name
}

type cell struct {
	name  string // "cabinet.urn.width"
	at    source.Range
	done  bool
	value expr.Value
	uses  []use // names that its expression asks for, in order
}

// use is a dotted name in an expression, and where it stands.
type use struct {
	name string
	at   source.Range
}

func newValues(src *lang.Source, findings *finding.List) *values {
	v := &values{
		src: src, findings: findings, solvable: solvedValues(), kinds: nameable(),
		blocks: map[string]*lang.Block{}, inputs: map[string]lang.Given{}, cells: map[cellKey]*cell{}, neighbour: map[*lang.Block]*lang.Block{}, sharers: map[*lang.Block]map[*lang.Block]int{},
	}
	for _, run := range src.Top("run") {
		var left *lang.Block
		for _, b := range boxes(run) {
			v.neighbour[b], left = left, b
		}
	}
	for _, b := range src.Top("given") {
		for _, g := range b.Givens() {
			v.inputs[g.Name] = g
		}
	}
	src.Each(func(b *lang.Block) {
		if b.Name == "" && b.Parent != nil {
			return // cannot be named by a reference
		}
		if _, taken := v.blocks[b.Key()]; !taken {
			v.blocks[b.Key()] = b
		}
	})
	return v
}

// exact prints a length with what a tape does not show of it.
func (v *values) exact(l length.Length) string { return length.Show(l, v.src.Unit, v.marks) }

// show prints a length in a sentence, as the build's people read it.
func (v *values) show(l length.Length) string { return length.Plain(l, v.src.Unit, v.marks) }

// memo returns a cell's value, working it out once. A cell that is needed for
// itself is a circle.
func (v *values) memo(key cellKey, at source.Range, work func() expr.Value) expr.Value {
	c := v.cells[key]
	switch {
	case c == nil:
		c = &cell{name: key.String(), at: at}
		v.cells[key] = c
	case c.done:
		return c.value
	default:
		v.circle(c)
		return expr.Value{}
	}
	v.open = append(v.open, c)
	c.value = work()
	c.done = true
	v.open = v.open[:len(v.open)-1]
	return c.value
}

// mostSteps is how many steps of a circle are told one by one.
const mostSteps = 12

// circle reports the way round from a cell back to itself.
func (v *values) circle(c *cell) {
	from := slices.Index(v.open, c)
	way := v.open[from:]
	steps := distinctSteps(way)
	first := steps[0].name
	longer := len(steps) - mostSteps
	steps = steps[:min(len(steps), mostSteps)]
	names := make([]string, 0, len(steps)+2)
	for _, step := range steps {
		names = append(names, step.name)
	}
	if longer > 0 {
		names = append(names, fmt.Sprintf("… %d more", longer))
	}
	f := v.findings.Errorf("circle", steps[0].at, "give one of them a value of its own",
		"This needs itself: %s.", strings.Join(append(names, first), " → "))
	for _, step := range steps[1:] {
		f.Also(step.at, "%s is worked out here", step.name)
	}
	// The others on the way would only say the same again.
	for _, step := range way {
		step.done = true
	}
}

// distinctSteps leaves one step of each value that is written as well as
// solved: the written one, which comes after the solved one that asks for it.
func distinctSteps(way []*cell) []*cell {
	var out []*cell
	for _, step := range way {
		if n := len(out); n > 0 && out[n-1].name == step.name {
			out[n-1] = step
			continue
		}
		out = append(out, step)
	}
	if last := len(out) - 1; last > 0 && out[last].name == out[0].name {
		out = out[:last]
	}
	return out
}

// value returns an attribute as written, or its default, in the form that its
// type demands. Kind Invalid means that a finding has been reported; an
// attribute that is left out and has no default is Invalid too, see has.
func (v *values) value(b *lang.Block, name string) expr.Value {
	attr := b.Attr(name)
	at := b.Head
	if attr != nil {
		at = attr.Expr.At
	}
	return v.memo(cellKey{b, name, false}, at, func() expr.Value {
		if attr == nil {
			return v.defaultOf(b.Spec.Attr(name), at)
		}
		raw := attr.Expr.Eval(v.context())
		if attr.Spec == nil || raw.Kind == expr.Invalid {
			return raw
		}
		before := len(*v.findings)
		value := v.coerce(attr.Spec, raw, b.Unit)
		for i := range (*v.findings)[before:] {
			if f := &(*v.findings)[before+i]; !raw.From.IsZero() && !f.Shows(raw.From) {
				f.Also(raw.From, "the value comes from here")
			}
		}
		return value
	})
}

// written is what stands at a place of the text; empty for a value that came by
// the command line.
func (v *values) written(at source.Range) string {
	text := v.src.Files.Text(at.File)
	if at.End.Byte > len(text) {
		return ""
	}
	return string(text[at.Start.Byte:at.End.Byte])
}

func (v *values) context() *expr.Context {
	return &expr.Context{Resolve: v.resolve, Findings: v.findings}
}

// has reports whether an attribute is written, or has a default.
func (v *values) has(b *lang.Block, name string) bool {
	return b.Attr(name) != nil || b.Spec.Attr(name).Default != ""
}

// defaultOf reads a default of the schema, as if it stood in the text.
func (v *values) defaultOf(spec *schema.Attr, at source.Range) expr.Value {
	if spec.Type == schema.Object {
		return v.coerce(spec, expr.Value{Kind: expr.Object, At: at}, v.src.Unit)
	}
	if spec.Default == "" {
		return expr.Value{}
	}
	raw := expr.Value{Kind: expr.Text, Text: spec.Default, At: at}
	if spec.Metric != "" && !v.src.Unit.Imperial() {
		raw.Text = spec.Metric
	}
	switch spec.Type {
	case schema.Count, schema.Whole, schema.Number, schema.Angle:
		n, _, err := big.ParseFloat(spec.Default, 10, 512, big.ToNearestEven)
		if err != nil {
			panic(fmt.Sprintf("default of %s: %v", spec.Name, err))
		}
		raw = expr.Value{Kind: expr.Number, Num: n, At: at}
	case schema.Flag:
		raw = expr.OfFlag(spec.Default == "true")
	case schema.Lengths:
		list := expr.Value{Kind: expr.List, At: at}
		for item := range strings.SplitSeq(raw.Text, ", ") {
			list.Items = append(list.Items, expr.Value{Kind: expr.Text, Text: item, At: at})
		}
		raw = list
	}
	return v.coerce(spec, raw, v.src.Unit)
}

// all evaluates everything that is written, so that each mistake is found even
// where nothing uses it.
func (v *values) all() {
	v.src.Each(func(b *lang.Block) {
		for _, a := range b.Attrs {
			v.value(b, a.Name)
		}
		for _, name := range v.solvedNames(b.Spec.Kind) {
			v.solved(b, name)
		}
		if b.Spec.Kind == "given" {
			for _, g := range b.Givens() {
				if g.Value != nil {
					v.givenValue(g)
				}
			}
		}
	})
}
