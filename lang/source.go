// Package lang reads descriptions. It takes the bytes of one build's files and
// returns a Source: blocks that the schema allows, each with its range and its
// attributes unevaluated. It does not evaluate, resolve names or judge sizes.
package lang

import (
	"barwright/lang/expr"
	"barwright/lang/length"
	"barwright/lang/schema"
	"barwright/lang/source"
)

// Source is a description as written.
type Source struct {
	Files  source.Files
	Unit   length.Unit // the build's
	Blocks []*Block    // by file name, then in the order of the text
	// Faulty tells that errors were found. Values may still be worked out, so
	// that mistakes in them are told at once too, unless blocks are Lost.
	Faulty bool
	Lost   bool // blocks, whole files or the unit could not be read
}

// Block is one block as written.
type Block struct {
	Spec   *schema.Block
	Name   string // empty where the kind has none
	Parent *Block // nil at the top
	Unit   length.Unit
	Attrs  []*Attr
	Blocks []*Block
	Head   source.Range     // kind and name
	NameAt source.Range     // the name in its quotes; the kind where it has none
	byName map[string]*Attr // where the block has many attributes; lookup only
}

// Attr is one attribute as written.
type Attr struct {
	Spec   *schema.Attr // nil in a block whose names are free
	Name   string
	NameAt source.Range
	Expr   expr.Expr
	// Overridden tells that the value does not stand in the text.
	Overridden bool
}

// Key is how references name the block: "sheet.birch", or "saw" where it has
// no name.
func (b *Block) Key() string {
	if b.Name == "" {
		return b.Spec.Kind
	}
	return b.Spec.Kind + "." + b.Name
}

// Path is the block's key after those of its named parents, for people:
// "run.back cabinet.urn".
func (b *Block) Path() string {
	if b.Parent == nil || b.Parent.Name == "" {
		return b.Key()
	}
	return b.Parent.Path() + " " + b.Key()
}

// Given is one input of a description: an attribute of a given block, or the
// value of one that carries a name.
type Given struct {
	Name   string
	NameAt source.Range
	Block  *Block
	Value  *Attr // nil where a named one lacks its value
}

// Givens lists the inputs that a given block holds.
func (b *Block) Givens() []Given {
	if b.Name != "" {
		return []Given{{b.Name, b.NameAt, b, b.Attr("value")}}
	}
	out := make([]Given, len(b.Attrs))
	for i, a := range b.Attrs {
		out[i] = Given{a.Name, a.NameAt, b, a}
	}
	return out
}

// GivenNames lists the names of all inputs.
func (s *Source) GivenNames() []string {
	var out []string
	for _, b := range s.Top("given") {
		for _, g := range b.Givens() {
			out = append(out, g.Name)
		}
	}
	return out
}

// Attr finds an attribute as written, nil where it is left out.
func (b *Block) Attr(name string) *Attr {
	if b.byName != nil {
		return b.byName[name]
	}
	for _, a := range b.Attrs {
		if a.Name == name {
			return a
		}
	}
	return nil
}

// Said is the place of the first of some attributes that the block states, or else of
// its head.
func (b *Block) Said(names ...string) source.Range {
	for _, name := range names {
		if a := b.Attr(name); a != nil {
			return a.Expr.At
		}
	}
	return b.Head
}

// Inner lists the blocks of a kind directly inside b, in the order of the text.
func (b *Block) Inner(kind string) []*Block { return ofKind(b.Blocks, kind) }

// Top lists the blocks of a kind at the top of the files.
func (s *Source) Top(kind string) []*Block { return ofKind(s.Blocks, kind) }

func ofKind(blocks []*Block, kind string) []*Block {
	var out []*Block
	for _, b := range blocks {
		if b.Spec.Kind == kind {
			out = append(out, b)
		}
	}
	return out
}

// Each calls f for every block, parents first.
func (s *Source) Each(f func(*Block)) { each(s.Blocks, f) }

func each(blocks []*Block, f func(*Block)) {
	for _, b := range blocks {
		f(b)
		each(b.Blocks, f)
	}
}
