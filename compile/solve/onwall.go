package solve

import (
	"cmp"
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/expr"
	"barwright/lang/finding"
)

// onWall reads what stands in and on a wall.
func (s *solver) onWall(b *lang.Block, w *model.Wall) {
	for _, kind := range []string{"outlet", "switch"} {
		for _, o := range b.Inner(kind) {
			w.Outlets = append(w.Outlets, s.outlet(o))
		}
	}
	for _, o := range b.Inner("stub") {
		at := s.lengths(o, "at")
		w.Stubs = append(w.Stubs, model.Stub{
			Name: o.Name, Along: at[0], Height: at[1], Diameter: s.length(o, "diameter"),
			StandsOut: s.length(o, "stands_out"), Clearance: s.length(o, "clearance"), Cut: s.cutting(o), Why: why(o),
		})
	}
	for _, o := range b.Inner("vent") {
		at := s.lengths(o, "at")
		w.Vents = append(w.Vents, model.Vent{
			Name: o.Name, Along: at[0], Height: at[1], Width: s.length(o, "width"), Tall: s.length(o, "height"),
			StandsOut: s.length(o, "stands_out"), Clearance: s.length(o, "clearance"), Cut: s.cutting(o), Why: why(o),
		})
	}
	if a := b.Attr("baseboard"); a != nil {
		w.Base = model.Baseboard{
			Height: s.fieldLength(b, "baseboard", "height"), Thickness: s.fieldLength(b, "baseboard", "thickness"),
			Along: geom.Span{Lo: s.fieldLength(b, "baseboard", "from"), Hi: w.Length},
			Why:   model.Why{Block: b.Path(), At: a.NameAt},
		}
		if to := s.field(b, "baseboard", "to"); to.Kind == expr.Length {
			w.Base.Along.Hi = lengthOf(to)
		}
	}
}

func (s *solver) outlet(b *lang.Block) model.Outlet {
	at := s.lengths(b, "at")
	return model.Outlet{
		Kind: b.Spec.Kind, Name: b.Name, Along: at[0], Height: at[1],
		Box:       model.Size{Width: s.fieldLength(b, "box", "width"), Height: s.fieldLength(b, "box", "height"), Depth: s.fieldLength(b, "box", "depth")},
		Cover:     model.Size{Width: s.fieldLength(b, "cover", "width"), Height: s.fieldLength(b, "cover", "height")},
		Clearance: s.length(b, "clearance"), StandsOut: s.length(b, "stands_out"), Cut: s.cutting(b), Why: why(b),
	}
}

// cutting is how panels let a thing through. A stub has no corners.
func (s *solver) cutting(b *lang.Block) model.Cutting {
	c := model.Cutting{Way: s.text(b, "cut"), OpenTo: s.text(b, "open_to")}
	if b.Spec.Attr("corner") != nil {
		c.Corner = s.length(b, "corner")
	}
	return c
}

// wallThings are the kinds of blocks that stand in a wall.
var wallThings = []string{"outlet", "switch", "stub", "vent"}

// checkWalls looks at what is said to be in or on each wall, as far as its
// values are sound.
func (s *solver) checkWalls() {
	for _, wall := range s.wallBlocks() {
		long := s.value(wall, "length")
		if long.Kind != expr.Length {
			continue
		}
		within := geom.Span{Lo: 0, Hi: lengthOf(long)}
		for _, kind := range wallThings {
			for _, b := range wall.Inner(kind) {
				s.checkOnWall(b, wall, within)
				s.checkCutting(b)
			}
		}
		s.checkBaseboard(wall, within)
		studs := s.value(wall, "studs")
		if studs.Kind == expr.Object {
			studs.Items = studs.Items[:1] // first; the others are kept within the wall
		}
		told := 0 // beyond which end: the next ones there would only say the same
		for _, stud := range studs.Items {
			if stud.Kind != expr.Length {
				continue
			}
			at := lengthOf(stud)
			if end := cmp.Compare(at, within.Lo) + cmp.Compare(at, within.Hi); end/2 != told && end/2 != 0 {
				told = end / 2
				s.findings.Errorf("outside-wall", stud.At, "", "A stud at %s is outside the wall, which is %s long.", s.show(at), s.show(within.Hi)).
					Also(wall.Attr("length").Expr.At, "the wall's length")
			}
		}
	}
}

