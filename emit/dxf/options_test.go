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

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/relief"
	"barwright/emit/dxf/dxftest"
	"barwright/lang/length"
)

// plate is 300 x 200, 10 right and 20 up from the part's own zero: an opening 40 x 30 at
// its lower left, a round one of 20, a recess 100 x 20, a blind bore in the drawn face
// and one in the face behind it, a hole, and a mark.
func plate() *model.Part {
	by := point(10, 20)
	shift := func(c geom.Contour) geom.Contour { return c.Shifted(by) }
	at := func(x, y length.Length) geom.Point { return point(x, y).Add(by) }
	return &model.Part{
		ID: "cabinet.cups/plate", Label: "CUPS-P", Name: "plate", Owner: "cabinet cups", Stock: "sheet.birch", Thickness: 18 * mm,
		Face: "inside", Good: model.GoodDrawn, Outline: shift(rect(0, 0, 300, 200)),
		Openings: []model.Opening{
			{Name: "outlet", Shape: shift(rect(50, 60, 90, 90))},
			{Name: "hose", Shape: geom.CircleContour(at(250, 150), 10*mm)},
		},
		Recesses: []model.Recess{{Name: "plate", Shape: shift(rect(150, 100, 250, 120)), Depth: 6*mm + mm/2}},
		Bores: []model.Bore{
			{Name: "pin", At: at(250, 50), Diameter: 8 * mm, Depth: 9*mm + mm/2},
			{Name: "cup", At: at(100, 150), Diameter: 34 * mm, Depth: 12 * mm, Far: true},
			{Name: "screw", At: at(20, 20), Diameter: 4 * mm},
		},
		Marks: []model.Mark{{Name: "stud", From: at(280, 10), To: at(280, 190)}},
	}
}

// cleared clears corners for a bit; it is nil for "none".
func cleared(kind string, bit length.Length) func(*model.Part) Relieved {
	if kind == "none" {
		return nil
	}
	return func(p *model.Part) Relieved {
		c := relief.Part(p, kind, bit)
		return Relieved{Part: c.Part, Outline: c.Outline, Openings: c.Openings, Recesses: c.Recesses}
	}
}

