package page

import (
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/lang/length"
)

// column is a column of a table; numbers stand at its right.
type column struct {
	name   string
	number bool
}

// table opens a table and its body. On a narrow screen each row becomes a
// small card whose cells say their column, so the roles are spelled out.
func (p writer) table(caption string, columns []column) {
	p.start("table", "role", "table")
	p.el("caption", caption)
	p.start("thead", "role", "rowgroup")
	p.start("tr", "role", "row")
	for _, c := range columns {
		p.el("th", c.name, "role", "columnheader", "scope", "col", "class", c.class())
	}
	p.end()
	p.end()
	p.start("tbody", "role", "rowgroup")
}

func (p writer) endTable() {
	p.end()
	p.end()
}

func (c column) class() string {
	if c.number {
		return "n"
	}
	return "t"
}

func (p writer) cells(columns []column, texts ...string) {
	for i, text := range texts {
		p.el("td", text, "role", "cell", "class", columns[i].class(), "data-h", columns[i].name)
	}
}

func (p writer) row(columns []column, texts ...string) {
	p.start("tr", "role", "row")
	p.cells(columns, texts...)
	p.end()
}

func (p writer) num(l length.Length) string {
	return length.PlainNumber(l, p.m.Build.Unit, p.m.Build.Marks)
}

func (p writer) size(x, y length.Length) string { return p.num(x) + " × " + p.num(y) }

var partColumns = []column{{"label", false}, {"part", false}, {"of", false}, {"stock", false},
	{"size", true}, {"thick", true}, {"cut into it", false}}

func (p writer) parts() {
	p.section("parts")
	if len(p.m.Parts) == 0 {
		p.none("No parts.")
		p.end()
		return
	}
	p.el("p", "Point at a row, or move through the rows with the arrow keys, to see the part in every drawing; "+
		"Enter goes to the first of them, Escape lets go. Point at a shape to find its row.", "class", "hint")
	drawn := map[string]string{} // for lookup only
	for _, v := range p.m.Views {
		if v.Part != "" {
			drawn[v.Part] = v.Name
		}
	}
	p.table("Every piece that is cut", partColumns)
	for i := range p.m.Parts {
		part := &p.m.Parts[i]
		x, y := part.Size()
		p.start("tr", "role", "row", "id", "row-"+strconv.Itoa(i+1), "data-part", part.ID)
		p.start("td", "role", "cell", "class", "t label", "data-h", "label")
		if name, ok := drawn[part.ID]; ok {
			p.el("a", part.Label, "href", "#"+name)
		} else {
			p.text(part.Label)
		}
		p.end()
		p.cells(partColumns[1:], part.Name, part.Owner, part.Stock, p.size(x, y), p.num(part.Thickness), features(part))
		p.end()
	}
	p.endTable()
	p.start("div", "class", "sheets")
	for i := range p.m.Views {
		if v := &p.m.Views[i]; v.Part != "" {
			p.drawing(v, "drawing part")
		}
	}
	p.end()
	p.end()
}

// features names what is cut into a part.
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
	return strings.Join(names, "; ")
}

var cutColumns = []column{{"pieces", true}, {"length", true}, {"width", true}, {"thick", true},
	{"stock", false}, {"part", false}, {"labels", false}, {"grain", false}}

func (p writer) cuts() {
	p.section("cuts")
	if len(p.m.Cuts) == 0 {
		p.none("Nothing to cut.")
		p.end()
		return
	}
	p.table("Sizes to cut, as often as they are needed", cutColumns)
	for _, c := range p.m.Cuts {
		grain := ""
		if c.Grain != model.GrainNone {
			grain = "lengthwise"
		}
		p.row(cutColumns, strconv.Itoa(c.Count), p.num(c.Length), p.num(c.Width), p.num(c.Thickness),
			c.Stock, c.Name, strings.Join(c.Parts, " "), grain)
	}
	p.endTable()
	p.end()
}

var layoutColumns = []column{{"stock", false}, {"as bought", true}, {"bought", true}, {"at least", true}, {"pieces", true}, {"left over", true}}

func (p writer) layouts() {
	p.section("layouts")
	if len(p.m.Layouts) == 0 {
		p.none("No stock is laid out.")
		p.end()
		return
	}
	p.table("How the pieces come out of what is bought; fewer than \"at least\" cannot do", layoutColumns)
	for _, l := range p.m.Layouts {
		p.row(layoutColumns, l.Stock, p.bought(&l), strconv.Itoa(l.Bought), strconv.Itoa(l.AtLeast), strconv.Itoa(l.Pieces),
			strconv.FormatFloat(l.Waste*100, 'f', 1, 64)+" %")
	}
	p.endTable()
	p.end()
}

// bought says how many of each size are bought: "2 of 120, 3 of 96".
func (p writer) bought(l *model.Layout) string {
	var sizes []string
	for i := 0; i < len(l.Blanks); {
		b, n := &l.Blanks[i], 1
		for i+n < len(l.Blanks) && l.Blanks[i+n].Length == b.Length && l.Blanks[i+n].Width == b.Width {
			n++
		}
		size := p.num(b.Length)
		if b.Width > 0 {
			size = p.size(b.Length, b.Width)
		}
		sizes = append(sizes, strconv.Itoa(n)+" of "+size)
		i += n
	}
	return strings.Join(sizes, ", ")
}
