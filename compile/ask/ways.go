package ask

import (
	"slices"
	"strings"

	"barwright/compile/model"
)

// ways tells how far cables and cords go, what is needed of each, and where their holes are.
func (p *placer) ways(m *model.Model) {
	if !slices.ContainsFunc(m.Ways, func(w model.Way) bool { return w.Kind != "drain" }) {
		return
	}
	labels := make(map[string]string, len(m.Parts)) // by ID; lookup only
	for i := range m.Parts {
		labels[m.Parts[i].ID] = m.Parts[i].Label
	}
	for i := range m.Ways {
		if w := &m.Ways[i]; w.Kind != "drain" {
			p.way(w, labels)
		}
	}
}

func (p *placer) way(w *model.Way, labels map[string]string) {
	at := w.Key() + "." + place
	p.length(at+".way", "along it, as it is proposed", w.Length)
	p.length(at+".needed", "of it, with what is left over", w.Need)
	if len(w.Holes) == 0 {
		return
	}
	var through []string
	var heights []model.Length
	for _, h := range w.Holes {
		through, heights = append(through, labels[h.Part]), append(heights, h.At.Z)
	}
	p.words(at+".through", "the parts that are bored for it", strings.Join(through, ", "))
	p.lengths(at+".holes", "how high the holes for it are, in the same order", heights...)
}
