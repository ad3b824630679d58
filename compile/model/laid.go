package model

import "barwright/compile/geom"

// Layout tells how the pieces of one stock come out of what is bought.
type Layout struct {
	Stock   string // "sheet.birch"
	Kind    PartKind
	Pieces  int
	Length  Length  // of one sheet, of the first size on sale, or of the longest stick bought
	Width   Length  // of one sheet; 0 for sticks
	Free    bool    // of sheets: pieces lie anywhere, and no saw could part them from edge to edge
	Bought  int     // what was there already is not counted
	AtLeast int     // lower bound of Bought; 0 where it is not known
	Least   bool    // proved: nothing that is bought instead costs less, nor, of sticks, has fewer for the same price
	Waste   float64 // share of the area or length of all blanks that no piece takes, 0..1
	Blanks  []Blank // what is cut, one by one: what was there already, then what is bought; sticks from long to short
}

// Blank is one sheet or stick, and the pieces that it gives.
type Blank struct {
	Length Length // X runs along it
	Width  Length // 0 for sticks
	Own    bool   // it was there already
	Placed []Placed
	Cuts   []SawCut  // of a sheet that a saw parts, in their order, after its edges are trimmed
	Offcut geom.Rect // of a sheet: the largest rectangle that is left
}

// SawCut goes from edge to edge of what it parts.
type SawCut struct {
	Along bool      // along the length of the sheet, otherwise across it
	At    Length    // its near side: from the lower edge, or from the left end, of the sheet
	Of    geom.Rect // what is parted
}

// Placed is where a piece comes out of a blank.
type Placed struct {
	Part   string    // ID
	At     geom.Rect // on the blank, from its lower left; Y is 0 for sticks
	Turned bool      // the part's own x runs along the blank's Y
}

// Laid is where a part comes out of what is cut.
type Laid struct {
	Stock  string // "sheet.birch"
	Number int    // of the blanks of its layout, from 1
	Of     int    // how many these are
	Kind   PartKind
	At     geom.Rect // on the blank, from its lower left; Y is 0 for sticks
	Turned bool
}

// Laid is where each part lies, by its label. For lookup.
func (m *Model) Laid() map[string]Laid {
	parts, laid := m.PartsByID(), map[string]Laid{}
	for i := range m.Layouts {
		l := &m.Layouts[i]
		for k := range l.Blanks {
			for _, p := range l.Blanks[k].Placed {
				laid[parts[p.Part].Label] = Laid{l.Stock, k + 1, len(l.Blanks), l.Kind, p.At, p.Turned}
			}
		}
	}
	return laid
}

// Parts are the two that a cut makes, the near one first; the far one is empty where the cut takes
// all of it.
func (c SawCut) Parts(kerf Length) (near, far geom.Rect) {
	near, far = c.Of, c.Of
	if c.Along {
		near.Y.Hi, far.Y.Lo = c.At, min(c.At+kerf, c.Of.Y.Hi)
	} else {
		near.X.Hi, far.X.Lo = c.At, min(c.At+kerf, c.Of.X.Hi)
	}
	return near, far
}

// Gives returns the pieces that come out of a cut as they are to be, by ID, the near one first.
func (b *Blank) Gives(c SawCut, kerf Length) (parts []string) {
	near, far := c.Parts(kerf)
	for _, made := range []geom.Rect{near, far} {
		for _, p := range b.Placed {
			if p.At == made {
				parts = append(parts, p.Part)
			}
		}
	}
	return parts
}

// Outline is that of the part, which it is told, where it lies on its sheet.
func (at *Placed) Outline(p *Part) geom.Contour {
	out := make(geom.Contour, len(p.Outline))
	for i, v := range p.Outline {
		if out[i] = v; at.Turned {
			out[i].Point = geom.Point{X: -v.Y, Y: v.X}
		}
	}
	box := out.Bounds()
	return out.Shifted(geom.Point{X: at.At.X.Lo - box.X.Lo, Y: at.At.Y.Lo - box.Y.Lo})
}

// SheetEdge is what is not used of a sheet along each of its edges.
func (m *Model) SheetEdge() Length { return m.Table.Edge(m.Saw) }
