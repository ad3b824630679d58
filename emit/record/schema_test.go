package record

import (
	"bytes"
	"encoding/json"
	"maps"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"pgregory.net/rapid"
)

const schemaFile = "model.schema.json"

// object of JSON.
type dict = map[string]any

// schemaOf makes the schema of the current format out of its plan.
func schemaOf(root *plan) dict {
	defs := dict{}
	all := defined(root, defs)
	delete(defs, defName(root.of))
	all["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	all["$id"] = "urn:barwright:model:2"
	all["title"] = "The record of a solved build, model.json"
	all["$comment"] = "Made from the model's types: go test ./emit/record -update"
	all["description"] = "SPEC.md, section 12.7, says more. Beyond what this schema can say, the member barwright_model comes first; " +
		"whole numbers are written without a point or an exponent; the names of values, and the IDs and labels of parts, are unique; " +
		"parts that are named exist; outlines, notches and recesses run counter-clockwise, openings clockwise; x, y and out of a placement are along three axes."
	all["properties"].(dict)[formatName] = dict{"description": "The version of this form.", "const": Format}
	all["required"] = append([]string{formatName}, all["required"].([]string)...)
	all["$defs"] = defs
	return all
}

// defName is the name of a type: geom.Box is geom.box.
func defName(t reflect.Type) string {
	pkg, name, _ := strings.Cut(t.String(), ".")
	return pkg + "." + memberName(name)
}

// refer is a schema for a plan, and leaves in defs what it refers to.
func refer(p *plan, defs dict) dict {
	var own dict
	switch {
	case p.of.PkgPath() == "" && p.kind == asWhole:
		own = dict{"type": "integer"}
	case p.of.PkgPath() == "" && p.kind == asNumber:
		own = dict{"type": "number"}
	case p.kind == asFlag:
		return dict{"type": "boolean"}
	case p.kind == asText:
		return dict{"type": "string"}
	case p.of.PkgPath() == "" && p.kind == asList:
		return dict{"type": "array", "items": refer(p.item, defs)}
	default:
		if defs[defName(p.of)] == nil {
			defs[defName(p.of)] = defined(p, defs)
		}
		own = dict{"$ref": "#/$defs/" + defName(p.of)}
	}
	switch {
	case p.bulge:
		own["anyOf"] = []dict{{"const": 0}, {"minimum": leastBulge, "maximum": mostBulge}, {"minimum": -mostBulge, "maximum": -leastBulge}}
	case p.of.PkgPath() == "" && p.kind == asWhole || p.least != -most:
		own["minimum"], own["maximum"] = p.least, most
	}
	return own
}

// defined is the schema of a type that has a name.
func defined(p *plan, defs dict) dict {
	switch p.kind {
	case asWhole:
		return dict{"type": "integer", "minimum": -most, "maximum": most, "description": map[reflect.Type]string{
			reflect.TypeFor[length.Length](): "Whole nanometres.",
			reflect.TypeFor[geom.Angle]():    "Whole millionths of a degree.",
		}[p.of]}
	case asWord:
		return dict{"enum": p.words}
	case asPlace:
		const count = "(0|[1-9][0-9]{0,8})"
		return dict{
			"description": "A place in the text, FILE:LINE:COLUMN-LINE:COLUMN, its end exclusive; empty for none. Columns count characters as a reader sees them.",
			"type":        "string", "pattern": `^([\s\S]+:` + count + ":" + count + "-" + count + ":" + count + ")?$",
		}
	case asList:
		d := dict{"type": "array", "items": refer(p.item, defs)}
		if p.atLeast > 0 {
			d["minItems"] = p.atLeast
		}
		return d
	}
	properties, required := dict{}, []string{}
	for _, f := range p.fields {
		properties[f.name] = refer(f.plan, defs)
		required = append(required, f.name)
	}
	return dict{"type": "object", "properties": properties, "required": required, "additionalProperties": false}
}

func TestSchemaIsOfTheTypes(t *testing.T) {
	var got bytes.Buffer
	enc := json.NewEncoder(&got)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", " ")
	if err := enc.Encode(schemaOf(planFor(Format))); err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile(schemaFile, got.Bytes(), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(schemaFile)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got.String()); diff != "" {
		t.Error(diff)
	}
}

// published is the schema as it lies beside the package, read by a library that is
// not ours.
func published(t *testing.T) *jsonschema.Schema {
	t.Helper()
	text, err := os.Open(schemaFile)
	if err != nil {
		t.Fatal(err)
	}
	defer text.Close()
	doc, err := jsonschema.UnmarshalJSON(text)
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource(schemaFile, doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile(schemaFile)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func decoded(t interface{ Fatal(...any) }, text []byte) any {
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

func TestExamplesKeepTheSchema(t *testing.T) {
	s := published(t)
	for _, name := range examples {
		if err := s.Validate(decoded(t, written(t, example(t, name)))); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Schema and Read refuse the same.
func TestSchemaRefuses(t *testing.T) {
	s := published(t)
	good := string(written(t, small()))
	for _, c := range []struct{ old, new string }{
		{`_model": 2`, `_model": 1`},
		{`"name": "shed", `, ``},
		{`"name": "shed"`, `"title": "shed"`},
		{`"name": "shed"`, `"name": null`},
		{`"name": "shed", `, `"name": "shed", "colour": "red", `},
		{`"marks": 793750`, `"marks": 793750.5`},
		{`"marks": 793750`, `"marks": "1/32"`},
		{`"marks": 793750`, `"marks": -1000000000001`},
		{`"unit": "in"`, `"unit": "yd"`},
		{`"saw": {"kerf": 0, "trim": 0, "stages": 0}`, `"saw": []`},
		{`"givens": []`, `"givens": {}`},
		{`"givens": []`, `"givens": [{}]`},
		{`"kind": "length"`, `"kind": "lengths"`},
		{`"origin": "solved"`, `"origin": ""`},
		{`"given.gap"]`, `2]`},
		{`"grain": "y"`, `"grain": "z"`},
		{`"out": "+u"`, `"out": "u"`},
		{`"open": ["top", "bottom"]`, `"open": ["top", "rear"]`},
		{`"at": "bar.hcl:12:3-12:19"`, `"at": "bar.hcl:12:3"`},
		{`"at": "bar.hcl:12:3-12:19"`, `"at": "bar.hcl:12:03-12:19"`},
		{`"at": "bar.hcl:12:3-12:19"`, `"at": "bar.hcl:1234567890:3-12:19"`},
		{`"thickness": 18000000`, `"thickness": 0`},
		{`"bulge": 0.41421356237309503`, `"bulge": 1.25`},
		{`"bulge": 0.41421356237309503`, `"bulge": -1e-13`},
		{`"price": 79.9`, `"price": "79.9"`},
		{`"priced": true`, `"priced": "yes"`},
		{`"severity": "warning"`, `"severity": "fatal"`},
	} {
		bad := strings.Replace(good, c.old, c.new, 1)
		if bad == good {
			t.Errorf("%s is not there", c.old)
		}
		if s.Validate(decoded(t, []byte(bad))) == nil {
			t.Errorf("the schema takes %s", c.new)
		}
		if m, format, err := Read(strings.NewReader(bad)); err == nil {
			t.Errorf("%s is read: format %d, %v", c.new, format, m.Build)
		}
	}
}

// spot is something in a document that can be put in another's place, or taken away.
type spot struct {
	in   any // a dict or a list
	key  string
	item int
}

// spots lists all of a document, in a fixed order.
func spots(doc any) (all []spot) {
	switch x := doc.(type) {
	case dict:
		for _, key := range slices.Sorted(maps.Keys(x)) {
			all = append(append(all, spot{in: x, key: key}), spots(x[key])...)
		}
	case []any:
		for i := range x {
			all = append(append(all, spot{in: x, item: i}), spots(x[i])...)
		}
	}
	return all
}

// changed changes one thing, and returns how it is undone. No whole number is written
// with a point: JSON Schema takes 1.0 for one.
func changed(t *rapid.T, at spot) func() {
	values := []any{nil, true, "x", "", json.Number("1"), json.Number("1.5"), json.Number("0"), json.Number("-1"), json.Number("1000000000001"), []any{}, dict{}}
	other := rapid.SampledFrom(values).Draw(t, "other")
	if list, ok := at.in.([]any); ok {
		old := list[at.item]
		list[at.item] = other
		return func() { list[at.item] = old }
	}
	members := at.in.(dict)
	before, old := maps.Clone(members), members[at.key]
	switch rapid.SampledFrom([]string{"other", "drop", "rename", "add", "shorten"}).Draw(t, "change") {
	case "other":
		members[at.key] = other
	case "drop":
		delete(members, at.key)
	case "rename":
		delete(members, at.key)
		members[at.key+"s"] = old
	case "add":
		members["more"] = other
	case "shorten":
		if list, ok := old.([]any); ok && len(list) > 0 {
			members[at.key] = list[:len(list)-1]
		}
	}
	return func() {
		clear(members)
		maps.Copy(members, before)
	}
}

// Whatever is changed in a record, in one place, the schema refuses what the scanner
// refuses and nothing else.
func TestSchemaAgreesWithTheScanner(t *testing.T) {
	s := published(t)
	refused, taken := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		var text bytes.Buffer
		if err := Write(&text, drawnModel(t)); err != nil {
			t.Fatal(err)
		}
		doc := decoded(t, text.Bytes())
		if err := s.Validate(doc); err != nil {
			t.Fatal(err)
		}
		all := spots(doc)
		for range 5 {
			undo := changed(t, rapid.SampledFrom(all).Draw(t, "spot"))
			text, err := json.Marshal(doc)
			if err != nil {
				t.Fatal(err)
			}
			bySchema := s.Validate(decoded(t, text))
			_, byScanner := (&scanner{text: string(text)}).record(reflect.ValueOf(new(model.Model)).Elem())
			switch {
			case (bySchema == nil) != (byScanner == nil):
				t.Fatalf("schema: %v; scanner: %v", bySchema, byScanner)
			case bySchema == nil:
				taken++
			default:
				refused++
			}
			undo()
		}
	})
	if refused == 0 || taken == 0 {
		t.Errorf("%d refused, %d taken: not all is tried", refused, taken)
	}
}
