package page

import (
	"io"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/markup"
	"barwright/lang/length"
)

// columnWidth is what a column of part drawings offers, in CSS pixels; a
// drawing that needs more takes two of them or the whole row. The style sheet
// knows it too.
const columnWidth = 370

// WriteDrawing writes a view as an SVG file of its own. The error is the
// writer's.
func WriteDrawing(w io.Writer, v *model.View) error {
	c := newCanvas(markup.New(w), v)
	c.svg(markup.Look + "svg { background: var(--sheet); }\n")
	return c.Close()
}

// canvas puts one view on the page.
type canvas struct {
	*markup.Writer
	markup.Sheet
	v *model.View
}

func newCanvas(m *markup.Writer, v *model.View) canvas {
	return canvas{m, markup.Sheet{Bounds: v.Bounds}, v}
}

// drawing writes a view as a figure.
func drawing(m *markup.Writer, v *model.View, class string) {
	switch least, _ := (markup.Sheet{Bounds: v.Bounds}).Widths(v.TextHeight); {
	case least > 2*columnWidth:
		class += " full"
	case least > columnWidth:
		class += " wide"
	}
	m.Start("figure", "class", class, "id", v.Name)
	m.Start("figcaption")
	m.El("h3", v.Title)
	m.El("p", unbroken(v.Note))
	m.End()
	m.Start("section", "class", "scroll", "tabindex", "0", "aria-label", v.Title)
	newCanvas(m, v).svg("")
	m.End()
	m.End()
}

// svg writes the drawing; style is what it must bring itself where no page
// around it does.
func (c canvas) svg(style string) {
	w, h := c.Size()
	least, most := c.Widths(c.v.TextHeight)
	width := "min-width:" + markup.Itoa(least) + "px;max-width:" + markup.Itoa(most) + "px"
	c.Start("svg", "xmlns", "http://www.w3.org/2000/svg", "viewBox", "0 0 "+markup.Itoa(w)+" "+markup.Itoa(h),
		"role", "img", "font-size", markup.Itoa(markup.TypeSize(c.v.TextHeight)), "style", width)
	c.El("title", c.v.Title)
	if style != "" {
		c.El("style", style)
	}
	for i := range c.v.Shapes {
		c.shape(&c.v.Shapes[i])
	}
	c.dims()
	for _, t := range c.v.Texts {
		c.Label(c.Sheet, t, c.v.TextHeight)
	}
	for _, d := range c.v.Dims {
		c.Label(c.Sheet, d.Text, c.v.TextHeight)
	}
	c.End()
}

// shades are classes of the style sheet.
var shades = [...]string{model.ShadeTop: "top", model.ShadeLeft: "lhs", model.ShadeRight: "rhs"}

func (c canvas) shape(s *model.Shape) {
	class := string(s.Kind)
	if s.Shade != model.Unshaded {
		class += " " + shades[s.Shade]
	}
	attrs := []string{"class", class, "d", c.Path(s.Lines, s.Closed)}
	if s.Part != "" {
		attrs = append(attrs, "data-part", s.Part)
	}
	if s.Part != "" && s.Part == c.v.Part && len(c.v.Alike) > 0 {
		attrs = append(attrs, "data-alike", strings.Join(c.v.Alike, " "))
	}
	c.Start("path", attrs...)
	if s.Title != "" {
		c.El("title", s.Title)
	}
	c.End()
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
				d = c.Point(append(d, "ML"[min(i, 1)]), p)
			}
		}
	}
	c.El("path", "", "class", "dim", "d", string(d))
	var last geom.Point
	for i, dim := range c.v.Dims {
		if a, _ := dim.Ends(); dim.Running && (i == 0 || a != last) {
			c.dot("ring", a, c.v.TextHeight/4)
			last = a
		}
	}
}

func (c canvas) dot(class string, at geom.Point, radius length.Length) {
	x, y := c.Place(at)
	c.El("circle", "", "class", class, "cx", markup.Itoa(x), "cy", markup.Itoa(y), "r", markup.Itoa(max(markup.Units(radius), 1)))
}
