package revise

import (
	"slices"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

func TestReadMade(t *testing.T) {
	old := build(with(panel("CUPS", 600, 700), geom.R(400, 0, 500, 100)), panel("URN", 300, 400))
	inches := build(old.Parts...)
	inches.Build.Unit, inches.Build.Marks = length.Inches, length.Inch/32
	old.Build.Unit = length.Millimetres
	for _, test := range []struct {
		name, text string
		old        *model.Model
		want       []Made
		wrong      string
	}{
		{"nothing", "", old, []Made{}, ""},
		{"comments and blank lines", "# sheet 1\n\n\tCUPS-P1 # done\r\nURN-P1\r\n", old, []Made{{Label: "CUPS-P1"}, {Label: "URN-P1"}}, ""},
		{"sizes", "CUPS-P1  598.5 x 701", old, []Made{{"CUPS-P1", 598_500_000, 701 * mm}}, ""},
		{"fractions", "CUPS-P1\t23 1/4 x 27-1/2in", inches, []Made{{"CUPS-P1", 590_550_000, 698_500_000}}, ""},
		{"other units, another cross", "URN-P1 11 7/8in×40cm", old, []Made{{"URN-P1", 301_625_000, 400 * mm}}, ""},
		{"no such label", "CUP-P1", old, nil, `line 1: no part of the old build has the label "CUP-P1"; did you mean "CUPS-P1"?`},
		{"small letters", "urn-p1", old, nil, `line 1: no part of the old build has the label "urn-p1"; did you mean "URN-P1"?`},
		{"nothing like it", "kettle", old, nil, `line 1: no part of the old build has the label "kettle"`},
		{"twice", "URN-P1\nCUPS-P1\nURN-P1", old, nil, `line 3: "URN-P1" stands in line 1 already; each label is one piece`},
		{"one side", "URN-P1 300", old, nil, `line 1: "300" is no size over all; write x and y as drawn, as in "590 x 876"`},
		{"no length", "URN-P1 300 x wide", old, nil, `line 1: "wide" is no length: `},
		{"nothing left", "URN-P1 0 x 400", old, nil, `line 1: "0" is no size: a piece is longer than 0`},
		{"less than its opening", "CUPS-P1 450 x 700", old, nil, `line 1: "CUPS-P1" is 600 mm x 700 mm in the old build; at 450 mm x 700 mm it ` +
			`would lack what is cut in it or along its edges, and be another piece`},
		{"every wrong line", "A\nURN-P1\nB", old, nil, "line 1: no part of the old build has the label \"A\"\n" +
			"line 3: no part of the old build has the label \"B\""},
		{"a file of another kind", strings.Repeat("x", 100_000), old, nil, "line 1 is far longer than a label and a size"},
	} {
		got, err := ReadMade(strings.NewReader(test.text), test.old)
		text := ""
		if err != nil {
			text = err.Error()
		}
		if !slices.Equal(got, test.want) || (got == nil) != (test.want == nil) || !strings.HasPrefix(text, test.wrong) || test.wrong == "" && err != nil {
			t.Errorf("%s: %v, %q; want %v, %q", test.name, got, text, test.want, test.wrong)
		}
	}
	many, err := ReadMade(strings.NewReader(strings.Repeat("kettle\n", 1000)), old)
	if many != nil || strings.Count(err.Error(), "\n")+1 != mostErrors {
		t.Errorf("a list of nothing: %v, %v", many, err)
	}
}

// Sizes are measured over the banding.
func TestMadeWithBanding(t *testing.T) {
	part := panel("A", 600, 700)
	for e := range model.Edge(3) {
		part.Bands = append(part.Bands, model.Band{Edge: e, Stock: "banding.oak", Thickness: (1 + model.Length(e)) * mm})
	}
	if x, y := part.OverAll(); x != 602*mm || y != 704*mm {
		t.Fatalf("%v x %v over all", x, y)
	}
	if same, ok := (Made{X: 602 * mm, Y: 704 * mm}).of(&part); !ok || same != &part {
		t.Error("as large as it is, it is another piece")
	}
	got, ok := Made{X: 601 * mm, Y: 704 * mm}.of(&part)
	if x, y := got.Size(); !ok || x != 599*mm || y != 700*mm {
		t.Errorf("%v x %v, %v", x, y, ok)
	}
}

// A stick is measured in either order, on either face.
func TestMadeOfLumber(t *testing.T) {
	lying, standing := panel("A", 600, 90), panel("B", 90, 600)
	for _, p := range []*model.Part{&lying, &standing} {
		p.Kind, p.Thickness, p.Grain = model.Lumber, 40*mm, model.GrainX
	}
	standing.Grain = model.GrainY
	old := build(lying, standing)
	old.Build.Unit = length.Millimetres
	for text, want := range map[string]Made{
		"A-P1 590 x 90":   {"A-P1", 590 * mm, 90 * mm},
		"A-P1 90 x 590":   {"A-P1", 590 * mm, 90 * mm},
		"A-P1 590 x 40":   {"A-P1", 590 * mm, 90 * mm},
		"A-P1 40 x 590":   {"A-P1", 590 * mm, 90 * mm},
		"B-P1 590 x 90":   {"B-P1", 90 * mm, 590 * mm},
		"B-P1 90.5 x 590": {"B-P1", 90_500_000, 590 * mm},
		"B-P1 90 x 90":    {"B-P1", 90 * mm, 90 * mm},
		"A-P1 590 x 600":  {},
		"A-P1 590 x 88":   {},
	} {
		got, err := ReadMade(strings.NewReader(text), old)
		switch {
		case want == Made{}:
			if err == nil || !strings.Contains(err.Error(), `"A-P1" is 600 mm x 90 mm in the old build, and 40 mm thick; neither 590 mm nor `) {
				t.Errorf("%s: %v, %v", text, got, err)
			}
		case err != nil || got[0] != want:
			t.Errorf("%s: %v, %v", text, got, err)
		}
	}
}

// The right and the top edge move, with the notch and the round corner there; all else
// stays.
func TestMadeOf(t *testing.T) {
	part := panel("A", 600, 700)
	part.Outline = geom.Contour{ // a notch at the right, a round corner above it
		{Point: geom.Point{}}, {Point: geom.Point{X: 600 * mm}}, {Point: geom.Point{X: 600 * mm, Y: 200 * mm}}, {Point: geom.Point{X: 500 * mm, Y: 200 * mm}},
		{Point: geom.Point{X: 500 * mm, Y: 300 * mm}}, {Point: geom.Point{X: 600 * mm, Y: 300 * mm}},
		{Point: geom.Point{X: 600 * mm, Y: 650 * mm}, Bulge: 0.41421356237309503}, {Point: geom.Point{X: 550 * mm, Y: 700 * mm}}, {Point: geom.Point{Y: 700 * mm}},
	}
	part.Openings = []model.Opening{{Notch: true, Shape: geom.RectContour(geom.R(500*mm, 200*mm, 600*mm, 300*mm))}}
	part.Recesses = []model.Recess{{Shape: geom.RectContour(geom.R(0, 600*mm, 600*mm, 610*mm))}}
	part.Bores = []model.Bore{{At: geom.Point{X: 30 * mm, Y: 40 * mm}, Diameter: 5 * mm}}
	whole := part.Outline.Area()
	got, ok := Made{X: 590 * mm, Y: 710 * mm}.of(&part)
	if x, y := got.Size(); !ok || x != 590*mm || y != 710*mm {
		t.Fatalf("%v x %v, %v", x, y, ok)
	}
	// 10 mm less at the right above and below the notch, 10 more along the top, and the
	// notch less deep by so much.
	if area, want := got.Outline.Area(), whole-10*(700-100)+10*590; area < want-1e-3 || area > want+1e-3 {
		t.Errorf("%f mm2, want %f", area, want)
	}
	if r, ok := got.Outline.Rounding(); !ok || r != 50*mm {
		t.Errorf("the corner's radius is %v", r)
	}
	if b := got.Openings[0].Shape.Bounds(); b != geom.R(500*mm, 200*mm, 590*mm, 300*mm) {
		t.Errorf("the notch is %v", b)
	}
	if b := got.Recesses[0].Shape.Bounds(); b != geom.R(0, 600*mm, 590*mm, 610*mm) {
		t.Errorf("the recess is %v", b)
	}
	if got.Bores[0] != part.Bores[0] || part.Outline.Area() != whole || part.Openings[0].Shape.Bounds().X.Hi != 600*mm {
		t.Error("what stays has moved")
	}
	if same, ok := (Made{}).of(&part); !ok || same != &part {
		t.Error("a piece that was not measured is another")
	}
	for _, m := range []Made{{X: 500 * mm}, {X: 20 * mm, Y: 700 * mm}, {Y: 610 * mm}} {
		if _, ok := m.of(&part); ok {
			t.Errorf("%+v lacks what is cut there, and serves", m)
		}
	}
}
