package revise

import (
	"fmt"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// synthetic is a model of 40 runs of 25 cabinets, each with 45 values and two doors, of
// which the first of each run has a width in inches.
func synthetic(first int) *model.Model {
	m := &model.Model{Build: model.Build{Unit: length.Inches, Marks: length.Inch / 32}}
	say := func(name string, kind model.AnswerKind, origin model.Origin, text string, from ...string) {
		v := model.Value{Name: name, Kind: kind, Text: text, Origin: origin, From: from}
		if origin != model.FromSolving {
			v.Written = text
		}
		m.Values = append(m.Values, v)
	}
	say("carcass.base", model.AsBlock, model.FromText, "")
	say("carcass.base.depth", model.AsLength, model.FromText, "24 in")
	for r := range 40 {
		run := model.Run{Name: fmt.Sprintf("r%d", r)}
		key := "run." + run.Name
		say(key, model.AsBlock, model.FromText, "")
		say(key+".carcass", model.AsReference, model.FromText, "carcass.base")
		var widths []string
		at := 0
		for b := range 25 {
			wide := 20
			if b == 0 {
				wide = first
			}
			name := fmt.Sprintf("c%d_%d", r, b)
			block := "cabinet." + name
			say(block, model.AsBlock, model.FromText, "", key)
			say(block+".width", model.AsLength, model.FromText, fmt.Sprintf("%d in", wide))
			say(block+".left", model.AsLength, model.FromSolving, fmt.Sprintf("%d in", at), widths...)
			say(block+".right", model.AsLength, model.FromSolving, fmt.Sprintf("%d in", at+wide), block+".left", block+".width")
			for i := range 42 {
				say(fmt.Sprintf("%s.other_%d", block, i), model.AsNumber, model.FromDefault, "7")
			}
			widths = append(widths[:len(widths):len(widths)], block+".width")
			u := geom.Span{Lo: model.Length(at) * length.Inch, Hi: model.Length(at+wide) * length.Inch}
			hull := geom.Box{U: u, V: geom.Span{Hi: 24 * length.Inch}, Z: geom.Span{Hi: 34 * length.Inch}}
			box := model.Box{Kind: model.Cabinet, Name: name, Hull: hull, Inside: hull}
			for i := range 2 {
				box.Fronts = append(box.Fronts, model.Front{Name: fmt.Sprintf("door %d", i), Place: hull, Hinges: []model.Length{u.Hi, 2 * u.Hi}})
			}
			for range 8 {
				box.Legs = append(box.Legs, hull)
			}
			run.Boxes = append(run.Boxes, box)
			at += wide
		}
		m.Runs = append(m.Runs, run)
	}
	return m
}

// BenchmarkChanges compares 46 000 values and as many places of two builds, of which
// nearly every place differs.
func BenchmarkChanges(b *testing.B) {
	for name, first := range map[string]int{"all_moved": 21, "nothing": 20} {
		old, new := synthetic(20), synthetic(first)
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				changes(old, new)
			}
		})
	}
}
