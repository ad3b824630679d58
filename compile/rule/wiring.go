package rule

import (
	"fmt"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

var wiring = []Rule{
	{"ground-fault-missing", groundFaultMissing},
	{"wiring-not-judged", wiringNotJudged},
	{"box-overfilled", boxOverfilled},
	{"box-volume-unknown", boxVolumeUnknown},
	{"box-too-deep", boxTooDeep},
	{"box-behind-panel", boxBehindPanel},
	{"plug-out-of-reach", plugOutOfReach},
	{"cord-too-short", cordTooShort},
	{"no-air-path", noAirPath},
}

// nec reports whether the build is held to the published rules of wiring.
func (b *Build) nec() bool { return b.Text(b.Limits, "wiring") == "nec" }

// said reports whether the limits state one of some attributes.
func (b *Build) said(names ...string) bool {
	for _, name := range names {
		if b.Limits.Attr(name) != nil {
			return true
		}
	}
	return false
}

// device is an outlet or a switch of the build.
type device struct {
	block  *lang.Block
	wall   *model.Wall       // that it is in; nil of one in a knee wall
	in     *model.Outlet     // of a wall
	knee   *model.KneeOutlet // of a knee wall
	frame  geom.Frame        // of the wall, or of the knee wall's run
	panels []*model.Part     // that let it through
	// used is the rectangle of its box where it is used from: as far out of its wall
	// as the last of the panels, or on its face.
	used geom.Box
}

// devices lists outlets and switches: those of the walls, then those of knee walls.
func (b *Build) devices() []device {
	panels := b.panelsAround()
	var out []device
	for i := range b.Room.Walls {
		w := &b.Room.Walls[i]
		for j := range w.Outlets {
			o := &w.Outlets[j]
			d := device{block: b.Block(o.Kind + "." + o.Name), wall: w, in: o, frame: w.Frame, panels: panels[o.Why.At]}
			off := o.StandsOut
			for _, p := range d.panels {
				off = max(off, d.through(p))
			}
			d.used = geom.Box{U: geom.About(o.Along, o.Box.Width), V: geom.Span{Lo: off, Hi: off}, Z: geom.About(o.Height, o.Box.Height)}
			out = append(out, d)
		}
	}
	for i := range b.KneeWalls {
		k := &b.KneeWalls[i]
		for j := range k.Outlets {
			o := &k.Outlets[j]
			out = append(out, device{block: b.Block("outlet." + o.Name), knee: o, frame: k.Frame, used: geom.Box{U: o.Box.U, V: o.Cover.V, Z: o.Box.Z}})
		}
	}
	return out
}

// outlets are the devices that something can be plugged into.
func (b *Build) outlets() []device {
	return slices.DeleteFunc(b.devices(), func(d device) bool { return d.block.Spec.Kind != "outlet" })
}

// panelsAround finds the panels that let each thing of a wall through, by its place
// in the text.
func (b *Build) panelsAround() map[source.Range][]*model.Part {
	out := map[source.Range][]*model.Part{} // lookup only
	for i := range b.Parts {
		p := &b.Parts[i]
		for j := range p.Openings {
			at := p.Openings[j].Why.At
			if list := out[at]; len(list) == 0 || list[len(list)-1] != p {
				out[at] = append(list, p)
			}
		}
	}
	return out
}

// through is how far out of its wall the middle of a device leaves a panel; 0 where
// it misses it.
func (d *device) through(p *model.Part) geom.Length {
	f, box := p.Placement.Frame, p.Placement.Box
	nearU, nearV := f.Local(d.frame.At(d.in.Along, 0))
	farU, farV := f.Local(d.frame.At(d.in.Along, geom.Length(beyond)))
	enter, leave := 0.0, 1.0
	for _, c := range [][3]geom.Length{{nearU, farU, 0}, {nearV, farV, 1}} {
		on := box.Along(geom.Axis(c[2]))
		step := float64(c[1] - c[0])
		if step == 0 {
			if c[0] < on.Lo || c[0] > on.Hi {
				return 0
			}
			continue
		}
		s, t := float64(on.Lo-c[0])/step, float64(on.Hi-c[0])/step
		enter, leave = max(enter, min(s, t)), min(leave, max(s, t))
	}
	if enter > leave {
		return 0
	}
	return geom.Length(leave*beyond + 0.5)
}

// beyond is further than any panel that lets a device through stands off its wall.
const beyond = 10e9 // 10 m

func wiringNotJudged(b *Build) {
	if b.nec() || b.said("wiring", "ground_fault_within", "ground_fault_area") || len(b.outlets()) == 0 {
		return
	}
	for _, sink := range b.sinks() {
		b.Findings.Notef("wiring-not-judged", sink.Why.At,
			"There are outlets in a build with a sink, and a build in millimetres is held to nobody's rules of wiring unless it says to whose.").
			Mend = `limits { wiring = "none" } where that is meant, or limits { ground_fault_within = … } with the distance of the place`
		return
	}
}

// bowl is the sink of a counter.
type bowl struct {
	*model.SlabCut
	slab *model.Slab
}

func (b *Build) sinks() []bowl {
	var out []bowl
	for i := range b.Slabs {
		s := &b.Slabs[i]
		for j := range s.Cuts {
			if s.Cuts[j].Kind == "sink" {
				out = append(out, bowl{&s.Cuts[j], s})
			}
		}
	}
	return out
}

// rim is the upper edge of a bowl: that of its cut-out, just over the slab.
func (s *bowl) rim() []edge {
	top := s.slab.Box.Z.Hi + 2*geom.Length(sealed)
	return rim(s.slab.Frame, s.Box.With(geom.Z, geom.Span{Lo: top, Hi: top}))
}

func groundFaultMissing(b *Build) {
	if !b.nec() && !b.said("ground_fault_within", "ground_fault_area") {
		return
	}
	sinks := b.sinks()
	bare := slices.DeleteFunc(b.outlets(), func(d device) bool { return b.Flag(d.block, "ground_fault") })
	if len(sinks) == 0 || len(bare) == 0 {
		return
	}
	if b.Flag(b.Limits, "ground_fault_area") {
		d := bare[0]
		f := b.Findings.Warnf("ground-fault-missing", d.block.Head, groundFaultMend,
			"%s does not say that it is protected against ground faults. The limits ask it of every outlet in an area with a sink where food or drink is made, and there is sink %q.",
			finding.Capital(d.block.Describe()), sinks[0].Name)
		likewise(f, bare[1:])
		b.limitOf(f.Also(sinks[0].Why.At, "the sink"), "ground_fault_area")
		return
	}
	b.groundFaultReach(sinks, bare)
}

// likewise tells that the same holds of other devices, and where the first few are.
func likewise(f *finding.Finding, others []device) {
	switch n := len(others); {
	case n == 1:
		f.Text += " So it is with one other."
	case n > 1:
		f.Text += fmt.Sprintf(" So it is with %d others.", n)
	}
	for _, d := range others[:min(len(others), 3)] {
		f.Also(d.block.Head, "likewise")
	}
}

const groundFaultMend = "ground_fault = true, once it is protected"

// sealing is what the way off sealed barriers may be too long by: a hundredth of a
// millimetre, so that what is just on the limit is within it.
const sealing = 10_000

// groundFaultReach looks for outlets within a cord's reach of a bowl.
func (b *Build) groundFaultReach(sinks []bowl, bare []device) {
	reach := b.Length(b.Limits, "ground_fault_within")
	barriers := b.barriers()
	for _, d := range bare {
		to := rim(d.frame, d.off())
		best, nearest := float64(reach)+sealing, -1
		var shortest way
		for i := range sinks {
			from := sinks[i].rim()
			if least(from, to) > best {
				continue
			}
			if w, ok := shortestWay(from, to, within(barriers, from, best), best); ok && (nearest < 0 || w.length() < best) {
				best, nearest, shortest = w.length(), i, w
			}
		}
		if nearest < 0 {
			continue
		}
		sink, far := sinks[nearest], b.mark(best)
		b.limitOf(b.Findings.Warnf("ground-fault-missing", d.block.Head, groundFaultMend,
			"A cord from the rim of sink %q reaches %s in %s, %s. Outlets within %s are protected against ground faults; this one, %s, does not say so.",
			sink.Name, d.block.Describe(), b.Show(far), shortest.bends(), b.Show(reach), b.nearer(reach-far)).
			Also(sink.Why.At, "the sink"), "ground_fault_within")
	}
}

// off is where a cord ends at a device: just before the face that it is used from.
func (d *device) off() geom.Box {
	out := 2 * geom.Length(sealed)
	if d.knee != nil && d.knee.Face == "room" {
		out = -out
	}
	return d.used.With(geom.V, d.used.V.Shift(out))
}

// nearer says how far within a reach something is.
func (b *Build) nearer(by geom.Length) string {
	if by <= 0 {
		return "just as near"
	}
	return b.Show(by) + " nearer"
}

// mark is a way as a tape shows it.
func (b *Build) mark(nm float64) geom.Length {
	return geom.Length(nm/float64(b.Marks)+0.5) * b.Marks
}

// bends says how a way goes.
func (w *way) bends() string {
	if n := len(w.points) - 2; n > 0 {
		return "round " + finding.Counted(n, "edge")
	}
	return "straight"
}

// barriers lists what a cord does not pierce: the walls, the framing of knee walls,
// slabs, and the boards that stay where they are.
func (b *Build) barriers() []barrier {
	var out []barrier
	for i := range b.Room.Walls {
		w := &b.Room.Walls[i]
		out = append(out, barrierOf(w.Frame, geom.Box{U: geom.Span{Hi: w.Length}, V: geom.Span{Lo: -wallThickness}, Z: geom.Span{Lo: -1, Hi: wallHeight}}))
	}
	for i := range b.KneeWalls {
		out = append(out, barrierOf(b.KneeWalls[i].Frame, b.KneeWalls[i].Framing))
	}
	for i := range b.Slabs {
		out = append(out, barrierOf(b.Slabs[i].Frame, b.Slabs[i].Box))
	}
	for i := range b.Parts {
		if p := &b.Parts[i]; p.Kind == model.Panel && fixed(p) {
			out = append(out, barrierOf(p.Placement.Frame, p.Placement.Box))
		}
	}
	return out
}

// A wall of the room is as thick as no way through it could use, and higher than
// any way over it could be worth.
const (
	wallThickness = geom.Length(50_000_000)
	wallHeight    = geom.Length(100_000_000_000)
)

// fixed reports whether a board stays where it is: doors, drawers and shelves on
// pins do not, and strips on a skin are too thin to count.
func fixed(p *model.Part) bool {
	_, own, _ := strings.Cut(p.ID, "/")
	for _, name := range []string{"door", "drawer", "shelf", "batten", "cap", "strip-room", "strip-end"} {
		if own == name || strings.HasPrefix(own, name+"-") {
			return false
		}
	}
	return true
}

// within are the barriers that a way so long from a rim could meet.
func within(barriers []barrier, from []edge, most float64) []barrier {
	var out []barrier
	round := from[0][0].to(from[2][0])
	for i := range barriers {
		at, far := barriers[i].local(from[0][0]), 0.0
		for j := range at {
			off := max(barriers[i].lo[j]-at[j], at[j]-barriers[i].hi[j], 0)
			far += float64(off * off)
		}
		if reach := most + round; far <= float64(reach*reach) {
			out = append(out, barriers[i])
		}
	}
	return out
}

// least is less than any way between two rims.
func least(from, to []edge) float64 {
	round := from[0][0].to(from[2][0]) + to[0][0].to(to[2][0])
	return from[0][0].to(to[0][0]) - round
}
