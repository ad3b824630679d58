package revision

import (
	"slices"
	"strconv"
	"strings"

	"barwright/compile/model"
)

// thing is what moved: a block, or something of it: "outlet.blender", "box".
type thing struct{ block, of string }

// directions are the last words of names that the words of a move tell.
var directions = []string{"u", "v", "z", "room", "height", "centre"}

// thingOf reads the name of where a thing stands: "outlet.blender.placed.box.z".
func thingOf(name string) thing {
	block, of, _ := strings.Cut(name, ".placed")
	words := strings.FieldsFunc(of, func(c rune) bool { return c == '.' || c == '_' })
	if last := len(words) - 1; last >= 0 && slices.Contains(directions, words[last]) {
		words = words[:last]
	}
	return thing{block, strings.Join(words, " ")}
}

// movedLines gathers what is told of one thing, and things that moved alike.
func (r *report) movedLines(changes []*model.Change) []entry {
	type move struct{ says, cause string }
	type moving struct {
		thing
		cause string
	}
	var order []moving
	says := map[moving][]string{} // lookup only
	for _, c := range changes {
		m := moving{thingOf(c.Name), r.cause(c.Because)}
		if says[m] == nil {
			order = append(order, m)
		}
		says[m] = append(says[m], strings.TrimPrefix(change(c), "moved "))
	}
	var moves []move
	things := map[move][]thing{} // lookup only
	for _, m := range order {
		to := move{inOne(says[m]), m.cause}
		if things[to] == nil {
			moves = append(moves, to)
		}
		things[to] = append(things[to], m.thing)
	}
	out := make([]entry, len(moves))
	for i, m := range moves {
		out[i] = entry{name: thingNames(things[m]), says: m.says, cause: m.cause}
	}
	return out
}

// inOne joins what is told of one thing.
func inOne(says []string) string {
	says = slices.Compact(says)
	if slices.ContainsFunc(says, func(s string) bool { return strings.Contains(s, ", ") }) {
		return strings.Join(says, "; ")
	}
	return strings.Join(says, ", ")
}

// thingNames lists things, those of one block together. An outlet whose box and cover
// moved alike moved as a whole.
func thingNames(things []thing) string {
	var blocks []string
	of := map[string][]string{} // lookup only
	for _, t := range things {
		if of[t.block] == nil {
			blocks = append(blocks, t.block)
		}
		of[t.block] = append(of[t.block], t.of)
	}
	var names []string
	for _, b := range blocks {
		own := of[b]
		if i := slices.Index(own, ""); i >= 0 {
			names, own = append(names, b), slices.Delete(own, i, i+1)
		}
		switch {
		case len(own) == 1:
			names = append(names, b+" "+own[0])
		case len(own) > 1 && strings.HasPrefix(b, "outlet."):
			names = append(names, b)
		case len(own) > 1:
			names = append(names, b+" ("+strings.Join(own, ", ")+")")
		}
	}
	if more := len(names) - mostLabels; more > 1 {
		names = append(names[:mostLabels], strconv.Itoa(more)+" more")
	}
	return strings.Join(names, ", ")
}
