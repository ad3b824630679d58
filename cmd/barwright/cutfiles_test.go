package main

import (
	"bytes"
	"maps"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"barwright/compile/model"
	"barwright/compile/relief"
	"barwright/emit/dxf/dxftest"
	"barwright/lang/length"
)

// read reads all cut files of a model back, by name.
func read(t *testing.T, m *model.Model) map[string]*dxftest.File {
	t.Helper()
	out := map[string]*dxftest.File{}
	for _, f := range cutFiles(m) {
		var b bytes.Buffer
		if err := f.Write(&b); err != nil {
			t.Fatal(err)
		}
		file, err := dxftest.Read(&b)
		if err != nil {
			t.Fatalf("%s: %v", f.Name, err)
		}
		if out[f.Name] != nil {
			t.Errorf("%s is written twice", f.Name)
		}
		out[f.Name] = file
	}
	return out
}

// edges returns how many outlines are cut in files of a folder, and their area in mm².
func edges(files map[string]*dxftest.File, folder string, times func(name string) int) (n int, area float64) {
	for name, f := range files {
		if !strings.HasPrefix(name, folder) {
			continue
		}
		for _, c := range f.Contours {
			if c.Layer == "EDGE" {
				n += times(name)
				area += float64(times(name)) * math.Abs(c.Shape.Area())
			}
		}
	}
	return n, area
}

// However the files are asked for, every part of the examples is cut out once.
func TestCutFilesHoldEveryPart(t *testing.T) {
	count := regexp.MustCompile(`-x(\d+)(-far)?\.dxf$`)
	for _, name := range examples {
		m := *compiled(t, name)
		want := 0.0
		for i := range m.Parts {
			want += math.Abs(m.Parts[i].Outline.Area())
		}
		for _, way := range []string{"each", "distinct", "sheets"} {
			m.Table.Files = way
			files := read(t, &m)
			onSheets(t, &m, files)
			if way != "sheets" {
				maps.DeleteFunc(files, func(name string, _ *dxftest.File) bool { return strings.HasPrefix(name, "sheets/") })
			}
			n, area := edges(files, "", func(name string) int {
				if found := count.FindStringSubmatch(name); way == "distinct" && found != nil {
					times, _ := strconv.Atoi(found[1])
					return times
				}
				return 1
			})
			if n != len(m.Parts) || math.Abs(area-want) > 1e-6*want {
				t.Errorf("%s, %s: %d outlines of %f mm², want %d of %f", name, way, n, area, len(m.Parts), want)
			}
			switch way {
			case "distinct":
				if len(files) < len(m.Cuts) || len(files) >= len(m.Parts) {
					t.Errorf("%s: %d files for %d lines of the cut list and %d parts", name, len(files), len(m.Cuts), len(m.Parts))
				}
			}
		}
	}
}

// onSheets compares the sheets' files with the layouts: as many outlines as pieces, each
// in the box that the layout has for it.
func onSheets(t *testing.T, m *model.Model, files map[string]*dxftest.File) {
	t.Helper()
	for i := range m.Layouts {
		l := &m.Layouts[i]
		stock, isSheet := strings.CutPrefix(l.Stock, "sheet.")
		for k := range l.Blanks {
			f := files["sheets/"+stock+"-"+strconv.Itoa(k+1)+".dxf"]
			if (f != nil) != isSheet {
				t.Errorf("%s, blank %d: a file is there: %t", l.Stock, k+1, f != nil)
			}
			if f == nil {
				continue
			}
			placed := l.Blanks[k].Placed
			for _, c := range f.Contours {
				if c.Layer != "EDGE" {
					continue
				}
				if len(placed) == 0 {
					t.Fatalf("%s %d: more outlines than pieces", stock, k+1)
				}
				if b := c.Shape.Bounds(); b != placed[0].At {
					t.Errorf("%s %d: %s lies in %v, want %v", stock, k+1, placed[0].Part, b, placed[0].At)
				}
				placed = placed[1:]
			}
			if len(placed) > 0 {
				t.Errorf("%s %d: %d pieces have no outline", stock, k+1, len(placed))
			}
		}
	}
}

// Everything that a table can ask for at once is written and read back for the examples.
func TestCutFilesWithEverything(t *testing.T) {
	for _, name := range examples {
		m := *compiled(t, name)
		m.Table.Inch, m.Table.Depths, m.Table.Mirrored, m.Table.Origin = true, true, true, "middle"
		m.Table.Flatten, m.Table.Small = length.Millimetre/20, 200*length.Millimetre
		m.Table.Relief, m.Table.Bit = "diagonal", 3*length.Millimetre
		for i := range m.Parts {
			if trouble := relief.Check(&m.Parts[i], m.Table.Relief, m.Table.Bit); len(trouble) > 0 {
				t.Errorf("%s: %s: %+v", name, m.Parts[i].ID, trouble)
			}
		}
		for _, way := range []string{"each", "distinct", "sheets"} {
			m.Table.Files = way
			for file, f := range read(t, &m) {
				if f.Unit != "1" {
					t.Errorf("%s: unit %s", file, f.Unit)
				}
			}
		}
	}
}
