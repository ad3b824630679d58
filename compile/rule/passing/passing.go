// Package passing judges whether a cabinet can get past what stands out of the walls
// (SPEC.md 11.11).
package passing

import (
	"fmt"
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/length"
	"barwright/lang/source"
)

// Rules are those of the section, in its order.
var Rules = []rule.Rule{
	{Slug: "box-cannot-go-in", Look: boxCannotGoIn},
}

// vector is a direction in the room, of length 1.
type vector struct{ x, y, z float64 }

// sameWay is the cosine of 5 degrees: walls that are as far from square still let
// a box slide along one and onto a pipe of the other, with the play of its hole.
var sameWay = math.Cos(5 * math.Pi / 180)

func (a vector) dot(b vector) float64 { return float64(a.x*b.x) + float64(a.y*b.y) + float64(a.z*b.z) }
func (a vector) opposite() vector     { return vector{-a.x, -a.y, -a.z} }

// inRoom turns a direction of a frame into the room.
func inRoom(f geom.Frame, d geom.Dir) vector {
	sin, cos := f.Turn.SinCos()
	v := [...]vector{{cos, sin, 0}, {-sin, cos, 0}, {0, 0, 1}}[d.Axis]
	if d.Neg {
		return v.opposite()
	}
	return v
}

// way is one by which a box may come over a protrusion: straight onto it, or with an
// open edge of its openings first.
type way struct {
	to   vector
	open bool
	edge geom.Dir // of the open edge, in the frame of the box
}

// protrusion is what stands out of a wall and goes through boards of a box.
type protrusion struct {
	name, wall string
	out        length.Length
	plan       [4]geom.Point // in the room, from the wall's face to its end
	z          geom.Span
	on         vector // straight onto it, towards its wall
	ways       []way
	flat       []geom.Dir // that the first board which it goes through lies along
	why        model.Why
}

// boxCannotGoIn refuses a cabinet that no straight slide takes into its place: what
// stands out of the walls and goes through its boards lets it come by one way only,
// and these ways differ; or the way is shorter than what stands out.
func boxCannotGoIn(b *rule.Build) {
	standing := standingOut(b)
	if len(standing) == 0 {
		return
	}
	for run, box := range b.Boxes(model.Cabinet) {
		boards := b.FastIn(box.Key())
		goesIn(b, run, box, boards, metBy(boards, standing))
	}
}

// metBy lists what goes through boards of a box.
func metBy(boards []*model.Part, standing map[source.Range]protrusion) (met []protrusion) {
	for _, p := range boards {
		for i := range p.Openings {
			if o, ok := standing[p.Openings[i].Why.At]; ok {
				met = withOpening(met, o, p, &p.Openings[i])
			}
		}
	}
	return met
}

// standingOut lists what stands out of the walls, by the place in the text that its
// openings tell; lookup only.
func standingOut(b *rule.Build) map[source.Range]protrusion {
	out := map[source.Range]protrusion{}
	for i := range b.Room.Walls {
		w := &b.Room.Walls[i]
		for _, o := range w.Fixtures() {
			if o.StandsOut > 0 {
				out[o.Why.At] = protrusion{
					name: o.Words(), wall: w.Name, out: o.StandsOut, why: o.Why,
					plan: w.Frame.Corners(o.Face.X, o.Out), z: o.Face.Y,
					on: inRoom(w.Frame, geom.Dir{Axis: geom.V, Neg: true}),
				}
			}
		}
	}
	return out
}

// withOpening adds what an opening for a protrusion allows: that the box comes with an
// edge first to which it is open.
func withOpening(known []protrusion, o protrusion, p *model.Part, opening *model.Opening) []protrusion {
	at := slices.IndexFunc(known, func(k protrusion) bool { return k.why.At == o.why.At })
	if at < 0 {
		at = len(known)
		o.ways = []way{{to: o.on}}
		o.flat = []geom.Dir{p.Placement.X, p.Placement.X.Opposite(), p.Placement.Y, p.Placement.Y.Opposite()}
		known = append(known, o)
	}
	k := &known[at]
	blank, shape := p.Placement.Blank(), opening.Shape.Bounds()
	for _, edge := range []struct {
		open bool
		to   geom.Dir
	}{
		{shape.X.Lo <= blank.X.Lo, p.Placement.X.Opposite()}, {shape.X.Hi >= blank.X.Hi, p.Placement.X},
		{shape.Y.Lo <= blank.Y.Lo, p.Placement.Y.Opposite()}, {shape.Y.Hi >= blank.Y.Hi, p.Placement.Y},
	} {
		w := way{inRoom(p.Placement.Frame, edge.to), true, edge.to}
		if opening.Notch && edge.open && !slices.Contains(k.ways, w) {
			k.ways = append(k.ways, w)
		}
	}
	return known
}

// common keeps the ways of one list that the other has too.
func common(ways, others []way) []way {
	return slices.DeleteFunc(slices.Clone(ways), func(w way) bool { return !leads(others, w.to) })
}

func leads(ways []way, to vector) bool {
	return slices.ContainsFunc(ways, func(w way) bool { return w.to.dot(to) >= sameWay })
}

// past leaves the ways by which no board of the box meets the protrusion: what it
// sweeps lies within an opening of each.
func (o *protrusion) past(f geom.Frame, boards []*model.Part) {
	own := geom.Box{Z: o.z}
	for i, c := range o.plan {
		u, v := f.Local(c)
		at := geom.Box{U: geom.About(u, 0), V: geom.About(v, 0), Z: o.z}
		if i == 0 {
			own = at
		}
		own = own.Union(at)
	}
	o.ways = slices.DeleteFunc(o.ways, func(w way) bool {
		return w.open && slices.ContainsFunc(boards, func(p *model.Part) bool { return blocked(own.Onward(w.edge, far), p) })
	})
}

