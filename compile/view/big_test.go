package view

import (
	"fmt"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view/viewtest"
	"barwright/lang/length"
)

// manyCabinets is a run of so many cabinets of twelve parts each.
func manyCabinets(n int) *model.Model {
	m := &model.Model{Build: viewtest.Bar().Build}
	r := model.Run{Name: "long", Depth: 600 * length.Millimetre, Height: 900 * length.Millimetre}
	const wide, deep, high, thick = 600 * length.Millimetre, 600 * length.Millimetre, 900 * length.Millimetre, 18 * length.Millimetre
	for i := range n {
		at := Length(i) * wide
		box := model.Box{Kind: model.Cabinet, Name: fmt.Sprint("c", i), Hull: geom.Box{U: geom.Span{Lo: at, Hi: at + wide}, V: geom.Span{Hi: deep}, Z: geom.Span{Hi: high}}}
		add := func(name string, u, v, z geom.Span, out geom.Axis) {
			place := geom.Place(r.Frame, geom.Box{U: u.Shift(at), V: v, Z: z}, geom.Dir{Axis: out})
			m.Parts = append(m.Parts, model.Part{ID: box.Key() + "/" + name, Label: name, Name: name, Owner: box.Words(),
				Placement: place, Outline: geom.RectContour(place.Blank()), Thickness: place.Thickness()})
		}
		whole := func(hi Length) geom.Span { return geom.Span{Hi: hi} }
		inside := geom.Span{Lo: thick, Hi: wide - thick}
		add("left", whole(thick), whole(deep), whole(high), geom.U)
		add("right", geom.Span{Lo: wide - thick, Hi: wide}, whole(deep), whole(high), geom.U)
		add("back", inside, whole(thick), whole(high), geom.V)
		for k := range 9 {
			low := Length(k) * 95 * length.Millimetre
			add(fmt.Sprint("shelf-", k), inside, geom.Span{Lo: thick, Hi: deep}, geom.Span{Lo: low, Hi: low + thick}, geom.Z)
		}
		r.Boxes = append(r.Boxes, box)
		r.Length = at + wide
	}
	m.Runs = []model.Run{r}
	return m
}

func BenchmarkPictures(b *testing.B) {
	for _, n := range [...]int{250, 1000} {
		m := manyCabinets(n)
		for _, of := range []struct {
			name string
			draw func()
		}{{"whole", func() { axonometric(m, asItStands(m).painted(), Type{}) }}, {"apart", func() { exploded(m, asItStands(m).takenApart(m).painted(), Type{}) }}} {
			b.Run(fmt.Sprintf("%s-%d", of.name, len(m.Parts)), func(b *testing.B) {
				for b.Loop() {
					of.draw()
				}
			})
		}
	}
	for name, m := range map[string]*model.Model{"bar": viewtest.Bar(), "fitted": viewtest.Fitted()} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				axonometric(m, asItStands(m).painted(), Type{})
				exploded(m, asItStands(m).takenApart(m).painted(), Type{})
			}
		})
	}
}
