package dxf

import (
	"barwright/compile/model"
	"barwright/compile/relief"
)

// relieved is the part as it is to be cut: its inside corners cleared, where that is
// asked for.
func relieved(p *model.Part, opt *Options) *model.Part {
	if !opt.relieves() {
		return p
	}
	return relief.Part(p, opt.Relief, opt.Bit)
}

func (o *Options) relieves() bool { return o.Relief == relief.Diagonal || o.Relief == relief.LongSide }
