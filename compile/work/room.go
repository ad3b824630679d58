package work

import (
	"slices"
	"strings"

	"barwright/compile/model"
)

// lines has the level line struck, and what must cure put down.
func (o *order) lines() {
	if len(o.Runs) == 0 {
		return
	}
	t := model.Task{
		Key: "line", Phase: lining, Tools: []string{"laser level", "tape", "pencil"},
		Title:  "Strike the level line all round, from the highest point under what stands on the floor; mark the ends of the runs",
		After:  append(each("the highest point follows from the readings", "site.floor"), each("they are marked over the line too", "site.studs")...),
		Checks: o.datum(),
	}
	if len(o.Room.Floor.Readings) > 0 {
		t.Title = "Strike the line all round that the floor was read from, and the datum under it; mark the ends of the runs"
	}
	for i := range o.Runs {
		r := &o.Runs[i]
		t.About = append(t.About, "run."+r.Name)
		t.Checks = append(t.Checks, o.place(r), o.position("right end of run "+r.Name+", from its left end", r.Length),
			o.position("top of the boxes of run "+r.Name+", over "+o.zero(), r.Height))
	}
	o.do(t)
	o.early("anchor")
	for _, box := range o.Boxes(model.Cabinet) {
		for _, p := range o.under[box.Key()] {
			if o.stands(box) {
				o.anchor(&model.SettingStep{Does: model.LaidInPlace}, p)
			}
		}
	}
}

// zero is what heights are measured from on site.
func (o *order) zero() string {
	if len(o.Room.Floor.Readings) > 0 {
		return "the datum"
	}
	return "the highest point of the floor"
}

// place tells where a run begins.
func (o *order) place(r *model.Run) model.Check {
	if r.Along {
		at, _ := o.WallNamed(r.Wall).Frame.Local(r.Frame.Origin)
		return o.position("left end of run "+r.Name+", along wall "+r.Wall+" from its left end", at)
	}
	return o.position("fronts of the boxes of run "+r.Name+", where they meet wall "+r.Wall+", from its left end", o.Length(o.Block("run."+r.Name), "at"))
}

// anchor has a block fixed to the floor, long before the box that it holds where it can.
func (o *order) anchor(s *model.SettingStep, p *model.Part) {
	block := o.Block(p.Block())
	t := model.Task{
		Key: "fix." + p.Block(), Phase: lining, About: []string{p.Block()}, Parts: []string{p.Label},
		Title: "Screw the block of " + p.Owner + " to the floor", Tools: []string{"drill driver", "tape"},
		After:  append(each("it stands on the lines that are marked", "line"), each("it must be cut", cutOf([]*model.Part{p})...)...),
		Screws: o.screws("to hold " + p.Owner + " to the floor"), Cautions: []string{drilling},
		Checks: []model.Check{
			o.position("its left end, from the left end of the run", p.Placement.Box.U.Lo),
			o.rear(p),
		},
	}
	if p.Glued {
		t.Title = "Stick the block of " + p.Owner + " to the floor, clean and dry, and weigh it down"
		t.Tools, t.Cautions = []string{"adhesive", "weight"}, []string{glueing}
		t.Cure = o.Number(block, "cure")
	}
	if !isEarly(s) {
		t.Phase = setting
	}
	o.placed(t, s)
}

// rear tells how far the rear of an anchor's block lies from the line of its run that is marked.
func (o *order) rear(p *model.Part) model.Check {
	r, v := o.RunNamed(o.Block(p.Block()).Parent.Name), p.Placement.Box.V.Lo
	if r.Along {
		return o.position("its rear, from the rear of the boxes", v)
	}
	return o.position("its rear, from the fronts of the boxes", r.Depth-v)
}

// kneeWall has the framing stood up, the steel let in, and the wiring looked at while it
// can be seen.
func (o *order) kneeWall(s *model.SettingStep, name string) {
	k := o.kneeWallNamed(name)
	phase := rough
	if !isEarly(s) {
		phase = setting
	}
	o.frame(s, k, phase)
	o.supports(k, phase)
	o.roughIn(k, phase)
}

func (o *order) kneeWallNamed(name string) *model.KneeWall {
	return &o.KneeWalls[slices.IndexFunc(o.KneeWalls, func(k model.KneeWall) bool { return k.Name == name })]
}

func (o *order) partsOfKneeWall(k *model.KneeWall, steel bool) []*model.Part {
	return slices.DeleteFunc(slices.Clone(o.PartsOf("knee_wall."+k.Name)), func(p *model.Part) bool { return (p.Kind == model.Steel) != steel })
}

