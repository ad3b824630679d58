package revise

import (
	"fmt"
	"slices"
	"strings"

	"barwright/compile/ask"
	"barwright/compile/model"
	"barwright/lang/length"
)

// noise is what no saw sees: frames at an angle round to whole nanometres.
const noise = length.Micrometre

// moved lists where things stand otherwise, in the new model's order; then what stands
// no longer. What is in a block that came or went is told with it, and so is what moved
// with its box by as much. from has the names of the values that each follows from,
// where these are known.
func (d *differ) moved() (changes []model.Change, from [][]string) {
	was, is := &standing{answers: ask.Placed(d.old), to: d.to}, &standing{answers: ask.Placed(d.new)}
	tell := func(c model.Change, a *model.Answer) {
		changes, from = append(changes, c), append(from, a.From)
	}
	told, texts := map[string]bool{}, map[string]string{} // lookup only
	lone := func(name string, a *model.Answer, other *standing, c model.Change) {
		if _, inBlock := d.within[blockPlaced(name)]; inBlock || aside(name) {
			return
		}
		if c.Name = other.outermost(name); told[c.Name] {
			return
		}
		if told[c.Name] = true; c.Name != name {
			c.Means, c.Old, c.New = "", "", ""
		}
		tell(c, a)
	}
	paired := make([]bool, len(was.answers))
	for i := range is.answers {
		a := &is.answers[i]
		j := was.find(a.Name, i)
		if j < 0 {
			lone(a.Name, a, was, model.Change{Kind: model.Moved, Means: a.Means, New: a.Text, Text: "is there now"})
			continue
		}
		paired[j] = true
		before := &was.answers[j]
		text := d.how(before, a)
		if text == "" || aside(a.Name) {
			continue
		}
		texts[a.Name] = text
		carried := func(by string) bool { return by != a.Name && texts[by] == text }
		if a.Kind == model.AsSpan && slices.ContainsFunc(carriers(a.Name), carried) {
			continue
		}
		tell(model.Change{Name: a.Name, Kind: model.Moved, Means: a.Means, Old: before.Text, New: a.Text, Text: text}, a)
	}
	for i := range was.answers {
		if a := &was.answers[i]; !paired[i] {
			lone(was.name(i), a, is, model.Change{Kind: model.Moved, Means: a.Means, Old: a.Text, Text: "is no longer there"})
		}
	}
	return changes, from
}

// standing is where things stand in a build. Its names are those of the new build.
type standing struct {
	answers []model.Answer
	to      map[string]string // new keys of renamed blocks by the old ones; lookup only
	at      map[string]int    // by name, made when first needed; lookup only
	heads   map[string]bool   // what names begin with, likewise
}

func (s *standing) name(i int) string { return renameIn(s.answers[i].Name, s.to) }

// find returns the index of a name, -1 where nothing is called so. It most likely
// stands at a certain index.
func (s *standing) find(name string, likely int) int {
	if likely < len(s.answers) && s.name(likely) == name {
		return likely
	}
	if s.at == nil {
		s.at = make(map[string]int, len(s.answers))
		for i := range s.answers {
			s.at[s.name(i)] = i
		}
	}
	if i, is := s.at[name]; is {
		return i
	}
	return -1
}

// outermost is the thing round a name of which nothing stands in this build: the whole
// door rather than each of its directions.
func (s *standing) outermost(name string) string {
	if s.heads == nil {
		s.heads = map[string]bool{}
		for i := range s.answers {
			for head := s.name(i); head != "" && !s.heads[head]; head = above(head) {
				s.heads[head] = true
			}
		}
	}
	for up := above(name); up != "" && !strings.HasSuffix(up, ".placed") && !s.heads[up]; up = above(up) {
		name = up
	}
	return name
}

// above is a name without its last word.
func above(name string) string { return name[:max(strings.LastIndexByte(name, '.'), 0)] }

// blockPlaced is the block whose place a name tells of.
func blockPlaced(name string) string {
	block, _, _ := strings.Cut(name, ".placed")
	return block
}

// aside reports whether a name tells of no place: it lists parts, whose fates are told, or
// says what findings do of uneven gaps.
func aside(name string) bool {
	return strings.HasSuffix(name, ".through") || strings.HasSuffix(name, ".baseboard") || strings.Contains(name, ".uneven.")
}

// carriers are the names of what a thing may have moved with: the box that it is in, and
// of what is left clear for an outlet the outlet.
func carriers(name string) []string {
	thing := above(name)
	word := name[len(thing):]
	return []string{above(thing) + word, strings.TrimSuffix(thing, ".clear") + ".box" + word}
}

// how tells in words how a thing moved; empty where it did not.
func (d *differ) how(was, is *model.Answer) string {
	show, way := d.new.Build.Plain, wayOf(is.Name)
	switch {
	case is.Kind != was.Kind:
		return "is " + is.Text + ", was " + was.Text
	case is.Kind == model.AsSpan:
		return spanMoved(way, was.Lengths, is.Lengths, show)
	case way == room:
		return roomMoved(was.Lengths, is.Lengths, show)
	case is.Kind == model.AsList:
		return listMoved(way, was.Lengths, is.Lengths, show)
	case is.Kind == model.AsLength:
		return way.by(is.Lengths[0]-was.Lengths[0], show)
	case is.Text != was.Text:
		return is.Text + " instead of " + was.Text
	}
	return ""
}

