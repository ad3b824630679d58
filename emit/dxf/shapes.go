package dxf

import (
	"fmt"
	"iter"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// view is a part as it lies on the table.
type view struct {
	part   *model.Part
	behind bool // the face behind the drawn one lies up: all is mirrored in x
	second bool // the piece is cut out already; what is not cut through is worked from here
	turn   int  // quarter turns counter-clockwise, as it lies on its sheet

	corners Relieved // and how many of them, where they are
}

// first is the view from which a part is cut out, other the one of its other face.
func first(p *model.Part, opt *Options) view {
	return view{part: p, behind: opt.Mirrored, turn: opt.quarters()}
}
func other(p *model.Part, opt *Options) view {
	return view{part: p, behind: !opt.Mirrored, second: true}
}

// motion is how the part lies, but for where.
func (v view) motion() motion {
	if v.behind {
		return mirror
	}
	return still
}

// shape is a contour of a part, or a line on it.
type shape struct {
	part       string // ID
	role, name string
	kind       kind
	depth      length.Length // of blind work
	inner      bool
	form
}

// shapes yields what is worked from the face that lies up, in the order of the file:
// what is drawn comes first, and what lies inside is cut before the outline frees the
// piece.
func (v view) shapes(opt *Options) iter.Seq[shape] {
	return func(yield func(shape) bool) {
		p := v.part
		_ = v.marks(opt, yield) && v.recesses(opt, yield) && v.bores(opt, yield) &&
			v.openings(opt, yield) && v.slots(opt, yield) &&
			yield(shape{part: p.ID, role: "outline", name: p.Name, kind: v.outline(), form: form{given: p.Outline}})
	}
}

func (v view) outline() kind {
	if v.second {
		return noted
	}
	return edge
}

// marks yields lines as far as there is wood, for a slide begins on the banding, scribes
// among them, and the countersinks of bores: a drill cuts them, not the table.
func (v view) marks(opt *Options, yield func(shape) bool) bool {
	p := v.part
	if opt.Without.Marks {
		return true
	}
	for i := 0; !v.behind && i < len(p.Marks); i++ {
		if p.GoesOn(i) {
			continue
		}
		of := shape{part: p.ID, role: "mark", name: p.Marks[i].Name, kind: mark, inner: true}
		if p.Scribed(i) {
			of.role, of.kind = "scribe", scribe
		}
		for _, of.line = range v.drawn(i) {
			if !yield(of) {
				return false
			}
		}
	}
	for i := range p.Bores {
		b := &p.Bores[i]
		if b.Sink > 0 && b.Far == v.behind && !yield(shape{part: p.ID, role: "countersink", name: b.Name, kind: mark, inner: true, form: form{bore: b, sunk: true}}) {
			return false
		}
	}
	return true
}

// drawn is what there is wood for of the line that begins with a mark: one with its bends,
// or more where something is cut out on its way.
func (v view) drawn(first int) (lines [][]geom.Point) {
	p := v.part
	for i := first; i < len(p.Marks) && (i == first || p.GoesOn(i)); i++ {
		for _, ends := range p.Outline.Clip(p.Marks[i].From, p.Marks[i].To) {
			if n := len(lines); n > 0 && lines[n-1][len(lines[n-1])-1] == ends[0] {
				lines[n-1] = append(lines[n-1], ends[1])
			} else {
				lines = append(lines, ends[:])
			}
		}
	}
	return lines
}

func (v view) recesses(opt *Options, yield func(shape) bool) bool {
	p := v.part
	if v.behind || opt.Without.Recesses {
		return true
	}
	for i := range p.Recesses {
		r := &p.Recesses[i]
		if !yield(shape{part: p.ID, role: "recess", name: r.Name, kind: recess, depth: r.Depth, inner: true, form: form{given: r.Shape, open: r.Open, overrun: opt.Overrun}}) {
			return false
		}
	}
	return true
}

func (v view) openings(opt *Options, yield func(shape) bool) bool {
	p := v.part
	if v.second || opt.Without.Openings {
		return true
	}
	for i := range p.Openings {
		o := &p.Openings[i]
		if !o.Notch && !yield(shape{part: p.ID, role: "opening", name: o.Name, kind: opening, inner: true, form: form{given: o.Shape}}) {
			return false
		}
	}
	return true
}

// bored reports whether a bore is drilled from here: through ones are with the outline,
// from whichever face they are drilled.
func (v view) bored(b *model.Bore) bool {
	if b.Through() {
		return !v.second
	}
	return b.Far == v.behind
}

func (v view) bores(opt *Options, yield func(shape) bool) bool {
	p := v.part
	if opt.Without.Bores {
		return true
	}
	for i := range p.Bores {
		b, as := &p.Bores[i], bore
		if b.Through() {
			as = hole
		}
		if b.Slot == 0 && v.bored(b) && !yield(shape{part: p.ID, role: "bore", name: b.Name, kind: as, depth: b.Depth, inner: true, form: form{bore: b}}) {
			return false
		}
	}
	return true
}

// slots yields slots: those that go through as openings, others as recesses.
func (v view) slots(opt *Options, yield func(shape) bool) bool {
	p := v.part
	for i := range p.Bores {
		b := &p.Bores[i]
		if b.Slot == 0 || !v.bored(b) || leavesSlot(opt.Without, b) {
			continue
		}
		as := opening
		if !b.Through() {
			as = recess
		}
		if !yield(shape{part: p.ID, role: "slot", name: b.Name, kind: as, depth: b.Depth, inner: true, form: form{bore: b}}) {
			return false
		}
	}
	return true
}

func leavesSlot(without model.Written, b *model.Bore) bool {
	if b.Through() {
		return without.Openings
	}
	return without.Recesses
}

// zeroMark is a short line across the corner of the part, as it lies, where the file of
// its other face has 0, 0; ok is false where that is no corner.
func (v view) zeroMark(opt *Options, lying geom.Rect) (s shape, ok bool) {
	corner := opt.Origin.turnedOver().turned(v.turn)
	at := corner.of(lying)
	reach := min(15*length.Millimetre, lying.X.Size()/4, lying.Y.Size()/4)
	from, to := at.Add(geom.Point{X: reach}), at.Add(geom.Point{Y: reach})
	if at.X == lying.X.Hi {
		from.X -= 2 * reach
	}
	if at.Y == lying.Y.Hi {
		to.Y -= 2 * reach
	}
	return shape{part: v.part.ID, role: "zero", kind: noted, inner: true, form: form{line: []geom.Point{from, to}}}, corner != Middle
}

// withZeroMark yields that line before all shapes of the view.
func (v view) withZeroMark(opt *Options, all iter.Seq[shape], lying geom.Rect) iter.Seq[shape] {
	line, ok := v.zeroMark(opt, lying)
	if !ok {
		return all
	}
	return func(yield func(shape) bool) {
		if yield(line) {
			all(yield)
		}
	}
}

// HasOther reports whether a part is worked from its other face too, so that a file
// for it is written: where anything is in it but countersinks, which are told in words.
func HasOther(p *model.Part, opt Options) bool {
	v := other(p, &opt)
	for s := range v.shapes(&opt) {
		if s.role != "countersink" && s.role != "outline" {
			return true
		}
	}
	return false
}

// validate refuses a shape that a table would choke on; box holds one that is good, as it
// is written.
func (s *shape) validate(r *room) (box geom.Rect, err error) {
	c := r.contour(&s.form)
	if s.line != nil {
		for i := 1; i < len(c) && err == nil; i++ {
			err = longEnough(c[i-1].Point, c[i].Point)
		}
	} else {
		err = r.validate(c)
	}
	if err != nil {
		return box, fmt.Errorf("part %s: %s %q: %w", s.part, s.role, s.name, err)
	}
	return r.drawn(&s.form).Bounds(), nil
}

// write writes a shape moved to an origin.
func (s *shape) write(f format, layer string, origin geom.Point, r *room) {
	c := r.drawn(&s.form)
	if len(s.line) == 2 {
		f.line(layer, c[0].Point.Add(origin), c[1].Point.Add(origin))
		return
	}
	if s.line != nil {
		f.polyline(layer, c.Shifted(origin), pen{open: true})
		return
	}
	if centre, radius, ok := c.Circle(); ok {
		f.circle(layer, centre.Add(origin), radius)
		return
	}
	r.oriented = appendOriented(r.oriented[:0], c, s.inner, origin)
	f.polyline(layer, r.oriented, pen{})
}
