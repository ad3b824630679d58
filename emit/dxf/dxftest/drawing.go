package dxftest

import (
	"fmt"
	"io"
	"maps"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// Drawing is what the file of a drawing says.
type Drawing struct {
	File                                // its header alone
	Dashes   map[string][]length.Length // of each line type
	LineType map[string]string          // of each layer
	Strokes  []Stroke                   // in the order of the file
	Labels   []Label
}

// Stroke is a line, a polyline or a circle.
type Stroke struct {
	Kind   string // "LINE", "POLYLINE", "CIRCLE"
	Layer  string
	Line   geom.Contour // of a circle its middle
	Closed bool
	Width  length.Length
	Radius length.Length // of a circle
}

// Label is a line of text; one that is not centred begins at its point.
type Label struct {
	Layer, Text string
	At          geom.Point
	Height      length.Length
	Turn        float64 // degrees
	Wide        float64 // how wide its letters are to those of the font
	Centred     bool
}

// ReadDrawing reads a drawing as this project writes it, as strictly as Read does. Line
// types and layers that are used must be defined.
func ReadDrawing(r io.Reader) (*Drawing, error) {
	d := &Drawing{Dashes: map[string][]length.Length{}, LineType: map[string]string{}}
	if err := readSections(r, d.header, d.table, d.stroke); err != nil {
		return nil, err
	}
	return d, nil
}

// table reads a line type, or a layer and that its line type is defined.
func (d *Drawing) table(rec record) error {
	switch rec.kind {
	case "LTYPE":
		return d.lineType(rec)
	case "LAYER":
		if d.LineType[rec.get(2)] = rec.get(6); d.Dashes[rec.get(6)] == nil {
			return fmt.Errorf("no line type %s", rec.get(6))
		}
	}
	return nil
}

// lineType reads dashes, and that they are as many and as long as is said.
func (d *Drawing) lineType(r record) error {
	dashes, whole := []length.Length{}, length.Length(0)
	for _, g := range r.groups {
		if g.code == 49 {
			l, err := d.length(g.value)
			if err != nil {
				return err
			}
			dashes, whole = append(dashes, l), whole+max(l, -l)
		}
	}
	said, err := d.length(r.get(40))
	if err != nil || said != whole || r.get(73) != strconv.Itoa(len(dashes)) {
		return fmt.Errorf("%s dashes in %s are said, there are %v", r.get(73), r.get(40), dashes)
	}
	d.Dashes[r.get(2)] = dashes
	return nil
}

func (d *Drawing) stroke(r record) error {
	if r.kind == "SEQEND" {
		return nil
	}
	if _, ok := d.LineType[r.get(8)]; !ok {
		return fmt.Errorf("no layer %s", r.get(8))
	}
	line, err := d.vertices(r)
	if err != nil {
		return err
	}
	switch r.kind {
	case "LINE":
		to, err := d.second(r)
		d.Strokes = append(d.Strokes, Stroke{Kind: "LINE", Layer: r.get(8), Line: append(line, geom.Vertex{Point: to})})
		return err
	case "CIRCLE":
		radius, err := d.length(r.get(40))
		d.Strokes = append(d.Strokes, Stroke{Kind: "CIRCLE", Layer: r.get(8), Line: line, Closed: true, Radius: radius})
		return err
	case "POLYLINE", "LWPOLYLINE":
		width, err := d.length(r.or(43, r.or(40, "0.0")))
		if r.kind == "POLYLINE" {
			line = nil // its own point is the elevation
		}
		d.Strokes = append(d.Strokes, Stroke{Kind: "POLYLINE", Layer: r.get(8), Line: line, Closed: r.get(70) == "1", Width: width})
		return err
	case "VERTEX":
		last := &d.Strokes[len(d.Strokes)-1]
		last.Line = append(last.Line, line...)
		return nil
	case "TEXT":
		return d.label(r, line[0].Point)
	}
	return fmt.Errorf("unknown entity")
}

func (d *Drawing) label(r record, at geom.Point) (err error) {
	l := Label{Layer: r.get(8), Text: r.get(1), At: at, Centred: r.get(72) == "1" && r.get(73) == "2"}
	if l.Centred {
		if l.At, err = d.second(r); err != nil {
			return err
		}
	}
	if l.Height, err = d.length(r.get(40)); err != nil {
		return err
	}
	if l.Turn, err = strconv.ParseFloat(r.or(50, "0.0"), 64); err != nil {
		return err
	}
	l.Wide, err = strconv.ParseFloat(r.or(41, "1.0"), 64)
	d.Labels = append(d.Labels, l)
	return err
}

func (r record) or(code int, fallback string) string {
	if s := r.get(code); s != "" {
		return s
	}
	return fallback
}

// second reads the second point of a record.
func (d *Drawing) second(r record) (p geom.Point, err error) {
	for _, g := range r.groups {
		if g.code == 11 || g.code == 21 || g.code == 31 {
			if err := d.setPoint(&p, group{g.code - 1, g.value}); err != nil {
				return p, err
			}
		}
	}
	return p, nil
}

// drawingWarnings are what a drawing may be warned of: it is not for cutting, and dots
// are lines with a width.
var drawingWarnings = []string{"no contour on any cutting layer", "polyline with a width"}

// Audit reports, through t, what the inspector finds wrong with drawings, apart from
// what only matters to a cutting table. All must have the layers of the first.
func Audit(t testing.TB, files []string) {
	t.Helper()
	layers := strings.Join(layersOf(t, files[0]), ",")
	for _, r := range inspect(t, files, "--annotation-layers", layers, "--units", "mm") {
		if r.AuditErrors == nil || *r.AuditErrors != 0 || *r.AuditFixes != 0 || len(r.Problems) != 0 {
			t.Errorf("%s: problems %q", r.File, r.Problems)
		}
		for _, w := range r.Warnings {
			if !slices.ContainsFunc(drawingWarnings, func(allowed string) bool { return strings.HasSuffix(w, allowed) }) {
				t.Errorf("%s: warning %q", r.File, w)
			}
		}
	}
}

func layersOf(t testing.TB, file string) []string {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	d, err := ReadDrawing(f)
	if err != nil {
		t.Fatalf("%s: %v", file, err)
	}
	return slices.Sorted(maps.Keys(d.LineType))
}
