package dxf

import (
	"fmt"
	"io"
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// WriteDrawing writes a view in real size, for somebody who edits it: one layer for
// each kind of shape, and one for dimensions, texts and the title. Dimensions are plain
// lines and texts. Coordinates are the view's; the title stands below its bounds. Of
// the options, the version, the unit and whether it is stated count, and the build. It writes nothing
// where a shape cannot be drawn.
func WriteDrawing(w io.Writer, v *model.View, opt Options) error {
	d := drawing{view: v, box: v.Bounds}
	for i := range v.Shapes {
		if err := d.shape(&v.Shapes[i]); err != nil {
			return fmt.Errorf("drawing %s: shape %d, %s %q: %w", v.Name, i, v.Shapes[i].Kind, v.Shapes[i].Title, err)
		}
	}
	d.dimensions()
	for _, t := range v.Texts {
		d.label(layerText, t)
	}
	for _, dim := range v.Dims {
		d.label(layerDimension, dim.Text)
	}
	d.title(&opt)

	out := newGroups(w)
	out.inch = opt.Inch
	file := newFormat(opt.Version, out)
	file.begin(frame{
		types: lineTypes(v.TextHeight), layers: drawingLayers[:], box: d.box,
		entities: len(d.strokes) + len(d.labels), unitless: opt.Unitless,
	})
	for _, s := range d.strokes {
		s.write(file)
	}
	for _, l := range d.labels {
		file.text(l.layer, l.label)
	}
	file.end()
	return out.flush()
}

// drawing collects what is written of a view.
type drawing struct {
	view    *model.View
	box     geom.Rect
	strokes []stroke
	labels  []layered
}

// stroke is a line, plain or closed.
type stroke struct {
	layer string
	line  geom.Contour
	pen
}

type layered struct {
	layer string
	label
}

func (d *drawing) add(layer string, c geom.Contour, p pen) {
	d.strokes = append(d.strokes, stroke{layer, c, p})
	d.box = d.box.Union(c.Bounds())
}

// shape adds a shape; a leader has a dot where it touches the thing.
func (d *drawing) shape(s *model.Shape) error {
	layer, ok := kindLayers[s.Kind]
	if !ok {
		return fmt.Errorf("no layer for its kind")
	}
	line, err := withoutRepeats(s.Lines, s.Closed)
	if err != nil {
		return err
	}
	d.add(layer, line, pen{open: !s.Closed})
	if s.Kind == model.ShapeLeader {
		d.dot(line[len(line)-1].Point)
	}
	return nil
}

// withoutRepeats leaves out edges without length.
func withoutRepeats(c geom.Contour, closed bool) (geom.Contour, error) {
	var out geom.Contour
	for i, v := range c {
		if math.IsNaN(v.Bulge) || math.IsInf(v.Bulge, 0) {
			return nil, fmt.Errorf("edge %d has no bulge that is a number", i)
		}
		last := i+1 == len(c)
		if last && !closed || longEnough(v.Point, c[(i+1)%len(c)].Point) == nil {
			out = append(out, v)
		}
	}
	if len(out) < 2 {
		return nil, errNoLength
	}
	return out, nil
}

// dot adds a filled disc: a ring as wide as its radius.
func (d *drawing) dot(at geom.Point) {
	radius := d.view.TextHeight / 7
	d.add(layerLeader, geom.CircleContour(at, radius/2), pen{width: radius})
}

// dimensions adds dimension lines with their ticks, and a ring where running
// dimensions begin.
func (d *drawing) dimensions() {
	var last geom.Point
	for i, dim := range d.view.Dims {
		for _, points := range dim.Strokes(d.view.TextHeight) {
			for j := range len(points) - 1 {
				if points[j] != points[j+1] {
					d.add(layerDimension, geom.Contour{{Point: points[j]}, {Point: points[j+1]}}, pen{open: true})
				}
			}
		}
		if a, _ := dim.Ends(); dim.Running && (i == 0 || a != last) {
			d.add(layerDimension, geom.CircleContour(a, d.view.TextHeight/4), pen{})
			last = a
		}
	}
}

func (s *stroke) write(f format) {
	centre, radius, circle := s.line.Circle()
	switch {
	case circle && s.pen == (pen{}):
		f.circle(s.layer, centre, radius)
	case s.open && len(s.line) == 2 && math.Abs(s.line[0].Bulge) < flat:
		f.line(s.layer, s.line[0].Point, s.line[1].Point)
	default:
		f.polyline(s.layer, s.line, s.pen)
	}
}

// capitals is how high capitals are in type of a height, in hundredths: that of the
// common sans faces. A height in the format is that of capitals.
const capitals = 70

// letterWidth is how wide the widest common letter of the format's own font is, to the
// height of its capitals.
const letterWidth = 1.0

// label adds a text of the view. Where the letters of the format's own font would need
// more room than was kept free, they are narrower.
func (d *drawing) label(layer string, t model.Text) {
	text := ascii(t.Text)
	if text == "" {
		return
	}
	l := label{at: t.At, height: d.view.TextHeight * capitals / 100, text: text, centred: true, turn: t.Turn}
	if need := float64(l.height) * letterWidth * float64(len(text)); t.Room > 0 && need > float64(t.Room) {
		l.narrow = math.Round(float64(t.Room)/need*1000) / 1000
	}
	d.labels = append(d.labels, layered{layer, l})
}

// title adds what the drawing is, how to read it and its unit, below the view.
func (d *drawing) title(opt *Options) {
	height := d.view.TextHeight * capitals / 100
	at := geom.Point{X: d.view.Bounds.X.Lo, Y: d.view.Bounds.Y.Lo - 2*height}
	perLine := int(d.view.Bounds.X.Size() / max(height, 1))
	for _, line := range d.titleLines(opt) {
		for _, part := range wrap(line, max(perLine, leastLine)) {
			d.labels = append(d.labels, layered{layerTitle, label{at: at, height: height, text: part}})
			at.Y -= 2 * height
			d.box = d.box.Union(geom.R(at.X, at.Y, at.X+length.Length(len(part))*height, at.Y))
		}
	}
}
