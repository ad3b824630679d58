package markup

import (
	"math"
	"strconv"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// Grid is the unit of a drawing's coordinates: a tenth of a millimetre.
const Grid = length.Millimetre / 10

// Sheet puts what lies within bounds on the page: x from its left edge, y down from
// its top.
type Sheet struct{ Bounds geom.Rect }

// Size is how wide and how high the sheet is.
func (s Sheet) Size() (w, h int64) { return Units(s.Bounds.X.Size()), Units(s.Bounds.Y.Size()) }

// Path writes an outline as path data.
func (s Sheet) Path(c geom.Contour, closed bool) string {
	var d []byte
	for i, v := range c {
		if i == 0 {
			d = s.Point(append(d, 'M'), v.Point)
		}
		last := i+1 == len(c)
		if last && !closed {
			break
		}
		to := c[(i+1)%len(c)].Point
		switch {
		case v.Bulge != 0:
			d = s.Point(appendArc(d, v, to), to)
		case !last:
			d = s.Point(append(d, 'L'), to)
		}
	}
	if closed {
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
	r := strconv.FormatFloat(radius/float64(Grid), 'f', 1, 64)
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

// Point appends the coordinates of a point.
func (s Sheet) Point(d []byte, p geom.Point) []byte {
	x, y := s.Place(p)
	d = strconv.AppendInt(d, x, 10)
	d = append(d, ' ')
	return strconv.AppendInt(d, y, 10)
}

// Place returns the coordinates of a point.
func (s Sheet) Place(p geom.Point) (x, y int64) {
	return Units(p.X - s.Bounds.X.Lo), Units(s.Bounds.Y.Hi - p.Y)
}

// Units writes a length in coordinates.
func Units(l length.Length) int64 { return int64(length.Round(l, Grid) / Grid) }

// Itoa writes a coordinate.
func Itoa(n int64) string { return strconv.FormatInt(n, 10) }
