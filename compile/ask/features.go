package ask

import (
	"strconv"
	"strings"

	"barwright/compile/model"
)

// bores lists the holes of a part, each by its centre.
func (p *placer) bores(name string, part *model.Part) {
	for i, b := range part.Bores {
		means := b.Name + ", " + p.build.Show(b.Diameter) + " across, "
		if b.Depth == 0 {
			means += "through"
		} else {
			means += p.build.Show(b.Depth) + " deep"
		}
		if b.Far {
			means += ", from the face behind"
		}
		p.lengths(name+".bore."+strconv.Itoa(i+1), means, b.At.X, b.At.Y)
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
