package view

import (
	"fmt"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view/viewtest"
	"barwright/lang/length"
)

// A drawing with room for all of 230 names leads to 160, names 60 in its note and counts the others; one
// that is full of lines gives up after 24.
func TestFullDrawing(t *testing.T) {
	for _, full := range []bool{false, true} {
		core := geom.R(0, 0, 100*length.Metre, 100*length.Metre)
		s := newSheet(&model.Model{}, core, Type{Height: 400 * length.Millimetre}, roomShare)
		if full {
			s.solid.add(boxOfRect(core.Grow(100 * length.Metre)))
		}
		for i := range 230 {
			s.callout(geom.Point{X: Length(i%16*6+3) * length.Metre, Y: Length(i/16*6+3) * length.Metre}, fmt.Sprintf("thing-%d", i))
		}
		v := s.finish()
		led := 160
		if full {
			led = 0
		}
		var rest []string
		for i := range 60 {
			rest = append(rest, fmt.Sprintf("thing-%d", led+i))
		}
		want := fmt.Sprintf(" There is no room to name: %s; and %d more.", strings.Join(rest, "; "), 230-60-led)
		if len(v.Texts) != led || !strings.HasSuffix(v.Note, want) {
			t.Errorf("full %v: %d names in the drawing, and its note says %q", full, len(v.Texts), v.Note)
		}
	}
}

// Of more than 3000 parts no picture of all taken apart is drawn, and the whole says so; of as many it is.
func TestApartOfMany(t *testing.T) {
	for parts, want := range map[int]bool{3000: true, 3001: false} {
		m := viewtest.Bar()
		for len(m.Parts) < parts {
			m.Parts = append(m.Parts, model.Part{ID: fmt.Sprint("more-", len(m.Parts))})
		}
		var names []string
		told := false
		for _, v := range Views(m) {
			names = append(names, v.Name)
			told = told || v.Name == "axonometric" && strings.Contains(v.Note, "too many parts")
		}
		all := strings.Join(names, " ") + " "
		if strings.Contains(all, " exploded ") != want || told == want || !strings.Contains(all, " exploded-wall-") {
			t.Errorf("of %d parts there are %s; told %v", parts, all, told)
		}
	}
}
