package dxf

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/dxf/dxftest"
	"barwright/lang/length"
)

var update = flag.Bool("update", false, "rewrite the golden files")

const mm = length.Millimetre

func rect(x0, y0, x1, y1 length.Length) geom.Contour {
	return geom.RectContour(geom.R(x0*mm, y0*mm, x1*mm, y1*mm))
}

// notchedOutline is 600 x 400 with a slot of radius 25 in its lower edge and a
// corner taken out for a toe kick.
func notchedOutline() geom.Contour {
	v := func(x, y length.Length, bulge float64) geom.Vertex {
		return geom.Vertex{Point: geom.Point{X: x * mm, Y: y * mm}, Bulge: bulge}
	}
	return geom.Contour{
		v(0, 0, 0), v(200, 0, 0), v(200, 60, -1), v(250, 60, 0), v(250, 0, 0), v(500, 0, 0),
		v(500, 100, 0), v(600, 100, 0), v(600, 400, 0), v(0, 400, 0),
	}
}

func rectanglePart() *model.Part {
	return &model.Part{
		ID: "cabinet.sink/back", Label: "SNK-B", Name: "back", Owner: "cabinet sink",
		Stock: "sheet.birch", Thickness: 18_256_250, Face: "inside", Grain: model.GrainY,
		Outline: rect(0, 0, 500, 300),
	}
}

func notchedPart() *model.Part {
	return &model.Part{
		ID: "cabinet.sink/side-left", Label: "SNK-L", Name: "left side", Owner: "cabinet sink",
		Stock: "sheet.birch", Thickness: 18 * mm, Face: "inside",
		Outline: notchedOutline().Shifted(geom.Point{X: 40 * mm, Y: -30 * mm}),
		Openings: []model.Opening{
			{Name: "pipe", Notch: true, Shape: rect(240, -30, 290, 55)},
			{Name: "outlet", Shape: rect(340, 220, 420, 340).Reversed()},
			{Name: "hose", Shape: geom.CircleContour(geom.Point{X: 100 * mm, Y: 280 * mm}, 17_500_000)},
		},
		Recesses: []model.Recess{
			{Name: "plate", Depth: 6 * mm, Radius: 4 * mm, Shape: geom.RoundedContour(geom.R(440*mm, 100*mm, 600*mm, 150*mm), 4*mm)},
		},
	}
}

