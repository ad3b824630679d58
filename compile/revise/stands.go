package revise

import (
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/reuse"
	"barwright/lang/length"
)

// stance is where the parts of two builds stand in their blocks.
type stance struct {
	before, after blockBoxes
	within        model.Length
	show          show
}

// blockBoxes has the box round all parts of a block that are in one frame. Lookup only.
type blockBoxes map[inFrame]geom.Box

type inFrame struct {
	block string
	frame geom.Frame
}

func standsIn(p *model.Part) inFrame { return inFrame{p.Block(), p.Placement.Frame} }

func newStance(p *reuse.Pair, within model.Length) *stance {
	return &stance{boxesOf(p.Old), boxesOf(p.New), max(within, noise), p.New.Build.Plain}
}

func boxesOf(m *model.Model) blockBoxes {
	out := blockBoxes{}
	for i := range m.Parts {
		p := &m.Parts[i]
		box := p.Placement.Box
		if around, known := out[standsIn(p)]; known {
			box = box.Union(around)
		}
		out[standsIn(p)] = box
	}
	return out
}

// differs tells where a part stands otherwise than its piece did, in what both belong to:
// "2 in lower"; empty where it is as far from one end of that as it was, or from its middle.
// What is told counts from the left, the rear and the lower end.
func (s *stance) differs(was, is *model.Part) string {
	var out []string
	for axis, way := range [...]way{along, front, up} {
		low, high := s.before.gaps(was, geom.Axis(axis))
		nowLow, nowHigh := s.after.gaps(is, geom.Axis(axis))
		low, high = nowLow-low, nowHigh-high // of what stands at the middle as before, both as much
		if length.Apart(low, 0) > s.within && length.Apart(high, 0) > s.within && length.Apart(low, high) > 2*s.within {
			out = append(out, way.by(low, s.show))
		}
	}
	return strings.Join(out, ", ")
}

// gaps is how far a part is from the two ends of what it belongs to.
func (b blockBoxes) gaps(p *model.Part, axis geom.Axis) (low, high model.Length) {
	s, in := p.Placement.Box.Along(axis), b[standsIn(p)].Along(axis)
	return s.Lo - in.Lo, in.Hi - s.Hi
}

// wentAlong is the direction of a move as differs tells it: "u", "v" or "z"; empty where it
// is none, or several.
func wentAlong(stands string) string {
	for i, way := range [...]way{along, front, up} {
		if strings.HasSuffix(stands, way.more) || strings.HasSuffix(stands, way.less) {
			if strings.Contains(stands, ", ") {
				return ""
			}
			return [...]string{"u", "v", "z"}[i]
		}
	}
	return ""
}
