package paper

import (
	"fmt"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/onsite"
	"barwright/compile/view"
	"barwright/lang/finding"
)

// Sizes of type on papers for the floor, which are read at arm's length: figures are 14 points, so
// that those of their fractions are 9, and nothing is smaller.
const (
	figures   = 494 * mm / 100
	siteTitle = 6 * mm
	smallest  = 33 * mm / 10
	siteBlock = 15 * mm    // height of the title block
	footer    = 2 * 6 * mm // two lines of cautions above that

	textLeading = figures * 14 / 10
	textAir     = figures * 8 / 10 // below a paragraph
)

// Cautions that papers carry where wiring or water is touched.
const (
	again     = "Measure again before you cut."
	wireWords = "Wiring: switch off, lock and test first; local code and licensed practice decide."
	findFirst = "Find cables and pipes before anything is drilled or screwed into a wall."
	pipeWords = "Water: shut it first; local code and licensed practice decide."
)

// Site lays out what is marked, measured and set by hand, for people without a screen: marking
// cards, story poles, shims, lines of screws, holes in studs, and the order of setting.
func Site(m *model.Model, size geom.Point) []model.Paper {
	f := &flow{m: m, size: size}
	f.cards()
	f.poles()
	f.shims()
	f.screws()
	f.drills()
	f.order()
	f.labels()
	return f.numbered()
}

func (f *flow) cards() {
	cards := onsite.Cards(f.m)
	for i := range cards {
		c := &cards[i]
		draw := view.MarkingCard(f.m, c)
		f.open("card-"+c.Part.Label, "Marking card: "+c.Part.Label+", "+c.Part.Name+" of "+c.Part.Owner, cardWords(f.m, c), cardCautions(c)...)
		f.picture(draw)
	}
}

func cardCautions(c *onsite.Card) (texts []string) {
	if c.Wired() {
		texts = append(texts, wireWords)
	}
	if c.Wet() {
		texts = append(texts, pipeWords)
	}
	return texts
}

// cardWords say which face is marked, and from where.
func cardWords(m *model.Model, c *onsite.Card) string {
	p, b := c.Part, m.Build
	text := "Face to mark: " + markedFace(c) + ", drawn as you see it. In place, facing " + facing(m, p) + ", its upper edge is the " + view.EdgeWords(c, model.Top) + ", its left one the " + view.EdgeWords(c, model.LeftEdge) + ". "
	what, bench := "panel", "on the bench"
	if c.InPlace {
		what, bench = "slab", "where it lies, dry"
	}
	x, y := p.Size()
	text += fmt.Sprintf("The %s is %s × %s, %s thick. ", what, mark(b, x), mark(b, y), mark(b, p.Thickness))
	text += fmt.Sprintf("Mark it %s, from the two heavy edges, %s and %s.", bench, view.EdgeWords(c, c.Across), view.EdgeWords(c, c.Up))
	for _, e := range [...]model.Edge{c.Across, c.Up} {
		if slices.Contains(c.Shut, e) {
			text += " No tape gets at the " + view.EdgeWords(c, e) + " once it stands: measure before, and before that edge is cut to fit."
		}
	}
	if len(p.Bands) > 0 && !c.InPlace {
		text += " Before its edges are banded."
	}
	return text
}

// markedFace names the face that is marked.
func markedFace(c *onsite.Card) string {
	face := c.Part.Face
	if face == "" {
		face = "drawn"
	}
	if !c.Behind {
		return "the " + face
	}
	if other := map[string]string{"inside": "outside", "top": "lower"}[face]; other != "" {
		return "the " + other + " (the " + face + " is seen, and a jigsaw tears its upper side)"
	}
	return "the one behind the " + face + " (that is seen, and a jigsaw tears its upper side)"
}

// facing is what one faces who calls one end of a part its left.
func facing(m *model.Model, p *model.Part) string {
	for i := range m.Runs {
		if m.Runs[i].Frame == p.Placement.Frame {
			return "run " + m.Runs[i].Name
		}
	}
	return "it"
}

// mark writes a length to the build's mark, with a tilde where that is not all of it.
func mark(b model.Build, l Length) string {
	near := b.Nearest(l)
	unit := " mm"
	if b.Unit.Imperial() {
		unit = " in"
	}
	text := strings.TrimSuffix(b.Plain(near), unit)
	if max(near-l, l-near) > unseen {
		return "~" + text
	}
	return text
}

// unseen is a rounding that no tilde tells: a tenth of a micrometre.
const unseen = mm / 10_000

func (f *flow) poles() {
	poles := onsite.Poles(f.m)
	for i := range poles {
		p := &poles[i]
		text := "Hold the lower end, that with the ring, at " + p.From + ", and mark everything from there: centres, but of cabinets their sides. Framing and battens at the left, all else at the right."
		if p.Upright {
			text = "Heights over " + p.From + ", at the ring below, stand at the right."
			if p.Line > 0 {
				text += " At the left: how far down from the laser's line, at the ring above."
			}
		}
		for k, part := range f.parted(p) {
			title := p.Title
			if k > 0 {
				title += more
			}
			draw := view.StoryPole(f.m, &part)
			f.open(p.Name, title, text, poleCautions(&part)...)
			f.picture(draw)
		}
	}
}