func writtenFar(t rapid.TB, p *model.Part, opt Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := WriteFar(&b, p, opt); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// told lists what a file holds: layer, area in mm² and box in mm of each contour, and
// the two ends of lines.
func told(f *dxftest.File) (out []string) {
	round := func(p geom.Point) string {
		return fmt.Sprintf("%s,%s", p.X.Decimal(length.Millimetres, 2), p.Y.Decimal(length.Millimetres, 2))
	}
	for _, c := range f.Contours {
		b := c.Shape.Bounds()
		out = append(out, fmt.Sprintf("%s %.0f %s %s", c.Layer, math.Abs(c.Shape.Area()),
			round(geom.Point{X: b.X.Lo, Y: b.Y.Lo}), round(geom.Point{X: b.X.Hi, Y: b.Y.Hi})))
	}
	for _, l := range f.Lines {
		out = append(out, l.Layer+" "+round(l.From)+" "+round(l.To))
	}
	return out
}

// The figures are worked out by hand from the plate's. A relief of a bit of 10 adds
// 25 x (pi/2 - 1) = 14.27 a corner on the diagonal and reaches 5 - 5/sqrt2 = 1.46 beyond
// both sides; one of 8 along the long side adds 25.13 and reaches 4 beyond the short one.
func TestOptions(t *testing.T) {
	all := []string{
		"RECESS 2000 150,100 250,120", "BORE 50 246,46 254,54", "BORE_THROUGH 13 18,18 22,22",
		"OPENING 1200 50,60 90,90", "OPENING 314 240,140 260,160", "EDGE 60000 0,0 300,200", "MARK 280,10 280,190",
	}
	changed := func(changes ...string) []string {
		return strings.Split(strings.NewReplacer(changes...).Replace(strings.Join(all, "\n")), "\n")
	}
	for _, test := range []struct {
		name string
		opt  Options
		want []string
		unit string
	}{
		{"as it is", Options{}, all, "4"},
		{"inches", Options{Inch: true}, all, "1"},
		{"depths", Options{Depths: true}, changed("RECESS", "RECESS_6_5", "BORE 50", "BORE_9_5 50"), "4"},
		{"depths in inches", Options{Depths: true, Inch: true}, changed("RECESS", "RECESS_0_2559", "BORE 50", "BORE_0_374 50"), "1"},
		{"long names", Options{Depths: true, Layers: Layers{Recess: strings.Repeat("pocket", 6)}},
			changed("RECESS", "POCKETPOCKETPOCKETPOCKETPOC_6_5", "BORE 50", "BORE_9_5 50"), "4"},
		{"lower right", Options{Origin: LowerRight}, []string{
			"RECESS 2000 -150,100 -50,120", "BORE 50 -54,46 -46,54", "BORE_THROUGH 13 -282,18 -278,22",
			"OPENING 1200 -250,60 -210,90", "OPENING 314 -60,140 -40,160", "EDGE 60000 -300,0 0,200", "MARK -20,10 -20,190"}, "4"},
		{"middle", Options{Origin: Middle}, []string{
			"RECESS 2000 0,0 100,20", "BORE 50 96,-54 104,-46", "BORE_THROUGH 13 -132,-82 -128,-78",
			"OPENING 1200 -100,-40 -60,-10", "OPENING 314 90,40 110,60", "EDGE 60000 -150,-100 150,100", "MARK 130,-90 130,90"}, "4"},
		{"mirrored", Options{Mirrored: true}, []string{
			"BORE 908 183,133 217,167", "BORE_THROUGH 13 278,18 282,22",
			"OPENING 1200 210,60 250,90", "OPENING 314 40,140 60,160", "EDGE 60000 0,0 300,200"}, "4"},
		{"no openings", Options{Without: model.Written{Openings: true}}, slices.Concat(all[:3], all[5:]), "4"},
		{"no recesses", Options{Without: model.Written{Recesses: true}}, all[1:], "4"},
		{"no bores, no marks", Options{Without: model.Written{Bores: true, Marks: true}}, slices.Concat(all[:1], all[3:6]), "4"},
		{"diagonal", Options{Relieve: cleared("diagonal", 10*mm), Bit: 10 * mm}, changed(
			"RECESS 2000 150,100 250,120", "RECESS 2057 148.54,98.54 251.46,121.46",
			"OPENING 1200 50,60 90,90", "OPENING 1257 48.54,58.54 91.46,91.46"), "4"},
		{"long side", Options{Relieve: cleared("long_side", 8*mm), Bit: 8 * mm}, changed(
			"RECESS 2000 150,100 250,120", "RECESS 2101 146,100 254,120",
			"OPENING 1200 50,60 90,90", "OPENING 1301 46,60 94,90"), "4"},
		// A chord of a circle of radius 10 that leaves it by 0.1 at most turns by
		// 2 acos(1 - 0.1/10) = 16.2 degrees. Half a circle takes 12 of them; n have
		// n/2 r^2 sin(360/n): 310.6. Bores stay round.
		{"flat", Options{Flatten: mm / 10}, changed("OPENING 314", "OPENING 311"), "4"},
	} {
		t.Run(test.name, func(t *testing.T) {
			for _, version := range []Version{R12, R2000} {
				test.opt.Version = version
				f := readBack(t, written(t, plate(), test.opt))
				if diff := cmp.Diff(test.want, told(f)); diff != "" {
					t.Error(diff)
				}
				if f.Unit != test.unit {
					t.Errorf("unit %s, want %s", f.Unit, test.unit)
				}
			}
		})
	}
}

// What cannot be cut from the face that lies up is in the file of the other one.
func TestOtherFace(t *testing.T) {
	opt := Options{Text: true}
	if diff := cmp.Diff([]string{"BORE 908 183,133 217,167", "NOTE 60000 0,0 300,200"}, told(readBack(t, writtenFar(t, plate(), opt)))); diff != "" {
		t.Error(diff)
	}
	opt.Mirrored = true
	want := []string{"RECESS 2000 150,100 250,120", "BORE 50 246,46 254,54", "NOTE 60000 0,0 300,200", "MARK 280,10 280,190"}
	if diff := cmp.Diff(want, told(readBack(t, writtenFar(t, plate(), opt)))); diff != "" {
		t.Error(diff)
	}
	bare := plate()
	bare.Bores, bare.Marks = bare.Bores[:1], nil
	if HasOther(bare, Options{}) || !HasOther(bare, Options{Mirrored: true}) {
		t.Error("a plate that is worked from one face has another file where it should not, or has none where it should")
	}
	if HasOther(plate(), Options{Without: model.Written{Bores: true}}) {
		t.Error("a file for the other face has nothing in it")
	}
}

func texts(f *dxftest.File) string {
	var all []string
	for _, text := range f.Texts {
		all = append(all, text.Text)
	}
	return strings.Join(all, "\n") + "\n"
}

func TestNotesSayHow(t *testing.T) {
	p := plate()
	opt := Options{
		Text: true, Inch: true, Mirrored: true, Origin: UpperRight, Flatten: mm / 20, Relieve: cleared("diagonal", length.Inch/4), Bit: length.Inch / 4,
		Small: 250 * mm, Build: "boat shed, revision A", Batch: "K 12", Like: []string{"CUPS-P", "CUPS-Q"}, Without: model.Written{Openings: true},
	}
	want := `CUPS-P plate
2 pieces: CUPS-P, CUPS-Q
boat shed, revision A
sheet.birch, 0.7087 thick as measured on batch K 12
11.811 x 7.874 over all
UNITS IN
inside face DOWN: mirrored in x
good face: the one that lies down
1 x cup: bore 1.3386, 0.4724 deep
1 x screw: bore 0.1575 through
NOT IN THIS FILE: openings
FACE THAT LIES DOWN IS WORKED TOO: see its own file
for that turn it over from left to right: bottom edge stays at the bottom
its zero is then at the upper left as drawn here: line across the corner
zero at the upper right
arcs as chords that leave them by 0.002 at most
SMALL: hold it down
`
	if diff := cmp.Diff(want, texts(readBack(t, written(t, p, opt)))); diff != "" {
		t.Error(diff)
	}
	want = `CUPS-P plate, DRAWN FACE
2 pieces: CUPS-P, CUPS-Q
boat shed, revision A
11.811 x 7.874 over all
UNITS IN
turned over from left to right: bottom edge stays at the bottom
zero at the upper left as drawn first is at the upper right here
outline for reading only: it is cut already
1 x recess 0.2559 deep
1 x pin: bore 0.315, 0.374 deep
1 mark: stud
arcs as chords that leave them by 0.002 at most
4 corners cleared for a bit of 0.25
`
	if diff := cmp.Diff(want, texts(readBack(t, writtenFar(t, p, opt)))); diff != "" {
		t.Error(diff)
	}
}

// Two plates on a sheet of 1000 x 600, one of them turned: its own x runs up the sheet,
// so that what was at its lower left is at the lower right.
func plates() *Sheet {
	turned := plate()
	turned.Label = "CUPS-Q"
	return &Sheet{
		Stock: &model.Sheet{Name: "sheet.birch", Text: "birch 18 mm", Thickness: 18 * mm}, Number: 2, Of: 3, Kerf: 32 * mm / 10,
		Blank: &model.Blank{Length: 1000 * mm, Width: 600 * mm, Placed: []model.Placed{
			{At: geom.R(10*mm, 10*mm, 310*mm, 210*mm)}, {At: geom.R(400*mm, 100*mm, 600*mm, 400*mm), Turned: true},
		}},
		Parts: []*model.Part{plate(), turned},
	}
}

func TestSheet(t *testing.T) {
	write := func(opt Options) *dxftest.File {
		var b bytes.Buffer
		if err := WriteSheet(&b, plates(), opt); err != nil {
			t.Fatal(err)
		}
		return readBack(t, b.Bytes())
	}
	want := []string{
		"SHEET 600000 0,0 1000,600",
		"RECESS 2000 160,110 260,130", "BORE 50 256,56 264,64", "BORE_THROUGH 13 28,28 32,32",
		"OPENING 1200 60,70 100,100", "OPENING 314 250,150 270,170", "EDGE 60000 10,10 310,210",
		"RECESS 2000 480,250 500,350", "BORE 50 546,346 554,354", "BORE_THROUGH 13 578,118 582,122",
		"OPENING 1200 510,150 540,190", "OPENING 314 440,340 460,360", "EDGE 60000 400,100 600,400",
		"NOTE 295,10 310,25", "MARK 290,20 290,200", "NOTE 585,400 600,385", "MARK 590,380 410,380",
	}
	f := write(Options{Text: true, Batch: "K 12"})
	if diff := cmp.Diff(want, told(f)); diff != "" {
		t.Error(diff)
	}
	for _, line := range []string{"CUPS-P plate", "CUPS-Q plate", "sheet.birch, sheet 2 of 3", "18 thick as measured on batch K 12", "1 x recess 6.5 deep", "3.2 BETWEEN PARTS: no wider bit", "for that turn it over from left to right: bottom edge stays at the bottom",
		"its zero is then at the lower right as drawn here: line across the corner", "for that turn it over from top to bottom: right edge stays at the right",
		"and then a quarter turn clockwise", "its zero is then at the upper right as drawn here: line across the corner"} {
		if !strings.Contains(texts(f), line+"\n") {
			t.Errorf("no text says %q", line)
		}
	}
	want = []string{
		"SHEET 600000 -500,-300 500,300",
		"BORE 908 373,-157 407,-123", "BORE_THROUGH 13 468,-272 472,-268",
		"OPENING 1200 400,-230 440,-200", "OPENING 314 230,-150 250,-130", "EDGE 60000 190,-290 490,-90",
		"BORE 908 33,-117 67,-83", "BORE_THROUGH 13 -82,-182 -78,-178",
		"OPENING 1200 -40,-150 -10,-110", "OPENING 314 40,40 60,60", "EDGE 60000 -100,-200 100,100",
	}
	if diff := cmp.Diff(want, told(write(Options{Mirrored: true, Origin: Middle}))); diff != "" {
		t.Error(diff)
	}
}

// drawnOptions are any that go together, which all do, and how corners are relieved.
func drawnOptions(t *rapid.T) (opt Options, kind string) {
	flag := func(name string) bool { return rapid.Bool().Draw(t, name) }
	opt = Options{
		Text: flag("text"), Inch: flag("inch"), Depths: flag("depths"), Mirrored: flag("mirrored"),
		Origin:  Origin(rapid.IntRange(0, int(Middle)).Draw(t, "origin")),
		Without: model.Written{Openings: flag("no openings"), Recesses: flag("no recesses"), Bores: flag("no bores"), Marks: flag("no marks")},
		Bit:     length.Length(rapid.IntRange(1_000_000, 8_000_000).Draw(t, "bit")),
	}
	kind = rapid.SampledFrom([]string{"none", "diagonal", "long_side"}).Draw(t, "relief")
	opt.Relieve = cleared(kind, opt.Bit)
	if flag("r2000") {
		opt.Version = R2000
	}
	if flag("flat") {
		opt.Flatten = length.Length(rapid.IntRange(10_000, 500_000).Draw(t, "flatten"))
	}
	return opt, kind
}

// drawnPart has something in each cell of a hundred millimetres.
func drawnPart(t *rapid.T) *model.Part {
	across, up := rapid.IntRange(1, 4).Draw(t, "across"), rapid.IntRange(1, 4).Draw(t, "up")
	p := plate()
	p.Openings, p.Recesses, p.Bores, p.Marks = nil, nil, nil, nil
	p.Outline = rect(-7, 3, length.Length(across)*100-7, length.Length(up)*100+3)
	for i := range across * up {
		x, y := length.Length(i%across)*100-7, length.Length(i/across)*100+3
		size := func(name string) length.Length {
			return length.Length(rapid.IntRange(35_000_000, 70_000_000).Draw(t, name))
		}
		box := geom.RectContour(geom.R(x*mm+15*mm, y*mm+15*mm, x*mm+15*mm+size("wide"), y*mm+15*mm+size("high")))
		b := model.Bore{Name: "b", At: point(x+50, y+50), Diameter: size("diameter") / 2, Far: rapid.Bool().Draw(t, "far"), Across: rapid.Bool().Draw(t, "up and down")}
		if rapid.Bool().Draw(t, "blind") {
			b.Depth = size("depth") / 10
		}
		switch rapid.IntRange(0, 5).Draw(t, "what") {
		case 0:
			p.Openings = append(p.Openings, model.Opening{Shape: box})
		case 1:
			p.Openings = append(p.Openings, model.Opening{Shape: geom.CircleContour(b.At, b.Diameter)})
		case 2:
			p.Recesses = append(p.Recesses, model.Recess{Shape: box.Reversed(), Depth: size("depth") / 10})
		case 3:
			b.Slot = size("slot") / 2
			p.Bores = append(p.Bores, b)
		case 4:
			p.Bores = append(p.Bores, b)
		case 5:
			p.Marks = append(p.Marks, model.Mark{From: b.At, To: point(x+90, y+80)})
		}
	}
	return p
}

// areas are what each kind of work of both faces has together, in mm², by the formulas
// of the plain shapes.
func areas(p *model.Part, opt Options, kind string) map[string]float64 {
	sum := map[string]float64{}
	corners := 0.0
	switch r := opt.Bit.MM() / 2; kind {
	case "diagonal":
		corners = 4 * r * r * (math.Pi/2 - 1)
	case "long_side":
		corners = 4 * math.Pi * r * r / 2
	}
	add := func(kind string, without bool, area float64) {
		if !without {
			sum[kind] += area
		}
	}
	add("EDGE", false, math.Abs(p.Outline.Area()))
	for _, o := range p.Openings {
		extra := corners
		if _, _, round := o.Shape.Circle(); round {
			extra = 0
		}
		add("OPENING", opt.Without.Openings, math.Abs(o.Shape.Area())+extra)
	}
	for _, r := range p.Recesses {
		add("RECESS", opt.Without.Recesses, math.Abs(r.Shape.Area())+corners)
	}
	for _, b := range p.Bores {
		d := b.Diameter.MM()
		area := math.Pi*d*d/4 + d*b.Slot.MM()
		switch {
		case b.Slot == 0:
			add("BORE", opt.Without.Bores, area)
		case b.Depth == 0:
			add("OPENING", opt.Without.Openings, area)
		default:
			add("RECESS", opt.Without.Recesses, area)
		}
	}
	return sum
}

// However the options go together, each file is read back, lies as it should, and both
// faces together hold what the part has, no more and no less.
func TestAllOptionsTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawnPart(t)
		opt, kind := drawnOptions(t)
		want, got := areas(p, opt, kind), map[string]float64{}
		files := []*dxftest.File{readBack(t, written(t, p, opt))}
		if HasOther(p, opt) {
			files = append(files, readBack(t, writtenFar(t, p, opt)))
		}
		round, lines := 0.0, 0
		for _, f := range files {
			for _, c := range f.Contours {
				layer, _, _ := strings.Cut(c.Layer, "_")
				if layer != "NOTE" {
					got[layer] += math.Abs(c.Shape.Area())
				}
				if b := c.Shape.Bounds(); layer == "EDGE" || layer == "NOTE" {
					if at := opt.Origin.of(b); max(at.X, -at.X, at.Y, -at.Y) > 1 {
						t.Errorf("the %s of the outline is at %v", opt.Origin, at)
					}
				} else {
					round += 4 * (b.X.Size() + b.Y.Size()).MM() // more than its girth
				}
			}
			for _, l := range f.Lines {
				if l.Layer == "MARK" {
					lines++
				}
			}
		}
		for kind, area := range want {
			if d := math.Abs(got[kind] - area); d > 1e-4*area && d > round*opt.Flatten.MM() {
				t.Errorf("%s: %f mm², want %f", kind, got[kind], area)
			}
		}
		if len(got) != len(want) {
			t.Errorf("kinds %v, want %v", got, want)
		}
		if written := len(p.Marks); opt.Without.Marks && lines != 0 || !opt.Without.Marks && lines != written {
			t.Errorf("%d marks, of %d", lines, written)
		}
	})
}

