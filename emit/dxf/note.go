package dxf

import (
	"cmp"
	"fmt"
	"iter"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// note is the text that goes with a part, from its upper left corner down.
type note struct {
	lines  []string
	corner geom.Point
	height length.Length
}

// Text heights that are tried, the largest first; below the part, where nothing
// bounds it, the note has the middle one.
var noteHeights = [...]length.Length{10 * length.Millimetre, 6 * length.Millimetre, 4 * length.Millimetre}

// noteOf says which piece this is and puts that on the part where it fits clear
// of all edges, below it otherwise.
func noteOf(p *model.Part, lines []string, all iter.Seq[shape]) note {
	n := note{lines: lines}
	free := newFreeSpace(p, all)
	for _, n.height = range noteHeights {
		if r, ok := free.find(n.size()); ok {
			n.corner = geom.Point{X: r.X.Lo, Y: r.Y.Hi}
			return n
		}
	}
	b := p.Outline.Bounds()
	n.height = noteHeights[1]
	n.corner = geom.Point{X: b.X.Lo, Y: b.Y.Lo - n.height}
	return n
}

// baseline is where line i begins.
func (n note) baseline(i int) geom.Point {
	return n.corner.Sub(geom.Point{Y: n.height + length.Length(i)*n.step()})
}

func (n note) step() length.Length { return n.height * 8 / 5 }

// size bounds the text. How wide a letter is depends on the reader's font; as
// wide as high is more than any common one needs.
func (n note) size() (width, height length.Length) {
	longest := 0
	for _, line := range n.lines {
		longest = max(longest, len(line))
	}
	return n.height * length.Length(longest), n.step() * length.Length(len(n.lines))
}

func noteLines(p *model.Part) []string {
	x, y := p.Size()
	lines := []string{
		p.Label + " " + p.Name,
		p.Owner,
		cmp.Or(p.Material, p.Stock) + ", " + roundMM(p.Thickness) + " thick",
		roundMM(x) + " x " + roundMM(y) + " over all",
		"UNITS MM",
	}
	if p.Face != "" {
		lines = append(lines, p.Face+" face drawn")
	}
	if p.Grain != model.GrainNone {
		lines = append(lines, "grain along "+p.Grain.String())
	}
	if sides := p.Sides(); len(sides) > 0 {
		lines = append(lines, sides[0].Name+" at the "+sides[0].Edge.String())
	}
	if p.Good != model.GoodNone {
		lines = append(lines, "good face: "+goodFaces[p.Good])
	}
	if banded := p.Banded(); banded != "" {
		lines = append(lines, "banded, not in these sizes: "+banded)
	}
	lines = append(lines, depthLines(p.Recesses)...)
	lines = append(lines, boreLines(p)...)
	if p.FarBores() {
		lines = append(lines, "FAR FACE IS BORED TOO: see its own file")
	}
	return inASCII(lines...)
}

var goodFaces = [...]string{model.GoodDrawn: "this one", model.GoodFar: "the far one", model.GoodBoth: "both"}

// inASCII writes lines in the format's letters, and drops the empty ones.
func inASCII(lines ...string) (out []string) {
	for _, line := range lines {
		if line = ascii(line); line != "" {
			out = append(out, line)
		}
	}
	return out
}

// boreLines say how deep the bores are and what a drill adds, which the contours
// do not.
func boreLines(p *model.Part) (lines []string) {
	for _, like := range p.LikeBores() {
		b := &like[0]
		if b.Far && !b.Through() {
			continue
		}
		line := fmt.Sprintf("%d x %s: bore %s", len(like), b.Name, roundMM(b.Diameter))
		if b.Slot > 0 {
			line = fmt.Sprintf("%d x %s: slot %s wide", len(like), b.Name, roundMM(b.Diameter))
		}
		if b.Through() {
			line += " through"
		} else {
			line += ", " + roundMM(b.Depth) + " deep"
		}
		if b.Sink > 0 {
			line += ", sunk to " + roundMM(b.Sink)
		}
		if b.Sink > 0 && b.Far {
			line += " from the far face"
		}
		lines = append(lines, line)
	}
	return lines
}

// depthLines say how deep the recesses are, which the contours do not.
func depthLines(recesses []model.Recess) []string {
	var depths []length.Length
	count := map[length.Length]int{}
	for _, r := range recesses {
		if count[r.Depth] == 0 {
			depths = append(depths, r.Depth)
		}
		count[r.Depth]++
	}
	lines := make([]string, len(depths))
	for i, d := range depths {
		lines[i] = fmt.Sprintf("recesses %s deep: %d", roundMM(d), count[d])
	}
	return lines
}

// roundMM prints a length for people, to a hundredth of a millimetre.
func roundMM(l length.Length) string { return l.Decimal(length.Millimetres, 2) }

// freeSpace finds room on the face of a part.
type freeSpace struct {
	bounds  geom.Rect
	outline []geom.Point
	taken   []geom.Rect // by all that is cut and drawn inside
}

func newFreeSpace(p *model.Part, all iter.Seq[shape]) freeSpace {
	f := freeSpace{bounds: p.Outline.Bounds(), outline: p.Outline.Chords()}
	for s := range all {
		if s.inner {
			f.taken = append(f.taken, s.contour.Bounds())
		}
	}
	return f
}

// find returns a free rectangle of a size, on a grid of steps from the lower
// left, with a margin of a twentieth of the text's width around it.
func (f freeSpace) find(width, height length.Length) (geom.Rect, bool) {
	const steps = 16
	margin := width / 20
	inner := f.bounds.Grow(-margin)
	spareX, spareY := inner.X.Size()-width, inner.Y.Size()-height
	if spareX < 0 || spareY < 0 {
		return geom.Rect{}, false
	}
	for j := range length.Length(steps + 1) {
		for i := range length.Length(steps + 1) {
			x, y := inner.X.Lo+spareX/steps*i, inner.Y.Lo+spareY/steps*j
			r := geom.R(x, y, x+width, y+height)
			if f.holds(r.Grow(margin)) {
				return r, true
			}
		}
	}
	return geom.Rect{}, false
}

// holds reports whether a rectangle lies on the face and touches nothing.
func (f freeSpace) holds(r geom.Rect) bool {
	for _, t := range f.taken {
		if t.Overlaps(r) {
			return false
		}
	}
	// An edge that cuts through a rectangle meets one of its diagonals or ends
	// in it. The rectangle may lie along the bounds, so look a little inside.
	r = r.Grow(-1)
	lowLeft, lowRight := geom.Point{X: r.X.Lo, Y: r.Y.Lo}, geom.Point{X: r.X.Hi, Y: r.Y.Lo}
	highLeft, highRight := geom.Point{X: r.X.Lo, Y: r.Y.Hi}, geom.Point{X: r.X.Hi, Y: r.Y.Hi}
	for i, a := range f.outline {
		b := f.outline[(i+1)%len(f.outline)]
		if r.Contains(geom.R(a.X, a.Y, a.X, a.Y)) ||
			meet(a, b, lowLeft, highRight) || meet(a, b, lowRight, highLeft) {
			return false
		}
	}
	return encloses(f.outline, lowLeft)
}
