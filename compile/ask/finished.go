package ask

import (
	"fmt"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/finding"
)

// fronts adds where each front of a cabinet stands, its banding included, where
// a door's hinges are, and what the box of a drawer fills.
func (p *placer) fronts(name string, fronts []model.Front) {
	for _, f := range fronts {
		at := name + "." + strings.ReplaceAll(f.Name, " ", "_")
		p.extent(at, f.Place)
		switch f.Kind {
		case model.Door:
			p.words(at+".hinged", "the side that it hangs on", f.Hinged.String())
			p.lengths(at+".hinges", "heights above the floor", f.Hinges...)
		case model.Drawer:
			p.extent(at+".box", f.Box)
		}
	}
}

func (p *placer) kneeWall(k *model.KneeWall) {
	name := "knee_wall." + k.Name
	at := name + "." + place
	p.box(name, k.Framing)
	p.lengths(at+".studs", "centres, from the left end of its run", k.Studs...)
	for i, u := range k.Uneven {
		side := "right"
		if u.Off < 0 {
			side = "left"
		}
		p.length(at+".uneven."+strconv.Itoa(i+1),
			fmt.Sprintf("to the %s: how far %s stands from where the rule alone would put it, because of %s", side, u.What, u.By), max(u.Off, -u.Off))
	}
	for i, l := range k.Lines {
		screws := at + ".screws." + strconv.Itoa(i+1)
		p.length(screws+".from_left", fmt.Sprintf("stud %d, in cabinet %s: from the inner face of its left side", l.Stud, l.Box), l.FromLeft)
		p.span(screws+".z", "above the floor", l.Z)
	}
	for i := range k.Outlets {
		p.kneeOutlet(&k.Outlets[i])
	}
	for i := range k.Skins {
		p.skin(&k.Skins[i])
	}
	if len(k.Supports) == 0 {
		return
	}
	var centres []model.Length
	for _, s := range k.Supports {
		centres = append(centres, s.Centre)
	}
	p.lengths(name+".supports."+place+".centres", "from the left end of its run", centres...)
}

func (p *placer) kneeOutlet(o *model.KneeOutlet) {
	at := "outlet." + o.Name + "." + place
	p.words(at+".face", "of the knee wall", o.Face)
	p.extent(at+".box", o.Box)
	p.extent(at+".clear", o.Clear)
	p.length(at+".cover.centre", "from the left end of its run", o.Cover.U.Mid())
	says := "above the floor"
	if o.ByRule {
		says += "; it follows from the rule"
	}
	p.length(at+".cover.height", says, o.Cover.Z.Mid())
}

func (p *placer) skin(s *model.Skin) {
	at := "skin." + s.Name + "." + place
	p.extent(at, s.Box)
	if len(s.Seams) > 0 {
		p.lengths(at+".seams", "from the left end of its run", s.Seams...)
	}
	if len(s.Battens) > 0 {
		p.lengths(at+".battens", "centres, from the left end of its run", s.Battens...)
	}
}

// edges adds what is done to the edges and faces of a part.
func (p *placer) edges(name string, part *model.Part) {
	if banded := part.Banded(); banded != "" {
		var with []string
		for _, b := range part.Bands {
			if text := b.Stock + ", " + p.build.Show(b.Thickness); len(with) == 0 || with[len(with)-1] != text {
				with = append(with, text)
			}
		}
		p.words(name+".banded", "with "+strings.Join(with, "; ")+", beyond its size", banded)
	}
	if part.Good != model.GoodNone {
		p.words(name+".good", "the better faces, as it is drawn", part.Good.String())
	}
}

// bores adds a part's bores, those together that are alike and stand in a line.
func (p *placer) bores(name string, part *model.Part) {
	n := 0
	for _, like := range part.LikeBores() {
		for _, line := range inLine(like) {
			n++
			p.bore(name+".bore."+strconv.Itoa(n), line)
		}
	}
}

func (p *placer) bore(at string, line []model.Bore) {
	b := &line[0]
	face := "drawn"
	if b.Far {
		face = "far"
	}
	p.words(at+".name", finding.Counted(len(line), "bore")+", from the "+face+" face", b.Name)
	var xs, ys []model.Length
	for _, o := range line {
		if len(xs) == 0 || o.At.X != xs[0] {
			xs = append(xs, o.At.X)
		}
		if len(ys) == 0 || o.At.Y != ys[0] {
			ys = append(ys, o.At.Y)
		}
	}
	p.lengths(at+".x", "centres, from the left", xs...)
	p.lengths(at+".y", "centres, from below", ys...)
	p.length(at+".diameter", "", b.Diameter)
	if b.Through() {
		p.words(at+".depth", "", "through")
	} else {
		p.length(at+".depth", "", b.Depth)
	}
	if b.Slot > 0 {
		way := "x"
		if b.Across {
			way = "y"
		}
		p.length(at+".slot", "along "+way+", between the centres of its ends", b.Slot)
	}
	if b.Sink > 0 {
		p.length(at+".sink", "diameter of its countersink", b.Sink)
	}
}

// inLine parts bores that are alike into those that stand over one another, what
// is left into those side by side.
func inLine(like []model.Bore) [][]model.Bore {
	columns := sameLine(like, func(p geom.Point) model.Length { return p.X })
	var lines [][]model.Bore
	var single []model.Bore
	for _, c := range columns {
		if len(c) == 1 {
			single = append(single, c[0])
			continue
		}
		lines = append(lines, c)
	}
	return append(lines, sameLine(single, func(p geom.Point) model.Length { return p.Y })...)
}

func sameLine(bores []model.Bore, on func(geom.Point) model.Length) (lines [][]model.Bore) {
next:
	for _, b := range bores {
		for i := range lines {
			if on(lines[i][0].At) == on(b.At) {
				lines[i] = append(lines[i], b)
				continue next
			}
		}
		lines = append(lines, []model.Bore{b})
	}
	return lines
}

// marks adds the lines that are drawn on a part.
func (p *placer) marks(name string, part *model.Part) {
	for i, m := range part.Marks {
		at := name + ".mark." + strconv.Itoa(i+1)
		p.lengths(at+".from", m.Name+", x and y of its beginning", m.From.X, m.From.Y)
		p.lengths(at+".to", "and of its end", m.To.X, m.To.Y)
	}
}
