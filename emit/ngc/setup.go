package ngc

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/ngc/replay"
	"barwright/lang/length"
)

const (
	sheetWidth = 78
	labelWidth = 14
)

// WriteSetup writes the setup sheet for all programs of a model as plain text:
// what the person at the machine needs beside the programs. Lengths are in the
// build's unit, and in the program's where that is another one. Without programs
// it writes nothing.
func WriteSetup(w io.Writer, m *model.Model) error {
	if len(m.Programs)+len(m.Routings) == 0 {
		return nil
	}
	s := sheet{buf: bufio.NewWriter(w), model: m, parts: m.PartsByID()}
	s.text("ROUTER SETUP SHEET")
	s.text(m.Build.Titled())
	s.section("Cautions", s.cautions())
	s.section("Before each program", before[:])
	var entries []entry
	for i := range m.Programs {
		took, err := s.measured(&m.Programs[i])
		if err != nil {
			return err
		}
		entries = append(entries, s.program(i, took))
	}
	s.entries(entries)
	if len(m.Programs) > 0 {
		s.section("After the first recess, before the next", after[:])
		s.section("What the programs do not do", omissions[:])
	}
	if err := s.routings(); err != nil {
		return err
	}
	return s.buf.Flush()
}

// The texts below are common practice of the trade, not a standard.

var cautions = [...]string{
	"A program is a proposal: the person at the machine decides. The machine's manual comes first; compare each program with it. No check knows the clamps, the runout, the bit's bending or where zero really is.",
	"Eye and ear protection, dust extraction. No gloves, no loose sleeves near a turning spindle.",
	"Hold the wood against lift and shift, at both ends and close to the recess. Keep clamps, screws and nails out of the box of the moves and of the bit's radius beyond it; at an open side the bit runs out of the wood.",
	"Stay at the machine, with a hand near the stop. Stop the spindle and wait until it stands before reaching in.",
	"Never cut deeper than the wood is thick. These programs do not.",
}

var before = [...]string{
	"Measure the bit. If it is not the diameter below, put the measured one into the description and build again.",
	"Measure the wood's thickness and width at the recess; look for nails and staples.",
	"Set zero as told below, Z last, with a sheet of paper; set Z again after each change of the bit and in each setup. Then park the bit clear of the work and of the clamps: the first move goes, fast, to the clearance height from wherever the bit stands, down if it stands higher, and the next one across at that height. Nothing may stand higher on the way.",
	"Dry run: spindle off, Z zero set above the work by more than the recess is deep. Watch that the box of the moves lies where the recess shall be.",
	"Before a recess in good wood: cut the test piece that goes with it, in scrap of the same thickness and width, and lay the steel in.",
}

var after = [...]string{
	"[ ] The wood has not moved, and zero is where it was. For another setup it is moved on, and zero set anew, as its program tells.",
	"[ ] Width, measured at both ends and in the middle.",
	"[ ] Depth, measured at both ends.",
	"[ ] The steel lies in it, flush or a little below (0.2 mm or 0.008 in at most), never proud, and does not rock.",
	"[ ] The corners let the steel lie against the ends.",
}

var omissions = [...]string{
	"They drill no holes for screws, switch no coolant but by lines of the control's own, clamp nothing, and change no bit where no M6 is told of above. They do not square inside corners, and do not cut the wood to length.",
}

// cautions are those of all programs, and that they stand nowhere else where the
// programs carry no comments.
func (s *sheet) cautions() []string {
	silent := slices.ContainsFunc(s.model.Programs, func(p model.Program) bool { return p.Tool.Dialect.Comments == "none" }) ||
		slices.ContainsFunc(s.model.Routings, func(r model.Routing) bool { return r.Tool.Dialect.Comments == "none" })
	if silent {
		return append(cautions[:len(cautions):len(cautions)],
			"Programs without comments carry none of these cautions: keep this sheet at the machine.")
	}
	return cautions[:]
}

// sheet writes wrapped text.
type sheet struct {
	buf   *bufio.Writer
	model *model.Model
	parts map[string]*model.Part // by ID; lookup only
	took  []taken                // by programs of which none is like another
}

func (s *sheet) text(line string) { s.hang("", line) }

