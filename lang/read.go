package lang

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/schema"
	"barwright/lang/source"
)

// Limits of one build's text. They are far beyond any bar, and keep hostile
// text from costing time or memory.
const (
	MaxFileBytes = 1 << 20
	MaxNesting   = 100
	MaxBlocks    = 100_000 // in all files of a build
	MaxAttrs     = 10_000  // in one block
)

// Read reads the files of one build, which take in no others. Findings are not
// sorted. The Source is whole only where none of them is an error.
func Read(files source.Files) (*Source, finding.List) { return ReadTree(files, nothingElse) }

// ReadTree reads the files of one build and those that they take in.
func ReadTree(files source.Files, open Open) (*Source, finding.List) {
	r := &reader{src: &Source{Files: slices.Clip(files), Unit: length.Millimetres}, open: open}
	var bodies []*hclsyntax.Body
	for i := 0; i < len(r.src.Files); i++ {
		f := r.src.Files[i]
		body := r.parse(f)
		if body == nil {
			r.src.Lost = true
			continue
		}
		r.includes(f.Name, body)
		bodies = append(bodies, body)
	}
	r.src.Unit = r.buildUnit(bodies)
	for _, body := range bodies {
		r.file(body)
	}
	r.checkNames()
	if len(r.findings) == 0 {
		r.checkBuild()
	}
	r.src.Faulty = r.findings.HasErrors()
	return r.src, r.findings
}

type reader struct {
	src      *Source
	blocks   int // read so far
	open     Open
	findings finding.List
}

// parse turns one file into syntax, nil where it cannot be read at all.
func (r *reader) parse(f source.File) *hclsyntax.Body {
	switch {
	case len(f.Text) > MaxFileBytes:
		r.findings.Errorf("file-too-large", source.Start(f.Name), "split the description into several files",
			"The file is larger than %d bytes, which is the most that is read.", MaxFileBytes)
		return nil
	case !utf8.Valid(f.Text):
		r.findings.Errorf("not-utf8", r.badByte(f), "save the file as UTF-8",
			"The byte here is not UTF-8 text.")
		return nil
	}
	tokens, _ := hclsyntax.LexConfig(f.Text, f.Name, hcl.InitialPos)
	if at, ok := tooDeep(tokens); ok {
		r.findings.Errorf("too-deep", expr.RangeOf(at), "", "This is nested too deep: more than %d brackets in one another, or more than %d signs in a row.", MaxNesting, maxRow)
		return nil
	}
	if at, ok := heredoc(tokens); ok {
		r.findings.Errorf("not-in-language", expr.RangeOf(at), "write the text in quotes", "A text after << is not part of the language.")
		return nil
	}
	parsed, diags := hclsyntax.ParseConfig(f.Text, f.Name, hcl.InitialPos)
	body := parsed.Body.(*hclsyntax.Body)
	if diags.HasErrors() {
		r.syntax(f, body, diags)
		return nil
	}
	return body
}

func (r *reader) badByte(f source.File) source.Range {
	at := source.Start(f.Name)
	for text := f.Text; ; {
		c, n := utf8.DecodeRune(text)
		if c == utf8.RuneError && n <= 1 {
			break
		}
		text = text[n:]
		at.Start.Byte += n
		at.Start.Column++
		if c == '\n' {
			at.Start.Line++
			at.Start.Column = 1
		}
	}
	at.End = at.Start
	at.End.Byte++
	at.End.Column++
	return at
}

// buildUnit finds the unit of bare numbers before anything is evaluated: the
// build block's, which is a plain word.
func (r *reader) buildUnit(bodies []*hclsyntax.Body) length.Unit {
	for _, body := range bodies {
		for _, b := range body.Blocks {
			if a := b.Body.Attributes["unit"]; b.Type == "build" && a != nil {
				return r.unitWord(a)
			}
		}
	}
	r.src.Lost = true
	return length.Millimetres
}

