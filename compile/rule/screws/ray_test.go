package screws

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/compile/rule/ruletest"
)

// place is a point in the frame of a run: u, v, z.
type place [3]geom.Length

// ray is what a line from a place meets among all parts of the model, up to the reach
// of the longest screw: "left side 23/32 in". It is found by brute force: all places
// where any part or recess may begin or end are tried, and between two of them each
// part is asked whether it is there.
func ray(b *rule.Build, f geom.Frame, from place, way geom.Dir) []string {
	const reach = 200 * 1_000_000
	sign := geom.Length(1)
	if way.Neg {
		sign = -1
	}
	stops := []geom.Length{0, reach}
	for i := range b.Parts {
		p := &b.Parts[i]
		if p.Placement.Frame != f {
			continue
		}
		s := p.Placement.Box.Along(way.Axis)
		ends := []geom.Length{s.Lo, s.Hi}
		for _, r := range p.Recesses {
			ends = append(ends, s.Lo+r.Depth, s.Hi-r.Depth)
			shape := r.Shape.Bounds()
			ends = append(ends, s.Lo+shape.X.Lo, s.Lo+shape.X.Hi, s.Hi-shape.X.Lo, s.Hi-shape.X.Hi,
				s.Lo+shape.Y.Lo, s.Lo+shape.Y.Hi, s.Hi-shape.Y.Lo, s.Hi-shape.Y.Hi)
		}
		for _, v := range p.Outline {
			ends = append(ends, s.Lo+v.X, s.Hi-v.X, s.Lo+v.Y, s.Hi-v.Y)
		}
		for _, e := range ends {
			if at := sign * (e - from[way.Axis]); at > 0 && at < reach {
				stops = append(stops, at)
			}
		}
	}
	slices.Sort(stops)
	var out []string
	var thick []geom.Length
	for i := range stops[1:] {
		at := from
		at[way.Axis] += sign * (stops[i] + (stops[i+1]-stops[i])/2)
		name := "gap"
		for j := range b.Parts {
			if isThere(&b.Parts[j], f, at) {
				name = strings.TrimRight(b.Parts[j].Name, " 0123456789")
			}
		}
		if stops[i] == stops[i+1] {
			continue
		}
		if n := len(out); n > 0 && out[n-1] == name {
			thick[n-1] += stops[i+1] - stops[i]
			continue
		}
		out, thick = append(out, name), append(thick, stops[i+1]-stops[i])
	}
	for i := range out {
		out[i] += " " + b.Show(thick[i])
	}
	return out
}

// isThere reports whether a part has wood or steel at a place.
func isThere(p *model.Part, f geom.Frame, at place) bool {
	room := f.At(at[0], at[1])
	u, v := p.Placement.Frame.Local(room)
	if p.Placement.Frame == f {
		u, v = at[0], at[1]
	}
	box := p.Placement.Box
	dot := geom.Box{U: geom.Span{Lo: u, Hi: u}, V: geom.Span{Lo: v, Hi: v}, Z: geom.Span{Lo: at[2], Hi: at[2]}}
	if !box.U.Contains(dot.U) || !box.V.Contains(dot.V) || !box.Z.Contains(dot.Z) {
		return false
	}
	face, depth := p.Placement.Local(dot)
	x, y := face.X.Lo, face.Y.Lo
	if !encloses(p.Outline, x, y) {
		return false
	}
	for _, o := range p.Openings {
		if !o.Notch && encloses(o.Shape, x, y) {
			return false
		}
	}
	for _, r := range p.Recesses {
		if depth.Lo < r.Depth && encloses(r.Shape, x, y) {
			return false
		}
	}
	return true
}

// encloses counts the sides of a polygon that a line to the right crosses; arcs count as
// straight.
func encloses(c geom.Contour, x, y geom.Length) bool {
	in := false
	for i := range c {
		p, q := c[i], c[(i+1)%len(c)]
		if (p.Y > y) != (q.Y > y) && float64(x) < float64(p.X)+float64(q.X-p.X)*float64(y-p.Y)/float64(q.Y-p.Y) {
			in = !in
		}
	}
	return in
}

// TestLayersAreThoseOfARay holds what rules take a screw to pass, for each joint of the
// shipped examples, to what a line through all parts of the model meets where the
// screw goes.
func TestLayersAreThoseOfARay(t *testing.T) {
	for _, name := range []string{"boatshed", "servery"} {
		t.Run(name, func(t *testing.T) {
			b := ruletest.Build(t, ruletest.Example(t, name))
			shots := shotsOf(b)
			grips := gripsOf(b)
			if len(grips) < 40 {
				t.Fatalf("only %d joints", len(grips))
			}
			for _, g := range grips {
				key := g.does + ": " + g.passes[0].what + " into " + g.holds.what
				s, ok := shots[key]
				if !ok {
					t.Errorf("nothing is shot for %q", key)
					continue
				}
				var want []string
				for _, l := range append(slices.Clone(g.passes), g.holds) {
					switch l.kind {
					case "lining", "wall", "floor":
					default:
						name, _, _ := strings.Cut(strings.TrimPrefix(strings.TrimPrefix(l.what, "the "), "a "), " of ")
						want = append(want, name+" "+b.Show(l.thick))
					}
				}
				have := ray(b, s.frame, s.from, s.way)
				if len(have) < len(want) {
					t.Fatalf("%s: the ray meets %q, want %q", key, have, want)
				}
				// A board deeper than the ray is long is cut off by its end.
				if last := len(want) - 1; last > 0 && g.holds.thick > 150*1_000_000 {
					have[last], want[last] = strings.Fields(have[last])[0], strings.Fields(want[last])[0]
				}
				if diff := cmp.Diff(want, have[:len(want)]); diff != "" {
					t.Errorf("%s (-layers of the rule +what a ray meets):\n%s", key, diff)
				}
			}
		})
	}
}

