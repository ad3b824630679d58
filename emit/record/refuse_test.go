package record

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// What is wrong with a record is told in a sentence, with its line and its member.
func TestRefused(t *testing.T) {
	good := string(written(t, small()))
	for _, c := range []struct{ old, new, want string }{
		{good, "", `line 1: this is no record of a model: it does not begin with "barwright_model"`},
		{good, "build {\n}\n", `line 1: this is no record of a model: it does not begin with "barwright_model"`},
		{good, `{"name": 1}`, `line 1: this is no record of a model: it does not begin with "barwright_model"`},
		{good, "{\"barwright_model\": 2\n}", `line 2: the member "build" is missing`},
		{good, `{"barwright_model": 2`, `line 1: here is the end instead of a comma or "}"`},
		{good, `{"barwright_model": "2"}`, `line 1: barwright_model: here is a text instead of a whole number`},
		{good, `{"barwright_model": 0}`, "line 1: there is no format 0"},
		{`_model": 2`, `_model": 3`, "line 2: the record has format 3, for which a newer barwright is needed: this one reads up to 2"},
		{`"unit": "in"`, `"unit": "yd"`, `line 3: build.unit: "yd" is none of ["mm" "in" "cm" "m" "ft"]`},
		{`"unit": "in"`, `"unit": 1`, "line 3: build.unit: here is a number instead of a text"},
		{`"marks": 793750`, `"marks": 793750.5`, "line 3: build.marks: 793750.5 is no whole number"},
		{`"marks": 793750`, `"marks": 0793750`, "line 3: build.marks: 0793750 is no whole number"},
		{`"marks": 793750`, `"marks": 1000000000001`, "line 3: build.marks: 1000000000001 is not from -1000000000000 to 1000000000000"},
		{`"marks": 793750`, `"marks": 99999999999999999999`, "line 3: build.marks: 99999999999999999999 is too large a number"},
		{`"marks": 793750`, `"marks": "793750"`, "line 3: build.marks: here is a text instead of a whole number"},
		{`"name": "shed", `, ``, `line 3: build: the member "name" is missing`},
		{`"name": "shed", `, `"name": "shed", "colour": 1, `, `line 3: build: there is no member "colour"`},
		{`"name": "shed", `, `"name": "shed", "name": "shed", `, `line 3: build: the member "name" stands here twice`},
		{`"name": "shed"`, `"name": shed`, "line 3: build.name: here is something that is no JSON instead of a text"},
		{`"unit": "in"`, `"unit": "` + strings.Repeat("é", 99) + `"`, `line 3: build.unit: "` + strings.Repeat("é", 30) + `…" is none of ["mm" "in" "cm" "m" "ft"]`},
		{`"name": "shed"`, `"name" "shed"`, "line 3: build: here is a text instead of a colon"},
		{`"name": "shed"`, "\"name\": \"sh\ned\"", "line 3: build.name: a text goes over the end of its line, or has a control character in it"},
		{`"name": "shed"`, `"name": "sh\ed"`, "line 3: build.name: a text has a backslash before what JSON does not escape"},
		{`"name": "shed"`, "\"name\": \"sh\xffed\"", "line 3: this is no text in UTF-8"},
		{`"givens": []`, `"givens": null`, "line 4: givens: here is null instead of a list"},
		{`"givens": []`, `"givens": [1]`, "line 4: givens[0]: here is a number instead of an object"},
		{`"givens": []`, `"givens": [}`, `line 4: givens[0]: here is "}" instead of an object`},
		{`"from": ["wall.north.length", "given.gap"]`, `"from": ["wall.north.length", true]`, "line 6: values[0].from[1]: here is true instead of a text"},
		{`"from": ["wall.north.length", "given.gap"]`, `"from": ["wall.north.length" "given.gap"]`, `line 6: values[0].from: here is a text instead of a comma or "]"`},
		{`"grain": "y"`, `"grain": "w"`, `parts[0].grain: "w" is none of ["none" "x" "y"]`},
		{`"glued": false`, `"glued": 0`, "parts[0].glued: here is a number instead of true or false"},
		{`"at": "bar.hcl:12:3-12:19"`, `"at": "bar.hcl:12"`, `parts[0].why.at: "bar.hcl:12" is no place like "bar.hcl:103:12-103:16"`},
		{`"at": "bar.hcl:12:3-12:19"`, `"at": ":12:3-12:19"`, `parts[0].why.at: ":12:3-12:19" is no place like "bar.hcl:103:12-103:16"`},
		{`"price": 79.9`, `"price": 7.9.9`, "bill[0].price: 7.9.9 is no number"},
		{`"price": 79.9`, `"price": 1e999`, "bill[0].price: 1e999 is too large a number"},
		{`"thickness": 18000000`, `"thickness": 0`, "parts[0].thickness: 0 is not from 1 to 1000000000000"},
		{`"caret": 0`, `"caret": -1`, "findings[0].caret: -1 is not from 0 to 1000000000000"},
		{`"bulge": 0.41421356237309503}`, `"bulge": 1.5}`, "parts[0].outline[1].bulge: an edge bulges by 0, or by 1e-12 to 1 either way, not by 1.5"},
		{`"name": "shed"`, "\"name\": \"\uFFFD\",\n\"\xff", "line 4: this is no text in UTF-8"},
		{"\n}\n", "\n}\n\x00", "something follows the record"},
		{"\n}\n", "\n}\n{}", "something follows the record"},
		{"\n}\n", "\n", `here is the end instead of a comma or "}"`},
	} {
		bad := strings.Replace(good, c.old, c.new, 1)
		if bad == good {
			t.Errorf("%s is not there", c.old)
		}
		switch _, _, err := Read(strings.NewReader(bad)); {
		case err == nil:
			t.Errorf("%s was read", c.new)
		case !strings.HasPrefix(err.Error(), "line ") || !strings.HasSuffix(err.Error(), c.want):
			t.Errorf("%s:\n%v, want\n%s", c.new, err, c.want)
		}
	}
}

