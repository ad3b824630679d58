package rule

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// nearWall is how near the edge of a slab must come to a wall to cover what is flush
// in it.
const nearWall = 6 * length.Millimetre

// EdgeAt is where a slab lies against a wall, along it.
func EdgeAt(s *model.Slab, w *model.Wall) (along geom.Span, ok bool) {
	touches := 0
	for _, p := range s.Frame.Corners(s.Box.U, s.Box.V) {
		if u, v := w.Frame.Local(p); max(v, -v) < nearWall {
			if touches++; touches == 1 {
				along = geom.Span{Lo: u, Hi: u}
			}
			along = along.Union(geom.Span{Lo: u, Hi: u})
		}
	}
	along = along.Intersect(geom.Span{Hi: w.Length})
	return along, touches > 1 && along.Size() > 0
}
