package dxf

import (
	"slices"
	"strings"

	"barwright/lang/latin"
	"barwright/lang/length"
)

// Layers names the layers of a file. An empty name stands for the default:
// EDGE, OPENING, RECESS, BORE, BORE_THROUGH, MARK, NOTE, SHEET, SCRIBE. Names are written as
// latin.Layer spells them; two that are the same are one layer.
type Layers struct {
	Edge    string // the part's outline
	Opening string // cut through, inside the outline
	Recess  string // cut to a depth
	Bore    string // drilled to a depth
	Through string // drilled through
	Mark    string // drawn on the piece
	Note    string // for reading only
	Sheet   string // the sheet's edges, for reading only
	Scribe  string // drawn on the piece: what is cut on site to a floor or a wall
}

// kind is a kind of work; each has its layer.
type kind int

const (
	edge kind = iota
	opening
	recess
	bore
	hole
	mark
	noted
	sheet
	scribe
	kinds
)

// colours are of the format's index: 1 red, 2 yellow, 3 green, 4 cyan, 5 blue, 6 magenta, 7 black
// or white, 8 grey, 30 orange.
var colours = [kinds]int{edge: 7, opening: 1, recess: 5, bore: 3, hole: 6, mark: 4, noted: 8, sheet: 8, scribe: 30}

// layerNames are the names as written, for each kind.
type layerNames [kinds]string

func (l Layers) named() layerNames {
	return layerNames{
		edge:    latin.Layer(l.Edge, "EDGE"),
		opening: latin.Layer(l.Opening, "OPENING"),
		recess:  latin.Layer(l.Recess, "RECESS"),
		bore:    latin.Layer(l.Bore, "BORE"),
		hole:    latin.Layer(l.Through, "BORE_THROUGH"),
		mark:    latin.Layer(l.Mark, "MARK"),
		noted:   latin.Layer(l.Note, "NOTE"),
		sheet:   latin.Layer(l.Sheet, "SHEET"),
		scribe:  latin.Layer(l.Scribe, "SCRIBE"),
	}
}

// shapeLayers names the layers of shapes. It keeps the last name that was made: most
// blind shapes of a kind are as deep as the one before.
type shapeLayers struct {
	layerNames
	opt   *Options
	kind  kind
	depth length.Length
	deep  string
}

// of is the layer of a shape: where that is asked for, that of blind work ends in its
// depth in the unit of the file, RECESS_6_5. The name gives way where both are too long.
func (l *shapeLayers) of(s *shape) string {
	name := l.layerNames[s.kind]
	if !l.opt.Depths || s.depth == 0 {
		return name
	}
	if s.kind == l.kind && s.depth == l.depth {
		return l.deep
	}
	unit, places := length.Millimetres, 3
	if l.opt.Inch {
		unit, places = length.Inches, 4
	}
	depth := "_" + strings.ReplaceAll(s.depth.Decimal(unit, places), ".", "_")
	l.kind, l.depth, l.deep = s.kind, s.depth, name[:min(len(name), latin.LongestLayer-len(depth))]+depth
	return l.deep
}

// layer is an entry of the layer table.
type layer struct {
	name     string
	colour   int
	lineType string // solid where empty
}

type layerList []layer

// table lists the layers of a file, each name once. Layer 0 must exist; those of sheets
// and scribes are added where one is drawn.
func (l *layerNames) table() layerList {
	table := layerList{{name: "0", colour: 7}}
	for k := edge; k < sheet; k++ {
		table.add(layer{name: l[k], colour: colours[k]})
	}
	return table
}

func (t *layerList) add(l layer) {
	if !slices.ContainsFunc(*t, func(listed layer) bool { return listed.name == l.name }) {
		*t = append(*t, l)
	}
}
