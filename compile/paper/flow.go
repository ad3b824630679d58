package paper

import (
	"fmt"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view"
)

// flow fills papers from the top, and takes a new one where what comes does not fit.
type flow struct {
	m      *model.Model
	size   geom.Point
	sheets []*siteSheet
	y      Length // below which the last paper is free
}

// siteSheet is a paper with what stands at its foot.
type siteSheet struct {
	*sheet
	cautions []string
	ratio    string // its scale in words
}

func (f *flow) last() *siteSheet { return f.sheets[len(f.sheets)-1] }

// numbered are the papers, framed, each of so many.
func (f *flow) numbered() []model.Paper {
	papers := make([]model.Paper, len(f.sheets))
	for i, s := range f.sheets {
		s.Number, s.Of = i+1, len(f.sheets)
		s.Name = fmt.Sprintf("%02d-%s", s.Number, s.Name)
		s.siteFrame(f.m)
		papers[i] = s.Paper
	}
	return papers
}

// room is what may be filled of a paper.
func (f *flow) room() geom.Rect {
	return geom.R(margin+air, margin+siteBlock+footer, f.size.X-margin-air, f.size.Y-margin-air)
}

// open begins a paper with a title and what is to be known first.
func (f *flow) open(name, title, text string, cautions ...string) {
	s := &siteSheet{sheet: newSheet(f.size), cautions: cautions}
	s.Name, s.Title = name, title
	f.sheets = append(f.sheets, s)
	room := f.room()
	f.y = room.Y.Hi - siteTitle
	s.words(geom.Point{X: room.X.Lo, Y: f.y}, siteTitle, model.Start, true, title)
	f.y -= air / 2
	f.text(text)
}

// text sets a paragraph.
func (f *flow) text(text string) {
	if text == "" {
		f.y -= air
		return
	}
	room := f.room()
	for _, l := range lines(text, figures, room.X.Size()) {
		f.y -= textLeading
		f.last().words(geom.Point{X: room.X.Lo, Y: f.y}, figures, model.Start, false, l)
	}
	f.y -= textAir
}

// textHeight is what a paragraph takes; one of no words is not set.
func (f *flow) textHeight(text string) Length {
	if text == "" {
		return 0
	}
	return Length(len(lines(text, figures, f.room().X.Size())))*textLeading + textAir
}

// siteScales are finer than those of drawings: on the floor the figures count, and nobody measures
// in the paper.
var siteScales = []scale{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 35, 40, 45, 50, 60, 70, 80, 100, 120, 150, 200, 300, 500}

// fits finds the largest scale at which a view is no larger than a room on paper, and the view as it is
// drawn at that; one of the trade is taken where that makes it smaller by a ninth at most.
func (f *flow) fits(draw view.Drawing, wide, high Length) (model.View, scale) {
	last := siteScales[len(siteScales)-1]
	drawn := func(n scale) (v model.View, fits bool) {
		suits := func(bounds geom.Rect) bool {
			size := n.size(bounds)
			return size.X <= wide && size.Y <= high
		}
		v = draw(view.Type{Height: figures * Length(n), Suits: suits})
		return v, suits(v.Bounds)
	}
	var before model.View
	for i, n := range siteScales[:len(siteScales)-1] {
		if i > 0 && overlarge(&before, n, wide, high) {
			continue
		}
		v, fits := drawn(n)
		if before = v; !fits {
			continue
		}
		if trade := f.trade(n); trade != n && 8*trade <= 9*n {
			if v, fits := drawn(trade); fits {
				return v, trade
			}
		}
		return v, n
	}
	return draw(view.Type{Height: figures * Length(last)}), last
}

// trade is the largest scale of the trade that is no larger than n, or the smallest of all.
func (f *flow) trade(n scale) scale {
	all := scalesOf(f.m.Build.Unit)
	for _, s := range all {
		if s >= n {
			return s
		}
	}
	return all[len(all)-1]
}

// scaled tells in the title block the scale at which a paper's views are drawn: one that no rule has is
// no help there.
func (f *flow) scaled(n scale) {
	f.last().ratio = "not to scale"
	if f.trade(n) == n {
		f.last().ratio = n.ratio()
	}
}

// picture puts a view in the middle of what is left of the paper, below what is to be said of it:
// what it has no room to name, which is more where that takes of its room.
func (f *flow) picture(draw view.Drawing) {
	const tries = 4
	var v model.View
	var n scale
	room, said := f.room(), ""
	for range tries {
		v, n = f.fits(draw, room.X.Size(), f.y-f.textHeight(said)-room.Y.Lo)
		note := f.beside(&v)
		if note == said {
			break
		}
		said = note
	}
	if said != "" {
		f.text(said)
	}
	f.scaled(n)
	at := geom.Point{X: room.X.Lo + (room.X.Size()-n.on(v.Bounds.X.Size()))/2, Y: f.y - n.on(v.Bounds.Y.Size())}
	f.last().put(&v, n, at)
	f.y = at.Y - air
}

// beside is the note of a view but for the rounding of its figures, which the foot of the paper tells.
func (f *flow) beside(v *model.View) string {
	return strings.TrimSpace(strings.Replace(v.Note, f.m.Build.Rounding(), "", 1))
}

// overlarge reports whether a view as it was drawn before is larger than a room at a scale, by so much that
// type of another height makes it no smaller than that.
func overlarge(drawn *model.View, n scale, wide, high Length) bool {
	own := func(size Length) Length { return n.on(size - 2*drawn.TextHeight) }
	return own(drawn.Bounds.X.Size()) > wide*9/8 || own(drawn.Bounds.Y.Size()) > high*9/8
}
