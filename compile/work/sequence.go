package work

import (
	"fmt"
	"slices"
	"strings"

	"barwright/compile/model"
	"barwright/compile/place"
)

// sequence is the order in which things are set: the one that was found, otherwise the
// usual one.
func (o *order) sequence() {
	o.sets = o.Setting.Steps
	if len(o.sets) == 0 {
		o.sets = place.Usual(o.Build)
	}
	o.skinsLast()
	for i := range o.sets {
		s := &o.sets[i]
		if s.Does == model.MovedAside {
			o.off[s.Block] = true
		}
		o.doing[s.What] = s.Task()
		if slab := o.slabs[s.Block]; slab != nil {
			slab.pieces = append(slab.pieces, s)
		}
	}
	for run, box := range o.Boxes(model.Cabinet) {
		o.left[run.Name]++
		o.doing[box.Words()] = "set." + box.Key()
	}
	for _, bay := range o.Boxes(model.Bay) { // one that stands is held against its figures before it moves
		o.doing["appliance of "+bay.Words()] = "appliance." + bay.Name
	}
}

// skinsLast has no framing wait for skins: those that no slide brings past its steel are fitted
// round it, before the first top once all is framed.
func (o *order) skinsLast() {
	isSkin := func(a model.Ahead) bool {
		return strings.HasPrefix(a.What, "skin ") || strings.HasPrefix(a.What, "corner ")
	}
	o.sets = slices.Clone(o.sets)
	var late []string
	for i := range o.sets {
		s := &o.sets[i]
		if s.Does != model.FramedInPlace {
			continue
		}
		for _, a := range s.After {
			if isSkin(a) {
				late = append(late, a.What)
			}
		}
		s.After = slices.DeleteFunc(slices.Clone(s.After), isSkin)
	}
	isLate := func(s model.SettingStep) bool { return slices.Contains(late, s.What) }
	var skins []model.SettingStep
	for _, s := range o.sets {
		if isLate(s) {
			skins = append(skins, s)
		}
	}
	o.sets = slices.DeleteFunc(o.sets, isLate)
	framed := 0
	for i := range o.sets {
		if o.sets[i].Does == model.FramedInPlace {
			framed = i + 1
		}
	}
	top := slices.IndexFunc(o.sets[framed:], func(s model.SettingStep) bool {
		return strings.HasPrefix(s.Block, "counter.") || strings.HasPrefix(s.Block, "bar_top.")
	})
	if top < 0 {
		top = len(o.sets) - framed
	}
	o.sets = slices.Insert(o.sets, framed+top, skins...)
}

// isEarly reports whether a step can be done long before anything else is set.
func isEarly(s *model.SettingStep) bool {
	return (s.Does == model.FramedInPlace || s.Does == model.LaidInPlace) && len(s.After) == 0
}

// early does the steps of one kind of block that wait for nothing that is set.
func (o *order) early(kind string) {
	for i := range o.sets {
		if s := &o.sets[i]; isEarly(s) && strings.HasPrefix(s.Block, kind+".") {
			o.step(s)
		}
	}
}

// set has all that is not set yet set, in the order of setting: boxes, and what closes their
// runs, skins, tops, appliances. What is there already comes first.
func (o *order) set() {
	first := len(o.tasks)
	if len(o.Setting.Steps) == 0 && slices.ContainsFunc(o.sets, func(s model.SettingStep) bool { return !isEarly(&s) }) {
		o.do(model.Task{Key: "sequence", Phase: setting, Tools: []string{"tape"},
			Title: "See in which order things come in, each past what stands then: none was found for this room, and the usual one follows"})
	}
	o.standing()
	for i := range o.sets {
		if s := &o.sets[i]; !isEarly(s) {
			o.step(s)
		}
	}
	o.inPhases(first)
}

// step does one of the steps of the order of setting.
func (o *order) step(s *model.SettingStep) {
	kind, name, _ := strings.Cut(s.Block, ".")
	switch {
	case s.Does == model.MovedAside:
		o.aside(s)
	case s.Does == model.MovedBack:
		o.back(s)
	case kind == "knee_wall":
		o.kneeWall(s, name)
	case kind == "anchor":
		o.anchor(s, o.PartsOf(s.Block)[0])
	case kind == "cabinet":
		o.cabinet(s)
	case kind == "filler" || kind == "end_panel":
		o.close(s)
	case kind == "bay" && s.Task() == "appliance."+name:
		o.appliance(s, s.Block)
	case kind == "bay":
		o.blocks(s, s.Block)
	case kind == "skin":
		o.skin(s, name)
	case kind == "corner":
		o.corner(s)
	case kind == "counter" || kind == "bar_top":
		o.slab(s)
	}
}

// placed tells in a task how the thing that it sets comes to its place, piece by piece where
// there are several steps, what must stand then, and what it weighs; and it does it.
func (o *order) placed(t model.Task, steps ...*model.SettingStep) {
	var ways []string
	for _, s := range steps {
		if way := o.way(s); way != "" {
			ways = append(ways, way)
		}
		for _, a := range s.After {
			t.After = append(t.After, model.Before{Key: o.doing[a.What], Why: a.Why})
		}
		if s.WeightKg > t.WeightKg {
			t.WeightKg = s.WeightKg
			t.Lifted = s.Lifted
		}
		t.People = max(t.People, s.People)
	}
	if len(ways) > 1 {
		for i := range ways {
			ways[i] = fmt.Sprintf("piece %d %s", i+1, ways[i])
		}
	}
	t.Way = strings.Join(ways, "; ")
	if t.Phase != lining && t.Phase != rough {
		t.After = append(t.After, each("the order is seen first", "sequence")...)
	}
	o.do(t)
}

// way tells the slides of a step; nothing where none was looked for.
func (o *order) way(s *model.SettingStep) string {
	if s.Does == model.FramedInPlace || s.Does == model.LaidInPlace {
		return ""
	}
	way := s.Way(o.Model.Build.Near)
	if first := s.First(); first != "" {
		way += "; through the doorway " + first
	}
	return way
}

// phases of what is set, in their order.
var phases = []string{setting, covering, topping, fitting}

// inPhases draws what is set before it is usual, because it could not come in afterwards,
// into the phase of what follows it, from some step on.
func (o *order) inPhases(first int) {
	last := len(phases)
	for i := len(o.tasks) - 1; i >= first; i-- {
		t := &o.tasks[i]
		last = min(last, slices.Index(phases, t.Phase))
		t.Phase = phases[last]
	}
}
