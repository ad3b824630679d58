package work

import (
	"slices"
	"strconv"

	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
)

// skin has a skin put on with its battens and caps, once what it hides was looked at.
func (o *order) skin(s *model.SettingStep, name string) {
	k := o.kneeWallNamed(o.Block(s.Block).Parent.Name)
	parts := o.PartsOf(s.Block)
	stands := each("the wall must be held before it is covered", "hold."+k.Name)
	if !o.known["hold."+k.Name] {
		stands = each("it goes on over what stands", o.setOf(o.RunNamed(k.Run))...)
	}
	t := model.Task{
		Key: s.Task(), Phase: covering, Title: "Put on skin " + name + " of knee wall " + k.Name + stripWords(parts),
		About: []string{s.Block}, Parts: labels(parts),
		Tools: []string{"shims for the gap below", "brad nailer, or adhesive", "jigsaw, for the scribe", "level"},
		After: slices.Concat(each("it hides the wiring", "wire.seen."+k.Name), each("it hides the cable", keysOf(o.cables(k, true))...), each("it is cut out round the steel", "steel."+k.Name),
			each("it must be cut and finished", append(cutOf(parts), "finish")...), each("its framing must stand", "frame."+k.Name), stands),
		Checks: o.scribed(parts), Cautions: []string{drilling},
	}
	for _, w := range o.cables(k, true) {
		if !o.known[w.Key()] {
			t.Cautions = append(t.Cautions, "It covers the wall before "+w.Words()+" is pulled: whoever is licensed to wire says first how that is looked at.")
		}
	}
	own := &k.Skins[slices.IndexFunc(k.Skins, func(s model.Skin) bool { return s.Name == name })]
	for n, at := range own.Battens {
		p := o.Part("skin." + name + "/batten-" + strconv.Itoa(n+1))
		t.Checks = append(t.Checks, o.position(p.Label+", centre, from the left end of the run", at))
	}
	o.placed(t, s)
}

// stripWords names what covers a skin: ", with its battens and caps".
func stripWords(parts []*model.Part) string {
	var words []string
	for _, kind := range []struct{ name, words string }{{"batten", "battens"}, {"cap", "caps"}} {
		if slices.ContainsFunc(parts, func(p *model.Part) bool { return p.Is("skin", kind.name) }) {
			words = append(words, kind.words)
		}
	}
	if len(words) == 0 {
		return ""
	}
	return ", with its " + finding.Listed(words)
}

// corner has the strips put over a corner of skins.
func (o *order) corner(s *model.SettingStep) {
	parts := o.PartsOf(s.Block)
	o.placed(model.Task{
		Key: s.Task(), Phase: covering, About: []string{s.Block}, Parts: labels(parts), Title: "Put " + s.What + " over the edges of the skins",
		Tools: []string{"brad nailer, or adhesive", "mitre saw", "level"}, Checks: o.scribed(parts),
		After: each("it must be cut and finished", append(cutOf(parts), "finish")...),
	}, s)
}

// slab has a counter or a bar top laid once the last of its pieces can be.
func (o *order) slab(s *model.SettingStep) {
	slab := o.slabs[s.Block]
	if s != slab.pieces[len(slab.pieces)-1] {
		return
	}
	if slab.Kind == "counter" {
		o.counter(slab.Slab, slab.pieces)
	} else {
		o.barTop(slab.Slab, slab.pieces)
	}
}

