package record

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"barwright/compile"
	"barwright/compile/edittest"
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/source"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/rogpeppe/go-internal/txtar"
	"pgregory.net/rapid"
)

// solved is the model of a description; nil where it has none.
func solved(files source.Files) *model.Model {
	src, found := lang.Read(files)
	if found.HasErrors() {
		return nil
	}
	m, _ := compile.Priced(src)
	return m
}

// example is the model of one of the examples.
func example(t testing.TB, name string) *model.Model {
	t.Helper()
	m := solved(edittest.Folder(t, filepath.Join(root, "examples", name)))
	if m == nil {
		t.Fatalf("examples/%s is not solved", name)
	}
	return m
}

const root = "../.."

var examples = [...]string{"boatshed", "servery", "steps/1", "steps/2", "steps/3", "steps/4", "steps/5", "steps/6"}

// stripped lacks what a record does not carry.
var stripped = cmp.Options{
	cmpopts.EquateEmpty(),
	cmpopts.IgnoreFields(model.Model{}, "Views"),
	cmpopts.IgnoreFields(model.Program{}, "Moves", "Finishing"),
	cmpopts.IgnoreFields(model.Routing{}, "Moves"),
	cmpopts.IgnoreFields(model.Work{}, "First"),
	cmpopts.IgnoreFields(source.Pos{}, "Byte"),
}

// readAgain reads the record of a model and compares the two, and their records.
func readAgain(m *model.Model) error {
	var first, second bytes.Buffer
	if err := Write(&first, m); err != nil {
		return err
	}
	got, format, err := Read(bytes.NewReader(first.Bytes()))
	if err != nil {
		return err
	}
	if diff := cmp.Diff(m, got, stripped); format != Format || diff != "" {
		return fmt.Errorf("format %d: %s", format, diff)
	}
	if err := Write(&second, got); err != nil || !bytes.Equal(first.Bytes(), second.Bytes()) {
		return fmt.Errorf("written again (%v) it is %s", err, cmp.Diff(first.String(), second.String()))
	}
	return nil
}

