package dxf

import "barwright/compile/model"

// lostLines tell of work in the other face where there is some and all of it is left out,
// so that no file is written for it.
func (v view) lostLines(opt *Options) (lines []string) {
	whole := *opt
	whole.Without = model.Written{}
	if HasOther(v.part, *opt) || !HasOther(v.part, whole) {
		return nil
	}
	for _, line := range other(v.part, opt).workLines(&whole) {
		lines = append(lines, "OTHER FACE, in no file: "+line)
	}
	return lines
}
