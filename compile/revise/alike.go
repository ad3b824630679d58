package revise

import (
	"slices"
	"strings"
	"unicode"

	"barwright/compile/model"
	"barwright/compile/reuse"
)

// numbering numbers pieces and parts that are alike, so that each sort of them is looked
// at once.
type numbering struct {
	pair    *reuse.Pair
	classes map[string]int // by key; lookup only
	samples [][]*item      // of each class, one of each that is drawn or named in another way
	drawn   int
}

// number gives an item its class, and the number of what is drawn and named alike.
func (n *numbering) number(i *item) {
	if own := i.own; own != nil && own.known && n.pair.Board(own.part) == n.pair.Board(i.part) && drawnAlike(own.part, i.part) {
		i.class, i.drawn = own.class, own.drawn
		return
	}
	i.known = true
	key := n.pair.Key(i.part)
	class, ok := n.classes[key]
	if !ok {
		class = len(n.samples)
		n.classes[key] = class
		n.samples = append(n.samples, nil)
	}
	i.class = class
	for _, s := range n.samples[class] {
		if drawnAlike(s.part, i.part) {
			i.drawn = s.drawn
			return
		}
	}
	i.drawn = n.drawn
	n.drawn++
	n.samples[class] = append(n.samples[class], i)
}

// drawnAlike reports whether all that decides how parts can serve, and what that is
// called, is the same: their drawings, names of what is cut, edges, and what sort of a
// part they are.
func drawnAlike(a, b *model.Part) bool {
	return a.Kind == b.Kind && a.Stock == b.Stock && a.Thickness == b.Thickness && a.Face == b.Face && a.Grain == b.Grain && a.Good == b.Good &&
		sortOf(a) == sortOf(b) && slices.Equal(a.Outline, b.Outline) && slices.Equal(a.Bands, b.Bands) && slices.Equal(a.Sides(), b.Sides()) &&
		slices.EqualFunc(a.Openings, b.Openings, func(x, y model.Opening) bool {
			return x.Name == y.Name && x.Notch == y.Notch && slices.Equal(x.Shape, y.Shape)
		}) &&
		slices.EqualFunc(a.Recesses, b.Recesses, func(x, y model.Recess) bool {
			return x.Name == y.Name && x.Depth == y.Depth && slices.Equal(x.Shape, y.Shape)
		}) &&
		slices.EqualFunc(a.Bores, b.Bores, func(x, y model.Bore) bool { return x.At == y.At && x.Like(&y) }) &&
		slices.EqualFunc(a.Marks, b.Marks, func(x, y model.Mark) bool { return x.From == y.From && x.To == y.To })
}

// sortOf is a part's ID without its block's name and without numbers: "cabinet/shelf-".
func sortOf(p *model.Part) string {
	_, own, _ := strings.Cut(p.ID, "/")
	return p.BlockKind() + "/" + strings.Map(func(c rune) rune {
		if unicode.IsDigit(c) {
			return -1
		}
		return c
	}, own)
}
