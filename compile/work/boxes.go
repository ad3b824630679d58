package work

import (
	"fmt"
	"slices"
	"strings"

	"barwright/compile/model"
)

// place is where a cabinet stands: in a run, and which of its boxes it is.
type place struct {
	run *model.Run
	at  int
}

// sequence is the order in which cabinets are set: run by run, each from its left end on.
func (o *order) sequence() (out []place) {
	for i := range o.Runs {
		r := &o.Runs[i]
		for at := range r.Boxes {
			if r.Boxes[at].Kind == model.Cabinet {
				out = append(out, place{r, at})
			}
		}
	}
	return out
}

// set has the boxes set; once a run stands, it is held and closed.
func (o *order) set() {
	last := map[*model.Run]string{} // the step that set a box of it; lookup only
	left := map[*model.Run]int{}    // cabinets to be set; lookup only
	sequence := o.sequence()
	for _, p := range sequence {
		left[p.run]++
	}
	for _, p := range sequence {
		o.setBox(p, last[p.run])
		last[p.run] = o.tasks[len(o.tasks)-1].Key
		if left[p.run]--; left[p.run] == 0 {
			o.closeRun(p.run)
		}
	}
	for i := range o.Runs {
		if r := &o.Runs[i]; last[r] == "" { // no cabinet is in it
			o.closeRun(r)
		}
	}
}

// setBox has a cabinet set, after the step that set the one before.
func (o *order) setBox(p place, last string) {
	r, box := p.run, &p.run.Boxes[p.at]
	feet := "shims"
	if len(box.Legs) > 0 {
		feet = "legs"
	}
	t := model.Task{
		Key: "set." + box.Key(), Phase: setting, About: []string{box.Key()},
		Title: title("set " + box.Words() + " on its " + feet + ", to the line"),
		Tools: []string{"level", "shims", "clamps", "drill driver"},
		After: slices.Concat(each("it must be made", "box."+box.Key()), each("its back and edges are finished while they can be reached", "finish"),
			each("its top comes to the line", "line")),
		Checks: []model.Check{
			o.position("its left side, from the left end of the run", box.Hull.U.Lo),
			o.position("its top, over "+o.zero(), box.Hull.Z.Hi),
		},
		Screws: o.screws("to hold " + box.Words() + " to the wall"),
	}
	if len(t.Screws) > 0 {
		t.Cautions = append(t.Cautions, drilling)
		if o.WallNamed(r.Wall).Backing == "masonry" {
			t.Tools = append(t.Tools, "hammer drill, plugs")
		}
	}
	t.After = append(t.After, each("a run is set from its left end on", last)...)
	t.Screws = append(t.Screws, o.joints(p)...)
	for _, p := range o.made[box.Key()].parts {
		if slices.ContainsFunc(p.Openings, func(q model.Opening) bool { return strings.HasPrefix(q.Name, "stub ") }) {
			t.After = append(t.After, each("it hides the pipes", "water")...)
			break
		}
	}
	for _, k := range o.kneeWallsBehind(r) {
		t.After = append(t.After, each("it is screwed to the studs", "frame."+k.Name)...)
		t.After = append(t.After, each("its back closes the wall on this side", "wire.seen."+k.Name)...)
	}
	for _, p := range o.under[box.Key()] {
		t.After = append(t.After, each(o.holds(p), "fix."+p.Block())...)
		t.Screws = append(t.Screws, o.screws("to hold "+p.Owner)...)
	}
	o.lift(&t, o.made[box.Key()].kg, box.Words()+", without fronts and loose shelves")
	o.do(t)
}

// joints are the screws that join a cabinet to those beside it that stand already.
func (o *order) joints(p place) (out []model.Driven) {
	boxes := p.run.Boxes
	join := func(left, right, stands int) {
		if stands >= 0 && stands < len(boxes) && o.known["set."+boxes[stands].Key()] {
			out = append(out, o.screws("to join cabinets "+boxes[left].Name+" and "+boxes[right].Name)...)
		}
	}
	join(p.at-1, p.at, p.at-1)
	join(p.at, p.at+1, p.at+1)
	return out
}

// holds tells why a box waits for its anchor.
func (o *order) holds(p *model.Part) string {
	if !p.Glued {
		return "the block holds it"
	}
	return fmt.Sprintf("the block holds it, and its adhesive takes %g hours", o.Number(o.Block(p.Block()), "cure"))
}

func (o *order) kneeWallsBehind(r *model.Run) (out []*model.KneeWall) {
	for i := range o.KneeWalls {
		if k := &o.KneeWalls[i]; k.Run == r.Name {
			out = append(out, k)
		}
	}
	return out
}

// setOf lists the steps that set boxes of a run.
func (o *order) setOf(r *model.Run) (keys []string) {
	for i := range r.Boxes {
		if r.Boxes[i].Kind == model.Cabinet {
			keys = append(keys, "set."+r.Boxes[i].Key())
		}
	}
	return keys
}

// closeRun has a run held to its knee wall, and its ends closed by what is cut to fit.
func (o *order) closeRun(r *model.Run) {
	for _, k := range o.kneeWallsBehind(r) {
		if screws := o.screws("from the boxes of run " + r.Name + " into knee wall " + k.Name); len(screws) > 0 {
			o.do(model.Task{Key: "hold." + k.Name, Phase: setting, Title: "Screw run " + r.Name + " to knee wall " + k.Name + ", from inside, on the lines of the studs",
				About: []string{"run." + r.Name, "knee_wall." + k.Name}, Tools: []string{"drill driver", "shims between back and studs"}, Screws: screws,
				Cautions: []string{drilling}, After: each("all stand in line before they are held", o.setOf(r)...)})
		}
	}
	fit := func(kind, what string) {
		for _, p := range o.kinds[kind] {
			if o.Block(p.Block()).Parent.Key() != "run."+r.Name {
				continue
			}
			t := model.Task{Key: "fit." + p.Block(), Phase: setting, Title: what + " " + p.Owner, About: []string{p.Block()}, Parts: []string{p.Label},
				Tools: []string{"compass for the scribe", "block plane or jigsaw", "drill driver"},
				After: append(each("it is cut to the gap that is there", o.setOf(r)...), each("it must be cut and finished", append(cutOf([]*model.Part{p}), "finish")...)...)}
			o.pieces(&t, []*model.Part{p})
			o.do(t)
		}
	}
	fit("filler", "Scribe and fit")
	fit("end_panel", "Scribe and fit")
}
