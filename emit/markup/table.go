package markup

// Column is a column of a table.
type Column struct {
	Name   string
	Number bool // it stands at the right
}

// Words is a column of texts.
func Words(name string) Column { return Column{name, false} }

// Figures is a column of numbers.
func Figures(name string) Column { return Column{name, true} }

// Table opens a table and its body. On a narrow screen each row becomes a
// small card whose cells say their column, so the roles are spelled out.
func (m *Writer) Table(caption string, columns []Column) {
	m.Start("table", "role", "table")
	m.El("caption", caption)
	m.Start("thead", "role", "rowgroup")
	m.Start("tr", "role", "row")
	for _, c := range columns {
		m.El("th", c.Name, "role", "columnheader", "scope", "col", "class", c.class())
	}
	m.End()
	m.End()
	m.Start("tbody", "role", "rowgroup")
}

// EndTable closes it.
func (m *Writer) EndTable() {
	m.End()
	m.End()
}

func (c Column) class() string {
	if c.Number {
		return "n"
	}
	return "t"
}

// Cells writes the cells of a row that is open.
func (m *Writer) Cells(columns []Column, texts ...string) {
	for i, text := range texts {
		m.El("td", text, "role", "cell", "class", columns[i].class(), "data-h", columns[i].Name)
	}
}

// Row writes a row of cells.
func (m *Writer) Row(columns []Column, texts ...string) {
	m.Start("tr", "role", "row")
	m.Cells(columns, texts...)
	m.End()
}
