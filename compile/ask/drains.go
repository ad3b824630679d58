package ask

import (
	"strings"

	"barwright/compile/model"
)

// drain tells the heights of a drain's pipe and what it needs.
func (p *placer) drain(m *model.Model, d *model.Drain) {
	at, way := d.Key()+"."+place, m.WayOf(d)
	p.length(at+".bowl", "underside of the bowl", d.Bowl)
	p.length(at+".outlet", "middle of the pipe where it leaves the trap", d.Outlet)
	p.length(at+".weir", "over which water leaves the trap", d.Weir)
	p.length(at+".trap", "underside of the trap", d.Under)
	p.length(at+".under_bowl", "from the bowl to the pipe, for strainer, tailpiece and trap", d.Bowl-d.Outlet)
	p.length(at+".end", "middle of the pipe at the end of the stub", d.End)
	p.length(at+".arm", "from the trap to the wall", d.Arm)
	p.length(at+".fall", "over the arm", d.Fall)
	p.length(at+".pipe", "from the trap to the end of the stub", way.Length)
	if through := p.passes[d.Key()]; len(through) > 0 {
		p.words(at+".through", "the parts that are bored for it", strings.Join(through, ", "))
	}
}
