package view

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// meetsWall is how near a thing ends to a wall that it is said to meet: boxes keep off a wall that
// leans in, and what is between is scribed.
const meetsWall = 50 * length.Millimetre

// planWallDims lays, outside the wall, where boxes and framing meet it, where slabs do, and its length.
func (s *sheet) planWallDims(m *model.Model, w *model.Wall) {
	if w.Length <= 0 {
		return
	}
	sd := &side{frame: planFrame(w.Frame), out: 1, depth: wallBand * s.h, ends: geom.Span{Hi: w.Length}}
	boxes := []Length{0}
	for i := range m.Runs {
		r := &m.Runs[i]
		boxes = append(boxes, meeting(w, r.Frame, geom.Span{Hi: r.Length}, geom.Span{Hi: r.Depth})...)
	}
	for i := range m.KneeWalls {
		k := &m.KneeWalls[i]
		boxes = append(boxes, meeting(w, k.Frame, k.Framing.U, k.Framing.V)...)
	}
	slabs := []Length{0}
	for i := range m.Slabs {
		sl := &m.Slabs[i]
		slabs = append(slabs, meeting(w, sl.Frame, sl.Box.U, sl.Box.V)...)
	}
	s.planChain(sd, w, boxes)
	foot := sd.foot
	sd.foot = sd.depth // through the figures of the boxes no line runs
	s.planChain(sd, w, slabs)
	sd.foot = foot
	s.chain(sd, along, []Length{0, w.Length}, []string{clip(w.Name) + " " + s.num(w.Length)})
}

// planChain lays a chain between marks along a wall, where they tell more than its length.
func (s *sheet) planChain(sd *side, w *model.Wall, marks []Length) {
	marks = distinct(marks, w.Length)
	last := marks[len(marks)-1]
	if len(marks) > 2 || last > 0 && w.Length-last >= length.Millimetre {
		s.chain(sd, along, marks, stretches(marks, s.mark))
	}
}

// meeting tells where along a wall the corners of a rectangle of a frame meet it.
func meeting(w *model.Wall, f geom.Frame, u, v geom.Span) (marks []Length) {
	for _, p := range [...]geom.Point{f.At(u.Lo, v.Lo), f.At(u.Lo, v.Hi), f.At(u.Hi, v.Lo), f.At(u.Hi, v.Hi)} {
		if along, off := w.Frame.Local(p); max(off, -off) <= meetsWall {
			marks = append(marks, along)
		}
	}
	return marks
}

// planRunDims lays how long a run is that stands out from a wall, and the slabs over it and over
// the knee wall behind it: at the back, beyond all of them.
func (s *sheet) planRunDims(m *model.Model, r *model.Run) {
	if r.Along {
		return
	}
	over := runHull(r)
	for i := range m.KneeWalls {
		if k := &m.KneeWalls[i]; k.Frame == r.Frame {
			over = over.Union(k.Framing)
		}
	}
	spans := []geom.Span{{Hi: r.Length}}
	for _, sl := range slabsOver(m, r.Frame, over) {
		over = over.Union(sl.Box)
		spans = append(spans, sl.Box.U)
	}
	slices.SortStableFunc(spans, func(a, b geom.Span) int { return cmp.Compare(a.Size(), b.Size()) })
	sd := &side{frame: planFrame(r.Frame), out: 1, depth: -over.V.Lo, foot: -over.V.Lo}
	for _, u := range slices.Compact(spans) {
		if u.Size() < length.Millimetre {
			continue
		}
		s.chain(sd, along, []Length{u.Lo, u.Hi}, []string{s.mark(u.Size())})
	}
}

// distinct sorts marks and drops those outside 0..end and those that repeat
// another within a millimetre.
func distinct(marks []Length, end Length) []Length {
	slices.Sort(marks)
	var out []Length
	for _, u := range marks {
		if u < 0 || u > end+length.Millimetre || len(out) > 0 && u-out[len(out)-1] < length.Millimetre {
			continue
		}
		out = append(out, u)
	}
	return out
}

// stretches writes the distances between marks.
func stretches(marks []Length, write func(Length) string) []string {
	var texts []string
	for i := 1; i < len(marks); i++ {
		texts = append(texts, write(marks[i]-marks[i-1]))
	}
	return texts
}
