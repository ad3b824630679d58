package paper

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view"
	"barwright/compile/view/viewtest"
)

// written is all that stands on a paper.
func written(p *model.Paper) string {
	var all []string
	for _, l := range p.Lettering {
		all = append(all, l.Text)
	}
	return strings.Join(all, " ")
}

// TestRoundingIsTold: each paper for the floor with a figure that is rounded says so once, and no other.
func TestRoundingIsTold(t *testing.T) {
	told := 0
	for seed := range 10 {
		m := rapid.Custom(viewtest.Random).Example(seed)
		for _, p := range Site(m, Formats[Names[seed%len(Names)]]) {
			text := written(&p)
			figures := strings.Count(text, "~") - strings.Count(text, "after ~")
			says := strings.Count(text, "is rounded")
			if says > 1 || says == 1 != (figures > 0) {
				t.Errorf("build %d, %s: %d figures are rounded, and it is told %d times", seed, p.Name, figures, says)
			}
			told += says
		}
	}
	if told == 0 {
		t.Error("no paper has a figure that is rounded")
	}
}

// TestFootHasRoom: cautions of wiring and water and the rounding together take no more lines than are kept free.
func TestFootHasRoom(t *testing.T) {
	m := viewtest.Fitted()
	for _, name := range Names {
		size := Formats[name]
		text := strings.Join([]string{again, wireWords, pipeWords, m.Build.Rounding()}, " ")
		if n := len(lines(text, smallest, size.X-2*margin-2*air)); n > 2 {
			t.Errorf("%s: they take %d lines", name, n)
		}
	}
}

// TestUnnamedIsTold: what a drawing has no room to name is written above it, of the drawing as it then is.
func TestUnnamedIsTold(t *testing.T) {
	m := viewtest.Fitted()
	f := &flow{m: m, size: Formats["letter"]}
	f.open("card", "A card", "Words.")
	top := f.y
	names := strings.Repeat("outlet kettle; ", 30)
	var set Length // height of the type that it is drawn with in the end
	f.picture(func(as view.Type) model.View {
		height := as.Height
		set = height
		core := geom.R(0, 0, 900*mm, 700*mm)
		v := model.View{Bounds: core, TextHeight: height, Shapes: []model.Shape{{Lines: geom.RectContour(core), Closed: true}}}
		v.Note = " " + m.Build.Rounding() + " There is no room to name: " + names[:height/mm] + "."
		return v
	})
	s := f.last()
	text := written(&s.Paper)
	if strings.Contains(text, "~") {
		t.Error("the rounding is told twice")
	}
	_, told, _ := strings.Cut(text, "There is no room to name: ")
	if want := strings.Join(strings.Fields(names[:set/mm]+"."), " "); told != want {
		t.Errorf("at %s it says %q, not %q", s.ratio, told, want)
	}
	words := f.textHeight("There is no room to name: " + told)
	if b := s.Shapes[0].Lines.Bounds(); b.Y.Hi > top-words || b.Y.Lo < f.room().Y.Lo {
		t.Errorf("the drawing lies at %v, not between %v and %v", b.Y, f.room().Y.Lo, top-words)
	}
}
