// Package work tells the order of work: from a solved build, with its layouts and
// programs, the list of all that is done on site and in the shop, step by step, each
// with what must be done before it and why (SPEC.md 14.5); and where sheets and sticks
// are cut to be brought in. A step is there only if the build has what it is about.
//
// A step may wait for none but steps that are in the list already: so the list is in an
// order in which nothing waits for what comes later, and no circle can be.
package work

import (
	"slices"
	"strings"

	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// Phases of the work, in their order. What cures and what is waited for comes before the
// boxes are made, so that nobody stands idle.
const (
	measuring = "on site, before anything is bought"
	bringing  = "ordered and brought in"
	cutting   = "in the shop: cut and routed"
	lining    = "on site: lines, and what must cure"
	rough     = "on site: framing, wiring and water"
	making    = "in the shop: boxes and finish"
	setting   = "on site: boxes"
	covering  = "on site: skins"
	topping   = "on site: tops and sinks"
	fitting   = "on site: appliances and fronts"
	ending    = "at the end"
)

// order gathers the steps.
type order struct {
	*rule.Build
	tasks []model.Task
	sets  []model.SettingStep          // in the order of setting; the usual one where none was found
	known map[string]bool              // keys of tasks; lookup only, as the next
	uses  map[string][]model.Fastening // by their use
	kinds map[string][]*model.Part     // by the kind of their block
	under map[string][]*model.Part     // blocks of anchors, by the cabinet over them
	made  map[string]carcass           // by the cabinet
	boxes map[string]spot              // by their keys
	shims map[string][]*model.Shim     // by what bears on them
	gaps  map[string][]*model.Gap      // by the box before them
	doing map[string]string            // keys of the tasks that set things, by what is set
	off   map[string]bool              // keys of cabinets that stand and have still to make way
	left  map[string]int               // cabinets of a run that are still to be set, by its name
	tops  map[string][]string          // steps that fix counters, by the key of what is under them
	slabs map[string]*slabSets         // by their keys
}

// slabSets is a slab with the steps that set its pieces.
type slabSets struct {
	*model.Slab
	pieces []*model.SettingStep
}

// spot is where a box stands: in a run, and which of its boxes it is.
type spot struct {
	run *model.Run
	at  int
}

// carcass is a box as it leaves the bench: without fronts, drawers and loose shelves.
type carcass struct {
	parts []*model.Part
	kg    float64 // not a number where it is not known
}

// Order returns the steps of a build whose layouts, programs and rough cuts are made.
func Order(b *rule.Build) []model.Task {
	if len(b.Parts) == 0 {
		return nil
	}
	o := open(b)
	o.measure()
	o.bring()
	o.cut()
	o.recesses()
	o.lines()
	o.early("knee_wall")
	o.water()
	o.panels()
	o.assemble()
	o.set()
	o.fronts()
	o.end()
	return o.tasks
}

func open(b *rule.Build) *order {
	o := &order{
		Build: b, known: map[string]bool{}, uses: map[string][]model.Fastening{},
		kinds: map[string][]*model.Part{}, under: map[string][]*model.Part{}, made: map[string]carcass{},
		boxes: map[string]spot{}, shims: map[string][]*model.Shim{}, gaps: map[string][]*model.Gap{}, doing: map[string]string{}, off: map[string]bool{}, left: map[string]int{},
		tops: map[string][]string{}, slabs: map[string]*slabSets{},
	}
	for _, box := range b.Boxes(model.Cabinet) {
		parts := b.FastIn(box.Key())
		o.made[box.Key()] = carcass{parts, o.Together(parts)}
	}
	for i := range b.Runs {
		for at := range b.Runs[i].Boxes {
			o.boxes[b.Runs[i].Boxes[at].Key()] = spot{&b.Runs[i], at}
		}
	}
	for _, f := range b.Fastening {
		o.uses[f.Use] = append(o.uses[f.Use], f)
	}
	for i := range b.Parts {
		p := &b.Parts[i]
		o.kinds[p.BlockKind()] = append(o.kinds[p.BlockKind()], p)
		if p.BlockKind() == "anchor" {
			cabinet := b.Ref(b.Block(p.Block()), "under").Key()
			o.under[cabinet] = append(o.under[cabinet], p)
		}
	}
	for i := range b.Setting.Shims {
		s := &b.Setting.Shims[i]
		o.shims[s.Of] = append(o.shims[s.Of], s)
	}
	for i := range b.Setting.Gaps {
		g := &b.Setting.Gaps[i]
		o.gaps[g.Box] = append(o.gaps[g.Box], g)
	}
	for i := range b.Slabs {
		s := &b.Slabs[i]
		o.slabs[s.Key()] = &slabSets{Slab: s}
		if s.Kind == "counter" {
			under := o.over(s).Key()
			o.tops[under] = append(o.tops[under], "fix."+s.Key())
		}
	}
	o.sequence()
	return o
}

// plain is a length as people on site read it.
func (o *order) plain(l length.Length) string { return o.Model.Build.Plain(l) }

// near is a length to the nearest mark, for what is set out with a tape.
func (o *order) near(l length.Length) string { return o.Model.Build.Near(l) }

// do adds a step. What it waits for is kept only where it is in the list, and with its first
// reason.
func (o *order) do(t model.Task) {
	seen := map[string]bool{} // lookup only
	t.After = slices.DeleteFunc(t.After, func(b model.Before) bool {
		again := seen[b.Key]
		seen[b.Key] = true
		return again || !o.known[b.Key]
	})
	t.People = max(t.People, 1)
	o.known[t.Key] = true
	o.tasks = append(o.tasks, t)
}

// each makes a list of what is waited for, all for one reason.
func each(why string, keys ...string) []model.Before {
	out := make([]model.Before, len(keys))
	for i, key := range keys {
		out[i] = model.Before{Key: key, Why: why}
	}
	return out
}

// in lists the keys of the steps of a phase.
func (o *order) in(phase string) (keys []string) {
	for i := range o.tasks {
		if o.tasks[i].Phase == phase {
			keys = append(keys, o.tasks[i].Key)
		}
	}
	return keys
}

// those lists the keys that begin with one of some words: "set.".
func (o *order) those(words ...string) (keys []string) {
	for i := range o.tasks {
		if slices.ContainsFunc(words, func(w string) bool { return strings.HasPrefix(o.tasks[i].Key, w) }) {
			keys = append(keys, o.tasks[i].Key)
		}
	}
	return keys
}

// screws are those of some uses, in the order of the model.
func (o *order) screws(uses ...string) (out []model.Driven) {
	for _, use := range uses {
		for _, f := range o.uses[use] {
			out = append(out, o.driven(f))
		}
	}
	return out
}

func (o *order) driven(f model.Fastening) model.Driven {
	d := model.Driven{Screw: f.Screw, Count: f.Count, Use: f.Use}
	if i := slices.IndexFunc(o.Stock.Screws, func(s model.Screw) bool { return s.Name == f.Screw }); i >= 0 {
		d.Text = o.Stock.Screws[i].Text
	}
	return d
}

// labels are those of parts.
func labels(parts []*model.Part) []string {
	out := make([]string, len(parts))
	for i, p := range parts {
		out[i] = p.Label
	}
	return out
}

// which lists the parts that pass a test, in the order of the model.
func (o *order) which(test func(*model.Part) bool) (out []*model.Part) {
	for i := range o.Parts {
		if p := &o.Parts[i]; test(p) {
			out = append(out, p)
		}
	}
	return out
}

// cutOf lists the keys of the steps that cut some parts.
func cutOf(parts []*model.Part) (keys []string) {
	for _, p := range parts {
		if key := "cut." + p.Stock; !slices.Contains(keys, key) {
			keys = append(keys, key)
		}
	}
	return keys
}

// title is a sentence without its stop.
func title(text string) string { return finding.Capital(text) }
