package ask

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// place is the word after which names stand that no expression can use: they
// are known only once everything stands in its place.
const place = "placed"

// NeedsPlacing reports whether a name is one that only a sound build has.
func NeedsPlacing(name string) bool {
	return slices.Contains([]string{"part", "work", "setting", "ways"}, name) || strings.HasPrefix(name, "part.") || strings.Contains(name+".", "."+place+".")
}

// Placed lists where things stand in a model, in its order, without its parts.
func Placed(m *model.Model) []model.Answer {
	p := stood(m)
	return p.out
}

// placed lists where things stand in a model, and its parts.
func placed(m *model.Model) []model.Answer {
	p := stood(m)
	p.owned()
	for i := range m.Parts {
		p.part(&m.Parts[i])
	}
	return p.out
}

func stood(m *model.Model) *placer {
	p := &placer{build: m.Build, line: m.Room.Floor.Line, above: "above " + m.Room.Floor.Zero(), parts: map[string][]string{}, passes: map[string][]string{}}
	p.gather(m.Parts)
	boxes := 0
	for i := range m.Runs {
		boxes += len(m.Runs[i].Boxes)
	}
	p.out = make([]model.Answer, 0, 16*boxes)
	for i := range m.Room.Walls {
		p.wall(&m.Room.Walls[i])
	}
	p.floor(&m.Room.Floor)
	for i := range m.Runs {
		p.run(&m.Runs[i])
	}
	for i := range m.KneeWalls {
		p.kneeWall(&m.KneeWalls[i])
	}
	for i := range m.Slabs {
		p.slab(&m.Slabs[i])
	}
	p.shims(m.Setting.Shims)
	for i := range m.Drains {
		p.drain(m, &m.Drains[i])
	}
	p.ways(m)
	p.gaps(&m.Setting)
	return p
}

type placer struct {
	build  model.Build
	line   model.Length // that the floor was read from, over the datum; 0 where it was not read
	above  string       // what heights are: "above the floor", "above the datum"
	out    []model.Answer
	owners []string            // keys of blocks that have parts, in order
	parts  map[string][]string // their labels; lookup only
	passes map[string][]string // labels by what they let through; lookup only
}

// gather notes which parts a block has, and which let a thing through.
func (p *placer) gather(parts []model.Part) {
	for i := range parts {
		part := &parts[i]
		owner := part.Block()
		if p.parts[owner] == nil {
			p.owners = append(p.owners, owner)
		}
		p.parts[owner] = append(p.parts[owner], part.Label)
		for _, o := range part.Openings {
			key := strings.ReplaceAll(o.Name, " ", ".")
			p.passes[key] = append(p.passes[key], part.Label)
		}
	}
}

func (p *placer) add(name string, a model.Answer) {
	a.Name, a.Origin = name, model.FromPlacing
	p.out = append(p.out, a)
}

func (p *placer) words(name, means, text string) {
	p.add(name, model.Answer{Kind: model.AsText, Text: text, Means: means})
}

func (p *placer) length(name, means string, l model.Length) {
	p.add(name, model.Answer{Kind: model.AsLength, Text: p.build.Show(l), Lengths: []model.Length{l}, Means: means})
}

func (p *placer) lengths(name, means string, ls ...model.Length) {
	texts := make([]string, len(ls))
	for i, l := range ls {
		texts[i] = p.build.Show(l)
	}
	p.add(name, model.Answer{Kind: model.AsList, Text: "[" + strings.Join(texts, ", ") + "]", Lengths: ls, Means: means})
}

func (p *placer) span(name, means string, s geom.Span) {
	p.add(name, model.Answer{
		Kind: model.AsSpan, Text: p.build.Show(s.Lo) + " … " + p.build.Show(s.Hi),
		Lengths: []model.Length{s.Lo, s.Hi}, Means: means,
	})
}

// extent adds the three directions of a box in the coordinates of its run.
func (p *placer) extent(name string, box geom.Box) {
	p.span(name+".u", "from the left end of its run", box.U)
	p.span(name+".v", "out from the rear of the boxes", box.V)
	p.span(name+".z", p.above, box.Z)
}

func (p *placer) box(block string, box geom.Box) { p.extent(block+"."+place, box) }

