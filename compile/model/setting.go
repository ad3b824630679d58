package model

import (
	"strings"

	"barwright/compile/geom"
	"barwright/lang"
)

// Setting is how the boxes and the framing are set in the room.
type Setting struct {
	Step  Length        // that shims come in
	Shims []Shim        // under all that bears on a floor that was read, in the order of the build
	Rears []Rear        // of runs against walls that were read
	Gaps  []Gap         // behind their cabinets
	Steps []SettingStep // in their order; none where it was not looked for
}

// Shim is what brings one bearing point up to its height: a shim between it and the floor
// or, under legs and feet, their own thread.
type Shim struct {
	Of     string     // key of what bears there: "cabinet.urn", "bay.cooler", "knee_wall.bar"
	Under  string     // the point: "rear left corner", "stud 3", "leg 2"
	At     geom.Point // in the room's plan
	Gap    Length     // from the datum down to the floor; negative where the floor is higher
	Thick  Length     // of the shim, rounded to what shims do; 0 where it is wound out instead
	Height Length     // from the floor up to what stands on it: of legs, feet and blocks; 0 of others
	Winds  bool       // a leg or a foot, which is wound out to its height
	Off    Length     // how far the point lies outside the readings; 0 within them
	Why    Why
}

// Words name what bears there: "knee wall bar".
func (s *Shim) Words() string { return BlockWords(s.Of) }

// BlockWords names a block by its key: "knee wall bar" is "knee_wall.bar".
func BlockWords(key string) string {
	kind, name, _ := strings.Cut(key, ".")
	return lang.KindWords(kind) + " " + name
}

// Left is what the rounding of shims leaves between the highest and the lowest of what
// stands on them, one step at most; what is wound out stands true.
func (s *Setting) Left() Length {
	var off geom.Span
	for i := range s.Shims {
		if shim := &s.Shims[i]; !shim.Winds {
			high := shim.Thick - shim.Gap
			off = off.Union(geom.Span{Lo: high, Hi: high})
		}
	}
	return off.Size()
}

// Range returns the least and the greatest of the gaps under bearing points.
func (s *Setting) Range() geom.Span {
	var out geom.Span
	for i, shim := range s.Shims {
		if gap := (geom.Span{Lo: shim.Gap, Hi: shim.Gap}); i == 0 {
			out = gap
		} else {
			out = out.Union(gap)
		}
	}
	return out
}
