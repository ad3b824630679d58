package work

import (
	"fmt"
	"slices"
	"strings"

	"barwright/compile/model"
	"barwright/lang/finding"
)

// proposed has ways looked at by those who will wire and plumb, before anything is bored for
// them.
func (o *order) proposed() {
	t := model.Task{Key: "site.ways", Phase: measuring}
	var kinds, who []string
	for _, kind := range []struct{ name, who, caution string }{{"cable", "a licensed electrician", wiring}, {"cord", "", wiring}, {"drain", "a licensed plumber", piping}} {
		if !slices.ContainsFunc(o.Ways, func(w model.Way) bool { return w.Kind == kind.name }) {
			continue
		}
		if kinds = append(kinds, kind.name+"s"); kind.who != "" {
			who = append(who, kind.who)
		}
		if !slices.Contains(t.Cautions, kind.caution) {
			t.Cautions = append(t.Cautions, kind.caution)
		}
	}
	if len(kinds) == 0 {
		return
	}
	t.Title, t.Hold = "Go through the ways of "+finding.Listed(kinds)+" as they are proposed, and change the description to what is decided", finding.Listed(who)
	for i := range o.Ways {
		w := &o.Ways[i]
		t.About = append(t.About, w.Key())
		figure := o.Model.Build.Near(w.Length)
		if w.Need > 0 {
			figure += ", " + o.Model.Build.Near(w.Need) + " needed"
		}
		t.Checks = append(t.Checks, model.Check{What: leads(w), Figure: figure})
	}
	o.do(t)
}

// leads tells from where to where something goes, and past what.
func leads(w *model.Way) string {
	text := w.Words() + ", from " + model.BlockWords(w.From) + " to " + model.BlockWords(w.To)
	if len(w.Past) > 0 {
		text += ", by way of " + past(w)
	}
	return text
}

func past(w *model.Way) string {
	words := make([]string, len(w.Past))
	for i, key := range w.Past {
		words[i] = model.BlockWords(key)
	}
	return finding.Listed(words)
}

// bored tells the holes that ways ask for in boards that are bored in the shop.
func (o *order) bored() (out []model.Check) {
	for i := range o.Ways {
		w := &o.Ways[i]
		for _, h := range w.Holes {
			if p := o.Part(h.Part); p.Kind == model.Panel {
				out = append(out, model.Check{What: p.Label + ", hole for " + w.Words() + ", where its drawing has it", Figure: o.hole(w, h)})
			}
		}
	}
	return out
}

func (o *order) hole(w *model.Way, h model.WayHole) string {
	if w.Kind == "cord" {
		return o.plain(h.Wide) + " by " + o.plain(h.High)
	}
	return o.plain(h.Wide) + " across"
}

// keysOf are those of some ways.
func keysOf(ways []*model.Way) []string {
	keys := make([]string, len(ways))
	for i, w := range ways {
		keys[i] = w.Key()
	}
	return keys
}

// cables lists those that run in a knee wall: the ones that run through boxes too, or the others.
func (o *order) cables(k *model.KneeWall, boxes bool) (out []*model.Way) {
	for i := range o.Ways {
		w := &o.Ways[i]
		if w.Kind == "cable" && o.throughBoxes(w) == boxes && slices.Contains(w.Past, "knee_wall."+k.Name) {
			out = append(out, w)
		}
	}
	return out
}

func (o *order) throughBoxes(w *model.Way) bool {
	return slices.ContainsFunc(w.Past, func(key string) bool { return !strings.HasPrefix(key, "knee_wall.") })
}

// cablesThrough lists those that run through boxes of a run.
func (o *order) cablesThrough(r *model.Run) (out []*model.Way) {
	for i := range o.Ways {
		w := &o.Ways[i]
		if w.Kind == "cable" && slices.ContainsFunc(w.Past, func(key string) bool {
			return !strings.HasPrefix(key, "knee_wall.") && o.Block(key).Parent.Key() == "run."+r.Name
		}) {
			out = append(out, w)
		}
	}
	return out
}

// pull has a cable pulled through the framing of a knee wall, while that is open.
func (o *order) pull(w *model.Way, k *model.KneeWall, phase string) {
	t := o.pulled(w, phase)
	t.After = each("it goes from box to box", "wire."+k.Name)
	o.do(t)
}

// pullThrough has one pulled through boxes that stand, and looked at before anything covers it.
func (o *order) pullThrough(w *model.Way, r *model.Run) {
	t := o.pulled(w, setting)
	t.Title += ", and looked at before anything covers it"
	t.Hold = electrician
	t.After = each("it goes through them", o.setOf(r)...)
	for _, k := range o.KneeWallsBehind(r) {
		t.After = append(t.After, each("it goes from box to box", "wire."+k.Name)...)
		t.After = append(t.After, each("nothing moves it any more", "hold."+k.Name)...)
	}
	o.do(t)
}

// pulled is how a cable is pulled.
func (o *order) pulled(w *model.Way, phase string) model.Task {
	t := model.Task{
		Key: w.Key(), Phase: phase, About: []string{w.Key()}, Cautions: []string{wiring}, Tools: []string{"staples, and a hammer"},
		Title: "Have " + leads(w) + ", pulled",
		Checks: []model.Check{
			{What: "cable, with what is left over and what is free in the boxes", Figure: o.Model.Build.Near(w.Need)},
			{What: "staples", Figure: fmt.Sprint(w.Supports)},
		},
	}
	for _, h := range w.Holes {
		p := o.Part(h.Part)
		if p.Kind != model.Lumber {
			continue
		}
		figure := o.hole(w, h) + ", " + o.near(h.At.Z)
		if h.Plates > 0 {
			figure += fmt.Sprintf(", nail plates: %d", h.Plates)
		}
		t.Checks = append(t.Checks, model.Check{What: "hole through the sides of " + p.Label + ", and its centre over " + o.zero(), Figure: figure})
		if len(t.Tools) == 1 {
			t.Tools = append(t.Tools, "drill", "nail plates")
		}
	}
	return t
}

// cords tells which way the cord of an appliance goes.
func (o *order) cords(bay string) (out []model.Check) {
	for i := range o.Ways {
		if w := &o.Ways[i]; w.Kind == "cord" && w.From == bay {
			out = append(out, model.Check{What: leads(w) + ", its plug first", Figure: o.Model.Build.Near(w.Need)})
		}
	}
	return out
}

// drains tells the pipes of the sinks in a counter.
func (o *order) drains(s *model.Slab) (out []model.Check) {
	for i := range o.Model.Drains {
		d := &o.Model.Drains[i]
		if !slices.ContainsFunc(s.Cuts, func(c model.SlabCut) bool { return c.Kind == "sink" && c.Name == d.Sink }) {
			continue
		}
		w := o.WayOf(d)
		pipe := o.plain(d.Size) + " pipe, " + o.Model.Build.Near(w.Length)
		if w.Supports > 0 {
			pipe += fmt.Sprintf("; hangers: %d", w.Supports)
		}
		out = append(out,
			model.Check{What: leads(w), Figure: pipe},
			model.Check{What: d.Words() + ", middle of the pipe over " + o.zero() + ", out of the trap and at the stub", Figure: o.Model.Build.Near(d.Outlet) + ", " + o.Model.Build.Near(d.End)})
	}
	return out
}
