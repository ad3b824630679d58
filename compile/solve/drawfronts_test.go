package solve_test

import (
	"fmt"
	"strings"

	"pgregory.net/rapid"

	"barwright/lang/length"
	"barwright/lang/source"
)

// drawnFronts is a random run of cabinets with fronts, and what its text says.
type drawnFronts struct {
	unit                            length.Unit
	board, back, door, box, banding length.Length // banding 0: none
	inset, captured, along          bool
	height, depth, toeHeight        length.Length
	gap, top, bottom                length.Length
	hinge                           struct{ cup, depth, edge, end, plate, pitch, bore length.Length }
	handle                          bool
	pitch, fromEdge                 length.Length
	clearance, lower, up, behind    length.Length
	groove, grooveUp, play          length.Length
	density                         int
	slides                          []length.Length
	cabinets                        []drawnCabinet
}

type drawnCabinet struct {
	name    string
	width   length.Length
	blind   length.Length   // 0: none
	drawers []length.Length // 0: rest
	doors   int
	right   bool
}

// closed reports whether the fronts reach down to the bottom.
func (c *drawnCabinet) closed() bool {
	if c.doors > 0 {
		return true
	}
	for _, h := range c.drawers {
		if h == 0 {
			return true
		}
	}
	return false
}

func drawFronts(t *rapid.T) drawnFronts {
	d := drawnFronts{unit: rapid.SampledFrom([]length.Unit{length.Inches, length.Millimetres}).Draw(t, "unit")}
	fine := func(name string, low, high int) length.Length { return drawFine(t, d.unit, name, low, high) }
	d.board, d.back, d.door, d.box = fine("board", 15, 22), fine("back", 5, 12), fine("door", 16, 25), fine("box", 10, 19)
	if rapid.Bool().Draw(t, "banded") {
		d.banding = length.Length(rapid.Int64Range(3, 20).Draw(t, "banding")) * length.Millimetre / 10
	}
	d.inset, d.captured, d.along = rapid.Bool().Draw(t, "inset"), rapid.Bool().Draw(t, "captured"), rapid.Bool().Draw(t, "along")
	d.height, d.depth, d.toeHeight = fine("height", 900, 2300), fine("depth", 500, 700), fine("toe", 60, 150)
	d.gap, d.top, d.bottom = fine("gap", 1, 5), fine("top", 0, 6), fine("bottom", 0, 6)
	h := &d.hinge
	h.cup, h.depth, h.edge, h.end = fine("cup", 26, 40), fine("cup depth", 8, 14), fine("cup edge", 3, 7), fine("end", 60, 100)
	h.plate, h.pitch, h.bore = fine("plate", 28, 40), fine("plate pitch", 25, 40), fine("plate bore", 3, 8)
	d.handle, d.fromEdge = rapid.Bool().Draw(t, "handle"), fine("handle edge", 30, 60)
	if rapid.Bool().Draw(t, "no knob") {
		d.pitch = fine("handle pitch", 64, 128)
	}
	d.clearance, d.behind = fine("clearance", 10, 15), fine("behind", 0, 20)
	d.up, d.lower = fine("up", 30, 35), fine("lower", 65, 75)
	d.groove, d.grooveUp, d.play = fine("groove", 4, 8), fine("groove up", 8, 14), fine("play", 0, 2)
	d.density = rapid.SampledFrom([]int{0, 500, 750, 1200}).Draw(t, "density")
	for l := 200; l <= 650; l += 50 {
		d.slides = append(d.slides, length.Length(l)*length.Millimetre)
	}
	for i := range rapid.IntRange(1, 4).Draw(t, "cabinets") {
		c := drawnCabinet{name: fmt.Sprintf("b%d", i), width: fine("width", 400, 1000), right: rapid.Bool().Draw(t, "right")}
		if rapid.Bool().Draw(t, "false front") {
			c.blind = fine("false height", 60, 120)
		}
		c.doors = rapid.IntRange(0, 2).Draw(t, "doors")
		high := d.height > 1500*length.Millimetre
		most := map[bool]int{false: 2, true: 3}[high || c.doors == 0]
		for range rapid.IntRange(0, most).Draw(t, "drawers") {
			height := fine("drawer height", 120, 140)
			if (high || c.doors == 0) && rapid.Bool().Draw(t, "rest") {
				height = 0
			}
			c.drawers = append(c.drawers, height)
		}
		d.cabinets = append(d.cabinets, c)
	}
	return d
}

