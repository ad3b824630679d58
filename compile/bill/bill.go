// Package bill tells what to buy: it takes a solved model with its layouts and
// returns the lines of the bill, in sections: sheets, sticks, steel, slabs,
// banding, screws, fittings, consumables. Inside a section lines follow the order of the stock or
// of the model. It looks nothing up; a price or a density that the description
// does not give stays unknown, and so does a quantity of 0.
//
// A build in inches buys slabs by the square foot and weighs in pounds beside
// the kilograms; the price per square metre that the description gives is
// converted.
package bill

import (
	"strings"

	"barwright/compile/layout"
	"barwright/compile/model"
	"barwright/lang/length"
)

// How much to spare, and the portions in which shops commonly sell small
// things (common practice).
const (
	sparePercent = 10 // more screws and pins than are needed: some drop, some strip
	shimsPerPack = 12
	tubeML       = 300 // adhesive in a tube, 10 fl oz
)

// Lines returns the bill of a model whose layouts are made.
func Lines(m *model.Model) []model.BillLine {
	b := open(m)
	b.boards()
	b.banding()
	b.screws()
	b.fittings()
	b.drains()
	b.shims()
	b.wallPlugs()
	b.adhesive()
	b.cables()
	b.nailPlates()
	b.routerBits()
	b.drillBits()
	return b.lines
}

// CutFrom returns the lines of a bill for some parts of a model alone: what they are
// cut from, laid out for them. Of a slab only these pieces are counted.
func CutFrom(m *model.Model, parts []model.Part) []model.BillLine {
	some := *m
	some.Parts = parts
	some.Layouts, _ = layout.Layouts(parts, m.Stock, layout.Shop{Saw: m.Saw, Table: m.Table})
	some.Slabs = nil
	for _, s := range m.Slabs {
		if s, any := ordered(s, parts); any {
			some.Slabs = append(some.Slabs, s)
		}
	}
	b := open(&some)
	b.boards()
	return b.lines
}

func open(m *model.Model) *builder {
	return &builder{Model: m, parts: m.PartsByID()}
}

// boards adds what the parts are cut from.
func (b *builder) boards() {
	b.sheets()
	b.sticks("sticks", false)
	b.sticks("steel", true)
	b.slabs()
}

type builder struct {
	*model.Model
	parts map[string]*model.Part // by ID; never ranged over
	lines []model.BillLine
}

// add adds a line, with its weight in pounds where the build is in inches.
func (b *builder) add(l model.BillLine) {
	if b.Build.Unit.Imperial() && l.WeightKg > 0 {
		l.Needed += "; " + model.Pounds(l.WeightKg)
	}
	b.lines = append(b.lines, l)
}

// list is a list of texts without repeats, in the order of their first use.
type list struct {
	texts []string
	seen  map[string]bool // lookup only
}

func (l *list) add(text string) {
	if l.seen[text] {
		return
	}
	if l.seen == nil {
		l.seen = map[string]bool{}
	}
	l.seen[text] = true
	l.texts = append(l.texts, text)
}

func (l *list) String() string { return strings.Join(l.texts, ", ") }

// portions returns how many portions of a size hold n.
func portions(n, size int) int { return (n + size - 1) / size }

// long prints a length that is bought or added up: in feet, begun inches
// counted whole, or in begun millimetres.
func (b *builder) long(l model.Length) string {
	if b.Build.Unit.Imperial() {
		return length.Show(length.Up(l, length.Inch), length.Feet, length.Inch)
	}
	return b.Build.Plain(length.Up(l, length.Millimetre))
}

// begun counts what is sold by the foot or the metre, begun ones whole.
func (b *builder) begun(l model.Length) (quantity float64, unit string) {
	whole, unit := length.Metre, "m"
	if b.Build.Unit.Imperial() {
		whole, unit = length.Foot, "ft"
	}
	return float64(length.Up(l, whole) / whole), unit
}
