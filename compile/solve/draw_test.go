package solve_test

import (
	"fmt"
	"strings"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
	"barwright/lang/source"
)

// drawn is a random description of one run, with what its text says.
type drawn struct {
	construction
	unit                            length.Unit
	board, back                     length.Length
	captured                        bool
	baseRear, baseApart             length.Length
	legInset, legAcross, legApart   length.Length
	band                            length.Length // 0 for none
	shelf, setback, shelfPlay       length.Length
	pitch, pin, pinDeep             length.Length
	fromFront, fromBack, fromEnds   length.Length
	inset, groove, play             length.Length
	height, depth                   length.Length
	toeHeight, toeSetback           length.Length
	stretcher                       length.Length
	wall, start, long               length.Length // long is 0 where no length is written
	fromRight, outFrom              bool
	boxes                           []drawnBox
	knee                            bool
	lumberThick, lumberWide, kneeIn length.Length
	supports                        int
	steelWide, steelThick           length.Length
	reach, tail                     length.Length
	lower, upper                    int // plates
	spacing, longest                length.Length
	studsRight, solid               bool
	down, up                        int // screws of each support
	screwThick                      length.Length
}

type drawnBox struct {
	kind, name string
	width      length.Length // 0 for rest
	gap        length.Length // of a bay
	dividers   []length.Length
	fixed      []length.Length
	shelves    int
}

// drawFine draws a length of the unit's own kind: sixty-fourths of an inch, or
// tenths of a millimetre.
func drawFine(t *rapid.T, unit length.Unit, name string, lowMM, highMM int) length.Length {
	step := length.Millimetre / 10
	if unit.Imperial() {
		step = length.Inch / 64
	}
	lo, hi := length.Length(lowMM)*length.Millimetre/step, length.Length(highMM)*length.Millimetre/step
	return length.Length(rapid.Int64Range(int64(lo), int64(hi)).Draw(t, name)) * step
}

// drawRun draws a run, with a knee wall behind it where one is demanded.
func drawRun(t *rapid.T, knee bool) drawn {
	return drawRunOf(t, knee, rapid.SampledFrom(constructions()).Draw(t, "construction"))
}

func drawRunOf(t *rapid.T, knee bool, how construction) drawn {
	d := drawn{construction: how, unit: rapid.SampledFrom([]length.Unit{length.Inches, length.Millimetres}).Draw(t, "unit"), knee: knee}
	fine := func(name string, low, high int) length.Length { return drawFine(t, d.unit, name, low, high) }
	d.board, d.back = fine("board", 10, 30), fine("back", 3, 20)
	d.drawBoards(t, fine)
	d.inset, d.groove, d.play = fine("inset", 2, 60), fine("groove", 2, 9), fine("play", 0, 2)
	d.height, d.depth = fine("height", 700, 1000), fine("depth", 400, 700)
	d.toeHeight, d.toeSetback, d.stretcher = fine("toe height", 50, 200), fine("toe setback", 20, 150), fine("stretcher", 60, 120)
	d.drawFeet(fine)
	d.wall, d.start = 20*length.Metre, fine("start", 0, 500)
	d.fromRight, d.outFrom = rapid.Bool().Draw(t, "from right"), knee || rapid.Bool().Draw(t, "out from")
	total, rests := length.Length(0), 0
	for i := range rapid.IntRange(1, 5).Draw(t, "boxes") {
		b := drawnBox{kind: rapid.SampledFrom([]string{"cabinet", "cabinet", "bay", "filler"}).Draw(t, "kind"), name: fmt.Sprintf("b%d", i)}
		if b.width = fine("width", 150, 1200); b.kind == "bay" {
			b.gap = fine("gap", 0, 20)
		} else if rapid.Bool().Draw(t, "rest") {
			b.width, rests = 0, rests+1
		}
		if b.kind == "cabinet" {
			d.drawInside(t, fine, &b)
		}
		total += b.width + 2*b.gap
		d.boxes = append(d.boxes, b)
	}
	if rests > 0 && (d.outFrom || rapid.Bool().Draw(t, "length written")) {
		d.long = total + length.Length(rests)*fine("for rests", 150, 900) + length.Length(rapid.Int64Range(0, 5).Draw(t, "nanometres"))
	}
	if d.knee {
		d.lumberThick, d.lumberWide, d.kneeIn = fine("thickness", 30, 60), fine("lumber", 80, 150), fine("inset", 0, 30)
		d.steelWide, d.steelThick, d.reach, d.tail = fine("steel", 40, 60), fine("steel thickness", 4, 15), fine("reach", 150, 400), fine("tail", 42, 75)
		d.lower, d.upper = rapid.IntRange(1, 3).Draw(t, "lower plates"), rapid.IntRange(1, 3).Draw(t, "upper plates")
		d.spacing, d.longest = fine("spacing", 250, 600), fine("longest", 1500, 4000)
		d.studsRight, d.solid = rapid.Bool().Draw(t, "studs from the right"), rapid.Bool().Draw(t, "solid")
		d.down, d.up, d.screwThick = rapid.IntRange(1, 4).Draw(t, "down"), rapid.IntRange(1, 4).Draw(t, "up"), fine("screw", 3, 5)
		framing := max(total, d.long) - d.kneeIn // a support to 700 mm leaves studs and splices a place
		d.supports = rapid.IntRange(0, int(framing/(700*length.Millimetre))).Draw(t, "supports")
	}
	return d
}

