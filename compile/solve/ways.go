package solve

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/ways"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// ways lays cords, then cables, each past what the ones before it have bored.
func (s *solver) ways() {
	cords, cables := s.Source.Top("cord"), s.Source.Top("cable")
	if len(cords)+len(cables) == 0 || s.Findings.HasErrors() {
		return
	}
	w := &laying{s}
	for _, c := range cords {
		w.cord(c)
	}
	for _, c := range cables {
		w.cable(c)
	}
}

type laying struct{ *solver }

// limit is a limit as the text states it, or else as the schema does.
func (s *solver) limit(name string) length.Length {
	l, known := s.known[name]
	if !known {
		l = s.statedLimit(name)
		s.known[name] = l
	}
	return l
}

func (s *solver) statedLimit(name string) length.Length {
	for _, b := range s.Source.Top("limits") {
		return s.Length(b, name)
	}
	return s.SchemaLength("limits", name)
}

// freeInBox is how much of a cable hangs free in each box, for who connects it (NEC
// 300.14: 6 in).
func (s *solver) freeInBox() length.Length {
	return s.practice(6*length.Inch, 150*length.Millimetre)
}

// cable lays a cable at the first run where both its boxes are.
func (w *laying) cable(c *lang.Block) {
	from, to := w.Ref(c, "from"), w.Ref(c, "to")
	if from == to {
		w.Findings.Warnf("cable-finds-no-way", c.Head, "another box for one of its ends", "%s ends where it begins, at %s.", finding.Capital(c.Describe()), from.Describe())
		return
	}
	hole := w.Length(c, "diameter")
	for i := range w.m.Runs {
		run := &w.m.Runs[i]
		keep := w.keepOff(hole)
		start, ok := w.ending(run, from, &keep)
		end, also := w.ending(run, to, &keep)
		if !ok || !also {
			continue
		}
		through, ok := w.through(run, c, &keep)
		if !ok {
			return
		}
		scene := w.scene(run, &keep, c)
		scene.Lanes = append(scene.Lanes, start.lanes...)
		scene.Lanes = append(scene.Lanes, end.lanes...)
		way, found := scene.Find(ways.Ask{From: start.spots, To: end.spots, Through: through})
		if !found {
			w.noWay(c, scene, &way)
			return
		}
		w.lay(c, run, scene, &way, start, end, hole)
		return
	}
	w.Findings.Warnf("cable-finds-no-way", c.Head, "a cable in the walls of the room, or boxes at one run",
		"%s is to lead from %s to %s, which are not both at one run, behind or beside its boxes and no higher than they are: a way is proposed only through these and the knee wall behind them.",
		finding.Capital(c.Describe()), from.Describe(), to.Describe()).
		Also(from.Head, "where it begins").Also(to.Head, "where it ends")
}

// through are the boxes and knee walls that a cable is to come through, as far as it can
// turn in them; ok is false where one is of another run.
func (w *laying) through(run *model.Run, c *lang.Block, keep *keepOff) (out []geom.Box, ok bool) {
	for _, item := range w.Value(c, "through").Items {
		switch b := w.Block(item.Text); b.Spec.Kind {
		case "cabinet":
			if i := run.Cabinet(b.Name); i >= 0 {
				out = append(out, keep.within(run.Boxes[i].Inside))
				continue
			}
		case "knee_wall":
			if k := w.kneeBehind(run); k != nil && k.Name == b.Name {
				out = append(out, keep.within(k.Framing))
				continue
			}
		}
		w.Findings.Warnf("cable-finds-no-way", item.At, "leave it out",
			"%s is to come through %s, which is not of run %q, where its ends are.", finding.Capital(c.Describe()), w.Block(item.Text).Describe(), run.Name)
		return nil, false
	}
	return out, true
}

// kneeBehind is the first knee wall behind a run; nil where there is none.
func (s *solver) kneeBehind(run *model.Run) *model.KneeWall {
	for _, k := range s.m.KneeWallsBehind(run) {
		return k
	}
	return nil
}

