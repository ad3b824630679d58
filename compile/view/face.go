package view

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// look is a way to look at things of a frame: from the side that out points to.
type look struct {
	x, y, out geom.Dir
}

func lookFrom(out geom.Dir) look {
	p := geom.Place(geom.Frame{}, geom.Box{}, out)
	return look{p.X, p.Y, out}
}

// rect is what one sees of a box.
func (l look) rect(b geom.Box) geom.Rect {
	seen := func(d geom.Dir) geom.Span {
		if s := b.Along(d.Axis); !d.Neg {
			return s
		}
		return mirrored(b.Along(d.Axis))
	}
	return geom.Rect{X: seen(l.x), Y: seen(l.y)}
}

// along is where a place along the run comes to lie.
func (l look) along(u Length) Length {
	if l.x.Neg {
		return -u
	}
	return u
}

// faces reports whether one sees a part's face rather than its edge.
func (l look) faces(p *model.Part) bool { return p.Placement.Out.Axis == l.out.Axis }

// shape is what one sees of a contour on the face of a part that faces the eye or
// turns its back to it.
func (l look) shape(p *model.Part, c geom.Contour) geom.Contour {
	out := make(geom.Contour, len(c))
	turned := p.Placement.Out != l.out
	for i, v := range c {
		at := l.rect(p.Placement.Behind(geom.R(v.X, v.Y, v.X, v.Y)))
		out[i] = geom.Vertex{Point: geom.Point{X: at.X.Lo, Y: at.Y.Lo}, Bulge: v.Bulge}
		if turned {
			out[i].Bulge = -v.Bulge
		}
	}
	return out
}

// nearness orders parts from back to front.
func (l look) nearness(a, b *model.Part) int {
	x, y := a.Placement.Box.Along(l.out.Axis), b.Placement.Box.Along(l.out.Axis)
	if l.out.Neg {
		x, y = mirrored(x), mirrored(y)
	}
	return cmp.Compare(x.Hi, y.Hi)
}

// seen draws a part with what is cut through it, as one sees it where it stands.
func (s *sheet) seen(l look, p *model.Part, kind model.ShapeKind) {
	if !l.faces(p) {
		s.rect(kind, l.rect(p.Fitted()), p.ID, partTitle(p))
		return
	}
	s.area(kind, l.shape(p, standing(p)), p.ID, partTitle(p))
	for _, o := range p.Openings {
		if !o.Notch {
			s.area(model.ShapeOpening, l.shape(p, o.Shape), p.ID, o.Name+" in "+p.Name)
		}
	}
	for i := range p.Bores {
		if b := &p.Bores[i]; b.Through() || b.Far != (p.Placement.Out == l.out) {
			s.area(model.ShapeBore, l.shape(p, b.Shape()), p.ID, b.Name+" in "+p.Name)
		}
	}
}

// kneeWallFace is one face of a knee wall.
type kneeWallFace struct {
	name, words string
	out         geom.Dir
}

var kneeWallFaces = [...]kneeWallFace{
	{"room", "from the room", geom.Dir{Axis: geom.V, Neg: true}},
	{"work", "from the work side, without the boxes before it", geom.Dir{Axis: geom.V}},
	{"left", "from the run's left end", geom.Dir{Axis: geom.U, Neg: true}},
	{"right", "from the run's right end", geom.Dir{Axis: geom.U}},
}

// skinsOn returns the skins of one face.
func skinsOn(k *model.KneeWall, face string) (found []*model.Skin) {
	for i := range k.Skins {
		if k.Skins[i].Face == face {
			found = append(found, &k.Skins[i])
		}
	}
	return found
}

// before returns the parts of a knee wall that stand out from its framing on a face,
// from the framing outwards.
func (f *kneeWallFace) before(m *model.Model, k *model.KneeWall) (parts []*model.Part) {
	whole := k.Framing.Along(f.out.Axis)
	for i := range m.Parts {
		p := &m.Parts[i]
		b := p.Placement.Box.Along(f.out.Axis)
		out := b.Hi > whole.Hi
		if f.out.Neg {
			out = b.Lo < whole.Lo
		}
		if out && isOf(k, p) {
			parts = append(parts, p)
		}
	}
	slices.SortStableFunc(parts, lookFrom(f.out).nearness)
	return parts
}

// isOf reports whether a part belongs to a knee wall: to its framing, a skin or a
// corner.
func isOf(k *model.KneeWall, p *model.Part) bool {
	kind := p.BlockKind()
	return p.Placement.Frame == k.Frame && (kind == "knee_wall" || kind == "skin" || kind == "corner")
}