// parted parts the marks of a pole so that a paper holds each share, and shares are alike.
func (f *flow) parted(p *onsite.Pole) (parts []onsite.Pole) {
	side := func(mk *onsite.PoleMark) int {
		if !p.Upright && mk.Kind.Built() {
			return 1
		}
		return 0
	}
	var all, taken [2]int
	for i := range p.Marks {
		all[side(&p.Marks[i])]++
	}
	const above = 6 * figures // a title and a paragraph of some lines
	most := max(1, int((f.room().Y.Size()-above)/(figures*14/10))-3)
	papers := (max(all[0], all[1]) + most - 1) / most
	share := (max(all[0], all[1]) + papers - 1) / max(papers, 1)
	part := *p
	part.Marks = nil
	for i := range p.Marks {
		on := side(&p.Marks[i])
		if taken[on] == share {
			parts = append(parts, part)
			part.Marks, taken = nil, [2]int{}
		}
		taken[on]++
		part.Marks = append(part.Marks, p.Marks[i])
	}
	return append(parts, part)
}

func poleCautions(p *onsite.Pole) (texts []string) {
	has := func(kind onsite.Kind) bool {
		return slices.ContainsFunc(p.Marks, func(mk onsite.PoleMark) bool { return mk.Kind == kind })
	}
	if has(onsite.Device) {
		texts = append(texts, wireWords)
	}
	if has(onsite.Pipe) {
		texts = append(texts, pipeWords)
	}
	return texts
}

func (f *flow) shims() {
	shims := f.m.Setting.Shims
	if len(shims) == 0 {
		return
	}
	fl, b := &f.m.Room.Floor, f.m.Build
	f.open("shims", "Shims: where they go", fmt.Sprintf("Each number is a point in the list. The datum is the highest point, under %s; the laser's line is %s over it.", fl.Bears, mark(b, fl.Line)))
	f.picture(view.BearingPoints(f.m))
	f.open("shim-list", "Shims: the list", "Measure down from the laser's line to the floor at each point; where you find more or less, the shim is as much thicker or thinner. Along: along the first wall from its left end; out: out from it.")
	t := table{heads: []string{"No.", "Under", "Along", "Out", "Line to floor", "Shim"}, shares: []Length{7, 37, 11, 11, 15, 19}}
	for i := range shims {
		s := &shims[i]
		t.rows = append(t.rows, []string{fmt.Sprint(i + 1), s.Words() + ", " + s.Under, mark(b, s.At.X), mark(b, s.At.Y), mark(b, fl.Line+s.Gap), thick(b, s)})
	}
	f.table(&t)
}

// thick tells a shim, or how far something is wound out.
func thick(b model.Build, s *model.Shim) string {
	switch {
	case s.Winds:
		return "wound to " + mark(b, s.Height)
	case s.Thick == 0:
		return "none"
	}
	return mark(b, s.Thick)
}

func (f *flow) screws() {
	insides := onsite.Insides(f.m)
	if len(insides) == 0 {
		return
	}
	title := "Screw lines inside cabinets"
	text := "Seen from the front, looking in. Below: from the inner face of the left side to where the wood is. At the left: from the top of the bottom panel to the middle of the rear stretcher, where screws go through."
	items := make([]view.Drawing, len(insides))
	for i := range insides {
		items[i] = view.ScrewLines(f.m, &insides[i])
	}
	f.open("screws", title, text, findFirst)
	f.several(items, func() {
		f.open("screws", continued(title), "", findFirst)
	})
}

func (f *flow) drills() {
	drills := onsite.Drills(f.m)
	if len(drills) == 0 {
		return
	}
	b := f.m.Build
	f.open("drilling", "Holes in studs and plates", "Each through the middle of the wood's width. Heights are of the centre, over "+f.m.Room.Floor.Zero()+" as the wall stands, and from the end of the piece as it lies on the bench.", wireWords)
	t := table{heads: []string{"Piece", "For", "Hole", "Height", "From its end", "Steel plates"}, shares: []Length{13, 27, 12, 14, 22, 12}}
	for _, d := range drills {
		plates := "none"
		if d.Plates > 0 {
			plates = fmt.Sprint(d.Plates)
		}
		t.rows = append(t.rows, []string{d.Part, d.Way, "⌀ " + mark(b, d.Diameter), mark(b, d.Height), mark(b, d.FromEnd) + ", " + d.End, plates})
	}
	f.table(&t)
}

func (f *flow) order() {
	steps := f.m.Setting.Steps
	if len(steps) == 0 {
		return
	}
	f.open("order", "Order of setting", "Numbers are those of the order of work, and of the list; an arrow is the way by which a thing slides into its place. Where something comes over, under or before what stands, the list says so.")
	f.picture(view.SettingOrder(f.m))
	f.open("order-list", "Order of setting: the list", "Steps are numbered as in the order of work; left and right are as one faces the run or the wall.")
	t := table{heads: []string{"No.", "What", "How", "People"}, shares: []Length{7, 31, 51, 11}}
	for i := range steps {
		s := &steps[i]
		how := s.Way(f.m.Build.Near)
		if first := s.First(); first != "" {
			how += "; through the doorway " + first
		}
		t.rows = append(t.rows, []string{onsite.Number(f.m, s), finding.Capital(s.Title()), how, fmt.Sprint(max(s.People, 1))})
	}
	f.table(&t)
}
