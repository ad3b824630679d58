package setting_test

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/setting"
	"barwright/lang/length"
)

// A box whose back has a hole round a stub from the wall behind, before a taller one that
// would stand in its way.
func ExampleRoom_Order() {
	const mm = length.Millimetre
	span := func(lo, hi setting.Length) geom.Span { return geom.Span{Lo: lo * mm, Hi: hi * mm} }
	back := geom.Box{U: span(0, 600), V: span(0, 18), Z: span(0, 870)}
	hole := geom.Box{U: span(295, 355), V: span(-1, 19), Z: span(395, 455)}
	low := setting.Body{Name: "low box", Solids: []setting.Solid{{Name: "top", Box: geom.Box{U: span(0, 600), V: span(18, 400), Z: span(852, 870)}}}}
	for _, b := range setting.Less(back, hole) {
		low.Solids = append(low.Solids, setting.Solid{Name: "back", Box: b})
	}
	room := setting.Room{
		Fixed: []setting.Solid{
			{Name: "floor", Box: geom.Box{U: span(-5000, 5000), V: span(-5000, 5000), Z: span(-100, 0)}},
			{Name: "wall", Box: geom.Box{U: span(-5000, 5000), V: span(-100, 0), Z: span(0, 2500)}},
			{Name: "stub", Box: geom.Box{U: span(300, 350), V: span(0, 90), Z: span(400, 450)}},
		},
		Bodies: []setting.Body{
			{Name: "tall box", Solids: []setting.Solid{{Name: "side", Box: geom.Box{U: span(0, 600), V: span(450, 900), Z: span(0, 2100)}}}},
			low,
		},
	}
	steps, _ := room.Order()
	for _, s := range steps {
		for _, slide := range s.Slides {
			fmt.Println(s.Body, slide.Dir, slide.By/mm, "after", s.After)
		}
	}
	room.Bodies[0].Stands = true
	_, blocked := room.Order()
	for _, h := range blocked.Hits[:3] {
		fmt.Println(h.Body, h.Slide.Dir, h.Slide.By/mm, h.Solid, "hits", h.By, h.Overlap/mm)
	}
	// Output:
	// low box -v 400 after []
	// tall box -v 450 after [low box]
	// low box +v 50 top hits tall box 600
	// low box +u 5 back hits stub 18
	// low box -u 5 back hits stub 18
}
