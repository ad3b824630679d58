package dxf

import (
	"barwright/compile/geom"
	"barwright/lang/length"
)

// r12 writes AC1009: no handles, owners or markers; references go by name
// (published DXF reference, R12).
type r12 struct{ *groups }

func (g r12) begin(f frame) {
	g.section("HEADER")
	g.variable("$ACADVER")
	g.str(1, "AC1009")
	if !f.unitless {
		g.unit()
	}
	g.extents(f.box)
	g.str(0, "ENDSEC")

	g.section("TABLES")
	g.table("LTYPE", 1)
	g.str(0, "LTYPE")
	g.lineType("CONTINUOUS", "Solid line")
	g.str(0, "ENDTAB")
	g.table("LAYER", len(f.layers))
	for _, l := range f.layers {
		g.str(0, "LAYER")
		g.layer(l, "CONTINUOUS")
	}
	g.str(0, "ENDTAB")
	g.table("STYLE", 1)
	g.str(0, "STYLE")
	g.style("STANDARD")
	g.str(0, "ENDTAB")
	g.str(0, "ENDSEC")

	g.section("BLOCKS")
	g.str(0, "ENDSEC")
	g.section("ENTITIES")
}

func (g r12) end() {
	g.str(0, "ENDSEC")
	g.str(0, "EOF")
}

func (g r12) table(name string, entries int) {
	g.str(0, "TABLE")
	g.str(2, name)
	g.int(70, entries)
}

func (g r12) polyline(layer string, c geom.Contour) {
	g.str(0, "POLYLINE")
	g.str(8, layer)
	g.int(66, 1) // vertices follow
	g.xyz(10, geom.Point{})
	g.int(70, 1) // closed
	for _, v := range c {
		g.str(0, "VERTEX")
		g.str(8, layer)
		g.xyz(10, v.Point)
		g.bulge(v)
	}
	g.str(0, "SEQEND")
	g.str(8, layer)
}

func (g r12) line(layer string, from, to geom.Point) {
	g.str(0, "LINE")
	g.str(8, layer)
	g.xyz(10, from)
	g.xyz(11, to)
}

func (g r12) circle(layer string, centre geom.Point, radius length.Length) {
	g.str(0, "CIRCLE")
	g.str(8, layer)
	g.xyz(10, centre)
	g.length(40, radius)
}

func (g r12) text(layer string, at geom.Point, height length.Length, s string) {
	g.str(0, "TEXT")
	g.str(8, layer)
	g.xyz(10, at)
	g.length(40, height)
	g.str(1, s)
}
