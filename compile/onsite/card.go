// Package onsite holds what the person on the floor marks out by hand, as values: the openings of
// each panel from edges that a tape can reach, the marks of story poles, the lines of screws in
// boxes, the heights of holes in studs, and how each thing slides into place. It takes a solved
// model and changes nothing of it; drawings and lists are made of it elsewhere.
package onsite

import (
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// Length is the measure of every coordinate.
type Length = length.Length

// Card is one panel with openings as one sees it who marks it: X runs right and Y up on the face
// that is marked, from the lower left of the blank.
type Card struct {
	Part    *model.Part
	Behind  bool // the face that is marked is the one behind the drawn one: all is mirrored
	InPlace bool // it is marked where it lies, and not on the bench
	Blank   geom.Rect
	Outline geom.Contour
	Holes   []Hole
	Across  model.Edge   // of the card: LeftEdge or RightEdge, from which X is measured
	Up      model.Edge   // Bottom or Top, from which Y is measured
	Shut    []model.Edge // of the card: no tape hooks on there once the part stands, or they are cut on site
}

// Hole is an opening or a notch on a card.
type Hole struct {
	Name     string
	Notch    bool
	Shape    geom.Contour
	Round    bool         // a circle: its centre is marked
	Corners  []geom.Point // centres of the bores that are made first
	Diameter Length       // of these
}

// Cards lists the panels and slabs with openings, in the order of the parts.
func Cards(m *model.Model) []Card {
	var cards []Card
	for i := range m.Parts {
		if p := &m.Parts[i]; len(p.Openings) > 0 && (p.Kind == model.Panel || p.Kind == model.SlabPiece) {
			cards = append(cards, card(m, p))
		}
	}
	return cards
}

// card turns a panel to the face that is marked: the one that is not seen, for a saw that is led
// by hand tears the face on its upper side (common practice); a slab is marked from above.
func card(m *model.Model, p *model.Part) Card {
	c := Card{Part: p, InPlace: p.Kind == model.SlabPiece, Blank: p.Placement.Blank()}
	c.Behind = p.Good == model.GoodDrawn && !c.InPlace
	c.Outline = c.seen(p.Outline)
	for i := range p.Openings {
		c.Holes = append(c.Holes, c.hole(&p.Openings[i]))
	}
	for e := model.Bottom; e <= model.LeftEdge; e++ {
		if c.InPlace && against(m, p, e) || p.ScribedAt(c.own(e)) {
			c.Shut = append(c.Shut, e)
		}
	}
	c.Across = c.better(model.LeftEdge)
	c.Up = c.better(model.Bottom)
	return c
}

// seen is a contour of the drawn face as the card shows it.
func (c *Card) seen(shape geom.Contour) geom.Contour {
	if !c.Behind {
		return shape
	}
	out := make(geom.Contour, len(shape))
	for i, v := range shape {
		out[i] = geom.Vertex{Point: c.at(v.Point), Bulge: -v.Bulge}
	}
	return out
}

func (c *Card) at(p geom.Point) geom.Point {
	if c.Behind {
		p.X = c.Blank.X.Hi - p.X
	}
	return p
}

// own is the edge of the part, as it is drawn, that an edge of the card is.
func (c *Card) own(e model.Edge) model.Edge {
	if c.Behind && (e == model.LeftEdge || e == model.RightEdge) {
		return e.Opposite()
	}
	return e
}

func (c *Card) hole(o *model.Opening) Hole {
	h := Hole{Name: o.Name, Notch: o.Notch, Shape: c.seen(o.Shape), Diameter: o.Bit}
	for _, at := range o.Corners {
		h.Corners = append(h.Corners, c.at(at))
	}
	if _, _, h.Round = o.Shape.Circle(); h.Round || o.Notch || len(o.Corners) > 0 {
		return h
	}
	b := h.Shape.Bounds()
	r, alike := o.Shape.Rounding()
	if alike && r > 0 && 2*r <= min(b.X.Size(), b.Y.Size()) {
		in := b.Grow(-r)
		h.Diameter = 2 * r
		h.Corners = []geom.Point{{X: in.X.Lo, Y: in.Y.Lo}, {X: in.X.Hi, Y: in.Y.Lo}, {X: in.X.Hi, Y: in.Y.Hi}, {X: in.X.Lo, Y: in.Y.Hi}}
	}
	return h
}

// Direction is where an edge of the card looks, in the frame that the part stands in.
func (c *Card) Direction(e model.Edge) geom.Dir { return outward(c.Part, c.own(e)) }

// better is an edge or the one across: the one that a tape reaches more holes from; the first of
// equals.
func (c *Card) better(e model.Edge) model.Edge {
	if c.trouble(e.Opposite()) < c.trouble(e) {
		return e.Opposite()
	}
	return e
}

// trouble counts the holes that no tape from an edge reaches; an edge that stands against
// something, or that is cut off later, is worse than all of them.
func (c *Card) trouble(e model.Edge) (n int) {
	if slices.Contains(c.Shut, e) {
		n = len(c.Holes) + 1
	}
	for i := range c.Holes {
		if !c.clear(e, &c.Holes[i]) {
			n++
		}
	}
	return n
}

// clear reports whether a straight way from beside a hole to an edge lies all on the panel.
func (c *Card) clear(e model.Edge, h *Hole) bool {
	const beside = length.Millimetre
	b := h.Shape.Bounds()
	mid := geom.Point{X: b.X.Mid(), Y: b.Y.Mid()}
	for _, end := range [...]geom.Point{{X: b.X.Lo - beside, Y: b.Y.Lo - beside}, {X: b.X.Hi + beside, Y: b.Y.Hi + beside}} {
		from, to := mid, mid
		switch e {
		case model.LeftEdge:
			from.Y, to.Y, to.X = end.Y, end.Y, c.Blank.X.Lo
		case model.RightEdge:
			from.Y, to.Y, to.X = end.Y, end.Y, c.Blank.X.Hi
		case model.Bottom:
			from.X, to.X, to.Y = end.X, end.X, c.Blank.Y.Lo
		case model.Top:
			from.X, to.X, to.Y = end.X, end.X, c.Blank.Y.Hi
		}
		if w := c.Outline.Clip(from, to); len(w) == 1 && w[0] == [2]geom.Point{from, to} {
			return true
		}
	}
	return false
}

// Wired reports whether a hole of the card is for wiring.
func (c *Card) Wired() bool { return c.any("outlet ", "switch ", "cord ", "cable ") }

// Wet reports whether a hole of the card is for water.
func (c *Card) Wet() bool { return c.any("stub ", "drain ", "sink ", "tap ") }

func (c *Card) any(kinds ...string) bool {
	for _, h := range c.Holes {
		for _, kind := range kinds {
			if strings.HasPrefix(h.Name, kind) {
				return true
			}
		}
	}
	return false
}
