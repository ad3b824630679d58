package page

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/markup"
	"barwright/lang/finding"
	"barwright/lang/length"
)

func (p writer) num(l length.Length) string {
	return length.PlainNumber(l, p.m.Build.Unit, p.m.Build.Marks)
}

// near is a length to the nearest mark, for what is set out with a tape.
func (p writer) near(l length.Length) string { return p.num(p.m.Build.Nearest(l)) }

func (p writer) size(x, y length.Length) string { return p.num(x) + " × " + p.num(y) }

var partColumns = []markup.Column{markup.Words("label"), markup.Words("part"), markup.Words("of"), markup.Words("stock"),
	markup.Figures("size"), markup.Figures("thick"), markup.Words("cut into it")}

// edgeColumns are further ones, where any part has banded edges or a good face.
var edgeColumns = []markup.Column{markup.Words("banded"), markup.Words("good face")}

func (p writer) parts() {
	p.section("parts")
	if len(p.m.Parts) == 0 {
		p.none("No parts.")
		p.End()
		return
	}
	p.El("p", "Point at a row, or move through the rows with the arrow keys, to see the part in every drawing, as it is cut, "+
		"and what it is bought as; Enter goes to the first drawing, Escape lets go. Point at a shape to find its row. "+
		"The field at the top, or the key /, filters by name.", "class", "hint")
	drawn := map[string]string{} // for lookup only
	for _, v := range p.m.Views {
		if v.Part != "" {
			drawn[v.Part] = v.Name
		}
		for _, id := range v.Alike {
			drawn[id] = v.Name
		}
	}
	columns := partColumns
	edged := slices.ContainsFunc(p.m.Parts, func(part model.Part) bool { return len(part.Bands) > 0 || part.Good != model.GoodNone })
	if edged {
		columns = slices.Concat(partColumns, edgeColumns)
	}
	for _, l := range p.lots() {
		p.fold("parts", l.title, finding.Counted(len(l.parts), "part"), func(p writer) {
			p.Table("Every piece that is cut", columns)
			for _, i := range l.parts {
				p.part(i, drawn, edged)
			}
			p.EndTable()
			p.Start("div", "class", "sheets")
			for _, v := range l.views {
				p.drawing(v, "drawing part")
			}
			p.End()
		})
	}
	p.End()
}

// part writes the row of a part, by its index.
func (p writer) part(i int, drawn map[string]string, edged bool) {
	part := &p.m.Parts[i]
	x, y := part.Size()
	p.Start("tr", "role", "row", "id", "row-"+strconv.Itoa(i+1), "data-part", part.ID, "data-stock", part.Stock, "data-lies", p.lies(part))
	p.Start("td", "role", "cell", "class", "t label", "data-h", "label")
	if name, ok := drawn[part.ID]; ok {
		p.El("a", part.Label, "href", p.at(name))
	} else {
		p.Text(part.Label)
	}
	p.End()
	p.Cells(partColumns[1:], part.Name, part.Owner, part.Stock, p.size(x, y), p.num(part.Thickness), features(part))
	if edged {
		p.Cells(edgeColumns, part.Banded(), goodOf(part.Face, part.Good))
	}
	p.End()
}

// lies tells where a part lies: along its run or wall, out from it, and how high.
func (p writer) lies(part *model.Part) string {
	span := func(s geom.Span) string { return p.near(s.Lo) + " to " + p.near(s.Hi) }
	b := part.Placement.Box
	return span(b.U) + " from the left, " + span(b.V) + " out, " + span(b.Z) + " above " + p.m.Room.Floor.Zero()
}

// goodOf names the faces of a part that is drawn on one of them that should be the better ones.
func goodOf(face string, good model.Good) string {
	switch good {
	case model.GoodDrawn:
		return cmp.Or(face, "as drawn")
	case model.GoodFar:
		return cmp.Or(behind[face], "the other")
	case model.GoodBoth:
		return "both"
	}
	return ""
}

// behind is the face behind a drawn one. Lookup only.
var behind = map[string]string{"inside": "outside", "top": "underside", "underside": "top", "front": "rear"}

// features names what is cut and bored into a part.
func features(part *model.Part) string {
	var names []string
	for _, o := range part.Openings {
		if o.Notch {
			names = append(names, "notch "+o.Name)
		} else {
			names = append(names, o.Name)
		}
	}
	for _, r := range part.Recesses {
		names = append(names, r.Name)
	}
	for _, like := range part.LikeBores() {
		name := like[0].Name
		if len(like) > 1 {
			name = strconv.Itoa(len(like)) + " × " + name
		}
		names = append(names, name)
	}
	return strings.Join(names, "; ")
}

var cutColumns = []markup.Column{markup.Figures("pieces"), markup.Figures("length"), markup.Figures("width"), markup.Figures("thick"),
	markup.Words("stock"), markup.Words("part"), markup.Words("labels"), markup.Words("grain")}

// smallColumns is a further one, where the table wants small pieces flagged.
var smallColumns = []markup.Column{markup.Words("hold down")}

