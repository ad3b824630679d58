package ask

import (
	"strconv"

	"barwright/compile/model"
)

// floor tells where the datum is, and the line that the floor was read from.
func (p *placer) floor(f *model.Floor) {
	if len(f.Readings) == 0 {
		return
	}
	at := "room.floor." + place
	p.lengths(at+".datum", "x y in the room, where z is 0: under "+f.Bears, f.Datum.X, f.Datum.Y)
	p.length(at+".line", "of the readings, above the datum", f.Line)
}

// shims tells what is under each point of what bears on the floor, in its block.
func (p *placer) shims(shims []model.Shim) {
	count := map[string]int{} // by block; lookup only
	for i := range shims {
		s := &shims[i]
		count[s.Of]++
		name := s.Of + "." + place + ".shim." + strconv.Itoa(count[s.Of])
		means := s.Under + ", where the floor is " + p.build.Show(s.Gap) + " below the datum"
		if s.Winds {
			p.length(name, means+": wound out to", s.Height)
		} else {
			p.length(name, means, s.Thick)
		}
	}
}
