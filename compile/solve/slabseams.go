package solve

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// practice is a figure of the trade as a build's people know it.
func (s *solver) practice(inch, metric length.Length) length.Length {
	if s.Source.Unit.Imperial() {
		return inch
	}
	return metric
}

// seamClear is how far a seam keeps from what is cut out of the slab: the
// strips beside a cut-out are its weakest part (common practice, from memory).
func (s *solver) seamClear() length.Length {
	return s.practice(3*length.Inch, 75*length.Millimetre)
}

// slabSeams reads where a slab is divided. It reports whether all of it is sound.
func (s *solver) slabSeams(t *top) bool {
	items := s.Value(t.block, "seams").Items
	if len(items) > mostPieces {
		s.tooMany(t.block.Attr("seams").Expr.At, len(items), "seams")
		return false
	}
	sound := true
	for _, item := range items {
		u := t.origin + values.LengthOf(item)
		if s.soundSeam(t, item, u) {
			t.slab.Seams = append(t.slab.Seams, u)
		} else {
			sound = false
		}
	}
	return sound
}

func (s *solver) soundSeam(t *top, item expr.Value, u length.Length) bool {
	from, slab := u-t.origin, t.slab.Box.U.Shift(-t.origin)
	if past := max(slab.Lo-from, from-slab.Hi); past >= 0 {
		where := "just at its end"
		if past > 0 {
			where = s.Show(past) + " outside"
		}
		s.Findings.Errorf("seam-outside", item.At, "leave it out", "%s reaches from %s to %s, and this seam is at %s: %s.",
			finding.Capital(t.block.Describe()), s.Show(slab.Lo), s.Show(slab.Hi), s.Show(from), where)
		return false
	}
	cut := s.cutNear(t, u)
	if cut == nil {
		return true
	}
	text := fmt.Sprintf("The seam at %s would go through the cut-out of %s %q", s.Show(from), cut.Kind, cut.Name)
	if away := max(cut.Box.U.Lo-u, u-cut.Box.U.Hi); away >= 0 {
		text = fmt.Sprintf("The seam at %s would be %s from the cut-out of %s %q", s.Show(from), s.Show(away), cut.Kind, cut.Name)
	}
	at := cut.Box.U.Shift(-t.origin)
	s.Findings.Errorf("seam-at-cut-out", item.At, s.seamMoved(t, u),
		"%s, which reaches from %s to %s; a seam keeps %s clear of it.", text, s.Show(at.Lo), s.Show(at.Hi), s.Show(s.seamClear())).
		Also(cut.Why.At, "it is cut here")
	return false
}

// seamMoved says where the places next to a seam are that are clear of all
// cut-outs.
func (s *solver) seamMoved(t *top, u length.Length) string {
	left, right := u, u
	for c := s.cutNear(t, left); c != nil; c = s.cutNear(t, left) {
		left = t.origin + length.Down(c.Box.U.Lo-s.seamClear()-t.origin, s.Marks)
	}
	for c := s.cutNear(t, right); c != nil; c = s.cutNear(t, right) {
		right = t.origin + length.Up(c.Box.U.Hi+s.seamClear()-t.origin, s.Marks)
	}
	var places []string
	if left > t.slab.Box.U.Lo {
		places = append(places, "at "+s.Show(left-t.origin))
	}
	if right < t.slab.Box.U.Hi {
		places = append(places, "at "+s.Show(right-t.origin))
	}
	return strings.Join(places, ", or ")
}

// cutNear is what is cut out too near to a seam, nil where nothing is.
func (s *solver) cutNear(t *top, u length.Length) *model.SlabCut {
	i := slices.IndexFunc(t.slab.Cuts, func(c model.SlabCut) bool {
		return c.Box.U.Grow(s.seamClear()).Overlaps(geom.Span{Lo: u, Hi: u})
	})
	if i < 0 {
		return nil
	}
	return &t.slab.Cuts[i]
}

