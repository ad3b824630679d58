package seats

import (
	"fmt"
	"math"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// seated is a bar top that people sit at.
type seated struct {
	*model.Slab
	block *lang.Block
	count int
}

// seatedTops lists the bar tops whose text says how many sit there.
func seatedTops(b *rule.Build) []seated {
	var out []seated
	for i := range b.Slabs {
		s := &b.Slabs[i]
		if s.Kind != "bar_top" {
			continue
		}
		block := b.Block("bar_top." + s.Name)
		if n := b.Count(block, "seats"); n > 0 {
			out = append(out, seated{s, block, n})
		}
	}
	return out
}

func seatsTooNarrow(b *rule.Build) {
	need := b.Length(b.Limits, "seat_width")
	for _, s := range seatedTops(b) {
		long := s.Box.U.Size()
		lack := need*geom.Length(s.count) - long
		if lack <= 0 {
			continue
		}
		mend := fmt.Sprintf("seats = %d", long/need)
		if long < need {
			mend = "leave seats out, or make the bar top longer"
		}
		b.LimitOf(b.Findings.Warnf("seats-too-narrow", s.block.Attr("seats").Expr.At, mend,
			"%s is %s long, which is %s for each of %d; each takes %s: %s too short.",
			finding.Capital(s.block.Describe()), b.Show(long), b.Show(length.Down(long/geom.Length(s.count), b.Marks)), s.count, b.Show(need), b.Show(lack)), "seat_width")
	}
}

func kneesTooShallow(b *rule.Build) {
	tops := seatedTops(b)
	if len(tops) == 0 {
		return
	}
	faces, strips := roomFaces(b)
	for _, s := range tops {
		face, ok := faces[s.Frame]
		if !ok {
			continue
		}
		deep, need := face-s.Box.V.Lo, kneeDepth(b, s.Box.Z.Hi)
		if deep >= need {
			continue
		}
		room := length.Up(b.FieldLength(s.block, "overhang", "room")+need-deep, b.Marks)
		f := b.Findings.Warnf("knees-too-shallow", s.block.Said("overhang"), fmt.Sprintf("room = %q in its overhang, which its steel is to carry too", b.Show(room)),
			"Under %s, whose top is at %s, knees have %s from its edge to %s; at that height they take %s: %s too shallow.",
			s.block.Describe(), b.Show(s.Box.Z.Hi), b.Show(deep), strips[s.Frame], b.Show(need), b.Show(need-deep))
		b.LimitOf(f, "knee_depth")
	}
}

// roomFaces is how far each knee wall's finish comes out on the room's side, and
// what comes that far, by frame; lookup only.
func roomFaces(b *rule.Build) (map[geom.Frame]geom.Length, map[geom.Frame]string) {
	face, what := map[geom.Frame]geom.Length{}, map[geom.Frame]string{}
	for _, w := range b.KneeWalls {
		face[w.Frame], what[w.Frame] = w.Framing.V.Lo, "the framing"
	}
	for i := range b.Parts {
		p := &b.Parts[i]
		kind := p.BlockKind()
		at, ok := face[p.Placement.Frame]
		if ok && (kind == "skin" || kind == "corner") && p.Placement.Box.V.Lo < at {
			face[p.Placement.Frame], what[p.Placement.Frame] = p.Placement.Box.V.Lo, "the "+strings.TrimRight(p.Name, " 0123456789")
		}
	}
	return face, what
}

// kneeDepth is what knees take at a height of the top.
func kneeDepth(b *rule.Build, height geom.Length) geom.Length {
	at := func(field string) geom.Length { return b.FieldLength(b.Limits, "knee_depth", field) }
	return kneeDepthAt(height, at("table"), at("counter"), at("bar"))
}

// kneeDepthAt is in proportion between the three heights that depths are published
// for: with these it lies on one line.
func kneeDepthAt(height, table, counter, bar geom.Length) geom.Length {
	switch {
	case height <= 30*length.Inch:
		return table
	case height <= 36*length.Inch:
		return between(table, counter, height-30*length.Inch)
	case height <= 42*length.Inch:
		return between(counter, bar, height-36*length.Inch)
	}
	return bar
}

// between goes from one length to another, as far as up is of 6 in.
func between(from, to, up geom.Length) geom.Length {
	return from + geom.Length(math.Round(float64(to-from)*(float64(up)/float64(6*length.Inch))))
}

func noRoomBehindSeats(b *rule.Build) {
	tops := seatedTops(b)
	if len(tops) == 0 {
		return
	}
	need := b.Length(b.Limits, "behind_seats")
	stands := obstaclesOf(b)
	for _, s := range tops {
		near, far := -1, geom.Length(0)
		for i, o := range stands {
			if o.run == s.Frame {
				continue
			}
			if v, ok := nearest(o.outline, s.Frame, s.Box.U); ok && v <= s.Box.V.Lo && (near < 0 || v > far) {
				near, far = i, v
			}
		}
		room := s.Box.V.Lo - far
		if near < 0 || room >= need {
			continue
		}
		b.LimitOf(b.Findings.Warnf("no-room-behind-seats", s.block.Attr("seats").Expr.At, "let the run stand "+b.Show(need-room)+" further from there, or take off overhang",
			"From the edge of %s to %s behind its seats there are %s; who sits there takes %s: %s too few.",
			s.block.Describe(), stands[near].name, b.Show(room), b.Show(need), b.Show(need-room)).
			Also(stands[near].at, "it stands here"), "behind_seats")
	}
}

// obstacle is a wall, or the plan of a run or a slab, as points of the room.
type obstacle struct {
	name    string
	at      source.Range
	outline []geom.Point
	run     geom.Frame // that it belongs to; of a wall its own
}

// obstaclesOf lists what may stand behind seats: the walls, and the boxes, fronts
// and slabs of runs.
func obstaclesOf(b *rule.Build) []obstacle {
	var out []obstacle
	for i := range b.Room.Walls {
		w := &b.Room.Walls[i]
		out = append(out, obstacle{"wall " + w.Name, w.Why.At, []geom.Point{w.Frame.At(0, 0), w.Frame.At(w.Length, 0)}, w.Frame})
	}
	for i := range b.Runs {
		r := &b.Runs[i]
		plan := r.Frame.Corners(geom.Span{Hi: r.Length}, geom.Span{Hi: r.Foremost()})
		out = append(out, obstacle{"run " + r.Name, r.Why.At, plan[:], r.Frame})
	}
	for i := range b.Slabs {
		s := &b.Slabs[i]
		plan := s.Frame.Corners(s.Box.U, s.Box.V)
		out = append(out, obstacle{s.Words(), s.Why.At, plan[:], s.Frame})
	}
	return out
}

// pastEnd is how far an obstacle must reach past the end of a row of seats to
// stand behind it: what only runs along that end, as the wall that the bar stands
// out from, does not.
const pastEnd = length.Millimetre

// nearest is the greatest v, in a frame, of an outline within a stretch along u.
func nearest(outline []geom.Point, f geom.Frame, along geom.Span) (v geom.Length, ok bool) {
	along, v = along.Grow(-pastEnd), math.MinInt64
	for i, p := range outline {
		au, av := f.Local(p)
		bu, bv := f.Local(outline[(i+1)%len(outline)])
		for _, side := range []geom.Length{along.Lo, along.Hi} {
			if min(au, bu) <= side && side <= max(au, bu) && au != bu {
				x := av + geom.Length(math.Round(float64(bv-av)*(float64(side-au)/float64(bu-au))))
				v, ok = max(v, x), true
			}
		}
		if along.Holds(au) {
			v, ok = max(v, av), true
		}
	}
	return v, ok
}
