package values

import (
	"slices"
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/schema"
	"barwright/lang/source"
)

// Explain lists every block of a description and every value that its blocks
// have, in the order of the text: as written and as solved, and what each
// follows from. Values that are in error are listed as such; findings tell why.
func Explain(src *lang.Source) []model.Answer {
	v := New(src, &finding.List{})
	v.All()
	return v.Explain()
}

// Explain does so for values that have been worked out.
func (v *Values) Explain() []model.Answer {
	e := explainer{Values: v}
	v.Source.Each(func(b *lang.Block) { e.read = e.read || b.Spec.Kind == "reading" && b.Parent.Spec.Kind == "floor" })
	v.Source.Each(e.block)
	return e.out
}

// Recorded are the answers as a model keeps them: those that say something.
func Recorded(answers []model.Answer) []model.Value {
	var out []model.Value
	within := map[string][]string{} // the block that a block stands in; lookup only
	for _, a := range answers {
		if a.Kind == model.NoAnswer || a.Kind == model.InError {
			continue
		}
		for _, inner := range a.Inside {
			within[inner] = []string{a.Name}
		}
		v := model.Value{Name: a.Name, Kind: a.Kind, Text: a.Text, Written: a.Written, Origin: a.Origin, From: a.From}
		if a.Kind == model.AsBlock {
			v.From = within[a.Name]
		}
		out = append(out, v)
	}
	return out
}

type explainer struct {
	*Values
	read bool // the floor was
	out  []model.Answer
}

// placeName is how a block is asked for: as references name it, and below its
// parent where they cannot.
func placeName(b *lang.Block) string {
	switch {
	case b.Spec.Kind == "build":
		return "build"
	case b.Name != "" || b.Parent == nil:
		return b.Key()
	}
	name := placeName(b.Parent) + "." + b.Spec.Kind
	if !b.Spec.Once {
		name += "." + strconv.Itoa(1+slices.Index(b.Parent.Inner(b.Spec.Kind), b))
	}
	return name
}

func (e *explainer) block(b *lang.Block) {
	switch b.Spec.Kind {
	case "include":
		return
	case "given":
		for _, g := range b.Givens() {
			if g.Value != nil {
				e.input(g)
			}
		}
		return
	}
	name := placeName(b)
	head := model.Answer{Name: name, Kind: model.AsBlock, Means: b.Spec.Doc, At: b.Head}
	if b.Parent != nil {
		head.Says = "in " + placeName(b.Parent)
	}
	for _, inner := range b.Blocks {
		head.Inside = append(head.Inside, placeName(inner))
	}
	e.out = append(e.out, head)
	for i := range e.solvable[b.Spec.Kind] {
		e.solvedValue(name, b, &e.solvable[b.Spec.Kind][i])
	}
	for i := range b.Spec.Attrs {
		spec := &b.Spec.Attrs[i]
		if !slices.Contains(e.solvedNames(b.Spec.Kind), spec.Name) {
			e.attr(name, b, spec)
		}
	}
}

// input adds a given and, where it has a block of its own, what that says of
// it.
func (e *explainer) input(g lang.Given) {
	name := "given." + g.Name
	a := e.answer(name, "", e.givenValue(g))
	e.tell(&a, g.Value, g.Value.Expr.At, e.cells[cellKey{g.Block, g.Value.Name, false}])
	if g.Value.Overridden {
		a.Origin = model.FromCommand
		a.Says = "in the place of " + g.NameAt.Place()
	}
	if g.Block.Name == "" {
		e.out = append(e.out, a)
		return
	}
	if note := e.Value(g.Block, "note"); note.Kind == expr.Text {
		a.Means = note.Text
	}
	e.out = append(e.out, a)
	for i := range g.Block.Spec.Attrs {
		if spec := &g.Block.Spec.Attrs[i]; spec.Name != "value" && g.Block.Attr(spec.Name) != nil {
			e.attr(name, g.Block, spec)
		}
	}
}

// solvedValue adds a value that follows from the build, unless the text states
// it; then it follows from what stands there.
func (e *explainer) solvedValue(block string, b *lang.Block, s *solvedValue) {
	attr := b.Attr(s.name)
	if attr != nil && e.Value(b, s.name).Kind != expr.Rest {
		e.attr(block, b, b.Spec.Attr(s.name))
		return
	}
	means := s.means
	if e.read {
		means = strings.Replace(means, "above the floor", "above the datum", 1)
	}
	a := e.answer(block+"."+s.name, means, e.solved(b, s.name))
	a.Origin = model.FromSolving
	if attr != nil {
		a.Origin, a.Written, a.At = model.FromText, e.Written(attr.Expr.At), attr.Expr.At
	}
	if a.Kind != model.InError {
		why := s.why(e.Values, b)
		a.Says, a.From = why.says, distinct(why.from)
	}
	e.out = append(e.out, a)
}

