// Package paper writes sheets that are printed: sets of them as PDF, with the type embedded and
// each text whole, and single ones as SVG. The papers say where everything lies; this package
// chooses lines, tints and type. The same papers give the same bytes.
package paper

import (
	"fmt"
	"io"
	"math"
	"slices"
	"time"
	"unicode/utf16"

	"codeberg.org/go-pdf/fpdf"
	"github.com/go-fonts/liberation/liberationsansbold"
	"github.com/go-fonts/liberation/liberationsansregular"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

const (
	mm          = float64(length.Millimetre)
	pointsPerMM = 72 / 25.4
)

// face is the family of type in a PDF: the library calls it so, with utf8 before it. Only the letters that
// are used stand in the file, which is told by a tag of six capitals before the name (ISO 32000, 9.9, from
// memory); ours takes as many bytes.
const (
	face   = "liberationsans-ab"
	tagged = "/PAPERS+LiberationSans"
)

// WritePDF writes papers as one file, in their order. The error is the writer's.
func WritePDF(w io.Writer, title string, papers []model.Paper) error {
	// The kind of orientation keeps the sizes as they are given.
	f := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", SizeStr: "A4"})
	f.SetCreationDate(time.Unix(0, 0).UTC())
	f.SetModificationDate(time.Unix(0, 0).UTC())
	f.SetCatalogSort(true)
	f.SetProducer("barwright", true)
	f.SetTitle(title, true)
	f.SetCompression(false) // deflated does it
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(0, 0, 0)
	f.AddUTF8FontFromBytes(face, "", liberationsansregular.TTF)
	f.AddUTF8FontFromBytes(face, "B", liberationsansbold.TTF)
	f.SetLineJoinStyle("round")
	t := letters()
	for i := range papers {
		p := &papers[i]
		f.AddPageFormat("P", fpdf.SizeType{Wd: float64(p.Size.X) / mm, Ht: float64(p.Size.Y) / mm})
		f.Bookmark(p.Title, 0, -1)
		page := pdf{Fpdf: f, face: t, height: float64(p.Size.Y) / mm}
		page.paper(p)
	}
	if err := f.Output(deflated{w}); err != nil {
		return fmt.Errorf("writing %s: %w", title, err)
	}
	return nil
}

// pdf draws on one page; the library counts y from the top. Pens and type that are in hand already
// are not taken anew.
type pdf struct {
	*fpdf.Fpdf
	face   *typeface
	height float64
	pen    *pen    // none yet: nil
	style  string  // of the type
	size   float64 // of the type, in mm; 0 where it is not known
}

func (f *pdf) paper(p *model.Paper) {
	for i := range p.Shapes {
		f.shape(&p.Shapes[i])
	}
	for i := range p.Lettering {
		f.lettering(&p.Lettering[i])
	}
}

func (f *pdf) at(p geom.Point) (x, y float64) {
	return float64(p.X) / mm, f.height - float64(p.Y)/mm
}

func (f *pdf) shape(s *model.Shape) {
	if len(s.Lines) == 0 {
		return
	}
	p := penOf(s.Kind).shaded(s.Shade)
	f.take(p)
	style := "D"
	if p.fill != nil && s.Closed {
		style = "DF"
		if p.width == 0 {
			style = "F"
		}
	}
	f.path(s.Lines, s.Closed)
	f.DrawPath(style)
}

// take takes a pen in hand: of what it says, what differs from before. One without a tint leaves that as it is.
func (f *pdf) take(p pen) {
	old := f.pen
	if old == nil || p.width != old.width {
		f.SetLineWidth(p.width)
	}
	if old == nil || !slices.Equal(p.dash, old.dash) {
		f.SetDashPattern(p.dash, 0)
	}
	if old == nil || p.grey != old.grey {
		f.SetDrawColor(int(p.grey), int(p.grey), int(p.grey))
	}
	switch {
	case p.fill == nil && old != nil:
		p.fill = old.fill
	case p.fill != nil && (old == nil || old.fill == nil || *p.fill != *old.fill):
		f.SetFillColor(int(p.fill[0]), int(p.fill[1]), int(p.fill[2]))
	}
	f.pen = &p
}

// letter takes the type of a style and a height in hand.
func (f *pdf) letter(style string, height float64) {
	if style != f.style || height != f.size {
		f.SetFont(face, style, height*pointsPerMM)
		f.style, f.size = style, height
	}
}

// path draws an outline; arcs by curves, which no eye can tell from them.
func (f *pdf) path(c geom.Contour, closed bool) {
	f.MoveTo(f.at(c[0].Point))
	n := len(c)
	if !closed {
		n--
	}
	for i := range n {
		v, to := c[i], c[(i+1)%len(c)].Point
		if v.Bulge == 0 {
			if i+1 < len(c) || !closed {
				f.LineTo(f.at(to))
			}
			continue
		}
		f.arc(v, to)
	}
	if closed {
		f.ClosePath()
	}
}

// arc draws an arc by curves of an eighth of a circle at most: over an angle a from the centre their
// handles are 4/3 tan(a/4) of the radius long (common practice; within a 1/100 000 of the radius).
func (f *pdf) arc(v geom.Vertex, to geom.Point) {
	sweep := 4 * math.Atan(v.Bulge)
	n := max(1, int(math.Ceil(math.Abs(sweep)/(math.Pi/4))))
	x0, y0 := float64(v.X), float64(v.Y)
	dx, dy := float64(to.X)-x0, float64(to.Y)-y0
	// The centre lies beside the middle of the chord.
	k := (1 - float64(v.Bulge*v.Bulge)) / (4 * v.Bulge)
	cx, cy := x0+dx/2-float64(dy*k), y0+dy/2+float64(dx*k)
	step := sweep / float64(n)
	handle := 4.0 / 3 * math.Tan(step/4)
	x, y := x0-cx, y0-cy
	sin, cos := math.Sin(step), math.Cos(step)
	place := func(x, y float64) (float64, float64) { return (cx + x) / mm, f.height - (cy+y)/mm }
	for range n {
		nx, ny := float64(x*cos)-float64(y*sin), float64(x*sin)+float64(y*cos)
		ax, ay := place(x-float64(handle*y), y+float64(handle*x))
		bx, by := place(nx+float64(handle*ny), ny-float64(handle*nx))
		ex, ey := place(nx, ny)
		f.CurveBezierCubicTo(ax, ay, bx, by, ex, ey)
		x, y = nx, ny
	}
}

// lettering sets a line of text; where it has fractions or signs that the type has not, the whole
// text is told to whoever reads the file.
func (f *pdf) lettering(l *model.Lettering) {
	style := ""
	if l.Bold {
		style = "B"
	}
	set := f.face.set(l, f.face.shown(l.Text))
	if len(set.pieces) == 0 {
		return
	}
	x, y := f.at(l.At)
	if l.Turn != 0 {
		f.TransformBegin()
		f.TransformRotate(l.Turn.Degrees(), x, y)
		defer func() {
			f.TransformEnd() // what was in hand before is so again
			f.pen, f.size = nil, 0
		}()
	}
	first := &set.pieces[0]
	if len(set.pieces) > 1 || first.of.under != "" || first.of.text != l.Text || l.Turn%(90*geom.Degree) != 0 {
		f.RawWriteStr("/Span <</ActualText " + utf16Hex(l.Text) + ">> BDC")
		// Readers take where it begins and the type that it ends with for all of it.
		f.letter(style, set.height)
		f.Text(x+first.from, y, " ")
		defer func() {
			f.letter(style, set.height)
			f.RawWriteStr("EMC")
		}()
	}
	for _, p := range set.pieces {
		if p.of.under == "" {
			f.letter(style, set.height)
			f.Text(x+p.from, y, p.of.text)
			continue
		}
		f.letter(style, small*set.height)
		f.Text(x+p.middle()-p.over/2, y-set.numerator(), p.of.text)
		f.Text(x+p.middle()-p.below/2, y-set.denominator(), p.of.under)
		f.take(pen{width: barWidth * set.height})
		f.Line(x+p.from, y-set.bar(), x+p.to, y-set.bar())
	}
}

// utf16Hex is a text as PDF takes one that is not ASCII.
func utf16Hex(text string) string {
	const digits = "0123456789ABCDEF"
	b := []byte("<FEFF")
	for _, u := range utf16.Encode([]rune(text)) {
		b = append(b, digits[u>>12], digits[u>>8&15], digits[u>>4&15], digits[u&15])
	}
	return string(append(b, '>'))
}
