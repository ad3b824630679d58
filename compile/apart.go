package compile

import (
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// nearest is how near two outlines in one cut file may be: what is nearer touches.
const nearest = length.Micrometre

// cutsApart refuses sheets for the cutting table on which two parts touch. One error
// names the first two.
func cutsApart(src *lang.Source, m *model.Model, findings *finding.List) {
	if m.Table.Files != "sheets" || m.Saw.Kerf > nearest {
		return
	}
	for i := range m.Layouts {
		l := &m.Layouts[i]
		if !strings.HasPrefix(l.Stock, "sheet.") {
			continue
		}
		for k := range l.Blanks {
			a, b := touching(l.Blanks[k].Placed)
			if a == nil {
				continue
			}
			at := src.Top("table")[0].Attr("files").Expr.At
			if saws := src.Top("saw"); len(saws) > 0 && saws[0].Attr("kerf") != nil {
				at = saws[0].Attr("kerf").Expr.At
			}
			one, other := partByID(m, a.Part), partByID(m, b.Part)
			found := findings.Errorf("cuts-touch", at, "kerf = the width of the table's bit",
				"On sheet %d of %s, %s and %s lie side by side with a kerf of %s mm between them, so that their outlines share a line: "+
					"the table would cut it twice and take half of its bit off both. Parts cut from sheets need more than 0.001 mm between them.",
				k+1, l.Stock, one.Label, other.Label, m.Saw.Kerf.Decimal(length.Millimetres, 6)).
				Also(one.Why.At, "the part")
			if other.Why.At != one.Why.At {
				found.Also(other.Why.At, "the other")
			}
			return
		}
	}
}

// touching returns the first two pieces of a sheet whose boxes come near one another, or nil.
func touching(placed []model.Placed) (a, b *model.Placed) {
	for i := range placed {
		for k := i + 1; k < len(placed); k++ {
			if near(placed[i].At.X, placed[k].At.X) && near(placed[i].At.Y, placed[k].At.Y) {
				return &placed[i], &placed[k]
			}
		}
	}
	return nil, nil
}

func near(a, b geom.Span) bool { return a.Lo-b.Hi <= nearest && b.Lo-a.Hi <= nearest }
