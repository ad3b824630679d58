// Package place tells in which order a solved build is set in its room, and by which slides
// (SPEC.md 14.3). It makes a setting.Room of the model, tells the steps that it gives in
// words, and where there is no order what blocks what, and which change of the description
// frees it.
package place

import (
	"fmt"
	"slices"
	"strings"

	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/compile/setting"
	"barwright/lang/length"
	"barwright/lang/source"
)

// most is how many bodies are looked at: beyond it time would be felt.
const most = 1200

// room is a build as a room to be taken apart.
type room struct {
	site
	finished setting.Room
	places   map[string]source.Range // of what is fixed, by its name; lookup only
	byName   map[string]*body        // lookup only
}

// newRoom makes a room of a build.
func newRoom(b *rule.Build) *room {
	r := gathered(b)
	r.finish()
	return r
}

// gathered has all that is set in a build, as it is described.
func gathered(b *rule.Build) *room {
	r := &room{site: site{Build: b}, byName: map[string]*body{}}
	r.gather()
	for i := range r.bodies {
		r.byName[r.bodies[i].Name] = &r.bodies[i]
	}
	return r
}

// finish has bodies touch, and makes of them and of what is fixed the room that is taken apart.
func (r *room) finish() {
	r.touch()
	door, wall := r.doorway()
	r.finished.Door = door
	r.finished.Fixed, r.places = r.fixed(door, wall)
	for i := range r.bodies {
		r.finished.Bodies = append(r.finished.Bodies, r.bodies[i].Body)
	}
}

// Order fills the model's steps, and finds what keeps things from being set.
func Order(b *rule.Build) {
	r := gathered(b)
	switch {
	case len(r.bodies) > most:
		b.Findings.Notef("setting-not-judged", b.Source.Top("build")[0].Head,
			"There are %d things to be set; in which order is looked for up to %d.", len(r.bodies), most)
		return
	case b.Findings.HasErrors():
		return
	}
	r.finish()
	r.beforeDoorway()
	r.throughDoorway()
	steps, blocked := r.order()
	if blocked != nil {
		r.blocked(blocked)
		return
	}
	b.Setting.Steps = append(r.before(steps), r.steps(steps)...)
}

// lift is how high things are lifted while they slide, if that will do: over an anchor, or off
// a pipe.
func (r *room) lift() length.Length {
	if r.Source.Unit.Imperial() {
		return 6 * length.Inch
	}
	return 150 * length.Millimetre
}

// order is that of the finished room, as described as far as it goes.
func (r *room) order() ([]setting.Step, *setting.Blocked) {
	steps, blocked := r.tried(r.finished)
	return r.asDescribed(steps), blocked
}

// tried looks for an order with little lifting first, and with all that is framed and laid on
// the bare floor there before anything is set; else with that coming when it is its turn.
func (r *room) tried(finished setting.Room) ([]setting.Step, *setting.Blocked) {
	early := r.early(finished)
	for _, room := range []setting.Room{early, finished} {
		room.Lift, room.Strict = r.lift(), true
		if steps, blocked := room.Order(); blocked == nil {
			return steps, nil
		}
	}
	steps, blocked := early.Order()
	if blocked == nil {
		return steps, nil
	}
	if steps, blocked := finished.Order(); blocked == nil {
		return steps, nil
	}
	return nil, blocked
}

// early is a room with all that is framed there from the beginning, and all that is laid on the
// bare floor where that can be laid past it.
func (r *room) early(room setting.Room) setting.Room {
	room.Bodies = slices.Clone(room.Bodies)
	floor := room
	floor.Bodies = nil
	for i := range room.Bodies {
		b := &room.Bodies[i]
		does := r.doing(b.Name)
		b.Stands = b.Stands || does == model.FramedInPlace
		if b.Stands || does == model.LaidInPlace {
			floor.Bodies = append(floor.Bodies, *b)
		}
	}
	if _, blocked := floor.Order(); blocked != nil {
		return room
	}
	for i := range room.Bodies {
		b := &room.Bodies[i]
		b.Stands = b.Stands || r.doing(b.Name) == model.LaidInPlace
	}
	return room
}

// doing is what is done with a body; what a mend adds is set.
func (r *room) doing(name string) model.Doing {
	if o := r.byName[name]; o != nil {
		return o.early
	}
	return model.SetInPlace
}

