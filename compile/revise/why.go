package revise

import (
	"slices"
	"strings"

	"barwright/compile/model"
)

// ways knows the shortest way from whatever differs to a changed text. A value has its
// way along the values that it follows from. What stands somewhere, or is cut, follows
// from whole blocks: its own, those that it names, those round it, and in the end those
// that name it; the nearest of them in which a value differs is its cause.
type ways struct {
	d       *differ
	next    map[string]string // towards the text, by name; empty at the text. Lookup only
	steps   map[string]int    // how far the text is; lookup only
	differs map[string][]string
	blocks  []string            // keys, the new build's and then the old one's
	uses    map[string][]string // blocks that a block follows from; lookup only
	users   map[string][]string // the other way round; lookup only
	found   map[search]map[string]string
}

// search is a way to look for the nearest cause of what counts along a direction.
type search struct {
	along string
	least bearing // of the values that are looked at
	back  bool    // also at blocks that use the block
}

func (d *differ) ways(changes []model.Change) *ways {
	w := &ways{
		d: d, next: map[string]string{}, steps: map[string]int{}, differs: map[string][]string{},
		uses: map[string][]string{}, users: map[string][]string{}, found: map[search]map[string]string{},
	}
	w.values(changes)
	seen := map[string]bool{} // lookup only
	for _, side := range [][]entry{d.is, d.was} {
		w.graph(side, seen)
	}
	return w
}