// soundSize refuses pieces that nothing on sale is large enough for. Solid wood
// lies with its grain along the slab, anything else may be turned.
func (s *solver) soundSize(t *top) bool {
	size := s.Lengths(t.stock, "size")
	if len(size) == 0 {
		return true
	}
	deep, longest, widest := t.slab.Box.V.Size(), length.Length(0), size[1]
	if deep <= size[1] {
		longest = size[0]
	}
	if !s.Flag(t.stock, "solid") {
		widest = max(size[0], size[1])
		if deep <= size[0] {
			longest = max(longest, size[1])
		}
	}
	sold, at := s.Show(size[0])+" x "+s.Show(size[1]), t.block.Attr("slab").Expr.At
	if longest == 0 {
		s.Findings.Errorf("slab-too-large", at, "a smaller overhang, or a wider slab",
			"%s is %s deep, but the largest piece on sale is %s: %s too wide.",
			finding.Capital(t.block.Describe()), s.Show(deep), sold, s.Show(deep-widest)).
			Also(t.stock.Attr("size").Expr.At, "what is on sale")
		return false
	}
	pieces := t.pieces()
	for i, u := range pieces {
		long := u.Size()
		if long <= longest {
			continue
		}
		what := finding.Capital(t.block.Describe())
		if len(pieces) > 1 {
			what = fmt.Sprintf("Piece %d of %s", i+1, t.block.Describe())
		}
		s.Findings.Errorf("slab-too-large", at, s.divided(t, longest),
			"%s is %s long and %s deep, but the largest piece on sale is %s: %s too long.",
			what, s.Show(long), s.Show(deep), sold, s.Show(long-longest)).
			Also(t.stock.Attr("size").Expr.At, "what is on sale")
		return false
	}
	return true
}

// divided is seams that give pieces short enough: those written, then as few as
// will do, about evenly, at joints of boxes where some are in reach. It is empty
// where none do.
func (s *solver) divided(t *top, longest length.Length) string {
	var texts []string
	items := s.Value(t.block, "seams").Items
	for i, left := range t.pieces() {
		for left.Size() > longest {
			u, text := s.seamAfter(t, left, longest)
			if text == "" || len(texts) > mostPieces {
				return ""
			}
			texts, left.Lo = append(texts, text), u
		}
		if i < len(items) {
			texts = append(texts, cmp.Or(s.Written(items[i].At), fmt.Sprintf("%q", s.Exact(values.LengthOf(items[i])))))
		}
	}
	return "seams = [" + strings.Join(texts, ", ") + "]"
}

// seamAfter is the first of the fewest seams that divide a stretch about evenly:
// it only wishes for even pieces, as a joint of boxes near by is a better place.
// Cut-outs may ask for one more on either side of them.
func (s *solver) seamAfter(t *top, whole geom.Span, longest length.Length) (at length.Length, text string) {
	least := (whole.Size() - 1) / longest
	for seams := least; text == "" && seams <= least+2*length.Length(len(t.slab.Cuts)); seams++ {
		share := whole.Size() / (seams + 1)
		reach := geom.Span{Lo: max(whole.Lo+1, whole.Hi-seams*longest), Hi: whole.Lo + min(longest, whole.Size()-1)}
		at, text = s.seamIn(t, reach, whole.Lo+share, share/2)
	}
	return at, text
}

// seamIn is a place for a seam in a stretch, near to a wish, and how to write
// it: at a joint of boxes that is no further off than some play, or else on a
// mark. The text is empty where there is none.
func (s *solver) seamIn(t *top, reach geom.Span, wish, play length.Length) (at length.Length, text string) {
	free := func(u length.Length) bool {
		return reach.Holds(u) && s.cutNear(t, u) == nil
	}
	off := func(u length.Length) length.Length { return length.Apart(u, wish) }
	if t.slab.Kind == "counter" {
		for _, box := range t.run.Boxes {
			if u := box.Hull.U.Hi; free(u) && off(u) <= play && (text == "" || off(u) < off(at)) {
				at, text = u, box.Key()+".right"
			}
		}
	}
	if text != "" {
		return at, text
	}
	marks := []length.Length{wish, reach.Lo + s.Marks - 1}
	for _, cut := range t.slab.Cuts {
		clear := cut.Box.U.Grow(s.seamClear())
		marks = append(marks, clear.Lo, clear.Hi+s.Marks-1)
	}
	for _, u := range marks {
		from := length.Down(u-t.origin, s.Marks)
		if u = from + t.origin; free(u) && (text == "" || off(u) < off(at)) {
			at, text = u, fmt.Sprintf("%q", s.Show(from))
		}
	}
	return at, text
}