// text writes the description. All lengths are exact decimals in millimetres.
func (d *drawn) text() string {
	var out strings.Builder
	mm := func(l length.Length) string { return `"` + l.Decimal(length.Millimetres, 6) + `mm"` }
	p := func(format string, args ...any) { fmt.Fprintf(&out, format+"\n", args...) }
	p("build \"drawn\" {\n  unit = %q\n}", d.unit.String())
	p("sheet \"board\" {\n  size = [\"2440mm\", \"1220mm\"]\n  thickness = %s\n}", mm(d.board))
	p("sheet \"back\" {\n  size = [\"2440mm\", \"1220mm\"]\n  thickness = %s\n}", mm(d.back))
	p("carcass \"base\" {\n  height = %s\n  depth = %s\n  board = sheet.board", mm(d.height), mm(d.depth))
	p("  back = { board = sheet.back, fixed = %q, inset = %s, groove = %s, play = %s }", d.fixed, mm(d.inset), mm(d.groove), mm(d.play))
	p("  toe_kick = { height = %s, setback = %s }\n  stretcher = %s", mm(d.toeHeight), mm(d.toeSetback), mm(d.stretcher))
	d.carcassText(p, mm)
	p("room {\n  wall \"w\" {\n    length = %s\n  }\n}", mm(d.wall))
	p("run \"r\" {\n  carcass = carcass.base")
	switch {
	case d.outFrom:
		p("  out_from = wall.w\n  at = \"3m\"")
	case d.fromRight:
		p("  along = wall.w\n  from = \"right\"\n  start = %s", mm(d.start))
	default:
		p("  along = wall.w\n  start = %s", mm(d.start))
	}
	if d.long > 0 {
		p("  length = %s", mm(d.long))
	}
	for _, b := range d.boxes {
		switch {
		case b.kind == "bay":
			p("  bay %q {\n    appliance = { width = %s, height = \"400mm\", depth = \"380mm\" }\n    gap = %s\n    blocks = stick.block\n  }", b.name, mm(b.width), mm(b.gap))
		case b.width == 0:
			p("  %s %q {\n    width = rest%s\n  }", b.kind, b.name, b.insideText(mm))
		default:
			p("  %s %q {\n    width = %s%s\n  }", b.kind, b.name, mm(b.width), b.insideText(mm))
		}
	}
	p("}\nstick \"block\" {\n  thickness = \"19mm\"\n  width = \"44mm\"\n  lengths = [\"2400mm\"]\n}")
	if d.knee {
		d.kneeText(p, mm)
	}
	return out.String()
}

func (d *drawn) kneeText(p func(string, ...any), mm func(length.Length) string) {
	p("stick \"stud\" {\n  thickness = %s\n  width = %s\n  lengths = [\"1200mm\", %s]\n}", mm(d.lumberThick), mm(d.lumberWide), mm(d.longest))
	p("flat_bar \"arm\" {\n  thickness = %s\n  width = %s\n  lengths = [\"2400mm\"]\n}", mm(d.steelThick), mm(d.steelWide))
	p("router \"bench\" {\n  bit = \"6mm\"\n  feed = \"2m\"\n}\nslab \"oak\" {\n  thickness = \"40mm\"\n  solid = %v\n}", d.solid)
	p("screw \"s\" {\n  diameter = %s\n  length = \"30mm\"\n  per_box = 100\n}", mm(d.screwThick))
	p("knee_wall \"k\" {\n  behind = run.r\n  lumber = stick.stud\n  left_inset = %s\n  router = router.bench", mm(d.kneeIn))
	p("  spacing = %s\n  bottom_plates = %d\n  top_plates = %d\n  studs_from = %q", mm(d.spacing), d.lower, d.upper, map[bool]string{false: "left", true: "right"}[d.studsRight])
	if d.supports > 0 {
		p("  supports {\n    count = %d\n    plate = flat_bar.arm\n    reach = %s\n    tail = %s", d.supports, mm(d.reach), mm(d.tail))
		p("    screws = screw.s\n    screws_each = %d\n    top_screws = screw.s\n    top_screws_each = %d\n  }", d.down, d.up)
	}
	p("}\ncounter \"c\" {\n  over = run.r\n  slab = slab.oak\n}")
	p("bar_top \"t\" {\n  over = knee_wall.k\n  slab = slab.oak\n  height = \"1100mm\"\n  overhang = { room = \"500mm\" }\n}")
}

func (d *drawn) file() source.File { return source.File{Name: "bar.hcl", Text: []byte(d.text())} }

// owned lists the parts of a thing: "cabinet.b1".
func owned(m *model.Model, key string) []*model.Part {
	var out []*model.Part
	for i := range m.Parts {
		if strings.HasPrefix(m.Parts[i].ID, key+"/") {
			out = append(out, &m.Parts[i])
		}
	}
	return out
}

func partNamed(t *rapid.T, m *model.Model, id string) *model.Part {
	for i := range m.Parts {
		if m.Parts[i].ID == id {
			return &m.Parts[i]
		}
	}
	t.Fatalf("there is no part %s", id)
	return nil
}

// bounding is the least box that holds some parts.
func bounding(parts []*model.Part) geom.Box {
	b := parts[0].Placement.Box
	for _, p := range parts[1:] {
		b = b.Union(p.Placement.Box)
	}
	return b
}
