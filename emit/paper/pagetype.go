package paper

import (
	"math"
	"unicode/utf16"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// lettering sets a line of text; where it has fractions or signs that the type has not, the whole
// text is told to whoever reads the file. Areas are of a colour before.
func (f *page) lettering(l *model.Lettering, fill string) {
	bold := 0
	if l.Bold {
		bold = 1
	}
	f.typeOf(bold, 10)
	set := f.face.set(l, f.face.shown(l.Text))
	if len(set.pieces) == 0 {
		return
	}
	say := func(x, y float64, text string) { f.say(x, y, text, fill) }
	size := func(height float64) { f.typeOf(bold, height*points) }
	x, y := f.place(l.At)
	if l.Turn != 0 {
		f.turned(l.Turn, x, y)
		defer f.put("Q\n")
	}
	first := &set.pieces[0]
	if len(set.pieces) > 1 || first.of.under != "" || first.of.text != l.Text || l.Turn%(90*geom.Degree) != 0 {
		f.put("/Span <</ActualText ").hex(l.Text).put(">> BDC\n")
		// Readers take where it begins and the type that it ends with for all of it.
		size(set.height)
		say(x+first.from, y, " ")
		defer func() {
			size(set.height)
			f.put("EMC\n")
		}()
	}
	for _, p := range set.pieces {
		if p.of.under == "" {
			size(set.height)
			say(x+p.from, y, p.of.text)
			continue
		}
		size(small * set.height)
		say(x+p.middle()-p.over/2, y-set.numerator(), p.of.text)
		say(x+p.middle()-p.below/2, y-set.denominator(), p.of.under)
		f.bar(x+p.from, x+p.to, y-set.bar(), barWidth*set.height)
	}
}

// bar draws that of a fraction.
func (f *page) bar(from, to, y, width float64) {
	const grey = "0.000 G"
	f.put(grey).put("\n").number(width*points, 2).put(" w\n").dashes(nil)
	f.end.width, f.end.dash, f.end.line = width, nil, grey
	f.at(from, y, 2).put(" m ").at(to, y, 2).put(" l S\n")
}

// turned turns what follows about a place in millimetres, until Q.
func (f *page) turned(by geom.Angle, x, y float64) {
	y = (f.height - y) * points
	x *= points
	sin, cos := math.Sin(by.Degrees()*math.Pi/180), math.Cos(by.Degrees()*math.Pi/180)
	f.put("q\n")
	for _, v := range [...]float64{
		cos, sin, -sin, cos, x + float64(sin*y) - float64(cos*x), y - float64(cos*y) - float64(sin*x),
	} {
		f.number(v, 5).put(" ")
	}
	f.put("cm\n")
}

// say writes a text, in black where areas are of another colour.
func (f *page) say(x, y float64, text, fill string) {
	const black = "0.000 g"
	if fill != black {
		f.put("q ").put(black).put(" ")
	}
	f.put("BT ").at(x, y, 2).put(" Td (")
	used := f.used[f.end.bold]
	for _, r := range text {
		f.octet(byte(r >> 8)).octet(byte(r))
		if !used[r] {
			used[r] = true
		}
	}
	f.put(") Tj ET")
	if fill != black {
		f.put(" Q")
	}
	f.put("\n")
}

// octet writes half of a letter in a text.
func (f *page) octet(b byte) *page {
	switch b {
	case '\\', '(', ')':
		f.text = append(f.text, '\\', b)
	case '\r':
		f.text = append(f.text, '\\', 'r')
	default:
		f.text = append(f.text, b)
	}
	return f
}

// hex writes a text as PDF takes one that is not ASCII.
func (f *page) hex(text string) *page {
	const digits = "0123456789ABCDEF"
	f.put("<FEFF")
	for _, u := range utf16.Encode([]rune(text)) {
		f.text = append(f.text, digits[u>>12], digits[u>>8&15], digits[u>>4&15], digits[u&15])
	}
	return f.put(">")
}