func TestExamplesAreReadAgain(t *testing.T) {
	for _, name := range examples {
		if err := readAgain(example(t, name)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// No sound build has a record that is refused: every case of the conformance suite
// that can be solved is read again.
func TestCasesAreReadAgain(t *testing.T) {
	archives, err := filepath.Glob(filepath.Join(root, "testdata", "spec", "*.txtar"))
	if err != nil {
		t.Fatal(err)
	}
	read := 0
	for _, archive := range archives {
		a, err := txtar.ParseFile(archive)
		if err != nil {
			t.Fatal(err)
		}
		var files source.Files
		for _, f := range a.Files {
			if path.Dir(f.Name) == "." && path.Ext(f.Name) == ".hcl" {
				files = append(files, source.File{Name: f.Name, Text: f.Data})
			}
		}
		m := solved(files)
		if m == nil {
			continue
		}
		if err := readAgain(m); err != nil {
			t.Errorf("%s: %v", archive, err)
		}
		read++
	}
	if read < 100 {
		t.Errorf("only %d cases are solved", read)
	}
}

// v1.json was written when the format was 1: examples/steps/2 as it was then.
func TestFormerFormat(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("testdata", "v1.json"))
	if err != nil {
		t.Fatal(err)
	}
	m, format, err := Read(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	if format != 1 || len(m.Values) != 0 || m.Saw != (model.Saw{}) {
		t.Errorf("format %d with %d values and a saw of %v", format, len(m.Values), m.Saw)
	}
	var was, is any
	if err := errors.Join(json.Unmarshal(text, &was), json.Unmarshal(written(t, m), &is)); err != nil {
		t.Fatal(err)
	}
	delete(was.(map[string]any), "barwright_model")
	if what := lost(was, is); what != "" {
		t.Errorf("what it holds is not written again: %s", what)
	}
	// A stick as that format had it.
	stick := `"sticks": [{"name": "stick.stud", "text": "2 x 4", "steel": false, "thickness": 38100000, "width": 88900000,
		"lengths": [{"length": 2438400000, "price": 0, "priced": false}], "density": 0, "why": {"block": "stick.stud", "at": "stock.hcl:2:1-2:14"}}]`
	if m, _, err := Read(strings.NewReader(strings.Replace(string(text), `"sticks": []`, stick, 1))); err != nil || len(m.Stock.Sticks) != 1 || m.Stock.Sticks[0].Ends != 0 {
		t.Errorf("a stick of format 1: %v", err)
	}
	for _, name := range []string{"values", "saw"} {
		with := strings.Replace(string(text), "\n \"stock\"", fmt.Sprintf("\n %q: [],\n \"stock\"", name), 1)
		if _, _, err := Read(strings.NewReader(with)); err == nil || !strings.Contains(err.Error(), "no member") {
			t.Errorf("format 1 with %s: %v", name, err)
		}
	}
}

// lost is the first thing of a value of JSON that another one lacks, which may have more
// members; empty where it lacks none.
func lost(was, is any) string {
	switch was := was.(type) {
	case map[string]any:
		is, _ := is.(map[string]any)
		for name, v := range was {
			if what := lost(v, is[name]); what != "" {
				return name + ": " + what
			}
		}
		return ""
	case []any:
		is, _ := is.([]any)
		if len(was) != len(is) {
			return fmt.Sprintf("%d instead of %d", len(is), len(was))
		}
		for i := range was {
			if what := lost(was[i], is[i]); what != "" {
				return what
			}
		}
		return ""
	}
	if was != is {
		return fmt.Sprintf("%v instead of %v", is, was)
	}
	return ""
}

// drawn fills a value at random with what a record can hold.
func drawn(t *rapid.T, v reflect.Value, p *plan) {
	switch p.kind {
	case asWhole:
		v.SetInt(rapid.OneOf(rapid.Int64Range(p.least, most), rapid.Int64Range(max(p.least, -9), 9)).Draw(t, "whole"))
	case asNumber:
		most := 1e300
		if p.bulge {
			most = mostBulge
		}
		x := rapid.Float64Range(-most, most).Draw(t, "number")
		if p.bulge && !isBulge(x) {
			x = 0
		}
		v.SetFloat(x)
	case asFlag:
		v.SetBool(rapid.Bool().Draw(t, "flag"))
	case asText:
		v.SetString(rapid.String().Draw(t, "text"))
	case asWord:
		v.Set(rapid.SampledFrom(p.values).Draw(t, "word"))
	case asPlace:
		if rapid.Bool().Draw(t, "place") {
			count := rapid.IntRange(0, 999_999_999)
			v.Set(reflect.ValueOf(source.Range{
				File:  rapid.StringN(1, 9, -1).Draw(t, "file"),
				Start: source.Pos{Line: count.Draw(t, "line"), Column: count.Draw(t, "column")},
				End:   source.Pos{Line: count.Draw(t, "line"), Column: count.Draw(t, "column")},
			}))
		}
	case asList:
		n := rapid.IntRange(p.atLeast, p.atLeast+2).Draw(t, "items")
		v.Set(reflect.MakeSlice(p.of, n, n))
		for i := range n {
			drawn(t, v.Index(i), p.item)
		}
	case asObject:
		for _, f := range p.fields {
			drawn(t, v.FieldByIndex(f.index), f.plan)
		}
	}
}

// drawnModel is a model of any content that check has nothing against.
func drawnModel(t *rapid.T) *model.Model {
	var m model.Model
	drawn(t, reflect.ValueOf(&m).Elem(), planFor(Format))
	for i := range m.Values {
		m.Values[i].Name = fmt.Sprintf("%d.%s", i, m.Values[i].Name)
	}
	for i := range m.Parts {
		p := &m.Parts[i]
		p.ID, p.Label = fmt.Sprintf("%d/%s", i, p.ID), fmt.Sprintf("%d-%s", i, p.Label)
		shape := func() geom.Contour {
			size := rapid.Int64Range(1, 500_000_000_000)
			x, y := model.Length(size.Draw(t, "x")), model.Length(size.Draw(t, "y"))
			return geom.RoundedContour(geom.R(-x, -y, x, y), min(x, y)/3)
		}
		p.Outline = shape()
		for j := range p.Openings {
			if p.Openings[j].Shape = shape(); !p.Openings[j].Notch {
				p.Openings[j].Shape = p.Openings[j].Shape.Reversed()
			}
		}
		for j := range p.Recesses {
			p.Recesses[j].Shape = shape()
		}
		p.Placement.X, p.Placement.Y, p.Placement.Out = geom.Dir{Axis: geom.V, Neg: true}, geom.Dir{Axis: geom.Z}, geom.Dir{}
	}
	part := func(id *string) {
		if *id = ""; len(m.Parts) > 0 {
			*id = rapid.SampledFrom(m.Parts).Draw(t, "part").ID
		}
	}
	for _, run := range m.Runs {
		for _, box := range run.Boxes {
			for i := range box.Fronts {
				part(&box.Fronts[i].Part)
			}
		}
	}
	for _, wall := range m.KneeWalls {
		for i := range wall.Supports {
			part(&wall.Supports[i].Part)
		}
	}
	for _, slab := range m.Slabs {
		for i := range slab.Parts {
			part(&slab.Parts[i])
		}
		for i := range slab.Cuts {
			part(&slab.Cuts[i].Part)
		}
	}
	for i := range m.Cuts {
		m.Cuts[i].Parts = nil
	}
	for _, layout := range m.Layouts {
		for _, blank := range layout.Blanks {
			for i := range blank.Placed {
				part(&blank.Placed[i].Part)
			}
		}
	}
	for i := range m.Programs {
		part(&m.Programs[i].Part)
	}
	for i := range m.Routings {
		part(&m.Routings[i].Part)
	}
	return &m
}

func TestAnyModelIsReadAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		if err := readAgain(drawnModel(t)); err != nil {
			t.Fatal(err)
		}
	})
}
