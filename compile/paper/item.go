package paper

import (
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view"
)

// item is a view at its scale, with what is written over it.
type item struct {
	view        model.View
	scale       scale
	title, note []string // their lines
	wide, high  Length   // what it takes of a paper at least
}

// Parts are drawn at a quarter of their size at most, and smaller than an eighth only where the
// paper takes no more.
const (
	mostOfPart  = 4
	leastOfPart = 8
)

// fit finds the scale of a view: the largest at which it fits the room of a paper. A part that
// stands for itself at a smaller one may take half of it.
func fit(m *model.Model, first *model.View, draw view.Drawing, room geom.Rect) item {
	scales := scalesOf(m.Build.Unit)
	for i := 0; ; i++ {
		n := scales[min(i, len(scales)-1)]
		if over := i - (len(scales) - 1); over > 0 {
			n <<= over
		}
		if first.Part != "" && n < mostOfPart || n.on(first.Bounds.X.Size()-2*first.TextHeight) > room.X.Size()*9/8 {
			continue
		}
		it := item{view: draw(typeOn * Length(n)), scale: n}
		it.view.Name = first.Name
		it.measure(m, room.X.Size())
		fits := it.wide <= room.X.Size() && it.high <= room.Y.Size()
		half := 2*it.wide+between <= room.X.Size() || 2*it.high+between <= room.Y.Size()
		if fits && (first.Part == "" || n >= leastOfPart || half) || n > 10_000 {
			return it
		}
	}
}

// measure breaks title and note into lines, and tells how much of a paper the item takes.
func (it *item) measure(m *model.Model, most Length) {
	least := 130 * mm
	if it.view.Part != "" {
		least = 75 * mm
	}
	size := it.size()
	it.wide = max(size.X, indent+it.barWidth(m), min(least, most))
	it.title = wrap(it.view.Title, heading, it.wide-indent)
	it.note = wrap(it.view.Note, note, it.wide-indent)
	for _, l := range it.title {
		it.wide = max(it.wide, indent+view.TypeWidth(l, heading))
	}
	for _, l := range it.note {
		it.wide = max(it.wide, indent+view.TypeWidth(l, note))
	}
	it.high = size.Y + it.head()
}

// size is that of the view on paper.
func (it *item) size() geom.Point {
	return geom.Point{X: it.scale.on(it.view.Bounds.X.Size()), Y: it.scale.on(it.view.Bounds.Y.Size())}
}

// head is the height of title, note and bar.
func (it *item) head() Length {
	return heading*leading/100*Length(len(it.title)) + note*leading/100*Length(len(it.note)) + 3*note
}

// wrap breaks a text into lines that are no wider than most.
func wrap(text string, height, most Length) (lines []string) {
	line := ""
	for _, word := range strings.Fields(text) {
		next := strings.TrimSpace(line + " " + word)
		if line != "" && view.TypeWidth(next, height) > most {
			lines = append(lines, line)
			next = word
		}
		line = next
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}
