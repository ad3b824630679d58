package values

import (
	"fmt"
	"slices"

	"barwright/lang"
	"barwright/lang/expr"
)

// reason tells what a solved value follows from: in words with their figures,
// and by the names of other values, in order. The functions below are asked
// only where the value is sound.
type reason struct {
	says string
	from []string
}

func valueName(b *lang.Block, name string) string { return b.Key() + "." + name }

func (v *Values) whyWidth(b *lang.Block) reason {
	if b.Spec.Kind == "bay" {
		return reason{"its appliance and two gaps", []string{valueName(b, "appliance.width"), valueName(b, "gap")}}
	}
	run := b.Parent
	says, from := fmt.Sprintf("what %s has left", run.Key()), []string{valueName(run, "length")}
	if n := len(v.sharers[run]); n > 1 {
		says += fmt.Sprintf(", %s, shared by %d", v.Exact(LengthOf(v.rest(run))), n)
	}
	for _, other := range run.Blocks[:min(len(run.Blocks), mostFrom)] {
		if _, shares := v.sharers[run][other]; isBox(other) && !shares {
			from = append(from, valueName(other, "width"))
		}
	}
	return reason{says, from}
}

func (v *Values) whyLeft(b *lang.Block) reason {
	var from []string
	for other := v.neighbour[b]; other != nil && len(from) < mostFrom; other = v.neighbour[other] {
		from = append(from, valueName(other, "width"))
	}
	slices.Reverse(from)
	if len(from) == 0 {
		return reason{"it stands first in " + b.Parent.Key(), nil}
	}
	return reason{"the widths before it in " + b.Parent.Key(), from}
}

func (v *Values) whyRight(b *lang.Block) reason {
	return reason{"its left end and its width", []string{valueName(b, "left"), valueName(b, "width")}}
}

// whyLength is why a run that states no length is as long as it is.
func (v *Values) whyLength(run *lang.Block) reason {
	var from []string
	for _, b := range Boxes(run) {
		if v.ownWidth(b).Kind == expr.Rest {
			return v.whyStretch(run)
		}
		from = append(from, valueName(b, "width"))
	}
	return reason{"the widths of its boxes", from}
}

func (v *Values) whyStretch(run *lang.Block) reason {
	wall := v.Ref(run, "along")
	begin, end, _ := v.Stretch(run, wall)
	out := reason{
		fmt.Sprintf("%s … %s along %s", v.Exact(begin), v.Show(end), wall.Key()),
		[]string{valueName(wall, "length"), valueName(run, "start")},
	}
	for _, corner := range []struct {
		side        string
		first, next *lang.Block
	}{{"left", v.WallBefore(wall), wall}, {"right", wall, v.WallAfter(wall)}} {
		by, _ := v.LeansIn(run, corner.first, corner.next)
		if by == 0 {
			continue
		}
		out.says += fmt.Sprintf("; the wall at its %s leans in by %s", corner.side, v.Exact(by))
		out.from = append(out.from, valueName(corner.first, "corner"), valueName(run, "depth"))
	}
	return out
}

// whyRef is why a value is that of the block that an attribute names.
func whyRef(attr, name string) func(*Values, *lang.Block) reason {
	return func(v *Values, b *lang.Block) reason {
		of := v.Ref(b, attr)
		return reason{"that of " + of.Key(), []string{valueName(of, name)}}
	}
}

// whySame is why a value is the same as another of its block.
func whySame(name string) func(*Values, *lang.Block) reason {
	return func(v *Values, b *lang.Block) reason {
		return reason{"the same as its " + name, []string{valueName(b, name)}}
	}
}

// whyOver is why a slab's upper face is as high as it is: what it lies on
// stands up to a value of its own.
func whyOver(name string) func(*Values, *lang.Block) reason {
	return func(v *Values, b *lang.Block) reason {
		over := v.Ref(b, "over")
		return reason{
			fmt.Sprintf("the %s of %s and its own thickness", name, over.Key()),
			[]string{valueName(over, name), valueName(b, "thickness")},
		}
	}
}

func (v *Values) whyKneeTop(b *lang.Block) reason {
	for _, slab := range v.Source.Top("bar_top") {
		if slab.Attr("height") != nil && v.Ref(slab, "over") == b {
			return reason{
				fmt.Sprintf("the height of %s less its thickness", slab.Key()),
				[]string{valueName(slab, "height"), valueName(slab, "thickness")},
			}
		}
	}
	return reason{}
}

func (v *Values) whyKneeLeft(b *lang.Block) reason {
	says, from := v.whyInset(b, "left")
	return reason{says, from}
}

func (v *Values) whyKneeRight(b *lang.Block) reason {
	run := v.Ref(b, "behind")
	says, from := v.whyInset(b, "right")
	return reason{
		fmt.Sprintf("the length of %s less its inset: %s", run.Key(), says),
		append([]string{valueName(run, "length")}, from...),
	}
}

// whyInset is why the framing of a knee wall stays back from an end of its run.
func (v *Values) whyInset(b *lang.Block, end string) (says string, from []string) {
	if written := end + "_inset"; b.Attr(written) != nil {
		return "the " + written + " that is written", []string{valueName(b, written)}
	}
	skin, panel := v.flushSkin(b, end)
	if skin == nil {
		return "none", nil
	}
	says, from = "the thickness of "+skin.Key(), []string{valueName(skin, "face"), valueName(v.Ref(skin, "board"), "thickness")}
	if panel != nil {
		says += ", less that of " + panel.Key()
		from = append(from, valueName(panel, "end"), valueName(v.Ref(panel, "board"), "thickness"))
	}
	return says, from
}
