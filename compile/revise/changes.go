package revise

import (
	"strings"

	"barwright/compile/model"
	"barwright/lang/format"
)

// differ compares the values of two builds by name. The old build's names are taken
// with renamed blocks under their new names.
type differ struct {
	old, new *model.Model
	was, is  []entry        // the values of the old build and of the new one
	wasAt    map[string]int // index by name; lookup only
	isAt     map[string]int // likewise
	// within is the change that tells of a name by telling of a block round it: the key
	// of a block that came or went; lookup only.
	within map[string]string
	to     map[string]string // new keys of renamed blocks by the old ones; lookup only
	// wasRow and isRow are the blocks in a block whose order counts; lookup only.
	wasRow, isRow map[string][]string
}

// entry is a value and the block that it belongs to, which is its own of a block.
type entry struct {
	*model.Value
	name  string // in the new build's words
	block string
}

// changes lists the names whose values differ, and knows the way from each to the
// changed text; nil where a record keeps no values to tell it from.
func changes(old, new *model.Model) ([]model.Change, *ways) {
	d := &differ{old: old, new: new, within: map[string]string{}}
	if old.Values == nil || new.Values == nil {
		d.open(givens(old), givens(new))
		moved, _ := d.moved()
		return append(d.told(nil), moved...), nil
	}
	d.open(old.Values, new.Values)
	out := d.told(d.renamed())
	values := len(out)
	moved, from := d.moved()
	out = append(out, moved...)
	w := d.ways(out)
	for i := range out {
		switch c := &out[i]; c.Kind {
		case model.Follows:
			c.Because = w.because(c, nil)
		case model.Moved:
			c.Because = w.because(c, from[i-values])
		}
	}
	return out, w
}

// keepsNoValues is said of records of an earlier form.
const keepsNoValues = "A record of an earlier form keeps no values but the givens: what else the text says otherwise is not told."

func (d *differ) open(was, is []model.Value) {
	d.was, d.is = entries(was), entries(is)
	d.wasAt, d.isAt = places(d.was), places(d.is)
}

// givens are the values of a record that keeps no others.
func givens(m *model.Model) []model.Value {
	var out []model.Value
	for _, g := range m.Givens {
		v := model.Value{Name: "given." + g.Name, Kind: model.AsText, Text: g.Value, Written: g.Value}
		if g.Overridden {
			v.Origin = model.FromCommand
		}
		out = append(out, v)
	}
	return out
}

func entries(values []model.Value) []entry {
	out := make([]entry, len(values))
	block := ""
	for i := range values {
		v := &values[i]
		if v.Kind == model.AsBlock {
			block = v.Name
		} else if !strings.HasPrefix(v.Name, block+".") {
			block = v.Name // a given stands in no block
		}
		out[i] = entry{v, v.Name, block}
	}
	return out
}

func places(entries []entry) map[string]int {
	at := make(map[string]int, len(entries)) // lookup only
	for i := range entries {
		at[entries[i].name] = i
	}
	return at
}

// told lists what the text says otherwise, in the new text's order and after it what
// only the old one says; then what follows. Renamed blocks have their old keys by the
// new ones.
func (d *differ) told(renamed map[string]string) []model.Change {
	var said, follows []model.Change
	d.wasRow, d.isRow = d.rows(d.was), d.rows(d.is)
	tell := func(c model.Change, differs bool) {
		if differs && c.Kind == model.Follows {
			follows = append(follows, c)
		} else if differs {
			said = append(said, c)
		}
	}
	for i := range d.is {
		e := &d.is[i]
		j, both := d.wasAt[e.name]
		was, isRenamed := renamed[e.name]
		switch {
		case isRenamed:
			tell(model.Change{Name: e.name, Kind: model.Came, Old: was, New: e.name, Text: "renamed from " + was}, true)
		case both:
			tell(d.pair(&d.was[j], e))
		default:
			tell(d.lone(d.is, i, model.Came))
		}
	}
	for i := range d.was {
		if _, both := d.isAt[d.was[i].name]; !both {
			tell(d.lone(d.was, i, model.Went))
		}
	}
	return append(said, follows...)
}

// pair compares a value that both builds have. Objects are told by their fields.
func (d *differ) pair(before, e *entry) (c model.Change, differs bool) {
	was := before.Value
	switch {
	case e.Kind == model.AsBlock && was.Kind == model.AsBlock:
		return d.stood(before, e)
	case e.Kind == model.AsBlock || was.Kind == model.AsBlock || d.fields(e):
		return c, false
	}
	c = model.Change{Name: e.name, Kind: model.Said, Old: was.Text, New: e.Text}
	same := d.same(was, e.Value)
	rewritten := !format.SameWords(was.Written, e.Written)
	stated := statedIn(was) || statedIn(e.Value)
	switch {
	case same && !(statedIn(was) && statedIn(e.Value) && rewritten && !sameFigures(was.Written, e.Written)):
		return c, false
	case !stated, !rewritten && was.Origin == e.Origin:
		c.Kind = model.Follows
	default:
		c.OldWritten, c.NewWritten = was.Written, e.Written
	}
	return c, true
}

// statedIn reports whether a text or a command line says the value itself.
func statedIn(v *model.Value) bool {
	return v.Origin == model.FromText || v.Origin == model.FromCommand
}

// fields reports whether the fields of an object have names of their own.
func (d *differ) fields(e *entry) bool {
	next := d.isAt[e.name] + 1
	return e.Kind == model.AsObject && next < len(d.is) && strings.HasPrefix(d.is[next].name, e.name+".")
}

// lone tells of a name that only one build has. What stands in a block that came or
// went is told with that block, and a default of what was left out not at all.
func (d *differ) lone(side []entry, i int, kind model.ChangeKind) (c model.Change, differs bool) {
	e := &side[i]
	if above, told := d.within[e.around()]; told {
		d.within[e.name] = above
		return c, false
	}
	c = model.Change{Name: e.name, Kind: kind}
	switch {
	case e.Kind == model.AsBlock:
		d.within[e.name] = e.name
		if inner := insides(side[i+1:], e); len(inner) > 0 {
			c.Text = "with " + strings.Join(inner, ", ")
		}
		return c, true
	case e.Origin == model.FromDefault, e.Kind == model.AsObject && i+1 < len(side) && strings.HasPrefix(side[i+1].name, e.name+"."):
		return c, false
	}
	c.Kind = model.Said
	if e.Origin == model.FromSolving {
		c.Kind = model.Follows
	}
	if kind == model.Came {
		c.New, c.NewWritten = e.Text, e.Written
	} else {
		c.Old, c.OldWritten = e.Text, e.Written
	}
	return c, true
}

// around is the block that an entry belongs to, or of a block the one round it.
func (e *entry) around() string {
	switch {
	case e.Kind != model.AsBlock:
		return e.block
	case len(e.From) > 0:
		return e.From[0]
	}
	return ""
}

// insides lists the named blocks directly in one, which come after it with all that
// is in them.
func insides(after []entry, block *entry) []string {
	var out []string
	in := map[string]bool{block.Name: true} // lookup only
	for i := range after {
		e := &after[i]
		if e.Kind != model.AsBlock {
			continue
		}
		if !in[e.around()] {
			break
		}
		in[e.Name] = true
		if e.around() == block.Name && !strings.HasPrefix(e.Name, block.Name+".") {
			out = append(out, e.Name)
		}
	}
	return out
}
