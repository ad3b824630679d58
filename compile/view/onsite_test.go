package view

import (
	"math"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/onsite"
	"barwright/compile/view/viewtest"
	"barwright/lang/length"

	"pgregory.net/rapid"
)

// onSite are all drawings for the floor, with type as large as papers of a size have it.
func onSite(m *model.Model, height Length) (views []model.View) {
	as := Type{Height: height}
	cards, poles, insides := onsite.Cards(m), onsite.Poles(m), onsite.Insides(m)
	for i := range cards {
		views = append(views, MarkingCard(m, &cards[i])(as))
	}
	for i := range poles {
		views = append(views, StoryPole(m, &poles[i])(as))
		const piece = 50
		for at := Length(0); at < poles[i].Length; at += piece * height {
			views = append(views, StripPiece(m, &poles[i], geom.Span{Lo: at, Hi: at + piece*height}, 4*height)(as))
		}
	}
	for i := range insides {
		views = append(views, ScrewLines(m, &insides[i])(as))
	}
	return append(views, BearingPoints(m)(as), SettingOrder(m)(as))
}

// misread lists figures that are more than half a mark off what they measure, or that are rounded
// and do not say so.
func misread(v *model.View, b model.Build) (out []string) {
	for _, d := range v.Dims {
		figure, _, _ := strings.Cut(d.Text.Text, "  ")
		figure = strings.TrimSuffix(figure, " above")
		told, rounded := strings.CutPrefix(figure, "~")
		got, wrong := length.Parse(told, b.Unit)
		long := Length(math.Round(math.Hypot(float64(d.B.X-d.A.X), float64(d.B.Y-d.A.Y))))
		off := max(got-long, long-got)
		const noise = 200 // nanometres: of places that came out of a turned frame
		if wrong != nil || off > b.Marks/2+noise || off > noise && !rounded {
			out = append(out, v.Name+": "+d.Text.Text+" is "+b.Show(off)+" off")
		}
	}
	return out
}

func TestOnSiteIsLegible(t *testing.T) {
	check := func(t interface{ Error(...any) }, m *model.Model) {
		for _, height := range []Length{20 * length.Millimetre, 60 * length.Millimetre} {
			for _, v := range onSite(m, height) {
				for _, f := range append(faultsOf(&v, &sheet{h: height, paper: true}), misread(&v, m.Build)...) {
					t.Error(f)
				}
			}
		}
	}
	check(t, viewtest.Bar())
	check(t, viewtest.Fitted())
	rapid.Check(t, func(t *rapid.T) { check(t, viewtest.Random(t)) })
}

func TestMisreadIsSeen(t *testing.T) {
	b := viewtest.Bar().Build
	for text, want := range map[string]int{"1": 0, "~1": 0, "~1 1/32": 1, "1 1/64": 1, "2": 1} {
		v := model.View{Dims: []model.Dim{{Text: model.Text{Text: text}}}}
		v.Dims[0].B.X = length.Inch
		if got := len(misread(&v, b)); got != want {
			t.Errorf("%q: %d found", text, got)
		}
	}
}