func written(t rapid.TB, p *model.Part, opt Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := WritePart(&b, p, opt); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func readBack(t rapid.TB, file []byte) *dxftest.File {
	t.Helper()
	f, err := dxftest.Read(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestWritePartGolden(t *testing.T) {
	for name, test := range map[string]struct {
		part *model.Part
		opt  Options
	}{
		"rectangle.dxf":       {rectanglePart(), Options{Text: true}},
		"notched.dxf":         {notchedPart(), Options{Text: true}},
		"rectangle-r2000.dxf": {rectanglePart(), Options{Version: R2000, Text: true}},
	} {
		t.Run(name, func(t *testing.T) {
			got := written(t, test.part, test.opt)
			path := filepath.Join("testdata", name)
			if *update {
				if err := os.WriteFile(path, got, 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(got, want) {
				t.Errorf("differs from %s at line %d (go test -update rewrites it)", path, differs(got, want))
			}
		})
	}
}

// differs returns the number of the first line that is not the same.
func differs(a, b []byte) int {
	n := 0
	for n < len(a) && n < len(b) && a[n] == b[n] {
		n++
	}
	return 1 + bytes.Count(a[:n], []byte("\n"))
}

func TestWritePartOrder(t *testing.T) {
	f := readBack(t, written(t, notchedPart(), Options{Text: true}))
	var order []string
	for _, c := range f.Contours {
		order = append(order, c.Layer)
	}
	if got, want := strings.Join(order, " "), "RECESS OPENING OPENING EDGE"; got != want {
		t.Errorf("layers in the order %s, want %s", got, want)
	}
	if f.ExtMin != (geom.Point{}) || f.ExtMax != (geom.Point{X: 600 * mm, Y: 400 * mm}) {
		t.Errorf("extents %v to %v", f.ExtMin, f.ExtMax)
	}
	if outline := f.Contours[3].Shape; outline.Area() < 0 {
		t.Error("the outline runs clockwise")
	}
	for _, c := range f.Contours[:2] {
		if c.Shape.Area() > 0 {
			t.Errorf("the contour on %s runs counter-clockwise", c.Layer)
		}
	}
	if c, r, ok := f.Contours[2].Shape.Circle(); !ok || c != (geom.Point{X: 60 * mm, Y: 310 * mm}) || r != 17_500_000 {
		t.Errorf("the hose hole is %v", f.Contours[2].Shape)
	}
}

// Extents hold the crowns of arcs; the origin is the outline's.
func TestWritePartExtents(t *testing.T) {
	p := rectanglePart()
	p.Outline[0].Bulge = 1
	f := readBack(t, written(t, p, Options{}))
	if f.ExtMin != (geom.Point{}) || f.ExtMax != (geom.Point{X: 500 * mm, Y: 550 * mm}) {
		t.Errorf("extents %v to %v", f.ExtMin, f.ExtMax)
	}
	if got := f.Contours[0].Shape[0].Point; got != (geom.Point{Y: 250 * mm}) {
		t.Errorf("the first vertex is at %v", got)
	}
}

func TestWritePartLayers(t *testing.T) {
	layers := Layers{Edge: "Außen schnitt", Opening: "cut", Recess: "cut", Note: "0"}
	f := readBack(t, written(t, notchedPart(), Options{Layers: layers, Text: true}))
	if got, want := strings.Join(f.Layers, " "), "0 AUSSEN_SCHNITT CUT BORE BORE_THROUGH MARK"; got != want {
		t.Errorf("layers %s, want %s", got, want)
	}
	if last := f.Contours[len(f.Contours)-1]; last.Layer != "AUSSEN_SCHNITT" {
		t.Errorf("the outline is on %s", last.Layer)
	}
}

func TestWritePartUnit(t *testing.T) {
	for _, test := range []struct {
		opt  Options
		want string
	}{
		{Options{}, "4"},
		{Options{Unitless: true}, ""},
		{Options{Version: R2000, Unitless: true}, "4"},
	} {
		if f := readBack(t, written(t, rectanglePart(), test.opt)); f.Unit != test.want {
			t.Errorf("%+v: unit %q, want %q", test.opt, f.Unit, test.want)
		}
	}
}

func TestWritePartRefuses(t *testing.T) {
	p := notchedPart()
	p.Openings[1].Shape = geom.Contour{p.Outline[0], p.Outline[8], p.Outline[7], p.Outline[9]}
	var b bytes.Buffer
	err := WritePart(&b, p, Options{})
	if err == nil || b.Len() > 0 {
		t.Fatalf("error %v after %d bytes", err, b.Len())
	}
	if want := `part cabinet.sink/side-left: opening "outlet": the edges from (40, -30) and from (640, 70) meet`; err.Error() != want {
		t.Errorf("error %q, want %q", err, want)
	}
}

// fullDisk takes a number of bytes and no more.
type fullDisk struct{ left int }

var errFull = errors.New("no space left")

func (d *fullDisk) Write(b []byte) (int, error) {
	n := min(len(b), d.left)
	d.left -= n
	if n < len(b) {
		return n, errFull
	}
	return n, nil
}

func TestWritePartReturnsWriteError(t *testing.T) {
	for _, room := range []int{0, 1 << 16, 1 << 20} {
		if err := WritePart(&fullDisk{room}, perforated(20_000), Options{}); !errors.Is(err, errFull) {
			t.Errorf("room for %d bytes: error %v", room, err)
		}
	}
}

// perforated is a part with many openings, every other one round.
func perforated(openings int) *model.Part {
	const columns = 400
	p := &model.Part{ID: "many", Outline: rect(0, 0, columns*20, length.Length(openings/columns+1)*20)}
	for i := range openings {
		x, y := length.Length(i%columns)*20, length.Length(i/columns)*20
		shape := rect(x+5, y+5, x+15, y+15)
		if i%2 == 1 {
			shape = geom.CircleContour(geom.Point{X: (x + 10) * mm, Y: (y + 10) * mm}, 4*mm)
		}
		p.Openings = append(p.Openings, model.Opening{Shape: shape})
	}
	return p
}

// heap notes the greatest live heap while it is written to.
type heap struct{ written, peak int }

func (h *heap) Write(b []byte) (int, error) {
	if before := h.written; before>>20 != (before+len(b))>>20 { // once a megabyte
		runtime.GC()
		var s runtime.MemStats
		runtime.ReadMemStats(&s)
		h.peak = max(h.peak, int(s.HeapAlloc))
	}
	h.written += len(b)
	return len(b), nil
}

// The file is streamed: what is held while it is written is a small part of it.
func TestWritePartStreams(t *testing.T) {
	p := perforated(100_000)
	runtime.GC()
	var before runtime.MemStats
	runtime.ReadMemStats(&before)
	var h heap
	if err := WritePart(&h, p, Options{}); err != nil {
		t.Fatal(err)
	}
	if grown := h.peak - int(before.HeapAlloc); h.written < 10<<20 || grown > 1<<20 {
		t.Errorf("holds %d bytes more while it writes %d", grown, h.written)
	}
	runtime.KeepAlive(p)
}