// between is a box that stands from a value "left" of its block to a value "right".
func (p *placer) between(block string, box geom.Box) {
	u := len(p.out)
	p.box(block, box)
	p.out[u].From = []string{block + ".left", block + ".right"}
}

func (p *placer) inRoom(name, of string, f geom.Frame, u, v, z model.Length) {
	at := f.At(u, v)
	p.lengths(name, of+", x y z in the room", at.X, at.Y, z)
}

func (p *placer) turn(name string, f geom.Frame) {
	p.words(name, "clockwise in plan, from the first wall's direction", degrees(f.Turn))
}

// degrees prints an angle in full, from 0 to under 360.
func degrees(a geom.Angle) string {
	a = (a%(360*geom.Degree) + 360*geom.Degree) % (360 * geom.Degree)
	return strconv.FormatFloat(a.Degrees(), 'f', -1, 64) + " degrees"
}

func (p *placer) wall(w *model.Wall) {
	at := "wall." + w.Name + "." + place
	p.inRoom(at+".room", "its left end", w.Frame, 0, 0, 0)
	p.turn(at+".turn", w.Frame)
	if len(w.Studs) > 0 {
		p.lengths(at+".studs", "centres, from the wall's left end", w.Studs...)
	}
	if w.Base.Height > 0 {
		p.span(at+".baseboard.along", "along the wall; "+p.build.Show(w.Base.Height)+" high, "+p.build.Show(w.Base.Thickness)+" thick", w.Base.Along)
	}
	for _, o := range w.Outlets {
		p.onWall(cmp.Or(o.Kind, "outlet")+"."+o.Name, w, o.Along, o.Height)
	}
	for _, v := range w.Vents {
		p.onWall("vent."+v.Name, w, v.Along, v.Height)
	}
	for _, s := range w.Stubs {
		p.onWall("stub."+s.Name, w, s.Along, s.Height)
	}
	if through := p.passes["baseboard."+w.Name]; len(through) > 0 {
		p.words(at+".baseboard", "the parts that are notched for it", strings.Join(through, ", "))
	}
}

func (p *placer) onWall(name string, w *model.Wall, along, height model.Length) {
	of := "its centre"
	if p.line != 0 {
		side := " below"
		if height > p.line {
			side = " above"
		}
		of += ", " + p.build.Show(length.Round(length.Apart(p.line, height), p.build.Marks)) + side + " the line that the floor was read from"
	}
	p.inRoom(name+"."+place+".room", of, w.Frame, along, 0, height)
	if through := p.passes[name]; len(through) > 0 {
		p.words(name+"."+place+".through", "the parts that let it through", strings.Join(through, ", "))
	}
}

func (p *placer) run(r *model.Run) {
	at := "run." + r.Name + "." + place
	p.inRoom(at+".room", "its rear left corner", r.Frame, 0, 0, 0)
	p.turn(at+".turn", r.Frame)
	if len(r.Free) > 0 {
		ends := make([]string, len(r.Free))
		for i, e := range r.Free {
			ends[i] = e.String()
		}
		p.words(at+".free", "the ends that meet no wall", strings.Join(ends, ", "))
	}
	for i, j := range r.Joints {
		p.joint(at+".joint."+strconv.Itoa(i+1), j)
	}
	for _, b := range r.Boxes {
		name := b.Key()
		p.between(name, b.Hull)
		switch b.Kind {
		case model.Cabinet:
			p.extent(name+"."+place+".inside", b.Inside)
			p.fronts(name+"."+place, b.Fronts)
			for i, leg := range b.Legs {
				p.extent(name+"."+place+".leg."+strconv.Itoa(i+1), leg)
			}
		case model.Bay:
			p.extent(name+"."+place+".appliance", b.Appliance)
		}
	}
}

// joint tells where the screws of two cabinets go.
func (p *placer) joint(name string, j model.Joint) {
	from := "from cabinet " + j.From
	if j.Plates {
		from += ", those near the front behind hinge plates"
	}
	p.words(name, "of cabinets "+j.Left+" and "+j.Right+": where its screws are driven from", from)
	p.lengths(name+".v", "out from the rear of the boxes", j.Rear, j.Front)
	p.lengths(name+".z", p.above, j.Low, j.High)
}

