package model

// Table is how the shop's cutting table wants its files.
type Table struct {
	R2000    bool // otherwise R12
	Notes    bool // write texts
	Stated   bool // state the unit in R12 files too
	Layers   LayerNames
	Inch     bool   // files in inches, otherwise in millimetres
	Files    string // "each", "distinct", "sheets"
	Write    Written
	Drawings bool   // drawings are written as DXF too
	Depths   bool   // depths stand in the names of layers
	Mirrored bool   // the drawn face lies down
	Origin   string // "lower_left", "lower_right", "upper_left", "upper_right", "middle"
	Flatten  Length // how far straight pieces may leave an arc; 0: arcs stay arcs
	Relief   string // of inside corners: "none", "diagonal", "long_side"
	Bit      Length // of the table; 0 where it is not given
	Overrun  Length // how far recesses go on where they run out over an edge; 0: they end on it
	Small    Length // parts smaller than a square of it are flagged; 0: none
	Free     bool   // it cuts round each part; otherwise sheets are laid out for a saw
	Spacing  Length // of a free layout: between parts
	Margin   Length // likewise, kept from the edges of a sheet
}

// Written tells which kinds of work are written; outlines always are.
type Written struct{ Openings, Recesses, Bores, Marks bool }

// LayerNames names a layer for each kind of work.
type LayerNames struct{ Edge, Opening, Recess, Bore, Through, Mark, Note, Sheet, Scribe string }

// Edge is what is not used of a sheet along each of its edges.
func (t *Table) Edge(saw Saw) Length {
	if t.Free {
		return t.Margin
	}
	return saw.Trim
}
