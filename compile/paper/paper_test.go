package paper

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view"
	"barwright/compile/view/viewtest"
	"barwright/lang/length"
)

func fitted() *model.Model {
	m := viewtest.Fitted()
	m.Views = view.Views(m)
	return m
}

// TestPapers looks at papers of random builds: numbered and named, every view on one of them in its
// order, and all that is drawn within the frame.
func TestPapers(t *testing.T) {
	for seed := range 20 {
		m := rapid.Custom(viewtest.Random).Example(seed)
		m.Views = view.Views(m)
		size := Formats[Names[seed%len(Names)]]
		papers := Drawings(m, view.Drawings(m), size)
		names := map[string]bool{}
		for i, p := range papers {
			if p.Number != i+1 || p.Of != len(papers) || !strings.HasPrefix(p.Name, fmt.Sprintf("%02d-", i+1)) || names[p.Name] {
				t.Errorf("build %d: paper %d of %d is called %q", seed, p.Number, p.Of, p.Name)
			}
			names[p.Name] = true
			frame := geom.R(0, 0, p.Size.X, p.Size.Y).Grow(-margin)
			for _, s := range p.Shapes {
				if b := s.Lines.Bounds(); !frame.Contains(b) {
					t.Errorf("build %d, %s: a %s at %v leaves the frame", seed, p.Name, s.Kind, b)
				}
			}
		}
	}
}

// TestOrder holds that views keep their order, and that none is lost.
func TestOrder(t *testing.T) {
	m := fitted()
	for _, name := range Names {
		var titles []string
		for _, p := range Drawings(m, view.Drawings(m), Formats[name]) {
			for _, l := range p.Lettering {
				if l.Bold && l.Height == heading {
					titles = append(titles, l.Text)
				}
			}
		}
		var want []string
		for _, v := range m.Views {
			want = append(want, v.Title)
		}
		// A title may take two lines.
		if got := strings.Join(titles, " "); got != strings.Join(want, " ") {
			t.Errorf("%s: titles are\n%s\nnot\n%s", name, got, strings.Join(want, " "))
		}
	}
}

// TestShelves: two beside each other, a third below at the smaller of its scales, a fourth on a
// paper of its own.
func TestShelves(t *testing.T) {
	of := func(wide, high Length, n scale) item { return item{wide: wide * mm, high: high * mm, scale: n} }
	papers := shelves([][]item{
		{of(100, 60, 1)}, {of(90, 80, 1)}, {of(150, 120, 1), of(75, 60, 2)}, {of(150, 20, 1)},
	}, geom.R(0, 0, 200*mm, 150*mm))
	var got []string
	for _, rows := range papers {
		for _, r := range rows {
			line := ""
			for _, it := range r.items {
				line += fmt.Sprintf(" %dx%d", it.wide/mm, it.high/mm)
			}
			got = append(got, fmt.Sprintf("%d,%d:%s", r.wide/mm, r.high/mm, line))
		}
		got = append(got, "")
	}
	want := "196,80: 100x60 90x80|75,60: 75x60||150,20: 150x20|"
	if s := strings.Join(got, "|"); s != want {
		t.Errorf("%s\nnot\n%s", s, want)
	}
}

// TestAnySizeFits: what is up to 1000 m long, and high, stands on any paper at a scale of the trade, with
// a bar beside it.
func TestAnySizeFits(t *testing.T) {
	for unit, names := range map[length.Unit]map[Length]string{
		length.Inches:      {30: "1/16 in = 1 ft (1:192)", 70: "1/32 in = 1 ft (1:384)", 1000: "1 in = 500 ft (1:6000)"},
		length.Millimetres: {30: "1:200", 70: "1:500", 1000: "1:5000"},
	} {
		m := &model.Model{Build: model.Build{Unit: unit}}
		for metres, want := range names {
			for _, high := range []Length{1, metres} {
				v := model.View{Bounds: geom.R(0, 0, metres*length.Metre, high*length.Metre/2)}
				draw := func(as view.Type) model.View {
					v.TextHeight = as.Height
					return v
				}
				room := geom.R(0, 0, 240*mm, 170*mm)
				it := fit(m, &v, draw, room)[0]
				if got := it.scale.words(unit); got != want || !it.fits(room) {
					t.Errorf("%d m stand at %s, not %s; they take %v x %v", metres, got, want, it.wide, it.high)
				}
				if step, long := it.scale.step(unit); it.scale.on(step) < 6*mm || it.scale.on(step) > 25*mm {
					t.Errorf("at %s a bar of %s is %v long", want, long, 4*it.scale.on(step))
				}
			}
		}
	}
}

// TestCheckBar measures the bar of the title block: it is what it says.
func TestCheckBar(t *testing.T) {
	for unit, want := range map[length.Unit]Length{length.Inches: 4 * length.Inch, length.Millimetres: 100 * mm} {
		m := fitted()
		m.Build.Unit = unit
		m.Views = view.Views(m)
		p := Drawings(m, view.Drawings(m), Formats["A4"])[0]
		bar := geom.Rect{}
		for _, s := range p.Shapes {
			b := s.Lines.Bounds()
			if (s.Kind == model.ShapeInk || s.Kind == model.ShapeRing) && s.Closed && b.Y.Hi < margin+block/2 {
				if bar.X.Size() == 0 {
					bar = b
				}
				bar = bar.Union(b)
			}
		}
		if bar.X.Size() != want {
			t.Errorf("%v: the bar is %v long, not %v", unit, bar.X.Size(), want)
		}
	}
}

