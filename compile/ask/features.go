package ask

import (
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/lang/length"
)

// bores lists the holes of a part, each by its centre.
func (p *placer) bores(name string, part *model.Part) {
	for i, b := range part.Bores {
		means := b.Name + ", " + p.tool(b.Diameter) + " across, "
		if b.Slot > 0 {
			means += p.tool(b.Slot+b.Diameter) + " long along " + slotAlong(b.Across) + ", "
		}
		if b.Through() {
			means += "through"
		} else {
			means += p.tool(b.Depth) + " deep"
		}
		if b.Sink > 0 {
			means += ", sunk to " + p.tool(b.Sink)
		}
		if b.Far {
			means += ", from the face behind"
		}
		p.lengths(name+".bore."+strconv.Itoa(i+1), means, b.At.X, b.At.Y)
	}
}

// tool writes the size of a bit or of what belongs to a system of fittings.
func (p *placer) tool(l model.Length) string {
	if p.build.Metric(l, length.Millimetre/10) {
		return l.Decimal(length.Millimetres, 1) + " mm"
	}
	return p.build.Show(l)
}

func slotAlong(across bool) string {
	if across {
		return "y"
	}
	return "x"
}

// marks adds the lines that are drawn on a part.
func (p *placer) marks(name string, part *model.Part) {
	for i, m := range part.Marks {
		at := name + ".mark." + strconv.Itoa(i+1)
		p.lengths(at+".from", m.Name, m.From.X, m.From.Y)
		p.lengths(at+".to", m.Name, m.To.X, m.To.Y)
	}
}

// faces tells the edges that are banded, and the good faces.
func (p *placer) faces(name string, part *model.Part) {
	if len(part.Bands) > 0 {
		edges := make([]string, len(part.Bands))
		for i, b := range part.Bands {
			edges[i] = b.Edge.String() + " edge, " + p.build.Show(b.Thickness)
		}
		p.words(name+".banded", "not in its size", strings.Join(edges, "; "))
	}
	if part.Good != model.GoodNone {
		p.words(name+".good", "the face of its board that is seen", goodFaces[part.Good])
	}
}

var goodFaces = [...]string{model.GoodDrawn: "the drawn one", model.GoodFar: "the one behind", model.GoodBoth: "both"}
