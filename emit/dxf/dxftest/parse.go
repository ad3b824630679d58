package dxftest

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"

	"barwright/compile/geom"
	"barwright/lang/length"
)

//go:embed parse.js
var parser []byte

// Parsed is a file as a general library reads it.
type Parsed struct {
	File     string
	Version  string
	Unit     int        // $INSUNITS
	Min, Max [2]float64 // $EXTMIN, $EXTMAX
	Layers   []string
	Entities []Entity
}

// Entity is one of a file: a polyline, a line, a circle or a text.
type Entity struct {
	Type, Layer string
	Closed      bool
	Vertices    [][3]float64 // x, y, bulge
	Centre      [2]float64
	Radius      float64
	Text        string
}

// Parse has files read by dxf-parser (npm), which knows nothing of this project. It skips
// the test, aloud, where node or the package is missing (node finds it by NODE_PATH), and
// fails it where BARWRIGHT_OUTSIDE is "required".
func Parse(t testing.TB, files []string) []Parsed {
	t.Helper()
	if err := exec.Command("node", "-e", "require('dxf-parser')").Run(); err != nil {
		missing(t, "node with dxf-parser is not installed")
	}
	script := filepath.Join(t.TempDir(), "parse.js")
	if err := os.WriteFile(script, parser, 0o644); err != nil {
		t.Fatal(err)
	}
	said, err := exec.Command("node", slices.Concat([]string{script}, files)...).Output()
	var all []Parsed
	if err == nil {
		err = json.Unmarshal(said, &all)
	}
	if err != nil || len(all) != len(files) {
		t.Fatalf("dxf-parser: %d of %d files, %v", len(all), len(files), err)
	}
	return all
}

// Differences lists where a file in mm has other closed contours than it should, by their
// layers, places and bulges and in their order, other entities beside so many lines, the
// pieces of what is scribed among them, or another box in its header.
func (p *Parsed) Differences(want []Contour, lines int) (out []string) {
	say := func(format string, args ...any) { out = append(out, p.File+": "+fmt.Sprintf(format, args...)) }
	var all []Contour // lines too
	var contours int
	for i := range p.Entities {
		e := &p.Entities[i]
		if !slices.Contains(p.Layers, e.Layer) {
			say("%s on %s, which is no layer of the file", e.Type, e.Layer)
		}
		if e.Type == "TEXT" {
			if e.Layer != "NOTE" || e.Text == "" {
				say("text %q on %s", e.Text, e.Layer)
			}
			continue
		}
		got := e.contour()
		all = append(all, Contour{e.Layer, got})
		if e.Type == "LINE" {
			lines--
			continue
		}
		if e.Layer == "SCRIBE" && !e.Closed {
			lines -= len(got) - 1
			continue
		}
		if contours++; contours > len(want) {
			continue
		}
		w := want[contours-1]
		if e.Layer != w.Layer || !e.is(w.Shape) {
			say("contour %d is a %s %v on %s, want %v on %s", contours, e.Type, got, e.Layer, w.Shape, w.Layer)
		}
	}
	if contours != len(want) || lines != 0 {
		say("%d contours, want %d; %d lines are missing", contours, len(want), lines)
	}
	if len(all) == 0 {
		say("nothing is in it")
	} else if box := boxOf(all); !sameBox([]float64{p.Min[0], p.Min[1], p.Max[0], p.Max[1]}, box) {
		say("the header says %v to %v, and all is in %v", p.Min, p.Max, box)
	}
	if p.Unit != 4 {
		say("unit %d", p.Unit)
	}
	return out
}

// contour is an entity's shape, a circle as two half arcs.
func (e *Entity) contour() geom.Contour {
	nm := func(mm float64) length.Length { return length.Length(math.Round(mm * 1e6)) }
	if e.Type == "CIRCLE" {
		return geom.CircleContour(geom.Point{X: nm(e.Centre[0]), Y: nm(e.Centre[1])}, nm(e.Radius))
	}
	out := make(geom.Contour, len(e.Vertices))
	for i, v := range e.Vertices {
		out[i] = geom.Vertex{Point: geom.Point{X: nm(v[0]), Y: nm(v[1])}, Bulge: v[2]}
	}
	return out
}

// is reports whether an entity is a contour, wherever that begins: to a nanometre, and to
// 1e-9 in its bulges. A circle has no direction.
func (e *Entity) is(want geom.Contour) bool {
	got := e.contour()
	if centre, r, circle := want.Circle(); e.Type == "CIRCLE" {
		c, gotR, _ := got.Circle()
		return circle && near(c, centre) && max(r-gotR, gotR-r) <= 1
	}
	if !e.Closed || len(got) != len(want) {
		return false
	}
	for first := range want {
		same := true
		for i, v := range got {
			w := want[(first+i)%len(want)]
			same = same && near(v.Point, w.Point) && math.Abs(v.Bulge-w.Bulge) <= 1e-9
		}
		if same {
			return true
		}
	}
	return false
}

func near(a, b geom.Point) bool {
	d := a.Sub(b)
	return max(d.X, -d.X, d.Y, -d.Y) <= 1
}