// values finds the way of each value that differs, starting at the texts.
func (w *ways) values(changes []model.Change) {
	var queue []string
	reach := func(name, from string, steps int) {
		if _, known := w.steps[name]; !known {
			w.next[name], w.steps[name] = from, steps
			queue = append(queue, name)
		}
	}
	then := map[string][]string{} // the values that follow from one; lookup only
	for i := range changes {
		switch c := &changes[i]; c.Kind {
		case model.Said, model.Came, model.Went:
			if !w.d.reworded(c) {
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
	if _, changed := w.steps[unit]; !changed {
		return
	}
	for i := range changes {
		if c := &changes[i]; c.Kind == model.Follows && !w.d.isSolved(c.Name) {
			reach(c.Name, unit, 1)
		}
	}
	spread()
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
	return c.Kind == model.Said && is && was && d.same(d.was[j].Value, d.is[i].Value)
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

// graph notes which blocks use which, and which of their values differ.
func (w *ways) graph(side []entry, seen map[string]bool) {
	link := func(user, used string) {
		if key := user + " " + used; user != used && used != "" && !seen[key] {
			seen[key] = true
			w.uses[user] = append(w.uses[user], used)
			w.users[used] = append(w.users[used], user)
		}
	}
	for i := range side {
		e := &side[i]
		if e.Kind == model.AsBlock || e.block == e.name {
			if !seen[e.name] {
				seen[e.name] = true
				w.blocks = append(w.blocks, e.name)
			}
			link(e.name, renameIn(e.around(), w.d.to))
		}
		if e.Kind == model.AsReference {
			link(e.block, renameIn(e.Text, w.d.to))
		}
		above := w.d.within[e.name]
		if _, reached := w.steps[e.name]; reached && !seen["differs "+e.name] && (above == "" || above == e.name) {
			seen["differs "+e.name] = true
			w.differs[e.block] = append(w.differs[e.block], e.name)
		}
	}
}

// way lists the names from one to the text.
func (w *ways) way(name string) []string {
	var out []string
	for name != "" {
		if _, told := w.d.within[name]; !told || w.d.within[name] == name {
			out = append(out, name)
		}
		if w.next[name] == name {
			break
		}
		name = w.next[name]
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

// nearest is the way from a block, for what counts along a direction.
func (w *ways) nearest(block, direction string) []string {
	for _, s := range []search{
		{direction, bears, false}, {direction, mayBear, false}, {direction, mayBear, true}, {direction, bearsNot, false}, {direction, bearsNot, true},
	} {
		if w.found[s] == nil {
			w.found[s] = w.spread(s)
		}
		if name, ok := w.found[s][block]; ok {
			return w.way(name)
		}
	}
	return nil
}

// spread gives each block the nearest value that differs.
func (w *ways) spread(s search) map[string]string {
	cause := map[string]string{} // lookup only
	var queue []string
	for _, block := range w.blocks {
		best := ""
		for _, name := range w.differs[block] {
			if bearingOf(name, s.along) >= s.least && (best == "" || w.steps[name] < w.steps[best]) {
				best = name
			}
		}
		if best != "" {
			cause[block] = best
			queue = append(queue, block)
		}
	}
	for ; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		reach := func(blocks []string) {
			for _, b := range blocks {
				if _, known := cause[b]; !known {
					cause[b] = cause[at]
					queue = append(queue, b)
				}
			}
		}
		reach(w.users[at])
		if s.back {
			reach(w.uses[at])
		}
	}
	if build, differs := cause["build"]; differs { // its unit bears on all others
		for _, block := range w.blocks {
			if cause[block] == "" {
				cause[block] = build
			}
		}
	}
	return cause
}

// directionOf is the way that the last word of a place counts: "u", "v" or "z", or
// "room" over its floor; empty where it counts no single one.
func directionOf(placed string) string {
	switch last := lastWord(placed); last {
	case "u", "v", "z":
		return last
	case "hinges", "height":
		return "z"
	case "room", "turn", "free":
		return "room"
	case "studs", "seams", "battens", "centres", "centre":
		return "u"
	}
	return ""
}

func lastWord(name string) string { return name[strings.LastIndexByte(name, '.')+1:] }

// bearing is whether a value bears on what counts along a direction, as far as its name
// tells: widths of boxes have none on heights.
type bearing int

const (
	bearsNot bearing = iota
	mayBear
	bears
)

func bearingOf(name, along string) bearing {
	word := lastWord(name)
	kind, _, _ := strings.Cut(name, ".")
	counts := ""
	switch kind {
	case "wall", "room":
		if along == "room" {
			return bears
		}
		counts = "u"
	case "cabinet", "bay", "filler", "run", "carcass", "knee_wall", "counter", "bar_top":
		counts = boxWords[word]
	}
	switch {
	case along == "":
		return bears
	case counts == "" && along != "room":
		return mayBear
	case counts == along:
		return bears
	}
	return bearsNot
}

// boxWords are the directions of what boxes and framing say. Constant.
var boxWords = map[string]string{
	"left": "u", "right": "u", "width": "u", "length": "u", "dividers": "u",
	"depth": "v", "setback": "v",
	"height": "z", "top": "z", "fixed_shelves": "z",
	"at": "room", "start": "room", "from": "room", "faces": "room", "along": "room", "out_from": "room",
}

// reasons gives each fate the way from the changed text: from the block that one of its
// steps names, or from that of its part, along the direction in which the part differs.
func reasons(r *model.Revision, w *ways) {
	if w == nil {
		return
	}
	was := map[string]*model.Part{} // by ID in the new build's words; lookup only
	for i := range r.Old.Parts {
		p := &r.Old.Parts[i]
		block := p.Block()
		was[renameIn(block, w.d.to)+p.ID[len(block):]] = p
	}
	for i := range r.Fates {
		f := &r.Fates[i]
		if f.Kind == model.Unchanged {
			continue
		}
		for _, s := range f.Steps {
			if block := strings.ReplaceAll(s.What, " ", "."); f.Because == nil && len(w.differs[block]) > 0 {
				f.Because = w.nearest(block, "")
			}
		}
		switch {
		case f.Because != nil:
		case f.New < 0:
			f.Because = w.nearest(renameIn(r.Old.Parts[f.Old].Block(), w.d.to), "")
		default:
			p := &r.New.Parts[f.New]
			f.Because = w.nearest(p.Block(), grown(was[p.ID], p))
		}
	}
}

// grown is the one direction in which a part came out larger or smaller; empty where it
// is none, or several.
func grown(was, is *model.Part) string {
	if was == nil {
		return ""
	}
	a, b, out := was.Placement.Box, is.Placement.Box, ""
	for _, d := range []struct {
		name   string
		change model.Length
	}{{"u", b.U.Size() - a.U.Size()}, {"v", b.V.Size() - a.V.Size()}, {"z", b.Z.Size() - a.Z.Size()}} {
		switch {
		case d.change == 0:
		case out != "":
			return ""
		default:
			out = d.name
		}
	}
	return out
}
