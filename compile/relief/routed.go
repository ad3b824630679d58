package relief

import (
	"math"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// Routed returns a part as its router leaves it: where programs bore the corners of
// recesses, these bores belong to the recesses' shapes. Without any it returns the part
// itself.
func Routed(p *model.Part, programs []model.Program) *model.Part {
	out := p
	for i := range p.Recesses {
		r := &p.Recesses[i]
		if !r.Routed {
			continue
		}
		k := slices.IndexFunc(programs, func(g model.Program) bool { return !g.Test && g.RecessID == r.ID })
		if k < 0 || len(programs[k].Reliefs) == 0 {
			continue
		}
		if out == p {
			whole := *p
			whole.Recesses = slices.Clone(p.Recesses)
			out = &whole
		}
		g := &programs[k]
		out.Recesses[i].Shape = bored(r.Shape.Bounds(), g.Reliefs, g.Mark, g.Tool.Diameter)
	}
	return out
}

// bored is a rectangle with half rounds at the corners that bores of a bit's size pass
// through. Their centres count from zero in x.
func bored(r geom.Rect, centres []geom.Point, zero, bit Length) geom.Contour {
	var out geom.Contour
	for i, corner := range geom.RectContour(r) {
		c, found := boreAt(corner.Point, centres, zero, bit)
		if !found {
			out = append(out, corner)
			continue
		}
		// The bore's edge passes the corner: it meets both sides twice as far off as its centre is.
		onX, onY := corner, corner
		onX.X += 2 * (c.X - corner.X)
		onY.Y += 2 * (c.Y - corner.Y)
		ends := [2]geom.Vertex{onY, onX}
		if i%2 == 1 {
			ends = [2]geom.Vertex{onX, onY}
		}
		ends[0].Bulge = 1
		out = append(out, ends[0], ends[1])
	}
	return out
}

func boreAt(corner geom.Point, centres []geom.Point, zero, bit Length) (geom.Point, bool) {
	for _, c := range centres {
		c.X += zero
		d := c.Sub(corner)
		if math.Hypot(float64(d.X), float64(d.Y)) <= float64(bit)/2+least {
			return c, true
		}
	}
	return geom.Point{}, false
}
