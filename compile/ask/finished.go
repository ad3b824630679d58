package ask

import (
	"fmt"
	"strconv"
	"strings"

	"barwright/compile/model"
)

// finished adds what lies on the framing of a knee wall, what stands in it, and
// what moved its studs.
func (p *placer) finished(k *model.KneeWall) {
	for i, u := range k.Uneven {
		side := "right"
		if u.Off < 0 {
			side = "left"
		}
		p.length("knee_wall."+k.Name+"."+place+".uneven."+strconv.Itoa(i+1),
			fmt.Sprintf("to the %s: how far %s stands from where the rule alone would put it, because of %s", side, u.What, u.By), max(u.Off, -u.Off))
	}
	for i := range k.Outlets {
		p.kneeOutlet(&k.Outlets[i])
	}
	for i := range k.Skins {
		p.skin(&k.Skins[i])
	}
}

func (p *placer) kneeOutlet(o *model.KneeOutlet) {
	at := "outlet." + o.Name + "." + place
	p.words(at+".face", "of the knee wall", o.Face)
	p.extent(at+".box", o.Box)
	p.extent(at+".clear", o.Clear)
	p.length(at+".cover.centre", "from the left end of its run", o.Cover.U.Mid())
	says := p.above
	if o.ByRule {
		says += "; it follows from the rule"
	}
	p.length(at+".cover.height", says, o.Cover.Z.Mid())
	if through := p.passes["outlet."+o.Name]; len(through) > 0 {
		p.words(at+".through", "the parts that let it through", strings.Join(through, ", "))
	}
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
