package dxf

import (
	"barwright/compile/geom"
	"barwright/lang/length"
)

// handle names a record of a file from R2000 on. 0 is none.
type handle uint64

// Handles that others refer to are fixed; those of the rest of the frame follow
// on lastFixed, those of the entities on lastFrame, which the frame never reaches.
const (
	vportTable handle = 1 + iota
	ltypeTable
	layerTable
	styleTable
	viewTable
	ucsTable
	appidTable
	dimstyleTable
	blockTable
	modelSpace
	paperSpace
	rootDictionary
	groupDictionary

	lastFixed        = groupDictionary
	lastFrame handle = 0x100
)

// r2000 writes AC1015 with the least frame that the published DXF reference
// asks for. Each record has a handle (5, but 105 for a DIMSTYLE), its owner's
// (330) and markers of its class (100).
type r2000 struct {
	*groups
	last handle
}

func (g *r2000) begin(f frame) {
	g.last = lastFixed
	g.header(f)
	g.section("CLASSES")
	g.str(0, "ENDSEC")
	g.tables(f)
	g.blocks()
	g.section("ENTITIES")
	g.last = lastFrame
}

func (g *r2000) end() {
	g.str(0, "ENDSEC")
	g.objects()
	g.str(0, "EOF")
}

func (g *r2000) header(f frame) {
	g.section("HEADER")
	g.variable("$ACADVER")
	g.str(1, "AC1015")
	g.variable("$DWGCODEPAGE")
	g.str(3, "ANSI_1252")
	g.unit()
	g.extents(f.box)
	g.variable("$HANDSEED")
	g.hex(5, lastFrame+handle(f.entities)+1) // above all in use
	g.str(0, "ENDSEC")
}

func (g *r2000) tables(f frame) {
	g.section("TABLES")
	g.table("VPORT", vportTable, 1)
	g.record("VPORT", "AcDbViewportTableRecord", vportTable)
	g.viewport(f.box)
	g.str(0, "ENDTAB")
	g.table("LTYPE", ltypeTable, 3+len(f.types))
	for _, t := range append([]lineType{{name: "ByBlock"}, {name: "ByLayer"}, {name: "Continuous"}}, f.types...) {
		g.record("LTYPE", "AcDbLinetypeTableRecord", ltypeTable)
		g.lineType(t, true)
	}
	g.str(0, "ENDTAB")
	g.table("LAYER", layerTable, len(f.layers))
	for _, l := range f.layers {
		g.record("LAYER", "AcDbLayerTableRecord", layerTable)
		g.layer(l, "Continuous")
	}
	g.str(0, "ENDTAB")
	g.table("STYLE", styleTable, 1)
	g.record("STYLE", "AcDbTextStyleTableRecord", styleTable)
	g.style("Standard")
	g.str(0, "ENDTAB")
	g.table("VIEW", viewTable, 0)
	g.str(0, "ENDTAB")
	g.table("UCS", ucsTable, 0)
	g.str(0, "ENDTAB")
	g.table("APPID", appidTable, 1)
	g.record("APPID", "AcDbRegAppTableRecord", appidTable)
	g.str(2, "ACAD")
	g.int(70, 0)
	g.str(0, "ENDTAB")
	g.table("DIMSTYLE", dimstyleTable, 1)
	g.str(100, "AcDbDimStyleTable")
	g.int(71, 0)
	g.record("DIMSTYLE", "AcDbDimStyleTableRecord", dimstyleTable)
	g.str(2, "Standard")
	g.int(70, 0)
	g.str(0, "ENDTAB")
	g.table("BLOCK_RECORD", blockTable, len(spaces))
	for _, s := range spaces {
		g.recordAs(s.handle, "BLOCK_RECORD", "AcDbBlockTableRecord", blockTable)
		g.str(2, s.name)
		g.hex(340, 0) // no layout
	}
	g.str(0, "ENDTAB")
	g.str(0, "ENDSEC")
}

