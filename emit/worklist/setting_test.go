package worklist

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/finding"
	"barwright/lang/length"
)

const inch = length.Inch

// stood is a build with something of each sort that is set, packed, cut and led.
func stood() *model.Model {
	m := &model.Model{Build: model.Build{Name: "boat shed", Unit: length.Inches, Marks: inch / 32}}
	m.Room.Floor = model.Floor{Bears: "cabinet urn, rear left corner", Datum: geom.Point{X: 30 * inch, Y: 2 * inch}}
	m.Setting = model.Setting{
		Shims: []model.Shim{
			{Of: "cabinet.urn", Under: "rear left corner"}, {Of: "cabinet.urn", Under: "rear right corner", Thick: inch / 8},
			{Of: "cabinet.cups", Under: "leg 1", Winds: true, Height: 4*inch + inch/1000},
		},
		Gaps: []model.Gap{{Box: "cabinet.urn", Along: 4 * inch}, {Box: "cabinet.urn", Along: 20 * inch, Shim: inch / 16}},
		Steps: []model.SettingStep{
			{What: "knee wall bar", Block: "knee_wall.bar", Does: model.FramedInPlace, People: 2},
			{
				What: "cabinet urn", Block: "cabinet.urn", People: 1, Door: true, Through: []string{"an end"},
				Slides: []model.Slide{{To: "to the rear", By: 19*inch + inch/1000}, {To: "to the left", By: 2 * inch, Over: []string{"stub drain"}}},
			},
			{What: "counter work, piece 1", Block: "counter.work", People: 3, Slides: []model.Slide{{To: "down", By: inch}}},
		},
	}
	m.Work = []model.Task{{Key: "frame.bar"}, {Key: "set.cabinet.urn"}, {Key: "dry.counter.work"}, {Key: "fix.counter.work"}}
	m.Parts = []model.Part{{ID: "cabinet.urn/back", Label: "URN-BK"}, {
		ID: "filler.wall/strip", Label: "WALL-F",
		Scribes: []model.Scribe{{Edge: model.RightEdge, To: "wall.north", From: model.Bottom, Stations: []model.Station{{Cut: inch / 4}, {Along: 6 * inch, Cut: inch / 2}}}},
	}}
	m.Ways = []model.Way{
		{
			Kind: "cable", Name: "scale", From: "outlet.a", To: "outlet.b", Length: 50 * inch, Need: 70 * inch, Supports: 2, Past: []string{"knee_wall.bar", "cabinet.urn"},
			Holes: []model.WayHole{{Part: "cabinet.urn/back", Wide: inch / 2, High: inch / 2, At: model.Spot{Z: 20 * inch}, Plates: 1}},
		},
		{Kind: "cord", Name: "urn", From: "bay.urn", To: "outlet.b", Length: 30 * inch, Holes: []model.WayHole{{Part: "cabinet.urn/back", Wide: 2 * inch, High: inch}}},
		{Kind: "drain", Name: "waste", From: "sink.prep", To: "stub.drain", Length: 12 * inch},
	}
	m.Drains = []model.Drain{{Name: "waste", Bowl: 29 * inch, Outlet: 14 * inch, Weir: 13 * inch, End: 12 * inch, Stops: []model.Stop{{Name: "drawer 1 of cabinet urn"}}}}
	return m
}

func TestGoldens(t *testing.T) {
	for _, c := range []struct {
		name  string
		write func(io.Writer, *model.Model) error
		m     *model.Model
	}{
		{"setting.txt", Setting, stood()}, {"ways.txt", Ways, stood()},
		{"setting-none.txt", Setting, &model.Model{}}, {"ways-none.txt", Ways, &model.Model{}},
	} {
		var b bytes.Buffer
		if err := c.write(&b, c.m); err != nil {
			t.Fatal(err)
		}
		path := filepath.Join("testdata", c.name)
		if *update {
			if err := os.WriteFile(path, b.Bytes(), 0o666); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), b.String()); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
		for line := range strings.Lines(b.String()) {
			if line = strings.TrimSuffix(line, "\n"); finding.Columns(line) > columns || strings.TrimRight(line, " ") != line {
				t.Errorf("%q does not print in %d columns", line, columns)
			}
		}
		if c.write(&full{10}, c.m) == nil {
			t.Errorf("%s: a full disk is not told", c.name)
		}
	}
}
