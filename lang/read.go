package lang

import (
	"cmp"
	"fmt"
	"slices"
	"unicode/utf8"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

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
)

// Read reads the files of one build. Findings are not sorted. The Source is
// whole only where none of them is an error.
func Read(files source.Files) (*Source, finding.List) {
	r := &reader{src: &Source{Files: files, Unit: length.Millimetres}}
	var bodies []*hclsyntax.Body
	for _, f := range files {
		if body := r.parse(f); body != nil {
			bodies = append(bodies, body)
		}
	}
	r.src.Unit = r.buildUnit(bodies)
	for _, body := range bodies {
		r.file(body)
	}
	if len(r.findings) == 0 {
		r.checkNames()
	}
	return r.src, r.findings
}

type reader struct {
	src      *Source
	findings finding.List
}

func start(file string) source.Range {
	p := source.Pos{Line: 1, Column: 1}
	return source.Range{File: file, Start: p, End: p}
}

// parse turns one file into syntax, nil where it cannot be read at all.
func (r *reader) parse(f source.File) *hclsyntax.Body {
	switch {
	case len(f.Text) > MaxFileBytes:
		r.findings.Errorf("file-too-large", start(f.Name), "split the description into several files",
			"The file has %d bytes; the most that is read is %d.", len(f.Text), MaxFileBytes)
		return nil
	case !utf8.Valid(f.Text):
		r.findings.Errorf("not-utf8", r.badByte(f), "save the file as UTF-8",
			"The byte here is not UTF-8 text.")
		return nil
	}
	tokens, _ := hclsyntax.LexConfig(f.Text, f.Name, hcl.InitialPos)
	if at, ok := tooDeep(tokens); ok {
		r.findings.Errorf("too-deep", expr.RangeOf(at), "", "More than %d brackets, signs or conditions are open here.", MaxNesting)
		return nil
	}
	parsed, diags := hclsyntax.ParseConfig(f.Text, f.Name, hcl.InitialPos)
	for _, d := range diags {
		r.syntax(f, d)
	}
	if diags.HasErrors() {
		return nil
	}
	return parsed.Body.(*hclsyntax.Body)
}

func (r *reader) badByte(f source.File) source.Range {
	at := start(f.Name)
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

// tooDeep finds the place where the parser would have to recurse too far:
// brackets, or a row of signs or of conditions.
func tooDeep(tokens hclsyntax.Tokens) (hcl.Range, bool) {
	depth, row := 0, 0
	for _, t := range tokens {
		switch t.Type {
		case hclsyntax.TokenOBrace, hclsyntax.TokenOBrack, hclsyntax.TokenOParen, hclsyntax.TokenOQuote,
			hclsyntax.TokenTemplateInterp, hclsyntax.TokenTemplateControl, hclsyntax.TokenOHeredoc:
			depth++
		case hclsyntax.TokenCBrace, hclsyntax.TokenCBrack, hclsyntax.TokenCParen, hclsyntax.TokenCQuote,
			hclsyntax.TokenTemplateSeqEnd, hclsyntax.TokenCHeredoc:
			depth--
		case hclsyntax.TokenMinus, hclsyntax.TokenBang, hclsyntax.TokenQuestion:
			row++
		case hclsyntax.TokenNewline:
			if depth <= 0 {
				row = 0
			}
		}
		if depth > MaxNesting || row > 10*MaxNesting {
			return t.Range, true
		}
	}
	return hcl.Range{}, false
}

// syntax turns a diagnostic of the syntax library into a finding.
func (r *reader) syntax(f source.File, d *hcl.Diagnostic) {
	at := start(f.Name)
	if d.Subject != nil {
		at = expr.RangeOf(*d.Subject)
	}
	r.findings.Errorf("syntax", at, "", "%s: %s", d.Summary, d.Detail)
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
	return length.Millimetres
}

// unitWord reads a unit that stands as a plain text. Another word is left to
// whoever evaluates the attribute.
func (r *reader) unitWord(a *hclsyntax.Attribute) length.Unit {
	v, diags := a.Expr.Value(nil)
	if diags.HasErrors() || v.Type() != cty.String || v.IsNull() {
		r.findings.Errorf("wrong-type", expr.RangeOf(a.Expr.Range()), `write it in quotes, as in unit = "in"`,
			"The unit is a plain word: it decides how every other number is read.")
		return length.Millimetres
	}
	u, ok := length.UnitNamed(v.AsString())
	if !ok {
		r.findings.Errorf("unknown-word", expr.RangeOf(a.Expr.Range()), finding.Suggest(v.AsString(), schema.FileAttrs()[0].Choices),
			"%q is not a unit that a build can have.", v.AsString())
	}
	return u
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
	spec := schema.Kind(allowed, b.Type)
	if spec == nil {
		r.unknownBlock(b, allowed, parent)
		return nil
	}
	out := &Block{Spec: spec, Parent: parent, Unit: unit, Head: headOf(b), NameAt: expr.RangeOf(b.TypeRange)}
	switch {
	case spec.Named && len(b.Labels) == 1:
		out.Name, out.NameAt = b.Labels[0], expr.RangeOf(b.LabelRanges[0])
		r.checkWord(out)
	case spec.Named:
		r.findings.Errorf("name-missing", out.Head, fmt.Sprintf("%s \"…\" { … }", b.Type), "A %s has one name, in quotes after the word.", b.Type)
	case len(b.Labels) > 0:
		r.findings.Errorf("name-unwanted", expr.RangeOf(b.LabelRanges[0]), "leave the name out", "A %s has no name.", b.Type)
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
		where = "in a " + parent.Spec.Kind
	}
	mend := finding.Suggest(b.Type, schema.Kinds(allowed))
	if parent != nil && parent.Spec.Attr(b.Type) != nil {
		mend = fmt.Sprintf("%s is an attribute: write %s = …", b.Type, b.Type)
	}
	r.findings.Errorf("unknown-block", at, mend, "There is no block %q %s.", b.Type, where)
}

// attrs reads the attributes of a block; required ones must be there.
func (r *reader) attrs(out *Block, body *hclsyntax.Body) {
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
	for _, spec := range out.Spec.Attrs {
		if spec.Required && out.Attr(spec.Name) == nil {
			r.findings.Errorf("attribute-missing", out.Head, fmt.Sprintf("%s = …   (%s)", spec.Name, spec.Type),
				"%s needs %s.", out.Describe(), spec.Name)
		}
	}
}

func (r *reader) unknownAttr(b *Block, a *hclsyntax.Attribute) {
	mend := finding.Suggest(a.Name, schema.Names(b.Spec.Attrs))
	if schema.Kind(b.Spec.Blocks, a.Name) != nil {
		mend = fmt.Sprintf("%s is a block: write %s { … }", a.Name, a.Name)
	}
	r.findings.Errorf("unknown-attribute", expr.RangeOf(a.NameRange), mend,
		"A %s has no attribute %q.", b.Spec.Kind, a.Name)
}

// Describe names a block in a sentence: `cabinet "urn"`.
func (b *Block) Describe() string {
	if b.Name == "" {
		return "the " + b.Spec.Kind
	}
	return fmt.Sprintf("%s %q", b.Spec.Kind, b.Name)
}

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
