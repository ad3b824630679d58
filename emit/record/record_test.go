package record

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "rewrite the golden files")

func written(t *testing.T, m *model.Model) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// small is a model with a thing or two of each sort.
func small() *model.Model {
	at := func(line int) source.Range {
		return source.Range{File: "bar.hcl", Start: source.Pos{Line: line, Column: 3, Byte: 40}, End: source.Pos{Line: line, Column: 19, Byte: 56}}
	}
	why := model.Why{Block: `run.back cabinet."<urn>"`, At: at(12)}
	side := geom.RoundedContour(geom.R(0, 0, 24*length.Inch, 30*length.Inch), length.Inch)
	return &model.Model{
		Build: model.Build{Name: "shed", Unit: length.Inches, Marks: length.Inch / 32, Revision: "B"},
		Room: model.Room{Walls: []model.Wall{{
			Name: "north", Length: 123 * length.Inch, Corner: 90_400_000, Backing: "studs",
			Frame: geom.Frame{Turn: 90 * geom.Degree}, Studs: []model.Length{length.Inch, 17 * length.Inch}, Why: model.Why{Block: "wall.north"},
		}}},
		Runs: []model.Run{{Name: "back", Free: []model.End{model.Left, model.Right}, Boxes: []model.Box{{Kind: model.Bay, Name: "cooler"}}}},
		Parts: []model.Part{{
			ID: "cabinet.urn/side-left", Label: "URN-L", Kind: model.Panel, Stock: "sheet.birch", Thickness: 18 * length.Millimetre,
			Outline: side, Grain: model.GrainY, Why: why,
			Recesses:  []model.Recess{{ID: "groove", Depth: 6 * length.Millimetre, Shape: side, Open: []model.Edge{model.Top, model.Bottom}}},
			Placement: geom.Placement{X: geom.Dir{Axis: geom.V, Neg: true}, Y: geom.Dir{Axis: geom.Z}, Out: geom.Dir{Axis: geom.U}},
		}},
		Layouts:  []model.Layout{{Stock: "sheet.birch", Bought: 2, Waste: 1e-9}},
		Bill:     []model.BillLine{{Item: "sheet.birch", WeightKg: 12.5, Quantity: 2, Price: 79.9, Priced: true}},
		Carry:    model.Carry{CarLength: 70 * length.Inch, CarWidth: 47 * length.Inch, Doorway: 80 * length.Inch},
		Rough:    []model.Rough{{Stock: "sheet.birch", Blank: 2, Cuts: []model.RoughCut{{Along: true, At: 24 * length.Inch, Free: length.Inch, Of: geom.R(0, 0, 96*length.Inch, 48*length.Inch)}}}},
		Work:     []model.Task{{Key: "set.cabinet.urn", People: 2, WeightKg: 30.5, After: []model.Before{{Key: "order", Why: "it must be there"}}, Screws: []model.Driven{{Screw: "screw.wall", Count: 4}}}},
		Programs: []model.Program{{Name: "support-1", Shape: side, Moves: []model.Move{{X: 1}}}},
		Values:   []model.Value{{Name: "run.back.width", Kind: model.AsLength, Text: "30 in", Written: "rest", Origin: model.FromSolving, From: []string{"wall.north.length", "given.gap"}}},
		Views:    []model.View{{Name: "plan"}},
		Findings: finding.List{{Severity: finding.Warning, Slug: "near-joint", At: at(7), Text: "1/4 in < 1/2 in & so on"}},
	}
}