func (s *sheet) section(title string, items []string) {
	fmt.Fprintf(s.buf, "\n%s\n", title)
	for _, item := range items {
		s.hang("- ", item)
	}
}

// row writes a label and a value; the value stays in its column.
func (s *sheet) row(label, value string) {
	s.hang(fmt.Sprintf("  %-*s", labelWidth, label), value)
}

// hang writes text behind a prefix, further lines below the first one's start.
func (s *sheet) hang(prefix, text string) {
	for i, line := range wrap(text, sheetWidth-len(prefix)) {
		if i > 0 {
			prefix = strings.Repeat(" ", len(prefix))
		}
		fmt.Fprintln(s.buf, prefix+line)
	}
}

func (s *sheet) program(i int, took replay.Measures) entry {
	p := &s.model.Programs[i]
	u, t := unitsOf(p.Tool.Dialect), p.Tool
	var before *model.Program
	if i > 0 {
		before = &s.model.Programs[i-1]
	}
	part, recess := s.find(p)
	e := entry{title: fmt.Sprintf("Program %d of %d: %s.ngc", i+1, len(s.model.Programs), p.Name), router: t.Router}
	what, wood := "%s in %s (%s)", part.Stock
	if p.Test {
		what, wood = "a test piece in scrap, as "+what, "an offcut of "+part.Stock+", which no cut list holds"
	}
	e.own("cuts", fmt.Sprintf(what, p.Recess, p.PartLabel, part.Name))
	size := p.Shape.Bounds()
	e.own("recess", fmt.Sprintf("%s in X, %s in Y, %s deep; %s",
		s.both(size.X.Size(), u), s.both(size.Y.Size(), u), s.both(p.Depth, u), openings(p, u)))
	if len(p.Open) > 0 {
		e.usual("open edge", "clamp scrap of the same thickness against it, the clamps clear of the bit: it breaks out there")
	}
	e.usual("fit", fmt.Sprintf("the recess is %s wider than the steel on each closed side", s.both(recess.Fit, u)))
	e.usual("corners", s.corners(p, recess, u))
	e.own("wood", fmt.Sprintf("%s, %s x %s, %s thick; %s stay under the recess", wood,
		s.both(p.Stock.X.Size(), u), s.both(p.Stock.Y.Size(), u), s.both(p.Thick, u), s.both(p.Thick-p.Depth, u)))
	e.own("face up", part.Face)
	s.laying(&e, p, before)
	e.own("zero", p.Zero, zeroPlace(p, s.model.Build.Plain(p.Mark))+"Z0 is the top of the wood")
	s.stop(&e, p, u)
	s.bit(&e, t, p.Depth)
	e.usual("coming down", wayDown(p))
	e.usual("cutting", cutting(p))
	e.usual("levels", levelText(p, u))
	s.dialect(&e, t)
	plan, z := p.Reach()
	e.measures(plan, z, took, u)
	if p.Test {
		s.fitCheck(&e, p, recess)
	}
	return e
}

// bit says what is put in and how it runs; it goes so deep at most.
func (s *sheet) bit(e *entry, t model.Tool, deep Length) {
	u := unitsOf(t.Dialect)
	e.usual("bit", fmt.Sprintf("T%d: flat end, diameter %s, %d flutes", t.Number, s.both(t.Diameter, u), t.Flutes))
	e.usual("stick-out", "more than "+s.both(deep, u)+", and the cutting length too")
	e.usual("speeds", fmt.Sprintf("spindle %d per minute, clockwise; feed %s, ramps %s %s a minute",
		t.RPM, u.rate(t.Feed), u.rate(t.Plunge), u.short))
	e.usual("clearance", s.both(t.Clearance, u)+" above the wood")
}

// measures tells where the bit goes, and what it takes.
func (e *entry) measures(plan geom.Rect, z geom.Span, took replay.Measures, u units) {
	e.own("moves", fmt.Sprintf("box of the bit's centre: X %s, Y %s, Z %s %s; at the end to X0 Y0",
		u.span(plan.X), u.span(plan.Y), u.span(z), u.short))
	e.own("time", "about "+duration(took.Seconds))
	e.own("path", fmt.Sprintf("%.0f %s at feed, %.0f %s through the air", u.of(took.Cut), u.short, u.of(took.Air), u.short))
	e.own("wood removed", u.volume(took.Removed))
	e.usual("times", "as simulated, the wait for the spindle with them; each move starts and ends at rest. "+
		"A control that rounds corners is faster, a small machine may be slower")
}

