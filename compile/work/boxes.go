package work

import (
	"fmt"
	"slices"
	"strings"

	"barwright/compile/model"
)

// standing has what is there already held against the description, and the wall screws of
// what has still to make way left for later.
func (o *order) standing() {
	for run, box := range o.Boxes(model.Cabinet) {
		if o.stands(box) {
			o.setBox(run, box, nil)
		}
	}
	for _, bay := range o.Boxes(model.Bay) {
		if o.stands(bay) {
			o.appliance(nil, bay.Key())
		}
	}
}

func (o *order) stands(box *model.Box) bool { return o.Flag(o.Block(box.Key()), "stands") }

// boxOf finds the box of a step, and its run.
func (o *order) boxOf(key string) (*model.Run, *model.Box) {
	p := o.boxes[key]
	return p.run, &p.run.Boxes[p.at]
}

// cabinet has one set, or first the base under it.
func (o *order) cabinet(s *model.SettingStep) {
	r, box := o.boxOf(s.Block)
	if s.Task() == "set."+box.Key() {
		o.setBox(r, box, s)
		return
	}
	t := model.Task{
		Key: s.Task(), Phase: setting, About: []string{box.Key()},
		Title: "Set the base of " + box.Words() + " on its shims, to the line",
		Tools: []string{"level", "shims"},
		After: slices.Concat(each("it must be made", "box."+box.Key()), each("it is finished while it can be reached", "finish"),
			each("its top comes to the line", "line")),
		Checks: append([]model.Check{o.position("its left end, from the left end of the run", box.Hull.U.Lo)}, o.levelled(box.Key())...),
	}
	o.placed(t, s)
}

// setBox has a cabinet set, or held against the description where it stands already.
func (o *order) setBox(r *model.Run, box *model.Box, s *model.SettingStep) {
	t := model.Task{
		Key: "set." + box.Key(), Phase: setting, About: []string{box.Key()},
		Title: title("set " + box.Words() + " on its " + o.feet(box) + ", to the line"),
		Tools: []string{"level", "shims", "clamps", "drill driver"},
		After: slices.Concat(each("it must be made", "box."+box.Key()), each("its back and edges are finished while they can be reached", "finish"),
			each("its top comes to the line", "line")),
		Checks: []model.Check{
			o.position("its left side, from the left end of the run", box.Hull.U.Lo),
			o.position("its top, over "+o.zero(), box.Hull.Z.Hi),
		},
	}
	if !o.known["base."+box.Key()] {
		t.Checks = append(t.Checks, o.levelled(box.Key())...)
	}
	t.Checks = append(t.Checks, o.packed(r, box)...)
	t.After = append(t.After, o.hides(r, box)...)
	for _, p := range o.under[box.Key()] {
		t.After = append(t.After, each(o.holds(p), "fix."+p.Block())...)
		t.Screws = append(t.Screws, o.screws("to hold "+p.Owner)...)
	}
	if s == nil {
		t.Title = title(box.Words() + " stands already: hold it against the line and these figures")
		if o.off[box.Key()] {
			t.Title += "; it is not screwed to anything, for it has to make way"
		}
	}
	o.fasten(&t, r, box)
	if s == nil {
		o.do(t)
	} else {
		o.placed(t, s)
	}
	o.stood(r, box)
}

// feet are what a cabinet is set on.
func (o *order) feet(box *model.Box) string {
	switch {
	case o.known["base."+box.Key()]:
		return "base"
	case len(box.Legs) > 0:
		return "legs"
	}
	return "shims"
}

// hides lists what must be seen to before a box stands before it.
func (o *order) hides(r *model.Run, box *model.Box) (out []model.Before) {
	if slices.ContainsFunc(o.made[box.Key()].parts, func(p *model.Part) bool {
		return slices.ContainsFunc(p.Openings, func(q model.Opening) bool { return strings.HasPrefix(q.Name, "stub ") })
	}) {
		out = each("it hides the pipes", "water")
	}
	for _, k := range o.KneeWallsBehind(r) {
		out = append(out, each("it is screwed to the studs", "frame."+k.Name)...)
		out = append(out, each("its back closes the wall on this side", "wire.seen."+k.Name)...)
	}
	return out
}

// fasten has a cabinet screwed to its wall and to its neighbours, unless it has still to make
// way.
func (o *order) fasten(t *model.Task, r *model.Run, box *model.Box) {
	if o.off[box.Key()] {
		return
	}
	wall := o.screws("to hold " + box.Words() + " to the wall")
	if len(wall) > 0 {
		t.Cautions = append(t.Cautions, drilling)
		if o.WallNamed(r.Wall).Backing == "masonry" {
			t.Tools = append(t.Tools, "hammer drill, plugs")
		}
	}
	t.Screws = slices.Concat(wall, t.Screws, o.joints(t, r, box))
}

