package view

import (
	"barwright/compile/geom"
	"barwright/compile/model"
)

// row is a row of texts beside a dimension line, each wanted at a mark, in
// rising order. Laying it fills texts and leads; a text that stands at its
// mark has no lead.
type row struct {
	want  []Length
	names []string
	texts []model.Text
	leads [][]geom.Point
}

func (r *row) add(want Length, name string) {
	r.want = append(r.want, want)
	r.names = append(r.names, name)
}

// layRow places the row's texts so that none meets another: beyond all that
// lies between them and the dimension line, which has its own distance. Texts
// that should run along the line but do not fit between the side's ends stand
// across it.
// It returns how far out they reach.
func (s *sheet) layRow(sd *side, r *row, st stance, line, beyond Length) Length {
	if len(r.want) == 0 {
		return beyond
	}
	air, tall := s.h/3, s.lineHeight()
	ends := sd.ends.Grow(-air)
	widths, sizes := make([]Length, len(r.want)), make([]Length, len(r.want))
	sum := air * Length(len(r.want)-1)
	for i, name := range r.names {
		widths[i] = s.width(name)
		sizes[i] = widths[i] + air
		sum += sizes[i]
	}
	if st == along && sum > ends.Size() {
		st = across
	}
	if st == across {
		for i := range sizes {
			sizes[i] = tall
		}
	}
	places := spread(r.want, sizes, ends)
	start := beyond + s.h*2/3
	if moved(r.want, places) || st == along {
		start = beyond + 3*s.h/2
	}
	depth := start
	for i, u := range places {
		reach := tall
		if st == across {
			reach = widths[i]
		}
		r.texts = append(r.texts, s.text(sd.at(u, start+reach/2), sd.turn(st), r.names[i]))
		var lead []geom.Point
		if start > beyond+s.h && (u != r.want[i] || st == along) {
			lead = []geom.Point{sd.at(r.want[i], line), sd.at(r.want[i], beyond), sd.at(u, start-air/2)}
		}
		r.leads = append(r.leads, lead)
		depth = max(depth, start+reach)
	}
	return depth
}

func moved(want, places []Length) bool {
	for i := range want {
		if want[i] != places[i] {
			return true
		}
	}
	return false
}

// spread returns the places nearest to those wanted, in the same order, at
// which things of the given sizes do not overlap. Where ends is not empty and
// holds them all, they stay within it. (Least squares under a fixed order:
// pools of neighbours that touch settle on their mean.)
func spread(want, sizes []Length, ends geom.Span) []Length {
	type pool struct{ sum, count Length }
	var pools []pool
	offs := make([]Length, len(want))
	for i, w := range want {
		if i > 0 {
			offs[i] = offs[i-1] + (sizes[i-1]+sizes[i]+1)/2
		}
		p := pool{w - offs[i], 1}
		for len(pools) > 0 {
			last := pools[len(pools)-1]
			if last.sum*p.count <= p.sum*last.count {
				break
			}
			p = pool{last.sum + p.sum, last.count + p.count}
			pools = pools[:len(pools)-1]
		}
		pools = append(pools, p)
	}
	places := make([]Length, 0, len(want))
	for _, p := range pools {
		for range p.count {
			places = append(places, p.sum/p.count)
		}
	}
	n := len(want) - 1
	lo, hi := ends.Lo+sizes[0]/2, ends.Hi-sizes[n]/2-offs[n]
	for i := range places {
		if ends.Lo < ends.Hi && lo <= hi {
			places[i] = min(max(places[i], lo), hi)
		}
		places[i] += offs[i]
	}
	return places
}
