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
	said        Length   // how wide these are at most, with what they are indented
	beside      bool     // they stand to the left of the view, not above it
	barAfter    bool     // the bar stands in the line of the scale, not below it
	wide, high  Length   // what it takes of a paper at least
}

// Parts are drawn at a quarter of their size at most, and smaller than an eighth only where the
// paper takes no more.
const (
	mostOfPart  = 4
	leastOfPart = 8
)

// fit finds the scales of a view: the largest at which it fits the room of a paper, with smaller
// type where it fits at none, with its title above it, beside it, or both. Of a part it finds those
// after it that are no smaller than an eighth; at a larger scale than that it stands only where it
// is small.
func fit(m *model.Model, first *model.View, draw view.Drawing, room geom.Rect) (at []item) {
	wide := []Length{min(130*mm, room.X.Size())}
	if first.Part != "" {
		wide = []Length{column, room.X.Size()}
	}
	f := fitting{m: m, first: first, draw: draw, room: room, shown: shownIn(first)}
	for f.height = typeOn; f.height > mm/10; f.height = f.height * 4 / 5 {
		for _, f.least = range wide {
			if at = f.scales(); len(at) > 0 {
				return at
			}
		}
	}
	scales := scalesOf(m.Build.Unit)
	it := f.drawn(scales[len(scales)-1], nil)
	it.measure(m, f.least)
	return []item{it}
}

// fitting is a view whose scales are looked for with type of a height on paper, where titles and notes
// above it are so wide at least.
type fitting struct {
	m             *model.Model
	first         *model.View
	draw          view.Drawing
	room          geom.Rect
	shown         geom.Rect // by the view
	height, least Length
}

func (f *fitting) scales() (at []item) {
	part, all := f.first.Part != "", scalesOf(f.m.Build.Unit)
	for _, n := range all {
		if part && n < mostOfPart || n < all[len(all)-1] && tooLarge(f.shown, n, f.room) {
			continue
		}
		if len(at) > 0 && (!part || n > leastOfPart*5/4) {
			break
		}
		suits := func(bounds geom.Rect) bool {
			size := n.size(bounds)
			return mayFit(size, part, f.room) && (!part || n >= leastOfPart || small(size))
		}
		it := f.drawn(n, suits)
		if !suits(it.view.Bounds) {
			if f.height > finest && (!part || n >= leastOfPart) && tooSmall(f.shown, n, f.room) {
				break
			}
			continue
		}
		if it.measure(f.m, f.least); it.fits(f.room) {
			at = append(at, it)
		}
		if it.stand(f.m); !part && it.fits(f.room) {
			at = append(at, it)
		}
	}
	return at
}

func (f *fitting) drawn(n scale, suits func(geom.Rect) bool) item {
	return item{view: f.draw(view.Type{Height: f.height * Length(n), Suits: suits}), scale: n}
}

// finest is the smallest type for which smaller scales are left out.
const finest = mm / 4

// shownIn is the rectangle round what a view shows, without what is written and measured there.
func shownIn(v *model.View) (r geom.Rect) {
	for i := range v.Shapes {
		switch s := &v.Shapes[i]; s.Kind {
		case model.ShapeLeader, model.ShapeThin, model.ShapeCentre:
		default:
			if r == (geom.Rect{}) {
				r = s.Lines.Bounds()
			}
			r = r.Union(s.Lines.Bounds())
		}
	}
	return r
}

// tooSmall reports whether what a view shows is so small at a scale that smaller type serves better than
// a smaller scale.
func tooSmall(shown geom.Rect, n scale, room geom.Rect) bool {
	size := n.size(shown)
	return 3*size.X < room.X.Size() && 3*size.Y < room.Y.Size()
}

// mayFit reports whether a view of a size on paper may have room there, with some lines above it or
// beside it.
func mayFit(size geom.Point, part bool, room geom.Rect) bool {
	above := size.Y+(heading+note)*leading/100+note <= room.Y.Size()
	beside := !part && size.X+column <= room.X.Size()
	return size.X <= room.X.Size() && size.Y <= room.Y.Size() && (above || beside)
}

// tooLarge reports whether what a view shows alone is larger than a room at a scale.
func tooLarge(shown geom.Rect, n scale, room geom.Rect) bool {
	size := n.size(shown)
	return size.X > room.X.Size() || size.Y > room.Y.Size()
}

func (it *item) fits(room geom.Rect) bool {
	return it.wide <= room.X.Size() && it.high <= room.Y.Size()
}

// small reports whether a view of a size takes little of any paper.
func small(size geom.Point) bool { return size.X <= 170*mm && size.Y <= 110*mm }

// measure puts title and note above the view, broken into lines as wide as that or as least, and tells how
// much of a paper the item takes.
func (it *item) measure(m *model.Model, least Length) {
	size := it.size()
	it.beside = false
	it.words(m, max(size.X, least))
	it.wide, it.high = max(size.X, it.said), size.Y+it.head()
}

// stand puts them to the left of the view.
func (it *item) stand(m *model.Model) {
	size := it.size()
	it.beside = true
	it.words(m, column)
	it.wide, it.high = it.said+size.X, max(size.Y, it.head())
}

// column is how wide notes are beside a view, and above that of a part.
const column = 75 * mm

// words breaks title and note into lines of a width, or what their longest words and the bar need.
func (it *item) words(m *model.Model, wide Length) {
	it.said = max(wide, indent+it.barWidth(m))
	it.title = wrap(it.view.Title, heading, it.said-indent)
	it.note = append(wrap(it.view.Note, note, it.said-indent), "Scale "+it.scale.words(m.Build.Unit))
	it.barAfter = indent+it.scaleWidth()+it.barWidth(m) <= it.said
}

// scaleWidth is how much the line of the scale takes, with the air before a bar.
func (it *item) scaleWidth() Length { return view.TypeWidth(it.note[len(it.note)-1], note) + note }

// size is that of the view on paper.
func (it *item) size() geom.Point { return it.scale.size(it.view.Bounds) }

// head is the height of title, note and bar.
func (it *item) head() Length {
	high := heading*leading/100*Length(len(it.title)) + note*leading/100*Length(len(it.note)) + note
	if it.barAfter {
		return high
	}
	return high + 2*note
}

// wrap breaks a text into lines that are no wider than most.
func wrap(text string, height, most Length) (lines []string) {
	line := ""
	for _, word := range pieces(strings.Fields(text), height, most) {
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

// pieces breaks words that are wider than a line.
func pieces(words []string, height, most Length) (all []string) {
	for _, word := range words {
		if view.TypeWidth(word, height) <= most {
			all = append(all, word)
			continue
		}
		part := ""
		for _, r := range word {
			if part != "" && view.TypeWidth(part+string(r), height) > most {
				all = append(all, part)
				part = ""
			}
			part += string(r)
		}
		all = append(all, part)
	}
	return all
}
