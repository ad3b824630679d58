package dxf

import (
	"iter"

	"barwright/compile/geom"
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

// noteOf puts lines on a part where they fit clear of all edges, below it otherwise.
func noteOf(outline geom.Contour, lines []string, all iter.Seq[shape]) note {
	if n, ok := noteOn(outline, lines, all); ok {
		return n
	}
	return noteBelow(outline.Bounds(), lines)
}

// noteOn puts lines on a part; ok is false where they do not fit clear of all edges.
func noteOn(outline geom.Contour, lines []string, all iter.Seq[shape]) (n note, ok bool) {
	n.lines = lines
	free := newFreeSpace(outline, all)
	for _, n.height = range noteHeights {
		if r, ok := free.find(n.size()); ok {
			n.corner = geom.Point{X: r.X.Lo, Y: r.Y.Hi}
			return n, true
		}
	}
	return n, false
}

func noteBelow(b geom.Rect, lines []string) note {
	height := noteHeights[1]
	return note{lines: lines, height: height, corner: geom.Point{X: b.X.Lo, Y: b.Y.Lo - height}}
}

// noteAcross puts a line on the middle of a box that it may be too long for.
func noteAcross(b geom.Rect, line string) note {
	n := note{lines: []string{line}, height: noteHeights[len(noteHeights)-1]}
	width, height := n.size()
	n.corner = geom.Point{X: b.X.Mid() - width/2, Y: b.Y.Mid() + height/2}
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

// inASCII writes lines in the format's letters, and drops the empty ones.
func inASCII(lines ...string) (out []string) {
	for _, line := range lines {
		if line = ascii(line); line != "" {
			out = append(out, line)
		}
	}
	return out
}

// freeSpace finds room on the face of a part.
type freeSpace struct {
	bounds  geom.Rect
	outline []geom.Point
	all     iter.Seq[shape]
}

func newFreeSpace(outline geom.Contour, all iter.Seq[shape]) freeSpace {
	return freeSpace{bounds: outline.Bounds(), outline: outline.Chords(), all: all}
}

// find returns a free rectangle of a size, on a grid of steps from the lower
// left, with a margin of a twentieth of the text's width around it.
func (f freeSpace) find(width, height length.Length) (geom.Rect, bool) {
	margin := width / 20
	inner := f.bounds.Grow(-margin)
	spareX, spareY := inner.X.Size()-width, inner.Y.Size()-height
	if spareX < 0 || spareY < 0 {
		return geom.Rect{}, false
	}
	var columns, rows [noteSteps + 1]geom.Span
	for i := range columns {
		x, y := inner.X.Lo+spareX/noteSteps*length.Length(i), inner.Y.Lo+spareY/noteSteps*length.Length(i)
		columns[i], rows[i] = geom.Span{Lo: x, Hi: x + width}, geom.Span{Lo: y, Hi: y + height}
	}
	taken := f.taken(&columns, &rows, margin)
	for j, y := range rows {
		for i, x := range columns {
			if r := (geom.Rect{X: x, Y: y}); !taken[j][i] && f.holds(r.Grow(margin)) {
				return r, true
			}
		}
	}
	return geom.Rect{}, false
}

// noteSteps is how many steps are tried each way.
const noteSteps = 16

// taken tells which rectangles of rows and columns come, with a margin, upon what is cut
// and drawn inside.
func (f freeSpace) taken(columns, rows *[noteSteps + 1]geom.Span, margin length.Length) (taken [noteSteps + 1][noteSteps + 1]bool) {
	var r room
	for s := range f.all {
		if !s.inner {
			continue
		}
		box := r.contour(&s.form).Bounds().Grow(margin)
		for j, y := range rows {
			for i := 0; box.Y.Overlaps(y) && i < len(columns); i++ {
				taken[j][i] = taken[j][i] || box.X.Overlaps(columns[i])
			}
		}
	}
	return taken
}

// holds reports whether a rectangle lies on the face.
func (f freeSpace) holds(r geom.Rect) bool {
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
