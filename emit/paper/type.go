package paper

import (
	"strings"
	"sync"

	"github.com/go-fonts/liberation/liberationsansbold"
	"github.com/go-fonts/liberation/liberationsansregular"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"barwright/compile/model"
	"barwright/lang/latin"
)

// typeface measures the type that papers are set in: upright and bold.
type typeface [2]weight

// weight has its first letters in tables, for nearly all of a text is of these.
type weight struct {
	*sfnt.Font
	has  [tabled]bool
	wide [tabled]float64 // ems
}

// tabled is how many letters are in tables: those of plain Latin, with accents, and signs of the same block.
const tabled = 0x100

// letters is the type that this program carries, read once. It panics where that is broken.
var letters = sync.OnceValue(func() *typeface {
	t := new(typeface)
	for i, ttf := range [2][]byte{liberationsansregular.TTF, liberationsansbold.TTF} {
		f, err := sfnt.Parse(ttf)
		if err != nil {
			panic(err)
		}
		w := &t[i]
		w.Font = f
		var buf sfnt.Buffer
		for r := range rune(tabled) {
			w.has[r], w.wide[r] = w.measured(&buf, r)
		}
	}
	return t
})

// measured tells whether the type has a letter, and how wide it is in ems.
func (w *weight) measured(buf *sfnt.Buffer, r rune) (has bool, ems float64) {
	g, err := w.GlyphIndex(buf, r)
	if err != nil {
		g = 0
	}
	// In a type of as many 64ths to the em as the face has units, each counts as one.
	units := fixed.Int26_6(w.UnitsPerEm())
	if wide, err := w.GlyphAdvance(buf, g, units, font.HintingNone); err == nil {
		ems = float64(wide) / float64(units)
	}
	return g != 0, ems
}

func (w *weight) letter(r rune) (has bool, ems float64) {
	if r < tabled {
		return w.has[r], w.wide[r]
	}
	return w.measured(new(sfnt.Buffer), r)
}

// shown is a text in letters that the type has: for others stand those of plain Latin, as in cut
// files, and a question mark for what has none.
func (t *typeface) shown(text string) string {
	text = strings.ReplaceAll(text, "⌀", "Ø")
	if strings.IndexFunc(text, t.lacks) < 0 {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		if t.lacks(r) {
			b.WriteString(latin.ASCII(string(r)))
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}

// lacks reports whether the type has no such letter, upright or bold.
func (t *typeface) lacks(r rune) bool {
	upright, _ := t[0].letter(r)
	bold, _ := t[1].letter(r)
	return !upright || !bold
}

// width is how wide a text is set, in ems.
func (t *typeface) width(text string, bold bool) (ems float64) {
	w := &t[0]
	if bold {
		w = &t[1]
	}
	for _, r := range text {
		_, wide := w.letter(r)
		ems += wide
	}
	return ems
}

// How fractions are set, in ems of the line that they stand in.
const (
	capital  = 0.72 // height of a figure
	small    = 0.66 // type of a fraction
	fracGap  = 0.10 // before a fraction that belongs to a whole number or a tilde, and above and below its bar
	barWidth = 0.05
)

// setting is a line of text as it is set: millimetres on the paper, from the line's own point.
type setting struct {
	height float64
	pieces []piece
}

// piece is a run in its place.
type piece struct {
	of          run
	from, to    float64
	over, below float64 // widths of a numerator and a denominator
}

func (p *piece) middle() float64 { return (p.from + p.to) / 2 }

// How far the parts of a fraction stand above the line.
func (s *setting) bar() float64         { return capital / 2 * s.height }
func (s *setting) numerator() float64   { return (capital/2 + fracGap) * s.height }
func (s *setting) denominator() float64 { return (capital/2 - fracGap - capital*small) * s.height }

// set places the runs of a text, which is written for a lettering.
func (t *typeface) set(l *model.Lettering, text string) (s setting) {
	s.height = float64(l.Height) / mm
	wide := t.place(&s, text, l.Bold)
	if room := float64(l.Room) / mm; room > 0 && wide > room {
		s.height *= room / wide
		s.pieces = nil
		wide = t.place(&s, text, l.Bold)
	}
	back := 0.0
	switch l.Align {
	case model.Middle:
		back = wide / 2
	case model.Finish:
		back = wide
	}
	for i := range s.pieces {
		s.pieces[i].from -= back
		s.pieces[i].to -= back
	}
	return s
}

func (t *typeface) place(s *setting, text string, bold bool) (x float64) {
	before := ""
	for _, r := range runsOf(text) {
		p := piece{of: r, from: x}
		if r.under == "" {
			x += t.width(r.text, bold) * s.height
			p.to = x
			s.pieces, before = append(s.pieces, p), r.text
			continue
		}
		if r.afterGap || strings.HasSuffix(before, "~") {
			p.from += fracGap * s.height
		}
		p.over, p.below = t.width(r.text, bold)*small*s.height, t.width(r.under, bold)*small*s.height
		p.to = p.from + max(p.over, p.below)
		x, before = p.to+fracGap*s.height, ""
		s.pieces = append(s.pieces, p)
	}
	return x
}