func (o *order) frame(s *model.SettingStep, k *model.KneeWall, phase string) {
	wood, key := o.partsOfKneeWall(k, false), "knee_wall."+k.Name
	t := model.Task{Key: "frame." + k.Name, Phase: phase, Title: "Frame knee wall " + k.Name + ", stand it up plumb and straight, and screw it to the floor",
		About: []string{key}, Parts: labels(wood), Tools: []string{"drill driver", "level, 6 ft (1.8 m)", "string line", "shims"},
		After: slices.Concat(each("its plates and studs", cutOf(wood)...), each("its top follows from the line", "line"),
			each("recesses are routed while the plate lies flat", "recess")),
		Screws: o.screws("to frame knee wall "+k.Name, "to hold knee wall "+k.Name+" to the floor"), Cautions: []string{drilling},
		Checks: []model.Check{
			o.position("top of the upper plate, over "+o.zero(), k.Framing.Z.Hi),
			o.position("its left end, from the left end of the run", k.Framing.U.Lo),
			o.position("its face towards the boxes, from their fronts", o.RunNamed(k.Run).Depth-k.Framing.V.Hi),
		},
	}
	t.Checks = append(t.Checks, o.levelled(key)...)
	o.placed(t, s)
}

func (o *order) supports(k *model.KneeWall, phase string) {
	plates := o.partsOfKneeWall(k, true)
	if len(plates) == 0 {
		return
	}
	t := model.Task{Key: "steel." + k.Name, Phase: phase, Title: "Let the steel into the upper plate of knee wall " + k.Name + ", flush, and screw it down",
		About: []string{"knee_wall." + k.Name}, Parts: labels(plates), Tools: []string{"drill driver", "straight edge"},
		After:    append(each("it goes into the upper plate", "frame."+k.Name), each("it must be cut and drilled", cutOf(plates)...)...),
		Screws:   o.screwsOf(k, "down through the support plates"),
		Cautions: []string{pushing, steel},
	}
	o.pieces(&t, plates)
	o.do(t)
}

// screwsOf are those of a use that several knee walls may share.
func (o *order) screwsOf(k *model.KneeWall, use string) (out []model.Driven) {
	for _, f := range o.uses[use] {
		if strings.HasPrefix(f.Why.Block, "knee_wall."+k.Name+" ") {
			out = append(out, o.driven(f))
		}
	}
	return out
}

func (o *order) roughIn(k *model.KneeWall, phase string) {
	cables := o.cables(k, false)
	if len(k.Outlets)+len(cables) == 0 {
		return
	}
	t := model.Task{
		Key: "wire." + k.Name, Phase: phase, Title: "Have boxes put into knee wall " + k.Name + ", and cables to them",
		Tools: []string{"drill, for holes in studs", "nail plates"}, Cautions: []string{wiring},
		After: append(each("the studs carry boxes and cables", "frame."+k.Name), each("the ways are agreed to", "site.ways")...),
	}
	for i := range k.Outlets {
		q := &k.Outlets[i]
		t.About = append(t.About, "outlet."+q.Name)
		t.Checks = append(t.Checks, model.Check{
			What:   "outlet " + q.Name + ", centre, from the left end of the run and over " + o.zero(),
			Figure: o.near(q.Box.U.Mid()) + ", " + o.near(q.Box.Z.Mid()),
		})
	}
	o.do(t)
	for _, w := range cables {
		o.pull(w, k, phase)
	}
	o.do(model.Task{
		Key: "wire.seen." + k.Name, Phase: phase, About: []string{"knee_wall." + k.Name}, Hold: electrician, Cautions: []string{wiring},
		Title: "Wait until the wiring in knee wall " + k.Name + " has been looked at, open as it is",
		After: each("there must be something to look at", append(keysOf(cables), "wire."+k.Name)...),
	})
}

// water has the pipe ends looked at before boxes stand before them.
func (o *order) water() {
	t := model.Task{
		Key: "water", Phase: rough, Hold: plumber, Cautions: []string{piping},
		Title: "Wait until water and drain in the walls have been looked at: a valve on each supply, the drain at its height, ends capped",
		After: append(each("their places are checked first", "site.fixtures"), each("the ways are agreed to", "site.ways")...),
	}
	for i := range o.Room.Walls {
		for _, s := range o.Room.Walls[i].Stubs {
			t.About = append(t.About, "stub."+s.Name)
		}
	}
	if len(t.About) > 0 {
		o.do(t)
	}
}
