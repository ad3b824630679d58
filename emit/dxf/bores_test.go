package dxf

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/dxf/dxftest"
	"barwright/lang/length"
)

func point(x, y length.Length) geom.Point { return geom.Point{X: x * mm, Y: y * mm} }

// boredPart is a door's board of 400 x 700: two hinge cups in its far face, holes
// of a handle through it, a blind row in the drawn face, a slot, and lines.
func boredPart() *model.Part {
	p := &model.Part{
		ID: "cabinet.cups/door", Label: "CUPS-D1", Name: "door", Owner: "cabinet cups", Stock: "sheet.birch", Thickness: 18 * mm,
		Face: "front", Good: model.GoodBoth, Outline: rect(0, 0, 400, 700).Shifted(point(10, -20)),
		Bands: []model.Band{{Edge: model.Top, Stock: "banding.birch", Thickness: mm / 2}, {Edge: model.LeftEdge, Stock: "banding.birch", Thickness: mm / 2}},
		Bores: []model.Bore{
			{Name: "hinge cup", At: point(10+23, 60), Diameter: 35 * mm, Depth: 12*mm + mm/2, Far: true},
			{Name: "hinge cup", At: point(10+23, 600), Diameter: 35 * mm, Depth: 12*mm + mm/2, Far: true},
			{Name: "handle", At: point(360, 500), Diameter: 5 * mm, Sink: 9 * mm, Far: true},
			{Name: "handle", At: point(360, 596), Diameter: 5 * mm, Sink: 9 * mm, Far: true},
			{Name: "slot", At: point(200, 40), Diameter: 6 * mm, Slot: 10 * mm, Sink: 12 * mm},
			{Name: "slot up", At: point(250, 40), Diameter: 6 * mm, Slot: 10 * mm, Across: true, Depth: 4 * mm},
		},
		Marks: []model.Mark{{Name: "slide", From: point(10, 300), To: point(410, 300)}},
	}
	for i := range length.Length(5) {
		p.Bores = append(p.Bores, model.Bore{Name: "shelf pin", At: point(100, 100+32*i), Diameter: 5 * mm, Depth: 10 * mm})
	}
	return p
}

