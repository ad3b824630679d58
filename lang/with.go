package lang

import (
	"slices"

	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/zclconf/go-cty/cty"

	"barwright/lang/expr"
)

// With returns the source with another word, in quotes, for each of some attributes of a
// block, to try what would be if it said so. The block must be one of the source, and its
// schema must know the attributes.
func (s *Source) With(block *Block, words ...Word) *Source {
	out := *s
	out.Blocks = copied(s.Blocks, nil, func(from, to *Block) {
		if from != block {
			return
		}
		for _, w := range words {
			to.say(w)
		}
	})
	return &out
}

// InTwo returns the source with two blocks instead of one: it and, right after it, another of that name, each
// with the words. The block must stand in another one.
func (s *Source) InTwo(block *Block, name string, words ...Word) *Source {
	out := s.With(block, words...)
	said := out.sameAs(s, block)
	twin := copied([]*Block{said}, said.Parent, func(_, _ *Block) {})[0]
	twin.Name = name
	at := slices.Index(said.Parent.Blocks, said) + 1
	said.Parent.Blocks = slices.Insert(said.Parent.Blocks, at, twin)
	return out
}

// sameAs is the copy of a block of the source that this is a copy of.
func (s *Source) sameAs(of *Source, block *Block) *Block {
	if block.Parent == nil {
		return s.Blocks[slices.Index(of.Blocks, block)]
	}
	return s.sameAs(of, block.Parent).Blocks[slices.Index(block.Parent.Blocks, block)]
}

// Word is a word for an attribute.
type Word struct{ Attr, Word string }

// copied copies blocks with all inside them, and shows each to f with its copy.
func copied(blocks []*Block, parent *Block, f func(from, to *Block)) []*Block {
	out := make([]*Block, len(blocks))
	for i, b := range blocks {
		c := *b
		c.Parent, c.Blocks = parent, copied(b.Blocks, &c, f)
		f(b, &c)
		out[i] = &c
	}
	return out
}

// say puts a word into the place of an attribute's value.
func (b *Block) say(w Word) {
	said := &Attr{
		Spec: b.Spec.Attr(w.Attr), Name: w.Attr, NameAt: b.Head,
		Expr: expr.Expr{Syntax: &hclsyntax.LiteralValueExpr{Val: cty.StringVal(w.Word)}, Unit: b.Unit, At: b.Head},
	}
	b.Attrs = append(slices.DeleteFunc(slices.Clone(b.Attrs), func(a *Attr) bool { return a.Name == w.Attr }), said)
	b.byName = nil
}
