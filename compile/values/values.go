// Package values evaluates the values of a description on demand, each once,
// along the graph of their uses: attributes as they are written, brought to the
// form that the schema demands, and values that follow from the build, such as
// the width of a box that takes the rest. It reports each mistake once: what
// uses a value in error keeps silent. [Explain] tells what each follows from.
//
// Nothing is placed here: package solve asks for values once all are sound.
package values

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

// Values evaluates attributes on demand, along the graph of uses, each once.
type Values struct {
	Source   *lang.Source
	Findings *finding.List
	Marks    length.Length // that lengths are shown and marked out to

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

// New makes ready the values of a description; what they report goes to
// findings. The build block's marks are worked out at once: findings show
// lengths by them.
func New(src *lang.Source, findings *finding.List) *Values {
	v := &Values{
		Source: src, Findings: findings, solvable: solvedValues(), kinds: nameable(),
		blocks: map[string]*lang.Block{}, inputs: map[string]lang.Given{}, cells: map[cellKey]*cell{}, neighbour: map[*lang.Block]*lang.Block{}, sharers: map[*lang.Block]map[*lang.Block]int{},
	}
	for _, run := range src.Top("run") {
		var left *lang.Block
		for _, b := range Boxes(run) {
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
	v.Marks = v.SchemaLength("build", "marks")
	for _, b := range src.Top("build") {
		if marks := v.Value(b, "marks"); marks.Kind == expr.Length {
			v.Marks = LengthOf(marks)
		}
	}
	return v
}

// Block finds a block by its key, "cabinet.urn"; nil where there is none.
func (v *Values) Block(key string) *lang.Block { return v.blocks[key] }

// Exact prints a length with what a tape does not show of it.
func (v *Values) Exact(l length.Length) string { return length.Show(l, v.Source.Unit, v.Marks) }

// Show prints a length in a sentence, as the build's people read it.
func (v *Values) Show(l length.Length) string { return length.Plain(l, v.Source.Unit, v.Marks) }

// memo returns a cell's value, working it out once. A cell that is needed for
// itself is a circle.
func (v *Values) memo(key cellKey, at source.Range, work func() expr.Value) expr.Value {
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
func (v *Values) circle(c *cell) {
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
	f := v.Findings.Errorf("circle", steps[0].at, "give one of them a value of its own",
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

// Value returns an attribute as written, or its default, in the form that its
// type demands. Kind Invalid means that a finding has been reported; an
// attribute that is left out and has no default is Invalid too, see Has.
func (v *Values) Value(b *lang.Block, name string) expr.Value {
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
		before := len(*v.Findings)
		value := v.coerce(attr.Spec, raw, b.Unit)
		for i := range (*v.Findings)[before:] {
			if f := &(*v.Findings)[before+i]; !raw.From.IsZero() && !f.Shows(raw.From) {
				f.Also(raw.From, "the value comes from here")
			}
		}
		return value
	})
}

// Written is what stands at a place of the text; empty for a value that came by
// the command line.
func (v *Values) Written(at source.Range) string {
	text := v.Source.Files.Text(at.File)
	if at.End.Byte > len(text) {
		return ""
	}
	return string(text[at.Start.Byte:at.End.Byte])
}

func (v *Values) context() *expr.Context {
	return &expr.Context{Resolve: v.resolve, Findings: v.Findings}
}

// Has reports whether an attribute is written, or has a default.
func (v *Values) Has(b *lang.Block, name string) bool {
	return b.Attr(name) != nil || b.Spec.Attr(name).Default != ""
}

// defaultOf reads a default of the schema, as if it stood in the text.
func (v *Values) defaultOf(spec *schema.Attr, at source.Range) expr.Value {
	if spec.Type == schema.Object {
		return v.coerce(spec, expr.Value{Kind: expr.Object, At: at}, v.Source.Unit)
	}
	if spec.Default == "" {
		return expr.Value{}
	}
	raw := expr.Value{Kind: expr.Text, Text: spec.Default, At: at}
	if spec.Metric != "" && !v.Source.Unit.Imperial() {
		raw.Text = spec.Metric
	}
	switch spec.Type {
	case schema.Count, schema.Whole, schema.Number, schema.Angle:
		n, _, err := big.ParseFloat(raw.Text, 10, 512, big.ToNearestEven)
		if err != nil {
			panic(fmt.Sprintf("default of %s: %v", spec.Name, err))
		}
		raw = expr.Value{Kind: expr.Number, Num: n, At: at}
	case schema.Flag:
		raw = expr.OfFlag(raw.Text == "true")
	case schema.Lengths:
		list := expr.Value{Kind: expr.List, At: at}
		for item := range strings.SplitSeq(raw.Text, ", ") {
			list.Items = append(list.Items, expr.Value{Kind: expr.Text, Text: item, At: at})
		}
		raw = list
	}
	return v.coerce(spec, raw, v.Source.Unit)
}

// All evaluates everything that is written, so that each mistake is found even
// where nothing uses it.
func (v *Values) All() {
	v.Source.Each(func(b *lang.Block) {
		for _, a := range b.Attrs {
			v.Value(b, a.Name)
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