// finishedFace shows a face of a knee wall with its skin and all that lies on it.
func finishedFace(m *model.Model, k *model.KneeWall, f *kneeWallFace, as Type) model.View {
	l, skins, parts := lookFrom(f.out), skinsOn(k, f.name), f.before(m, k)
	box := skins[0].Box
	for _, sk := range skins[1:] {
		box = box.Union(sk.Box)
	}
	tops := slabsOver(m, k.Frame, k.Framing)
	core := l.rect(k.Framing).Union(l.rect(box))
	for _, p := range parts {
		core = core.Union(l.rect(p.Fitted()))
	}
	for _, sl := range tops {
		core = core.Union(l.rect(sl.Box))
	}
	s := newSheet(m, core, as, roomShare)
	s.view.Note = "Seen " + f.words + "."
	s.rect(model.ShapeBeyond, l.rect(k.Framing), kneeWallID(k), "knee wall "+k.Name)
	for _, p := range parts {
		s.seen(l, p, partKind(p))
	}
	for _, sl := range tops {
		s.rect(model.ShapeSlab, l.rect(sl.Box), sl.Key(), sl.Words())
	}
	for i := range k.Outlets {
		if o := &k.Outlets[i]; o.Face == f.name {
			s.rect(model.ShapeOutlet, l.rect(o.Cover), "outlet."+o.Name, "outlet "+o.Name+", its cover plate")
		}
	}
	s.floor(m, underWall(k, l))
	s.faceDims(k, l, f, skins, parts, l.rect(box), tops)
	s.faceNames(k, l, f, parts, tops)
	s.nameFloor()
	return s.finish()
}

// faceDims counts battens below and seams and outlets above, from the left end of
// the skin, and lays heights at the right. An edge that is cut on site to what was read has
// no figure: its stations have.
func (s *sheet) faceDims(k *model.KneeWall, l look, f *kneeWallFace, skins []*model.Skin, parts []*model.Part, skin geom.Rect, tops []*model.Slab) {
	battens, above, zs := []Length{}, []Length{}, []Length{}
	for _, sk := range skins {
		if f.out.Axis != geom.V {
			break
		}
		for _, u := range sk.Battens {
			x := l.along(u)
			battens = append(battens, x)
			s.line(model.ShapeCentre, "", "", geom.Point{X: x, Y: skin.Y.Lo}, geom.Point{X: x, Y: s.core.Y.Lo})
		}
		for _, u := range sk.Seams {
			above = append(above, l.along(u))
		}
	}
	for i := range k.Outlets {
		if o := &k.Outlets[i]; o.Face == f.name {
			at := upright(l.rect(o.Box)).centre()
			above, zs = append(above, at.X), append(zs, at.Y)
			s.line(model.ShapeCentre, "", "", at, geom.Point{X: s.core.X.Lo, Y: at.Y})
		}
	}
	for _, x := range above {
		s.line(model.ShapeCentre, "", "", geom.Point{X: x, Y: skin.Y.Hi}, geom.Point{X: x, Y: s.core.Y.Hi})
	}
	switch {
	case len(battens) > 0 && len(above) > 0:
		s.view.Note += " Below: centres of battens, counted from the left end of the skin. Above, from there too: seams and centres of outlets."
	case len(battens) > 0:
		s.view.Note += " Below: centres of battens, counted from the left end of the skin."
	case len(above) > 0:
		s.view.Note += " Above: seams and centres of outlets, counted from the left end of the skin."
	}
	cutTo := func(edge model.Edge) bool {
		return slices.ContainsFunc(parts, func(p *model.Part) bool { return l.faces(p) && p.ScribedAt(edge) })
	}
	if slices.ContainsFunc(parts, func(p *model.Part) bool { return len(p.Scribes) > 0 }) {
		s.view.Note += " What is cut on site to the floor or a wall is drawn as it stands; what comes off is listed under Setting."
	}
	if !cutTo(model.RightEdge) {
		battens = append(battens, skin.X.Hi)
	}
	s.count(s.below(), skin.X.Lo, battens, s.fine)
	s.count(s.above(), skin.X.Lo, above, s.fine)
	s.count(s.left(), 0, zs, s.fine)
	heights := []Length{0, skin.Y.Hi}
	if !cutTo(model.Bottom) {
		heights = append(heights, skin.Y.Lo)
	}
	for _, sl := range tops {
		heights = append(heights, sl.Box.Z.Lo, sl.Box.Z.Hi)
	}
	s.heights(s.right(), heights)
}

// faceNames names the pieces of the skin by their labels, and what else lies on it.
func (s *sheet) faceNames(k *model.KneeWall, l look, f *kneeWallFace, parts []*model.Part, tops []*model.Slab) {
	for i := range k.Outlets {
		if o := &k.Outlets[i]; o.Face == f.name {
			s.callout(upright(l.rect(o.Cover)).centre(), "outlet "+o.Name)
		}
	}
	for _, p := range parts {
		if l.faces(p) && p.Kind == model.Panel {
			home := upright(l.rect(p.Fitted()))
			if !s.within(home, true, []string{p.Label}) {
				s.callout(s.visible(home), p.Label)
			}
		}
	}
	for _, sl := range tops {
		s.name(upright(l.rect(sl.Box)), sl.Words())
	}
}

// visible is a point of a thing that nothing drawn after it hides: the first of a
// few, or its middle.
func (s *sheet) visible(home quad) geom.Point {
	own := home.box().bounds()
	last := 0
	for i, shape := range s.view.Shapes {
		if shape.Closed && shape.Lines.Bounds() == own {
			last = i
		}
	}
	for _, spot := range spots {
		at := home.at(home.u.Lo+home.u.Size()*spot[0]/100, home.v.Lo+home.v.Size()*spot[1]/100)
		here := geom.R(at.X, at.Y, at.X, at.Y)
		hidden := func(sh model.Shape) bool { return sh.Closed && sh.Lines.Bounds().Contains(here) }
		if !slices.ContainsFunc(s.view.Shapes[last+1:], hidden) {
			return at
		}
	}
	return home.centre()
}