func far(t rapid.TB, p *model.Part, opt Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := WriteFar(&b, p, opt); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func layersOf(f *dxftest.File) string {
	var order []string
	for _, c := range f.Contours {
		order = append(order, c.Layer)
	}
	return strings.Join(order, " ")
}

// Worked out by hand: the part's lower left is at (10, -20), so the first pin at
// (100, 100) is written at (90, 120) and the line at a height of 320. Turned over,
// what is 23 from the left edge of 400 is at 377.
func TestBoresAreWritten(t *testing.T) {
	for _, version := range []Version{R12, R2000} {
		f := readBack(t, written(t, boredPart(), Options{Version: version, Text: true}))
		if got, want := layersOf(f), "MARK BORE_THROUGH BORE_THROUGH BORE BORE BORE BORE BORE OPENING RECESS EDGE"; got != want {
			t.Errorf("layers in the order %s, want %s", got, want)
		}
		want := []dxftest.Line{{Layer: "NOTE", From: point(385, 0), To: point(400, 15)}, {Layer: "MARK", From: geom.Point{Y: 320 * mm}, To: point(400, 320)}}
		if !slices.Equal(f.Lines, want) {
			t.Errorf("lines %v", f.Lines)
		}
		if c, r, ok := f.Contours[3].Shape.Circle(); !ok || c != point(90, 120) || r != 5*mm/2 {
			t.Errorf("the first pin is %v", f.Contours[3].Shape)
		}
		f = readBack(t, far(t, boredPart(), Options{Version: version, Text: true}))
		if got, want := layersOf(f), "MARK MARK BORE BORE NOTE"; got != want {
			t.Errorf("far layers in the order %s, want %s", got, want)
		}
		if c, r, ok := f.Contours[2].Shape.Circle(); !ok || c != point(377, 80) || r != 35*mm/2 {
			t.Errorf("the first cup is %v", f.Contours[2].Shape)
		}
		if !slices.ContainsFunc(f.Texts, func(x dxftest.Text) bool { return strings.Contains(x.Text, "turned over from left to right") }) {
			t.Error("no note tells how the part is turned over")
		}
	}
}

func TestNoteOfBores(t *testing.T) {
	want := []string{
		"good face: both", "banded, not in these sizes: top edge, left edge",
		"2 x handle: bore 5 through, sunk to 9 from the far face", "1 x slot: slot 6 wide through, sunk to 12",
		"1 x slot up: slot 6 wide, 4 deep", "5 x shelf pin: bore 5, 10 deep", "1 mark: slide", "FAR FACE IS BORED TOO: see its own file",
		"for that turn it over from left to right: bottom edge stays at the bottom", "its zero is then at the lower right as drawn here: line across the corner",
	}
	got := view{part: boredPart()}.lines(&Options{})
	if i := slices.Index(got, want[0]); i < 0 || !slices.Equal(got[i:], want) {
		t.Errorf("notes %q\nwant, from the good face on, %q", got, want)
	}
}

func TestBoresAreRefused(t *testing.T) {
	bore := func(x, y, d length.Length) model.Bore {
		return model.Bore{Name: "b", At: point(x, y), Diameter: d * mm, Depth: 9 * mm}
	}
	far := func(b model.Bore) model.Bore { b.Far = true; return b }
	slot := func(b model.Bore, s length.Length) model.Bore { b.Slot = s * mm; return b }
	deep := func(b model.Bore, d length.Length) model.Bore { b.Depth = d * mm; return b }
	for _, test := range []struct {
		name  string
		bores []model.Bore
		want  string
	}{
		{"apart", []model.Bore{bore(50, 50, 10), bore(61, 50, 10)}, ""},
		{"that touch", []model.Bore{bore(50, 50, 10), bore(60, 50, 10)}, ""},
		{"that meet", []model.Bore{bore(61, 50, 10), bore(52, 50, 10)}, "bores \"b\" at (52, 50) and \"b\" at (61, 50) meet"},
		{"at the edge", []model.Bore{bore(5, 50, 10)}, ""},
		{"over the edge", []model.Bore{bore(4, 50, 10)}, "bore \"b\" at (4, 50) reaches beyond the outline"},
		{"outside", []model.Bore{bore(-50, 50, 10)}, "reaches beyond"},
		{"round a slot's end", []model.Bore{slot(bore(50, 50, 10), 20), bore(69, 50, 10)}, "meet"},
		{"beside a slot's end", []model.Bore{slot(bore(50, 50, 10), 20), bore(71, 50, 10)}, ""},
		{"slot over the edge", []model.Bore{slot(bore(50, 50, 10), 100)}, "reaches beyond"},
		{"from both faces, half each", []model.Bore{bore(50, 50, 10), far(bore(50, 50, 10))}, ""},
		{"from both faces, too deep", []model.Bore{bore(50, 50, 10), far(deep(bore(50, 50, 10), 10))}, "meet"},
		{"through a far one", []model.Bore{deep(bore(50, 50, 10), 0), far(bore(55, 50, 10))}, "meet"},
		{"without a size", []model.Bore{bore(50, 50, 0)}, "has no size"},
	} {
		p := &model.Part{ID: "p", Outline: rect(0, 0, 300, 200), Thickness: 18 * mm, Bores: test.bores}
		var b bytes.Buffer
		err := WritePart(&b, p, Options{})
		switch {
		case test.want == "" && err != nil:
			t.Errorf("bores %s: %v", test.name, err)
		case test.want != "" && (err == nil || !strings.Contains(err.Error(), test.want) || b.Len() > 0):
			t.Errorf("bores %s: error %v after %d bytes, want %q", test.name, err, b.Len(), test.want)
		}
	}
	p := &model.Part{Outline: rect(0, 0, 300, 200), Marks: []model.Mark{{Name: "line"}}}
	if err := WritePart(&bytes.Buffer{}, p, Options{}); err == nil {
		t.Error("a line without length is written")
	}
}

// Bores on a loose grid read back where they are, in either face and version.
func TestBoresRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.Int64Range(-int64(2000*mm), int64(2000*mm))
		move := geom.Point{X: length.Length(at.Draw(t, "x")), Y: length.Length(at.Draw(t, "y"))}
		p := &model.Part{ID: "p", Label: "P", Thickness: 20 * mm, Outline: rect(-20, -20, 420, 420).Shifted(move)}
		for i := range rapid.IntRange(1, 25).Draw(t, "bores") {
			b := model.Bore{At: point(length.Length(i%5)*100, length.Length(i/5)*100).Add(move), Far: rapid.Bool().Draw(t, "far"),
				Diameter: length.Length(rapid.Int64Range(int64(mm), int64(30*mm)).Draw(t, "diameter")) / 2 * 2,
				Depth:    length.Length(rapid.Int64Range(0, 12).Draw(t, "depth")) * mm}
			if rapid.Bool().Draw(t, "slot") {
				b.Slot, b.Across = length.Length(rapid.Int64Range(1, 5).Draw(t, "long"))*mm*2, rapid.Bool().Draw(t, "across")
			}
			p.Bores = append(p.Bores, b)
		}
		for _, version := range []Version{R12, R2000} {
			opt := Options{Version: version, Text: true}
			for _, side := range []struct {
				file []byte
				want []dxftest.Contour
			}{{written(t, p, opt), dxftest.Of(p)}, {far(t, p, opt), dxftest.OfFar(p)}} {
				got := readBack(t, side.file).Contours
				if len(got) != len(side.want) {
					t.Fatalf("%d contours, want %d", len(got), len(side.want))
				}
				for i := range got {
					sameRing(t, got[i], side.want[i])
				}
			}
		}
	})
}

// sameRing compares contours wherever they begin.
func sameRing(t *rapid.T, got, want dxftest.Contour) {
	if centre, radius, ok := want.Shape.Circle(); ok { // a CIRCLE has no direction
		want.Shape = geom.CircleContour(centre, radius)
	}
	n := len(want.Shape)
	for first := range n {
		if got.Layer == want.Layer && len(got.Shape) == n && slices.Equal(got.Shape, slices.Concat(want.Shape[first:], want.Shape[:first])) {
			return
		}
	}
	t.Errorf("reads back as %v, want %v", got, want)
}

// An independent reader finds the bores of both faces where the part has them.
func TestInspectedBores(t *testing.T) {
	dir := t.TempDir()
	var files []string
	for _, version := range []Version{R12, R2000} {
		opt := Options{Version: version, Text: true}
		for name, text := range map[string][]byte{"near": written(t, boredPart(), opt), "far": far(t, boredPart(), opt)} {
			path := filepath.Join(dir, name+[...]string{"12", "2000"}[version]+".dxf")
			if err := os.WriteFile(path, text, 0o644); err != nil {
				t.Fatal(err)
			}
			files = append(files, path)
		}
	}
	for _, r := range dxftest.Inspect(t, files) {
		if strings.Contains(r.File, "far") {
			r.CheckFar(t, boredPart())
		} else {
			r.Check(t, boredPart())
		}
	}
}
