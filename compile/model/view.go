package model

import (
	"math"
	"slices"

	"barwright/compile/geom"
)

// View is a drawing in real size, computed and ready to be put on a page. X
// runs right and Y up, in nanometres.
type View struct {
	Name       string // file-safe and unique: "plan", "elevation-back"
	Title      string
	Note       string    // how to read it, in a sentence or two
	Part       string    // ID of the part that is drawn; empty where many are
	Alike      []string  // IDs of further parts that it draws: the same but for name and place
	Apart      bool      // things are drawn apart: where one is tells not where it stands
	Bounds     geom.Rect // holds shapes, dimensions and texts
	TextHeight Length    // size of the type that texts were placed for
	Shapes     []Shape   // from back to front
	Texts      []Text
	Dims       []Dim
}

// Shape is a line or an area of a view.
type Shape struct {
	Kind   ShapeKind
	Lines  geom.Contour
	Closed bool
	Cut    bool   // by the section that the view shows
	Part   string // ID of the part or thing, for pointing at it; may be empty
	Title  string // what it is, in words
	Shade  Shade  // of a face in a picture
}

// Shade is where a face in a picture looks, from which its light follows.
type Shade int

const (
	Unshaded Shade = iota // no face of a picture
	ShadeTop
	ShadeLeft
	ShadeRight
)

// ShapeKind tells what a shape shows; the page chooses line and tint.
type ShapeKind string

const (
	ShapeWall      ShapeKind = "wall"
	ShapeStud      ShapeKind = "stud"
	ShapePanel     ShapeKind = "panel"   // cut board, seen
	ShapeHidden    ShapeKind = "hidden"  // dashed
	ShapeOpening   ShapeKind = "opening" // cut through
	ShapeRecess    ShapeKind = "recess"  // cut to a depth
	ShapeBore      ShapeKind = "bore"    // drilled
	ShapeMark      ShapeKind = "mark"    // drawn on the face
	ShapeBand      ShapeKind = "band"    // edge that is covered with banding
	ShapeFront     ShapeKind = "front"   // door, drawer front or false front
	ShapeOutlet    ShapeKind = "outlet"
	ShapeStub      ShapeKind = "stub"
	ShapeAppliance ShapeKind = "appliance"
	ShapeFraming   ShapeKind = "framing"
	ShapeSteel     ShapeKind = "steel"
	ShapeSlab      ShapeKind = "slab"
	ShapeFloor     ShapeKind = "floor"
	ShapeAbove     ShapeKind = "above"  // outline of what lies over the drawn level
	ShapeBeyond    ShapeKind = "beyond" // seen behind what a section cuts
	ShapeCentre    ShapeKind = "centre" // centre line
	ShapeThin      ShapeKind = "thin"   // line that carries a feature to its dimension
	ShapeLeader    ShapeKind = "leader" // from a text to the thing, which its last point touches
)

// filled are the kinds of areas that hide what lies behind them.
var filled = []ShapeKind{
	ShapeWall, ShapePanel, ShapeOpening, ShapeRecess, ShapeBore, ShapeFront,
	ShapeAppliance, ShapeFraming, ShapeSteel, ShapeSlab,
}

// Fills reports whether the shape hides the shapes before it in its view.
func (s *Shape) Fills() bool { return s.Closed && slices.Contains(filled, s.Kind) }

// Text is a label centred on a point, turned counter-clockwise.
type Text struct {
	At   geom.Point
	Turn geom.Angle
	Room Length // width that was kept free for it
	Text string
}

// Dim is a dimension line from A to B, drawn Offset to the left of the way
// from A to B (negative: to the right). Running dimensions share A and count
// from there: they have a mark at B only.
type Dim struct {
	A, B    geom.Point
	Offset  Length
	Running bool
	Text    Text
	Lead    []geom.Point // from the dimension line to a text that stands off it
}

// Ends returns the ends of the dimension line. A and B must differ.
func (d Dim) Ends() (a, b geom.Point) {
	dx, dy := float64(d.B.X-d.A.X), float64(d.B.Y-d.A.Y)
	by := float64(d.Offset) / math.Sqrt(float64(dx*dx)+float64(dy*dy))
	off := geom.Point{X: Length(math.Round(-float64(dy * by))), Y: Length(math.Round(float64(dx * by)))}
	return d.A.Add(off), d.B.Add(off)
}

// Strokes returns the thin lines of the dimension for type of a height: the
// dimension line with its slanting ticks, the extension lines and the lead.
func (d Dim) Strokes(height Length) [][]geom.Point {
	a, b := d.Ends()
	strokes := [][]geom.Point{{a, b}}
	ends := [][2]geom.Point{{d.A, a}, {d.B, b}}
	if d.Running {
		ends = ends[1:]
	}
	for _, end := range ends {
		foot, head := end[0], end[1]
		strokes = append(strokes,
			[]geom.Point{toward(foot, head, height/4), toward(head, foot, -height/3)},
			slant(head, height/4))
	}
	if len(d.Lead) > 0 {
		strokes = append(strokes, d.Lead)
	}
	return strokes
}

// toward goes a way from one point towards another; no further than there.
func toward(from, to geom.Point, way Length) geom.Point {
	dx, dy := float64(to.X-from.X), float64(to.Y-from.Y)
	far := math.Sqrt(float64(dx*dx) + float64(dy*dy))
	if far == 0 {
		return from
	}
	share := min(float64(way)/far, 1)
	return from.Add(geom.Point{X: Length(math.Round(dx * share)), Y: Length(math.Round(dy * share))})
}

func slant(at geom.Point, half Length) []geom.Point {
	return []geom.Point{{X: at.X - half, Y: at.Y - half}, {X: at.X + half, Y: at.Y + half}}
}
