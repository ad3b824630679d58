package compile_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// TestValues works out the tables of expressions, texts and values in SPEC.md.
// The header of a column says beside what: `unit = "in"` a build of that unit
// and nothing else, in `bar` the example of that name, `--set …` that example
// with a given overridden.
func TestValues(t *testing.T) {
	s := readSpec(t)
	for _, first := range []string{"expression", "text", "value"} {
		for _, tab := range s.tablesOf(t, first) {
			for _, row := range tab.rows {
				written := code(row[0])
				t.Run(written, func(t *testing.T) {
					if first == "text" {
						written = `tape("` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(written) + `")`
					}
					tested := 0
					for i, want := range row[1:] {
						files, set, ok := s.beside(t, tab.header[i+1])
						if !ok {
							continue // a column of words
						}
						tested++
						if have := evaluated(files, set, written); have != want {
							t.Errorf("line %d, %s: %s is %s, want %s", tab.line, tab.header[i+1], written, have, want)
						}
					}
					if tested == 0 {
						t.Errorf("line %d: no column says beside what %s is worked out", tab.line, written)
					}
				})
			}
		}
	}
}

// beside returns the description that a column's header speaks of.
func (s *spec) beside(t *testing.T, header string) (files source.Files, set []override, ok bool) {
	t.Helper()
	if strings.HasPrefix(header, "unit = ") {
		return source.Files{{Name: "build.hcl", Text: []byte(`build "t" { ` + header + " }\n")}}, nil, true
	}
	if header == "in `bar`" {
		return s.named(t, "bar"), nil, true
	}
	if assignment, isSet := strings.CutPrefix(code(header), "--set "); isSet {
		name, value, _ := strings.Cut(assignment, "=")
		return s.named(t, "bar"), []override{{name, value}}, true
	}
	return nil, nil, false
}

// evaluated is the value of an expression as the model shows it, or the slugs
// that refuse it, in the words of the tables.
func evaluated(files source.Files, set []override, expression string) string {
	files = append(slices.Clone(files), source.File{Name: "value.hcl", Text: []byte("given {\n  spec_value = " + expression + "\n}\n")})
	m, findings := compiled(files, set...)
	if m == nil {
		return "refused: `" + strings.Join(slugs(findings, finding.Error), ", ") + "`"
	}
	for _, g := range m.Givens {
		if g.Name == "spec_value" {
			return g.Value
		}
	}
	return "nothing"
}

// TestOpenings compares the table of openings with the example "bar".
func TestOpenings(t *testing.T) {
	s := readSpec(t)
	m := mustCompile(t, s.named(t, "bar"))
	for _, tab := range s.tablesOf(t, "opening", "part", "x", "y", "round") {
		for _, row := range tab.rows {
			have := "none"
			for _, p := range m.Parts {
				for _, o := range p.Openings {
					if p.Label != row[1] || o.Name != row[0] {
						continue
					}
					b := o.Shape.Bounds()
					_, _, round := o.Shape.Circle()
					have = fmt.Sprint(b.X, b.Y, round)
				}
			}
			x, y := inches(t, row[2]), inches(t, row[3])
			if want := fmt.Sprint(x, y, row[4] == "yes"); have != want {
				t.Errorf("line %d: %s in %s is at %s, want %s", tab.line, row[0], row[1], have, want)
			}
		}
	}
}

// inches reads a cell "`from … to`".
func inches(t *testing.T, cell string) geom.Span {
	t.Helper()
	var out [2]length.Length
	for i, text := range strings.SplitN(code(cell), " … ", 2) {
		l, err := length.Parse(text, length.Inches)
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		out[i] = l
	}
	return geom.Span{Lo: out[0], Hi: out[1]}
}

// TestCounts compares the table of screws with the example "bar".
func TestCounts(t *testing.T) {
	s := readSpec(t)
	m := mustCompile(t, s.named(t, "bar"))
	for _, tab := range s.tablesOf(t, "use", "attribute", "screws", "in `bar`") {
		spoken := 0
		for _, row := range tab.rows {
			uses := usesOf(m, row[0])
			spoken += len(uses)
			var counts []string
			for _, f := range uses {
				counts = append(counts, fmt.Sprint(f.Count))
			}
			if have := strings.Join(counts, ", "); have != row[3] {
				t.Errorf("line %d: %s: %s screws, want %s", tab.line, row[0], have, row[3])
			}
		}
		if spoken != len(m.Fastening) {
			t.Errorf("line %d: the table speaks of %d uses, the build has %d", tab.line, spoken, len(m.Fastening))
		}
	}
}

func usesOf(m *model.Model, prefix string) []model.Fastening {
	var out []model.Fastening
	for _, f := range m.Fastening {
		if strings.HasPrefix(f.Use, prefix) {
			out = append(out, f)
		}
	}
	return out
}