// shot is where a screw goes.
type shot struct {
	frame geom.Frame
	from  place // under its head
	way   geom.Dir
}

// shotsOf tells for each joint, by what it does and joins, where one of its screws goes,
// as a carpenter would set it.
func shotsOf(b *rule.Build) map[string]shot {
	out := map[string]shot{}
	parts := map[string]geom.Box{}
	for _, p := range b.Parts {
		parts[p.ID] = p.Placement.Box
	}
	for _, run := range b.Runs {
		add := func(key string, way geom.Dir, u, v, z geom.Length) { out[key] = shot{run.Frame, place{u, v, z}, way} }
		for _, j := range run.Joints {
			does := "join cabinets " + j.Left + " and " + j.Right + ": the "
			r, l := "right side of "+j.Left, "left side of "+j.Right
			right, left := parts["cabinet."+j.Left+"/side-right"], parts["cabinet."+j.Right+"/side-left"]
			if j.From == j.Left {
				add(does+r+" into the "+l, toRight, right.U.Lo, j.Front, j.Low)
			} else {
				add(does+l+" into the "+r, geom.Dir{Axis: geom.U, Neg: true}, left.U.Hi, j.Rear, j.High)
			}
		}
		for _, box := range run.Boxes {
			if box.Kind != model.Cabinet {
				continue
			}
			of := func(part string) geom.Box { return parts[box.Key()+"/"+part] }
			does, side, strip := "make cabinet "+box.Name+": the ", of("side-left"), of("stretcher-rear")
			for id, what := range map[string]string{"bottom": "bottom", "top": "full top", "stretcher-front": "front stretcher", "stretcher-rear": "rear stretcher", "toe-kick": "toe kick", "fixed-shelf-1": "fixed shelf"} {
				add(does+"left side into the "+what, toRight, side.U.Lo, of(id).V.Mid(), of(id).Z.Mid())
			}
			if d := of("divider-1"); d.U.Hi > 0 {
				add(does+"bottom into the divider", upwards, d.U.Mid(), d.V.Mid(), of("bottom").Z.Lo)
				add(does+"full top into the divider", downwards, d.U.Mid(), d.V.Mid(), of("top").Z.Hi)
				add(does+"front stretcher into the divider", downwards, d.U.Mid(), of("stretcher-front").V.Mid(), of("stretcher-front").Z.Hi)
			}
			// Into what stands beside a rabbet, 1 mm from the inner face.
			add("hold the back of cabinet "+box.Name+": the back into the left side", toFront, side.U.Hi-1_000_000, of("back").V.Lo, side.Z.Mid())
			for _, first := range []string{"back", "rear stretcher"} {
				rear := max(of("back").V.Hi, strip.V.Hi)
				for _, hold := range []string{"a stud", "its plug"} {
					add("hold cabinet "+box.Name+" to the wall: the "+first+" into "+hold, toRear, strip.U.Lo+60_000_000, rear, strip.Z.Mid())
				}
			}
		}
	}
	for _, k := range b.KneeWalls {
		add := func(key string, way geom.Dir, u, v, z geom.Length) { out[key] = shot{k.Frame, place{u, v, z}, way} }
		f, first := k.Framing, k.Studs[0]
		frame := "frame knee wall " + k.Name + ": the "
		add(frame+"lower plate into the stud", upwards, first, f.V.Mid(), 0)
		add(frame+"upper plate into the stud", downwards, first, f.V.Mid(), f.Z.Hi)
		add("hold knee wall "+k.Name+" to the floor: the lower plate into the floor", downwards, first+100_000_000, f.V.Mid(), parts["knee_wall."+k.Name+"/plate-lower"].Z.Hi)
		for _, line := range k.Lines {
			strip, back := parts["cabinet."+line.Box+"/stretcher-rear"], parts["cabinet."+line.Box+"/back"]
			for _, head := range []string{"back", "rear stretcher"} {
				add("hold cabinet "+line.Box+" to knee wall "+k.Name+": the "+head+" into the stud", toRear, k.Studs[line.Stud-1], max(strip.V.Hi, back.V.Hi), strip.Z.Mid())
			}
		}
		s := k.Supports[0]
		add("go down through the support plates: the support plate into the upper plate", downwards, s.Centre, s.Steel.V.Hi-10_000_000, s.Steel.Z.Hi)
		for _, slab := range b.Slabs {
			if slab.Name == k.BarTop {
				for _, id := range slab.Parts {
					add("go up through the support plates into the bar top: the support plate into the "+partName(b, id), upwards, s.Centre, s.Steel.V.Lo+50_000_000, s.Steel.Z.Lo)
				}
			}
		}
	}
	for _, src := range b.Source.Top("run") {
		for _, a := range src.Inner("anchor") {
			block, toe := parts["anchor."+a.Name+"/block"], parts[b.Ref(a, "under").Key()+"/toe-kick"]
			for _, run := range b.Runs {
				if run.Name == src.Name {
					out["hold anchor "+a.Name+": the toe kick into the anchor block"] = shot{run.Frame, place{block.U.Mid(), toe.V.Hi, block.Z.Mid()}, toRear}
				}
			}
		}
	}
	return out
}

func partName(b *rule.Build, id string) string {
	i := slices.IndexFunc(b.Parts, func(p model.Part) bool { return p.ID == id })
	return b.Parts[i].Name
}
