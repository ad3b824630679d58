package screws

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/finding"
)

// hit is a bore that a joint screw comes too near.
type hit struct {
	bore, side string      // "shelf pin", "the left side of kegs"
	apart      geom.Length // from centre to centre
	need       geom.Length // half of both diameters
}

// hits is the bore in either side that a screw of a joint is too near by most; none
// where it is clear of all. The screw passes the side of the box that it is driven from,
// and goes some way into the other.
func (g *gripper) hits(k *grip, j *model.Joint) (worst hit) {
	into := entersBy(g.Build, k)
	for _, side := range []struct{ box, id, name string }{
		{j.Left, "/side-right", "the right side of "}, {j.Right, "/side-left", "the left side of "},
	} {
		p := g.Part("cabinet." + side.box + side.id)
		for i := range p.Bores {
			bore := &p.Bores[i]
			if side.box != j.From && !bore.Through() && bore.Depth+into <= p.Thickness {
				continue // the tip does not come so far
			}
			h := hit{bore.Name, side.name + side.box, nearestScrew(p, bore.At, j), (bore.Diameter + g.Length(k.screw, "diameter")) / 2}
			if h.need-h.apart > worst.need-worst.apart {
				worst = h
			}
		}
	}
	return worst
}

// nearestScrew is how far a point on the face of a side is from the nearest screw of a joint.
func nearestScrew(p *model.Part, at geom.Point, j *model.Joint) geom.Length {
	best := math.Inf(1)
	for _, v := range []geom.Length{j.Rear, j.Front} {
		for _, z := range []geom.Length{j.Low, j.High} {
			face, _ := p.Placement.Local(geom.Box{V: geom.About(v, 0), Z: geom.About(z, 0)})
			x, y := float64(face.X.Lo-at.X), float64(face.Y.Lo-at.Y)
			best = min(best, float64(x*x)+float64(y*y))
		}
	}
	return geom.Length(math.Round(math.Sqrt(best)))
}

func jointScrewInBore(b *rule.Build) {
	eachScrew(b, func(g *grip) geom.Length { return g.hit.need - g.hit.apart }, func(g *grip, _, _ []grip) *finding.Finding {
		f := b.Findings.Notef("joint-screw-in-bore", g.at, "The screws that %s meet the bore for a %s in %s: from centre to centre they are %s apart, %s too near.",
			g.does, g.hit.bore, g.hit.side, b.Show(g.hit.apart), b.Show(g.hit.need-g.hit.apart))
		f.Mend = "another from_end of the hinges, or from_front of the pins"
		return f
	})
}
