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
	if r.said(b) {
		return
	}
	slot := r.slot(b)
	if steps, ok := r.aside(b, slot); ok {
		r.Setting.Steps = steps
		return
	}
	mend := slot
	if mend == "" {
		mend = r.split(b)
	}
	o := r.byName[b.Bodies[0]]
	told := r.told(b)
	text := fmt.Sprintf("%s fits where it goes, but nothing takes it there. Drawn out from its place it gets %s.", finding.Capital(quoted(o.Name)), r.reaches(o, told))
	if shallow, in := inOneAnother(told); in {
		text = fmt.Sprintf("%s and %s stand in one another, by %s at least.", finding.Capital(quoted(o.Name)), quoted(told[0].By), r.Show(shallow))
	} else if others := b.Bodies[1:]; len(others) > 0 {
		text += fmt.Sprintf(" Nor can %s be set after it.", listed(others))
	}
	at := r.Block(o.block).Head
	var f *finding.Finding
	if b.GaveUp {
		f = r.Findings.Warnf("cannot-be-set", at, mend, "%s The search for a longer way was given up.", text)
	} else {
		f = r.Findings.Errorf("cannot-be-set", at, mend, "%s", text)
	}
	for _, h := range told {
		if place, ok := r.placeOf(h.By); ok && !f.Shows(place) {
			f.Also(place, "it is in the way")
		}
	}
}

// said reports whether a rule has told already that one of them cannot go in.
func (r *room) said(b *setting.Blocked) bool {
	return slices.ContainsFunc(b.Bodies, func(name string) bool {
		head := r.Block(r.byName[name].block).Head
		return slices.ContainsFunc(*r.Findings, func(f finding.Finding) bool { return f.Slug == "box-cannot-go-in" && f.Shows(head) })
	})
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

// told are the hits of the first of them that are worth telling: one for each direction of its
// own that leads away from what it stands on and against.
func (r *room) told(b *setting.Blocked) []setting.Hit {
	o := r.byName[b.Bodies[0]]
	var out []setting.Hit
	for _, to := range []string{"to the front", "to the right", "to the left", "up"} {
		i := slices.IndexFunc(b.Hits, func(h setting.Hit) bool { return h.Body == o.Name && direction(o.frame, h.Slide) == to })
		if i >= 0 {
			out = append(out, b.Hits[i])
		}
	}
	against := func(h setting.Hit) bool { return h.Slide.By == 0 && strings.HasPrefix(h.By, "wall ") }
	if others := slices.DeleteFunc(slices.Clone(out), against); len(others) > 0 {
		return others
	}
	return out
}

// reaches tells hits in words.
func (r *room) reaches(o *body, hits []setting.Hit) string {
	var out []string
	for _, h := range hits {
		far := "no way " + direction(o.frame, h.Slide)
		if h.Slide.By > 0 {
			far = r.Show(h.Slide.By) + " " + direction(o.frame, h.Slide)
		}
		by := quoted(h.By)
		if other := r.byName[h.By]; other != nil && h.Other != "" {
			by = h.Other + " of " + by
		}
		deep := ""
		if _, wall := strings.CutPrefix(h.By, "wall "); !wall && h.By != "the floor" && h.By != "the ceiling" {
			deep = fmt.Sprintf(" (by %s)", r.Show(h.Overlap))
		}
		out = append(out, fmt.Sprintf("%s, where %s meets %s%s", far, h.Solid, by, deep))
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

// aside tries to move a neighbour that stands: the one that makes way by the shortest slide of
// those that are in the way. Its steps tell all: it makes way, what comes in past it is set, it goes
// back.
func (r *room) aside(b *setting.Blocked, slot string) (out []model.SettingStep, ok bool) {
	for _, h := range b.Hits {
		stands := r.byName[h.By]
		if stands == nil || stands.framed || !stands.Stands {
			continue
		}
		for _, lift := range []geom.Length{r.lift(), 0} {
			room := r.finished
			room.Lift, room.Strict = lift, true
			away, steps, found := room.Aside(h.Body, h.By)
			if !found {
				continue
			}
			r.standsInTheWay(h.Body, stands, away, steps, slot)
			return r.withAside(stands, away, r.asDescribed(steps), h.Body), true
		}
	}
	return nil, false
}

// withAside puts the steps of the neighbour before and after what comes in past it: as soon as
// that stands with all that it needs, where the rest can be set with the neighbour in its place
// again; else when all is set.
func (r *room) withAside(stands *body, away setting.Slide, steps []setting.Step, past string) (out []model.SettingStep) {
	first := upTo(steps, past)
	then := r.finished
	then.Bodies = slices.Clone(then.Bodies)
	for i := range then.Bodies {
		b := &then.Bodies[i]
		b.Stands = b.Stands || slices.ContainsFunc(first, func(s setting.Step) bool { return s.Body == b.Name })
	}
	rest, blocked := r.tried(then)
	if blocked != nil {
		first, rest = steps, nil
	}
	back := away
	back.Dir = back.Dir.Opposite()
	out = append(r.before(steps), r.moving(stands, model.MovedAside, away))
	out = append(out, r.steps(first)...)
	out = append(out, r.moving(stands, model.MovedBack, back))
	return append(out, r.steps(r.asDescribed(rest))...)
}

// upTo lists the steps up to that of a body which it needs, itself the last.
func upTo(steps []setting.Step, name string) (out []setting.Step) {
	needed := []string{name}
	for _, s := range slices.Backward(steps) {
		if slices.Contains(needed, s.Body) {
			needed = append(needed, s.After...)
			out = append(out, s)
		}
	}
	slices.Reverse(out)
	return out
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
		finding.Capital(quoted(stands.Name)), quoted(name), r.Show(away.By), direction(stands.frame, away), quoted(name), in.Way(r.Show)).
		Also(r.Block(o.block).Head, "what comes in")
}
