package dxf

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/dxf/dxftest"
	"barwright/lang/latin"
	"barwright/lang/length"
)

// smallView has one of each thing that a drawing can hold, and names that would do harm.
func smallView() *model.View {
	line := func(points ...geom.Point) (c geom.Contour) {
		for _, p := range points {
			c = append(c, geom.Vertex{Point: p})
		}
		return c
	}
	up := 90 * geom.Degree
	shape := func(kind model.ShapeKind, c geom.Contour, closed bool) model.Shape {
		return model.Shape{Kind: kind, Lines: c, Closed: closed}
	}
	return &model.View{
		Name: "small", Title: "Run \"Süd\"\r\n  0\r\nEOF", Note: strings.Repeat("Seen from the front. ", 20),
		Part: "cabinet.a/side", Alike: []string{"cabinet.b/side"},
		Bounds: geom.R(-200*mm, -300*mm, 1200*mm, 900*mm), TextHeight: 50 * mm,
		Shapes: []model.Shape{
			shape(model.ShapeWall, rect(0, 700, 1000, 800), true),
			shape(model.ShapeHidden, line(point(0, 300), point(1000, 300)), false),
			shape(model.ShapeBore, geom.CircleContour(point(500, 500), 20*mm), true),
			shape(model.ShapeSlab, geom.RoundedContour(geom.R(0, 0, 400*mm, 200*mm), 50*mm), true),
			shape(model.ShapeAbove, geom.Contour{{Point: point(0, 400), Bulge: -0.5}, {Point: point(100, 400)}}, false),
			shape(model.ShapeThin, line(point(700, 0), point(700, 0), point(700, 100), point(800, 100)), false),
			shape(model.ShapeLeader, line(point(300, 600), point(400, 550), point(500, 500)), false),
		},
		Texts: []model.Text{
			{At: point(300, 620), Room: 200 * mm, Text: "Tür ½″ 50%%u^J\n\\P{\\H9;x}"},
			{At: point(300, 20), Text: "日本"},
			{At: point(300, 40), Text: "\u202e\t"},
		},
		Dims: []model.Dim{
			{A: point(0, 0), B: point(1000, 0), Offset: -100 * mm, Text: model.Text{At: point(500, -80), Room: 400 * mm, Text: "39 3/8"},
				Lead: []geom.Point{point(500, -100), point(520, -120), point(540, -120)}},
			{A: point(0, 0), B: point(0, 300), Offset: 100 * mm, Running: true, Text: model.Text{At: point(-120, 300), Turn: up, Text: "11 13/16"}},
			{A: point(0, 0), B: point(0, 800), Offset: 100 * mm, Running: true, Text: model.Text{At: point(-120, 800), Turn: up, Text: "31 1/2"}},
		},
	}
}

