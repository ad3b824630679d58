package revise

import (
	"strings"

	"barwright/compile/model"
)

// search is a way to look for the nearest cause of what counts along a direction.
type search struct {
	along string
	least bearing // of the values that are looked at
	back  bool    // also at blocks that use the block
}

// graph notes which blocks use which, and which of their values differ.
func (w *ways) graph() {
	seen := map[string]bool{} // blocks, and values that differ; lookup only
	type pair struct{ user, used string }
	linked := map[pair]bool{} // lookup only
	link := func(user, used string) {
		used = renameIn(used, w.d.to)
		if p := (pair{user, used}); user != used && used != "" && !linked[p] {
			linked[p] = true
			w.uses[user] = append(w.uses[user], used)
			w.users[used] = append(w.users[used], user)
		}
	}
	for _, side := range [][]entry{w.d.is, w.d.was} {
		for i := range side {
			e := &side[i]
			if e.Kind == model.AsReference {
				link(e.block, e.Text)
			}
			isBlock := e.Kind == model.AsBlock || e.block == e.name
			_, leads := w.steps[e.name]
			if !isBlock && !leads {
				continue
			}
			first := !seen[e.name]
			seen[e.name] = true
			if isBlock {
				if first {
					w.blocks = append(w.blocks, e.name)
				}
				link(e.name, e.around())
			}
			if above := w.d.within[e.name]; first && leads && (above == "" || above == e.name) {
				w.differs[e.block] = append(w.differs[e.block], e.name)
			}
		}
	}
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
	if len(w.causes) == 1 { // whatever differs, that is why
		return w.way(w.causes[0])
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

// boxWords are the directions of what boxes and framing say; lookup only.
var boxWords = map[string]string{
	"left": "u", "right": "u", "width": "u", "length": "u", "dividers": "u",
	"depth": "v", "setback": "v",
	"height": "z", "top": "z", "fixed_shelves": "z",
	"at": "room", "start": "room", "from": "room", "faces": "room", "along": "room", "out_from": "room",
}
