package dxf

import (
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
	layers   []layer
	box      geom.Rect // of all contours, crowns of arcs included
	entities int
	unitless bool // leave the unit out where the version does not define it
}

// format writes a file in one version: begin, entities, end.
type format interface {
	begin(f frame)
	polyline(layer string, c geom.Contour) // closed
	line(layer string, from, to geom.Point)
	circle(layer string, centre geom.Point, radius length.Length)
	text(layer string, at geom.Point, height length.Length, s string)
	end()
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

// unit says that lengths are millimetres. $INSUNITS is defined from R2000 on. It
// is written in R12 too: a reader that refuses it does so aloud, one that has to
// guess is wrong by 25.4 without a word.
func (g *groups) unit() {
	g.variable("$INSUNITS")
	g.int(70, 4) // mm
	g.variable("$MEASUREMENT")
	g.int(70, 1) // metric
}

func (g *groups) extents(box geom.Rect) {
	g.variable("$EXTMIN")
	g.xyz(10, geom.Point{X: box.X.Lo, Y: box.Y.Lo})
	g.variable("$EXTMAX")
	g.xyz(10, geom.Point{X: box.X.Hi, Y: box.Y.Hi})
}

func (g *groups) lineType(name, description string) {
	g.str(2, name)
	g.int(70, 0)
	g.str(3, description)
	g.int(72, 65) // alignment, always A
	g.int(73, 0)  // dashes
	g.real(40, 0) // length of the pattern
}

func (g *groups) layer(l layer, lineType string) {
	g.str(2, l.name)
	g.int(70, 0) // thawed, unlocked
	g.int(62, l.colour)
	g.str(6, lineType)
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