// What others rely on is looked at although each member is right.
func TestUnsound(t *testing.T) {
	elsewhere := func(name *string) { *name = "nowhere" }
	for want, unsettle := range map[string]func(m *model.Model){
		`values[9].name: an earlier one is called "build" too`: func(m *model.Model) { m.Values[9].Name = m.Values[0].Name },
		`values[9].name: this is empty`:                        func(m *model.Model) { m.Values[9].Name = "" },
		`parts[9].id: this is empty`:                           func(m *model.Model) { m.Parts[9].ID = "" },
		`parts[9].id: an earlier one is called "X" too`:        func(m *model.Model) { m.Parts[9].ID, m.Parts[1].ID = "X", "X" },
		`parts[9].label: an earlier one is called "X" too`:     func(m *model.Model) { m.Parts[9].Label, m.Parts[1].Label = "X", "X" },
		`parts[9].outline: this runs the wrong way round, or round nothing`: func(m *model.Model) {
			m.Parts[9].Outline = geom.RectContour(geom.R(3, 0, 3, 9))
		},
		`parts[8].outline: this runs the wrong way round, or round nothing`: func(m *model.Model) {
			m.Parts[8].Outline = m.Parts[8].Outline.Reversed()
		},
		`parts[9].openings[0].shape: this runs the wrong way round, or round nothing`: func(m *model.Model) {
			m.Parts[9].Openings = []model.Opening{{Shape: m.Parts[9].Outline}}
		},
		`parts[9].recesses[0].shape: this runs the wrong way round, or round nothing`: func(m *model.Model) {
			m.Parts[9].Recesses = []model.Recess{{Shape: m.Parts[9].Outline.Reversed(), Depth: 1}}
		},
		`parts[9].placement: x, y and out of "X" are not along three axes`: func(m *model.Model) {
			m.Parts[9].ID, m.Parts[9].Placement.Out = "X", m.Parts[9].Placement.X.Opposite()
		},
		`runs[0].boxes[0].fronts[0].part: there is no part "nowhere"`: func(m *model.Model) { elsewhere(&m.Runs[0].Boxes[0].Fronts[0].Part) },
		`knee_walls[0].supports[1].part: there is no part "nowhere"`:  func(m *model.Model) { elsewhere(&m.KneeWalls[0].Supports[1].Part) },
		`slabs[0].parts[0]: there is no part "nowhere"`:               func(m *model.Model) { elsewhere(&m.Slabs[0].Parts[0]) },
		`slabs[1].cuts[0].part: there is no part "nowhere"`:           func(m *model.Model) { elsewhere(&m.Slabs[1].Cuts[0].Part) },
		`cuts[1].parts[0]: there is no part "nowhere"`:                func(m *model.Model) { elsewhere(&m.Cuts[1].Parts[0]) },
		`layouts[0].blanks[1].placed[2].part: there is no part "nowhere"`: func(m *model.Model) {
			elsewhere(&m.Layouts[0].Blanks[1].Placed[2].Part)
		},
		`programs[0].part: there is no part "nowhere"`: func(m *model.Model) { elsewhere(&m.Programs[0].Part) },
		`routings[0].part: there is no part "nowhere"`: func(m *model.Model) {
			m.Routings = []model.Routing{{Part: "nowhere", Piece: m.Parts[0].Outline}}
		},
	} {
		m := example(t, "boatshed")
		unsettle(m)
		_, _, err := Read(bytes.NewReader(written(t, m)))
		if err == nil || err.Error() != want {
			t.Errorf("%v, want %s", err, want)
		}
	}
}

