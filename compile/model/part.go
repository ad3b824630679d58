package model

import (
	"slices"
	"strings"

	"barwright/compile/geom"
)

// PartsByID are all parts by their IDs; lookup only.
func (m *Model) PartsByID() map[string]*Part {
	parts := make(map[string]*Part, len(m.Parts))
	for i := range m.Parts {
		parts[m.Parts[i].ID] = &m.Parts[i]
	}
	return parts
}

// Part is one piece that somebody cuts.
type Part struct {
	ID        string // stable path: "cabinet.urn/side-left"
	Label     string // short and unique, for tape stuck to the piece: "URN-L"
	Name      string // "left side"
	Owner     string // "cabinet urn"
	Kind      PartKind
	Stock     string // "sheet.birch"
	Material  string // what one asks for at the counter
	Thickness Length
	Face      string // which face is drawn: "inside", "top"
	Outline   geom.Contour
	Filled    []geom.Point // corners of the outline, beside those of notches, that something square stands in
	Openings  []Opening
	Recesses  []Recess
	Bores     []Bore
	Marks     []Mark
	Scribes   []Scribe // edges to be cut on site; their lines are among the marks
	Bands     []Band   // banded edges; the banding is no part of the outline
	Grain     Grain
	Match     string // the key of what its grain goes on through: those of one come from one strip of a sheet; empty of most
	Good      Good   // the faces that are seen once it stands
	Glued     bool   // stuck down with adhesive, as a block on a floor is
	Placement geom.Placement
	Why       Why
}

// Size returns the part's length and width over all, as drawn, without banding.
func (p *Part) Size() (x, y Length) {
	b := p.Outline.Bounds()
	return b.X.Size(), b.Y.Size()
}

// OverAll returns the size of the finished part: Size and its banding.
func (p *Part) OverAll() (x, y Length) {
	x, y = p.Size()
	for i := range p.Bands {
		if b := &p.Bands[i]; b.Edge == LeftEdge || b.Edge == RightEdge {
			x += b.Thickness
		} else {
			y += b.Thickness
		}
	}
	return x, y
}

// PartKind tells how a part is bought and cut.
type PartKind int

const (
	Panel     PartKind = iota // cut from a sheet
	Lumber                    // cut from a stick
	Steel                     // cut from flat bar
	SlabPiece                 // a piece of a counter or a bar top
)

func (k PartKind) String() string { return [...]string{"panel", "lumber", "steel", "slab"}[k] }

// Good tells which faces of a part should be the better ones of its board.
type Good int

const (
	GoodNone  Good = iota // none is seen
	GoodDrawn             // the face that is drawn
	GoodFar               // the one behind it
	GoodBoth
)

func (g Good) String() string { return [...]string{"none", "drawn", "far", "both"}[g] }

// Grain is the direction of the face grain on the drawn face.
type Grain int

const (
	GrainNone Grain = iota
	GrainX
	GrainY
)

func (g Grain) String() string { return [...]string{"none", "x", "y"}[g] }

// Opening is cut through the whole thickness. A notch reaches an edge: the
// part's outline already lacks it, and Shape tells what is missing.
type Opening struct {
	Name  string // "outlet urn"
	Notch bool
	Shape geom.Contour // clockwise; of a notch counter-clockwise, inside the panel's blank
	// By hand, holes of the diameter Bit are bored at Corners first, which touch
	// the opening's sides from inside; none where Bit is 0.
	Corners []geom.Point
	Bit     Length
	Why     Why
}

// Bore is a hole drilled square to the face, or a slot that a screw may move in.
type Bore struct {
	Name     string // "shelf pin", "hinge cup", "screw down"
	At       geom.Point
	Diameter Length
	Depth    Length // 0: through
	Far      bool   // drilled from the face behind the drawn one; At counts on the drawn one all the same
	Sink     Length // diameter of a countersink for a flat head, on the face that it is drilled from; 0 for none
	Slot     Length // of a slot: from the centre of one end to that of the other; 0 for a round hole
	Across   bool   // of a slot: it runs along y, otherwise along x
	Why      Why
}

// Through reports whether the bore goes through the part.
func (b *Bore) Through() bool { return b.Depth == 0 }

// Behind reports whether the face behind the drawn one shows more of the bore
// than that it goes through.
func (b *Bore) Behind() bool { return b.Far && (!b.Through() || b.Sink > 0) }

// Shape returns the bore's outline on the drawn face, counter-clockwise: a circle,
// or a slot with half round ends.
func (b *Bore) Shape() geom.Contour { return b.AppendShape(nil) }

// AppendShape appends what Shape returns.
func (b *Bore) AppendShape(dst geom.Contour) geom.Contour {
	r, half := b.Diameter/2, b.Slot/2
	at := func(x, y Length, bulge float64) geom.Vertex {
		return geom.Vertex{Point: b.At.Add(geom.Point{X: x, Y: y}), Bulge: bulge}
	}
	switch {
	case b.Slot == 0:
		return append(dst, at(-r, 0, 1), at(r, 0, 1))
	case b.Across:
		return append(dst, at(r, -half, 0), at(r, half, 1), at(-r, half, 0), at(-r, -half, 1))
	}
	return append(dst, at(-half, -r, 0), at(half, -r, 1), at(half, r, 0), at(-half, r, 1))
}

