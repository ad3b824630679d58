package dxf

import (
	"fmt"
	"io"
	"iter"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// Sheet is one sheet as it is laid out. Parts are those of Blank.Placed, in that order.
type Sheet struct {
	Stock      *model.Sheet
	Number, Of int // of the sheets of the stock, from 1
	Blank      *model.Blank
	Kerf       length.Length // between its parts
	Parts      []*model.Part
}

// WriteSheet writes a sheet as laid out: its edges on a layer of their own, then each
// part where it lies, as WritePart writes it. A mirrored sheet is mirrored as a whole.
func WriteSheet(w io.Writer, s *Sheet, opt Options) error {
	edges := geom.R(0, 0, s.Blank.Length, s.Blank.Width)
	f := file{zero: opt.Origin.of(edges)}
	all := []iter.Seq[shape]{s.edges(edges)}
	lines := s.lines(&opt)
	for i, p := range s.Parts {
		opt := opt
		opt.Turned = s.Blank.Placed[i].Turned
		v := first(p, &opt).relieved(&opt)
		m := s.motion(i, opt.Mirrored)
		own, outline := lying(v.shapes(&opt), m, opt.Flatten), m.contour(v.part.Outline)
		if opt.Text && HasOther(p, opt) {
			own = v.withZeroMark(&opt, own, outline.Bounds())
		}
		all = append(all, own)
		f.parts = append(f.parts, v.part)
		if !opt.Text {
			continue
		}
		said := v.sheetLines(&opt)
		n, ok := noteOn(outline, said, own)
		if !ok {
			n = noteAcross(outline.Bounds(), ascii(p.Label))
			lines = append(lines, said...)
		}
		f.notes = append(f.notes, n)
	}
	if opt.Text {
		f.notes = append(f.notes, noteBelow(edges, lines))
	}
	f.all = joined(all)
	return f.write(w, &opt)
}

func (s *Sheet) edges(r geom.Rect) iter.Seq[shape] {
	return func(yield func(shape) bool) {
		yield(shape{part: s.Stock.Name, role: "sheet", kind: sheet, form: form{given: geom.RectContour(r)}})
	}
}

func joined(all []iter.Seq[shape]) iter.Seq[shape] {
	return func(yield func(shape) bool) {
		for _, some := range all {
			for s := range some {
				if !yield(s) {
					return
				}
			}
		}
	}
}

// motion is how part i comes to lie on the sheet. A turned part's own x runs along the
// sheet's Y.
func (s *Sheet) motion(i int, mirrored bool) motion {
	m, placed := still, &s.Blank.Placed[i]
	if placed.Turned {
		m = quarter
	}
	box := m.contour(s.Parts[i].Outline).Bounds()
	m = m.shifted(geom.Point{X: placed.At.X.Lo - box.X.Lo, Y: placed.At.Y.Lo - box.Y.Lo})
	if mirrored {
		m = m.then(mirror).shifted(geom.Point{X: s.Blank.Length})
	}
	return m
}

// lines say which sheet this is, how it lies, and what the file leaves of it.
func (s *Sheet) lines(opt *Options) []string {
	lines := []string{
		opt.Build,
		s.Stock.Name + ", sheet " + fmt.Sprint(s.Number) + " of " + fmt.Sprint(s.Of),
		s.Stock.Text,
		thick(s.Stock.Thickness, opt) + measuredOn(opt.Batch),
		opt.show(s.Blank.Length) + " x " + opt.show(s.Blank.Width) + " over all",
		opt.unit(),
	}
	if (opt.Bit == 0 || opt.Bit > s.Kerf) && len(s.Parts) > 1 {
		lines = append(lines, opt.show(s.Kerf)+" BETWEEN PARTS: no wider bit")
	}
	if opt.Mirrored {
		lines = append(lines, "drawn faces DOWN: mirrored in x")
	}
	if opt.Origin != LowerLeft {
		lines = append(lines, "zero at the "+opt.Origin.String()+" of the sheet")
	}
	return inASCII(append(lines, opt.wayLines()...)...)
}

// thick says how thick a sheet is, nothing where that is not known, as of a plain cut list.
func thick(l length.Length, opt *Options) string {
	if l == 0 {
		return ""
	}
	return opt.show(l) + " thick"
}

// sheetLines are the note of a part on a sheet.
func (v view) sheetLines(opt *Options) []string {
	lines := append([]string{v.part.Label + " " + v.part.Name}, v.workLines(opt)...)
	if HasOther(v.part, *opt) {
		lines = append(lines, v.flipLines(opt)...)
	}
	lines = append(lines, v.reliefLines(opt)...)
	return inASCII(append(lines, smallLine(v.part, opt))...)
}