// joints are the screws that join a cabinet to those beside it that stand in their place.
func (o *order) joints(t *model.Task, r *model.Run, box *model.Box) (out []model.Driven) {
	at := o.boxes[box.Key()].at
	join := func(left, right, other int) {
		if other < 0 || other >= len(r.Boxes) {
			return
		}
		key := r.Boxes[other].Key()
		if !o.known["set."+key] || o.off[key] {
			return
		}
		if screws := o.screws("to join cabinets " + r.Boxes[left].Name + " and " + r.Boxes[right].Name); len(screws) > 0 {
			out = append(out, screws...)
			stood := "set." + key
			if o.known["back."+key] {
				stood = "back." + key
			}
			t.After = append(t.After, each("they are joined", stood)...)
		}
	}
	join(at-1, at, at-1)
	join(at, at+1, at+1)
	return out
}

// aside has a cabinet that stands make way.
func (o *order) aside(s *model.SettingStep) {
	o.placed(model.Task{
		Key: s.Task(), Phase: setting, About: []string{s.Block}, Title: title("move " + s.What + " aside, so that what follows comes in"),
		After: each("it stands there", o.doing[s.What]),
	}, s)
}

// back has it go back, and only then screwed to its wall and its neighbours.
func (o *order) back(s *model.SettingStep) {
	r, box := o.boxOf(s.Block)
	delete(o.off, s.Block)
	t := model.Task{
		Key: s.Task(), Phase: setting, About: []string{s.Block}, Title: title("move " + s.What + " back to its marks, to the line"),
		Tools: []string{"level", "shims", "clamps", "drill driver"},
		After: each("what comes in past it stands", append([]string{"aside." + s.Block}, o.since("aside."+s.Block)...)...),
	}
	o.fasten(&t, r, box)
	o.placed(t, s)
	o.stood(r, box)
}

// since lists what was set after a step.
func (o *order) since(key string) (keys []string) {
	at := slices.IndexFunc(o.tasks, func(t model.Task) bool { return t.Key == key })
	for _, t := range o.tasks[at+1:] {
		keys = append(keys, t.Key)
	}
	return keys
}

// stood counts a cabinet that stands in its place; once all of its run do, they are held.
func (o *order) stood(r *model.Run, box *model.Box) {
	if box.Kind != model.Cabinet || o.off[box.Key()] {
		return
	}
	if o.left[r.Name]--; o.left[r.Name] == 0 {
		o.hold(r)
	}
}

// holds tells why a box waits for its anchor.
func (o *order) holds(p *model.Part) string {
	if !p.Glued {
		return "the block holds it"
	}
	return fmt.Sprintf("the block holds it, and its adhesive takes %g hours", o.Number(o.Block(p.Block()), "cure"))
}

// setOf lists the steps that set boxes of a run.
func (o *order) setOf(r *model.Run) (keys []string) {
	for i := range r.Boxes {
		if key := r.Boxes[i].Key(); r.Boxes[i].Kind == model.Cabinet {
			if keys = append(keys, "set."+key); o.known["back."+key] {
				keys = append(keys, "back."+key)
			}
		}
	}
	return keys
}

// hold has a run held to its knee wall, and cables pulled through its boxes.
func (o *order) hold(r *model.Run) {
	for _, k := range o.KneeWallsBehind(r) {
		if screws := o.screws("from the boxes of run " + r.Name + " into knee wall " + k.Name); len(screws) > 0 {
			o.do(model.Task{Key: "hold." + k.Name, Phase: setting, Title: "Screw run " + r.Name + " to knee wall " + k.Name + ", from inside, on the lines of the studs",
				About: []string{"run." + r.Name, "knee_wall." + k.Name}, Tools: []string{"drill driver", "shims between back and studs"}, Screws: screws,
				Cautions: []string{drilling}, After: each("all stand in line before they are held", o.setOf(r)...)})
		}
	}
	for _, w := range o.cablesThrough(r) {
		o.pullThrough(w, r)
	}
}

// close has the end of a run closed by what is cut to fit.
func (o *order) close(s *model.SettingStep) {
	r, parts := o.RunNamed(o.Block(s.Block).Parent.Name), o.PartsOf(s.Block)
	t := model.Task{Key: s.Task(), Phase: setting, Title: "Scribe and fit " + s.What, About: []string{s.Block}, Parts: labels(parts),
		Tools: []string{"compass for the scribe", "block plane or jigsaw", "drill driver"}, Checks: o.scribed(parts),
		After: append(each("it is cut to the gap that is there", o.setOf(r)...), each("it must be cut and finished", append(cutOf(parts), "finish")...)...)}
	o.placed(t, s)
}