// asDescribed sorts steps into the order of the bodies, as far as what must stand before
// allows: every order that keeps to that is as good.
func (r *room) asDescribed(steps []setting.Step) []setting.Step {
	of := map[string]int{} // lookup only
	for i, s := range steps {
		of[s.Body] = i
		if fixed := r.byName[s.Body].fixedTo; r.byName[fixed] != nil && !setBy(steps[i:], fixed) && !slices.Contains(s.After, fixed) {
			steps[i].After = append(s.After, fixed)
		}
	}
	done := make([]bool, len(steps))
	var out []setting.Step
	var set func(i int)
	set = func(i int) {
		if done[i] {
			return
		}
		done[i] = true
		for _, before := range steps[i].After {
			if k, ok := of[before]; ok {
				set(k)
			}
		}
		out = append(out, steps[i])
	}
	for i := range r.bodies {
		if k, ok := of[r.bodies[i].Name]; ok {
			set(k)
		}
	}
	return out
}

// setBy reports whether one of the steps sets a body.
func setBy(steps []setting.Step, name string) bool {
	return slices.ContainsFunc(steps, func(s setting.Step) bool { return s.Body == name })
}

// steps tells those of an order in words.
func (r *room) steps(steps []setting.Step) (out []model.SettingStep) {
	for _, s := range steps {
		out = append(out, r.step(s))
	}
	return out
}

// before are the steps of what is laid and then of what is framed before all of an order.
func (r *room) before(steps []setting.Step) (out []model.SettingStep) {
	for _, does := range []model.Doing{model.LaidInPlace, model.FramedInPlace} {
		for i := range r.bodies {
			o := &r.bodies[i]
			if o.early == does && !o.Stands && !setBy(steps, o.Name) {
				out = append(out, r.step(setting.Step{Body: o.Name}))
			}
		}
	}
	return out
}

// Usual are the steps in which all of a build is set where nothing speaks against it: no
// ways are looked for, and there are no slides.
func Usual(b *rule.Build) []model.SettingStep {
	r := gathered(b)
	var steps []setting.Step
	for i := range r.bodies {
		o := &r.bodies[i]
		if o.early == model.SetInPlace && !o.Stands {
			steps = append(steps, setting.Step{Body: o.Name})
		}
	}
	return append(r.before(steps), r.steps(steps)...)
}

func (r *room) step(s setting.Step) model.SettingStep {
	o := r.byName[s.Body]
	lift := o.lift(r.Build)
	out := model.SettingStep{
		What: o.Name, Block: o.block, Does: o.early, Slides: r.slides(o, s.Slides), Door: r.finished.Door != nil,
		WeightKg: lift.Kg, Lifted: lift.What, People: lift.People,
	}
	for i, name := range o.On {
		if r.byName[name] != nil {
			out.After = append(out.After, model.Ahead{What: name, Why: o.whys[i]})
		}
	}
	for _, name := range s.After {
		switch {
		case slices.Contains(o.On, name):
		case name == o.fixedTo:
			out.After = append(out.After, model.Ahead{What: name, Why: "it is fixed to it"})
		default:
			out.After = append(out.After, model.Ahead{What: name, Why: "it would stand in the way"})
		}
	}
	if o.early != model.SetInPlace {
		out.Slides = nil
	} else if r.finished.Door != nil {
		for _, axis := range r.finished.Door.Passes(o.Body) {
			out.Through = append(out.Through, goesFirst[axis])
		}
	}
	return out
}

// quoted is the name of a body as sentences have it: cabinet "sink".
func quoted(name string) string {
	before, of, found := strings.Cut(name, " of ")
	if found {
		return "the " + before + " of " + quoted(of)
	}
	name, piece, found := strings.Cut(name, ", ")
	for _, kind := range []string{"cabinet", "bay", "filler", "end panel", "anchor", "counter", "bar top", "skin", "corner", "knee wall", "wall", "stub", "outlet", "switch", "vent"} {
		if own, ok := strings.CutPrefix(name, kind+" "); ok && own != "" {
			name = fmt.Sprintf("%s %q", kind, own)
			break
		}
	}
	if found {
		name += ", " + piece
	}
	return name
}