func (s *solver) checkOnWall(b, wall *lang.Block, within geom.Span) {
	at := s.value(b, "at")
	var wide expr.Value
	switch b.Spec.Kind {
	case "stub":
		wide = s.value(b, "diameter")
	case "vent":
		wide = s.value(b, "width")
	default:
		wide = s.field(b, "box", "width")
	}
	if at.Kind != expr.List || wide.Kind != expr.Length {
		return
	}
	along, height := lengthOf(at.Items[0]), lengthOf(at.Items[1])
	half := lengthOf(wide) / 2
	covers := geom.Span{Lo: along - half, Hi: along + half}
	mend := ""
	if half < within.Hi-half {
		mend = fmt.Sprintf("a place from %s to %s along the wall", s.show(half), s.show(within.Hi-half))
	}
	switch {
	case along < within.Lo || along > within.Hi:
		miss := max(within.Lo-along, along-within.Hi)
		s.findings.Errorf("outside-wall", at.Items[0].At, mend, "%s is at %s along its wall, which is %s long: %s outside.",
			finding.Capital(b.Describe()), s.show(along), s.show(within.Hi), s.show(miss)).
			Also(wall.Attr("length").Expr.At, "the wall's length")
	case !within.Contains(covers):
		miss := max(within.Lo-covers.Lo, covers.Hi-within.Hi)
		s.findings.Errorf("outside-wall", at.Items[0].At, mend, "%s is %s wide and its centre is at %s: it would run %s past the end of its wall.",
			finding.Capital(b.Describe()), s.show(2*half), s.show(along), s.show(miss)).
			Also(wall.Attr("length").Expr.At, "the wall's length")
	case height < 0:
		s.findings.Errorf("outside-wall", at.Items[1].At, "heights count up from the floor", "%s is %s below the floor.", finding.Capital(b.Describe()), s.show(-height))
	}
}

// checkCutting refuses an edge to open to where nothing is to be open.
func (s *solver) checkCutting(b *lang.Block) {
	if a := b.Attr("open_to"); a != nil && s.text(b, "cut") == "hole" {
		s.findings.Errorf("attribute-unused", a.NameAt, `cut = "slot" or cut = "notch", or leave it out`,
			"open_to is for a slot or a notch: a hole has wood all round.")
	}
}

// checkBaseboard looks at where a baseboard begins and ends.
func (s *solver) checkBaseboard(wall *lang.Block, within geom.Span) {
	a := wall.Attr("baseboard")
	if a == nil {
		return
	}
	from, to := s.field(wall, "baseboard", "from"), s.field(wall, "baseboard", "to")
	if from.Kind != expr.Length {
		return
	}
	along := geom.Span{Lo: lengthOf(from), Hi: within.Hi}
	if to.Kind == expr.Length {
		along.Hi = lengthOf(to)
	}
	switch {
	case along.Size() <= 0:
		s.findings.Errorf("baseboard-without-length", a.Expr.At, "from less than to; both count from the wall's left end",
			"The baseboard of %s begins at %s and ends at %s.", wall.Describe(), s.show(along.Lo), s.show(along.Hi))
	case !within.Contains(along):
		miss := max(within.Lo-along.Lo, along.Hi-within.Hi)
		s.findings.Errorf("outside-wall", a.Expr.At, "", "The baseboard runs from %s to %s along its wall, which is %s long: %s outside.",
			s.show(along.Lo), s.show(along.Hi), s.show(within.Hi), s.show(miss)).
			Also(wall.Attr("length").Expr.At, "the wall's length")
	}
}
