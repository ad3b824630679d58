// Package boards judges shelves that sag, what boxes are held by, cuts in framing and
// what is heavy to carry (SPEC.md 11.8).
package boards

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// Rules are those of the section, in its order.
var Rules = []rule.Rule{
	{Slug: "shelf-sags", Look: shelfSags},
	{Slug: "studs-caught", Look: studsCaught},
	{Slug: "studs-unknown", Look: studsUnknown},
	{Slug: "box-held-by-nothing", Look: boxHeldByNothing},
	{Slug: "free-end-loose", Look: freeEndLoose},
	{Slug: "studs-too-far", Look: studsTooFar},
	{Slug: "support-off-stud", Look: supportOffStud},
	{Slug: "stud-bored", Look: studBored},
	{Slug: "nail-plate-needed", Look: nailPlateNeeded},
	{Slug: "stud-notched", Look: studNotched},
	{Slug: "plate-cut", Look: plateCut},
	{Slug: "heavy-piece", Look: heavyPiece},
}

// beam is a board that lies on something at its two ends and carries a load
// spread over all of it. How deep it is does not matter: load and stiffness grow
// alike with that.
type beam struct {
	name        string
	span, thick length.Length
	stiffness   float64 // in Pa
	sheet       *lang.Block
	at          source.Range // what asks for it
	mend        string       // a shorter span
}

// shelfSags looks for the shelf of each cabinet that is most over the limit, or for
// its bottom where that lies on legs. Any other bottom lies on its toe kick.
func shelfSags(b *rule.Build) {
	for _, box := range b.Boxes(model.Cabinet) {
		boxSags(b, b.Block(box.Key()), beamsOf(b, box))
	}
}

// beamsOf lists the shelves of a cabinet, and its bottom where that lies on legs.
func beamsOf(b *rule.Build, box *model.Box) []beam {
	cabinet := b.Block(box.Key())
	var out []beam
	for _, p := range b.PartsOf(box.Key()) {
		board := beam{name: p.Name, span: p.Placement.Box.U.Size(), thick: p.Thickness, mend: "a divider, or a narrower box"}
		switch {
		case p.Is("cabinet", "shelf"):
			board.at = cabinet.Said("shelves")
		case p.Is("cabinet", "fixed-shelf"):
			board.at = cabinet.Said("fixed_shelves")
		case p.Is("cabinet", "bottom") && len(box.Legs) > 0:
			board.name, board.at = "the bottom", cabinet.Head
			board.span, board.mend = legSpan(box.Legs), "legs that stand closer"
		default:
			continue
		}
		board.sheet = b.Block(p.Stock)
		if board.stiffness = b.Number(board.sheet, "stiffness") * 1e9; board.stiffness > 0 {
			out = append(out, board)
		}
	}
	return out
}

// legSpan is the widest gap between the centres of legs along a box.
func legSpan(legs []geom.Box) length.Length {
	centres, widest := make([]length.Length, len(legs)), length.Length(0)
	for i, leg := range legs {
		centres[i] = leg.U.Mid()
	}
	slices.Sort(centres)
	for i := range centres[1:] {
		widest = max(widest, centres[i+1]-centres[i])
	}
	return widest
}

func boxSags(b *rule.Build, cabinet *lang.Block, boards []beam) {
	var worst beam
	times, others := 0.0, -1
	limit, load := sagLimitOf(b), "shelf_load"
	if b.Text(cabinet, "holds") == "bottles" {
		load = "bottle_load"
	}
	limit.load = b.Number(b.Limits, load)
	for _, board := range boards {
		if over := limit.sag(board) / limit.of(board.span); over > 1 {
			others++
			if over > times {
				worst, times = board, over
			}
		}
	}
	if others < 0 {
		return
	}
	span, thick := limit.mended(worst, b.Marks)
	text := fmt.Sprintf("%s of %s spans %s. Under %s its board, %s thick, sags %s as time goes by, but %s is the limit: it carries a span of %s.",
		finding.Capital(worst.name), cabinet.Describe(), b.Show(worst.span), showLoad(b, limit.load), b.Show(worst.thick),
		showBend(b, limit.sag(worst)), showBend(b, limit.of(worst.span)), b.Show(span))
	if others > 0 {
		text += fmt.Sprintf(" It is the worst of %d such boards.", others+1)
	}
	f := b.Findings.Warnf("shelf-sags", worst.at, fmt.Sprintf("a board of the kind that is %s thick or more; or spans of %s or less: %s", b.Show(thick), b.Show(span), worst.mend), "%s", text)
	f.Also(worst.sheet.Attr("thickness").Expr.At, "its board")
	if a := cabinet.Attr("holds"); a != nil {
		f.Also(a.Expr.At, "what it holds")
	}
	b.LimitOf(f, load)
	b.LimitOf(f, "shelf_sag")
}

// sagLimit is what boards are loaded with, in Pa, and how far they may sag in the
// end, in metres.
type sagLimit struct{ load, creep, over, most float64 }

func sagLimitOf(b *rule.Build) sagLimit {
	field := func(name string) float64 { return b.FieldNumber(b.Limits, "shelf_sag", name) }
	return sagLimit{
		creep: field("in_time"), over: field("span_over"),
		most: metres(b.FieldLength(b.Limits, "shelf_sag", "most")),
	}
}

func metres(l length.Length) float64 { return l.MM() / 1000 }

// of is how far a span may sag.
func (l sagLimit) of(span length.Length) float64 { return min(metres(span)/l.over, l.most) }

// sag is what a beam on two supports sags in the middle under an even load,
// 5 w L^4 / (384 E I) with I = depth * thick^3 / 12, and more in time.
func (l sagLimit) sag(board beam) float64 {
	span, thick := metres(board.span), metres(board.thick)
	return l.creep * 5 * l.load * span * span * span * span / (32 * board.stiffness * thick * thick * thick)
}

// mended is the longest span of a board, and the least thickness over its span,
// that stay within the limit, on marks.
func (l sagLimit) mended(board beam, mark length.Length) (span, thick length.Length) {
	sag, whole := l.sag(board), metres(board.span)
	longest := min(math.Cbrt(whole/l.over/sag), math.Sqrt(math.Sqrt(l.most/sag)))
	least := min(math.Cbrt(sag/l.of(board.span))*float64(board.thick), float64(length.Max))
	return length.Down(length.Length(longest*float64(board.span)), mark), length.Up(length.Length(least), mark)
}

// showLoad shows a load on an area, in Pa.
func showLoad(b *rule.Build, pascal float64) string {
	if b.Source.Unit.Imperial() {
		return strconv.FormatFloat(pascal/47.88, 'g', 3, 64) + " psf"
	}
	return strconv.FormatFloat(pascal/9.80665, 'g', 3, 64) + " kg on a square metre"
}

// showBend shows a bend of so many metres, which no tape shows.
func showBend(b *rule.Build, metres float64) string {
	if b.Source.Unit.Imperial() {
		return strconv.FormatFloat(metres/0.0254, 'f', 3, 64) + " in"
	}
	return strconv.FormatFloat(metres*1000, 'f', 2, 64) + " mm"
}
