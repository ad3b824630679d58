package page

import (
	"io"
	"math"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// grid is the unit of a drawing's coordinates: a tenth of a millimetre.
const grid = length.Millimetre / 10

// Sizes of the type in a drawing, in CSS pixels: a drawing may not shrink or
// grow beyond what gives these; where it is too wide for the screen it scrolls.
const (
	leastType = 10
	mostType  = 14
)

// columnWidth is what a column of part drawings offers, in CSS pixels; a
// drawing that needs more takes two of them or the whole row. The style sheet
// knows it too.
const columnWidth = 370

// WriteDrawing writes a view as an SVG file of its own. The error is the
// writer's.
func WriteDrawing(w io.Writer, v *model.View) error {
	c := canvas{newMarkup(w), v}
	c.svg(look + "svg { background: var(--sheet); }\n")
	return c.close()
}

// canvas puts one view on the page: x from its left edge, y down from its top.
type canvas struct {
	*markup
	v *model.View
}

// drawing writes a view as a figure.
func (m *markup) drawing(v *model.View, class string) {
	switch least, _ := widths(v); {
	case least > 2*columnWidth:
		class += " full"
	case least > columnWidth:
		class += " wide"
	}
	m.start("figure", "class", class, "id", v.Name)
	m.start("figcaption")
	m.el("h3", v.Title)
	m.el("p", v.Note)
	m.end()
	m.start("div", "class", "scroll", "tabindex", "0", "role", "region", "aria-label", v.Title)
	c := canvas{m, v}
	c.svg("")
	m.end()
	m.end()
}

// widths are the least and the most CSS pixels that a drawing is wide.
func widths(v *model.View) (least, most int64) {
	w, size := units(v.Bounds.X.Size()), typeSize(v)
	return (w*leastType + size - 1) / size, w * mostType / size
}

func typeSize(v *model.View) int64 { return max(units(v.TextHeight), 1) }

// svg writes the drawing; style is what it must bring itself where no page
// around it does.
func (c canvas) svg(style string) {
	w, h := units(c.v.Bounds.X.Size()), units(c.v.Bounds.Y.Size())
	least, most := widths(c.v)
	width := "min-width:" + itoa(least) + "px;max-width:" + itoa(most) + "px"
	c.start("svg", "xmlns", "http://www.w3.org/2000/svg", "viewBox", "0 0 "+itoa(w)+" "+itoa(h),
		"role", "img", "font-size", itoa(typeSize(c.v)), "style", width)
	c.el("title", c.v.Title)
	if style != "" {
		c.el("style", style)
	}
	for i := range c.v.Shapes {
		c.shape(&c.v.Shapes[i])
	}
	c.dims()
	for _, t := range c.v.Texts {
		c.label(t)
	}
	for _, d := range c.v.Dims {
		c.label(d.Text)
	}
	c.end()
}

func (c canvas) shape(s *model.Shape) {
	attrs := []string{"class", string(s.Kind), "d", c.path(s)}
	if s.Part != "" {
		attrs = append(attrs, "data-part", s.Part)
	}
	if s.Part != "" && s.Part == c.v.Part && len(c.v.Alike) > 0 {
		attrs = append(attrs, "data-alike", strings.Join(c.v.Alike, " "))
	}
	c.start("path", attrs...)
	if s.Title != "" {
		c.el("title", s.Title)
	}
	c.end()
	if n := len(s.Lines); s.Kind == model.ShapeLeader && n > 0 {
		c.dot("dot", s.Lines[n-1].Point, c.v.TextHeight/7)
	}
}

// dims draws all dimension lines in one path, and a ring where running
// dimensions begin.
func (c canvas) dims() {
	if len(c.v.Dims) == 0 {
		return
	}
	var d []byte
	for _, dim := range c.v.Dims {
		for _, stroke := range dim.Strokes(c.v.TextHeight) {
			for i, p := range stroke {
				d = c.point(append(d, "ML"[min(i, 1)]), p)
			}
		}
	}
	c.el("path", "", "class", "dim", "d", string(d))
	var last geom.Point
	for i, dim := range c.v.Dims {
		if a, _ := dim.Ends(); dim.Running && (i == 0 || a != last) {
			c.dot("ring", a, c.v.TextHeight/4)
			last = a
		}
	}
}

func (c canvas) dot(class string, at geom.Point, radius length.Length) {
	x, y := c.place(at)
	c.el("circle", "", "class", class, "cx", itoa(x), "cy", itoa(y), "r", itoa(max(units(radius), 1)))
}

// label writes a text centred on its point. The middle of the letters lies
// about a third of the type's height above the line they stand on.
func (c canvas) label(t model.Text) {
	x, y := c.place(t.At)
	attrs := []string{"x", itoa(x), "y", itoa(y + units(c.v.TextHeight)*34/100)}
	if t.Turn != 0 {
		turn := strconv.FormatFloat(-t.Turn.Degrees(), 'f', -1, 64)
		attrs = append(attrs, "transform", "rotate("+turn+" "+itoa(x)+" "+itoa(y)+")")
	}
	// How wide a script sets that the estimate does not know is settled here.
	if !plain(t.Text) {
		attrs = append(attrs, "textLength", itoa(units(t.Room)), "lengthAdjust", "spacingAndGlyphs")
	}
	c.el("text", t.Text, attrs...)
}

// plain reports whether a text has only letters of known width: Latin, Greek
// and Cyrillic ones, and the signs that drawings use.
func plain(text string) bool {
	return !strings.ContainsFunc(text, func(r rune) bool { return r >= 0x530 && r != '…' && r != '⌀' })
}

// path writes a shape's outline as path data.
func (c canvas) path(s *model.Shape) string {
	var d []byte
	for i, v := range s.Lines {
		if i == 0 {
			d = c.point(append(d, 'M'), v.Point)
		}
		last := i+1 == len(s.Lines)
		if last && !s.Closed {
			break
		}
		to := s.Lines[(i+1)%len(s.Lines)].Point
		switch {
		case v.Bulge != 0:
			d = c.point(appendArc(d, v, to), to)
		case !last:
			d = c.point(append(d, 'L'), to)
		}
	}
	if s.Closed {
		d = append(d, 'Z')
	}
	return string(d)
}

// appendArc writes an arc edge up to its end point. What turns
// counter-clockwise with y up does so on the page, which SVG calls sweep 0.
func appendArc(d []byte, v geom.Vertex, to geom.Point) []byte {
	dx, dy := float64(to.X-v.X), float64(to.Y-v.Y)
	chord := math.Sqrt(float64(dx*dx) + float64(dy*dy))
	radius := chord * (1 + float64(v.Bulge*v.Bulge)) / (4 * math.Abs(v.Bulge))
	d = append(d, 'A')
	r := strconv.FormatFloat(radius/float64(grid), 'f', 1, 64)
	d = append(d, r...)
	d = append(d, ' ')
	d = append(d, r...)
	large, sweep := "0", "1"
	if math.Abs(v.Bulge) > 1 {
		large = "1"
	}
	if v.Bulge > 0 {
		sweep = "0"
	}
	return append(d, " 0 "+large+" "+sweep+" "...)
}

func (c canvas) point(d []byte, p geom.Point) []byte {
	x, y := c.place(p)
	d = strconv.AppendInt(d, x, 10)
	d = append(d, ' ')
	return strconv.AppendInt(d, y, 10)
}

func (c canvas) place(p geom.Point) (x, y int64) {
	return units(p.X - c.v.Bounds.X.Lo), units(c.v.Bounds.Y.Hi - p.Y)
}

func units(l length.Length) int64 { return int64(length.Round(l, grid) / grid) }

func itoa(n int64) string { return strconv.FormatInt(n, 10) }
