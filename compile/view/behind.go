package view

import (
	"cmp"
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// kneeWallBehind draws what one sees of a knee wall from its run's front: what
// stands above the line of the counter, and what reaches beyond the run's ends.
func (s *sheet) kneeWallBehind(m *model.Model, k *model.KneeWall, run geom.Span, line Length) {
	var parts []*model.Part
	for i := range m.Parts {
		p := &m.Parts[i]
		if p.Placement.Frame == k.Frame && p.Kind != model.SlabPiece && p.Placement.Box.V.Mid() < 0 {
			parts = append(parts, p)
		}
	}
	slices.SortStableFunc(parts, func(a, b *model.Part) int {
		return cmp.Compare(a.Placement.Box.V.Hi, b.Placement.Box.V.Hi)
	})
	for _, p := range parts {
		kind := partKind(p)
		if p.Kind == model.Steel && p.Placement.Box.V.Hi < k.Framing.V.Hi {
			kind = model.ShapeHidden // its end is let into the plate
		}
		for _, r := range beyondRun(rectUZ(p.Fitted()), run, line) {
			s.rect(kind, r, p.ID, partTitle(p))
		}
	}
}

// beyondRun returns what of a rectangle lies above a line or beside a run.
func beyondRun(r geom.Rect, run geom.Span, line Length) (seen []geom.Rect) {
	for _, part := range [...]geom.Rect{
		{X: r.X, Y: geom.Span{Lo: max(r.Y.Lo, line), Hi: r.Y.Hi}},
		{X: geom.Span{Lo: r.X.Lo, Hi: min(r.X.Hi, run.Lo)}, Y: geom.Span{Lo: r.Y.Lo, Hi: min(r.Y.Hi, line)}},
		{X: geom.Span{Lo: max(r.X.Lo, run.Hi), Hi: r.X.Hi}, Y: geom.Span{Lo: r.Y.Lo, Hi: min(r.Y.Hi, line)}},
	} {
		if part.X.Size() > 0 && part.Y.Size() > 0 {
			seen = append(seen, part)
		}
	}
	return seen
}

// nearWall is how near a wall comes to the end of a run that meets it.
const nearWall = 50_000_000 // nm

// endWall finds the wall that an end of a run meets, and where its face is at the
// front of the run, along it.
func endWall(m *model.Model, r *model.Run, end model.End) (wall *model.Wall, face Length) {
	if r.FreeAt(end) {
		return nil, 0
	}
	at := Length(0)
	if end == model.Right {
		at = r.Length
	}
	nearest := Length(nearWall)
	for i := range m.Room.Walls {
		w := &m.Room.Walls[i]
		u0, v0 := r.Frame.Local(w.Frame.At(0, 0))
		u1, v1 := r.Frame.Local(w.Frame.At(w.Length, 0))
		along, across := float64(u1-u0), float64(v1-v0)
		if math.Abs(along) > math.Abs(across) || max(v0, v1) <= 0 || min(v0, v1) >= r.Depth {
			continue
		}
		front := float64(min(max(r.Depth, min(v0, v1)), max(v0, v1)) - v0)
		u := u0 + Length(math.Round(float64(along*front)/across))
		if off := max(u-at, at-u); off < nearest {
			wall, face, nearest = w, u, off
		}
	}
	return wall, face
}

// wallCut is a wall at an end of a run, as it is cut at the run's front.
type wallCut struct {
	at   geom.Rect
	name string
}

// endWalls draws the walls that a run's ends meet, and takes them into what
// dimensions are laid round.
func (s *sheet) endWalls(m *model.Model, r *model.Run) (cuts []wallCut) {
	high := geom.Span{Lo: 0, Hi: s.core.Y.Hi}
	for _, end := range [...]model.End{model.Left, model.Right} {
		w, face := endWall(m, r, end)
		if w == nil {
			continue
		}
		at := geom.Rect{X: geom.Span{Lo: face - wallBand*s.h, Hi: face}, Y: high}
		if end == model.Right {
			at.X = geom.Span{Lo: face, Hi: face + wallBand*s.h}
		}
		s.area(model.ShapeWall, s.leaning(w, r, at, end), "wall."+w.Name, "wall "+w.Name+", cut")
		s.core = s.core.Union(at)
		s.solid.add(boxOfRect(at))
		cuts = append(cuts, wallCut{at, "wall " + w.Name})
		if len(w.Read) > 0 {
			s.view.Note += " Wall " + w.Name + " is drawn as it was read."
		}
	}
	return cuts
}

// leaning is the outline of a wall that is cut at the front of a run: its face as it was
// read, up from the datum.
func (s *sheet) leaning(w *model.Wall, r *model.Run, at geom.Rect, end model.End) geom.Contour {
	outline := geom.RectContour(at)
	if len(w.Read) == 0 {
		return outline
	}
	face, out := at.X.Hi, Length(1)
	if end == model.Right {
		face, out = at.X.Lo, -1
	}
	along, _ := w.Frame.Local(r.Frame.At(face, r.Depth))
	var up geom.Contour
	for _, p := range w.Face().Along(geom.Point{X: along, Y: at.Y.Lo}, geom.Point{X: along, Y: at.Y.Hi}) {
		up = append(up, geom.Vertex{Point: geom.Point{X: face + out*p.Value, Y: p.At.Y}})
	}
	if end == model.Right {
		slices.Reverse(up)
		return append(up, outline[1], outline[2])
	}
	return append(geom.Contour{outline[0]}, append(up, outline[3])...)
}

// nameWall writes a name up a wall that is cut, where there is room.
func (s *sheet) nameWall(c wallCut) {
	b := setBlock([]string{c.name}, s.h)
	spare := c.at.Y.Size() - b.w - 2*s.h
	for _, share := range shares {
		at := geom.Point{X: c.at.X.Mid(), Y: c.at.Y.Lo + s.h + b.w/2 + spare*share/100}
		if spare >= 0 && s.free(boxAt(at, b.w, b.h, 90*geom.Degree), true) {
			s.set(b, at, 90*geom.Degree)
			return
		}
	}
}
