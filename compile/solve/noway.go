package solve

import (
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/ways"
	"barwright/lang"
	"barwright/lang/finding"
)

func (w *laying) noWay(c *lang.Block, scene *wayScene, way *ways.Way) {
	mend := "a cable in the walls of the room"
	switch {
	case len(way.Shut) == 0:
	case c.Attr("height") != nil || c.Attr("through") != nil:
		mend = "leave out height and through; or move what is in the way"
	default:
		mend = "move what is in the way, or " + mend
	}
	w.Findings.Warnf("cable-finds-no-way", c.Head, mend, "%s finds no way from %s to %s along the boxes: %s.",
		finding.Capital(c.Describe()), w.Ref(c, "from").Describe(), w.Ref(c, "to").Describe(), scene.inTheWay(w, c, way))
}

// inTheWay tells what a way goes through that it may not, and of a board that may be bored
// elsewhere why not there.
func (s *wayScene) inTheWay(w *laying, c *lang.Block, way *ways.Way) string {
	if len(way.Shut) == 0 {
		return "no boards that may be bored lie between them"
	}
	names := slices.Clone(way.Shut)
	for i, what := range names {
		for j, p := range way.Spots[1:] {
			if why := s.whyNot(w, c, what, way.Spots[j], p); why != "" {
				names[i] += " (" + why + ")"
				break
			}
		}
	}
	return "what comes nearest to a way goes through " + strings.Join(names, ", ")
}

// whyNot tells why a line has no hole in a board; it is empty where the line does not cross
// it square, and of what is no board.
func (s *wayScene) whyNot(w *laying, c *lang.Block, what string, from, to ways.Spot) string {
	line := geom.Box{U: geom.Between(from[0], to[0]), V: geom.Between(from[1], to[1]), Z: geom.Between(from[2], to[2])}
	for i := range s.Boards {
		b := &s.Boards[i]
		if b.What != what || line.Along(b.Normal).Size() == 0 || !b.Box.Overlaps(line) {
			continue
		}
		through := line.With(b.Normal, b.Box.Along(b.Normal))
		for k, shut := range b.Shut {
			if shut.With(b.Normal, b.Box.Along(b.Normal)).Overlaps(through) {
				return "too near " + s.near[i][k]
			}
		}
		if c.Attr("height") != nil && line.Z.Lo != w.Length(c, "height") {
			return "not at " + w.Show(line.Z.Lo)
		}
		return "too near its edge"
	}
	return ""
}
