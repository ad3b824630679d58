package view

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view/viewtest"
	"barwright/lang/length"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write golden files anew")

// untrue lists the dimensions whose text is not the distance between the
// points that they measure. A name may stand before the figure.
func untrue(v *model.View, b model.Build) []string {
	var out []string
	s := sheet{build: b}
	for _, d := range v.Dims {
		long := Length(math.Round(math.Hypot(float64(d.B.X-d.A.X), float64(d.B.Y-d.A.Y))))
		want := s.num(long)
		if strings.HasPrefix(d.Text.Text, "~") {
			want = s.mark(long)
		}
		if d.Text.Text != want && d.Text.Text != s.spot(long) && !strings.HasSuffix(d.Text.Text, " "+want) && !s.isRow(d.Text.Text, long) {
			out = append(out, fmt.Sprintf("%s: %q measures %s", v.Name, d.Text.Text, want))
		}
	}
	return out
}

// isRow reports whether a text like "19 × 32 mm" comes to a distance.
func (s *sheet) isRow(text string, long Length) bool {
	count, pitch, ok := strings.Cut(text, " × ")
	gaps, err := strconv.Atoi(count)
	return ok && err == nil && gaps > 0 && long%Length(gaps) == 0 && pitch == s.bit(long/Length(gaps))
}

func TestDimensionsAreTrue(t *testing.T) {
	for _, m := range []*model.Model{viewtest.Bar(), viewtest.Fitted()} {
		for _, v := range Views(m) {
			for _, f := range untrue(&v, m.Build) {
				t.Error(f)
			}
		}
	}
	wrong := model.View{Dims: []model.Dim{{B: geom.Point{X: length.Inch}, Text: model.Text{Text: "11"}}}}
	if len(untrue(&wrong, viewtest.Bar().Build)) != 1 {
		t.Error("a wrong dimension is not seen")
	}
}

// The figures are worked out by hand from the fixture: two outlets 17 5/8 and
// 40 in along; widths 24, 24 1/4, 36, 37 1/2 and 1 1/2, together 123 1/4; the
// knee wall is 72 in long.
func TestFiguresOfBar(t *testing.T) {
	want := map[string][]string{
		"plan":            {"north 123 1/4", "~23 1/4", "~38 3/4", "23 1/4", "3/16", "3 1/2", "61", "23 1/4", "1", "14 1/2", "east 110", "72", "72 1/2"},
		"elevation-back":  {"24", "24 1/4", "36", "37 1/2", "corner 1 1/2", "123 1/4", "17 5/8", "40", "15 1/2", "4", "30 3/4", "34 3/4"},
		"elevation-front": {"30", "18", "24", "72", "13", "19", "4", "30 3/4", "1 1/4", "4 1/2", "1 1/2", "36", "42"},
		"knee-wall-bar":   {"3/4", "16", "32", "48", "64", "71 1/4", "72", "8", "24", "40", "60", "72", "40 1/2", "1 1/2", "42"},
		"section-bar":     {"10 13/16", "3 1/2", "1 3/16", "9", "3 1/2", "3/16", "23 1/4", "1", "40 1/2", "1 1/2", "42", "4", "30 3/4", "1 1/4", "36"},
		"part-urn-bk":     {"16 1/2", "18 3/4", "24", "13 3/4", "17 1/4", "34 3/4"},
		"part-urn-l":      {"3", "23 1/16", "4", "4 23/32", "34 3/4"},
	}
	for _, v := range Views(viewtest.Bar()) {
		if figures, ok := want[v.Name]; ok {
			if diff := cmp.Diff(figures, dimTexts(&v)); diff != "" {
				t.Errorf("%s (-want +got):\n%s", v.Name, diff)
			}
			delete(want, v.Name)
		}
	}
	for name := range want {
		t.Errorf("no view %q", name)
	}
}

func dimTexts(v *model.View) []string {
	var texts []string
	for _, d := range v.Dims {
		texts = append(texts, d.Text.Text)
	}
	return texts
}

func TestGolden(t *testing.T) {
	var bar, fitted strings.Builder
	for _, v := range Views(viewtest.Bar()) {
		if v.Part == "" || v.Part == "cabinet.urn/back" {
			dump(&bar, &v)
		}
	}
	for _, v := range Views(viewtest.Fitted()) {
		switch v.Name {
		case "fronts-front", "knee-wall-bar-room", "part-urn-l", "part-urn-do", "part-k-p1":
			dump(&fitted, &v)
		}
	}
	golden(t, "bar.txt", bar.String())
	golden(t, "fitted.txt", fitted.String())
}

func golden(t *testing.T, file, got string) {
	t.Helper()
	path := filepath.Join("testdata", file)
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("views changed (-want +got); run with -update if they should:\n%s", diff)
	}
}

