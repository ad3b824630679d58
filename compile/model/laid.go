package model

import "barwright/compile/geom"

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
	labels := map[string]string{} // by ID
	for i := range m.Parts {
		labels[m.Parts[i].ID] = m.Parts[i].Label
	}
	laid := map[string]Laid{}
	for i := range m.Layouts {
		l := &m.Layouts[i]
		for k := range l.Blanks {
			for _, p := range l.Blanks[k].Placed {
				laid[labels[p.Part]] = Laid{l.Stock, k + 1, len(l.Blanks), l.Kind, p.At, p.Turned}
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
func (m *Model) SheetEdge() Length {
	if m.Table.Free {
		return m.Table.Margin
	}
	return m.Saw.Trim
}
