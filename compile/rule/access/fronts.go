package access

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// hidden is what one must get at in a cabinet, and what is open before it.
type hidden struct {
	name string
	at   source.Range
	box  *model.Box
	open geom.Rect // of its compartment, as one faces the run: what nothing fast covers
	by   *body     // what of other runs, or a wall, covers some of it; nil where nothing does
}

// outOfReach warns of what must be got at and lies behind a front that does not
// open. A door opens all that it covers, and a drawer comes out.
func outOfReach(b *rule.Build) {
	type place struct {
		box  *model.Box
		open geom.Rect
	}
	limit := b.Length(b.Limits, "hand_room")
	inside := insides(b, limit)
	names := map[place][]string{} // lookup only
	var shut []hidden             // the first in each compartment
	for _, h := range append(trapsInside(b, inside), fixturesInside(b, inside)...) {
		if min(h.open.X.Size(), h.open.Y.Size()) >= limit {
			continue
		}
		at := place{h.box, h.open}
		if names[at] == nil {
			shut = append(shut, h)
		}
		if !slices.Contains(names[at], h.name) {
			names[at] = append(names[at], h.name)
		}
	}
	for _, h := range shut {
		tellShut(b, &h, names[place{h.box, h.open}], limit)
	}
}

func tellShut(b *rule.Build, h *hidden, names []string, limit geom.Length) {
	wide, high := max(0, h.open.X.Size()), max(0, h.open.Y.Size())
	room := min(wide, high)
	is := fmt.Sprintf("only %s by %s before it is open", b.Show(wide), b.Show(high))
	if room == 0 {
		is = "nothing before it is open"
	}
	also := ""
	if len(names) > 1 {
		also = " So do " + strings.Join(names[1:], " and ") + "."
	}
	f := b.Findings.Warnf("out-of-reach", h.at, openedBy(b, h, limit), "%s lies in cabinet %s, where %s. A hand wants %s: %s too little.%s",
		finding.Capital(h.name), h.box.Name, is, b.Show(limit), b.Show(limit-room), also).
		Also(h.box.Why.At, "the cabinet")
	if h.by != nil {
		f.Also(h.by.why.At, "what stands before it")
	}
	b.LimitOf(f, "hand_room")
}

// trapsInside are the traps of sinks, under the top of their cabinets.
func trapsInside(b *rule.Build, inside map[string]*interior) []hidden {
	var out []hidden
	for i := range b.Slabs {
		for _, cut := range b.Slabs[i].Cuts {
			if cut.Kind == "sink" {
				if in := inside[b.Ref(b.Block("sink."+cut.Name), "in").Key()]; in != nil {
					open, by := in.open(cut.Box.U.Mid(), in.box.Inside.Z.Hi-1)
					out = append(out, hidden{"the trap of sink " + cut.Name, cut.Why.At, in.box, open, by})
				}
			}
		}
	}
	return out
}

// fixturesInside are the boxes and pipe ends that come out in cabinets.
func fixturesInside(b *rule.Build, inside map[string]*interior) []hidden {
	fixtures := fixturesOf(b)
	reached := fixturesReached(b, fixtures)
	var out []hidden
	for _, l := range lets(b, fixtures) {
		in := inside[l.part.Block()]
		if in == nil || !reached[l.of] || l.of.kind == "vent" || l.behind() || told(b, l.of, "buried-behind-boards") {
			continue
		}
		open, by := in.open(l.comesOut(in.box))
		out = append(out, hidden{l.of.name, l.of.place(), in.box, open, by})
	}
	return out
}

// comesOut is where a fixture lies in its cabinet, as one faces it: the end of a pipe
// where that is inside, otherwise where its opening is.
func (l *let) comesOut(box *model.Box) (u, z geom.Length) {
	at := l.part.Placement
	end := l.of.wall.Frame.At(l.of.face.X.Mid(), l.of.out)
	if u, v := at.Frame.Local(end); box.Inside.U.Lo < u && u < box.Inside.U.Hi && box.Inside.V.Lo < v {
		return u, l.of.face.Y.Mid()
	}
	before := l.before(length.Millimetre)
	if at.Out.Axis == geom.U {
		return before.U.Mid(), l.of.face.Y.Mid()
	}
	hole := l.opening.Shape.Bounds().X.Mid()
	if at.X.Neg {
		return at.Box.U.Hi - hole, l.of.face.Y.Mid()
	}
	return at.Box.U.Lo + hole, l.of.face.Y.Mid()
}