// way is a direction in a builder's words.
type way struct {
	more, less      string // where figures grow, and where they shrink: "to the right"
	larger, smaller string // of what is as long as that: "wider"
	low             string // the end that counts less: "left end"
}

var (
	along = way{"to the right", "to the left", "wider", "narrower", "left end"}
	front = way{"forward", "back", "deeper", "shallower", "rear"}
	up    = way{"higher", "lower", "taller", "shorter", "foot"}
	sizes = way{more: "more", less: "less"}
	room  = way{} // x, y and z at once
)

// wayOf tells which way the figures of a name count.
func wayOf(name string) way {
	words := strings.Split(name, ".")
	switch last := words[len(words)-1]; {
	case words[0] == "drain" && slices.Contains([]string{"bowl", "outlet", "weir", "trap", "end"}, last):
		return up
	case words[0] == "drain" || slices.Contains([]string{"shim", "gap"}, words[max(0, len(words)-2)]):
		return sizes
	case last == "room" || last == "datum":
		return room
	case last == "v" || last == "rear":
		return front.of(words[0], "knee_wall", "skin")
	case last == "z" || last == "hinges" || last == "height" || last == "line":
		return up.of(words[0], "counter", "bar_top")
	}
	w := along
	switch words[0] {
	case "knee_wall", "skin", "counter", "bar_top", "wall":
		w.larger, w.smaller = "longer", "shorter"
	}
	return w
}

// of is the same way, in which things of some kinds are thick.
func (w way) of(kind string, thick ...string) way {
	if slices.Contains(thick, kind) {
		w.larger, w.smaller = "thicker", "thinner"
	}
	return w
}

type show func(model.Length) string

// by tells a distance with its way; empty where it is none.
func (w way) by(d model.Length, show show) string {
	switch {
	case d >= noise:
		return show(d) + " " + w.more
	case -d >= noise:
		return show(-d) + " " + w.less
	}
	return ""
}

// spanMoved tells how a thing from one figure to another moved or grew.
func spanMoved(w way, was, is []model.Length, show show) string {
	low := is[0] - was[0]
	size := (is[1] - is[0]) - (was[1] - was[0])
	grew := way{more: w.larger, less: w.smaller}.by(size, show)
	shifted := w.by(low, show)
	switch {
	case grew == "" && shifted == "":
		return ""
	case grew == "":
		return "moved " + shifted
	case shifted == "":
		return grew
	case length.Apart(low, -size) < noise:
		return grew + " at its " + w.low
	}
	return grew + ", its " + w.low + " " + shifted
}

// roomMoved tells how a point moved over the floor, and up where its z is told too.
func roomMoved(was, is []model.Length, show show) string {
	var ways []string
	for i, w := range []way{{more: "along x", less: "against x"}, {more: "along y", less: "against y"}, up}[:len(is)] {
		if by := w.by(is[i]-was[i], show); by != "" {
			ways = append(ways, by)
		}
	}
	if len(ways) == 0 {
		return ""
	}
	return "moved " + strings.Join(ways, ", ")
}

// mostMoved is how many things of a row are told one by one where at least two others
// moved.
const mostMoved = 4

// listMoved tells which things of a row moved; where their number differs, how many of
// them stand where one stood.
func listMoved(w way, was, is []model.Length, show show) string {
	if more := len(is) - len(was); more != 0 {
		text := fmt.Sprintf("%d more", more)
		if more < 0 {
			text = fmt.Sprintf("%d fewer", -more)
		}
		return text + stay(was, is)
	}
	var moves []string
	count := map[string]int{} // lookup only
	for i := range is {
		by := w.by(is[i]-was[i], show)
		if count[by]++; by != "" {
			moves = append(moves, fmt.Sprintf("no. %d: %s", i+1, by))
		}
	}
	switch n := len(moves); {
	case n == 0:
		return ""
	case len(is) == 1 || count[w.by(is[0]-was[0], show)] == len(is):
		return moved(len(is)) + w.by(is[0]-was[0], show)
	case n > mostMoved+1:
		return strings.Join(moves[:mostMoved], ", ") + fmt.Sprintf(", and %d others", n-mostMoved)
	}
	return strings.Join(moves, ", ")
}

func moved(n int) string {
	if n == 1 {
		return "moved "
	}
	return "all moved "
}

// stay counts the things of two rows of different length that stand at one place.
func stay(was, is []model.Length) string {
	left, n := slices.Clone(was), 0
	for _, l := range is {
		if i := slices.IndexFunc(left, func(o model.Length) bool { return length.Apart(o, l) < noise }); i >= 0 {
			left, n = slices.Delete(left, i, i+1), n+1
		}
	}
	switch n {
	case min(len(was), len(is)):
		return ""
	case 0:
		return "; none stands where one stood"
	case 1:
		return "; one stands where one stood"
	}
	return fmt.Sprintf("; %d stand where one stood", n)
}
