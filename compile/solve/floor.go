package solve

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/survey"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/schema"
)

// floor levels the build: it finds the datum, the shim under each bearing point, and how
// high what stands in the walls is above the datum.
func (s *solver) floor() {
	block := s.floorBlock()
	if block == nil {
		return
	}
	f := &s.m.Room.Floor
	f.Laid, f.ReadTo, f.Why = s.Length(block, "laid"), s.Marks/2, why(block)
	if block.Attr("read_to") != nil {
		f.ReadTo = s.Length(block, "read_to")
	}
	for _, b := range block.Inner("reading") {
		at := s.Lengths(b, "point")
		f.Readings = append(f.Readings, model.FloorReading{At: geom.Point{X: at[0], Y: at[1]}, Below: at[2], Z: -at[2]})
	}
	if len(f.Readings) > 0 {
		high := s.datum(f)
		for i := range f.Readings {
			f.Readings[i].Z -= high
		}
		f.Line = -high - f.Laid
		s.ground = f.Surface()
		s.shims(s.ground)
	}
	s.raiseFixtures(f)
}

func (s *solver) floorBlock() *lang.Block {
	for _, room := range s.Source.Top("room") {
		for _, b := range room.Inner("floor") {
			return b
		}
	}
	return nil
}

// datum finds the highest bearing point, and returns its height over the level at which
// the readings are 0. Where nothing bears, the highest reading stands for it.
func (s *solver) datum(f *model.Floor) length.Length {
	surface, high := f.Surface(), length.Length(0)
	for _, b := range s.bearings {
		if z, _ := surface.At(b.at); !b.clears && (f.Bears == "" || z > high) {
			high, f.Datum, f.Bears = z, b.at, model.BlockWords(b.of)+", "+b.point
		}
	}
	if f.Bears != "" {
		return high
	}
	high, f.Datum = f.Readings[0].Z, f.Readings[0].At
	for _, r := range f.Readings {
		if r.Z > high {
			high, f.Datum = r.Z, r.At
		}
	}
	return high
}

// shims lists what brings each bearing point up to its height.
func (s *solver) shims(floor survey.Surface) {
	step := s.FieldLength(s.limits(), "shim", "step")
	s.m.Setting.Step = step
	for _, b := range s.bearings {
		z, _ := floor.At(b.at)
		shim := model.Shim{Of: b.of, Under: b.point, At: b.at, Gap: -z, Winds: b.winds, Off: floor.Off(b.at), Why: b.why}
		if !b.winds {
			shim.Thick = length.Round(shim.Gap, step)
		}
		if b.up > 0 || b.winds {
			shim.Height = b.up + shim.Gap
		}
		s.m.Setting.Shims = append(s.m.Setting.Shims, shim)
	}
}

// limits is the block of limits, or an empty one: its values fall to their defaults.
func (s *solver) limits() *lang.Block {
	for _, b := range s.Source.Top("limits") {
		return b
	}
	return &lang.Block{Spec: schema.Kind(schema.Root(), "limits"), Unit: s.Source.Unit}
}

// raiseFixtures turns heights on the walls, which count from the bare floor below each
// thing or down from the level line, into heights above the datum, rounded as a tape reads
// them. A baseboard is as high as its top is at its highest place.
func (s *solver) raiseFixtures(f *model.Floor) {
	for i, b := range s.wallBlocks() {
		w := &s.m.Room.Walls[i]
		down := s.Text(b, "heights_from") == "line"
		raise := func(at model.Why, what string, along length.Length, height *length.Length) {
			z, _ := s.ground.At(w.Frame.At(along, 0))
			if bare := z - f.Laid; down {
				s.checkAboveFloor(at, what, f.Line-*height-bare)
				*height = s.marked(f.Line - *height)
			} else {
				*height += s.marked(bare)
			}
		}
		for n := range w.Outlets {
			o := &w.Outlets[n]
			raise(o.Why, o.Kind+" "+o.Name, o.Along, &o.Height)
		}
		for n := range w.Stubs {
			o := &w.Stubs[n]
			raise(o.Why, "stub "+o.Name, o.Along, &o.Height)
		}
		for n := range w.Vents {
			o := &w.Vents[n]
			raise(o.Why, "vent "+o.Name, o.Along, &o.Height)
		}
		if w.Base.Height > 0 {
			w.Base.Height = max(0, w.Base.Height+s.marked(highest(s.ground, w)-f.Laid))
		}
	}
}

// highest is the height of the floor at its highest place along a wall's baseboard.
func highest(surface survey.Surface, w *model.Wall) length.Length {
	line := surface.Along(w.Frame.At(w.Base.Along.Lo, 0), w.Frame.At(w.Base.Along.Hi, 0))
	high := line[0].Value
	for _, p := range line[1:] {
		high = max(high, p.Value)
	}
	return high
}

// checkAboveFloor refuses what would stand below the floor.
func (s *solver) checkAboveFloor(at model.Why, what string, up length.Length) {
	if up < 0 {
		s.Findings.Errorf("outside-wall", at.At, "", "%s is %s below the floor there: its height counts down from the line that the floor is read from.",
			finding.Capital(what), s.Show(-up))
	}
}

// checkFloor looks at the readings, and at what counts from them.
func (s *solver) checkFloor() {
	block := s.floorBlock()
	read := block != nil && len(block.Inner("reading")) > 0
	for _, b := range s.wallBlocks() {
		if a := b.Attr("heights_from"); a != nil && s.Text(b, "heights_from") == "line" && !read {
			s.Findings.Errorf("line-unknown", a.Expr.At, `room { floor { reading { point = … } } }, or heights_from = "floor"`,
				"The heights on %s count down from the level line, and no reading of the floor tells where that is.", b.Describe())
		}
	}
	if block == nil {
		return
	}
	first := map[geom.Point]*lang.Block{} // lookup only
	for _, b := range block.Inner("reading") {
		at := s.Lengths(b, "point")
		if len(at) < 3 {
			continue
		}
		p := geom.Point{X: at[0], Y: at[1]}
		if one := first[p]; one != nil {
			s.Findings.Errorf("reading-twice", b.Attr("point").Expr.At, "leave one of them out", "The floor is read twice at %s along and %s out.", s.Show(p.X), s.Show(p.Y)).
				Also(one.Head, "the first stands here")
			continue
		}
		first[p] = b
	}
}
