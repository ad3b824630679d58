package page

import (
	"slices"
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/emit/markup"
)

var wayColumns = []markup.Column{markup.Words("what"), markup.Words("from"), markup.Words("to"), markup.Words("by way of"),
	markup.Figures("way"), markup.Figures("needed"), markup.Figures("staples or hangers")}

func wayHoleColumns(f *model.Floor) []markup.Column {
	return []markup.Column{markup.Words("for"), markup.Words("part"), markup.Words("of"), markup.Figures("hole"),
		markup.Figures("above " + f.Zero()), markup.Words("steel plates")}
}

// ways lists the ways of cables, cords and drains, and what they go through, where there
// are any.
func (p writer) ways() {
	if len(p.m.Ways) == 0 {
		return
	}
	p.section("ways")
	p.El("p", "Ways as they are proposed, in straight lines; no circuit is designed here. "+
		"Local code and licensed practice decide what is wired and plumbed, where, and how; a board is bored once they have agreed.", "class", "caution")
	p.Table("Cables, cords and drains", wayColumns)
	for i := range p.m.Ways {
		w := &p.m.Ways[i]
		need, held := "", ""
		if w.Need > 0 {
			need = p.near(w.Need)
		}
		if w.Supports > 0 {
			held = strconv.Itoa(w.Supports)
		}
		p.Row(wayColumns, w.Words(), model.BlockWords(w.From), model.BlockWords(w.To), pastWords(w.Past), p.near(w.Length), need, held)
	}
	p.EndTable()
	p.drains()
	p.wayHoles()
	p.End()
}

func (p writer) wayHoles() {
	if !slices.ContainsFunc(p.m.Ways, func(w model.Way) bool { return len(w.Holes) > 0 }) {
		return
	}
	parts := p.m.PartsByID()
	columns := wayHoleColumns(&p.m.Room.Floor)
	p.Table("Holes for them; in studs they are bored through the sides", columns)
	for i := range p.m.Ways {
		w := &p.m.Ways[i]
		for _, h := range w.Holes {
			part, size, plates := parts[h.Part], p.num(h.Wide), ""
			if w.Kind == "cord" {
				size = p.size(h.Wide, h.High)
			}
			if h.Plates > 0 {
				plates = strconv.Itoa(h.Plates)
			}
			p.Start("tr", "role", "row", "data-part", h.Part)
			p.Cells(columns, w.Words(), part.Label, part.Name+" of "+part.Owner, size, p.near(h.At.Z), plates)
			p.End()
		}
	}
	p.EndTable()
}

func pastWords(keys []string) string {
	words := make([]string, len(keys))
	for i, key := range keys {
		words[i] = model.BlockWords(key)
	}
	return strings.Join(words, ", ")
}