func (p writer) cuts() {
	p.section("cuts")
	if len(p.m.Cuts) == 0 {
		p.none("Nothing to cut.")
		p.End()
		return
	}
	columns := cutColumns
	edged := slices.ContainsFunc(p.m.Cuts, func(c model.Cut) bool { return c.Banded != "" || c.Good != model.GoodNone })
	if edged {
		columns = slices.Concat(columns, edgeColumns)
	}
	flags := p.m.Table.Small > 0
	if flags {
		columns = slices.Concat(columns, smallColumns)
	}
	small := p.m.SmallParts()
	ids := map[string]string{} // by label; lookup only
	for i := range p.m.Parts {
		ids[p.m.Parts[i].Label] = p.m.Parts[i].ID
	}
	caption := "Sizes to cut, as often as they are needed"
	if edged {
		caption += "; banding is no part of them"
	}
	for _, cuts := range p.byStock(p.m.Cuts) {
		p.fold("cuts", cuts[0].Stock, finding.Counted(len(cuts), "line"), func(p writer) {
			p.Table(caption, columns)
			for i := range cuts {
				c := &cuts[i]
				texts := p.cut(c)
				if edged {
					texts = append(texts, c.Banded, goodOf(c.Face, c.Good))
				}
				if flags && small[c.Parts[0]] {
					texts = append(texts, "small")
				} else if flags {
					texts = append(texts, "")
				}
				p.Start("tr", alike(c, ids)...)
				p.Cells(columns, texts...)
				p.End()
			}
			p.EndTable()
		})
	}
	p.End()
}

// cut are the cells that every line of the cut list has.
func (p writer) cut(c *model.Cut) []string {
	grain := ""
	if c.Grain != model.GrainNone {
		grain = "lengthwise"
	}
	return []string{strconv.Itoa(c.Count), p.num(c.Length), p.num(c.Width), p.num(c.Thickness),
		c.Stock, c.Name, strings.Join(c.Parts, " "), grain}
}

// alike are the attributes of a line of the cut list: the parts that it cuts.
func alike(c *model.Cut, ids map[string]string) []string {
	attrs := []string{"role", "row"}
	var of []string
	for _, label := range c.Parts {
		if id := ids[label]; id != "" {
			of = append(of, id)
		}
	}
	if len(of) > 0 {
		attrs = append(attrs, "data-part", of[0])
	}
	if len(of) > 1 {
		attrs = append(attrs, "data-alike", strings.Join(of[1:], " "))
	}
	return attrs
}

var layoutColumns = []markup.Column{markup.Words("stock"), markup.Figures("as cut"), markup.Figures("bought"), markup.Figures("at least"), markup.Words("proved"), markup.Figures("pieces"), markup.Figures("left over")}

func (p writer) layouts() {
	p.section("layouts")
	if len(p.m.Layouts) == 0 {
		p.none("No stock is laid out.")
		p.End()
		return
	}
	p.Table("How the pieces come out of what is bought; fewer than \"at least\" cannot do", layoutColumns)
	for _, l := range p.m.Layouts {
		least, proved := "", ""
		if l.AtLeast > 0 {
			least = strconv.Itoa(l.AtLeast)
		}
		if l.Least {
			proved = "least possible"
		}
		p.Row(layoutColumns, l.Stock, p.bought(&l), strconv.Itoa(l.Bought), least, proved, strconv.Itoa(l.Pieces),
			strconv.FormatFloat(l.Waste*100, 'f', 1, 64)+" %")
	}
	p.EndTable()
	rest := p.m.Sheets
	for i := range p.m.Layouts {
		l := &p.m.Layouts[i]
		if l.Kind != model.Panel || len(l.Blanks) == 0 {
			continue
		}
		sheets := rest[:min(len(l.Blanks), len(rest))]
		rest = rest[len(sheets):]
		p.fold("layouts", l.Stock, finding.Counted(len(sheets), "sheet"), func(p writer) {
			if p.shown == beside {
				p.views(sheets, func(*model.View) bool { return true })
			}
			for k := range sheets {
				p.drawing(&sheets[k], "drawing")
			}
		})
	}
	for i := range p.m.Sticks {
		p.drawing(&p.m.Sticks[i], "drawing")
	}
	p.End()
}

// bought says how many of each size are cut: "1 of 40 × 30 that is there, 2 of 120, 3 of 96".
func (p writer) bought(l *model.Layout) string {
	var sizes []string
	for i := 0; i < len(l.Blanks); {
		b, n := &l.Blanks[i], 1
		for i+n < len(l.Blanks) && l.Blanks[i+n].Length == b.Length && l.Blanks[i+n].Width == b.Width && l.Blanks[i+n].Own == b.Own {
			n++
		}
		size := p.num(b.Length)
		if b.Width > 0 {
			size = p.size(b.Length, b.Width)
		}
		if b.Own {
			size += " (there already)"
		}
		sizes = append(sizes, strconv.Itoa(n)+" of "+size)
		i += n
	}
	return strings.Join(sizes, ", ")
}