// Chords keep to their arcs.
func TestChords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := length.Length(rapid.IntRange(1_000_000, 900_000_000).Draw(t, "radius"))
		tolerance := length.Length(rapid.IntRange(10_000, 3_000_000).Draw(t, "tolerance"))
		c := appendChords(nil, geom.CircleContour(point(3, 4), r), tolerance)
		for i, v := range c {
			w := c[(i+1)%len(c)]
			mid := math.Hypot(float64(v.X+w.X)/2-3e6, float64(v.Y+w.Y)/2-4e6)
			if out := math.Hypot(float64(v.X-3*mm), float64(v.Y-4*mm)); math.Abs(out-float64(r)) > 1 {
				t.Fatalf("a corner is %f from the centre of a radius of %d", out, r)
			}
			if float64(r)-mid > float64(tolerance)+2 {
				t.Fatalf("a chord leaves its arc by %f, more than %d", float64(r)-mid, tolerance)
			}
		}
		if len(c) < 4 {
			t.Fatalf("%d chords make no circle", len(c))
		}
	})
}

// An independent reader audits each option by itself and all together.
func TestOptionsInspected(t *testing.T) {
	every := Options{Depths: true, Origin: UpperLeft, Mirrored: true, Flatten: mm / 20, Relieve: cleared("diagonal", 6*mm), Bit: 6 * mm, Small: 400 * mm, Batch: "K 12"}
	some := []Options{
		{Depths: true}, {Mirrored: true}, {Origin: LowerRight}, {Origin: UpperLeft}, {Origin: UpperRight}, {Origin: Middle}, {Flatten: mm / 20},
		{Relieve: cleared("diagonal", 6*mm), Bit: 6 * mm}, {Relieve: cleared("long_side", 6*mm), Bit: 6 * mm}, {Without: model.Written{Openings: true, Marks: true}}, every,
	}
	for _, unit := range []string{"mm", "inch"} {
		dir := t.TempDir()
		var files []string
		var want [][]string
		for _, version := range []Version{R12, R2000} {
			for i, opt := range some {
				if unit == "inch" && i > 0 && i < len(some)-1 {
					continue
				}
				opt.Version, opt.Text, opt.Inch = version, true, unit == "inch"
				var sheet bytes.Buffer
				if err := WriteSheet(&sheet, plates(), opt); err != nil {
					t.Fatal(err)
				}
				for _, text := range [][]byte{written(t, plate(), opt), writtenFar(t, plate(), opt), sheet.Bytes()} {
					path := filepath.Join(dir, fmt.Sprintf("%d.dxf", len(files)))
					if err := os.WriteFile(path, text, 0o644); err != nil {
						t.Fatal(err)
					}
					files = append(files, path)
					want = append(want, cutAreas(readBack(t, text), unit))
				}
			}
		}
		for i, r := range dxftest.InspectIn(t, unit, files) {
			if r.AuditErrors == nil || *r.AuditErrors != 0 || *r.AuditFixes != 0 || len(r.Problems)+len(r.Warnings) != 0 {
				t.Errorf("%s %d: %q %q", unit, i, r.Problems, r.Warnings)
			}
			var got []string
			for _, c := range r.Contours {
				got = append(got, fmt.Sprintf("%s %.3f", c.Layer, c.Area))
			}
			if diff := cmp.Diff(want[i], got); diff != "" {
				t.Errorf("%s %d: %s", unit, i, diff)
			}
		}
	}
}