func (o *order) counter(s *model.Slab, steps []*model.SettingStep) {
	r := o.RunNamed(o.over(s).Name)
	pieces := o.PartsOf(s.Key())
	stands := each("it lies on all of them", o.setOf(r)...)
	for _, inner := range o.Block("run." + r.Name).Blocks {
		if inner.Spec.Kind == "filler" || inner.Spec.Kind == "end_panel" {
			stands = append(stands, each("it covers its top", "fit."+inner.Key())...)
		}
	}
	for _, k := range o.KneeWallsBehind(r) {
		stands = append(stands, each("a run is held before it is loaded", "hold."+k.Name)...)
		for j := range k.Skins {
			if k.Skins[j].Face == "work" {
				stands = append(stands, each("it slides in under the skin", "skin."+k.Skins[j].Name)...)
			}
		}
	}
	stands = append(stands, each("it is finished before it is mounted", "finish.slabs")...)
	stands = append(stands, each("a cable is pulled while one reaches in from above", keysOf(o.cablesThrough(r))...)...)
	if cuts := cutWords(s); cuts != "" {
		t := model.Task{
			Key: "dry." + s.Key(), Phase: topping, About: []string{s.Key()}, Parts: labels(pieces),
			Title: title("lay " + s.Words() + " dry, mark " + cuts + " by the templates, cut, and seal the cut edges"),
			Tools: []string{"jigsaw", "drill", "hole saw", "sealer and brush"}, After: stands, Cautions: []string{lifting, sawing},
		}
		for _, c := range s.Cuts {
			t.About = append(t.About, c.Kind+"."+c.Name)
			t.Checks = append(t.Checks, o.position(c.Kind+" "+c.Name+", centre, from the left end of the run", c.Box.U.Mid()))
		}
		o.placed(t, steps...)
	}
	t := model.Task{
		Key: "fix." + s.Key(), Phase: topping, Title: title("lay " + s.Words() + " and fix it from below"), About: []string{s.Key()}, Parts: labels(pieces),
		Tools: []string{"drill driver", "level"}, After: stands, Cautions: []string{lifting},
	}
	if len(pieces) > 1 {
		t.Title += ", its seams joined first"
	}
	if o.known["dry."+s.Key()] {
		t.After = each("what is cut out is cut out while it can still be lifted", "dry."+s.Key())
		o.pieces(&t, pieces)
		o.do(t)
	} else {
		o.placed(t, steps...)
	}
	o.sinks(s)
}

// cutWords names what is cut out of a counter: "sink prep and tap mixer".
func cutWords(s *model.Slab) string {
	var words []string
	for _, c := range s.Cuts {
		words = append(words, c.Kind+" "+c.Name)
	}
	return finding.Listed(words)
}

func (o *order) sinks(s *model.Slab) {
	cuts := cutWords(s)
	if cuts == "" {
		return
	}
	t := model.Task{Key: "sinks." + s.Name, Phase: topping, Title: "Set " + cuts + ", and seal round them", Tools: []string{"sealant", "the maker's clips"},
		After: each("they hang in it", "fix."+s.Key())}
	for _, c := range s.Cuts {
		t.About = append(t.About, c.Kind+"."+c.Name)
	}
	o.do(t)
	water := model.Task{
		Key: "water." + s.Name, Phase: topping, About: t.About, Hold: plumber, Cautions: []string{piping},
		Title: "Have " + cuts + " connected: trap, drain, supply; fill the bowl, let it go, and look for drips",
		After: append(each("there must be something to connect", t.Key), each("the pipes must have been looked at", "water")...),
	}
	if drains := o.drains(s); len(drains) > 0 {
		water.Title = "Have " + cuts + " connected: trap and drain, put together dry first; supply; fill the bowl, let it go, and look for drips"
		water.Checks = drains
	}
	o.do(water)
}

func (o *order) barTop(s *model.Slab, steps []*model.SettingStep) {
	pieces := o.PartsOf(s.Key())
	k := o.kneeWallNamed(o.over(s).Name)
	t := model.Task{
		Key: "fix." + s.Key(), Phase: topping, Title: title("lay " + s.Words() + " and screw it from below"),
		About: []string{s.Key()}, Parts: labels(pieces), Tools: []string{"drill driver", "clamps", "level"},
		Screws: o.screwsOf(k, "up through the support plates into the bar top"), Cautions: []string{lifting},
		After: slices.Concat(each("it lies on the framing", "frame."+k.Name), each("it lies on the steel", "steel."+k.Name), o.underBarTop(k),
			each("it is finished before it is mounted", "finish.slabs")),
		Checks: []model.Check{o.position("its top, over "+o.zero(), s.Box.Z.Hi)},
	}
	if len(t.Screws) == 0 {
		t.Title = title("lay " + s.Words() + " and fix it")
	}
	o.placed(t, steps...)
}

// underBarTop lists what goes in before a bar top does.
func (o *order) underBarTop(k *model.KneeWall) (out []model.Before) {
	for i := range k.Skins {
		out = append(out, each("its upper edge is fitted from above", "skin."+k.Skins[i].Name)...)
	}
	for _, corner := range o.Block("knee_wall." + k.Name).Inner("corner") {
		out = append(out, each("its strips end under it", corner.Key())...)
	}
	return append(out, each("a counter is not carried over it", o.tops["run."+k.Run]...)...)
}

func (o *order) over(s *model.Slab) *lang.Block { return o.Ref(o.Block(s.Key()), "over") }