// Every type whose values are words, down to the last one that a model reaches, has
// its words, all of them, no two alike.
func TestWords(t *testing.T) {
	have := map[reflect.Type]bool{}
	for _, v := range vocabularies() {
		have[v.of] = false
		seen := map[string]bool{}
		for _, w := range v.words {
			if seen[w] {
				t.Errorf("%s has two values %q", v.of, w)
			}
			seen[w] = true
		}
		if v.of == reflect.TypeFor[geom.Dir]() {
			if !panics(func() { _ = (geom.Z + 1).String() }) || len(v.words) != 6 {
				t.Errorf("%d directions", len(v.words))
			}
			continue
		}
		next := reflect.New(v.of).Elem()
		next.SetInt(int64(len(v.words)))
		if !panics(func() { _ = next.Interface().(fmt.Stringer).String() }) {
			t.Errorf("%s has a word for %d, which no record has", v.of, len(v.words))
		}
	}
	var walk func(of reflect.Type)
	walk = func(of reflect.Type) {
		_, listed := have[of]
		switch {
		case listed:
			have[of] = true
		case of.Implements(reflect.TypeFor[fmt.Stringer]()):
			t.Errorf("%s stands as words, and has none", of)
		case of.Kind() == reflect.Slice:
			walk(of.Elem())
		case of.Kind() == reflect.Struct:
			for i := range of.NumField() {
				if since(of, of.Field(i).Name) != never {
					walk(of.Field(i).Type)
				}
			}
		}
	}
	walk(reflect.TypeFor[model.Model]())
	for of, met := range have {
		if !met {
			t.Errorf("no model holds a %s", of)
		}
	}
}

func panics(f func()) (did bool) {
	defer func() { did = recover() != nil }()
	f()
	return false
}

func TestAValueWithoutAWord(t *testing.T) {
	err := Write(&bytes.Buffer{}, &model.Model{Parts: []model.Part{{Grain: 3}}})
	if err == nil || err.Error() != "record of the model: there is no word for a model.Grain like this" {
		t.Error(err)
	}
}

// No record is too wide for the bits that the members met are kept in.
func TestMembersFitTheirBits(t *testing.T) {
	var walk func(p *plan)
	walk = func(p *plan) {
		if p.kind == asList {
			walk(p.item)
		}
		if len(p.fields) > 64 {
			t.Errorf("%s has %d members", p.of, len(p.fields))
		}
		for _, f := range p.fields {
			walk(f.plan)
		}
	}
	walk(planFor(Format))
}

// Whatever is read is sound enough to be written, and the same record then.
func FuzzRead(f *testing.F) {
	var least bytes.Buffer
	if err := Write(&least, &model.Model{}); err != nil {
		f.Fatal(err)
	}
	small, err := os.ReadFile(filepath.Join("testdata", "small.json"))
	if err != nil {
		f.Fatal(err)
	}
	f.Add(least.Bytes())
	f.Add(bytes.Replace(least.Bytes(), []byte("2"), []byte("1"), 1))
	f.Add(small)
	f.Add([]byte(`{"barwright_model": 2, "build": {`))
	f.Fuzz(func(t *testing.T, text []byte) {
		m, format, err := Read(bytes.NewReader(text))
		if err != nil {
			return
		}
		if format < 1 || format > Format {
			t.Fatalf("format %d", format)
		}
		if err := readAgain(m); err != nil {
			t.Fatal(err)
		}
	})
}
