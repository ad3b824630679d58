package ask

import (
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
			p.lengths(at+".hinges", "heights "+p.above, f.Hinges...)
		case model.Drawer:
			p.extent(at+".box", f.Box)
		}
	}
}
