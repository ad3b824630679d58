package findings_test

import (
	"bytes"
	"encoding/json"
	"net/url"
	"os"
	"path"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"barwright/compile"
	"barwright/emit/findings"
	"barwright/lang"
	"barwright/lang/source"
)

const root = "../.."

// The schema of SARIF is the one that OASIS publishes; testdata/schema says
// where it is from. The library that reads both is general and not ours.
func schema(t *testing.T, name string) *jsonschema.Schema {
	t.Helper()
	text, err := os.Open(filepath.Join(root, "testdata", "schema", name))
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
	if err := c.AddResource("https://schema.invalid/"+name, doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("https://schema.invalid/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func decoded(t *testing.T, text []byte) any {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatalf("%v in\n%s", err, text)
	}
	return doc
}

// description is the files of one build that lies in a folder.
type description struct {
	name  string
	files source.Files
}

// descriptions are all mistakes of testdata/spec, and the examples.
func descriptions(t *testing.T) []description {
	t.Helper()
	var out []description
	archives, err := filepath.Glob(filepath.Join(root, "testdata", "spec", "*.txtar"))
	if err != nil || len(archives) < 100 {
		t.Fatalf("%d archives: %v", len(archives), err)
	}
	for _, name := range archives {
		a, err := txtar.ParseFile(name)
		if err != nil {
			t.Fatal(err)
		}
		d := description{name: "testdata/spec/" + filepath.Base(name)}
		for _, f := range a.Files {
			if path.Dir(f.Name) == "." && path.Ext(f.Name) == ".hcl" {
				d.files = append(d.files, source.File{Name: f.Name, Text: f.Data})
			}
		}
		out = append(out, d)
	}
	for _, name := range []string{"boatshed", "servery"} {
		d := description{name: "examples/" + name}
		files, err := filepath.Glob(filepath.Join(root, "examples", name, "*.hcl"))
		if err != nil || len(files) == 0 {
			t.Fatalf("no example %s: %v", name, err)
		}
		for _, file := range files {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			d.files = append(d.files, source.File{Name: filepath.Base(file), Text: text})
		}
		out = append(out, d)
	}
	return out
}

// built is what the command hands over for a description.
func (d description) built() findings.Build {
	src, found := lang.Read(d.files)
	b := findings.Build{Path: d.name}
	if !found.HasErrors() {
		m, more := compile.Compile(src)
		found = append(found, more...)
		if b.Solved = m != nil; b.Solved {
			b.Parts, b.Programs = len(m.Parts), len(m.Programs)
		}
	}
	found.Sort()
	b.Findings = found
	for _, f := range src.Files {
		b.Files = append(b.Files, findings.File{Name: f.Name, Path: path.Join(d.name, f.Name), Text: f.Text})
	}
	return b
}

func allBuilds(t *testing.T) []findings.Build {
	t.Helper()
	var builds []findings.Build
	found := 0
	for _, d := range descriptions(t) {
		builds = append(builds, d.built())
		found += len(builds[len(builds)-1].Findings)
	}
	if found < 150 {
		t.Fatalf("only %d findings", found)
	}
	return builds
}

func TestJSONKeepsItsSchema(t *testing.T) {
	s := schema(t, "findings.schema.json")
	builds := allBuilds(t)
	builds[len(builds)-1].Out = "out/servery"
	builds[len(builds)-1].Written = []string{"index.html", "parts/TEA-L.dxf"}
	for _, some := range [][]findings.Build{nil, builds} {
		var out bytes.Buffer
		if err := findings.JSON(&out, some); err != nil {
			t.Fatal(err)
		}
		if err := s.Validate(decoded(t, out.Bytes())); err != nil {
			t.Error(err)
		}
	}
}

func TestSARIFKeepsThePublishedSchema(t *testing.T) {
	s := schema(t, "sarif-schema-2.1.0.json")
	for _, some := range [][]findings.Build{nil, allBuilds(t)} {
		var out bytes.Buffer
		if err := findings.SARIF(&out, some, true); err != nil {
			t.Fatal(err)
		}
		if err := s.Validate(decoded(t, out.Bytes())); err != nil {
			t.Error(err)
		}
	}
}

// TestSchemasRefuse makes sure that a validation can fail.
func TestSchemasRefuse(t *testing.T) {
	builds := allBuilds(t)
	var ours, sarif bytes.Buffer
	if err := findings.JSON(&ours, builds); err != nil {
		t.Fatal(err)
	}
	if err := findings.SARIF(&sarif, builds, true); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ schema, old, new string }{
		{"findings.schema.json", `"severity": "error"`, `"severity": "fatal"`},
		{"findings.schema.json", `"severity": "error"`, `"severity": "note"`},
		{"findings.schema.json", `"solved": false`, `"solved": true`},
		{"findings.schema.json", `"line": `, `"lines": `},
		{"findings.schema.json", `"barwright_findings": 1`, `"barwright_findings": 2`},
		{"sarif-schema-2.1.0.json", `"level": "error"`, `"level": "fatal"`},
		{"sarif-schema-2.1.0.json", `"startLine": `, `"startLine": -`},
		{"sarif-schema-2.1.0.json", `"uri": "`, `"uri": "%%`},
		{"sarif-schema-2.1.0.json", `"columnKind": "unicodeCodePoints"`, `"columnKind": "letters"`},
		{"sarif-schema-2.1.0.json", `"name": "barwright"`, `"title": "barwright"`},
	} {
		text := map[string]string{"findings.schema.json": ours.String(), "sarif-schema-2.1.0.json": sarif.String()}[c.schema]
		broken := strings.ReplaceAll(text, c.old, c.new)
		if broken == text {
			t.Errorf("%s is not there", c.old)
		}
		if schema(t, c.schema).Validate(decoded(t, []byte(broken))) == nil {
			t.Errorf("%s takes %s", c.schema, c.new)
		}
	}
}

