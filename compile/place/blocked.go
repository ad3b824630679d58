package place

import (
	"fmt"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/setting"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// blocked looks for what frees those that block one another. A neighbour that stands is moved
// where that does; else it is an error.
func (r *room) blocked(b *setting.Blocked) {
	slot := r.slot(b)
	if steps, ok := r.aside(b, slot); ok {
		r.Setting.Steps = steps
		return
	}
	mend := slot
	if mend == "" {
		mend = r.split(b)
	}
	o, told := r.byName[b.Bodies[0]], r.told(b)
	text := r.why(o, b.Bodies[1:], told)
	at := r.Block(o.block).Head
	var f *finding.Finding
	switch {
	case b.GaveUp:
		f = r.Findings.Warnf("cannot-be-set", at, mend, "%s The search for a longer way was given up.", text)
	case b.Out:
		f = r.Findings.Warnf("cannot-be-set", at, mend, "%s It comes out of its place; turned there it may get further, which is not looked at.", text)
	default:
		f = r.Findings.Errorf("cannot-be-set", at, mend, "%s", text)
	}
	for _, h := range told {
		if place, ok := r.placeOf(h.By); ok && !f.Shows(place) {
			f.Also(place, "it is in the way")
		}
	}
}

// why tells in words what keeps a body, and others with it, from being set.
func (r *room) why(o *body, others []string, told []setting.Hit) string {
	own := finding.Capital(quoted(o.Name))
	if shallow, in := inOneAnother(told); in {
		return fmt.Sprintf("%s and %s stand in one another, by %s at least.", own, quoted(told[0].By), r.Show(shallow))
	}
	text := fmt.Sprintf("%s fits where it goes, but no straight slides take it there.%s", own, r.comesOver(o, told))
	if len(told) > 0 {
		text += fmt.Sprintf(" Drawn out from its place it gets %s.", r.reaches(o, told))
	}
	if len(others) > 0 {
		text += fmt.Sprintf(" Nor can %s be set after it.", listed(others))
	}
	for i, h := range told {
		by := r.byName[h.By]
		if by != nil && by.Stands && !slices.ContainsFunc(told[:i], func(g setting.Hit) bool { return g.By == h.By }) {
			text += fmt.Sprintf(" %s stands already, and moving it aside does not let this one in.", finding.Capital(quoted(h.By)))
		}
	}
	return text
}

// inOneAnother reports whether one thing stops another at once whichever way it goes, and by how
// much at least it lies in it.
func inOneAnother(hits []setting.Hit) (by geom.Length, in bool) {
	for i, h := range hits {
		if h.Slide.By > 0 || h.By != hits[0].By {
			return 0, false
		}
		if i == 0 || h.Overlap < by {
			by = h.Overlap
		}
	}
	return by, len(hits) == 4
}

// behind reports whether what is met is the wall of something else that is met.
func (r *room) behind(name string, hits []setting.Hit) bool {
	for i := range r.Room.Walls {
		w := &r.Room.Walls[i]
		if "wall "+w.Name != name {
			continue
		}
		for _, f := range w.Fixtures() {
			if slices.ContainsFunc(hits, func(h setting.Hit) bool { return h.By == f.Words() }) {
				return true
			}
		}
	}
	return false
}

// told are the hits of the first of them that are worth telling: one for each direction of its
// own that leads away from what it stands on, but for the wall that a pipe that it meets comes out of.
func (r *room) told(b *setting.Blocked) []setting.Hit {
	o := r.byName[b.Bodies[0]]
	var out []setting.Hit
	for _, to := range []string{"to the front", "to the right", "to the left", "up"} {
		i := slices.IndexFunc(b.Hits, func(h setting.Hit) bool { return h.Body == o.Name && direction(o.frame, h.Slide) == to })
		if i >= 0 {
			out = append(out, b.Hits[i])
		}
	}
	return slices.DeleteFunc(slices.Clone(out), func(h setting.Hit) bool { return r.behind(h.By, out) })
}

// comesOver tells of what goes into a body from a wall, of what it meets, and how far off the wall it is clear of that.
func (r *room) comesOver(o *body, hits []setting.Hit) (text string) {
	for i := range r.Room.Walls {
		w := &r.Room.Walls[i]
		at := w.Frame.Around(o.frame, o.hull)
		for _, f := range w.Fixtures() {
			met := slices.ContainsFunc(hits, func(h setting.Hit) bool { return h.By == f.Words() })
			if into := f.Out.Hi - at.V.Lo; into > 0 && met && at.U.Overlaps(f.Face.X) && at.Z.Overlaps(f.Face.Y) {
				text += fmt.Sprintf(" %s goes %s into it: it is clear of that once it is %s further off wall %q.", finding.Capital(quoted(f.Words())), r.Show(into), r.Show(into), w.Name)
			}
		}
	}
	return text
}

// reaches tells hits in words, those on one thing together.
func (r *room) reaches(o *body, hits []setting.Hit) string {
	var out []string
	for i, h := range hits {
		same := func(g setting.Hit) bool { return g.Solid == h.Solid && g.By == h.By && g.Other == h.Other }
		if slices.ContainsFunc(hits[:i], same) {
			continue
		}
		var ways []string
		for _, g := range hits[i:] {
			if !same(g) {
				continue
			}
			far := "no way"
			if g.Slide.By > 0 {
				far = r.Show(g.Slide.By)
			}
			ways = append(ways, far+" "+direction(o.frame, g.Slide))
		}
		by := quoted(h.By)
		if other := r.byName[h.By]; other != nil && h.Other != "" {
			by = h.Other + " of " + by
		}
		out = append(out, fmt.Sprintf("%s, where %s meets %s", strings.Join(ways, " and "), h.Solid, by))
	}
	return strings.Join(out, "; ")
}

// placeOf is where in the text a body or what is fixed is asked for.
func (r *room) placeOf(name string) (source.Range, bool) {
	if o := r.byName[name]; o != nil {
		return r.Block(o.block).Head, true
	}
	at, ok := r.places[name]
	return at, ok
}

func listed(names []string) string {
	var out []string
	for _, n := range names {
		out = append(out, quoted(n))
	}
	return strings.Join(out, " or ")
}

// aside tries to move a neighbour that stands: the first in the way of what is blocked that can
// make way. Its steps tell all: it makes way, what comes in past it is set, it goes back, and then
// come the others; where these would be in its way too, it goes back when all is set.
func (r *room) aside(b *setting.Blocked, slot string) ([]model.SettingStep, bool) {
	var known []setting.Hit
	for _, h := range b.Hits {
		stands := r.byName[h.By]
		h = setting.Hit{Body: h.Body, By: h.By}
		if stands == nil || !stands.Stands || r.bears(h.By) || slices.Contains(known, h) {
			continue
		}
		known = append(known, h)
		for _, all := range []bool{false, true} {
			room := r.finished
			if !all {
				room.Bodies = r.needed(h.Body)
			}
			if steps, ok := r.past(room, h.Body, stands, slot); ok {
				return steps, true
			}
		}
	}
	return nil, false
}

// bears reports whether something that stands is on a body.
func (r *room) bears(name string) bool {
	return slices.ContainsFunc(r.bodies, func(o body) bool { return o.Stands && slices.Contains(o.On, name) })
}

// needed are the bodies that stand, and one with all that it goes onto.
func (r *room) needed(name string) (out []setting.Body) {
	names := []string{name}
	for i := 0; i < len(names); i++ {
		if o := r.byName[names[i]]; o != nil {
			names = append(names, o.On...)
		}
	}
	for _, b := range r.finished.Bodies {
		if b.Stands || slices.Contains(names, b.Name) {
			out = append(out, b)
		}
	}
	return out
}

// past sets the bodies of a room with a neighbour moved aside, and then all others with it in its
// place again. What is framed and laid in that room stands before all where that leaves a way.
func (r *room) past(room setting.Room, name string, stands *body, slot string) (out []model.SettingStep, ok bool) {
	for _, room := range []setting.Room{r.early(room), room} {
		away, steps, found := r.aroundAside(room, name, stands)
		if !found || !setBy(steps, name) {
			continue
		}
		then := r.finished
		then.Bodies = slices.Clone(then.Bodies)
		for i := range then.Bodies {
			b := &then.Bodies[i]
			b.Stands = b.Stands || standsIn(room, b.Name) || slices.ContainsFunc(steps, func(s setting.Step) bool { return s.Body == b.Name })
		}
		rest, blocked := r.tried(then)
		if blocked != nil {
			continue
		}
		steps, rest = r.asDescribed(steps), r.asDescribed(rest)
		var later []model.SettingStep
		for _, s := range r.before(slices.Concat(steps, rest)) {
			if standsIn(room, s.What) {
				out = append(out, s)
			} else {
				later = append(later, s)
			}
		}
		back := away
		back.Dir = back.Dir.Opposite()
		out = append(out, r.moving(stands, model.MovedAside, away))
		out = append(out, r.steps(steps)...)
		out = append(out, r.moving(stands, model.MovedBack, back))
		r.standsInTheWay(name, stands, away, steps, slot)
		return slices.Concat(out, later, r.steps(rest)), true
	}
	return nil, false
}

// aroundAside looks for a way with little lifting first.
func (r *room) aroundAside(room setting.Room, name string, stands *body) (setting.Slide, []setting.Step, bool) {
	room.Lift, room.Strict = r.lift(), true
	away, steps, found := room.Aside(name, stands.Name)
	if !found {
		room.Lift = 0
		away, steps, found = room.Aside(name, stands.Name)
	}
	return away, steps, found
}

// standsIn reports whether a body stands in a room from the beginning.
func standsIn(room setting.Room, name string) bool {
	return slices.ContainsFunc(room.Bodies, func(b setting.Body) bool { return b.Name == name && b.Stands })
}

func (r *room) moving(o *body, does model.Doing, s setting.Slide) model.SettingStep {
	out := r.step(setting.Step{Body: o.Name})
	out.Does, out.After, out.Through = does, nil, nil
	out.Slides = []model.Slide{{To: direction(o.frame, s), By: s.By}}
	return out
}

func (r *room) standsInTheWay(name string, stands *body, away setting.Slide, steps []setting.Step, slot string) {
	o := r.byName[name]
	i := slices.IndexFunc(steps, func(s setting.Step) bool { return s.Body == name })
	in := r.step(steps[i])
	at := r.Block(stands.block).Head
	if a := r.Block(stands.block).Attr("stands"); a != nil {
		at = a.Expr.At
	}
	r.Findings.Warnf("stands-in-the-way", at, slot, "%s stands where %s comes in. It has to move %s %s; then %s is set, %s; then it slides back.",
		finding.Capital(quoted(stands.Name)), quoted(name), r.Model.Build.Near(away.By), direction(stands.frame, away), quoted(name), in.Way(r.Model.Build.Near)).
		Also(r.Block(o.block).Head, "what comes in")
}