func (p *placer) slab(s *model.Slab) {
	name := s.Key()
	p.box(name, s.Box)
	if len(s.Seams) > 0 {
		p.lengths(name+"."+place+".seams", "from the left end of its run", s.Seams...)
	}
	for _, c := range s.Cuts {
		cut := c.Kind + "." + c.Name
		p.box(cut, c.Box)
		p.words(cut+"."+place+".through", "the part that it is cut out of", strings.Join(p.passes[cut], ", "))
	}
}

func (p *placer) kneeWall(k *model.KneeWall) {
	name := "knee_wall." + k.Name
	p.between(name, k.Framing)
	p.lengths(name+"."+place+".studs", "centres, from the left end of its run", k.Studs...)
	p.screwLines(k)
	p.finished(k)
	if len(k.Supports) == 0 {
		return
	}
	var centres []model.Length
	for _, s := range k.Supports {
		centres = append(centres, s.Centre)
	}
	p.lengths(name+".supports."+place+".centres", "from the left end of its run", centres...)
}

// owned lists the parts of each block.
func (p *placer) owned() {
	for _, owner := range p.owners {
		p.words(owner+"."+place+".parts", "", strings.Join(p.parts[owner], ", "))
	}
}

func (p *placer) part(part *model.Part) {
	name := "part." + part.Label
	p.out = append(p.out, model.Answer{
		Name: name, Kind: model.AsBlock, Means: part.Name + " of " + part.Owner,
		At: part.Why.At, Says: "asked for by " + part.Why.Block,
	})
	x, y := part.Size()
	p.lengths(name+".size", "over all, x and y as it is drawn", x, y)
	p.length(name+".thickness", "", part.Thickness)
	p.add(name+".stock", model.Answer{Kind: model.AsReference, Text: part.Stock, Means: part.Material})
	p.words(name+".face", "the one that is drawn", part.Face)
	p.words(name+".grain", "", grains[part.Grain])
	p.extent(name, part.Placement.Box)
	box := part.Placement.Box
	p.inRoom(name+".room", "its least corner", part.Placement.Frame, box.U.Lo, box.V.Lo, box.Z.Lo)
	p.openings(name, part)
	p.recesses(name, part)
	p.bores(name, part)
	p.marks(name, part)
	p.faces(name, part)
}

var grains = [...]string{model.GrainNone: "none", model.GrainX: "along x", model.GrainY: "along y"}

func (p *placer) openings(name string, part *model.Part) {
	times := map[string]int{} // lookup only
	for _, o := range part.Openings {
		at := name + "." + strings.ReplaceAll(o.Name, " ", ".")
		if times[o.Name]++; times[o.Name] > 1 {
			at += "." + strconv.Itoa(times[o.Name])
		}
		what := "opening"
		if o.Notch {
			what = "notch"
		}
		p.shape(at, what, o.Shape)
		if centre, radius, round := o.Shape.Circle(); round {
			p.lengths(at+".centre", "it is round, "+p.build.Show(2*radius)+" across", centre.X, centre.Y)
		} else if radius, alike := o.Shape.Rounding(); alike && radius > 0 {
			p.length(at+".radius", "of its round corners or end", radius)
		}
		if len(o.Corners) > 0 {
			var xy []model.Length
			for _, c := range o.Corners {
				xy = append(xy, c.X, c.Y)
			}
			p.lengths(at+".bores", "x and y of each hole bored first, "+p.build.Show(o.Bit)+" across", xy...)
		}
	}
}

func (p *placer) recesses(name string, part *model.Part) {
	for i, r := range part.Recesses {
		at := name + ".recess." + strconv.Itoa(i+1)
		p.shape(at, r.Name, r.Shape)
		p.length(at+".depth", openSides(r.Open), r.Depth)
		if r.Radius > 0 {
			p.length(at+".radius", "of its inner corners", r.Radius)
		}
	}
}

func openSides(open []model.Edge) string {
	if len(open) == 0 {
		return "closed all round"
	}
	sides := make([]string, len(open))
	for i, e := range open {
		sides[i] = e.String()
	}
	return fmt.Sprintf("open at the %s edge", strings.Join(sides, " and "))
}

// shape adds what a cut covers, counted from the edges of the part's blank.
func (p *placer) shape(name, what string, c geom.Contour) {
	b := c.Bounds()
	p.span(name+".x", what+", from the left", b.X)
	p.span(name+".y", what+", from below", b.Y)
}