// interior is a cabinet, what divides it and what closes it from outside.
type interior struct {
	box    *model.Box
	boards []geom.Box // dividers and fixed shelves
	before []seen     // close before the fronts of its run: other runs, knee walls, walls
	reach  geom.Length
}

// insides are all cabinets, by the keys of their blocks. What stands nearer to their
// fronts than reach lets no hand in.
func insides(b *rule.Build, reach geom.Length) map[string]*interior {
	out := map[string]*interior{} // lookup only
	bodies := append(bodiesOf(b), wallBodies(b)...)
	for i := range b.Runs {
		run := &b.Runs[i]
		before := beforeFronts(run, bodies, reach)
		for j := range run.Boxes {
			if box := &run.Boxes[j]; box.Kind == model.Cabinet {
				in := &interior{box: box, before: before, reach: reach}
				for _, p := range b.PartsOf(box.Key()) {
					if p.Is("cabinet", "divider") || p.Is("cabinet", "fixed-shelf") {
						in.boards = append(in.boards, p.Placement.Box)
					}
				}
				out[box.Key()] = in
			}
		}
	}
	return out
}

// beforeFronts are the bodies of others that stand close before the fronts of a run.
func beforeFronts(run *model.Run, bodies []body, reach geom.Length) []seen {
	fronts := geom.Frame{Origin: run.Frame.At(0, run.Depth), Turn: run.Frame.Turn}
	whole := geom.Rect{X: geom.Span{Hi: run.Length}, Y: geom.Span{Hi: run.Height}}
	var others []body
	for _, body := range bodies {
		size := body.box.U.Size() + body.box.V.Size()
		off := body.at.At(body.box.U.Lo, body.box.V.Lo).Sub(fronts.Origin)
		near := max(off.X, -off.X, off.Y, -off.Y) <= run.Length+reach+size
		if body.at != run.Frame && near {
			others = append(others, body)
		}
	}
	return slices.DeleteFunc(seenFrom(fronts, others), func(s seen) bool { return !s.on(whole, reach).Overlaps(whole) })
}

// open is the compartment about a place, as one faces the cabinet, without what false
// fronts cover of it and what stands close before it.
func (in *interior) open(u, z geom.Length) (room geom.Rect, by *body) {
	room = geom.Rect{X: in.box.Inside.U, Y: in.box.Inside.Z}
	for _, board := range in.boards {
		switch {
		case board.Z.Size() < board.U.Size() && !(board.U.Lo <= u && u <= board.U.Hi): // a shelf of another space
		case board.Z.Size() < board.U.Size() && board.Z.Hi <= z:
			room.Y.Lo = max(room.Y.Lo, board.Z.Hi)
		case board.Z.Size() < board.U.Size():
			room.Y.Hi = min(room.Y.Hi, board.Z.Lo)
		case board.U.Hi <= u:
			room.X.Lo = max(room.X.Lo, board.U.Hi)
		default:
			room.X.Hi = min(room.X.Hi, board.U.Lo)
		}
	}
	for i := range in.box.Fronts {
		if f := &in.box.Fronts[i]; f.Kind == model.FalseFront && f.Place.Z.Overlaps(room.Y) {
			room.Y.Hi = f.Place.Z.Lo
		}
	}
	for i := range in.before {
		if covered := in.before[i].on(room, in.reach); covered.Overlaps(room) {
			room, by = rest(room, covered), in.before[i].body
		}
	}
	return room, by
}

// rest is the widest that is left of a rectangle beside, under or over what is covered of it.
func rest(room, covered geom.Rect) geom.Rect {
	left, right, under, over := room, room, room, room
	left.X.Hi, right.X.Lo, under.Y.Hi, over.Y.Lo = covered.X.Lo, covered.X.Hi, covered.Y.Lo, covered.Y.Hi
	return slices.MaxFunc([]geom.Rect{left, right, under, over}, func(a, b geom.Rect) int {
		return cmp.Compare(min(a.X.Size(), a.Y.Size()), min(b.X.Size(), b.Y.Size()))
	})
}

// openedBy is what would open a compartment far enough.
func openedBy(b *rule.Build, h *hidden, limit geom.Length) string {
	if h.open.X.Size() >= limit {
		for i := range h.box.Fronts {
			if f := &h.box.Fronts[i]; f.Kind == model.FalseFront {
				lower := length.Down(f.Place.Z.Size()-limit+h.open.Y.Size(), b.Marks)
				if lower > 0 {
					return fmt.Sprintf("false_front = %q or less; or a door in place of it", b.Show(lower))
				}
				return "a door in place of the false front"
			}
		}
	}
	return "other dividers or shelves, or another cabinet for it"
}
