package revise

import (
	"slices"
	"strings"

	"barwright/compile/model"
)

// rows lists the boxes of runs, and the walls of the room, in their order, by the key of
// the block that they are in.
func (d *differ) rows(side []entry) map[string][]string {
	out := map[string][]string{} // lookup only
	for i := range side {
		e := &side[i]
		if kind, _, _ := strings.Cut(e.name, "."); e.Kind == model.AsBlock && slices.Contains(inRow, kind) {
			in := renameIn(e.around(), d.to)
			out[in] = append(out[in], e.name)
		}
	}
	return out
}

// inRow are the kinds of blocks that stand one after the other as they are written.
var inRow = []string{"cabinet", "bay", "filler", "wall"}

// stood tells of a block that both builds have whether it stands in another block, or
// has others in another order in it.
func (d *differ) stood(before, e *entry) (c model.Change, differs bool) {
	c = model.Change{Name: e.name, Kind: model.Said}
	if in := renameIn(before.around(), d.to); in != e.around() {
		c.Old, c.New, c.Means = in, e.around(), "the block that it is in"
		return c, true
	}
	was, is := both(d.wasRow[e.name], d.isRow[e.name]), both(d.isRow[e.name], d.wasRow[e.name])
	for len(is) > 0 && is[0] == was[0] {
		was, is = was[1:], is[1:]
	}
	for n := len(is); n > 0 && is[n-1] == was[n-1]; n-- {
		was, is = was[:n-1], is[:n-1]
	}
	c.Old, c.New, c.Means = strings.Join(was, ", "), strings.Join(is, ", "), "the order of what is in it"
	return c, len(is) > 0
}

// both lists those of a row that are in another one too.
func both(row, other []string) []string {
	known := map[string]bool{} // lookup only
	for _, name := range other {
		known[name] = true
	}
	var out []string
	for _, name := range row {
		if known[name] {
			out = append(out, name)
		}
	}
	return out
}

// renamed finds blocks that stand under another name in the old build, and takes the
// old values under the new names. It returns the old keys by the new ones.
func (d *differ) renamed() map[string]string {
	went := map[string][]string{} // old keys by what they hold; lookup only
	for i := range d.was {
		if e := &d.was[i]; e.Kind == model.AsBlock {
			if _, stays := d.isAt[e.name]; !stays {
				held := holds(d.was, i)
				went[held] = append(went[held], e.name)
			}
		}
	}
	out := map[string]string{} // lookup only
	d.to = map[string]string{}
	for i := range d.is {
		e := &d.is[i]
		if _, stood := d.wasAt[e.name]; e.Kind != model.AsBlock || stood {
			continue
		}
		held := holds(d.is, i)
		if olds := went[held]; len(olds) > 0 {
			out[e.name], d.to[olds[0]], went[held] = olds[0], e.name, olds[1:]
		}
	}
	if len(d.to) == 0 {
		return nil
	}
	for i := range d.was {
		d.was[i].name, d.was[i].block = renameIn(d.was[i].Name, d.to), renameIn(d.was[i].block, d.to)
	}
	d.wasAt = places(d.was)
	return out
}

// renameIn puts the new key of a block in the place of the old one that a name begins
// with.
func renameIn(name string, to map[string]string) string {
	if len(to) == 0 {
		return name
	}
	for end := len(name); end > 0; end = strings.LastIndexByte(name[:end], '.') {
		if key, ok := to[name[:end]]; ok {
			return key + name[end:]
		}
	}
	return name
}

// holds writes down what a block says, and where it stands, without its name.
func holds(side []entry, i int) string {
	block := &side[i]
	kind, _, _ := strings.Cut(block.name, ".")
	var out strings.Builder
	out.WriteString(kind + "\n" + strings.Join(block.From, " "))
	for _, e := range side[i+1:] {
		own, isIn := strings.CutPrefix(e.name, block.name+".")
		if !isIn {
			break
		}
		if e.Origin != model.FromSolving {
			out.WriteString("\n" + own + "=" + e.Text)
		}
	}
	return out.String()
}
