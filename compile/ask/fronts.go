package ask

import (
	"strconv"
	"strings"

	"barwright/compile/model"
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

// bores adds the holes and the lines of a part, as it is drawn.
func (p *placer) bores(name string, part *model.Part) {
	for i, b := range part.Bores {
		at := name + ".bore." + strconv.Itoa(i+1)
		p.lengths(at, b.Name+", its centre", b.At.X, b.At.Y)
		p.length(at+".diameter", "", b.Diameter)
		if b.Depth > 0 {
			p.length(at+".depth", "", b.Depth)
		}
	}
	for i, m := range part.Marks {
		at := name + ".mark." + strconv.Itoa(i+1)
		p.lengths(at+".from", m.Name, m.From.X, m.From.Y)
		p.lengths(at+".to", m.Name, m.To.X, m.To.Y)
	}
}
