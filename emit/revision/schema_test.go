package revision

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"barwright/compile/model"
)

func schema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	const url = "https://schema.invalid/diff.schema.json"
	text, err := os.Open(filepath.Join("..", "..", "testdata", "schema", "diff.schema.json"))
	if err != nil {
		t.Fatal(err)
	}
	defer text.Close()
	doc, err := jsonschema.UnmarshalJSON(text)
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource(url, doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile(url)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func valid(t *testing.T, s *jsonschema.Schema, text string) error {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
	if err != nil {
		t.Fatalf("%v in\n%s", err, text)
	}
	return s.Validate(doc)
}

func TestJSONKeepsItsSchema(t *testing.T) {
	s, m := schema(t), every().New
	for _, r := range []*model.Revision{every(), one(), {Old: m, New: m}} {
		if err := valid(t, s, written(t, "json", r)); err != nil {
			t.Error(err)
		}
	}
}

// TestSchemaRefuses makes sure that a validation can fail.
func TestSchemaRefuses(t *testing.T) {
	s, text := schema(t), written(t, "json", every())
	for _, c := range [][2]string{
		{`"barwright_diff": 1`, `"barwright_diff": 2`},
		{`"fate": "patch"`, `"fate": "make again"`},
		{`"fate": "dropped"`, `"fate": "new"`},
		{`"fate": "rework"`, `"fate": "mend"`},
		{`"kind": "came"`, `"kind": "went"`},
		{`"quarters": 2`, `"quarters": 4`},
		{`"missing": [`, `"lacking": [`},
		{`"x": 762`, `"x": "762"`},
		{`"before": `, `"was": `},
		{`"label": `, `"name": `},
	} {
		broken := strings.ReplaceAll(text, c[0], c[1])
		if broken == text {
			t.Errorf("%s is not there", c[0])
		}
		if valid(t, s, broken) == nil {
			t.Errorf("the schema takes %s", c[1])
		}
	}
}
