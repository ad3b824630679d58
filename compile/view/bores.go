package view

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// A row is worth a dimension of its own from so many bores on, where they stand no
// further apart: others are measured one by one from the datum edges.
const (
	leastInRow  = 4
	widestPitch = 100 * length.Millimetre
)

// boreRow is a stretch of bores that are alike, on a line along x or y and equally
// far from one another.
type boreRow struct {
	from, to geom.Point
	count    int
	upright  bool
}

func (r *boreRow) span() geom.Span {
	if r.upright {
		return geom.Span{Lo: r.from.Y, Hi: r.to.Y}
	}
	return geom.Span{Lo: r.from.X, Hi: r.to.X}
}

// boreRows finds the rows among bores that are alike; what is in none is left over.
func boreRows(like []model.Bore) (rows []boreRow, left []geom.Point) {
	for _, b := range like {
		left = append(left, b.At)
	}
	for _, upright := range [...]bool{true, false} {
		across := func(p geom.Point) Length { return p.X }
		way := func(p geom.Point) Length { return p.Y }
		if !upright {
			across, way = way, across
		}
		slices.SortStableFunc(left, func(a, b geom.Point) int {
			return cmp.Or(cmp.Compare(across(a), across(b)), cmp.Compare(way(a), way(b)))
		})
		var rest []geom.Point
		for i := 0; i < len(left); {
			n := 1
			for i+n < len(left) && across(left[i+n]) == across(left[i]) &&
				way(left[i+n])-way(left[i+n-1]) == way(left[min(i+1, len(left)-1)])-way(left[i]) {
				n++
			}
			if n < leastInRow || way(left[i+1]) == way(left[i]) || way(left[i+1])-way(left[i]) > widestPitch {
				rest = append(rest, left[i])
				i++
				continue
			}
			rows = append(rows, boreRow{left[i], left[i+n-1], n, upright})
			i += n
		}
		left = rest
	}
	return rows, left
}

// boring draws a part's bores with their centres. It returns the rows among them,
// what is measured to from the edges, and their names.
func (s *sheet) boring(p *model.Part) (rows []boreRow, xs, ys []Length, named []feature) {
	var seen []geom.Point
	for _, like := range p.LikeBores() {
		f := s.boreFeature(like)
		for i := range like {
			s.bore(&like[i], p.ID, f.title)
			seen = append(seen, like[i].At)
		}
		found, left := boreRows(like)
		for _, r := range found {
			xs, ys = append(xs, r.from.X), append(ys, r.from.Y)
		}
		for _, at := range left {
			xs, ys = append(xs, at.X), append(ys, at.Y)
		}
		rows, named = append(rows, found...), append(named, f)
	}
	ex, ey := rowEnds(rows)
	s.boreLines(seen, append(ex, xs...), append(ey, ys...))
	return rows, xs, ys, named
}

// bore draws a bore, dashed where it comes from the far face, and its centre.
func (s *sheet) bore(b *model.Bore, id, title string) {
	kind := model.ShapeBore
	if b.Far && !b.Through() {
		kind = model.ShapeHidden
	}
	s.area(kind, b.Shape(), id, title)
	if b.Sink > 0 {
		sunk := *b
		sunk.Diameter = b.Sink
		if kind = model.ShapeMark; b.Far {
			kind = model.ShapeHidden
		}
		s.area(kind, sunk.Shape(), id, title)
	}
	s.centre(b.At, max(b.Diameter*3/4, s.h/4))
}

// centre draws a small cross.
func (s *sheet) centre(at geom.Point, arm Length) {
	for _, d := range [...]geom.Point{{X: arm}, {Y: arm}} {
		s.line(model.ShapeCentre, "", "", at.Sub(d), at.Add(d))
	}
}

// rowEnds are the marks at the far ends of rows.
func rowEnds(rows []boreRow) (xs, ys []Length) {
	for _, r := range rows {
		if r.upright {
			ys = append(ys, r.to.Y)
		} else {
			xs = append(xs, r.to.X)
		}
	}
	return xs, ys
}

// boreLines carries the centres that are measured to the edges of the part, through
// all bores on the way.
func (s *sheet) boreLines(bores []geom.Point, xs, ys []Length) {
	for _, x := range sorted(xs) {
		far := s.core.Y.Lo
		for _, b := range bores {
			if b.X == x {
				far = max(far, b.Y)
			}
		}
		s.line(model.ShapeCentre, "", "", geom.Point{X: x, Y: far}, geom.Point{X: x, Y: s.core.Y.Lo})
	}
	for _, y := range sorted(ys) {
		far := s.core.X.Lo
		for _, b := range bores {
			if b.Y == y {
				far = max(far, b.X)
			}
		}
		s.line(model.ShapeCentre, "", "", geom.Point{X: far, Y: y}, geom.Point{X: s.core.X.Lo, Y: y})
	}
}

// sorted returns distinct marks in rising order.
func sorted(marks []Length) []Length {
	marks = slices.Clone(marks)
	slices.Sort(marks)
	return slices.Compact(marks)
}

// rowDims lays a dimension along each row, once where rows stand side by side.
func (s *sheet) rowDims(rows []boreRow) {
	type stretch struct {
		upright bool
		span    geom.Span
		count   int
	}
	var laid []stretch
	for i := range rows {
		r := &rows[i]
		here := stretch{r.upright, r.span(), r.count}
		if slices.Contains(laid, here) {
			continue
		}
		laid = append(laid, here)
		sd := s.below()
		if r.upright {
			sd = s.left()
		}
		gaps := Length(r.count - 1)
		text := strconv.Itoa(r.count-1) + " × " + s.bit(here.span.Size()/gaps)
		s.chain(sd, along, []Length{here.span.Lo, here.span.Hi}, []string{text})
	}
}

// bit writes the size of a tool or of a system of fittings: in an inch build, what
// no inch rule shows and a metric one does, in millimetres.
func (s *sheet) bit(l Length) string {
	if s.build.Metric(s.snap(l), length.Millimetre/10) {
		return l.Decimal(length.Millimetres, 1) + " mm"
	}
	return s.caliper(l)
}

// spot writes where something is marked out on a part: as fine does, or in
// millimetres where only a metric rule shows it and it lies near the edge, as what
// belongs to a system of fittings does.
func (s *sheet) spot(l Length) string {
	if l <= widestPitch && s.build.Metric(s.snap(l), length.Millimetre/2) {
		return l.Decimal(length.Millimetres, 1) + " mm"
	}
	return s.fine(l)
}

// boreFeature names bores that are alike, at one of those in their middle.
func (s *sheet) boreFeature(like []model.Bore) feature {
	b := &like[len(like)/2]
	name, size := b.Name, "⌀ "+s.bit(b.Diameter)
	if len(like) > 1 {
		name = strconv.Itoa(len(like)) + " × " + name
	}
	if b.Slot > 0 {
		size = "slot " + s.bit(b.Diameter) + " × " + s.bit(b.Slot+b.Diameter)
	}
	lines := []string{name, size + ", through"}
	if !b.Through() {
		lines[1] = size + ", " + s.bit(b.Depth) + " deep"
	}
	if b.Sink > 0 {
		lines = append(lines, "sunk to ⌀ "+s.bit(b.Sink))
	}
	if b.Behind() {
		lines = append(lines, "from the other face")
	}
	f := feature{kind: model.ShapeBore, shape: b.Shape(), title: strings.Join(lines, ", "), lines: lines}
	for _, share := range [...]int{6, 2, 7, 1} {
		f.others = append(f.others, like[len(like)*share/8].At)
	}
	return f
}
