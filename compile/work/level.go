package work

import (
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// datum tells what has been laid on the floor since it was read, where it is highest under
// what bears on it, and how far below the line that is.
func (o *order) datum() (out []model.Check) {
	f := &o.Room.Floor
	if f.Laid > 0 {
		out = append(out, o.position("what is laid on the whole floor since it was read", f.Laid))
	}
	if f.Bears != "" {
		out = append(out, model.Check{
			What:   "the highest point, where no shim goes: under " + f.Bears + ", along the first wall and out from it",
			Figure: o.near(f.Datum.X) + ", " + o.near(f.Datum.Y),
		})
	}
	if len(f.Readings) > 0 {
		out = append(out, model.Check{What: "the datum, under the line that the floor was read from", Figure: o.Model.Build.Near(f.Line)})
	}
	return out
}

// levelled tells what goes under what bears on a floor that was read.
func (o *order) levelled(key string) (out []model.Check) {
	var shims, wound []string
	for _, s := range o.shims[key] {
		switch {
		case s.Winds:
			wound = append(wound, s.Under+": "+o.near(s.Height))
		case s.Thick > 0:
			shims = append(shims, s.Under+": "+o.plain(s.Thick))
		default:
			shims = append(shims, s.Under+": none")
		}
	}
	if len(shims) > 0 {
		out = append(out, model.Check{What: "shims, each within " + o.Show(o.Setting.Step/2), Figure: strings.Join(shims, "; ")})
	}
	if len(wound) > 0 {
		what := "wound out over the floor"
		if strings.HasPrefix(wound[0], "leg ") {
			what += "; legs count from the left, the rear row first"
		}
		out = append(out, model.Check{What: what, Figure: strings.Join(wound, "; ")})
	}
	return out
}

// packed tells what is packed behind a box on the lines of its wall screws.
func (o *order) packed(r *model.Run, box *model.Box) []model.Check {
	var out []string
	for _, g := range o.gaps[box.Key()] {
		thick := "none"
		if g.Shim > 0 {
			thick = o.plain(g.Shim)
		}
		out = append(out, thick+" at "+o.near(g.Along))
	}
	if len(out) == 0 {
		return nil
	}
	return []model.Check{{
		What:   "packed solid behind its back before a screw is drawn tight, or it bows; along wall " + r.Wall,
		Figure: strings.Join(out, ", "),
	}}
}

// scribed tells how much comes off the edges of parts that are cut to a floor or a wall that
// was read, in one line for all that are cut alike.
func (o *order) scribed(parts []*model.Part) (out []model.Check) {
	for _, p := range parts {
		for i := range p.Scribes {
			s := &p.Scribes[i]
			what := "cut off the " + s.Edge.String() + " edge, to the " + strings.Replace(s.To, ".", " ", 1) + ", station by station as the page has it under \"Setting\""
			figure := p.Label + " " + o.comesOff(s)
			if k := slices.IndexFunc(out, func(c model.Check) bool { return c.What == what }); k >= 0 {
				out[k].Figure += ", " + figure
			} else {
				out = append(out, model.Check{What: what, Figure: figure})
			}
		}
	}
	return out
}

// comesOff tells from how little to how much is cut off along a scribe.
func (o *order) comesOff(s *model.Scribe) string {
	cut := geom.Span{Lo: s.Stations[0].Cut, Hi: s.Stations[0].Cut}
	for _, at := range s.Stations {
		cut = cut.Union(geom.Span{Lo: at.Cut, Hi: at.Cut})
	}
	lo, hi := o.near(cut.Lo), o.near(cut.Hi)
	if lo == hi {
		return lo
	}
	return lo + " to " + hi
}

// list writes lengths one after another.
func (o *order) list(at []length.Length) string {
	texts := make([]string, len(at))
	for i, l := range at {
		texts[i] = o.plain(l)
	}
	return strings.Join(texts, ", ")
}
