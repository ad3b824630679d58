package values

import (
	"barwright/lang"
	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// solvedValue is a value that follows from the build rather than from one
// attribute. work returns kind Invalid where something it needs has failed; why
// tells what a sound value follows from.
type solvedValue struct {
	name  string
	means string
	work  func(v *Values, b *lang.Block) expr.Value
	why   func(v *Values, b *lang.Block) reason
}

// solvedValues lists the solved values of each kind of block, in the order of
// SPEC.md.
func solvedValues() map[string][]solvedValue {
	box := []solvedValue{
		{"width", "over all", (*Values).boxWidth, (*Values).whyWidth},
		{"left", "its left end, from the left end of its run", (*Values).boxLeft, (*Values).whyLeft},
		{"right", "its right end, from the left end of its run", (*Values).boxRight, (*Values).whyRight},
	}
	return map[string][]solvedValue{
		"cabinet": box,
		"bay":     box,
		"filler":  box,
		"run": {
			{"length", "of the whole run", (*Values).RunLength, (*Values).whyLength},
			{"height", "of its boxes, above the floor", ofRef("carcass", "height"), whyRef("carcass", "height")},
			{"depth", "of its boxes, over the back", ofRef("carcass", "depth"), whyRef("carcass", "depth")},
		},
		"knee_wall": {
			{"top", "of the upper plate, above the floor", (*Values).kneeTop, (*Values).whyKneeTop},
			{"height", "of its framing, above the floor", (*Values).kneeTop, whySame("top")},
			{"left", "left end of its framing, from the run's left end", (*Values).kneeLeft, (*Values).whyKneeLeft},
			{"right", "right end of its framing, from the run's left end", (*Values).kneeRight, (*Values).whyKneeRight},
			{"thickness", "of its framing", ofRef("lumber", "width"), whyRef("lumber", "width")},
		},
		"counter": {
			{"thickness", "", ofRef("slab", "thickness"), whyRef("slab", "thickness")},
			{"top", "of its upper face, above the floor", (*Values).counterTop, whyOver("height")},
		},
		"bar_top": {
			{"thickness", "", ofRef("slab", "thickness"), whyRef("slab", "thickness")},
			{"height", "of its upper face, above the floor", (*Values).barTopHeight, whyOver("top")},
		},
	}
}

// solvedNames lists the names of a kind's solved values.
func (v *Values) solvedNames(kind string) []string {
	var out []string
	for _, s := range v.solvable[kind] {
		out = append(out, s.name)
	}
	return out
}

// solved returns a solved value of a block.
func (v *Values) solved(b *lang.Block, name string) expr.Value {
	for _, s := range v.solvable[b.Spec.Kind] {
		if s.name == name {
			return v.memo(cellKey{b, name, true}, b.Head, func() expr.Value { return s.work(v, b) })
		}
	}
	panic(b.Spec.Kind + " has no solved value " + name)
}

// SolvedLength returns a solved length, as the getters do.
func (v *Values) SolvedLength(b *lang.Block, name string) length.Length {
	return LengthOf(v.solved(b, name))
}

// ofRef is a value of the block that an attribute names.
func ofRef(attr, name string) func(*Values, *lang.Block) expr.Value {
	return func(v *Values, b *lang.Block) expr.Value {
		x := v.Value(b, attr)
		if x.Kind != expr.Ref {
			return expr.Value{}
		}
		return v.Value(v.blocks[x.Text], name)
	}
}

// sum adds lengths that may have failed.
func sum(parts ...expr.Value) expr.Value {
	total := length.Length(0)
	for _, p := range parts {
		if p.Kind != expr.Length {
			return expr.Value{}
		}
		total += LengthOf(p)
	}
	return expr.OfLength(total)
}

func minus(x expr.Value) expr.Value {
	if x.Kind != expr.Length {
		return expr.Value{}
	}
	return expr.OfLength(-LengthOf(x))
}

// kneeTop is the top of the upper plate: as written, or the bar top's height
// less its thickness.
func (v *Values) kneeTop(b *lang.Block) expr.Value {
	if b.Attr("top") != nil {
		return v.Value(b, "top")
	}
	for _, slab := range v.Source.Top("bar_top") {
		if slab.Attr("height") != nil && v.Value(slab, "over").Text == b.Key() {
			return sum(v.Value(slab, "height"), minus(v.solved(slab, "thickness")))
		}
	}
	v.Findings.Errorf("attribute-missing", b.Head, `top = …, or height = … in its bar_top`,
		"%s has no height: neither its top nor the height of a bar top over it is given.", finding.Capital(b.Describe()))
	return expr.Value{}
}

// barTopHeight is the height of a bar top's upper face. Where both the knee
// wall and the bar top give a height, they must agree.
func (v *Values) barTopHeight(b *lang.Block) expr.Value {
	over := v.Value(b, "over")
	if over.Kind != expr.Ref {
		return expr.Value{}
	}
	wall := v.blocks[over.Text]
	height := sum(v.solved(wall, "top"), v.solved(b, "thickness"))
	written := b.Attr("height")
	if written == nil || height.Kind == expr.Invalid {
		return height
	}
	want := v.Value(b, "height")
	if apart := length.Apart(LengthOf(want), LengthOf(height)); want.Kind == expr.Length && apart != 0 {
		v.Findings.Errorf("heights-disagree", written.Expr.At, "give one of the two heights and leave the other out",
			"The bar top would stand at %s, but its knee wall puts it at %s: %s apart.",
			v.Show(LengthOf(want)), v.Show(LengthOf(height)), v.Show(apart)).
			Also(wall.Head, "the knee wall under it")
		return expr.Value{}
	}
	return height
}

// counterTop is the height of a counter's upper face.
func (v *Values) counterTop(b *lang.Block) expr.Value {
	over := v.Value(b, "over")
	if over.Kind != expr.Ref {
		return expr.Value{}
	}
	run := v.blocks[over.Text]
	return sum(v.solved(run, "height"), v.solved(b, "thickness"))
}

// kneeLeft is the left end of a knee wall's framing, from the run's left end.
func (v *Values) kneeLeft(b *lang.Block) expr.Value { return v.inset(b, "left") }

// kneeRight is the right end of a knee wall's framing, from the run's left end.
func (v *Values) kneeRight(b *lang.Block) expr.Value {
	behind := v.Value(b, "behind")
	if behind.Kind != expr.Ref {
		return expr.Value{}
	}
	run := v.blocks[behind.Text]
	return sum(v.solved(run, "length"), minus(v.inset(b, "right")))
}

// inset is how far the framing stays back from an end of its run: as written,
// or so that a skin there ends flush with the run, or with the end panel that
// covers it; not where that skin reaches over the end of the run too.
func (v *Values) inset(b *lang.Block, end string) expr.Value {
	if b.Attr(end+"_inset") != nil {
		return v.Value(b, end+"_inset")
	}
	skin, panel := v.flushSkin(b, end)
	if skin == nil {
		return expr.OfLength(0)
	}
	inset := ofRef("board", "thickness")(v, skin)
	if panel != nil {
		inset = sum(inset, minus(ofRef("board", "thickness")(v, panel)))
	}
	return inset
}

// flushSkin is the skin on an end of a knee wall that is to end flush with the
// run, nil where there is none, and the end panel there, which may be nil too.
func (v *Values) flushSkin(b *lang.Block, end string) (skin, panel *lang.Block) {
	skin = v.SkinOn(b, end)
	run := v.Ref(b, "behind")
	if skin == nil || v.Flag(skin, "over_run") || run == nil {
		return nil, nil
	}
	return skin, v.EndPanelAt(run, end)
}

// EndPanelAt is the panel over an end of a run, nil where there is none.
func (v *Values) EndPanelAt(run *lang.Block, end string) *lang.Block {
	return v.InnerWith(run, "end_panel", "end", end)
}

// SkinOn is the skin on a face of a knee wall, nil where there is none.
func (v *Values) SkinOn(b *lang.Block, face string) *lang.Block {
	return v.InnerWith(b, "skin", "face", face)
}

// InnerWith is the first block of a kind inside another whose attribute says so.
func (v *Values) InnerWith(b *lang.Block, kind, attr, says string) *lang.Block {
	for _, inner := range b.Inner(kind) {
		if v.Text(inner, attr) == says {
			return inner
		}
	}
	return nil
}