// TestHatches hatches a square of 30 mm with a text in it: at 45 degrees, within the square, clear
// of the text, and evenly.
func TestHatches(t *testing.T) {
	s := newSheet(Formats["A4"])
	square, text := geom.R(40*mm, 40*mm, 70*mm, 70*mm), geom.R(50*mm, 53*mm, 60*mm, 57*mm)
	s.hatch(&model.Shape{Kind: model.ShapeSlab, Lines: geom.RectContour(square), Closed: true, Cut: true}, []geom.Contour{geom.RectContour(text)})
	cut := 0
	for _, h := range s.Shapes {
		a, b := h.Lines[0].Point, h.Lines[1].Point
		if h.Kind != model.ShapeHatch || b.X-a.X != b.Y-a.Y || !square.Contains(h.Lines.Bounds()) {
			t.Fatalf("%v is no hatch of the square", h)
		}
		if over := h.Lines.Bounds().Intersect(text); over.X.Size() > 0 && over.Y.Size() > 0 && len(geom.RectContour(text.Grow(-mm/100)).Clip(a, b)) > 0 {
			t.Errorf("%v crosses the text", h.Lines)
		}
		if a.X == text.X.Hi || b.X == text.X.Lo || a.Y == text.Y.Hi || b.Y == text.Y.Lo {
			cut++
		}
	}
	// 3 mm apart across the lines: 4.242 mm along an edge, so 14 or 15 over two edges of 30 mm.
	if n := len(s.Shapes) - cut/2; n < 13 || n > 15 || cut == 0 {
		t.Errorf("%d hatches, %d ends at the text", n, cut)
	}
	s.Shapes = nil
	s.hatch(&model.Shape{Kind: model.ShapeSteel, Lines: geom.RectContour(geom.R(0, 0, 30*mm, mm)), Closed: true, Cut: true}, nil)
	if len(s.Shapes) != 1 || s.Shapes[0].Kind != model.ShapeInk {
		t.Errorf("what is 1 mm wide is not black: %v", s.Shapes)
	}
}

// TestSection looks for all that the section through the bar must show: what is cut of it, hatched
// or black, and its heights.
func TestSection(t *testing.T) {
	m := fitted()
	for _, p := range Drawings(m, view.Drawings(m), Formats["letter"]) {
		if !strings.HasPrefix(p.Title, "Section") {
			continue
		}
		kinds, said := map[model.ShapeKind]bool{}, map[string]bool{}
		for _, s := range p.Shapes {
			if s.Cut || s.Kind == model.ShapeHatch {
				kinds[s.Kind] = true
			}
		}
		for _, l := range p.Lettering {
			said[strings.TrimPrefix(strings.TrimPrefix(l.Text, "knee "), "wall ")] = true // in one line or two
		}
		for _, kind := range []model.ShapeKind{model.ShapeSlab, model.ShapeSteel, model.ShapeFraming, model.ShapeHatch} {
			if !kinds[kind] {
				t.Errorf("nothing of %s is cut", kind)
			}
		}
		// Bar top at 42 in over a counter at 36 in; it reaches 14 1/2 in before the run's back,
		// 10 13/16 in before the framing (14 1/2 - 3 1/2 - 3/16).
		for _, text := range []string{"42", "36", "10 13/16", "bar", "counter work"} {
			if !said[text] {
				t.Errorf("%q is not on the section", text)
			}
		}
		return
	}
	t.Error("no section")
}

// Where the type of a view takes so much room that no smaller scale helps, it is drawn with smaller type, and
// not as a dot: this one, 10 m wide, has 40 heights of type on either side.
func TestCrowdedTakesSmallerType(t *testing.T) {
	m := &model.Model{Build: model.Build{Unit: length.Millimetres}}
	core := geom.R(0, 0, 10*length.Metre, length.Metre)
	draw := func(as view.Type) model.View {
		v := model.View{TextHeight: as.Height, Bounds: geom.R(core.X.Lo-40*as.Height, 0, core.X.Hi+40*as.Height, core.Y.Hi)}
		v.Shapes = []model.Shape{{Lines: geom.RectContour(core), Closed: true}}
		return v
	}
	first := draw(view.Type{})
	// Type of 2.8 takes 224 mm of 240 and leaves 16: at 1:1000 it would fit, as 10 mm. At 1:200 it is 50 mm,
	// less than a third of the room, which no smaller scale betters; there 190 mm are left for 80 heights,
	// 2.375 mm, and 4/5 of 2.8 is the first that is less.
	it := fit(m, &first, draw, geom.R(0, 0, 240*mm, 170*mm))[0]
	if high := it.scale.on(it.view.TextHeight); it.scale != 200 || high != 224*mm/100 {
		t.Errorf("it is drawn at 1:%d with type of %v", it.scale, high)
	}
}