// log is SARIF as a reader of it has it.
type log struct {
	Runs []struct {
		Tool struct {
			Driver struct{ Rules []struct{ ID string } }
		}
		Results []struct {
			RuleID    string
			RuleIndex int
			Level     string
			Message   struct{ Text string }
			Locations []location
			Related   []location `json:"relatedLocations"`
		}
	}
}

type location struct {
	PhysicalLocation struct {
		ArtifactLocation struct{ URI string }
		Region           struct{ StartLine, StartColumn, EndLine, EndColumn int }
	}
	Message struct{ Text string }
}

// TestSARIFPointsAtTheWords reads a log as an editor does, finds each place by
// line and code point, and compares the words there with those that the
// finding is about.
func TestSARIFPointsAtTheWords(t *testing.T) {
	builds := allBuilds(t)
	var out bytes.Buffer
	if err := findings.SARIF(&out, builds, true); err != nil {
		t.Fatal(err)
	}
	var read log
	if err := json.Unmarshal(out.Bytes(), &read); err != nil {
		t.Fatal(err)
	}
	run, next := read.Runs[0], 0
	for _, b := range builds {
		for _, f := range b.Findings {
			r := run.Results[next]
			next++
			if r.RuleID != f.Slug || run.Tool.Driver.Rules[r.RuleIndex].ID != f.Slug || r.Level != f.Severity.String() {
				t.Errorf("%s: rule %s at %d, %s", f.Slug, r.RuleID, r.RuleIndex, r.Level)
			}
			same(t, b, r.Locations[0], f.At)
			for i, related := range f.Related {
				same(t, b, r.Related[i], related.At)
				if r.Related[i].Message.Text != related.Text {
					t.Errorf("%s: %q", f.Slug, r.Related[i].Message.Text)
				}
			}
			if said := strings.NewReplacer("{{", "{", "}}", "}").Replace(r.Message.Text); !strings.HasPrefix(said, f.Text) || !strings.HasSuffix(said, f.Mend) {
				t.Errorf("%s says %q", f.Slug, said)
			}
		}
	}
	if next != len(run.Results) {
		t.Errorf("%d results for %d findings", len(run.Results), next)
	}
}

// same compares the words at a place of a log with those at a range.
func same(t *testing.T, b findings.Build, l location, at source.Range) {
	t.Helper()
	at2 := l.PhysicalLocation
	file, err := url.PathUnescape(at2.ArtifactLocation.URI)
	if err != nil || file != path.Join(b.Path, at.File) {
		t.Errorf("%s is given as %s", at.File, at2.ArtifactLocation.URI)
		return
	}
	var text string
	for _, f := range b.Files {
		if f.Name == at.File {
			text = string(f.Text)
		}
	}
	have := []rune(text)[codePoint(text, at2.Region.StartLine, at2.Region.StartColumn):codePoint(text, at2.Region.EndLine, at2.Region.EndColumn)]
	if want := text[at.Start.Byte:at.End.Byte]; string(have) != want {
		t.Errorf("%s: the log points at %q, the finding at %q", b.Path, string(have), want)
	}
}

// codePoint is the index of a line's column among the code points of a text.
func codePoint(text string, line, column int) int {
	at := 0
	for i, l := range strings.SplitAfter(text, "\n") {
		if i+1 == line {
			return at + column - 1
		}
		at += len([]rune(l))
	}
	return at + column - 1
}
