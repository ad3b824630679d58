package ask

import (
	"strconv"

	"barwright/compile/model"
)

// gaps tells where the rears of runs stand off walls that were read, and what is packed
// behind each cabinet.
func (p *placer) gaps(s *model.Setting) {
	for _, r := range s.Rears {
		p.length("run."+r.Run+"."+place+".rear", "out from the straight plane of wall "+r.Wall, r.Off)
	}
	count := map[string]int{} // by cabinet; lookup only
	for i := range s.Gaps {
		g := &s.Gaps[i]
		count[g.Box]++
		p.length(g.Box+"."+place+".gap."+strconv.Itoa(count[g.Box]),
			"to its wall, "+p.build.Show(g.Along)+" along that and "+p.build.Show(g.Height)+" up, where a screw goes in", g.Gap)
	}
}
