package solve

import (
	"slices"

	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/length"
)

// Screws are counted by plain rules of the trade (common practice), stated in
// SPEC.md; a description says which screw serves for what.
const (
	jointPitch   = 150 * length.Millimetre // between the screws of a long joint
	floorPitch   = 400 * length.Millimetre // between the screws of a lower plate
	endScrews    = 2                       // in each end of a strip, and of a stud
	pairScrews   = 4                       // between two neighbouring boxes
	studScrews   = 2                       // of a box on each line where it is held to a wall
	anchorScrews = 2                       // through the toe kick into a block, and as many into the floor
)

// fasten counts screws for one use; nothing where the description names none.
func (s *solver) fasten(screw *lang.Block, count int, use string, w model.Why) {
	s.fastenInto("", screw, count, use, w)
}

// fastenInto counts screws that go into a wall of the room with that backing.
func (s *solver) fastenInto(backing string, screw *lang.Block, count int, use string, w model.Why) {
	if screw != nil && count > 0 {
		s.m.Fastening = append(s.m.Fastening, model.Fastening{Screw: screw.Key(), Count: count, Use: use, Backing: backing, Why: w})
	}
}

// along is the number of screws in a joint: one at each end and no further
// apart than the pitch between.
func along(joint, pitch length.Length) int { return int((joint+pitch-1)/pitch) + 1 }

// fastenRun counts the screws that make a run's boxes, join them and hold them
// to the wall.
func (s *solver) fastenRun(b *lang.Block, run *model.Run) {
	var last *model.Box
	for i := range run.Boxes {
		box := &run.Boxes[i]
		if box.Kind != model.Cabinet {
			last = nil
			continue
		}
		c := s.carcassOf(s.Block("cabinet." + box.Name))
		s.fastenBox(&c, box)
		if last != nil {
			s.fasten(s.Ref(b, "joint_screws"), pairScrews, "to join cabinets "+last.Name+" and "+box.Name, box.Why)
		}
		if run.Along {
			s.fastenInto(s.wall(run.Wall).Backing, s.atRear(b, "wall_screws", b, box), studScrews*len(run.WallLines(box, s.wall(run.Wall))), "to hold cabinet "+box.Name+" to the wall", box.Why)
		}
		last = box
	}
}

// atRear is the screw that goes through the rear stretcher of a box into what stands
// behind it: the one that a block names, or the run another where it is seen.
func (s *solver) atRear(named *lang.Block, attr string, run *lang.Block, box *model.Box) *lang.Block {
	screw, seen := s.Ref(named, attr), s.Ref(run, "seen_screws")
	c := s.carcassOf(s.Block("cabinet." + box.Name))
	if screw == nil || seen == nil || box.ClosedAt(c.rearStretcher(box.Hull).Z.Mid()) {
		return screw
	}
	return seen
}

// fastenBox counts the screws of one box, and all round a back that is not
// captured, which needs none.
func (s *solver) fastenBox(c *carcass, box *model.Box) {
	rest, back := s.carcassScrews(c, box), 0
	if !c.captured {
		back = 2*along(box.Hull.U.Size(), jointPitch) + 2*along(box.Hull.Z.Size()-c.toeHeight, jointPitch)
	}
	if named := s.FieldRef(c.block, "back", "screws"); named != nil {
		s.fasten(named, back, "to hold the back of cabinet "+box.Name, box.Why)
		back = 0
	}
	s.fasten(c.screws, rest+back, "to make "+box.Words(), box.Why)
}

// carcassScrews counts those of one box but for its back: sides to bottom and full
// top, strips and toe kick by their ends, the base, and the interior.
func (s *solver) carcassScrews(c *carcass, box *model.Box) int {
	across := 2 * along(box.Hull.V.Size()-c.bottomFrom(), jointPitch)
	n := across + 2*endScrews // the rear stretcher
	if c.full {
		n += across
	} else {
		n += 2 * endScrews
	}
	switch c.stands {
	case "sides":
		n += 2 * endScrews
	case "base":
		n += 2*endScrews*len(s.crosspieces(c, box.Hull.U)) + 2*along(box.Hull.U.Size(), floorPitch)
	}
	return n + s.interiorScrews(c, box)
}

// interiorScrews counts those of dividers, up through the bottom and down
// through what they meet at the top, and of fixed shelves, through what stands
// at their ends.
func (s *solver) interiorScrews(c *carcass, box *model.Box) int {
	b := s.Block("cabinet." + box.Name)
	deep := box.Inside.V.Size()
	foot := along(deep, jointPitch)
	head := foot
	if !c.full {
		head = endScrews // of the front stretcher
		if !c.stretcherBehind() {
			head += endScrews
		}
	}
	dividers, shelves := len(s.Lengths(b, "dividers")), len(s.Lengths(b, "fixed_shelves"))
	return dividers*(foot+head) + shelves*(dividers+1)*2*along(deep-s.FieldLength(c.block, "shelf", "setback"), jointPitch)
}

func (s *solver) fastenAnchor(b *lang.Block) {
	s.fasten(s.Ref(b, "screws"), anchorScrews, "to hold anchor "+b.Name, why(b))
	if s.Text(b, "fixed") == "screws" {
		s.fasten(s.Ref(b, "floor_screws"), anchorScrews, "to hold anchor "+b.Name+" to the floor", why(b))
	}
}

// fastenKneeWall counts two screws in each end of a stud and two more beside a
// splice on it, those that join plates on one another, those into the floor, and
// those from the boxes on the lines of the studs.
func (s *solver) fastenKneeWall(k *knee, at spliced) {
	b, wall, long := k.block, &k.wall, k.wall.Framing.U.Size()
	frame := 2*endScrews*len(wall.Studs) + (k.lower+k.upper-2)*along(long, floorPitch)
	for _, cuts := range slices.Concat(at.lower, at.upper) {
		frame += endScrews * len(cuts)
	}
	s.fasten(s.Ref(b, "screws"), frame, "to frame knee wall "+b.Name, wall.Why)
	s.fasten(s.Ref(b, "floor_screws"), along(long, floorPitch), "to hold knee wall "+b.Name+" to the floor", wall.Why)
	usual := s.Ref(b, "run_screws")
	use, lines, seen := "from the boxes of run "+k.run.Name+" into knee wall "+b.Name, len(wall.Lines), 0
	for i := range k.run.Boxes {
		if box := &k.run.Boxes[i]; box.Kind == model.Cabinet && s.atRear(b, "run_screws", s.Ref(b, "behind"), box) != usual {
			seen += wall.LinesIn(box.Name)
		}
	}
	s.fasten(usual, studScrews*(lines-seen), use, wall.Why)
	s.fasten(s.Ref(s.Ref(b, "behind"), "seen_screws"), studScrews*seen, use, wall.Why)
}

// fastenSupports counts the screws that pass through the steel.
func (s *solver) fastenSupports(inner *lang.Block, count int) {
	from := len(s.m.Fastening)
	s.fasten(s.Ref(inner, "screws"), count*s.Count(inner, "screws_each"), "down through the support plates", why(inner))
	s.fasten(s.Ref(inner, "top_screws"), count*s.Count(inner, "top_screws_each"), "up through the support plates into the bar top", why(inner))
	for i := range s.m.Fastening[from:] {
		s.m.Fastening[from+i].Steel = true
	}
}
