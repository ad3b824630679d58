package solve

import (
	"fmt"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/spacing"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// kneeWalls frames each knee wall and lets its supports into the upper plate.
func (s *solver) kneeWalls() {
	for _, b := range s.src.Top("knee_wall") {
		s.kneeWall(b)
	}
}

// runNamed finds a run that has been placed.
func (s *solver) runNamed(name string) *model.Run {
	for i := range s.m.Runs {
		if s.m.Runs[i].Name == name {
			return &s.m.Runs[i]
		}
	}
	panic("no run " + name)
}

func (s *solver) kneeWall(b *lang.Block) {
	run := s.runNamed(s.ref(b, "behind").Name)
	if !s.checkBehind(b, run) {
		return
	}
	stick := s.ref(b, "lumber")
	t, w, gap := s.length(stick, "thickness"), s.length(stick, "width"), s.length(b, "gap")
	wall := model.KneeWall{
		Name: b.Name, Run: run.Name, Frame: run.Frame, Why: why(b),
		Framing: geom.Box{
			U: geom.Span{Lo: s.solvedLength(b, "left"), Hi: s.solvedLength(b, "right")},
			V: geom.Span{Lo: -gap - w, Hi: -gap},
			Z: geom.Span{Hi: s.solvedLength(b, "top")},
		},
	}
	f := wall.Framing
	apart := s.length(b, "spacing")
	if !s.soundFraming(b, f, t, apart) {
		return
	}
	s.kneeOutlets(&wall, b)
	studs, _ := spacing.OnCentres(spacing.Studs{Stretch: f.U, Spacing: apart, Thickness: t, Mark: s.marks})
	wall.Studs = studs.Centres
	s.lumber(b, stick, run.Frame, geom.Box{U: f.U, V: f.V, Z: geom.Span{Hi: t}},
		piece{id: "plate-lower", code: "P1", name: "lower plate", out: above, face: "top"})
	for i, c := range wall.Studs {
		u := geom.Span{Lo: c - t/2, Hi: c - t/2 + t}
		s.lumber(b, stick, run.Frame, geom.Box{U: u, V: f.V, Z: geom.Span{Lo: t, Hi: f.Z.Hi - t}},
			piece{id: "stud-" + strconv.Itoa(i+1), code: "S" + strconv.Itoa(i+1), name: "stud " + strconv.Itoa(i+1), out: front, face: "work side"})
	}
	s.lumber(b, stick, run.Frame, geom.Box{U: f.U, V: f.V, Z: geom.Span{Lo: f.Z.Hi - t, Hi: f.Z.Hi}},
		piece{id: "plate-upper", code: "P2", name: "upper plate", out: above, face: "top"})
	for _, inner := range b.Inner("supports") {
		s.supports(&wall, b, inner, len(s.m.Parts)-1)
	}
	s.m.KneeWalls = append(s.m.KneeWalls, wall)
	s.fastenKneeWall(b, &wall)
}

func (s *solver) soundFraming(b *lang.Block, f geom.Box, t, apart length.Length) bool {
	switch {
	case apart < 2*t:
		s.findings.Errorf("studs-too-close", b.Head, fmt.Sprintf("spacing = %q or more", s.show(2*t)),
			"The studs of %s are %s thick and would stand %s from centre to centre.", b.Describe(), s.show(t), s.show(apart))
	case f.U.Size()/apart > mostPieces:
		s.tooMany(b.Head, int(f.U.Size()/apart), "studs")
	case f.U.Size() < 2*t:
		s.findings.Errorf("box-too-small", b.Head, "", "%s is %s long, but two studs alone take up %s.", finding.Capital(b.Describe()), s.show(f.U.Size()), s.show(2*t))
	case f.Z.Hi <= 2*t:
		s.findings.Errorf("box-too-small", b.Head, "", "%s is %s high, but its two plates alone take up %s.", finding.Capital(b.Describe()), s.show(f.Z.Hi), s.show(2*t))
	default:
		return true
	}
	return false
}

// supports lets steel plates into the upper plate, flush or a little low, and
// adds the steel.
func (s *solver) supports(wall *model.KneeWall, b, inner *lang.Block, plate int) {
	router := s.ref(b, "router")
	if router == nil {
		s.findings.Errorf("attribute-missing", b.Head, "router = router.NAME", "%s has supports, but does not say which router cuts their recesses.", finding.Capital(b.Describe()))
		return
	}
	steel := s.ref(inner, "plate")
	g := s.supportShape(wall, inner, steel, router)
	if !s.soundSupport(wall, inner, router, &g) {
		return
	}
	count := s.count(inner, "count")
	if count > mostPieces {
		s.tooMany(inner.Attr("count").Expr.At, count, "supports")
		return
	}
	placed, refusal := spacing.Place(spacing.Ask{
		Stretch: wall.Framing.U, Count: count, End: s.length(inner, "end"), HalfEnds: inner.Attr("end") == nil, Mirrored: true, Mark: s.marks,
	})
	if refusal != nil {
		s.findings.Errorf("supports-meet", inner.Attr("count").Expr.At, "fewer supports, or a smaller end", "%s", refusal.Text(s.show))
		return
	}
	centres := placed.Centres
	for i, c := range centres {
		s.support(wall, b, inner, plate, i, c, &g)
	}
	s.checkApart(wall, inner, centres, &g)
	s.fastenSupports(inner, count)
}

// supportShape is what all supports of a knee wall share.
type supportShape struct {
	steel, router              *lang.Block
	width, thick, reach, tail  length.Length
	corner                     length.Length // of the steel, at its tail
	fit, low                   length.Length
	through                    bool // the recess crosses the whole plate
	recessWidth, recessCorner  length.Length
	plateWidth, plateThickness length.Length
}

func (s *solver) supportShape(wall *model.KneeWall, inner, steel, router *lang.Block) supportShape {
	lumber := s.ref(inner.Parent, "lumber")
	g := supportShape{
		steel: steel, router: router,
		width: s.length(steel, "width"), thick: s.length(steel, "thickness"),
		reach: s.length(inner, "reach"), tail: s.length(inner, "tail"),
		fit: s.length(router, "fit"), low: s.length(router, "low"),
		plateWidth: wall.Framing.V.Size(), plateThickness: s.length(lumber, "thickness"),
	}
	if g.tail == 0 {
		g.tail = g.plateWidth
	}
	g.through = g.tail >= g.plateWidth
	radius := s.length(router, "bit") / 2
	if !g.through {
		g.recessCorner = radius
		g.corner = max(radius-g.fit, 0)
		if inner.Attr("corner") != nil {
			g.corner = s.length(inner, "corner")
			g.recessCorner = max(radius, g.corner+g.fit)
		}
	}
	g.recessWidth = g.width + 2*g.fit
	return g
}

func (s *solver) soundSupport(wall *model.KneeWall, inner, router *lang.Block, g *supportShape) bool {
	bit := s.length(router, "bit")
	cuts := bit + 2*s.length(router, "finish")
	depth := g.thick + g.low
	switch {
	case depth >= g.plateThickness:
		s.findings.Errorf("recess-too-deep", inner.Attr("plate").Expr.At, "a thinner flat bar, or thicker lumber",
			"The recess would be %s deep in a plate of %s: %s too deep to leave any wood.", s.show(depth), s.show(g.plateThickness), s.show(depth-g.plateThickness))
	case g.tail > g.plateWidth:
		s.findings.Errorf("tail-too-long", inner.Attr("tail").Expr.At, "leave it out: the steel then lies on the whole width",
			"The steel would lie %s on a plate that is %s wide: %s too long.", s.show(g.tail), s.show(g.plateWidth), s.show(g.tail-g.plateWidth))
	case cuts > g.recessWidth:
		s.findings.Errorf("bit-too-wide", inner.Attr("plate").Expr.At, fmt.Sprintf("a bit of at most %s", s.show(g.recessWidth-(cuts-bit))),
			"The recess is %s wide, but the bit, with what it leaves for the last pass on both sides, takes %s: %s too wide.",
			s.show(g.recessWidth), s.show(cuts), s.show(cuts-g.recessWidth)).
			Also(router.Attr("bit").Expr.At, "the bit")
	case 2*g.recessCorner > g.recessWidth:
		s.findings.Errorf("corner-too-round", inner.Attr("corner").Expr.At, "a radius of at most half the width, "+s.show(g.width/2),
			"The steel is %s wide; its corners cannot be rounded to %s.", s.show(g.width), s.show(g.corner))
	case g.recessCorner > g.tail+g.fit:
		s.findings.Errorf("tail-too-short", inner.Attr("tail").Expr.At, "a longer tail, or leave it out: the steel then lies on the whole width",
			"The steel would lie %s on the wood: less than the %s by which the corners of its recess are rounded.", s.show(g.tail), s.show(g.recessCorner))
	case !g.through && g.corner < bit/2-g.fit:
		s.findings.Errorf("corner-too-tight", inner.Attr("corner").Expr.At, fmt.Sprintf("corner = %q", s.show(bit/2-g.fit)),
			"The bit rounds the corners of the recess by %s, but those of the steel are rounded by %s: they would meet the wood.", s.show(bit/2), s.show(g.corner)).
			Also(router.Attr("bit").Expr.At, "the bit")
	default:
		return true
	}
	return false
}

func (s *solver) support(wall *model.KneeWall, b, inner *lang.Block, plate, i int, c length.Length, g *supportShape) {
	f, n := wall.Framing, strconv.Itoa(i+1)
	room := f.V.Lo // the steel leaves the wood on the room's side
	top := f.Z.Hi
	half := g.width / 2
	steelBox := geom.Box{
		U: geom.Span{Lo: c - half, Hi: c - half + g.width},
		V: geom.Span{Lo: room - g.reach, Hi: room + g.tail},
		Z: geom.Span{Lo: top - g.low - g.thick, Hi: top - g.low},
	}
	steel := s.part(b, g.steel, model.Steel, wall.Frame, steelBox,
		piece{id: "support-" + n, code: "X" + n, name: "support plate " + n, out: above, face: "top"})
	steel.Why = why(inner)
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
		Open: open, Routed: true, Fit: g.fit, Why: why(inner),
	}
	if len(open) == 1 {
		recess.Radius = g.recessCorner
		recess.Shape = roundedBottom(face, g.recessCorner)
	}
	part.Recesses = append(part.Recesses, recess)
	wall.Supports = append(wall.Supports, model.Support{Centre: c, Steel: steelBox, Part: steelID, Recess: recess.ID})
	s.out.Recesses = append(s.out.Recesses, Recess{
		Part: plate, Recess: len(part.Recesses) - 1, Centre: c - f.U.Lo, Tool: s.tool(g.router), Why: why(inner),
		File: b.Name + "-support-" + n,
		Zero: "X0 on the mark, Y0 on the edge of the plate that looks to the run",
	})
}

