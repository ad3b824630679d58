package solve

import (
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/length"
	"barwright/lang/source"
)

// The sides from which parts are drawn.
var (
	front     = geom.Dir{Axis: geom.V}
	above     = geom.Dir{Axis: geom.Z}
	below     = geom.Dir{Axis: geom.Z, Neg: true}
	rearward  = geom.Dir{Axis: geom.V, Neg: true}
	rightward = geom.Dir{Axis: geom.U}
	leftward  = geom.Dir{Axis: geom.U, Neg: true}
)

// piece is what tells one part of a thing from the others.
type piece struct {
	id, code, name string // "side-left", "L", "left side"
	out            geom.Dir
	face           string
	grain          model.Grain
	good           model.Good
	cuts           []geom.Box // taken out of the blank, in the frame
	filled         []geom.Box // likewise, for something square that stands there
	banding        *lang.Block
	banded         []geom.Dir // where the banded edges look
}

// mostPieces bounds how many like pieces one block may ask for: far beyond any
// bar, and small enough that a slip of the pen costs no time.
const mostPieces = 1000

func (s *solver) tooMany(at source.Range, n int, what string) {
	s.Findings.Errorf("too-many", at, "", "This asks for %d %s; %d is the most.", n, what, mostPieces)
}

// panel adds a part cut from a sheet.
func (s *solver) panel(owner, sheet *lang.Block, frame geom.Frame, box geom.Box, p piece) *model.Part {
	if s.Text(sheet, "grain") == "none" {
		p.grain = model.GrainNone
	}
	return s.part(owner, sheet, model.Panel, frame, box, p)
}

// partOf finds a part of a block that has been made, by its index.
func (s *solver) partOf(b *lang.Block, id string) int {
	id = b.Key() + "/" + id
	i, made := s.catalogued().byID[id]
	if !made {
		panic("no part " + id)
	}
	return i
}

// on is where a point of a part's frame lies on its face.
func on(part *model.Part, u, v, z length.Length) geom.Point {
	face, _ := part.Placement.Local(geom.Box{U: geom.Span{Lo: u, Hi: u}, V: geom.Span{Lo: v, Hi: v}, Z: geom.Span{Lo: z, Hi: z}})
	return geom.Point{X: face.X.Lo, Y: face.Y.Lo}
}

// lumber adds a part cut from a stick; its grain runs along its longer side.
func (s *solver) lumber(owner, stick *lang.Block, frame geom.Frame, box geom.Box, p piece) *model.Part {
	p.grain = model.GrainX
	if blank := geom.Place(frame, box, p.out).Blank(); blank.Y.Size() > blank.X.Size() {
		p.grain = model.GrainY
	}
	return s.part(owner, stick, model.Lumber, frame, box, p)
}

// part adds a part that fills a box, its banding included: what is cut is
// smaller by that.
func (s *solver) part(owner, stock *lang.Block, kind model.PartKind, frame geom.Frame, box geom.Box, p piece) *model.Part {
	bands := s.band(frame, &box, p)
	at := geom.Place(frame, box, p.out)
	cuts := make([]geom.Rect, 0, len(p.cuts)+len(p.filled))
	for _, c := range slices.Concat(p.cuts, p.filled) {
		r, _ := at.Local(c)
		cuts = append(cuts, r)
	}
	s.cuts = append(s.cuts, cuts)
	s.m.Parts = append(s.m.Parts, model.Part{
		ID:    owner.Key() + "/" + p.id,
		Label: strings.ToUpper(owner.Name + "-" + p.code),
		Name:  p.name, Owner: lang.KindWords(owner.Spec.Kind) + " " + owner.Name, Kind: kind,
		Stock: stock.Key(), Material: s.asked(stock, s.Show(at.Thickness())), Thickness: at.Thickness(), Face: p.face, Grain: p.grain,
		Outline: geom.Cut(at.Blank(), cuts)[0], Filled: filled(at, p.filled), Placement: at, Why: why(owner),
		Bands: bands, Good: p.good,
	})
	return &s.m.Parts[len(s.m.Parts)-1]
}

// filled are the corners with wood beyond them of what is taken out for something square.
func filled(at geom.Placement, boxes []geom.Box) (corners []geom.Point) {
	for _, b := range boxes {
		r, _ := at.Local(b)
		for _, v := range innerCorners(r, at.Blank(), nil) {
			corners = append(corners, v.Point)
		}
	}
	return corners
}

// band takes the banding of a piece off its box.
func (s *solver) band(frame geom.Frame, box *geom.Box, p piece) []model.Band {
	if p.banding == nil {
		return nil
	}
	t := s.Length(p.banding, "thickness")
	whole := geom.Place(frame, *box, p.out)
	bands := make([]model.Band, len(p.banded))
	for i, d := range p.banded {
		bands[i] = model.Band{Edge: edgeAt(&whole, d), Stock: p.banding.Key(), Thickness: t}
		span := box.Along(d.Axis)
		if d.Neg {
			span.Lo += t
		} else {
			span.Hi -= t
		}
		*box = box.With(d.Axis, span)
	}
	return bands
}

// edgeAt is the edge of a part's face that looks a way of its frame.
func edgeAt(at *geom.Placement, d geom.Dir) model.Edge {
	switch d {
	case at.X:
		return model.RightEdge
	case at.X.Opposite():
		return model.LeftEdge
	case at.Y:
		return model.Top
	}
	return model.Bottom
}
