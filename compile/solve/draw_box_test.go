package solve_test

import (
	"strconv"
	"strings"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// construction is one way to build boxes.
type construction struct{ fixed, top, stands string }

// constructions lists all of them.
func constructions() []construction {
	var out []construction
	for _, fixed := range []string{"applied", "captured", "rabbeted"} {
		for _, top := range []string{"stretchers", "full"} {
			for _, stands := range []string{"sides", "base", "legs"} {
				out = append(out, construction{fixed, top, stands})
			}
		}
	}
	return out
}

// drawBoards draws what a construction leaves open.
func (d *drawn) drawBoards(t *rapid.T, fine func(string, int, int) length.Length) {
	d.captured = d.fixed == "captured"
	if rapid.Bool().Draw(t, "banded") {
		d.band = fine("banding", 1, 3)
	}
	d.shelf = d.board
	if rapid.Bool().Draw(t, "shelves of their own board") {
		d.shelf = fine("shelf board", 10, 30)
	}
	d.setback, d.shelfPlay = fine("shelf setback", 0, 15), fine("shelf play", 1, 3)
	d.pitch, d.pin, d.pinDeep = fine("pitch", 20, 32), fine("pin", 3, 8), fine("pin depth", 2, 4)
	d.fromFront, d.fromBack, d.fromEnds = fine("from front", 30, 60), fine("from back", 20, 60), fine("from ends", 10, 60)
}

// drawFeet draws a base and legs that find room.
func (d *drawn) drawFeet(fine func(string, int, int) length.Length) {
	d.baseRear, d.baseApart = fine("base rear", 0, 60), fine("base apart", 200, 700)
	d.legAcross, d.legApart = fine("leg", 20, 38), fine("legs apart", 200, 900)
	d.legInset = d.board + d.legAcross + fine("leg inset", 0, 5) - d.legAcross/2
}

// top of the clear inside, and its heights for shelves.
func (d *drawn) clearHeights() (top length.Length, shelves geom.Span) {
	top = d.height
	if d.top == "full" {
		top -= d.board
	}
	shelves = geom.Span{Lo: d.toeHeight + d.board, Hi: d.height - d.board}
	if !d.stretcherBehind() {
		shelves.Hi = top - d.stretcher
	}
	return top, shelves
}

func (d *drawn) stretcherBehind() bool { return d.captured && d.inset >= d.board }

// drawInside draws dividers, a fixed shelf and as many shelves on pins as find
// holes for sure: clear of bottom and top by the first hole and two pitches.
func (d *drawn) drawInside(t *rapid.T, fine func(string, int, int) length.Length, b *drawnBox) {
	for n, i := length.Length(rapid.IntRange(0, int(b.width/(200*length.Millimetre))).Draw(t, "dividers")), length.Length(1); i <= min(n, 3); i++ {
		b.dividers = append(b.dividers, b.width*i/(min(n, 3)+1)+fine("off", 0, 5))
	}
	_, clear := d.clearHeights()
	room := clear.Size()
	if rapid.Bool().Draw(t, "fixed shelf") {
		h := clear.Lo + d.shelf + fine("fixed shelf at", 20, 200)
		b.fixed = []length.Length{h}
		room = max(clear.Hi-h, h-d.shelf-clear.Lo)
	}
	b.shelves = rapid.IntRange(0, 3).Draw(t, "shelves")
	for n := length.Length(b.shelves); b.shelves > 0 && (room-n*d.shelf)/(n+1) < d.fromEnds+2*d.pitch+1; n-- {
		b.shelves--
	}
}

func (d *drawn) carcassText(p func(string, ...any), mm func(length.Length) string) {
	p("  top = %q\n  stands_on = %q", d.top, d.stands)
	p("  base = { rear = %s, apart = %s }", mm(d.baseRear), mm(d.baseApart))
	p("  legs = { inset = %s, across = %s, apart = %s }", mm(d.legInset), mm(d.legAcross), mm(d.legApart))
	p("  shelf = { board = sheet.shelf, setback = %s, play = %s }", mm(d.setback), mm(d.shelfPlay))
	p("  pins = { pitch = %s, diameter = %s, depth = %s, from_front = %s, from_back = %s, from_ends = %s }",
		mm(d.pitch), mm(d.pin), mm(d.pinDeep), mm(d.fromFront), mm(d.fromBack), mm(d.fromEnds))
	if d.band > 0 {
		p("  banding = banding.edge")
	}
	p("}\nsheet \"shelf\" {\n  size = [\"2440mm\", \"1220mm\"]\n  thickness = %s\n}", mm(d.shelf))
	if d.band > 0 {
		p("banding \"edge\" {\n  thickness = %s\n  roll = \"50m\"\n}", mm(d.band))
	}
}

// insideText writes what divides a cabinet, each on a line.
func (b *drawnBox) insideText(mm func(length.Length) string) string {
	list := func(name string, at []length.Length) string {
		if len(at) == 0 {
			return ""
		}
		texts := make([]string, len(at))
		for i, a := range at {
			texts[i] = mm(a)
		}
		return "\n    " + name + " = [" + strings.Join(texts, ", ") + "]"
	}
	out := list("dividers", b.dividers) + list("fixed_shelves", b.fixed)
	if b.shelves > 0 {
		out += "\n    shelves = " + strconv.Itoa(b.shelves)
	}
	return out
}
