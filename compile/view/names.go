package view

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view/paint"
)

// places is how many free pieces of a thing are tried for its name.
const places = 8

// calledNear is how far from a thing its name stands clear of the picture, in text heights.
const calledNear = 16

const untold = " What bears no name had no room for it."

// ownersOf names what bodies belong to, and is empty for those whose owner has no name in the
// picture: boxes, slabs, appliances and knee walls are written once.
func ownersOf(m *model.Model, all []body) []string {
	names := map[string]string{} // lookup only
	for i := range m.Runs {
		for j := range m.Runs[i].Boxes {
			b := &m.Runs[i].Boxes[j]
			names[b.Key()] = b.Name
		}
	}
	for i := range m.Slabs {
		names[m.Slabs[i].Key()] = m.Slabs[i].Words()
	}
	for i := range m.KneeWalls {
		names[kneeWallID(&m.KneeWalls[i])] = "knee wall " + m.KneeWalls[i].Name
	}
	owners := make([]string, len(all))
	for i := range all {
		owner := all[i].id
		if p := all[i].part; p != nil && p.Kind != model.SlabPiece {
			owner = p.Block()
		}
		owners[i] = names[owner]
	}
	return owners
}

// partNames names each body by itself.
func partNames(all []body) []string {
	names := make([]string, len(all))
	for i := range all {
		names[i] = all[i].name
	}
	return names
}

// nameFaces writes names, one for each body; one that several have is written once, where most of
// them is seen: into a face, or beside it with a leader.
func (s *sheet) nameFaces(all []body, seen []paint.Seen, names []string) {
	if s.lost {
		return
	}
	free := map[string][]paint.Free{} // lookup only
	var order []string
	for i := range seen {
		name := names[seen[i].Of]
		if name == "" || seen[i].Cut > 0 {
			continue
		}
		if free[name] == nil {
			order = append(order, name)
		}
		free[name] = append(free[name], seen[i].Free...)
	}
	var outside []string
	offFaces := s.clearOf(seen)
	nameless := false
	for _, name := range order {
		slices.SortStableFunc(free[name], func(a, b paint.Free) int { return cmp.Compare(b.Area, a.Area) })
		if !s.nameIn(free[name], name) {
			outside = append(outside, name)
		}
	}
	if len(outside) > calledOut { // where more are needed, none is
		s.view.Note += untold
		return
	}
	for _, name := range outside {
		largest := free[name][0]
		if largest.Area < float64(s.h)*float64(s.h)/4 {
			continue
		}
		blocks := []block{setBlock([]string{name}, s.h)}
		if !s.searchTo(0, calledNear, blocks, largest.Middle, offFaces, false) && !s.search(blocks, largest.Middle, anywhere) {
			nameless = true
		}
	}
	if nameless {
		s.view.Note += untold
	}
}

// nameIn writes a name into one of the largest free pieces.
func (s *sheet) nameIn(free []paint.Free, name string) bool {
	b := setBlock([]string{name}, s.h)
	for _, f := range free[:min(len(free), places)] {
		place := boxAt(f.Middle, b.w, b.h, 0)
		if within(f.Corners, &place) && s.free(place, false) {
			s.set(b, f.Middle, 0)
			return true
		}
	}
	for _, f := range free[:min(len(free), places)] {
		place := boxAt(f.Middle, b.w, b.h, 0)
		if amid(free, &place) && s.free(place, false) {
			s.set(b, f.Middle, 0)
			return true
		}
	}
	return false
}

// amid reports whether a box lies in several pieces together, as far as points of it tell that
// stand a third of its height apart.
func amid(free []paint.Free, b *box) bool {
	step := 2 * b.hh / 3
	for y := -b.hh; y <= b.hh+1; y += step {
		for x := -b.hw; x <= b.hw+step/2; x += step {
			at := boxAt(geom.Point{X: Length(b.x + min(x, b.hw)), Y: Length(b.y + y)}, 0, 0, 0)
			if !slices.ContainsFunc(free, func(f paint.Free) bool { return within(f.Corners, &at) }) {
				return false
			}
		}
	}
	return true
}

// within reports whether a box lies in a convex ring, counter-clockwise.
func within(ring []geom.Point, b *box) bool {
	for i, p := range ring {
		edge := segOf(p, ring[(i+1)%len(ring)])
		for _, c := range b.corners() {
			if edge.side(c[0], c[1]) < 0 {
				return false
			}
		}
	}
	return true
}

// clearOf returns whether a callout stands on no face of a picture.
func (s *sheet) clearOf(seen []paint.Seen) func(*candidate) bool {
	faces := newGrid[face](s.view.Bounds, s.h)
	for i := range seen {
		ring := ringOf(seen[i].Outline)
		faces.add(face{&seen[i], outlineSegs(model.Shape{Lines: ring, Closed: true}), boxOfRect(ring.Bounds())})
	}
	var under *face // that a callout stood on last
	return func(p *candidate) (clear bool) {
		if under != nil && under.covers(&p.text) {
			return false
		}
		under = faces.first(p.text.reach(), func(f *face) bool { return f.covers(&p.text) })
		return under == nil
	}
}

// face is one of a picture, with the box round it.
type face struct {
	*paint.Seen
	edges []seg
	box
}

// covers reports whether a face lies under a box: an edge of it crosses that, or it holds it.
func (f *face) covers(b *box) bool {
	if !f.box.meets(b) {
		return false
	}
	for i := range f.edges {
		if b.crosses(&f.edges[i]) {
			return true
		}
	}
	return f.Holds(geom.Point{X: Length(b.x), Y: Length(b.y)})
}
