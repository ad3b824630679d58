package revise

import (
	"cmp"
	"slices"
	"strings"

	"barwright/compile/model"
)

// ways knows the shortest way from whatever differs to a changed text. A value has its
// way along the values that it follows from. What stands somewhere, or is cut, follows
// from whole blocks: its own, those that it names, those round it, and in the end those
// that name it; the nearest of them in which a value differs is its cause.
type ways struct {
	d      *differ
	causes []string          // what the text says otherwise, in the order of the changes
	next   map[string]string // towards the text, by name; empty at the text. Lookup only
	text   map[string]string // the changed text itself, by name; lookup only
	steps  map[string]int    // how far it is; lookup only

	blocks  []string                     // keys, the new build's and then the old one's
	uses    map[string][]string          // blocks that a block follows from; lookup only
	users   map[string][]string          // the other way round; lookup only
	differs map[string][]string          // a block's values that lead to a text; lookup only
	found   map[search]map[string]string // causes by block, once they are looked for; lookup only
}

func (d *differ) ways(changes []model.Change) *ways {
	w := &ways{
		d: d, next: map[string]string{}, text: map[string]string{}, steps: map[string]int{},
		differs: map[string][]string{}, uses: map[string][]string{}, users: map[string][]string{}, found: map[search]map[string]string{},
	}
	w.values(changes)
	w.graph()
	return w
}

// values finds the way of each value that differs, starting at the texts.
func (w *ways) values(changes []model.Change) {
	var queue []string
	reach := func(name, from string, steps int) {
		if _, known := w.steps[name]; !known {
			w.next[name], w.text[name], w.steps[name] = from, cmp.Or(w.text[from], name), steps
			queue = append(queue, name)
		}
	}
	then := map[string][]string{} // the values that follow from one; lookup only
	for i := range changes {
		switch c := &changes[i]; c.Kind {
		case model.Said, model.Came, model.Went:
			if !w.d.reworded(c) {
				w.causes = append(w.causes, c.Name)
				reach(c.Name, "", 0)
			}
		case model.Follows:
			for _, from := range w.d.from(c.Name) {
				then[from] = append(then[from], c.Name)
			}
		}
	}
	for _, side := range [][]entry{w.d.is, w.d.was} {
		for i := range side {
			if e := &side[i]; w.d.within[e.name] != "" {
				reach(e.name, w.d.within[e.name], 0)
			}
		}
	}
	spread := func() {
		for ; len(queue) > 0; queue = queue[1:] {
			for _, name := range then[queue[0]] {
				reach(name, queue[0], w.steps[queue[0]]+1)
			}
		}
	}
	spread()
	for i := range changes {
		if c := &changes[i]; c.Kind == model.Follows {
			by := w.d.otherwise(c.Name)
			if steps, leads := w.steps[by]; leads && steps == 0 {
				reach(c.Name, by, 1)
			}
		}
	}
	spread()
}

// otherwise is what a value follows from beside the names that it lists: one that is
// not solved from the unit, and one that lists others than before from the order in
// its run.
func (d *differ) otherwise(name string) string {
	i, is := d.isAt[name]
	j, was := d.wasAt[name]
	switch {
	case !is || !was:
		return ""
	case d.is[i].Origin != model.FromSolving:
		return unit
	case slices.Equal(d.was[j].From, d.is[i].From):
		return ""
	}
	if at, stands := d.isAt[d.is[i].block]; stands {
		return d.is[at].around()
	}
	return ""
}

// unit is what bare numbers and the language's defaults follow from, whatever else.
const unit = "build.unit"

func (d *differ) isSolved(name string) bool {
	i, is := d.isAt[name]
	return is && d.is[i].Origin == model.FromSolving
}

// reworded reports whether the text says the same otherwise: nothing follows from that.
func (d *differ) reworded(c *model.Change) bool {
	i, is := d.isAt[c.Name]
	j, was := d.wasAt[c.Name]
	return c.Kind == model.Said && is && was && d.is[i].Kind != model.AsBlock && d.same(d.was[j].Value, d.is[i].Value)
}

// from lists the names that a value follows from in either build.
func (d *differ) from(name string) []string {
	var out []string
	if i, is := d.isAt[name]; is && d.is[i].Kind != model.AsBlock {
		out = slices.Clip(d.is[i].From)
	}
	if i, was := d.wasAt[name]; was && d.was[i].Kind != model.AsBlock {
		for _, from := range d.was[i].From {
			if from = renameIn(from, d.to); !slices.Contains(out, from) {
				out = append(out, from)
			}
		}
	}
	return out
}

// longestWay is how many names of a way are told, the changed text included.
const longestWay = 100

// way lists the names from one to the text; of a longer way the nearest, and the text.
func (w *ways) way(name string) []string {
	var out []string
	for ; name != ""; name = w.next[name] {
		if len(out) == longestWay-1 {
			name = w.text[name]
		}
		if block, told := w.d.within[name]; !told || block == name {
			out = append(out, name)
		}
	}
	return out
}

// because is the way of a change.
func (w *ways) because(c *model.Change, from []string) []string {
	if next, follows := w.next[c.Name]; follows {
		return w.way(next)
	}
	nearest := ""
	for _, name := range from {
		if steps, reached := w.steps[name]; reached && (nearest == "" || steps < w.steps[nearest]) {
			nearest = name
		}
	}
	if nearest != "" {
		return w.way(nearest)
	}
	block, placed, _ := strings.Cut(c.Name, ".placed")
	if placed == "" {
		block = w.blockOf(c.Name)
	}
	if name := w.namesake(block, placed); name != "" {
		return w.way(name)
	}
	return w.nearest(block, directionOf(placed))
}

// namesake is the value of a block that differs and asks for the thing that is placed:
// "doors" for the place ".left_door.u".
func (w *ways) namesake(block, placed string) string {
	words := strings.FieldsFunc(placed, func(c rune) bool { return c == '.' || c == '_' })
	for _, name := range w.differs[block] {
		if w.d.isSolved(name) {
			continue
		}
		own, _, _ := strings.Cut(strings.TrimPrefix(name, block+"."), ".")
		one := strings.TrimSuffix(own, "s")
		if slices.Contains(words, own) || slices.Contains(words, one) || strings.Contains(own, "_") && strings.Contains(placed, "."+own) {
			return name
		}
	}
	return ""
}

func (w *ways) blockOf(name string) string {
	if i, is := w.d.isAt[name]; is {
		return w.d.is[i].block
	}
	if i, was := w.d.wasAt[name]; was {
		return w.d.was[i].block
	}
	return name
}
