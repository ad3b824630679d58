package worklist

import (
	"bufio"
	"io"
	"strconv"
	"strings"

	"barwright/compile/model"
)

// Ways writes the ways of cables, cords and drains, and what they go through, as text. The
// error is the writer's.
func Ways(w io.Writer, m *model.Model) error {
	out := sheet{bufio.NewWriter(w)}
	out.wrapped("", "Ways: "+m.Build.Titled(), 0)
	out.line("")
	out.wrapped("", "They are proposed. Who is licensed to wire or to plumb decides, by the code of the place.", 0)
	parts := m.PartsByID()
	for i := range m.Ways {
		out.line("")
		out.way(m, &m.Ways[i], parts)
	}
	if len(m.Ways) == 0 {
		out.line("")
		out.line("There are none.")
	}
	return out.Flush()
}

func (s sheet) way(m *model.Model, w *model.Way, parts map[string]*model.Part) {
	near := m.Build.Near
	s.wrapped("", w.Words()+", from "+model.BlockWords(w.From)+" to "+model.BlockWords(w.To), 2)
	entry := func(name string, texts ...string) { s.entry(name, texts) }
	if len(w.Past) > 0 {
		past := make([]string, len(w.Past))
		for i, key := range w.Past {
			past[i] = model.BlockWords(key)
		}
		entry("by way of", past...)
	}
	if w.Need > 0 {
		entry("length", near(w.Length), near(w.Need)+" needed")
	} else {
		entry("length", near(w.Length))
	}
	if w.Supports > 0 {
		entry("held at", strconv.Itoa(w.Supports))
	}
	var holes []string
	for _, h := range w.Holes {
		size := m.Build.Plain(h.Wide)
		if w.Kind == "cord" {
			size += " by " + m.Build.Plain(h.High)
		}
		text := parts[h.Part].Label + " " + size + ", " + near(h.At.Z) + " up"
		if h.Plates > 0 {
			text += ", steel plates: " + strconv.Itoa(h.Plates)
		}
		holes = append(holes, text)
	}
	if len(holes) > 0 {
		s.wrapped("  holes: ", strings.Join(holes, "; "), 4)
	}
	for i := range m.Drains {
		if d := &m.Drains[i]; d.Key() == w.Key() {
			entry("over the datum", "out of the trap "+near(d.Outlet), "weir "+near(d.Weir), "at the stub "+near(d.End))
			entry("left for strainer and trap", near(d.Bowl-d.Outlet))
			for _, stop := range d.Stops {
				entry("it meets", stop.Name)
			}
		}
	}
}
