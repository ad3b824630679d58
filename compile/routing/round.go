package routing

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// ring cuts round a contour, through the board, and leaves tabs.
type ring struct {
	rider
	tool  *model.Tool
	top   Length // of the tabs, below the board's
	below []Length
}

// round plans the cut round a contour. The bit goes down along the way to each level, and
// once round it. Below the tops of the tabs it cuts from one to the next one. Then it takes
// what was left on the wall: from tab to tab too, and in as many levels, as beside a tab it
// meets wood that no rough cut has reached.
func (b *board) round(kind, name string, c geom.Contour) (*cut, *Left) {
	t, radius := &b.tool, b.radius
	square := sharpened(c, radius)
	bores, refused := b.bores(kind, name, c)
	if refused != nil {
		return nil, refused
	}
	chord := Length(0)
	if t.Dialect.Chords {
		chord = t.Dialect.Chord
	}
	walls, ok := offset(square, radius, chord, nil)
	if !ok {
		return nil, b.narrow(kind, name)
	}
	rough, ok := offset(sharpened(c, radius+t.Finish), radius+t.Finish, chord, bores)
	if !ok {
		return nil, b.narrow(kind, name)
	}
	shape := filleted(square, radius, bores)
	tabs, ok := tabsAlong(shape, t, b.thick, &b.also.Tabs)
	if !ok {
		return nil, b.noTabs(kind, name)
	}
	k := &ring{tool: t, top: b.thick - tabs[0].Height}
	above := levels(0, k.top, t.Stepdown)
	k.below = levels(k.top, b.through(), t.Stepdown)
	if laps := rampRun(b.through()+approach, t) / rough.total; laps*float64(len(rough.pieces)) > maxMoves {
		return nil, b.tooLong(kind, name)
	}
	stretches := raised(rough, tabs, radius)
	s := stretches[0].hi
	k.over(rough.at(s), t.Clearance)
	for _, level := range above {
		run := rampRun(k.z+level, t)
		k.follow(rough.between(s, s+run), -level)
		s += run
		k.follow(rough.between(s, s+rough.total), -level)
	}
	first := next(stretches, math.Mod(s, rough.total))
	k.follow(rough.between(s, s+ahead(s, stretches[first].hi, rough.total)), -k.top)
	for _, level := range k.below {
		k.gaps(rough, stretches, first, level)
	}
	if t.Finish > 0 {
		finish := raised(walls, tabs, radius)
		at := nearestTo(finish, walls, k.at)
		k.line(walls.at(finish[at].hi))
		for _, level := range k.below {
			k.gaps(walls, finish, at, level)
		}
	}
	k.rapid(t.Clearance)
	return &cut{moves: k.moves, work: model.Work{
		Kind: kind, Name: name, Shape: leftward(shape), Freed: true, Tabs: tabs, Levels: append(above, k.below...),
	}}, nil
}

// gaps cuts from tab to tab, once round from where it stands at the end of one.
func (k *ring) gaps(w *way, tabs []stretch, first int, level Length) {
	for i := range tabs {
		this, next := tabs[(first+i)%len(tabs)], tabs[(first+i+1)%len(tabs)]
		from := this.hi
		long := ahead(from, next.lo, w.total)
		run := rampRun(k.z+level, k.tool)
		legs := 2 * math.Ceil(run/(2*long))
		leg, top := w.between(from, from+run/legs), k.z
		for n := 1.0; n <= legs; n++ {
			z := top - Length(math.Round(float64(top+level)*n/legs))
			if int(n)%2 == 1 {
				k.follow(leg, z)
			} else {
				k.back(leg, z)
			}
		}
		k.follow(w.between(from, from+long), -level)
		k.rise(-k.top)
		k.follow(w.between(from+long, from+long+next.hi-next.lo), -k.top)
	}
}

// ahead returns how far on a place lies from another one, above 0.
func ahead(from, to, total float64) float64 {
	d := math.Mod(to-from, total)
	if d <= 0 {
		d += total
	}
	return d
}

// next returns the first stretch that ends behind a place.
func next(all []stretch, s float64) int {
	for i := range all {
		if all[i].hi > s {
			return i
		}
	}
	return 0
}

// nearestTo returns the stretch that ends nearest to a point.
func nearestTo(all []stretch, w *way, p geom.Point) int {
	best, least := 0, math.Inf(1)
	for i := range all {
		q := w.at(all[i].hi)
		if d := norm(float64(q.X-p.X), float64(q.Y-p.Y)); d < least {
			best, least = i, d
		}
	}
	return best
}