func TestGolden(t *testing.T) {
	got := written(t, small())
	path := filepath.Join("testdata", "small.json")
	if *update {
		if err := os.WriteFile(path, got, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Error(diff)
	}
	if again := written(t, small()); !bytes.Equal(got, again) {
		t.Error("a second record differs")
	}
}

// The library's own reader finds in the record what the package promises.
func TestReadBack(t *testing.T) {
	var got struct {
		Format int `json:"barwright_model"`
		Build  struct{ Unit string }
		Room   struct {
			Walls []struct {
				Corner int64
				Studs  []int64
				Why    struct{ Block, At string }
			}
		}
		Givens []any
		Runs   []struct{ Free []string }
		Parts  []struct {
			ID, Grain string
			Thickness int64
			Outline   []struct {
				X, Y  int64
				Bulge float64
			}
			Recesses  []struct{ Open []string }
			Placement struct{ X, Y, Out string }
			Why       struct{ Block, At string }
		}
		Layouts  []struct{ Waste json.Number }
		Bill     []struct{ Price json.Number }
		Findings []struct{ Severity, Text string }
		Views    *[]any
		Programs []struct {
			Moves  *[]any
			Levels []int64
		}
	}
	data := written(t, small())
	if err := json.Unmarshal(data, &got); err != nil {
		t.Fatal(err)
	}
	p := got.Parts[0]
	for what, ok := range map[string]bool{
		"format":             got.Format == Format,
		"unit in words":      got.Build.Unit == "in",
		"angle":              got.Room.Walls[0].Corner == 90_400_000,
		"list of lengths":    cmp.Equal(got.Room.Walls[0].Studs, []int64{25_400_000, 431_800_000}),
		"no place":           got.Room.Walls[0].Why.At == "",
		"empty list":         got.Givens != nil && got.Programs[0].Levels != nil,
		"ends in words":      cmp.Equal(got.Runs[0].Free, []string{"left", "right"}),
		"grain in words":     p.Grain == "y",
		"nanometres":         p.Thickness == 18_000_000,
		"embedded point":     p.Outline[1].X == 584_200_000 && p.Outline[1].Y == 0,
		"full bulge":         p.Outline[1].Bulge == geom.QuarterBulge,
		"edges in words":     cmp.Equal(p.Recesses[0].Open, []string{"top", "bottom"}),
		"directions":         p.Placement.X == "-v" && p.Placement.Y == "+z" && p.Placement.Out == "+u",
		"quotes and angles":  p.Why.Block == `run.back cabinet."<urn>"` && bytes.Contains(data, []byte("<urn>")),
		"place":              p.Why.At == "bar.hcl:12:3-12:19",
		"small number plain": got.Layouts[0].Waste == "0.000000001",
		"price":              got.Bill[0].Price == "79.9",
		"severity in words":  got.Findings[0].Severity == "warning",
		"views left out":     got.Views == nil,
		"moves left out":     got.Programs[0].Moves == nil,
	} {
		if !ok {
			t.Errorf("%s: not as promised", what)
		}
	}
}

// fill gives every scalar under v a value of its own and every list one
// element, and calls visit for each scalar that a record carries.
func fill(v reflect.Value, visit func(leaf reflect.Value)) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			inPlace := v.Type() == reflect.TypeFor[source.Pos]() && v.Type().Field(i).Name == "Byte"
			if !inPlace && since(v.Type(), v.Type().Field(i).Name) != never {
				fill(v.Field(i), visit)
			}
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 1, 1))
		fill(v.Index(0), visit)
	default:
		visit(v)
	}
}

// Whatever differs between two models, down to the last field, differs between
// their records.
func TestEveryFieldShows(t *testing.T) {
	var m model.Model
	leaves := 0
	fill(reflect.ValueOf(&m).Elem(), func(reflect.Value) { leaves++ })
	if leaves < 200 {
		t.Fatalf("only %d fields found", leaves)
	}
	blank := written(t, &m)
	for i := range leaves {
		var changed model.Model
		n, name := 0, ""
		fill(reflect.ValueOf(&changed).Elem(), func(v reflect.Value) {
			if n++; n != i+1 {
				return
			}
			name = v.Type().String()
			switch v.Kind() {
			case reflect.Bool:
				v.SetBool(true)
			case reflect.Int, reflect.Int64:
				v.SetInt(1)
			case reflect.Float64:
				v.SetFloat(0.5)
			case reflect.String:
				v.SetString("x")
			default:
				t.Fatalf("a field is a %s", v.Kind())
			}
		})
		if bytes.Equal(blank, written(t, &changed)) {
			t.Errorf("field %d, a %s, does not show", i, name)
		}
	}
}

func TestNumbersThatJSONDoesNotHave(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if err := Write(&bytes.Buffer{}, &model.Model{Bill: []model.BillLine{{Price: x}}}); err == nil {
			t.Errorf("%f was written", x)
		}
	}
	zero, minus := &model.Model{Bill: []model.BillLine{{}}}, &model.Model{Bill: []model.BillLine{{Price: math.Copysign(0, -1)}}}
	if !bytes.Equal(written(t, zero), written(t, minus)) {
		t.Error("a negative zero is another number")
	}
}

var errFull = errors.New("the disk is full")

// full takes so many bytes.
type full struct{ room int }

func (f *full) Write(p []byte) (int, error) {
	if f.room -= len(p); f.room < 0 {
		return 0, errFull
	}
	return len(p), nil
}

// Wherever the writer gives up, its error is handed on and quotes nothing of the
// model.
func TestAWriterThatFails(t *testing.T) {
	all := len(written(t, small()))
	for room := 0; room < all; room += 512 {
		err := Write(&full{room}, small())
		if !errors.Is(err, errFull) || err.Error() != "record of the model: the disk is full" {
			t.Errorf("room for %d bytes: %v", room, err)
		}
	}
}

func TestMemberName(t *testing.T) {
	for field, want := range map[string]string{
		"KneeWalls": "knee_walls", "ID": "id", "RecessID": "recess_id", "WeightKg": "weight_kg", "RPM": "rpm", "X": "x", "PerBox": "per_box",
	} {
		if got := memberName(field); got != want {
			t.Errorf("%s: %s, want %s", field, got, want)
		}
	}
}
