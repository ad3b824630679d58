package paper

import (
	"bytes"
	"math"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// page is what stands on one page of a PDF, in the operators and with the blanks that the library writes.
type page struct {
	face   *typeface
	height float64 // mm
	text   []byte  // of operators, but for how it begins
	end    state   // what it sets itself
	used   [2]map[rune]bool
	packed bytes.Buffer // all of it, compressed
}

// state is the pens and the type at one place of a page. Of what is set by no operator the texts are empty, and the size is 0.
type state struct {
	width      float64 // mm, and dashes: set with the line's colour
	dash       []float64
	line, fill string // colours, as operators
	bold       int
	size       float64 // points
}

// first is that before the first page.
var first = state{width: 0.567 / points, line: "0.000 G", fill: "0.000 g"}

// points is how many make a millimetre.
const points = 72.0 / 25.4

// then is the state where another one is set later.
func (s state) then(o state) state {
	if o.line != "" {
		s.width, s.dash, s.line = o.width, o.dash, o.line
	}
	if o.fill != "" {
		s.fill = o.fill
	}
	if o.size != 0 {
		s.bold, s.size = o.bold, o.size
	}
	return s
}

func newPage(p *model.Paper, room []byte) *page {
	return &page{face: letters(), height: float64(p.Size.Y) / mm, text: room, used: [2]map[rune]bool{{}, {}}}
}

// paper draws all of a paper; fill is the colour that areas have before.
func (f *page) paper(p *model.Paper, fill string) {
	for i := range p.Shapes {
		f.shape(&p.Shapes[i])
	}
	if f.end.fill != "" {
		fill = f.end.fill
	}
	for i := range p.Lettering {
		f.lettering(&p.Lettering[i], fill)
	}
}

// lastFill is the colour of areas with which a paper ends, empty where it has none.
func lastFill(p *model.Paper) string {
	for i := len(p.Shapes) - 1; i >= 0; i-- {
		if s := &p.Shapes[i]; len(s.Lines) > 0 && s.Closed {
			if fill := penOf(s.Kind).shaded(s.Shade).fill; fill != nil {
				return fill.operator()
			}
		}
	}
	return ""
}

// begin is how a page begins after another one.
func (s state) begin() []byte {
	var b page
	b.put("0 J\n1 j\n").number(s.width*points, 2).put(" w\n")
	if len(s.dash) > 0 {
		b.dashes(s.dash)
	}
	if s.size != 0 {
		b.typeOf(s.bold, s.size)
	}
	b.put(s.line).put("\n").put(s.fill).put("\n")
	if s.size != 0 {
		b.typeOf(s.bold, s.size)
	}
	return b.text
}

func (f *page) put(text string) *page {
	f.text = append(f.text, text...)
	return f
}

func (f *page) number(x float64, places int) *page {
	f.text = strconv.AppendFloat(f.text, x, 'f', places, 64)
	return f
}

// at writes a place that is given in millimetres from the top.
func (f *page) at(x, y float64, places int) *page {
	return f.number(x*points, places).put(" ").number((f.height-y)*points, places)
}

func (f *page) dashes(d []float64) {
	f.put("[")
	for i, l := range d {
		if i > 0 {
			f.put(" ")
		}
		f.number(l*points, 2)
	}
	f.put("] 0.00 d\n")
}

// pen takes one for lines, with its width in mm.
func (f *page) pen(width float64, dash []float64, grey uint8) {
	f.number(width*points, 2).put(" w\n").dashes(dash)
	at := len(f.text)
	f.number(float64(grey)/255, 3).put(" G")
	f.end.width, f.end.dash, f.end.line = width, dash, string(f.text[at:])
	f.put("\n")
}

// operator sets a tint for areas.
func (t *tint) operator() string {
	var b page
	if t[0] == t[1] && t[0] == t[2] {
		return string(b.number(float64(t[0])/255, 3).put(" g").text)
	}
	for _, c := range t {
		b.number(float64(c)/255, 3).put(" ")
	}
	return string(b.put("rg").text)
}

// typeOf takes the type, in points.
func (f *page) typeOf(bold int, size float64) {
	f.put("BT /F").put(fonts[bold]).put(" ").number(size, 2).put(" Tf ET\n")
	f.end.bold, f.end.size = bold, size
}

// place is where a point lies from the top, in millimetres.
func (f *page) place(p geom.Point) (x, y float64) {
	return float64(p.X) / mm, f.height - float64(p.Y)/mm
}

func (f *page) shape(s *model.Shape) {
	if len(s.Lines) == 0 {
		return
	}
	p := penOf(s.Kind).shaded(s.Shade)
	f.pen(p.width, p.dash, p.grey)
	way := "S\n"
	if p.fill != nil && s.Closed {
		f.end.fill = p.fill.operator()
		f.put(f.end.fill).put("\n")
		way = "B\n"
		if p.width == 0 {
			way = "f\n"
		}
	}
	f.path(s.Lines, s.Closed)
	f.put(way)
}

// path draws an outline; arcs by curves, which no eye can tell from them.
func (f *page) path(c geom.Contour, closed bool) {
	x, y := f.place(c[0].Point)
	f.at(x, y, 2).put(" m\n")
	n := len(c)
	if !closed {
		n--
	}
	for i := range n {
		v, to := c[i], c[(i+1)%len(c)].Point
		if v.Bulge == 0 {
			if i+1 < len(c) || !closed {
				x, y := f.place(to)
				f.at(x, y, 2).put(" l\n")
			}
			continue
		}
		f.arc(v, to)
	}
	if closed {
		f.put("h\n")
	}
}

// arc draws an arc by curves of an eighth of a circle at most: over an angle a from the centre their
// handles are 4/3 tan(a/4) of the radius long (common practice; within a 1/100 000 of the radius).
func (f *page) arc(v geom.Vertex, to geom.Point) {
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
	put := func(x, y float64) { f.at((cx+x)/mm, f.height-(cy+y)/mm, 5) }
	for range n {
		nx, ny := float64(x*cos)-float64(y*sin), float64(x*sin)+float64(y*cos)
		put(x-float64(handle*y), y+float64(handle*x))
		f.put(" ")
		put(nx+float64(handle*ny), ny-float64(handle*nx))
		f.put(" ")
		put(nx, ny)
		f.put(" c\n")
		x, y = nx, ny
	}
}
