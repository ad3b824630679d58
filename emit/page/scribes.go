package page

import (
	"strings"

	"barwright/compile/model"
	"barwright/emit/markup"
	"barwright/lang/finding"
)

var gapColumns = []markup.Column{markup.Words("behind"), markup.Words("run"), markup.Figures("along the wall"), markup.Figures("up"),
	markup.Figures("gap"), markup.Figures("shim")}

// gaps says where the rear of each run against a wall that was read stands, and what is
// packed behind its boxes.
func (p writer) gaps() {
	s, b := &p.m.Setting, p.m.Build
	for _, r := range s.Rears {
		where := "on the line of wall " + r.Wall
		if r.Off > 0 {
			where = b.Near(r.Off) + " out from the line of wall " + r.Wall
		} else if r.Off < 0 {
			where = b.Near(-r.Off) + " behind the line of wall " + r.Wall
		}
		p.El("p", "Run "+r.Run+" stands "+where+", where its face stands out most: "+b.Near(r.At.X)+" along and "+b.Near(r.At.Y)+" up.")
	}
	if len(s.Gaps) == 0 {
		return
	}
	p.fold("setting", "Gaps behind boxes", finding.Counted(len(s.Gaps), "place"), func(p writer) {
		p.Table("Gaps behind boxes on the lines of their wall screws, packed solid before a screw is drawn tight, so that it bows no back", gapColumns)
		for i := range s.Gaps {
			g := &s.Gaps[i]
			p.Row(gapColumns, model.BlockWords(g.Box), g.Run, p.near(g.Along), p.near(g.Height), p.num(g.Gap), p.num(g.Shim))
		}
		p.EndTable()
	})
}

var scribeColumns = []markup.Column{markup.Words("part"), markup.Words("edge"), markup.Words("to"), markup.Words("from"),
	markup.Figures("at"), markup.Figures("cut off"), markup.Figures("left")}

// scribes lists, for each edge that is cut on site, how much comes off it.
func (p writer) scribes() {
	edges := 0
	for i := range p.m.Parts {
		edges += len(p.m.Parts[i].Scribes)
	}
	if edges == 0 {
		return
	}
	p.El("p", "What is cut to a floor or a wall as it was read: a line on the face that is drawn shows it, and it is measured here from an edge that a tape reaches. "+
		"The part is held in its place and the line is checked against the wall or the floor before it is cut.")
	p.fold("setting", "Scribes", finding.Counted(edges, "edge"), func(p writer) {
		p.Table("Scribes: at the ends, at each bend and every "+p.stationStep()+"; what is cut off the blank's edge, and what is left to the edge across", scribeColumns)
		for i := range p.m.Parts {
			part := &p.m.Parts[i]
			for j := range part.Scribes {
				p.scribe(part, &part.Scribes[j])
			}
		}
		p.EndTable()
	})
}

func (p writer) scribe(part *model.Part, s *model.Scribe) {
	for i, at := range s.Stations {
		label, edge, to, from := part.Label, s.Edge.String(), strings.Replace(s.To, ".", " ", 1), s.From.String()
		if i > 0 {
			label, edge, to, from = "", "", "", ""
		}
		p.Start("tr", "role", "row", "data-part", part.ID)
		p.Cells(scribeColumns, label, edge, to, from, p.near(at.Along), p.near(at.Cut), p.near(at.Keep))
		p.End()
	}
}

// stationStep is how far stations lie apart at most.
func (p writer) stationStep() string {
	return p.m.Build.Plain(model.StationStep(p.m.Build.Unit))
}
