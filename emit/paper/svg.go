package paper

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/markup"
	"barwright/lang/length"
)

// WriteSVG writes a paper as a drawing of its own, in millimetres. Type is real text in whatever
// sans face the reader has; each piece stands where it is in the PDF. The error is the writer's.
func WriteSVG(w io.Writer, p *model.Paper) error {
	s := svg{markup.New(w), letters(), p.Size.Y}
	wide, high := number(p.Size.X), number(p.Size.Y)
	s.Start("svg", "xmlns", "http://www.w3.org/2000/svg", "width", wide+"mm", "height", high+"mm",
		"viewBox", "0 0 "+wide+" "+high, "role", "img", "font-family", "Liberation Sans, Arial, Helvetica, sans-serif",
		"text-anchor", "middle", "fill", "none", "stroke-linejoin", "round")
	s.El("title", p.Title)
	s.El("style", styles(p))
	s.El("path", "", "d", "M0 0H"+wide+"V"+high+"H0Z", "fill", "#fff")
	for i := range p.Shapes {
		s.shape(&p.Shapes[i])
	}
	for i := range p.Lettering {
		s.lettering(&p.Lettering[i])
	}
	if err := s.Close(); err != nil {
		return fmt.Errorf("writing paper %s: %w", p.Name, err)
	}
	return nil
}

// svg writes one paper; its y counts from the top.
type svg struct {
	*markup.Writer
	face   *typeface
	height length.Length
}

// styles are the pens of a paper, those that it uses.
func styles(p *model.Paper) string {
	var b strings.Builder
	b.WriteString("\ntext{fill:#000;white-space:pre}\n")
	used := map[model.ShapeKind]bool{} // lookup only
	for i := range p.Shapes {
		kind := p.Shapes[i].Kind
		if used[kind] {
			continue
		}
		used[kind] = true
		pen := penOf(kind)
		if pen.width == 0 {
			continue
		}
		fmt.Fprintf(&b, ".%s{stroke:%s;stroke-width:%s", kind, hex(pen.grey, pen.grey, pen.grey), decimal(pen.width))
		for k, d := range pen.dash {
			b.WriteString([]string{";stroke-dasharray:", " "}[min(k, 1)] + decimal(d))
		}
		b.WriteString("}\n")
	}
	if slices.ContainsFunc(p.Shapes, func(s model.Shape) bool { return s.Shade != model.Unshaded }) {
		b.WriteString(".face{stroke-width:" + decimal(faceLine) + "}\n")
	}
	return b.String()
}

func (s svg) shape(shape *model.Shape) {
	if len(shape.Lines) == 0 {
		return
	}
	class := string(shape.Kind)
	if shape.Shade != model.Unshaded {
		class += " face"
	}
	attrs := []string{"class", class, "d", s.path(shape.Lines, shape.Closed)}
	if fill := penOf(shape.Kind).shaded(shape.Shade).fill; fill != nil && shape.Closed {
		attrs = append(attrs, "fill", hex(fill[0], fill[1], fill[2]))
	}
	s.El("path", "", attrs...)
}

// path writes an outline as path data.
func (s svg) path(c geom.Contour, closed bool) string {
	d := s.appendPoint(append(make([]byte, 0, 24*len(c)), 'M'), c[0].Point)
	for i, v := range c {
		last := i+1 == len(c)
		if last && !closed {
			break
		}
		to := c[(i+1)%len(c)].Point
		switch {
		case v.Bulge != 0:
			d = s.appendPoint(append(d, arc(v, to)...), to)
		case !last:
			d = s.appendPoint(append(d, 'L'), to)
		}
	}
	if closed {
		d = append(d, 'Z')
	}
	return string(d)
}

// arc writes an arc up to its end point. What turns counter-clockwise with y up does so on the
// page, which SVG calls sweep 0.
func arc(v geom.Vertex, to geom.Point) string {
	dx, dy := float64(to.X-v.X), float64(to.Y-v.Y)
	chord := math.Sqrt(float64(dx*dx) + float64(dy*dy))
	radius := decimal(chord * (1 + float64(v.Bulge*v.Bulge)) / (4 * math.Abs(v.Bulge)) / mm)
	large, sweep := "0", "1"
	if math.Abs(v.Bulge) > 1 {
		large = "1"
	}
	if v.Bulge > 0 {
		sweep = "0"
	}
	return "A" + radius + " " + radius + " 0 " + large + " " + sweep + " "
}

// lettering sets a line of text. A fraction is stacked, and reads as it is written: what parts its
// figures is there and has no size.
func (s svg) lettering(l *model.Lettering) {
	set := s.face.set(l, l.Text)
	if len(set.pieces) == 0 {
		return
	}
	attrs := []string{"transform", "translate(" + s.point(l.At) + ")", "font-size", decimal(set.height)}
	if l.Turn != 0 {
		attrs[1] += "rotate(" + decimal(-l.Turn.Degrees()) + ")"
	}
	if l.Bold {
		attrs = append(attrs, "font-weight", "bold")
	}
	if first := &set.pieces[0]; len(set.pieces) == 1 && first.of.under == "" {
		s.El("text", l.Text, append(attrs, "x", decimal(first.middle()))...)
		return
	}
	s.Start("g", attrs...)
	s.Start("text")
	bars := ""
	for i := range set.pieces {
		p := &set.pieces[i]
		x := decimal(p.middle())
		if p.of.under == "" {
			s.El("tspan", p.of.text, "x", x, "y", "0")
			continue
		}
		size := decimal(small * set.height)
		if p.of.afterGap {
			s.El("tspan", " ", "font-size", "0")
		}
		s.El("tspan", p.of.text, "x", x, "y", decimal(-set.numerator()), "font-size", size)
		s.El("tspan", "/", "font-size", "0")
		s.El("tspan", p.of.under, "x", x, "y", decimal(-set.denominator()), "font-size", size)
		bars += "M" + decimal(p.from) + " " + decimal(-set.bar()) + "H" + decimal(p.to)
	}
	s.End()
	s.El("path", "", "d", bars, "stroke", "#000", "stroke-width", decimal(barWidth*set.height))
	s.End()
}

// point writes the coordinates of a point.
func (s svg) point(p geom.Point) string { return string(s.appendPoint(nil, p)) }

func (s svg) appendPoint(d []byte, p geom.Point) []byte {
	return appendNumber(append(appendNumber(d, p.X), ' '), s.height-p.Y)
}

// number writes a length in millimetres, to a thousandth.
func number(l length.Length) string { return string(appendNumber(nil, l)) }

func appendNumber(d []byte, l length.Length) []byte {
	return length.AppendDecimal(d, length.Round(l, length.Millimetre/1000), length.Millimetres, 3)
}

// decimal writes a number to three places.
func decimal(x float64) string {
	return strconv.FormatFloat(math.Round(x*1000)/1000, 'f', -1, 64)
}

func hex(r, g, b uint8) string { return fmt.Sprintf("#%02x%02x%02x", r, g, b) }
