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

// WritePart writes one part as its drawn face is worked: marks, then recesses,
// bores, openings and slots, then the outline; all but the marks as closed
// contours, the outline counter-clockwise and the others clockwise. Bores that go
// through are among them from whichever face they are drilled; notches are in the
// outline already. It writes nothing where a contour is refused.
func WritePart(w io.Writer, p *model.Part, opt Options) error {
	layers := opt.Layers.named()
	return write(w, p, opt, layers, shapes(p, layers), noteLines)
}

// WriteFar writes what is drilled into the face behind the drawn one, as one sees
// it after turning the part over from left to right: mirrored in x. The outline
// is on the note layer, for it is cut already.
func WriteFar(w io.Writer, p *model.Part, opt Options) error {
	turned := turnedOver(p)
	layers := opt.Layers.named()
	return write(w, turned, opt, layers, farShapes(turned, layers), farLines)
}

func write(w io.Writer, p *model.Part, opt Options, layers Layers, all iter.Seq[shape], lines func(*model.Part) []string) error {
	outline := p.Outline.Bounds()
	origin := geom.Point{X: -outline.X.Lo, Y: -outline.Y.Lo}
	if err := validateBores(p); err != nil {
		return fmt.Errorf("part %s: %w", p.ID, err)
	}
	f := frame{layers: layers.table(), box: outline, unitless: opt.Unitless}
	for s := range all {
		if err := s.validate(); err != nil {
			return fmt.Errorf("part %s: %s %q: %w", p.ID, s.role, s.name, err)
		}
		f.box = f.box.Union(s.contour.Bounds())
		f.entities++
	}
	f.box = f.box.Shift(origin)
	var notes note
	if opt.Text {
		notes = noteOf(p, lines(p), all)
		f.entities += len(notes.lines)
	}

	out := newGroups(w)
	file := newFormat(opt.Version, out)
	file.begin(f)
	var scratch geom.Contour
	for s := range all {
		scratch = s.write(file, origin, scratch[:0])
	}
	for i, line := range notes.lines {
		file.text(layers.Note, notes.baseline(i).Add(origin), notes.height, line)
	}
	file.end()
	return out.flush()
}

// shape is a contour of a part, or a line on it, and the layer that it goes to.
type shape struct {
	role, name string
	layer      string
	inner      bool
	open       bool // a line from the first vertex to the second
	contour    geom.Contour
}

// shapes yields what is on the drawn face in the order of the file: what is drawn
// comes first, and what lies inside is cut before the outline frees the piece.
func shapes(p *model.Part, l Layers) iter.Seq[shape] {
	return func(yield func(shape) bool) {
		for _, m := range p.Marks {
			line := geom.Contour{{Point: m.From}, {Point: m.To}}
			if !yield(shape{role: "mark", name: m.Name, layer: l.Mark, inner: true, open: true, contour: line}) {
				return
			}
		}
		near := func(b *model.Bore) bool { return !b.Far || b.Through() }
		if !sinks(p, l, func(b *model.Bore) bool { return !b.Far }, yield) {
			return
		}
		for _, r := range p.Recesses {
			if !yield(shape{role: "recess", name: r.Name, layer: l.Recess, inner: true, contour: r.Shape}) {
				return
			}
		}
		if !bores(p, l, near, yield) {
			return
		}
		for _, o := range p.Openings {
			if !o.Notch && !yield(shape{role: "opening", name: o.Name, layer: l.Opening, inner: true, contour: o.Shape}) {
				return
			}
		}
		if !slots(p, l, near, yield) {
			return
		}
		yield(shape{role: "outline", name: p.Name, layer: l.Edge, contour: p.Outline})
	}
}

// farShapes yields what is on the far face of a part that has been turned over.
func farShapes(p *model.Part, l Layers) iter.Seq[shape] {
	return func(yield func(shape) bool) {
		far := func(b *model.Bore) bool { return b.Far && !b.Through() }
		if sinks(p, l, func(b *model.Bore) bool { return b.Far }, yield) && bores(p, l, far, yield) && slots(p, l, far, yield) {
			yield(shape{role: "outline", name: p.Name, layer: l.Note, contour: p.Outline})
		}
	}
}

// sinks yields the countersinks of bores as marks: a drill cuts them, not the
// table.
func sinks(p *model.Part, l Layers, of func(*model.Bore) bool, yield func(shape) bool) bool {
	for i := range p.Bores {
		b := &p.Bores[i]
		sunk := *b
		sunk.Diameter = b.Sink
		if b.Sink > 0 && of(b) && !yield(shape{role: "countersink", name: b.Name, layer: l.Mark, inner: true, contour: sunk.Shape()}) {
			return false
		}
	}
	return true
}

func bores(p *model.Part, l Layers, of func(*model.Bore) bool, yield func(shape) bool) bool {
	for i := range p.Bores {
		b := &p.Bores[i]
		if b.Slot == 0 && of(b) && !yield(shape{role: "bore", name: b.Name, layer: l.Bore, inner: true, contour: b.Shape()}) {
			return false
		}
	}
	return true
}

// slots yields slots: those that go through as openings, others as recesses.
func slots(p *model.Part, l Layers, of func(*model.Bore) bool, yield func(shape) bool) bool {
	for i := range p.Bores {
		b := &p.Bores[i]
		layer := l.Opening
		if !b.Through() {
			layer = l.Recess
		}
		if b.Slot > 0 && of(b) && !yield(shape{role: "slot", name: b.Name, layer: layer, inner: true, contour: b.Shape()}) {
			return false
		}
	}
	return true
}

func (s *shape) validate() error {
	if s.open {
		return longEnough(s.contour[0].Point, s.contour[1].Point)
	}
	return validate(s.contour)
}

// write writes a shape moved to an origin; it returns the room that it took.
func (s *shape) write(f format, origin geom.Point, scratch geom.Contour) geom.Contour {
	if s.open {
		f.line(s.layer, s.contour[0].Point.Add(origin), s.contour[1].Point.Add(origin))
		return scratch
	}
	if centre, radius, ok := s.contour.Circle(); ok {
		f.circle(s.layer, centre.Add(origin), radius)
		return scratch
	}
	scratch = appendOriented(scratch, s.contour, s.inner, origin)
	f.polyline(s.layer, scratch)
	return scratch
}
