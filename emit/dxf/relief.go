package dxf

import "barwright/compile/model"

// relieved is the part as it is to be cut: its inside corners cleared, where that is
// asked for.
func relieved(p *model.Part, opt *Options) *model.Part {
	if opt.Relieve == nil {
		return p
	}
	return opt.Relieve(p)
}
