package dxf

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"barwright/compile/model"
	"barwright/lang/finding"
)

// lines are the note of a view: which piece this is, how it lies, and what its contours
// do not tell.
func (v view) lines(opt *Options) []string {
	if v.second {
		return v.otherLines(opt)
	}
	p := v.part
	x, y := p.Size()
	lines := append([]string{p.Label + " " + p.Name}, v.ownerLines(opt)...)
	lines = append(lines, opt.Build,
		cmp.Or(p.Material, p.Stock)+", "+opt.show(p.Thickness)+" thick"+measuredOn(opt.Batch),
		opt.show(x)+" x "+opt.show(y)+" over all",
		opt.unit(),
		v.faceLine())
	if p.Grain != model.GrainNone {
		lines = append(lines, "grain along "+p.Grain.String())
	}
	if sides := p.Sides(); len(sides) > 0 {
		lines = append(lines, sides[0].Name+" at the "+v.seen(sides[0].Edge).String())
	}
	if p.Good != model.GoodNone {
		lines = append(lines, "good face: "+v.goodFace())
	}
	if banded := p.Banded(); banded != "" {
		lines = append(lines, "banded, not in these sizes: "+banded)
	}
	lines = append(lines, v.workLines(opt)...)
	if HasOther(p, *opt) {
		lines = append(lines, v.flipLines(opt)...)
	}
	lines = append(lines, v.lostLines(opt)...)
	lines = append(lines, opt.zeroLine())
	lines = append(lines, opt.wayLines()...)
	lines = append(lines, v.reliefLines(opt)...)
	return inASCII(append(lines, smallLine(p, opt))...)
}

// ownerLines tell whose the piece is, or of several like it their labels.
func (v view) ownerLines(opt *Options) []string {
	if len(opt.Like) < 2 {
		return []string{v.part.Owner}
	}
	return wrapped(fmt.Sprintf("%d pieces: %s", len(opt.Like), strings.Join(opt.Like, ", ")))
}

// wrapped parts a text into lines of about fifty letters.
func wrapped(text string) []string { return wrap(text, 50) }

func measuredOn(batch string) string {
	if batch == "" {
		return ""
	}
	return " as measured on batch " + batch
}

// faceLine says which face is drawn, and whether it lies down.
func (v view) faceLine() string {
	switch {
	case v.behind:
		return strings.TrimSpace(v.part.Face + " face DOWN: mirrored in x")
	case v.part.Face == "":
		return ""
	}
	return v.part.Face + " face drawn"
}

// seen is where an edge of the part lies.
func (v view) seen(e model.Edge) model.Edge {
	if v.behind && (e == model.LeftEdge || e == model.RightEdge) {
		e = e.Opposite()
	}
	return (e + model.Edge(v.turn) + 4) % 4
}

func (v view) goodFace() string {
	switch {
	case v.part.Good == model.GoodBoth:
		return "both"
	case (v.part.Good == model.GoodDrawn) == !v.behind:
		return "this one"
	case v.behind:
		return "the one that lies down"
	}
	return "the far one"
}

// workLines say how deep the recesses and bores are and what a drill adds, what lines
// mark, and what is left out of the file.
func (v view) workLines(opt *Options) []string {
	var lines []string
	if !v.behind && !opt.Without.Recesses {
		lines = append(lines, v.depthLines(opt)...)
	}
	lines = append(lines, v.boreLines(opt)...)
	if !v.behind && !opt.Without.Marks {
		lines = append(lines, v.markLines()...)
	}
	if left := v.leftOut(opt); len(left) > 0 {
		lines = append(lines, "NOT IN THIS FILE: "+strings.Join(left, ", "))
	}
	return lines
}

