package paper

import (
	"barwright/compile/geom"
	"barwright/compile/model"
)

// Sizes on paper.
const (
	margin  = 10 * mm      // from the edge to the frame: no printer needs more
	block   = 18 * mm      // height of the title block
	air     = mm           // between the frame and views, which have some of their own
	indent  = 3 * mm       // of titles and notes
	between = 6 * mm       // between views
	typeOn  = 28 * mm / 10 // height of the type in views: 8 points
	heading = 36 * mm / 10 // of a view's title
	note    = 25 * mm / 10 // of what stands below it
	leading = 150          // from line to line, in hundredths of the type
)

// sheet is a paper as it is filled.
type sheet struct{ model.Paper }

func newSheet(size geom.Point) *sheet {
	s := &sheet{}
	s.Size = size
	return s
}

// inner is what views may fill of a paper.
func inner(size geom.Point) geom.Rect {
	return geom.R(margin+air, margin+block+air, size.X-margin-air, size.Y-margin-air)
}

func (s *sheet) line(kind model.ShapeKind, points ...geom.Point) {
	var c geom.Contour
	for _, p := range points {
		c = append(c, geom.Vertex{Point: p})
	}
	s.Shapes = append(s.Shapes, model.Shape{Kind: kind, Lines: c})
}

func (s *sheet) rect(kind model.ShapeKind, r geom.Rect) {
	s.Shapes = append(s.Shapes, model.Shape{Kind: kind, Lines: geom.RectContour(r), Closed: true})
}

func (s *sheet) words(at geom.Point, height Length, align model.Align, bold bool, text string) {
	s.Lettering = append(s.Lettering, model.Lettering{At: at, Height: height, Align: align, Bold: bold, Text: text})
}

// put draws a view with the lower left corner of its bounds at a point.
func (s *sheet) put(v *model.View, n scale, at geom.Point) {
	place := func(p geom.Point) geom.Point {
		return geom.Point{X: at.X + n.on(p.X-v.Bounds.X.Lo), Y: at.Y + n.on(p.Y-v.Bounds.Y.Lo)}
	}
	height := n.on(v.TextHeight)
	texts := v.Texts
	for _, d := range v.Dims {
		texts = append(texts[:len(texts):len(texts)], d.Text)
	}
	var areas []geom.Contour
	for _, t := range texts {
		f := geom.Frame{Origin: place(t.At), Turn: t.Turn}
		areas = append(areas, around(f, n.on(t.Room)/2, height*7/10))
	}
	for _, shape := range v.Shapes {
		shape.Lines = mapped(shape.Lines, place)
		s.Shapes = append(s.Shapes, shape)
		if shape.Cut {
			s.hatch(&shape, areas)
		}
		if last := len(shape.Lines); shape.Kind == model.ShapeLeader && last > 0 {
			s.round(model.ShapeDot, shape.Lines[last-1].Point, height/7)
		}
	}
	s.dims(v, height, place)
	for _, t := range texts {
		// Figures stand with their middle on the line that the view gives.
		up := geom.Frame{Origin: place(t.At), Turn: t.Turn}.At(0, -height*36/100)
		s.Lettering = append(s.Lettering, model.Lettering{At: up, Turn: t.Turn, Height: height, Room: n.on(t.Room), Text: t.Text})
	}
}

// around is a rectangle about a frame's origin, so far to each side.
func around(f geom.Frame, u, v Length) geom.Contour {
	return geom.Contour{{Point: f.At(-u, -v)}, {Point: f.At(u, -v)}, {Point: f.At(u, v)}, {Point: f.At(-u, v)}}
}

func mapped(c geom.Contour, place func(geom.Point) geom.Point) geom.Contour {
	out := make(geom.Contour, len(c))
	for i, v := range c {
		out[i] = geom.Vertex{Point: place(v.Point), Bulge: v.Bulge}
	}
	return out
}

func (s *sheet) dims(v *model.View, height Length, place func(geom.Point) geom.Point) {
	var last geom.Point
	for i, d := range v.Dims {
		for _, stroke := range d.Strokes(v.TextHeight) {
			points := make([]geom.Point, len(stroke))
			for k, p := range stroke {
				points[k] = place(p)
			}
			s.line(model.ShapeDim, points...)
		}
		if a, _ := d.Ends(); d.Running && (i == 0 || a != last) {
			s.round(model.ShapeRing, place(a), height/4)
			last = a
		}
	}
}

func (s *sheet) round(kind model.ShapeKind, at geom.Point, radius Length) {
	s.Shapes = append(s.Shapes, model.Shape{Kind: kind, Lines: geom.CircleContour(at, radius), Closed: true})
}