// unitWord reads a unit that stands as a plain text. While it is unknown
// nothing is said of lengths.
func (r *reader) unitWord(a *hclsyntax.Attribute) length.Unit {
	text, ok := a.Expr.(*hclsyntax.TemplateExpr)
	if !ok || !text.IsStringLiteral() {
		r.findings.Errorf("wrong-type", expr.RangeOf(a.Expr.Range()), `write it in quotes, as in unit = "in"`,
			"The unit is a plain word: it decides how every other number is read.")
		r.src.Lost = true
		return length.Millimetres
	}
	v, _ := text.Value(nil)
	word := v.AsString()
	u, ok := length.UnitNamed(word)
	if !ok {
		r.findings.Errorf("unknown-word", expr.RangeOf(a.Expr.Range()), unitMeant(word),
			"%q is not a unit that a build can have.", word)
		r.src.Lost = true
	}
	return u
}

// unitMeant is the mend for a unit that is written in full, or misspelt.
func unitMeant(word string) string {
	choices := schema.FileAttrs()[0].Choices
	for _, c := range choices {
		u, _ := length.UnitNamed(c)
		if l, err := length.Parse("1 "+word, length.Millimetres); err == nil && l == u.Size() {
			return fmt.Sprintf("write %q", c)
		}
	}
	return finding.Suggest(word, choices)
}

// file reads the top of one file.
func (r *reader) file(body *hclsyntax.Body) {
	unit := r.src.Unit
	for _, a := range sortedAttrs(body) {
		if a.Name == "unit" {
			unit = r.unitWord(a)
			continue
		}
		r.findings.Errorf("unknown-attribute", expr.RangeOf(a.NameRange), finding.Suggest(a.Name, schema.Kinds(schema.Root())),
			"At the top of a file stand blocks and the file's unit; %q is neither.", a.Name)
	}
	for _, b := range body.Blocks {
		if block := r.block(b, schema.Root(), nil, unit); block != nil {
			r.src.Blocks = append(r.src.Blocks, block)
		}
	}
}

// block reads one block that must be of an allowed kind, nil where it is not.
func (r *reader) block(b *hclsyntax.Block, allowed []*schema.Block, parent *Block, unit length.Unit) *Block {
	if r.blocks++; r.blocks > MaxBlocks {
		if r.blocks == MaxBlocks+1 {
			r.src.Lost = true
			r.findings.Errorf("too-many", expr.RangeOf(b.TypeRange), "divide the build", "The build has more than %d blocks.", MaxBlocks)
		}
		return nil
	}
	spec := schema.Kind(allowed, b.Type)
	if spec == nil {
		r.src.Lost = true
		r.unknownBlock(b, allowed, parent)
		return nil
	}
	if spec.WithName != nil && len(b.Labels) > 0 {
		spec = spec.WithName
	}
	out := &Block{Spec: spec, Parent: parent, Unit: unit, Head: headOf(b), NameAt: expr.RangeOf(b.TypeRange)}
	switch {
	case spec.Named && len(b.Labels) == 1:
		out.Name, out.NameAt = b.Labels[0], expr.RangeOf(b.LabelRanges[0])
		r.checkWord(out)
	case spec.Named && len(b.Labels) == 0:
		r.src.Lost = true
		r.findings.Errorf("name-missing", out.Head, fmt.Sprintf("%s \"…\" { … }", b.Type), "%s needs a name, in quotes after the word.", article(b.Type))
	case spec.Named:
		out.Name, out.NameAt = b.Labels[0], expr.RangeOf(b.LabelRanges[0])
		r.findings.Errorf("name-unwanted", expr.RangeOf(b.LabelRanges[1]), "leave all but one out", "%s has one name.", article(b.Type))
	case len(b.Labels) > 0:
		r.findings.Errorf("name-unwanted", expr.RangeOf(b.LabelRanges[0]), "leave the name out", "%s has no name.", article(b.Type))
	}
	r.attrs(out, b.Body)
	for _, inner := range b.Body.Blocks {
		if block := r.block(inner, spec.Blocks, out, unit); block != nil {
			out.Blocks = append(out.Blocks, block)
		}
	}
	return out
}

func headOf(b *hclsyntax.Block) source.Range {
	head := expr.RangeOf(b.TypeRange)
	if n := len(b.LabelRanges); n > 0 {
		head.End = expr.RangeOf(b.LabelRanges[n-1]).End
	}
	return head
}

