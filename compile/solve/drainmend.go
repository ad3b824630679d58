package solve

import (
	"slices"

	"barwright/compile/drainway"
	"barwright/compile/geom"
	"barwright/lang"
	"barwright/lang/length"
)

// mostTried is past how many things that stop a drain other heights of its stub are tried.
const mostTried = 8

// stubBy is how much higher the stub of a drain that is stopped would be where nothing stops
// it: over or under one of the things that stop it now. Of such heights, each of which is
// laid to see, it is the one that is nearest; 0 where none is found.
func (s *solver) stubBy(p *plumbing, b *lang.Block, ask *drainway.Ask, way *drainway.Way) (by geom.Length) {
	r := ask.Diameter / 2
	for _, i := range way.Stopped[:min(mostTried, len(way.Stopped))] {
		box := ask.Solids[i].Box
		for _, h := range []geom.Length{
			length.Down(box.Z.Lo-r-way.Fall, s.Marks),
			length.Up(box.Z.Hi+r, s.Marks),
		} {
			if d := h - ask.Height; (by == 0 || length.Apart(d, 0) < length.Apart(by, 0)) && s.drainsAt(h, p, b, ask) {
				by = d
			}
		}
	}
	return by
}

// drainsAt reports whether a drain would be stopped by nothing with its stub at a height, with room
// for its trap between the bowl and what is under it, and for the stub.
func (s *solver) drainsAt(height geom.Length, p *plumbing, b *lang.Block, ask *drainway.Ask) bool {
	other := *ask
	other.Height = height
	other.Trap.Z = p.trapAt(height, ask.Hang)
	way := drainway.Lay(&other)
	outlet := height + way.Fall
	d := &p.drain
	weir := max(outlet, other.Hang) - d.TrapSize/2
	if height < ask.Diameter/2 || len(way.Stopped) > 0 || outlet+s.FieldLength(b, "trap", "drop") > d.Bowl {
		return false
	}
	if d.Vent == "wall" && (weir-d.Seal-d.Diameter < p.box.Inside.Z.Lo || d.Bowl-weir > s.limit("tailpiece")) {
		return false
	}
	face := s.faceAt(p.wall, p.stub.Along, height)
	stub := p.run.Frame.Around(p.wall.Frame, geom.Box{U: geom.About(p.stub.Along, p.stub.Diameter), V: geom.Span{Lo: face, Hi: face + p.stub.StandsOut}, Z: geom.About(height, p.stub.Diameter)})
	return !slices.ContainsFunc(ask.Solids, func(o drainway.Solid) bool {
		passed := o.Bores != nil && o.Axis != geom.Z // cut for the stub where that stands
		return o.Box.Overlaps(other.Trap) || o.Box.Overlaps(stub) && !passed
	})
}
