package dxf

import (
	"cmp"
	"math"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// Version is the version of the format that a file is written in.
type Version int

const (
	// R12 (AC1009) is the default: what the most readers take.
	R12 Version = iota
	// R2000 (AC1015) has handles and owners, and a unit by definition.
	R2000
)

// frame is what a file says before its entities.
type frame struct {
	types    []lineType // beside the solid one
	layers   []layer
	box      geom.Rect // of all contours, crowns of arcs included
	entities int
	unitless bool // leave the unit out where the version does not define it
}

// format writes a file in one version: begin, entities, end.
type format interface {
	begin(f frame)
	polyline(layer string, c geom.Contour, p pen)
	line(layer string, from, to geom.Point)
	circle(layer string, centre geom.Point, radius length.Length)
	text(layer string, t label)
	end()
}

// pen tells how a polyline is drawn. The zero value closes it and gives it no width.
type pen struct {
	open  bool
	width length.Length
}

// label is a line of text. It begins at its point, or lies with its middle on it and
// is turned counter-clockwise about it.
type label struct {
	at      geom.Point
	height  length.Length // of its capitals
	text    string
	centred bool
	turn    geom.Angle
	narrow  float64 // how wide its letters are to what the font has; 0 as 1
}

// flags are those of the polyline that the pen draws.
func (p pen) flags() int {
	if p.open {
		return 0
	}
	return 1 // closed
}

// place writes where the text stands, how high and how wide it is.
func (g *groups) place(t label) {
	g.xyz(10, t.at)
	g.length(40, t.height)
	g.str(1, t.text)
	if t.turn != 0 {
		g.real(50, t.turn.Degrees())
	}
	if t.narrow != 0 {
		g.real(41, t.narrow)
	}
	if t.centred {
		g.int(72, 1)
		g.xyz(11, t.at)
	}
}

// middle says that the point of a centred text is half way up its capitals. R2000 has
// that behind the marker of a class of its own.
func (g *groups) middle(t label) {
	if t.centred {
		g.int(73, 2)
	}
}

func newFormat(v Version, g *groups) format {
	if v == R2000 {
		return &r2000{groups: g}
	}
	return r12{g}
}

// section begins a section; the records below are the same in both versions.
func (g *groups) section(name string) {
	g.str(0, "SECTION")
	g.str(2, name)
}

func (g *groups) variable(name string) { g.str(9, name) }

// unit says what lengths are in. $INSUNITS is defined from R2000 on. It is written in
// R12 too: a reader that refuses it does so aloud, one that has to guess is wrong by
// 25.4 without a word.
func (g *groups) unit() {
	unit, metric := 4, 1
	if g.inch {
		unit, metric = 1, 0
	}
	g.variable("$INSUNITS")
	g.int(70, unit)
	g.variable("$MEASUREMENT")
	g.int(70, metric)
}

func (g *groups) extents(box geom.Rect) {
	g.variable("$EXTMIN")
	g.xyz(10, geom.Point{X: box.X.Lo, Y: box.Y.Lo})
	g.variable("$EXTMAX")
	g.xyz(10, geom.Point{X: box.X.Hi, Y: box.Y.Hi})
}

// lineType is an entry of the table of line types: dashes, and gaps less than 0.
type lineType struct {
	name, description string
	dashes            []length.Length
}

// lineType writes an entry. From R2000 on a dash may hold a shape or a text; plain says
// of each that it does not.
func (g *groups) lineType(t lineType, plain bool) {
	g.str(2, t.name)
	g.int(70, 0)
	g.str(3, t.description)
	g.int(72, 65) // alignment, always A
	g.int(73, len(t.dashes))
	whole := length.Length(0)
	for _, d := range t.dashes {
		whole += max(d, -d)
	}
	g.length(40, whole)
	for _, d := range t.dashes {
		g.length(49, d)
		if plain {
			g.int(74, 0)
		}
	}
}

func (g *groups) layer(l layer, solid string) {
	g.str(2, l.name)
	g.int(70, 0) // thawed, unlocked
	g.int(62, l.colour)
	g.str(6, cmp.Or(l.lineType, solid))
}

func (g *groups) style(name string) {
	g.str(2, name)
	g.int(70, 0)
	g.real(40, 0) // height is each text's own
	g.real(41, 1) // width factor
	g.real(50, 0) // slant
	g.int(71, 0)
	g.real(42, 2.5) // last height used
	g.str(3, "txt")
	g.str(4, "")
}

func (g *groups) bulge(v geom.Vertex) {
	if math.Abs(v.Bulge) < flat {
		return
	}
	if v.Bulge != g.bulged {
		g.bulged, g.bulgedDigits = v.Bulge, appendReal(g.bulgedDigits[:0], v.Bulge)
	}
	g.code(42)
	g.b = append(g.b, g.bulgedDigits...)
	g.crlf()
}
