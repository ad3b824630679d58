package solve

import (
	"fmt"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/filename"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// steelwork is the supports of a knee wall: what all share, and where they lie.
type steelwork struct {
	block                      *lang.Block // supports
	stock, router              *lang.Block
	width, thick, reach, tail  length.Length
	corner                     length.Length // of the steel, at its tail
	fit, low                   length.Length
	through                    bool // the recess crosses the whole plate
	relieved                   bool // the corners of the recess are square, and bored
	recessWidth, recessCorner  length.Length
	plateWidth, plateThickness length.Length
	centres                    []length.Length
	bores                      []model.Bore // alike in all
}

// about is the recess of a support along the run.
func (g *steelwork) about(centre length.Length) geom.Span {
	half := g.recessWidth / 2
	return geom.Span{Lo: centre - half, Hi: centre + half}
}

// steelOf shapes and places the supports of a knee wall; nil where there are
// none, or none can be.
func (s *solver) steelOf(k *knee) *steelwork {
	for _, inner := range k.block.Inner("supports") {
		router := s.Ref(k.block, "router")
		if router == nil {
			s.Findings.Errorf("attribute-missing", k.block.Head, "router = router.NAME", "%s has supports, but does not say which router cuts their recesses.", finding.Capital(k.block.Describe()))
			return nil
		}
		g := s.shapeSteel(k, inner, router)
		if s.soundSteel(&g) && s.placeSteel(k, &g) && s.holes(k, &g) {
			return &g
		}
	}
	return nil
}

func (s *solver) shapeSteel(k *knee, inner, router *lang.Block) steelwork {
	stock := s.Ref(inner, "plate")
	g := steelwork{
		block: inner, stock: stock, router: router,
		width: s.Length(stock, "width"), thick: s.Length(stock, "thickness"),
		reach: s.Length(inner, "reach"), tail: s.Length(inner, "tail"),
		fit: s.Length(router, "fit"), low: s.Length(router, "low"),
		plateWidth: k.wall.Framing.V.Size(), plateThickness: k.thick,
	}
	if g.tail == 0 {
		g.tail = g.plateWidth
	}
	g.through = g.tail >= g.plateWidth
	g.relieved = s.Text(router, "relief") != "none"
	radius := s.Length(router, "bit") / 2
	if !g.through {
		g.recessCorner = radius
		g.corner = max(radius-g.fit, 0)
		if g.relieved {
			g.corner = 0
		}
		if inner.Attr("corner") != nil {
			g.corner = s.Length(inner, "corner")
			g.recessCorner = max(radius, g.corner+g.fit)
		}
		// Corners as round as the bit leaves them need no relief.
		if g.relieved = g.relieved && g.corner+g.fit < radius; g.relieved {
			g.recessCorner = 0
		}
	}
	g.recessWidth = g.width + 2*g.fit
	return g
}

func (s *solver) soundSteel(g *steelwork) bool {
	inner, router := g.block, g.router
	bit := s.Length(router, "bit")
	cuts := bit + 2*s.Length(router, "finish")
	depth := g.thick + g.low
	switch {
	case depth >= g.plateThickness:
		s.Findings.Errorf("recess-too-deep", inner.Attr("plate").Expr.At, "a thinner flat bar, or thicker lumber",
			"The recess would be %s deep in a plate of %s: %s too deep to leave any wood.", s.Show(depth), s.Show(g.plateThickness), s.Show(depth-g.plateThickness))
	case g.tail > g.plateWidth:
		s.Findings.Errorf("tail-too-long", inner.Attr("tail").Expr.At, "leave it out: the steel then lies on the whole width",
			"The steel would lie %s on a plate that is %s wide: %s too long.", s.Show(g.tail), s.Show(g.plateWidth), s.Show(g.tail-g.plateWidth))
	case cuts > g.recessWidth:
		s.Findings.Errorf("bit-too-wide", inner.Attr("plate").Expr.At, fmt.Sprintf("a bit of at most %s", s.Show(g.recessWidth-(cuts-bit))),
			"The recess is %s wide, but the bit, with what it leaves for the last pass on both sides, takes %s: %s too wide.",
			s.Show(g.recessWidth), s.Show(cuts), s.Show(cuts-g.recessWidth)).
			Also(router.Attr("bit").Expr.At, "the bit")
	case 2*g.recessCorner > g.recessWidth:
		s.Findings.Errorf("corner-too-round", inner.Attr("corner").Expr.At, "a radius of at most half the width, "+s.Show(g.width/2),
			"The steel is %s wide; its corners cannot be rounded to %s.", s.Show(g.width), s.Show(g.corner))
	case g.recessCorner > g.tail+g.fit:
		s.Findings.Errorf("tail-too-short", inner.Attr("tail").Expr.At, "a longer tail, or leave it out: the steel then lies on the whole width",
			"The steel would lie %s on the wood: less than the %s by which the corners of its recess are rounded.", s.Show(g.tail), s.Show(g.recessCorner))
	case !g.through && !g.relieved && g.corner < bit/2-g.fit:
		s.Findings.Errorf("corner-too-tight", inner.Attr("corner").Expr.At, fmt.Sprintf("corner = %q", s.Show(bit/2-g.fit)),
			"The bit rounds the corners of the recess by %s, but those of the steel are rounded by %s: they would meet the wood.", s.Show(bit/2), s.Show(g.corner)).
			Also(router.Attr("bit").Expr.At, "the bit")
	default:
		return true
	}
	return false
}

// letIn cuts the recesses into the pieces of the uppermost plate, and adds the
// steel.
func (s *solver) letIn(k *knee, g *steelwork, top []int) {
	for i, c := range g.centres {
		plate := top[0]
		for _, j := range top {
			if s.m.Parts[j].Placement.Box.U.Lo <= c {
				plate = j
			}
		}
		s.support(k, g, plate, i, c)
	}
	s.checkOverStuds(k, g)
	s.fastenSupports(g.block, len(g.centres))
}

func (s *solver) support(k *knee, g *steelwork, plate, i int, c length.Length) {
	wall, n := &k.wall, strconv.Itoa(i+1)
	f := wall.Framing
	room := f.V.Lo // the steel leaves the wood on the room's side
	top := f.Z.Hi
	steelBox := geom.Box{
		U: geom.About(c, g.width),
		V: geom.Span{Lo: room - g.reach, Hi: room + g.tail},
		Z: geom.Span{Lo: top - g.low - g.thick, Hi: top - g.low},
	}
	steel := s.part(k.block, g.stock, model.Steel, wall.Frame, steelBox,
		piece{id: "support-" + n, code: "X" + n, name: "support plate " + n, out: above, face: "top"})
	steel.Why, steel.Bores = why(g.block), g.bores
	if g.corner > 0 {
		steel.Outline = roundedBottom(steel.Placement.Blank(), g.corner)
	}
	steelID := steel.ID
	part := &s.m.Parts[plate]
	hole := geom.Box{U: steelBox.U.Grow(g.fit), V: geom.Span{Lo: room, Hi: f.V.Hi}, Z: geom.Span{Lo: top - g.low - g.thick, Hi: top}}
	open := []model.Edge{model.Top, model.Bottom}
	if !g.through {
		hole.V.Hi = room + g.tail + g.fit
		if hole.V.Hi >= f.V.Hi {
			hole.V.Hi = f.V.Hi
		} else {
			open = open[:1]
		}
	}
	face, depth := part.Placement.Local(hole)
	recess := model.Recess{
		ID: part.ID + "/support-" + n, Name: "support " + n, Shape: geom.RectContour(face), Depth: depth.Hi,
		Open: open, Routed: true, Fit: g.fit, Why: why(g.block),
	}
	if len(open) == 1 && !g.relieved {
		recess.Radius = g.recessCorner
		recess.Shape = roundedBottom(face, g.recessCorner)
	}
	part.Recesses = append(part.Recesses, recess)
	wall.Supports = append(wall.Supports, model.Support{Centre: c, Steel: steelBox, Part: steelID, Recess: recess.ID})
	s.out.Recesses = append(s.out.Recesses, Recess{
		Part: plate, Recess: len(part.Recesses) - 1, Centre: c - part.Placement.Box.U.Lo, Tool: s.tool(g.router), Why: why(g.block),
		File: filename.With(k.block.Name, "-support-"+n),
		Zero: "Y0 on the edge of the plate that looks to the run",
	})
}

// roundedBottom is a rectangle with its two lower corners rounded.
func roundedBottom(r geom.Rect, q length.Length) geom.Contour {
	return geom.CornersRounded(r, [4]length.Length{q, q, 0, 0})
}