// dialect says what the control must read and do.
func (s *sheet) dialect(e *entry, t model.Tool) {
	d := t.Dialect
	u := unitsOf(d)
	arcs := "arcs by their centre"
	if d.Chords {
		arcs = "straight pieces that leave an arc by at most " + s.both(d.Chord, u)
	}
	text := append([]string{fmt.Sprintf("%s, %d decimals; %s", u.code, d.Decimals, arcs)}, control(d)...)
	for i, lines := range [2][]string{d.Start, d.End} {
		for k, line := range lines {
			text = append(text, fmt.Sprintf("%s line %d: %s", [2]string{"start", "end"}[i], k+1, line))
		}
	}
	e.usual("text", text...)
}

// find returns the part and the recess of a program; zero values where the
// model lacks them.
func (s *sheet) find(p *model.Program) (model.Part, model.Recess) {
	part, found := s.parts[p.Part]
	if !found {
		return model.Part{}, model.Recess{}
	}
	for _, r := range part.Recesses {
		if r.ID == p.RecessID {
			return *part, r
		}
	}
	return *part, model.Recess{}
}

// both shows a length in the build's unit, and in brackets in the program's if
// that is another one. If it is the same, what no tape shows is as exact as in
// the program.
func (s *sheet) both(l Length, u units) string {
	unit, exact := s.model.Build.Unit, u.number(l)+" "+u.short
	shown := length.Plain(l, unit, length.Inch/64)
	switch {
	case unit.Imperial() != u.unit.Imperial():
		return shown + " (" + exact + ")"
	case unit.Imperial() && l%(length.Inch/64) == 0:
		return shown
	}
	return exact
}

// corners says what the round bit leaves, and what the steel needs there.
func (s *sheet) corners(p *model.Program, recess model.Recess, u units) string {
	if len(p.Reliefs) > 0 {
		return s.reliefs(p, recess, u)
	}
	if p.Corner == 0 {
		return "no inside corners between closed sides"
	}
	kept := "the recess keeps a radius of " + s.both(p.Corner, u) + " in its corners: "
	steel, found := s.steel(recess.ID)
	if !found {
		return kept + "round the corners of what goes in by as much, or square the recess's corners with a chisel"
	}
	round, alike := steel.Outline.Rounding()
	switch {
	case alike && round == 0:
		return kept + steel.Label + " has square corners, which the fit lets in"
	case !alike:
		return kept + "round the steel's corners as " + steel.Label + " is drawn, or square the recess's corners with a chisel"
	}
	return fmt.Sprintf("%sround the steel's corners as %s is drawn, %s or more, or square the recess's corners with a chisel",
		kept, steel.Label, s.both(round, u))
}

// steel finds the support plate that goes into a recess.
func (s *sheet) steel(recess string) (*model.Part, bool) {
	for _, k := range s.model.KneeWalls {
		for _, sup := range k.Supports {
			if sup.Recess == recess && recess != "" {
				part, found := s.parts[sup.Part]
				return part, found
			}
		}
	}
	return nil, false
}

// openings names the sides where the bit leaves the wood, by where they lie:
// what is called top and bottom in a drawing could be read as faces here.
func openings(p *model.Program, u units) string {
	if len(p.Open) == 0 {
		return "closed on all sides; not cut through"
	}
	b := p.Shape.Bounds()
	at := make([]string, len(p.Open))
	for i, e := range p.Open {
		switch e {
		case model.Bottom:
			at[i] = "Y " + u.number(b.Y.Lo)
		case model.RightEdge:
			at[i] = "X " + u.number(b.X.Hi)
		case model.Top:
			at[i] = "Y " + u.number(b.Y.Hi)
		case model.LeftEdge:
			at[i] = "X " + u.number(b.X.Lo)
		}
	}
	return "open at the edge at " + strings.Join(at, " and at ") + "; not cut through"
}

func duration(seconds float64) string {
	whole := int(seconds + 0.5)
	return fmt.Sprintf("%d min %02d s", whole/60, whole%60)
}