// leftOut names the kinds of work that the view would have if they were written, and
// those of the other face too where it has no file.
func (v view) leftOut(opt *Options) []string {
	whole, without := *opt, opt.Without
	whole.Without = model.Written{}
	views := []view{v}
	if !v.second && !HasOther(v.part, *opt) {
		views = append(views, other(v.part, opt))
	}
	var names []string
	for _, v := range views {
		for s := range v.shapes(&whole) {
			name := [kinds]string{opening: "openings", recess: "recesses", bore: "bores", hole: "bores", mark: "marks", scribe: "marks"}[s.kind]
			left := [kinds]bool{opening: without.Openings, recess: without.Recesses, bore: without.Bores, hole: without.Bores, mark: without.Marks, scribe: without.Marks}[s.kind]
			if left && !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	return names
}

// markLines tell what the lines on the face are for; one with bends is one line.
func (v view) markLines() []string {
	var names []string
	for i := range v.part.Marks {
		if !v.part.GoesOn(i) {
			names = append(names, v.part.Marks[i].Name)
		}
	}
	if len(names) == 0 {
		return nil
	}
	return wrapped(finding.Counted(len(names), "mark") + ": " + strings.Join(names, ", "))
}

// boreLines tell of bores, those too that are left to a drill.
func (v view) boreLines(opt *Options) (lines []string) {
	for _, like := range v.likeBores() {
		b := like.bore
		line := fmt.Sprintf("%d x %s: bore %s", like.count, b.Name, opt.show(b.Diameter))
		if b.Slot > 0 {
			line = fmt.Sprintf("%d x %s: slot %s wide", like.count, b.Name, opt.show(b.Diameter))
		}
		if b.Through() {
			line += " through"
		} else {
			line += ", " + opt.show(b.Depth) + " deep"
		}
		if b.Sink > 0 {
			line += ", sunk to " + opt.show(b.Sink)
		}
		if b.Sink > 0 && b.Far != v.behind {
			line += " from the far face"
		}
		lines = append(lines, line)
	}
	return lines
}

// alike are bores that differ in nothing but where they are; one stands for all.
type alike struct {
	bore  *model.Bore
	count int
}

// likeBores counts the bores that are drilled from here, in the order of the first of
// each.
func (v view) likeBores() (groups []alike) {
	for i := range v.part.Bores {
		b := &v.part.Bores[i]
		if !v.bored(b) {
			continue
		}
		like := slices.IndexFunc(groups, func(a alike) bool { return a.bore.Like(b) })
		if like < 0 {
			like, groups = len(groups), append(groups, alike{bore: b})
		}
		groups[like].count++
	}
	return groups
}

// depthLines tell of recesses: of those that are as deep and open at the same edges how
// many there are.
func (v view) depthLines(opt *Options) (lines []string) {
	var kinds []string
	count := map[string]int{} // by what is said of them; lookup only
	for i := range v.part.Recesses {
		r := &v.part.Recesses[i]
		kind := opt.show(r.Depth) + " deep" + v.openWords(r, opt)
		if count[kind] == 0 {
			kinds = append(kinds, kind)
		}
		count[kind]++
	}
	for _, kind := range kinds {
		lines = append(lines, fmt.Sprintf("%d x recess %s", count[kind], kind))
	}
	return lines
}

// openWords tell where a recess runs out over an edge, and whether it goes on there.
func (v view) openWords(r *model.Recess, opt *Options) string {
	if len(r.Open) == 0 {
		return ""
	}
	edges := make([]model.Edge, len(r.Open))
	for i, e := range r.Open {
		edges[i] = v.seen(e)
	}
	slices.Sort(edges)
	words := make([]string, len(edges))
	for i, e := range edges {
		words[i] = e.String()
	}
	at := ", open at " + strings.Join(words, " and ")
	if opt.Overrun == 0 {
		return at + ": run out"
	}
	return at + ": drawn " + opt.show(opt.Overrun) + " longer there"
}

// flipLines say that there is work in the other face, how the piece is turned over for
// it, and where that file has its zero.
func (v view) flipLines(opt *Options) []string {
	what := "FAR FACE IS BORED TOO: see its own file"
	if v.behind {
		what = "FACE THAT LIES DOWN IS WORKED TOO: see its own file"
	}
	zero := "its zero is then at the " + opt.Origin.turnedOver().turned(v.turn).String() + " as drawn here"
	if opt.Origin != Middle {
		zero += ": line across the corner"
	}
	lines := []string{what, "for that turn it over " + overWords[v.turn+1]}
	if v.turn != 0 {
		lines = append(lines, "and then "+backWords[v.turn+1])
	}
	return append(lines, zero)
}

// How a piece is turned over about its own upright, as it lies turned by -1, 0 or 1
// quarters on its sheet, and how it comes to lie upright then.
var (
	overWords = [...]string{
		"from top to bottom: left edge stays at the left",
		"from left to right: bottom edge stays at the bottom",
		"from top to bottom: right edge stays at the right",
	}
	backWords = [...]string{"a quarter turn counter-clockwise", "", "a quarter turn clockwise"}
)

// zeroLine says where the file has 0, 0; nothing of the usual corner.
func (o *Options) zeroLine() string {
	if o.Origin == LowerLeft {
		return ""
	}
	return "zero at the " + o.Origin.String()
}

// wayLines say how the contours differ from what is to come of them.
func (o *Options) wayLines() (lines []string) {
	if o.Flatten > 0 {
		lines = append(lines, "arcs as chords that leave them by "+o.show(o.Flatten)+" at most")
	}
	return lines
}

func smallLine(p *model.Part, opt *Options) string {
	if !p.Small(opt.Small) {
		return ""
	}
	return "SMALL: hold it down"
}

// otherLines say which piece this is, how it lies, and from which edges one
// measures.
func (v view) otherLines(opt *Options) []string {
	p := v.part
	x, y := p.Size()
	face := ", FAR FACE"
	if !v.behind {
		face = ", DRAWN FACE"
	}
	lines := append([]string{p.Label + " " + p.Name + face}, v.ownerLines(opt)...)
	lines = append(lines, opt.Build,
		opt.show(x)+" x "+opt.show(y)+" over all",
		opt.unit())
	turn, first := opt.quarters(), "as drawn first"
	if turn == 0 {
		lines = append(lines, "turned over "+overWords[1])
	} else {
		first = "as it lay on the sheet"
		lines = append(lines, "on the sheet it lay turned: turned over from there", overWords[turn+1], "and then "+backWords[turn+1])
	}
	lines = append(lines,
		"zero at the "+opt.Origin.turnedOver().turned(turn).String()+" "+first+" is at the "+opt.Origin.String()+" here",
		"outline for reading only: it is cut already")
	lines = append(lines, v.workLines(opt)...)
	lines = append(lines, opt.wayLines()...)
	return inASCII(append(lines, v.reliefLines(opt)...)...)
}