// Middles returns the centres of the slot's two ends; of a round bore its own
// centre twice.
func (b *Bore) Middles() [2]geom.Point {
	step := geom.Point{X: b.Slot / 2}
	if b.Across {
		step = geom.Point{Y: b.Slot / 2}
	}
	return [2]geom.Point{b.At.Sub(step), b.At.Add(step)}
}

// Like reports whether two bores differ in nothing but where they are.
func (b *Bore) Like(o *Bore) bool {
	x, y := *b, *o
	x.At, x.Why = y.At, y.Why
	return x == y
}

// FarBores reports whether the face behind the drawn one is drilled into. What only
// sinks a through bore there is told in words.
func (p *Part) FarBores() bool {
	return slices.ContainsFunc(p.Bores, func(b Bore) bool { return b.Far && !b.Through() })
}

// LikeBores gathers the part's bores into those that are alike, in the order of
// the first of each.
func (p *Part) LikeBores() (groups [][]Bore) {
next:
	for _, b := range p.Bores {
		for i := range groups {
			if groups[i][0].Like(&b) {
				groups[i] = append(groups[i], b)
				continue next
			}
		}
		groups = append(groups, []Bore{b})
	}
	return groups
}

// Mark is a line to be drawn on the face, not cut.
type Mark struct {
	Name     string // "stud 3", "slide"
	From, To geom.Point
	Why      Why
}

// Scribed reports whether a mark of the part shows where an edge is cut on site, as read.
func (p *Part) Scribed(mark int) bool {
	return slices.ContainsFunc(p.Scribes, func(s Scribe) bool { return s.Name() == p.Marks[mark].Name })
}

// GoesOn reports whether a mark of the part goes on where the one before it ends, so that
// both are one line with a bend.
func (p *Part) GoesOn(mark int) bool {
	return mark > 0 && p.Marks[mark-1].Name == p.Marks[mark].Name && p.Marks[mark-1].To == p.Marks[mark].From
}

// Band is an edge that is covered with banding.
type Band struct {
	Edge      Edge
	Stock     string // "banding.birch"
	Thickness Length
}

// Recess is cut from the drawn face to a depth.
type Recess struct {
	ID     string
	Name   string // "groove for the back", "support 2"
	Shape  geom.Contour
	Depth  Length
	Open   []Edge // edges of the part that it reaches
	Routed bool   // a program is written for it
	Radius Length // of its inside corners; 0 where square
	Fit    Length // how much wider it is than what goes in, each side
	Why    Why
}

// Side is an edge of a part as drawn, and what it is called where the part
// stands.
type Side struct {
	Edge Edge
	Name string // "front edge"
}

// Sides names the two edges of a part that look to the front and to the rear of
// the run; those of a knee wall, its skins and its bar top look to the run and
// to the room. There are none where the face that is drawn is itself one of these.
func (p *Part) Sides() []Side {
	var front Edge
	switch at := p.Placement; geom.V {
	case at.X.Axis:
		front = RightEdge
		if at.X.Neg {
			front = LeftEdge
		}
	case at.Y.Axis:
		front = Top
		if at.Y.Neg {
			front = Bottom
		}
	default:
		return nil
	}
	names := [2]string{"front edge", "rear edge"}
	switch p.BlockKind() {
	case "knee_wall", "skin", "corner", "bar_top":
		names = [2]string{"run side", "room side"}
	}
	return []Side{{front, names[0]}, {front.Opposite(), names[1]}}
}

// Named is its name in a sentence: "the left side", "divider 1".
func (p *Part) Named() string {
	if p.Name != "" && strings.ContainsAny(p.Name[len(p.Name)-1:], "0123456789") {
		return p.Name
	}
	return "the " + p.Name
}

// Block is the key of the block that the part belongs to: "cabinet.urn".
func (p *Part) Block() string {
	block, _, _ := strings.Cut(p.ID, "/")
	return block
}

// BlockKind is the kind of that block: "cabinet".
func (p *Part) BlockKind() string {
	kind, _, _ := strings.Cut(p.ID, ".")
	return kind
}

// Is reports whether the part belongs to a block of a kind and has a name there,
// with or without a number: "divider-2" is a "divider".
func (p *Part) Is(kind, name string) bool {
	_, own, _ := strings.Cut(p.ID, "/")
	return p.BlockKind() == kind && strings.HasPrefix(own+"-", name+"-")
}

// Banded names the part's banded edges: "front edge", "left edge", "all edges";
// empty where none is.
func (p *Part) Banded() string {
	var names []string
	for e := Bottom; e <= LeftEdge; e++ {
		if slices.ContainsFunc(p.Bands, func(b Band) bool { return b.Edge == e }) {
			names = append(names, p.edgeName(e))
		}
	}
	if len(names) == 4 {
		return "all edges"
	}
	return strings.Join(names, ", ")
}

func (p *Part) edgeName(e Edge) string {
	for _, side := range p.Sides() {
		if side.Edge == e {
			return side.Name
		}
	}
	return e.String() + " edge"
}

// Cut is a line of the cut list: one distinct piece and how many of it.
type Cut struct {
	Parts     []string // labels
	Name      string
	Stock     string
	Kind      PartKind
	Count     int
	Length    Length // along the grain where it has one, else the longer side
	Width     Length
	Thickness Length
	Grain     Grain
	Banded    string   // its banded edges in words; the sizes are without the banding
	Face      string   // the drawn one of the first of them
	Good      Good     // the faces that should be the better ones
	Where     []string // owners
}