// lay bores the holes of a way and puts it into the model.
func (w *laying) lay(c *lang.Block, run *model.Run, scene *wayScene, way *ways.Way, start, end ending, hole length.Length) {
	out := model.Way{
		Kind: "cable", Name: c.Name, From: w.Ref(c, "from").Key(), To: w.Ref(c, "to").Key(), Diameter: hole, Length: way.Length, Why: why(c),
	}
	spots := slices.Clone(way.Spots)
	if first := start.inBox(spots[0]); first != spots[0] {
		out.Length += first.To(spots[0])
		spots = slices.Insert(spots, 0, first)
	}
	if last := end.inBox(spots[len(spots)-1]); last != spots[len(spots)-1] {
		out.Length += last.To(spots[len(spots)-1])
		spots = append(spots, last)
	}
	out.Past = w.past(run, spots)
	for _, p := range spots {
		out.Points = append(out.Points, inRoom(run.Frame, p))
	}
	for i, h := range way.Holes {
		if slices.Contains(way.Holes[:i], h) { // it comes back through it
			continue
		}
		part := &w.m.Parts[scene.parts[h.Board]]
		made := model.WayHole{Part: part.ID, At: inRoom(run.Frame, h.At), Wide: hole, High: hole}
		w.bore(c, part, h.At, &made)
		out.Holes = append(out.Holes, made)
	}
	out.Need = out.Length + w.Length(c, "slack") + 2*w.freeInBox()
	out.Supports = w.staples(out.Length)
	w.m.Ways = append(w.m.Ways, out)
}

// bore puts the hole of a cable into a part: into a board as a bore; across the face of a
// stud, whose sides it is bored through, as a line.
func (w *laying) bore(c *lang.Block, part *model.Part, at ways.Spot, made *model.WayHole) {
	name := "cable " + c.Name
	if part.Kind != model.Lumber {
		part.Bores = append(part.Bores, model.Bore{Name: name, At: on(part, at[0], at[1], at[2]), Diameter: made.Wide, Why: why(c)})
		return
	}
	box := part.Placement.Box
	part.Marks = append(part.Marks, model.Mark{Name: name, From: on(part, box.U.Lo, at[1], at[2]), To: on(part, box.U.Hi, at[1], at[2]), Why: why(c)})
	sides := [2]length.Length{box.V.Hi - at[1] - made.Wide/2, at[1] - box.V.Lo - made.Wide/2}
	made.Edge = min(sides[0], sides[1])
	for _, wood := range sides {
		if wood < w.limit("nail_plate") {
			made.Plates++
		}
	}
}

// staples hold a cable no further than a foot from either of its boxes, and no further
// than 4 1/2 ft from one another (NEC 334.30; 300 mm and 1.4 m).
func (s *solver) staples(long length.Length) int {
	near, apart := s.practice(length.Foot, 300*length.Millimetre), s.practice(54*length.Inch, 1400*length.Millimetre)
	if long <= 2*near {
		return 1
	}
	return 2 + int((long-2*near-1)/apart)
}

func inRoom(f geom.Frame, p ways.Spot) model.Spot {
	at := f.At(p[0], p[1])
	return model.Spot{X: at.X, Y: at.Y, Z: p[2]}
}

// past lists the boxes and the knee wall that a way comes through, in their order along it.
func (w *laying) past(run *model.Run, spots []ways.Spot) (keys []string) {
	type met struct {
		key string
		far length.Length
	}
	for i, p := range spots[:len(spots)-1] {
		q := spots[i+1]
		line := geom.Box{U: geom.Between(p[0], q[0]), V: geom.Between(p[1], q[1]), Z: geom.Between(p[2], q[2])}.Grow(1)
		var on []met
		meets := func(key string, box geom.Box) {
			if line.Overlaps(box) {
				near := ways.Spot{clamp(p[0], box.U), clamp(p[1], box.V), clamp(p[2], box.Z)}
				on = append(on, met{key, near.To(p)})
			}
		}
		for j := range run.Boxes {
			meets(run.Boxes[j].Key(), run.Boxes[j].Hull.Grow(-2))
		}
		if k := w.kneeBehind(run); k != nil {
			meets("knee_wall."+k.Name, k.Framing.Grow(-2))
		}
		slices.SortStableFunc(on, func(a, b met) int { return cmp.Compare(a.far, b.far) })
		for _, m := range on {
			if len(keys) == 0 || keys[len(keys)-1] != m.key {
				keys = append(keys, m.key)
			}
		}
	}
	return keys
}

func clamp(x length.Length, s geom.Span) length.Length { return min(max(x, s.Lo), s.Hi) }