func drawn(t testing.TB, v *model.View, opt Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := WriteDrawing(&b, v, opt); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func readDrawing(t testing.TB, file []byte) *dxftest.Drawing {
	t.Helper()
	d, err := dxftest.ReadDrawing(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestDrawingGolden(t *testing.T) {
	for name, version := range map[string]Version{"drawing.dxf": R12, "drawing-r2000.dxf": R2000} {
		got := drawn(t, smallView(), Options{Version: version})
		path := filepath.Join("testdata", name)
		if *update {
			if err := os.WriteFile(path, got, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if want, err := os.ReadFile(path); err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s is not what is written, %v; go test ./emit/dxf -update rewrites it", name, err)
		}
	}
}

// on lists the strokes of a layer in words.
func on(d *dxftest.Drawing, layer string) (out []string) {
	for _, s := range d.Strokes {
		if s.Layer != layer {
			continue
		}
		words := s.Kind
		if s.Closed {
			words += " closed"
		}
		for _, v := range s.Line {
			words += fmt.Sprintf(" %s,%s", v.X.Decimal(length.Millimetres, 2), v.Y.Decimal(length.Millimetres, 2))
			if v.Bulge != 0 {
				words += fmt.Sprintf("(%.3f)", v.Bulge)
			}
		}
		if s.Radius != 0 {
			words += " r" + s.Radius.Decimal(length.Millimetres, 2)
		}
		if s.Width != 0 {
			words += " w" + s.Width.Decimal(length.Millimetres, 2)
		}
		out = append(out, words)
	}
	return out
}

// Worked out by hand from smallView. Type is 50 mm high: dots are 50/7 in radius, so
// rings of half that, as wide as the whole; rings of running dimensions 12.5.
func TestDrawingReadsBack(t *testing.T) {
	for _, version := range []Version{R12, R2000} {
		d := readDrawing(t, drawn(t, smallView(), Options{Version: version}))
		for layer, want := range map[string][]string{
			"WALL":      {"POLYLINE closed 0,700 1000,700 1000,800 0,800"},
			"HIDDEN":    {"LINE 0,300 1000,300"},
			"BORE":      {"CIRCLE closed 500,500 r20"},
			"SLAB":      {"POLYLINE closed 50,0 350,0(0.414) 400,50 400,150(0.414) 350,200 50,200(0.414) 0,150 0,50(0.414)"},
			"ABOVE":     {"POLYLINE 0,400(-0.500) 100,400"},
			"EXTENSION": {"POLYLINE 700,0 700,100 800,100"},
			"LEADER": {"POLYLINE 300,600 400,550 500,500",
				"POLYLINE closed 496.43,500(1.000) 503.57,500(1.000) w7.14"},
			"DIMENSION": {
				"LINE 0,-100 1000,-100",
				"LINE 0,-12.5 0,-116.67", "LINE -12.5,-112.5 12.5,-87.5",
				"LINE 1000,-12.5 1000,-116.67", "LINE 987.5,-112.5 1012.5,-87.5",
				"LINE 500,-100 520,-120", "LINE 520,-120 540,-120",
				"LINE -100,0 -100,300", "LINE -12.5,300 -116.67,300", "LINE -112.5,287.5 -87.5,312.5",
				"CIRCLE closed -100,0 r12.5",
				"LINE -100,0 -100,800", "LINE -12.5,800 -116.67,800", "LINE -112.5,787.5 -87.5,812.5",
			},
		} {
			if got := on(d, layer); !slices.Equal(got, want) {
				t.Errorf("on %s\n%q, want\n%q", layer, got, want)
			}
		}
		if d.Unit != "4" {
			t.Errorf("unit %s", d.Unit)
		}
	}
}

// In inches, 1000 mm are 39.37007874, capitals of 35 mm are 1.377952756.
func TestDrawingInInches(t *testing.T) {
	for _, version := range []Version{R12, R2000} {
		file := string(drawn(t, smallView(), Options{Version: version, Inch: true}))
		for _, want := range []string{
			"$INSUNITS\r\n 70\r\n1\r\n", " 11\r\n39.37007874\r\n", " 40\r\n1.377952756\r\n", "UNITS IN, REAL SIZE",
		} {
			if !strings.Contains(file, want) {
				t.Errorf("version %d lacks %q", version, want)
			}
		}
	}
}

// Lines that are not solid: type is 50 mm high, so a tenth of it is 5 mm.
func TestDrawingLineTypes(t *testing.T) {
	for _, version := range []Version{R12, R2000} {
		d := readDrawing(t, drawn(t, smallView(), Options{Version: version}))
		for layer, want := range map[string][]length.Length{
			"HIDDEN": {30 * mm, -15 * mm}, "OUTLET": {30 * mm, -15 * mm}, "STUB": {30 * mm, -15 * mm},
			"CENTRE": {50 * mm, -15 * mm, 10 * mm, -15 * mm}, "MARK": {50 * mm, -15 * mm, 10 * mm, -15 * mm},
			"ABOVE": {70 * mm, -15 * mm, 15 * mm, -15 * mm, 15 * mm, -15 * mm}, "WALL": nil, "BEYOND": nil,
		} {
			if got := d.Dashes[d.LineType[layer]]; !slices.Equal(got, want) {
				t.Errorf("%s has the dashes %v, want %v", layer, got, want)
			}
		}
	}
}

// Capitals are 35 mm high. "Tuer 1/2" 50%u?J /P{/H9;x}" has 26 letters: as wide as
// high they would need 910 mm, and 200 are free.
func TestDrawingTexts(t *testing.T) {
	for _, version := range []Version{R12, R2000} {
		d := readDrawing(t, drawn(t, smallView(), Options{Version: version}))
		var title []string
		var got []dxftest.Label
		for _, l := range d.Labels {
			if l.Layer == "TITLE" {
				title = append(title, l.Text)
				continue
			}
			got = append(got, l)
		}
		label := func(layer, text string, at geom.Point, turn, wide float64) dxftest.Label {
			return dxftest.Label{Layer: layer, Text: text, At: at, Height: 35 * mm, Turn: turn, Wide: wide, Centred: true}
		}
		want := []dxftest.Label{
			label("TEXT", `Tuer 1/2" 50%u?J /P{/H9;x}`, point(300, 620), 0, 0.220),
			label("TEXT", "??", point(300, 20), 0, 1),
			label("DIMENSION", "39 3/8", point(500, -80), 0, 1),
			label("DIMENSION", "11 13/16", point(-120, 300), 90, 1),
			label("DIMENSION", "31 1/2", point(-120, 800), 90, 1),
		}
		if !slices.Equal(got, want) {
			t.Errorf("texts\n%+v, want\n%+v", got, want)
		}
		if len(title) < 5 || title[0] != `Run "Sued" 0 EOF` || title[len(title)-2] != "UNITS MM, REAL SIZE" ||
			title[len(title)-1] != "the same: cabinet.a/side, cabinet.b/side" {
			t.Errorf("title %q", title)
		}
		for _, line := range title {
			if length.Length(len(line))*35*mm > 1400*mm {
				t.Errorf("%q is wider than the view", line)
			}
		}
	}
}

// Every kind of shape has a layer of its own, which is defined.
func TestDrawingLayers(t *testing.T) {
	defined := map[string]bool{}
	for _, l := range drawingLayers {
		if defined[l.name] {
			t.Errorf("layer %s is there twice", l.name)
		}
		defined[l.name] = true
	}
	taken := map[string]model.ShapeKind{}
	for kind, name := range kindLayers {
		if other, ok := taken[name]; ok || !defined[name] || latin.Layer(name, "") != name {
			t.Errorf("layer %s of %s: defined %v, also of %s", name, kind, defined[name], other)
		}
		taken[name] = kind
	}
}

// The table of layers in SPEC.md 13.3 is that of the files.
func TestDrawingLayersInSpec(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "SPEC.md"))
	if err != nil {
		t.Fatal(err)
	}
	_, section, _ := strings.Cut(string(text), "### 13.3 ")
	section, _, _ = strings.Cut(section, "\n### ")
	want := map[string]string{}
	for line := range strings.Lines(section) {
		if cells := strings.Split(line, "|"); strings.HasPrefix(line, "| `") {
			for name := range strings.SplitSeq(cells[1], ",") {
				want[strings.Trim(name, " `")] = strings.TrimPrefix(strings.Trim(cells[3], " `"), "solid")
			}
		}
	}
	for _, l := range drawingLayers[1:] {
		if line, ok := want[l.name]; !ok || line != l.lineType {
			t.Errorf("layer %s has the line %q; SPEC.md lists it: %v, with %q", l.name, l.lineType, ok, line)
		}
		delete(want, l.name)
	}
	if len(want) > 0 {
		t.Errorf("SPEC.md lists %v too", want)
	}
}

func TestDrawingIsRefused(t *testing.T) {
	for _, test := range []struct {
		shape model.Shape
		want  string
	}{
		{model.Shape{Kind: "cloud", Lines: rect(0, 0, 1, 1), Closed: true}, "no layer"},
		{model.Shape{Kind: model.ShapeWall, Lines: rect(0, 0, 1, 1)[:1]}, "no length"},
		{model.Shape{Kind: model.ShapeWall}, "no length"},
		{model.Shape{Kind: model.ShapeWall, Lines: geom.Contour{{Bulge: math.NaN()}, {Point: point(1, 0)}}}, "no bulge"},
	} {
		var b bytes.Buffer
		err := WriteDrawing(&b, &model.View{Name: "v", Shapes: []model.Shape{test.shape}}, Options{})
		if err == nil || !strings.Contains(err.Error(), test.want) || b.Len() > 0 {
			t.Errorf("error %v after %d bytes, want %q", err, b.Len(), test.want)
		}
	}
}

// An independent reader finds nothing wrong with a drawing in either version.
func TestInspectedDrawing(t *testing.T) {
	dir := t.TempDir()
	var files []string
	for _, version := range []Version{R12, R2000} {
		files = append(files, filepath.Join(dir, [...]string{"r12", "r2000"}[version]+".dxf"))
		if err := os.WriteFile(files[version], drawn(t, smallView(), Options{Version: version}), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	dxftest.Audit(t, files)
}
