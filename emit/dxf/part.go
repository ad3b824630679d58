// Package dxf writes panels as outlines for a cutting table. It takes parts of
// a solved model and writes drawing exchange files, in millimetres to six decimals
// or in inches to nine: closed contours with exact arcs, one layer for each kind of
// work, the part's lower left at the origin unless another point is asked for. Group
// codes and records are those of the published DXF reference; what a table prefers
// among them (one closed polyline for a contour, inner contours first, R12) is common
// practice.
//
// The package formats and computes nothing about the part. What a table would
// choke on it refuses with an error before the first byte: the model should not
// hold such a contour.
package dxf

import (
	"fmt"
	"io"
	"iter"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// WritePart writes one part as it is cut out: marks, then recesses, bores, openings
// and slots, then the outline; all but the marks as closed contours, the outline
// counter-clockwise and the others clockwise. What is not cut through is that of the
// face that lies up: the drawn one, or where the file is mirrored the one behind it.
// Bores that go through are among them from whichever face they are drilled; notches
// are in the outline already. It writes nothing where a contour is refused.
func WritePart(w io.Writer, p *model.Part, opt Options) error {
	return writeView(w, first(p, &opt), &opt)
}

// WriteFar writes what is worked from the other face, as one sees it after turning the
// part over from left to right. The outline is on the note layer, for it is cut already.
func WriteFar(w io.Writer, p *model.Part, opt Options) error {
	return writeView(w, other(p, &opt), &opt)
}

func writeView(w io.Writer, v view, opt *Options) error {
	v = v.relieved(opt)
	m := v.motion()
	all := lying(v.shapes(opt), m, opt.Flatten)
	outline := m.contour(v.part.Outline)
	if opt.Text && !v.second && HasOther(v.part, *opt) {
		all = v.withZeroMark(opt, all, outline.Bounds())
	}
	f := file{parts: []*model.Part{v.part}, all: all, zero: opt.Origin.of(outline.Bounds())}
	if opt.Text {
		f.notes = []note{noteOf(outline, v.lines(opt), all)}
	}
	return f.write(w, opt)
}

// file is what is written into one file, where it lies; zero is to be at 0, 0.
type file struct {
	parts []*model.Part
	all   iter.Seq[shape]
	notes []note
	zero  geom.Point
}

func (d *file) write(w io.Writer, opt *Options) error {
	for _, p := range d.parts {
		if err := validateBores(p); err != nil {
			return fmt.Errorf("part %s: %w", p.ID, err)
		}
	}
	layers := shapeLayers{layerNames: opt.Layers.named(), opt: opt}
	table := layers.table()
	f := frame{unitless: opt.Unitless}
	var r room
	for s := range d.all {
		box, err := s.validate(&r)
		if err != nil {
			return err
		}
		if f.entities == 0 {
			f.box = box
		}
		f.box = f.box.Union(box)
		f.entities++
		if s.kind == sheet || s.kind == scribe || opt.Depths && s.depth > 0 {
			table.add(layer{name: layers.of(&s), colour: colours[s.kind]})
		}
	}
	if err := validateTogether(d.all, f.entities, f.box, usual); err != nil {
		return err
	}
	origin := geom.Point{}.Sub(d.zero)
	f.box = f.box.Shift(origin)
	f.layers = table
	for _, n := range d.notes {
		f.entities += len(n.lines)
	}

	out := newGroups(w)
	out.inch = opt.Inch
	to := newFormat(opt.Version, out)
	to.begin(f)
	for s := range d.all {
		s.write(to, layers.of(&s), origin, &r)
	}
	for _, n := range d.notes {
		for i, line := range n.lines {
			to.text(layers.layerNames[noted], label{at: n.baseline(i).Add(origin), height: n.height, text: line})
		}
	}
	to.end()
	return out.flush()
}