func cutAreas(f *dxftest.File, unit string) (out []string) {
	size := 1.0
	if unit == "inch" {
		size = 25.4 * 25.4
	}
	for _, c := range f.Contours {
		if c.Layer != "NOTE" && c.Layer != "MARK" && c.Layer != "SHEET" {
			out = append(out, fmt.Sprintf("%s %.3f", c.Layer, math.Abs(c.Shape.Area())/size))
		}
	}
	return out
}

// A groove of 10 that is open at the left and the top ends on the edge, or goes on by 4
// as the file is written; its note tells.
func TestOverrun(t *testing.T) {
	p := plate()
	p.Openings, p.Bores, p.Marks = nil, nil, nil
	p.Recesses = []model.Recess{
		{Name: "groove", Shape: geom.RectContour(geom.R(10*mm, 40*mm, 150*mm, 50*mm)), Depth: 6 * mm, Open: []model.Edge{model.LeftEdge}},
		{Name: "groove", Shape: geom.RectContour(geom.R(200*mm, 120*mm, 210*mm, 220*mm)), Depth: 6 * mm, Open: []model.Edge{model.Top}},
	}
	for _, test := range []struct {
		opt   Options
		want  []string
		notes []string
	}{
		{Options{}, []string{"RECESS 1400 0,20 140,30", "RECESS 1000 190,100 200,200", "EDGE 60000 0,0 300,200"},
			[]string{"1 x recess 6 deep, open at left: run out", "1 x recess 6 deep, open at top: run out"}},
		{Options{Overrun: 4 * mm}, []string{"RECESS 1440 -4,20 140,30", "RECESS 1040 190,100 200,204", "EDGE 60000 0,0 300,200"},
			[]string{"1 x recess 6 deep, open at left: drawn 4 longer there", "1 x recess 6 deep, open at top: drawn 4 longer there"}},
	} {
		test.opt.Text = true
		f := readBack(t, written(t, p, test.opt))
		if diff := cmp.Diff(test.want, told(f)); diff != "" {
			t.Error(diff)
		}
		for _, note := range test.notes {
			if !strings.Contains(texts(f), note+"\n") {
				t.Errorf("no text says %q:\n%s", note, texts(f))
			}
		}
		if box := geom.R(f.ExtMin.X, f.ExtMin.Y, f.ExtMax.X, f.ExtMax.Y); box != geom.R(-test.opt.Overrun, 0, 300*mm, 200*mm+test.opt.Overrun) {
			t.Errorf("extents %v", box)
		}
	}
	far := readBack(t, writtenFar(t, p, Options{Mirrored: true, Overrun: 4 * mm, Text: true}))
	if diff := cmp.Diff([]string{"RECESS 1440 -4,20 140,30", "RECESS 1040 190,100 200,204", "NOTE 60000 0,0 300,200"}, told(far)); diff != "" {
		t.Error(diff)
	}
}

