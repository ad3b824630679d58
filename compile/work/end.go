package work

import (
	"slices"

	"barwright/compile/model"
)

// blocks has those of a bay laid.
func (o *order) blocks(s *model.SettingStep, key string) {
	parts := o.PartsOf(key)
	if len(parts) == 0 {
		return
	}
	o.placed(model.Task{
		Key: "blocks." + o.Block(key).Name, Phase: setting, About: []string{key}, Parts: labels(parts), Title: title("lay the blocks of " + model.BlockWords(key) + " on their shims"),
		Tools: []string{"level", "shims"}, After: append(each("they must be cut", cutOf(parts)...), each("their tops come to the line", "line")...),
		Checks: o.levelled(key),
	}, s)
}

// appliance has that of a bay slid in, or held against the description where it stands already.
func (o *order) appliance(s *model.SettingStep, key string) {
	r, box := o.boxOf(key)
	t := model.Task{
		Key: "appliance." + box.Name, Phase: fitting, About: []string{key},
		Title: "Plug in appliance " + box.Name + " and slide it in: see that its cord is not caught",
		Tools: []string{"level", "board to slide it over the floor"}, Cautions: []string{wiring, "Its weight is on its maker's sheet."},
		After: slices.Concat(each("its gaps are between boxes that stand", o.setOf(r)...), each("nothing is dropped on it", o.tops["run."+r.Name]...)),
		Checks: []model.Check{
			o.position("its top, over "+o.zero(), box.Appliance.Z.Hi),
			o.position("gap on each side", box.Appliance.U.Lo-box.Hull.U.Lo),
		},
	}
	if !o.known["blocks."+box.Name] {
		t.Checks = append(t.Checks, o.levelled(key)...)
	}
	cords := o.cords(key)
	if len(cords) > 0 {
		t.Title = "Put the plug of appliance " + box.Name + " through to its outlet, plug it in and slide the appliance in: see that its cord is not caught"
		t.Checks = append(t.Checks, cords...)
	} else if plug := o.Ref(o.Block(key), "plug"); plug != nil {
		t.About = append(t.About, plug.Key())
		t.Checks = append(t.Checks, model.Check{What: "it is plugged into", Figure: "outlet " + plug.Name})
	}
	if s == nil {
		t.Title, t.Phase, t.Tools = "Appliance "+box.Name+" stands already: hold it against these figures", setting, []string{"level"}
		t.Parts = labels(o.PartsOf(key))
		o.do(t)
	} else {
		o.placed(t, s)
	}
}

// fronts has what is loose put in and fronts hung, run by run.
func (o *order) fronts() {
	for i := range o.Runs {
		r := &o.Runs[i]
		o.frontsOf(r, o.tops["run."+r.Name])
	}
}

func (o *order) frontsOf(r *model.Run, tops []string) {
	var loose []*model.Part
	var about, before []string
	for i := range r.Boxes {
		box := &r.Boxes[i]
		if box.Kind != model.Cabinet {
			continue
		}
		fast := o.made[box.Key()].parts
		n := len(loose)
		for _, p := range o.PartsOf(box.Key()) {
			if !slices.Contains(fast, p) {
				loose = append(loose, p)
			}
		}
		if len(loose) > n {
			about, before = append(about, box.Key()), append(before, "drawers."+box.Key())
		}
	}
	if len(loose) == 0 {
		return
	}
	t := model.Task{
		Key: "fronts." + r.Name, Phase: fitting, About: about, Parts: labels(loose),
		Title: "Put in what is loose in run " + r.Name + ", hang its fronts, and adjust them: gaps even, all open past one another",
		Tools: []string{"drill driver", "screwdriver", "spacers for the gaps"},
		After: slices.Concat(each("they are adjusted once all stand", o.setOf(r)...), each("a counter's weight moves them", tops...),
			each("they must be made", before...), each("they must be finished", "finish")),
	}
	o.pieces(&t, loose)
	o.do(t)
}

// end has outlets finished, joints sealed, and the whole looked over.
func (o *order) end() {
	o.devices()
	tops := o.those("fix.counter.", "dry.", "sinks.", "water.", "fix.bar_top.")
	if slices.ContainsFunc(o.Slabs, func(s model.Slab) bool { return s.Kind == "counter" }) {
		o.do(model.Task{
			Key: "seal", Phase: ending, Title: "Seal the counters where they meet walls and skins", Tools: []string{"sealant", "tape for its edges"},
			After: each("joints are sealed once nothing moves any more", tops...),
		})
	}
	t := model.Task{
		Key: "last", Phase: ending, Title: "Look over the whole: " + o.looks(), Tools: []string{"level", "tape"},
		After: each("all must be done", o.leaves()...),
	}
	for i := range o.Slabs {
		s := &o.Slabs[i]
		t.Checks = append(t.Checks, o.position("top of "+s.Words()+", over "+o.zero(), s.Box.Z.Hi))
	}
	o.do(t)
}

// looks tells what the last look is for.
func (o *order) looks() string {
	looks := "level and tight; open and close all that opens"
	if slices.ContainsFunc(o.Slabs, func(s model.Slab) bool { return len(s.Cuts) > 0 }) {
		looks += "; dry under the sink a day after"
	}
	if o.known["devices"] {
		looks += "; press each test button"
	}
	return looks
}

func (o *order) devices() {
	t := model.Task{
		Key: "devices", Phase: ending, Hold: electrician, Cautions: []string{wiring},
		Title: "Have devices and cover plates put on, with extenders where boards stand before a box, and tested",
		After: slices.Concat(each("they end what was pulled", o.those("cable.")...), each("covers lie on what is finished", o.those("skin.", "corner.")...), each("openings stand before the boxes", o.those("set.", "back.", "fit.")...)),
	}
	behind := map[string]bool{} // what boards stand before, by its name; lookup only
	for i := range o.Parts {
		for j := range o.Parts[i].Openings {
			behind[o.Parts[i].Openings[j].Name] = true
		}
	}
	for i := range o.Room.Walls {
		for _, q := range o.Room.Walls[i].Outlets {
			if behind[q.Kind+" "+q.Name] {
				t.About = append(t.About, q.Kind+"."+q.Name)
			}
		}
	}
	for i := range o.KneeWalls {
		for _, q := range o.KneeWalls[i].Outlets {
			t.About = append(t.About, "outlet."+q.Name)
		}
	}
	if len(t.About) > 0 {
		o.do(t)
	}
}

// leaves lists the steps that no other waits for.
func (o *order) leaves() (keys []string) {
	waited := map[string]bool{} // lookup only
	for i := range o.tasks {
		for _, b := range o.tasks[i].After {
			waited[b.Key] = true
		}
	}
	for i := range o.tasks {
		if key := o.tasks[i].Key; !waited[key] {
			keys = append(keys, key)
		}
	}
	return keys
}
