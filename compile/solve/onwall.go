package solve

import (
	"cmp"
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/values"
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
		at := s.Lengths(o, "at")
		w.Stubs = append(w.Stubs, model.Stub{
			Name: o.Name, Along: at[0], Height: at[1], Diameter: s.Length(o, "diameter"),
			StandsOut: s.Length(o, "stands_out"), Clearance: s.Length(o, "clearance"), Cut: s.cutting(o), Why: why(o),
		})
	}
	for _, o := range b.Inner("vent") {
		at := s.Lengths(o, "at")
		w.Vents = append(w.Vents, model.Vent{
			Name: o.Name, Along: at[0], Height: at[1], Width: s.Length(o, "width"), Tall: s.Length(o, "height"),
			StandsOut: s.Length(o, "stands_out"), Clearance: s.Length(o, "clearance"), Cut: s.cutting(o), Why: why(o),
		})
	}
	if a := b.Attr("baseboard"); a != nil {
		w.Base = model.Baseboard{
			Height: s.FieldLength(b, "baseboard", "height"), Thickness: s.FieldLength(b, "baseboard", "thickness"),
			Along: geom.Span{Lo: s.FieldLength(b, "baseboard", "from"), Hi: w.Length},
			Why:   model.Why{Block: b.Path(), At: a.NameAt},
		}
		if to := s.Field(b, "baseboard", "to"); to.Kind == expr.Length {
			w.Base.Along.Hi = values.LengthOf(to)
		}
	}
}

func (s *solver) outlet(b *lang.Block) model.Outlet {
	at := s.Lengths(b, "at")
	return model.Outlet{
		Kind: b.Spec.Kind, Name: b.Name, Along: at[0], Height: at[1],
		Box:       model.Size{Width: s.FieldLength(b, "box", "width"), Height: s.FieldLength(b, "box", "height"), Depth: s.FieldLength(b, "box", "depth")},
		Cover:     model.Size{Width: s.FieldLength(b, "cover", "width"), Height: s.FieldLength(b, "cover", "height")},
		Clearance: s.Length(b, "clearance"), StandsOut: s.Length(b, "stands_out"), Cut: s.cutting(b), Why: why(b),
	}
}

// cutting is how panels let a thing through. A stub has no corners.
func (s *solver) cutting(b *lang.Block) model.Cutting {
	c := model.Cutting{Way: s.Text(b, "cut"), OpenTo: s.Text(b, "open_to")}
	if b.Spec.Attr("corner") != nil {
		c.Corner = s.Length(b, "corner")
	}
	return c
}

// wallThings are the kinds of blocks that stand in a wall.
var wallThings = []string{"outlet", "switch", "stub", "vent"}

// checkWalls looks at what is said to be in or on each wall, as far as its
// values are sound.
func (s *solver) checkWalls() {
	for _, wall := range s.wallBlocks() {
		long := s.Value(wall, "length")
		if long.Kind != expr.Length {
			continue
		}
		within := geom.Span{Lo: 0, Hi: values.LengthOf(long)}
		for _, kind := range wallThings {
			for _, b := range wall.Inner(kind) {
				s.checkOnWall(b, wall, within)
				s.checkCutting(b)
			}
		}
		s.checkBaseboard(wall, within)
		s.checkReadings(wall, within)
		studs := s.Value(wall, "studs")
		if studs.Kind == expr.Object {
			studs.Items = studs.Items[:1] // first; the others are kept within the wall
		}
		told := 0 // beyond which end: the next ones there would only say the same
		for _, stud := range studs.Items {
			if stud.Kind != expr.Length {
				continue
			}
			at := values.LengthOf(stud)
			if end := cmp.Compare(at, within.Lo) + cmp.Compare(at, within.Hi); end/2 != told && end/2 != 0 {
				told = end / 2
				s.Findings.Errorf("outside-wall", stud.At, "", "A stud at %s is outside the wall, which is %s long.", s.Show(at), s.Show(within.Hi)).
					Also(wall.Attr("length").Expr.At, "the wall's length")
			}
		}
	}
}

func (s *solver) checkOnWall(b, wall *lang.Block, within geom.Span) {
	at := s.Value(b, "at")
	var wide expr.Value
	switch b.Spec.Kind {
	case "stub":
		wide = s.Value(b, "diameter")
	case "vent":
		wide = s.Value(b, "width")
	default:
		wide = s.Field(b, "box", "width")
	}
	if at.Kind != expr.List || wide.Kind != expr.Length {
		return
	}
	along, height := values.LengthOf(at.Items[0]), values.LengthOf(at.Items[1])
	half := values.LengthOf(wide) / 2
	covers := geom.About(along, 2*half)
	mend := ""
	if half < within.Hi-half {
		mend = fmt.Sprintf("a place from %s to %s along the wall", s.Show(half), s.Show(within.Hi-half))
	}
	switch {
	case along < within.Lo || along > within.Hi:
		miss := max(within.Lo-along, along-within.Hi)
		s.Findings.Errorf("outside-wall", at.Items[0].At, mend, "%s is at %s along its wall, which is %s long: %s outside.",
			finding.Capital(b.Describe()), s.Show(along), s.Show(within.Hi), s.Show(miss)).
			Also(wall.Attr("length").Expr.At, "the wall's length")
	case !within.Contains(covers):
		miss := max(within.Lo-covers.Lo, covers.Hi-within.Hi)
		s.Findings.Errorf("outside-wall", at.Items[0].At, mend, "%s is %s wide and its centre is at %s: it would run %s past the end of its wall.",
			finding.Capital(b.Describe()), s.Show(2*half), s.Show(along), s.Show(miss)).
			Also(wall.Attr("length").Expr.At, "the wall's length")
	case height < 0:
		s.Findings.Errorf("outside-wall", at.Items[1].At, "heights count up from the floor", "%s is %s below the floor.", finding.Capital(b.Describe()), s.Show(-height))
	}
}

// checkCutting refuses an edge to open to where nothing is to be open.
func (s *solver) checkCutting(b *lang.Block) {
	if a := b.Attr("open_to"); a != nil && s.Text(b, "cut") == "hole" {
		s.Findings.Errorf("attribute-unused", a.NameAt, `cut = "slot" or cut = "notch", or leave it out`,
			"open_to is for a slot or a notch: a hole has wood all round.")
	}
}

// checkBaseboard looks at where a baseboard begins and ends.
func (s *solver) checkBaseboard(wall *lang.Block, within geom.Span) {
	a := wall.Attr("baseboard")
	if a == nil {
		return
	}
	from, to := s.Field(wall, "baseboard", "from"), s.Field(wall, "baseboard", "to")
	if from.Kind != expr.Length {
		return
	}
	along := geom.Span{Lo: values.LengthOf(from), Hi: within.Hi}
	if to.Kind == expr.Length {
		along.Hi = values.LengthOf(to)
	}
	switch {
	case along.Size() <= 0:
		s.Findings.Errorf("baseboard-without-length", a.Expr.At, "from less than to; both count from the wall's left end",
			"The baseboard of %s begins at %s and ends at %s.", wall.Describe(), s.Show(along.Lo), s.Show(along.Hi))
	case !within.Contains(along):
		miss := max(within.Lo-along.Lo, along.Hi-within.Hi)
		s.Findings.Errorf("outside-wall", a.Expr.At, "", "The baseboard runs from %s to %s along its wall, which is %s long: %s outside.",
			s.Show(along.Lo), s.Show(along.Hi), s.Show(within.Hi), s.Show(miss)).
			Also(wall.Attr("length").Expr.At, "the wall's length")
	}
}