// text writes the description. All lengths are exact decimals in millimetres.
func (d *drawnFronts) text() string {
	var out strings.Builder
	mm := func(l length.Length) string { return `"` + l.Decimal(length.Millimetres, 6) + `mm"` }
	word := func(is bool, yes, no string) string {
		if is {
			return yes
		}
		return no
	}
	p := func(format string, args ...any) { fmt.Fprintf(&out, format+"\n", args...) }
	p("build \"drawn\" {\n  unit = %q\n}", d.unit.String())
	for i, t := range []length.Length{d.board, d.back, d.box, d.door} {
		p("sheet %q {\n  size = [\"2440mm\", \"1220mm\"]\n  thickness = %s", []string{"board", "back", "box", "door"}[i], mm(t))
		if i == 3 && d.density > 0 {
			p("  density = %d", d.density)
		}
		p("}")
	}
	banding := ""
	if d.banding > 0 {
		banding = ", banding = banding.edge"
		p("banding \"edge\" {\n  thickness = %s\n  roll = \"50m\"\n}", mm(d.banding))
	}
	p("fitting \"hinge\" {}\nfitting \"slides\" {}\nroom {\n  wall \"w\" {\n    length = \"20m\"\n  }\n}")
	p("carcass \"base\" {\n  height = %s\n  depth = %s\n  board = sheet.board", mm(d.height), mm(d.depth))
	p("  back = { board = sheet.back, fixed = %q, inset = \"25mm\" }\n  toe_kick = { height = %s }", word(d.captured, "captured", "applied"), mm(d.toeHeight))
	p("  door = { board = sheet.door, fit = %q, gap = %s, top = %s, bottom = %s, grain = %q%s }",
		word(d.inset, "inset", "overlay"), mm(d.gap), mm(d.top), mm(d.bottom), word(d.along, "along", "up"), banding)
	h := &d.hinge
	p("  hinge = { cup = %s, depth = %s, from_edge = %s, from_end = %s, plate = %s, plate_pitch = %s, plate_bore = %s, plate_depth = \"12mm\", fitting = fitting.hinge }",
		mm(h.cup), mm(h.depth), mm(h.edge), mm(h.end), mm(h.plate), mm(h.pitch), mm(h.bore))
	if d.handle {
		p("  handle = { pitch = %s, from_edge = %s }", mm(d.pitch), mm(d.fromEdge))
	}
	slides := make([]string, len(d.slides))
	for i, l := range d.slides {
		slides[i] = mm(l)
	}
	p("  drawer = { board = sheet.box, clearance = %s, lower = %s, up = %s, behind = %s, groove = %s, groove_up = %s, play = %s, lengths = [%s], fitting = fitting.slides }\n}",
		mm(d.clearance), mm(d.lower), mm(d.up), mm(d.behind), mm(d.groove), mm(d.grooveUp), mm(d.play), strings.Join(slides, ", "))
	p("run \"r\" {\n  along = wall.w\n  carcass = carcass.base")
	for _, c := range d.cabinets {
		p("  cabinet %q {\n    width = %s\n    hinged = %q", c.name, mm(c.width), word(c.right, "right", "left"))
		if c.blind > 0 {
			p("    false_front = %s", mm(c.blind))
		}
		if len(c.drawers) > 0 {
			heights := make([]string, len(c.drawers))
			for i, h := range c.drawers {
				if heights[i] = mm(h); h == 0 {
					heights[i] = "rest"
				}
			}
			p("    drawers = [%s]", strings.Join(heights, ", "))
		}
		p("    doors = %d\n  }", c.doors)
	}
	p("}")
	return out.String()
}

func (d *drawnFronts) file() source.File {
	return source.File{Name: "bar.hcl", Text: []byte(d.text())}
}
