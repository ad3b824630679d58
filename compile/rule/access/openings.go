package access

import (
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// beside is what an opening may come too near to on its panel.
type beside struct {
	void
	slug  string
	limit geom.Length
	what  string
	at    source.Range
	later bool // it speaks of this opening itself
}

// strip is what is left between an opening and what is beside it, where that is
// less than the limit.
type strip struct {
	let
	to     beside
	left   geom.Length
	others int // openings for the same fixture that come too near something too
}

func openingNearEdge(b *rule.Build) {
	for _, s := range strips(b, "opening-near-edge") {
		f := b.Findings.Warnf("opening-near-edge", s.of.place(), moveClear(b, &s),
			"In %s of %s, %s of wood is left between the opening for %s and %s. Wanted is %s: it is %s too narrow.%s",
			s.part.Named(), s.part.Owner, b.Show(s.left), s.of.name, s.to.what, b.Show(s.to.limit), b.Show(s.to.limit-s.left), andElsewhere(s.others)).
			Also(s.to.at, "what it is near to")
		b.LimitOf(f, "opening_edge")
	}
}

func openingNearJoint(b *rule.Build) {
	for _, s := range strips(b, "opening-near-joint") {
		is := "lies " + b.Show(s.left) + " from " + s.to.what
		if s.left < 0 {
			is = "runs into the joint with " + s.to.what + ", by " + b.Show(-s.left)
		}
		f := b.Findings.Warnf("opening-near-joint", s.of.place(), moveClear(b, &s),
			"In %s of %s, the opening for %s %s. %s is to be kept: it is %s too near.%s",
			s.part.Named(), s.part.Owner, s.of.name, is, b.Show(s.to.limit), b.Show(s.to.limit-s.left), andElsewhere(s.others)).
			Also(s.to.at, "the cabinet")
		b.LimitOf(f, "opening_joint")
	}
}

func openingNearBore(b *rule.Build) {
	for _, s := range strips(b, "opening-near-bore") {
		is := "lies " + b.Show(s.left) + " from"
		if s.left < 0 {
			is = "cuts"
		}
		f := b.Findings.Warnf("opening-near-bore", s.of.place(), moveClear(b, &s),
			"In %s of %s, the opening for %s %s %s. Wanted is %s of wood between them: it is %s too near.%s",
			s.part.Named(), s.part.Owner, s.of.name, is, s.to.what, b.Show(s.to.limit), b.Show(s.to.limit-s.left), andElsewhere(s.others)).
			Also(s.to.at, "the cabinet")
		b.LimitOf(f, "opening_edge")
	}
}

func andElsewhere(others int) string {
	return finding.Others(others, " So is its opening in one more board.", " So are its openings in %d more boards.")
}

// strips are the openings that come too near what a slug speaks of, the worst of
// each fixture.
func strips(b *rule.Build, slug string) []strip {
	fixtures := append(fixturesOf(b), drainsOf(b)...)
	var out []strip
	at := map[*fixture]int{} // lookup only
	for _, l := range lets(b, fixtures) {
		if told(b, l.of, slug) {
			continue
		}
		s, ok := narrowest(b, l, slug)
		if !ok {
			continue
		}
		i, seen := at[l.of]
		switch {
		case !seen:
			at[l.of] = len(out)
			out = append(out, s)
		case s.left < out[i].left:
			s.others = out[i].others + 1
			out[i] = s
		default:
			out[i].others++
		}
	}
	return out
}

func narrowest(b *rule.Build, l let, slug string) (worst strip, ok bool) {
	own := l.void()
	for _, to := range besides(b, l) {
		if left := apart(own, to.void); to.slug == slug && !to.later && left < to.limit && (!ok || left < worst.left) {
			worst, ok = strip{let: l, to: to, left: left}, true
		}
	}
	return worst, ok
}

// void is the opening itself.
func (l *let) void() void { return voidOf(l.opening.Shape, l.part.Placement.Blank()) }

// besides lists all that an opening may come too near to.
func besides(b *rule.Build, l let) []beside {
	edge, joint := b.Length(b.Limits, "opening_edge"), b.Length(b.Limits, "opening_joint")
	own, blank := l.void(), l.part.Placement.Blank()
	var out []beside
	var cut []geom.Rect // other openings: what they leave of the outline is theirs
	passed := false
	for i := range l.part.Openings {
		o := &l.part.Openings[i]
		if o == l.opening {
			passed = true
			continue
		}
		if v := voidOf(o.Shape, blank); apart(own, v) >= 0 { // what meets the notch for a baseboard is one with it
			out = append(out, beside{v, "opening-near-edge", edge, "the opening for " + o.Name, o.Why.At, passed})
			cut = append(cut, o.Shape.Bounds())
		}
	}
	for _, v := range outlineVoids(l.part.Outline) {
		theirs := slices.ContainsFunc(cut, func(c geom.Rect) bool { return c.Contains(v.core) })
		if !theirs && apart(own, v) > 0 { // a notch lies on the edges that it is open to
			out = append(out, beside{v, "opening-near-edge", edge, "the edge of the board", l.part.Why.At, false})
		}
	}
	for i := range l.part.Bores {
		bore := &l.part.Bores[i]
		out = append(out, beside{void{geom.R(bore.At.X, bore.At.Y, bore.At.X, bore.At.Y), bore.Diameter / 2},
			"opening-near-bore", edge, "the hole for a " + bore.Name, l.part.Why.At, false})
	}
	for _, board := range l.boards {
		face, ok := l.standsOn(board)
		if v := (void{core: face}); ok && (l.of.way == "hole" || apart(own, v) >= 0) { // a slot is let run across a joint
			out = append(out, beside{v, "opening-near-joint", joint, board.Named(), l.part.Why.At, false})
		}
	}
	return out
}

// against is how near a board stands to a panel that it is joined to.
const against = length.Millimetre

// standsOn is where a board of the same cabinet stands on the panel. One that lets
// the same fixture through is no obstacle; one whose edge is cut where a hole was
// meant is.
func (l *let) standsOn(board *model.Part) (geom.Rect, bool) {
	at := l.part.Placement
	near := at.Box.With(at.Out.Axis, at.Box.Along(at.Out.Axis).Grow(against))
	if board == l.part || !near.Overlaps(board.Placement.Box) {
		return geom.Rect{}, false
	}
	if whole, cut := opens(board, l.of.name); cut && (whole || l.of.way != "hole") {
		return geom.Rect{}, false
	}
	face, _ := at.Local(board.Placement.Box)
	return face, true
}

// moveClear is the least move of a fixture along its wall, or up or down it, that keeps
// its opening clear of all that is beside it in the panel.
func moveClear(b *rule.Build, s *strip) string {
	if s.of.wall == nil {
		return "from_back = another line for the pipe, or its stub at another height"
	}
	own, to := s.void().bounds(), s.to.bounds()
	at := [2]geom.Length{s.of.face.X.Mid(), s.of.face.Y.Mid()}
	best, least := "", geom.Length(0)
	for _, move := range []geom.Point{
		{X: to.X.Hi + s.to.limit - own.X.Lo}, {X: to.X.Lo - s.to.limit - own.X.Hi},
		{Y: to.Y.Hi + s.to.limit - own.Y.Lo}, {Y: to.Y.Lo - s.to.limit - own.Y.Hi},
	} {
		axis, by, ok := s.onWall(move)
		if !ok {
			continue
		}
		to, size := length.Up(at[axis]+by, b.Marks), by
		if by < 0 {
			to, size = length.Down(at[axis]+by, b.Marks), -by
		}
		over := length.Apart(to, at[axis]+by)
		if best != "" && size >= least || !staysClear(b, s.let, longer(move, over)) {
			continue
		}
		where := b.Show(to) + " along the wall"
		if axis == 1 {
			where = b.Measured(s.of.wall, at[0], to, by > 0)
		}
		best, least = "its centre at "+where+", or other boxes", size
	}
	if best == "" {
		return "move the " + s.of.kind + ", or the boxes"
	}
	return best
}

// longer is a move along one axis, by so much more.
func longer(move geom.Point, by geom.Length) geom.Point {
	grow := func(l geom.Length) geom.Length {
		switch {
		case l > 0:
			return l + by
		case l < 0:
			return l - by
		}
		return 0
	}
	return geom.Point{X: grow(move.X), Y: grow(move.Y)}
}

// onWall is what a move on the panel's face is on the fixture's wall: along it (0)
// or up (1), and how far; ok is false where it is neither.
func (l *let) onWall(move geom.Point) (axis int, by geom.Length, ok bool) {
	at := l.part.Placement
	var step geom.Box // from the origin
	for _, along := range []struct {
		dir geom.Dir
		by  geom.Length
	}{{at.X, move.X}, {at.Y, move.Y}} {
		if along.dir.Neg {
			along.by = -along.by
		}
		step = step.With(along.dir.Axis, geom.Span{Hi: along.by})
	}
	if step.Z.Hi != 0 {
		return 1, step.Z.Hi, true
	}
	moved := at.Frame.At(step.U.Hi, step.V.Hi).Sub(at.Frame.At(0, 0))
	u, v := l.of.wall.Frame.Local(l.of.wall.Frame.Origin.Add(moved))
	return 0, u, max(u, -u) > max(v, -v)
}

// staysClear reports whether an opening that is moved on its panel stays on it and keeps
// the limits.
func staysClear(b *rule.Build, l let, move geom.Point) bool {
	own, blank := l.void().shifted(move), l.part.Placement.Blank()
	if at := own.bounds(); move.X != 0 && !blank.X.Contains(at.X) || move.Y != 0 && !blank.Y.Contains(at.Y) {
		return false
	}
	for _, to := range besides(b, l) {
		if apart(own, to.void) < to.limit {
			return false
		}
	}
	return true
}
