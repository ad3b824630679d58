package revise

import (
	"barwright/compile/model"
	"barwright/compile/reuse"
)

// fates gives the pieces to the parts.
func fates(p *reuse.Pair, o Options) []model.Fate { return nil }
