package dxf

import (
	"strings"

	"barwright/lang/finding"
)

// relieved is the view of the part as it is to be cut: its inside corners cleared, where
// that is asked for.
func (v view) relieved(opt *Options) view {
	if opt.Relieve != nil {
		v.corners = opt.Relieve(v.part)
		v.part = v.corners.Part
	}
	return v
}

// reliefLines tell how many corners are cleared in this file, and which stay.
func (v view) reliefLines(opt *Options) (lines []string) {
	c, n := &v.corners, 0
	if !v.second {
		n += c.Outline
	}
	if !v.second && !opt.Without.Openings {
		n += c.Openings
	}
	recessed := !v.behind && !opt.Without.Recesses
	if recessed {
		n += c.Recesses
	}
	if n > 0 {
		lines = append(lines, finding.Counted(n, "corner")+" cleared for a bit of "+opt.show(opt.Bit))
	}
	if recessed && len(c.Narrow) > 0 {
		lines = append(lines, wrapped("too narrow for a bit of "+opt.show(opt.Bit)+", corners stay: "+strings.Join(c.Narrow, ", "))...)
	}
	return lines
}
