package work

import (
	"slices"
	"strconv"

	"barwright/compile/model"
	"barwright/lang"
)

// skins has the framing of knee walls covered, once what they hide was looked at.
func (o *order) skins() {
	for i := range o.KneeWalls {
		k := &o.KneeWalls[i]
		var before []string
		for j := range k.Skins {
			before = append(before, o.skin(k, &k.Skins[j]))
		}
		o.strips(k, before)
	}
}

// skin has the pieces of a skin put on; the step's key is returned.
func (o *order) skin(k *model.KneeWall, s *model.Skin) string {
	block := "skin." + s.Name
	pieces := slices.DeleteFunc(slices.Clone(o.PartsOf(block)), func(p *model.Part) bool { return !p.Is("skin", "piece") })
	stands := each("the wall must be held before it is covered", "hold."+k.Name)
	if !o.known["hold."+k.Name] {
		stands = each("it goes on over what stands", o.setOf(o.RunNamed(k.Run))...)
	}
	t := model.Task{
		Key: "skin." + s.Name, Phase: covering, Title: "Put on skin " + s.Name + " of knee wall " + k.Name,
		About: []string{block}, Parts: labels(pieces),
		Tools: []string{"shims for the gap below", "brad nailer, or adhesive", "jigsaw, for the scribe"},
		After: slices.Concat(each("it hides the wiring", "wire.seen."+k.Name), each("it is cut out round the steel", "steel."+k.Name),
			each("it must be cut and finished", append(cutOf(pieces), "finish")...), each("its framing must stand", "frame."+k.Name), stands),
		Cautions: []string{drilling},
	}
	o.pieces(&t, pieces)
	o.do(t)
	return t.Key
}

// strips has battens, caps and corners put on over the skins.
func (o *order) strips(k *model.KneeWall, skins []string) {
	parts := slices.Concat(o.kinds["skin"], o.kinds["corner"])
	parts = slices.DeleteFunc(parts, func(p *model.Part) bool {
		return p.Is("skin", "piece") || o.Block(p.Block()).Parent.Key() != "knee_wall."+k.Name
	})
	if len(parts) == 0 {
		return
	}
	t := model.Task{
		Key: "strips." + k.Name, Phase: covering, About: []string{"knee_wall." + k.Name}, Parts: labels(parts),
		Title: "Put " + stripWords(parts) + " over the skins of knee wall " + k.Name,
		Tools: []string{"brad nailer, or adhesive", "mitre saw", "level"},
		After: append(each("they lie on it", skins...), each("they must be cut and finished", append(cutOf(parts), "finish")...)...),
	}
	for i := range k.Skins {
		s := &k.Skins[i]
		for n, at := range s.Battens {
			p := o.Part("skin." + s.Name + "/batten-" + strconv.Itoa(n+1))
			t.Checks = append(t.Checks, o.position(p.Label+", centre, from the left end of the run", at))
		}
	}
	o.pieces(&t, parts)
	o.do(t)
}

// stripWords names what covers skins: "battens and caps".
func stripWords(parts []*model.Part) string {
	var words []string
	for _, kind := range []struct{ block, name, words string }{{"skin", "batten", "battens"}, {"skin", "cap", "caps"}, {"corner", "strip", "corners"}} {
		if slices.ContainsFunc(parts, func(p *model.Part) bool { return p.Is(kind.block, kind.name) }) {
			words = append(words, kind.words)
		}
	}
	return listed(words)
}

// tops has the counters laid, cut and fixed, the sinks set, and then the bar tops.
func (o *order) tops() {
	for _, kind := range []string{"counter", "bar_top"} {
		for i := range o.Slabs {
			switch s := &o.Slabs[i]; {
			case s.Kind != kind:
			case kind == "counter":
				o.counter(s)
			default:
				o.barTop(s)
			}
		}
	}
}

func (o *order) counter(s *model.Slab) {
	r := o.RunNamed(o.over(s).Name)
	pieces := o.PartsOf(s.Key())
	stands := each("it lies on all of them", o.setOf(r)...)
	for _, inner := range o.Block("run." + r.Name).Blocks {
		if inner.Spec.Kind == "filler" || inner.Spec.Kind == "end_panel" {
			stands = append(stands, each("it covers its top", "fit."+inner.Key())...)
		}
	}
	for _, k := range o.kneeWallsBehind(r) {
		stands = append(stands, each("a run is held before it is loaded", "hold."+k.Name)...)
		for j := range k.Skins {
			if k.Skins[j].Face == "work" {
				stands = append(stands, each("it slides in under the skin", "skin."+k.Skins[j].Name)...)
			}
		}
	}
	stands = append(stands, each("it is finished before it is mounted", "finish.slabs")...)
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
		o.pieces(&t, pieces)
		o.do(t)
	}
	if o.known["dry."+s.Key()] {
		stands = each("what is cut out is cut out while it can still be lifted", "dry."+s.Key())
	}
	t := model.Task{
		Key: "fix." + s.Key(), Phase: topping, Title: title("fix " + s.Words() + " from below"), About: []string{s.Key()}, Parts: labels(pieces),
		Tools: []string{"drill driver", "level"}, After: stands, Cautions: []string{lifting},
	}
	if len(pieces) > 1 {
		t.Title += ", its seams joined first"
	}
	o.pieces(&t, pieces)
	o.do(t)
	o.sinks(s)
}

// cutWords names what is cut out of a counter: "sink prep and tap mixer".
func cutWords(s *model.Slab) string {
	var words []string
	for _, c := range s.Cuts {
		words = append(words, c.Kind+" "+c.Name)
	}
	return listed(words)
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
	o.do(model.Task{
		Key: "water." + s.Name, Phase: topping, About: t.About, Hold: plumber, Cautions: []string{piping},
		Title: "Have " + cuts + " connected: trap, drain, supply; fill the bowl, let it go, and look for drips",
		After: append(each("there must be something to connect", t.Key), each("the pipes must have been looked at", "water")...),
	})
}

func (o *order) barTop(s *model.Slab) {
	pieces, over := o.PartsOf(s.Key()), o.over(s).Name
	k := &o.KneeWalls[slices.IndexFunc(o.KneeWalls, func(k model.KneeWall) bool { return k.Name == over })]
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
	o.pieces(&t, pieces)
	o.do(t)
}

// underBarTop lists what goes in before a bar top does.
func (o *order) underBarTop(k *model.KneeWall) (out []model.Before) {
	for i := range k.Skins {
		out = append(out, each("its upper edge is fitted from above", "skin."+k.Skins[i].Name)...)
	}
	out = append(out, each("they end under it", "strips."+k.Name)...)
	for i := range o.Slabs {
		if s := &o.Slabs[i]; s.Kind == "counter" && o.over(s).Key() == "run."+k.Run {
			out = append(out, each("a counter is not carried over it", "fix."+s.Key())...)
		}
	}
	return out
}

func (o *order) over(s *model.Slab) *lang.Block { return o.Ref(o.Block(s.Key()), "over") }
