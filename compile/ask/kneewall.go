package ask

import "barwright/compile/model"

// screwLines tells for each cabinet where screws from inside it find the studs
// of the knee wall behind it.
func (p *placer) screwLines(k *model.KneeWall) {
	for i := 0; i < len(k.Lines); {
		line := k.Lines[i]
		var at []model.Length
		for _, l := range k.Lines {
			if l.Box == line.Box {
				at = append(at, l.FromLeft)
			}
		}
		name := "cabinet." + line.Box + "." + place + ".studs"
		p.lengths(name, "of the knee wall behind it, from the inner face of its left side", at...)
		p.span(name+".z", "where a screw finds them, "+p.above, line.Z)
		i += len(at)
	}
}
