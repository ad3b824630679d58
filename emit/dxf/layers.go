package dxf

// Layers names the layers of a file. An empty name stands for the default:
// EDGE, OPENING, RECESS, BORE, MARK, NOTE. Two may have the same name, and then
// are one layer. Names are written in upper case, 31 characters at most, what
// R12 does not take as an underscore.
type Layers struct {
	Edge    string // the part's outline
	Opening string // cut through, inside the outline
	Recess  string // cut to a depth
	Bore    string // drilled
	Mark    string // drawn on the piece
	Note    string // for reading only
}

func (l Layers) named() Layers {
	return Layers{
		Edge:    symbol(l.Edge, "EDGE"),
		Opening: symbol(l.Opening, "OPENING"),
		Recess:  symbol(l.Recess, "RECESS"),
		Bore:    symbol(l.Bore, "BORE"),
		Mark:    symbol(l.Mark, "MARK"),
		Note:    symbol(l.Note, "NOTE"),
	}
}

// layer is an entry of the layer table. Colours are of the format's index: 1
// red, 2 yellow, 3 green, 4 cyan, 5 blue, 7 black or white, 8 grey.
type layer struct {
	name   string
	colour int
}

// table lists the layers of a file, each name once. Layer 0 must exist.
func (l Layers) table() []layer {
	all := [...]layer{
		{"0", 7}, {l.Edge, 7}, {l.Opening, 1}, {l.Recess, 5}, {l.Bore, 3}, {l.Mark, 4}, {l.Note, 8},
	}
	var table []layer
next:
	for _, candidate := range all {
		for _, listed := range table {
			if listed.name == candidate.name {
				continue next
			}
		}
		table = append(table, candidate)
	}
	return table
}