// What is left out of both files is named in the one that is written.
func TestLeftOutOfBoth(t *testing.T) {
	p := plate()
	p.Bores, p.Marks = nil, nil
	opt := Options{Text: true, Mirrored: true, Without: model.Written{Recesses: true}}
	if HasOther(p, opt) {
		t.Fatal("a file for the other face has nothing in it")
	}
	if got := texts(readBack(t, written(t, p, opt))); !strings.Contains(got, "NOT IN THIS FILE: recesses\n") {
		t.Error(got)
	}
	opt.Without = model.Written{}
	if got := texts(readBack(t, written(t, p, opt))); strings.Contains(got, "NOT IN THIS FILE") {
		t.Error(got)
	}
}

// Turned over as the note says, a corner of the piece comes to where the far file has its
// zero; the line lies across it.
func TestTurnedOver(t *testing.T) {
	corners := map[string]geom.Point{"lower left": point(0, 0), "lower right": point(1, 0), "upper right": point(1, 1), "upper left": point(0, 1)}
	quarters := map[string]func(geom.Point) geom.Point{ // of a square of 1
		"a quarter turn clockwise":         func(p geom.Point) geom.Point { return geom.Point{X: p.Y, Y: mm - p.X} },
		"a quarter turn counter-clockwise": func(p geom.Point) geom.Point { return geom.Point{X: mm - p.Y, Y: p.X} },
	}
	for o := LowerLeft; o < Middle; o++ {
		for _, mirrored := range []bool{false, true} {
			opt := Options{Origin: o, Mirrored: mirrored, Turned: true}
			note := strings.Join(first(plate(), &opt).flipLines(&opt), "\n")
			var at geom.Point
			for name, p := range corners {
				if strings.Contains(note, "zero is then at the "+name) {
					at = p
				}
			}
			if !strings.Contains(note, "from top to bottom") {
				t.Fatal(note)
			}
			at.Y = mm - at.Y
			for words, turn := range quarters {
				if strings.HasSuffix(strings.Split(note, "\n")[2], words) {
					at = turn(at)
				}
			}
			if want := corners[o.String()]; at != want {
				t.Errorf("mirrored %t, zero at the %s: comes to %v, want %v:\n%s", mirrored, o, at, want, note)
			}
		}
	}
	f := readBack(t, written(t, plate(), Options{Text: true, Origin: UpperLeft}))
	if got := told(f); !slices.Contains(got, "NOTE 285,0 300,-15") {
		t.Errorf("no line across the upper right: %q", got)
	}
}