// blocked reports whether what a protrusion sweeps meets wood of a board.
func blocked(swept geom.Box, p *model.Part) bool {
	if !swept.Overlaps(p.Placement.Box) {
		return false
	}
	face, _ := p.Placement.Local(swept)
	face = face.Intersect(p.Placement.Blank())
	return !slices.ContainsFunc(p.Openings, func(o model.Opening) bool { return o.Shape.Bounds().Contains(face) })
}

// far is further than any room is wide.
const far = 1000 * length.Metre

// goesIn looks for one way that leads a box over all that goes through it.
func goesIn(b *rule.Build, run *model.Run, box *model.Box, boards []*model.Part, met []protrusion) {
	if len(met) == 0 {
		return
	}
	for i := range met {
		met[i].past(run.Frame, boards)
	}
	if ways := waysOver(met); len(ways) > 0 {
		roomToGoIn(b, run, box, met, ways)
		return
	}
	first, last := opposed(met)
	f := b.Findings.Errorf("box-cannot-go-in", last.why.At, slotFor(run, met),
		"Cabinet %q fits where it goes, but cannot get there: it would have to come straight at wall %q over %s, which stands out %s, and straight at wall %q over %s, which stands out %s.",
		box.Name, first.wall, first.name, b.Show(first.out), last.wall, last.name, b.Show(last.out))
	f.Also(first.why.At, "the other").Also(box.Why.At, "the cabinet")
}

// waysOver are the ways that lead over all of them.
func waysOver(met []protrusion) []way {
	ways := met[0].ways
	for _, o := range met[1:] {
		ways = common(ways, o.ways)
	}
	return ways
}

// opposed are the first two obstacles that share no way, or those next to it where
// any two share one.
func opposed(met []protrusion) (first, last protrusion) {
	for i := range met {
		for j := range i {
			if len(common(met[j].ways, met[i].ways)) == 0 {
				return met[j], met[i]
			}
		}
	}
	return met[0], met[len(met)-1]
}

// slotFor is a slot that lets a box come over all of them; empty where no single
// one does.
func slotFor(run *model.Run, met []protrusion) string {
	for i := range met {
		others := slices.Delete(slices.Clone(met), i, i+1)
		if len(others) == 0 {
			continue
		}
		if mend := openTo(run, &met[i], waysOver(others)); mend != "" {
			return mend
		}
	}
	return ""
}

// openTo is how a slot lets the protrusion in by one of the ways; empty where no board
// of it has an edge that way.
func openTo(run *model.Run, o *protrusion, ways []way) string {
	names := []struct {
		to   geom.Dir
		name string
	}{
		{geom.Dir{Axis: geom.V, Neg: true}, "rear"}, {geom.Dir{Axis: geom.Z, Neg: true}, "bottom"},
		{geom.Dir{Axis: geom.U, Neg: true}, "left"}, {geom.Dir{Axis: geom.U}, "right"}, {geom.Dir{Axis: geom.V}, "front"},
	}
	for _, n := range names {
		if slices.Contains(o.flat, n.to) && leads(ways, inRoom(run.Frame, n.to)) {
			return fmt.Sprintf("a slot for %s: cut = \"slot\", open_to = %q", o.name, n.name)
		}
	}
	return ""
}

// roomToGoIn refuses a box that has a way, but less room before it than what it must
// pass over stands out.
func roomToGoIn(b *rule.Build, run *model.Run, box *model.Box, met []protrusion, ways []way) {
	least := length.Length(math.MaxInt64)
	var tight protrusion
	var there length.Length
	for _, w := range ways {
		room := roomBehind(b, run, box, w.to)
		for _, o := range met {
			if o.on.dot(w.to) < sameWay {
				return // it comes with its open edges over this one
			}
			if short := o.out - room; short <= 0 {
				continue
			} else if short < least {
				least, tight, there = short, o, room
			}
		}
		if least == math.MaxInt64 {
			return
		}
	}
	b.Findings.Errorf("box-cannot-go-in", tight.why.At, "a slot for it, open to the side that the box comes from; or a narrower box",
		"Cabinet %q must start %s off its place to come over %s, but there are only %s before it stands against the wall opposite: %s short.",
		box.Name, b.Show(tight.out), tight.name, b.Show(there), b.Show(least)).Also(box.Why.At, "the cabinet")
}

// roomBehind is how far a box can stand back from its place against a way, until a
// wall of the room stops it.
func roomBehind(b *rule.Build, run *model.Run, box *model.Box, to vector) length.Length {
	room := length.Length(math.MaxInt64)
	back := to.opposite()
	for _, from := range run.Frame.Corners(box.Hull.U, box.Hull.V) {
		for i := range b.Room.Walls {
			if d, ok := hitsWall(&b.Room.Walls[i], from, back); ok {
				room = min(room, d)
			}
		}
	}
	return room
}

// hitsWall is how far a point can go until it meets a wall that it goes towards.
func hitsWall(w *model.Wall, from geom.Point, to vector) (length.Length, bool) {
	on := inRoom(w.Frame, geom.Dir{Axis: geom.V, Neg: true}).dot(to)
	if on < 1e-6 {
		return 0, false
	}
	_, off := w.Frame.Local(from)
	d := float64(off) / on
	if d < 0 {
		return 0, true
	}
	at := geom.Point{X: from.X + length.Length(math.Round(float64(d*to.x))), Y: from.Y + length.Length(math.Round(float64(d*to.y)))}
	along, _ := w.Frame.Local(at)
	return length.Length(math.Round(d)), along >= 0 && along <= w.Length
}
