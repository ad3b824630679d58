package compile

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// nearest is how near two outlines in one cut file may be: what is nearer touches.
const nearest = length.Micrometre

// cutsApart refuses sheets for the cutting table on which parts lie nearer than what goes
// round them needs: the bit, or recesses that run on over an edge. One error names the
// first two.
func cutsApart(src *lang.Source, m *model.Model, findings *finding.List) {
	if m.Table.Files != "sheets" {
		return
	}
	need := max(m.Table.Bit, nearest+1)
	parts, overrun := m.PartsByID(), overruns(m)
	for i := range m.Layouts {
		l := &m.Layouts[i]
		if !strings.HasPrefix(l.Stock, "sheet.") {
			continue
		}
		for k := range l.Blanks {
			a, b, apart := tooNear(parts, l.Blanks[k].Placed, need, overrun)
			if a == nil {
				continue
			}
			one, other := parts[a.Part], parts[b.Part]
			found := findings.Errorf("cuts-touch", kerfPlace(src, m), kerfMend(m, max(need, overrun[a.Part], overrun[b.Part])), "On sheet %d of %s, %s and %s lie %s apart: %s",
				k+1, l.Stock, one.Label, other.Label, m.Build.Show(apart), tooNearBecause(m, apart)).
				Also(one.Why.At, "the part")
			if other.Why.At != one.Why.At {
				found.Also(other.Why.At, "the other")
			}
			return
		}
	}
}

// overruns is how far recesses reach beyond parts, by the part's ID. For lookup only.
func overruns(m *model.Model) map[string]model.Length {
	out := map[string]model.Length{}
	for i := range m.Parts {
		if p := &m.Parts[i]; slices.ContainsFunc(p.Recesses, func(r model.Recess) bool { return len(r.Open) > 0 }) {
			out[p.ID] = m.Table.Overrun
		}
	}
	return out
}

// kerfPlace is where it is given how far apart parts lie, or else what asks for sheets.
func kerfPlace(src *lang.Source, m *model.Model) source.Range {
	if a := src.Top("table")[0].Attr("spacing"); m.Table.Free && a != nil {
		return a.Expr.At
	}
	if saws := src.Top("saw"); !m.Table.Free && len(saws) > 0 && saws[0].Attr("kerf") != nil {
		return saws[0].Attr("kerf").Expr.At
	}
	return src.Top("table")[0].Attr("files").Expr.At
}

func kerfMend(m *model.Model, need model.Length) string {
	const each = `or files = "each"`
	block, attr := "saw", "kerf"
	if m.Table.Free {
		block, attr = "table", "spacing"
	}
	if need == nearest+1 {
		return block + " { " + attr + " = the width of the table's bit }, " + each
	}
	size := fmt.Sprintf(`"%smm"`, length.Up(need, length.Millimetre/100).Decimal(length.Millimetres, 2))
	if m.Build.Unit.Imperial() {
		size = fmt.Sprintf(`"%sin"`, length.Up(need, length.Inch/10_000).Decimal(length.Inches, 4))
	}
	return fmt.Sprintf("%s { %s = %s }, %s", block, attr, size, each)
}

func tooNearBecause(m *model.Model, apart model.Length) string {
	switch t := &m.Table; {
	case t.Bit > apart:
		return fmt.Sprintf("the bit of %s, round the outside of one, would take %s off the other.", m.Build.Show(t.Bit), m.Build.Show(t.Bit-apart))
	case t.Overrun > apart:
		return fmt.Sprintf("recesses of one, drawn %s longer where they run out, would come %s into the other.", m.Build.Show(t.Overrun), m.Build.Show(t.Overrun-apart))
	}
	return "their outlines share a line. The table would cut it twice and take half of its bit off both."
}

// tooNear returns the first two pieces of a sheet whose outlines lie nearer to one another
// than is needed, for a bit and for what recesses reach beyond parts, and how far apart
// they are; nil where there are none.
func tooNear(parts map[string]*model.Part, placed []model.Placed, bit model.Length, overrun map[string]model.Length) (a, b *model.Placed, apart model.Length) {
	outline := func(p *model.Placed) geom.Contour { return p.Outline(parts[p.Part]) }
	for i := range placed {
		for k := i + 1; k < len(placed); k++ {
			a, b := &placed[i], &placed[k]
			need := max(bit, overrun[a.Part], overrun[b.Part])
			if gap(a.At.X, b.At.X) >= need || gap(a.At.Y, b.At.Y) >= need {
				continue
			}
			if apart = model.Length(math.Round(geom.Apart(outline(a), outline(b)))); apart < need {
				return a, b, apart
			}
		}
	}
	return nil, nil, 0
}

// gap is how far apart two spans are.
func gap(a, b geom.Span) model.Length { return max(a.Lo-b.Hi, b.Lo-a.Hi, 0) }