// table begins a symbol table.
func (g *r2000) table(name string, h handle, entries int) {
	g.str(0, "TABLE")
	g.str(2, name)
	g.hex(5, h)
	g.hex(330, 0)
	g.str(100, "AcDbSymbolTable")
	g.int(70, entries)
}

// record begins an entry of a table, with a handle of its own.
func (g *r2000) record(kind, marker string, table handle) {
	g.recordAs(g.next(), kind, marker, table)
}

func (g *r2000) recordAs(h handle, kind, marker string, table handle) {
	code := 5
	if kind == "DIMSTYLE" {
		code = 105
	}
	g.str(0, kind)
	g.hex(code, h)
	g.hex(330, table)
	g.str(100, "AcDbSymbolTableRecord")
	g.str(100, marker)
}

func (g *r2000) next() handle {
	g.last++
	return g.last
}

// viewport is the window in which the file opens: the whole box.
func (g *r2000) viewport(box geom.Rect) {
	width, height := box.X.Size(), box.Y.Size()
	g.str(2, "*Active")
	g.int(70, 0)
	g.real(10, 0) // corners of the window, as shares of the screen
	g.real(20, 0)
	g.real(11, 1)
	g.real(21, 1)
	g.xy(12, geom.Point{X: box.X.Mid(), Y: box.Y.Mid()}) // centre of the view
	g.real(16, 0)                                        // looking down on the plane
	g.real(26, 0)
	g.real(36, 1)
	g.length(40, max(height, width)*5/4) // height of the view
	g.real(41, 1)                        // width to height
}

type space struct {
	name   string
	handle handle
}

var spaces = [...]space{{"*Model_Space", modelSpace}, {"*Paper_Space", paperSpace}}

func (g *r2000) blocks() {
	g.section("BLOCKS")
	for _, s := range spaces {
		g.entity("BLOCK", s.handle, "0")
		g.str(100, "AcDbBlockBegin")
		g.str(2, s.name)
		g.int(70, 0)
		g.xyz(10, geom.Point{})
		g.str(3, s.name)
		g.str(1, "")
		g.entity("ENDBLK", s.handle, "0")
		g.str(100, "AcDbBlockEnd")
	}
	g.str(0, "ENDSEC")
}

func (g *r2000) objects() {
	g.section("OBJECTS")
	g.dictionary(rootDictionary, 0)
	g.str(3, "ACAD_GROUP")
	g.hex(350, groupDictionary)
	g.dictionary(groupDictionary, rootDictionary)
	g.str(0, "ENDSEC")
}

func (g *r2000) dictionary(h, owner handle) {
	g.str(0, "DICTIONARY")
	g.hex(5, h)
	g.hex(330, owner)
	g.str(100, "AcDbDictionary")
	g.int(281, 1) // of two entries with one name the first stays
}

// entity begins an entity, with a handle of its own.
func (g *r2000) entity(kind string, owner handle, layer string) {
	g.str(0, kind)
	g.hex(5, g.next())
	g.hex(330, owner)
	g.str(100, "AcDbEntity")
	g.str(8, layer)
}

func (g *r2000) polyline(layer string, c geom.Contour, p pen) {
	g.entity("LWPOLYLINE", modelSpace, layer)
	g.str(100, "AcDbPolyline")
	g.int(90, len(c))
	g.int(70, p.flags())
	g.length(43, p.width)
	for _, v := range c {
		g.xy(10, v.Point)
		g.bulge(v)
	}
}

func (g *r2000) line(layer string, from, to geom.Point) {
	g.entity("LINE", modelSpace, layer)
	g.str(100, "AcDbLine")
	g.xyz(10, from)
	g.xyz(11, to)
}

func (g *r2000) circle(layer string, centre geom.Point, radius length.Length) {
	g.entity("CIRCLE", modelSpace, layer)
	g.str(100, "AcDbCircle")
	g.xyz(10, centre)
	g.length(40, radius)
}

func (g *r2000) text(layer string, t label) {
	g.entity("TEXT", modelSpace, layer)
	g.str(100, "AcDbText")
	g.place(t)
	g.str(100, "AcDbText")
	g.middle(t)
}