// roundedBottom is a rectangle with its two lower corners rounded.
func roundedBottom(r geom.Rect, q length.Length) geom.Contour {
	at := func(x, y length.Length, bulge float64) geom.Vertex {
		return geom.Vertex{Point: geom.Point{X: x, Y: y}, Bulge: bulge}
	}
	return geom.Contour{
		at(r.X.Lo+q, r.Y.Lo, 0), at(r.X.Hi-q, r.Y.Lo, geom.QuarterBulge), at(r.X.Hi, r.Y.Lo+q, 0),
		at(r.X.Hi, r.Y.Hi, 0), at(r.X.Lo, r.Y.Hi, 0), at(r.X.Lo, r.Y.Lo+q, geom.QuarterBulge),
	}
}

// checkApart looks at what the recesses meet: one another, the ends of the
// plate, and the studs below, whose screws come up where the steel lies.
func (s *solver) checkApart(wall *model.KneeWall, inner *lang.Block, centres []length.Length, g *supportShape) {
	f, half := wall.Framing, g.recessWidth/2
	at := inner.Attr("count").Expr.At
	if over := f.U.Lo - (centres[0] - half); over > 0 {
		s.findings.Errorf("support-past-end", at, fmt.Sprintf("fewer supports, or end = %q or more", s.show(roundUp(half, s.marks))), "The first recess would run %s past the end of the plate.", s.show(over))
	}
	for i, c := range centres {
		if i > 0 && c-centres[i-1] < g.recessWidth {
			s.findings.Errorf("supports-meet", at, "fewer supports", "The recesses of supports %d and %d would run into one another by %s.",
				i, i+1, s.show(g.recessWidth-(c-centres[i-1])))
			return
		}
		for j, stud := range wall.Studs {
			clear := max(c-stud, stud-c) - half - g.plateThickness/2
			if clear < 0 {
				s.findings.Warnf("support-over-stud", at, "move the supports with end = …, or change the spacing of the studs",
					"Support %d lies %s over stud %d, whose screws come up through the plate there: drive them deeper than the recess, or beside it.",
					i+1, s.show(-clear), j+1)
			}
		}
	}
}

// roundUp returns the next multiple of a step.
func roundUp(l, step length.Length) length.Length { return (l + step - 1) / step * step }

func (s *solver) tool(b *lang.Block) model.Tool {
	or := func(l, fallback length.Length) length.Length {
		if l == 0 {
			return fallback
		}
		return l
	}
	bit, feed := s.length(b, "bit"), s.length(b, "feed")
	return model.Tool{
		Router: b.Name, Number: s.count(b, "tool"), Diameter: bit, Flutes: s.count(b, "flutes"), RPM: s.count(b, "rpm"),
		Feed: feed, Plunge: or(s.length(b, "plunge"), feed/3),
		Stepdown: or(s.length(b, "stepdown"), bit/2), Stepover: or(s.length(b, "stepover"), bit*2/5),
		RampDegrees: s.number(b, "ramp"), Finish: s.length(b, "finish"), Clearance: s.length(b, "clearance"),
		Dialect: model.Dialect{Inch: s.text(b, "unit") == "in", Decimals: s.count(b, "decimals"), Percent: s.flag(b, "percent")},
	}
}