func (r *reader) unknownBlock(b *hclsyntax.Block, allowed []*schema.Block, parent *Block) {
	where, at := "at the top of a file", expr.RangeOf(b.TypeRange)
	if parent != nil {
		where = "in " + strings.ToLower(article(parent.Spec.Kind))
	}
	mend := finding.Suggest(b.Type, schema.Kinds(allowed))
	if parent != nil && parent.Spec.Attr(b.Type) != nil {
		mend = fmt.Sprintf("%s is an attribute: write %s = …", b.Type, b.Type)
	}
	r.findings.Errorf("unknown-block", at, mend, "There is no block %q %s.", b.Type, where)
}

// fewAttrs is how many attributes are found faster one by one.
const fewAttrs = 16

// attrs reads the attributes of a block; required ones must be there.
func (r *reader) attrs(out *Block, body *hclsyntax.Body) {
	if n := len(body.Attributes); n > MaxAttrs {
		r.src.Lost = true
		r.findings.Errorf("too-many", out.Head, "divide it", "%s has %d attributes; the most is %d.", finding.Capital(out.Describe()), n, MaxAttrs)
		return
	}
	for _, a := range sortedAttrs(body) {
		spec := out.Spec.Attr(a.Name)
		if spec == nil && !out.Spec.Free {
			r.unknownAttr(out, a)
			continue
		}
		out.Attrs = append(out.Attrs, &Attr{
			Spec: spec, Name: a.Name, NameAt: expr.RangeOf(a.NameRange),
			Expr: expr.Expr{Syntax: a.Expr, Unit: out.Unit, At: expr.RangeOf(a.Expr.Range())},
		})
	}
	if len(out.Attrs) > fewAttrs {
		out.byName = make(map[string]*Attr, len(out.Attrs))
		for _, a := range out.Attrs {
			out.byName[a.Name] = a
		}
	}
	for _, spec := range out.Spec.Attrs {
		if spec.Required && out.Attr(spec.Name) == nil && !mistaken(body, out.Spec, spec.Name) {
			r.findings.Errorf("attribute-missing", out.Head, spec.Example(),
				"Something is missing: %s needs %s.", out.Describe(), spec.Name)
		}
	}
}

// mistaken reports whether an attribute that seems to be missing is there under
// a name that is near, or as a block: that has been said.
func mistaken(body *hclsyntax.Body, spec *schema.Block, name string) bool {
	for _, a := range sortedAttrs(body) {
		if spec.Attr(a.Name) == nil && finding.Nearest(a.Name, schema.Names(spec.Attrs)) == name {
			return true
		}
	}
	return slices.ContainsFunc(body.Blocks, func(b *hclsyntax.Block) bool { return b.Type == name })
}

func (r *reader) unknownAttr(b *Block, a *hclsyntax.Attribute) {
	mend := finding.Suggest(a.Name, schema.Names(b.Spec.Attrs))
	if schema.Kind(b.Spec.Blocks, a.Name) != nil {
		mend = fmt.Sprintf("%s is a block: write %s { … }", a.Name, a.Name)
	}
	r.findings.Errorf("unknown-attribute", expr.RangeOf(a.NameRange), mend,
		"%s has no attribute %q.", article(b.Spec.Kind), a.Name)
}

// article begins a sentence about a kind of block.
func article(kind string) string {
	if strings.ContainsRune("aeiou", rune(kind[0])) {
		return "An " + kind
	}
	return "A " + kind
}

// Describe names a block in a sentence: `cabinet "urn"`.
func (b *Block) Describe() string {
	kind := KindWords(b.Spec.Kind)
	if b.Name == "" {
		return "the " + kind
	}
	return fmt.Sprintf("%s %q", kind, b.Name)
}

// KindWords is a kind of block as a sentence says it: "knee wall".
func KindWords(kind string) string { return strings.ReplaceAll(kind, "_", " ") }

// sortedAttrs lists attributes in the order of the text; the library keeps
// them in a map.
func sortedAttrs(body *hclsyntax.Body) []*hclsyntax.Attribute {
	out := make([]*hclsyntax.Attribute, 0, len(body.Attributes))
	for _, a := range body.Attributes { //sorted: below
		out = append(out, a)
	}
	slices.SortFunc(out, func(a, b *hclsyntax.Attribute) int {
		return cmp.Compare(a.SrcRange.Start.Byte, b.SrcRange.Start.Byte)
	})
	return out
}