// dump writes a view as a reviewer reads it: millimetres, one thing a line.
func dump(b *strings.Builder, v *model.View) {
	size := v.Bounds
	fmt.Fprintf(b, "%s %q %q part=%q %.1f x %.1f mm, type %.2f mm\n", v.Name, v.Title, v.Note, v.Part,
		size.X.Size().MM(), size.Y.Size().MM(), v.TextHeight.MM())
	for _, s := range v.Shapes {
		r := s.Lines.Bounds()
		fmt.Fprintf(b, "  %-9s %9.1f %9.1f %9.1f %9.1f %s %q\n", s.Kind, r.X.Lo.MM(), r.Y.Lo.MM(), r.X.Hi.MM(), r.Y.Hi.MM(), s.Part, s.Title)
	}
	for _, d := range v.Dims {
		fmt.Fprintf(b, "  dim       %9.1f %9.1f %9.1f %9.1f off %.1f %q at %.1f %.1f\n", d.A.X.MM(), d.A.Y.MM(), d.B.X.MM(), d.B.Y.MM(),
			d.Offset.MM(), d.Text.Text, d.Text.At.X.MM(), d.Text.At.Y.MM())
	}
	for _, x := range v.Texts {
		fmt.Fprintf(b, "  text      %9.1f %9.1f turn %.1f %q\n", x.At.X.MM(), x.At.Y.MM(), x.Turn.Degrees(), x.Text)
	}
}

func TestViewsLeaveTheModelAlone(t *testing.T) {
	m := viewtest.Bar()
	first := Views(m)
	if !reflect.DeepEqual(m, viewtest.Bar()) {
		t.Error("the model was written to")
	}
	if !reflect.DeepEqual(first, Views(viewtest.Bar())) {
		t.Error("the same model gives different views")
	}
}

func TestNamesAreFileSafeAndUnique(t *testing.T) {
	m := viewtest.Bar()
	m.Runs[0].Name, m.Runs[1].Name = `../<b>"ä`, "../(b) ö"
	for i := range m.Parts {
		m.Parts[i].Label = strings.Repeat("long", 40)
	}
	seen := map[string]bool{}
	for _, v := range Views(m) {
		if !regexp.MustCompile(`^[a-z0-9_][a-z0-9._-]*$`).MatchString(v.Name) || len(v.Name) > 90 || seen[v.Name] {
			t.Errorf("name %q", v.Name)
		}
		seen[v.Name] = true
	}
}

// Empty and bare models are drawn as far as they go.
func TestLittleToDraw(t *testing.T) {
	if v := Views(&model.Model{}); len(v) > 0 {
		t.Errorf("an empty model has views: %v", v)
	}
	m := &model.Model{}
	m.Room.Walls = []model.Wall{{Name: "w", Length: 3 * length.Metre}, {Name: "none"}}
	m.Runs = []model.Run{{Name: "empty"}}
	m.KneeWalls = []model.KneeWall{{Name: "k", Framing: geom.Box{U: geom.Span{Hi: length.Metre}, V: geom.Span{Lo: -length.Inch}, Z: geom.Span{Hi: length.Metre}}}}
	for _, v := range Views(m) {
		for _, f := range faults(&v) {
			t.Error(f)
		}
	}
}

func TestEveryCutPartIsDrawn(t *testing.T) {
	m := viewtest.Bar()
	last := &m.Parts[len(m.Parts)-1]
	last.Outline = append(last.Outline[:3:3], geom.Vertex{Point: geom.Point{X: 1, Y: last.Outline[2].Y}}, last.Outline[3])
	drawn := map[string]bool{}
	for _, v := range Views(m) {
		drawn[v.Part] = true
		for _, id := range v.Alike {
			drawn[id] = true
		}
	}
	for _, p := range m.Parts {
		if want := len(p.Openings)+len(p.Recesses) > 0 || p.ID == last.ID; drawn[p.ID] != want {
			t.Errorf("part %s drawn: %v, want %v", p.ID, drawn[p.ID], want)
		}
	}
}

func TestRounding(t *testing.T) {
	s := sheet{build: model.Build{Unit: length.Inches, Marks: length.Inch / 32}}
	square := geom.R(0, 0, 3*length.Inch, 2*length.Inch)
	if got := s.rounding(geom.RoundedContour(square, length.Inch/4)); got != " Round corners have a radius of 1/4 in." {
		t.Errorf("got %q", got)
	}
	if got := s.rounding(geom.RectContour(square)); got != "" {
		t.Errorf("square corners: %q", got)
	}
}

// A left side looks to the right: its x runs from front to back. What is a
// hand's breadth from its front must come out there in the run's frame.
func TestInFrame(t *testing.T) {
	p := geom.Placement{
		Box: geom.Box{U: geom.Span{Lo: 100, Hi: 118}, V: geom.Span{Lo: 5, Hi: 605}, Z: geom.Span{Lo: 10, Hi: 890}},
		X:   geom.Dir{Axis: geom.V, Neg: true}, Y: geom.Dir{Axis: geom.Z}, Out: geom.Dir{Axis: geom.U},
	}
	face := geom.R(20, 30, 50, 70)
	got := p.Behind(face)
	want := geom.Box{U: geom.Span{Lo: 100, Hi: 118}, V: geom.Span{Lo: 555, Hi: 585}, Z: geom.Span{Lo: 40, Hi: 80}}
	if got != want {
		t.Errorf("got %v, want %v", got, want)
	}
	if back, _ := p.Local(got); back != face {
		t.Errorf("back on the face: %v, want %v", back, face)
	}
}

func BenchmarkViews(b *testing.B) {
	for name, m := range map[string]*model.Model{"bar": viewtest.Bar(), "fitted": viewtest.Fitted()} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				Views(m)
			}
		})
	}
}
