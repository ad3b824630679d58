// Package dxf writes panels as outlines for a cutting table. It takes parts of
// a solved model and writes drawing exchange files in millimetres, to six
// decimals: closed contours with exact arcs, one layer for each kind of work,
// the part's lower left at the origin. Group codes and records are those of the
// published DXF reference; what a table prefers among them (one closed polyline
// for a contour, inner contours first, R12) is common practice.
//
// The package formats and computes nothing about the part. What a table would
// choke on it refuses with an error before the first byte: the model should not
// hold such a contour. It does not check that openings lie within the outline.
package dxf

import (
	"fmt"
	"io"
	"iter"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// Options say how a file is written. The zero value is R12 with the default
// layers, its unit stated, and no notes.
type Options struct {
	Version Version
	Layers  Layers
	Text    bool // write the notes

	// Unitless leaves $INSUNITS out of an R12 file, for a reader that refuses
	// the variable. R2000 defines it and always has it.
	Unitless bool
}

// WritePart writes one panel: recesses, then openings, then the outline, all
// as closed contours, the outline counter-clockwise and the others clockwise.
// Notches are in the outline already. It writes nothing where a contour is
// refused.
func WritePart(w io.Writer, p *model.Part, opt Options) error {
	layers := opt.Layers.named()
	outline := p.Outline.Bounds()
	origin := geom.Point{X: -outline.X.Lo, Y: -outline.Y.Lo}
	f := frame{layers: layers.table(), box: outline, unitless: opt.Unitless}
	for s := range shapes(p, layers) {
		if err := validate(s.contour); err != nil {
			return fmt.Errorf("part %s: %s %q: %w", p.ID, s.role, s.name, err)
		}
		f.box = f.box.Union(s.contour.Bounds())
		f.entities++
	}
	f.box = f.box.Shift(origin)
	var notes note
	if opt.Text {
		notes = noteOf(p)
		f.entities += len(notes.lines)
	}

	out := newGroups(w)
	file := newFormat(opt.Version, out)
	file.begin(f)
	for s := range shapes(p, layers) {
		writeContour(file, s.layer, oriented(s.contour, s.inner).Shifted(origin))
	}
	for i, line := range notes.lines {
		file.text(layers.Note, notes.baseline(i).Add(origin), notes.height, line)
	}
	file.end()
	return out.flush()
}

// shape is a contour of a part and the layer that it goes to.
type shape struct {
	role, name string
	layer      string
	inner      bool
	contour    geom.Contour
}

// shapes yields the contours of a part in the order of the file: what lies
// inside is cut before the outline frees the piece.
func shapes(p *model.Part, l Layers) iter.Seq[shape] {
	return func(yield func(shape) bool) {
		for _, r := range p.Recesses {
			if !yield(shape{"recess", r.Name, l.Recess, true, r.Shape}) {
				return
			}
		}
		for _, o := range p.Openings {
			if !o.Notch && !yield(shape{"opening", o.Name, l.Opening, true, o.Shape}) {
				return
			}
		}
		yield(shape{"outline", p.Name, l.Edge, false, p.Outline})
	}
}

func writeContour(f format, layer string, c geom.Contour) {
	if centre, radius, ok := c.Circle(); ok {
		f.circle(layer, centre, radius)
		return
	}
	f.polyline(layer, c)
}