// attr adds an attribute and, where it is an object, its fields.
func (e *explainer) attr(block string, b *lang.Block, spec *schema.Attr) {
	attr := b.Attr(spec.Name)
	a := model.Answer{Name: block + "." + spec.Name, Means: spec.Doc}
	if attr == nil && !hasDefault(spec) {
		e.out = append(e.out, a)
		return
	}
	x := e.Value(b, spec.Name)
	a = e.answer(a.Name, a.Means, x)
	if spec.Type == schema.Angle && a.Text != "" {
		a.Text += " degrees"
	}
	cell := e.cells[cellKey{b, spec.Name, false}]
	if attr != nil {
		e.tell(&a, attr, attr.Expr.At, cell)
	} else {
		a.Origin, a.Written = model.FromDefault, e.defaultText(spec)
	}
	e.out = append(e.out, a)
	for i := range min(len(x.Items), len(spec.Fields)) {
		e.field(a.Name, &spec.Fields[i], attr, x, x.Items[i], cell)
	}
}

// field adds a field of an object; one that is left out stands where its
// object does.
func (e *explainer) field(object string, spec *schema.Attr, attr *lang.Attr, of, x expr.Value, c *cell) {
	a := e.answer(object+"."+spec.Name, spec.Doc, x)
	switch {
	case x.Kind == expr.Invalid:
		a.Kind = model.NoAnswer
	case attr == nil || x.At.IsZero() || x.At == of.At:
		a.Origin, a.Written = model.FromDefault, e.defaultText(spec)
	default:
		e.tell(&a, attr, x.At, c)
	}
	e.out = append(e.out, a)
}

// hasDefault reports whether an attribute that is left out has a value.
func hasDefault(spec *schema.Attr) bool {
	if spec.Type != schema.Object {
		return spec.Default != ""
	}
	return !slices.ContainsFunc(spec.Fields, func(f schema.Attr) bool { return f.Required })
}

func (e *explainer) defaultText(spec *schema.Attr) string {
	if spec.Metric != "" && !e.Source.Unit.Imperial() {
		return spec.Metric
	}
	return spec.Default
}

// tell says where a value stands and what names are used there. A field of
// an object that has come by a name stands elsewhere than its attribute.
func (e *explainer) tell(a *model.Answer, attr *lang.Attr, at source.Range, c *cell) {
	a.Written, a.At = e.Written(at), at
	elsewhere := !encloses(attr.Expr.At, at)
	for _, u := range c.uses {
		if isBlock := e.blocks[u.name] != nil && !strings.HasPrefix(u.name, "given."); !isBlock && (elsewhere || encloses(at, u.at)) {
			a.From = append(a.From, u.name)
		}
	}
	a.From = distinct(a.From)
}

func encloses(outer, inner source.Range) bool {
	return outer.File == inner.File && outer.Start.Byte <= inner.Start.Byte && inner.End.Byte <= outer.End.Byte
}

// mostFrom is how many names an answer lists that it follows from: more than
// any bar needs, and few enough that hostile text costs no memory.
const mostFrom = 50

func distinct(names []string) []string {
	var out []string
	seen := map[string]bool{} // lookup only
	for _, name := range names {
		if !seen[name] && len(out) < mostFrom {
			seen[name] = true
			out = append(out, name)
		}
	}
	return out
}

// answer puts a value into words.
func (e *explainer) answer(name, means string, x expr.Value) model.Answer {
	a := model.Answer{Name: name, Means: means, Kind: answerKinds[x.Kind], Text: e.words(x)}
	switch x.Kind {
	case expr.Length:
		a.Lengths = []model.Length{LengthOf(x)}
	case expr.List:
		for _, item := range x.Items {
			if item.Kind == expr.Length {
				a.Lengths = append(a.Lengths, LengthOf(item))
			}
		}
	}
	return a
}

var answerKinds = [...]model.AnswerKind{
	expr.Invalid: model.InError, expr.Number: model.AsNumber, expr.Length: model.AsLength, expr.Text: model.AsText,
	expr.Flag: model.AsFlag, expr.List: model.AsList, expr.Object: model.AsObject, expr.Ref: model.AsReference, expr.Rest: model.AsRest,
}

// words prints a value as a description would write it, lengths as they are
// read. Fields that are left out do not appear.
func (e *explainer) words(x expr.Value) string {
	switch x.Kind {
	case expr.Text:
		return strconv.Quote(x.Text)
	case expr.Rest:
		return "rest"
	case expr.List:
		items := make([]string, len(x.Items))
		for i, item := range x.Items {
			items[i] = e.words(item)
		}
		return "[" + strings.Join(items, ", ") + "]"
	case expr.Object:
		var fields []string
		for i, item := range x.Items {
			if item.Kind != expr.Invalid {
				fields = append(fields, x.Keys[i]+" = "+e.words(item))
			}
		}
		return "{ " + strings.Join(fields, ", ") + " }"
	}
	return e.plain(x)
}
