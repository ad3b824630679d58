package markup

import (
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/lang/length"
)

// Sizes of the type in a drawing, in CSS pixels: a drawing may not shrink or
// grow beyond what gives these; where it is too wide for the screen it scrolls.
const (
	leastType = 10
	mostType  = 14
)

// TypeSize is the type's height in coordinates.
func TypeSize(height length.Length) int64 { return max(Units(height), 1) }

// Widths are the least and the most CSS pixels that a drawing is wide, with type of a
// height.
func (s Sheet) Widths(height length.Length) (least, most int64) {
	w, size := Units(s.Bounds.X.Size()), TypeSize(height)
	return (w*leastType + size - 1) / size, w * mostType / size
}

// Label writes a text centred on its point, in type of a height. The middle of the letters lies
// about a third of the type's height above the line they stand on.
func (m *Writer) Label(s Sheet, t model.Text, height length.Length) {
	x, y := s.Place(t.At)
	attrs := []string{"x", Itoa(x), "y", Itoa(y + Units(height)*34/100)}
	if t.Turn != 0 {
		turn := strconv.FormatFloat(-t.Turn.Degrees(), 'f', -1, 64)
		attrs = append(attrs, "transform", "rotate("+turn+" "+Itoa(x)+" "+Itoa(y)+")")
	}
	// How wide a script sets that the estimate does not know is settled here.
	if !plain(t.Text) {
		attrs = append(attrs, "textLength", Itoa(Units(t.Room)), "lengthAdjust", "spacingAndGlyphs")
	}
	m.El("text", t.Text, attrs...)
}

// plain reports whether a text has only letters of known width: Latin, Greek
// and Cyrillic ones, and the signs that drawings use.
func plain(text string) bool {
	return !strings.ContainsFunc(text, func(r rune) bool { return r >= 0x530 && r != '…' && r != '⌀' })
}
