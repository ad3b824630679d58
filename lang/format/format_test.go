package format_test

import (
	"bytes"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"
	"github.com/rogpeppe/go-internal/txtar"
	"pgregory.net/rapid"

	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/format"
	"barwright/lang/source"
)

var update = flag.Bool("update", false, "write what is laid out as it is into testdata")

const root = "../.."

// laidOut lays a text out that must be readable.
func laidOut(t *testing.T, text string) string {
	t.Helper()
	out, findings := format.Format(source.File{Name: "bar.hcl", Text: []byte(text)})
	if len(findings) > 0 {
		t.Fatalf("%v\n%s", findings, text)
	}
	return string(out)
}

// TestFormat has one archive for each thing that layout does: in.hcl as it may
// be typed, want.hcl as it should be.
func TestFormat(t *testing.T) {
	paths, err := filepath.Glob("testdata/*.txtar")
	if err != nil || len(paths) < 5 {
		t.Fatalf("%d archives: %v", len(paths), err)
	}
	for _, path := range paths {
		t.Run(strings.TrimSuffix(filepath.Base(path), ".txtar"), func(t *testing.T) {
			a, err := txtar.ParseFile(path)
			if err != nil {
				t.Fatal(err)
			}
			got := laidOut(t, string(a.Files[0].Data))
			if *update {
				a.Files = []txtar.File{a.Files[0], {Name: "want.hcl", Data: []byte(got)}}
				if err := os.WriteFile(path, txtar.Format(a), 0o666); err != nil {
					t.Fatal(err)
				}
			}
			if len(a.Files) != 2 {
				t.Fatal("want.hcl is missing")
			}
			if diff := cmp.Diff(string(a.Files[1].Data), got); diff != "" {
				t.Error(diff)
			}
			check(t, a.Files[0].Data)
		})
	}
}

// TestEnds holds what an archive cannot: other line ends, blanks and tabs that
// an editor would take away, a text that does not end in a new line.
func TestEnds(t *testing.T) {
	for in, want := range map[string]string{
		"":                             "",
		" \n\n\t\n":                    "",
		"# only words":                 "# only words\n",
		"# only words \t\n\n\n":        "# only words\n",
		"/* a */":                      "/* a */\n",
		"/* a \n\tb\t\n*/\n":           "/* a\n  b\n*/\n",
		"a = 1":                        "a = 1\n",
		"a=1\r\nb = 2 # c\r\n":         "a = 1\nb = 2 # c\n",
		"\ufeffa = 1\n":                "a = 1\n",
		"a = 1 \t \nbcd\t=\t2\t#\te\n": "a   = 1\nbcd = 2 #  e\n",
		"b {\r\n\ta = 1\r\n}":          "b {\n  a = 1\n}\n",
		"b {}\n\n\n\n":                 "b {}\n",
		"b {\n} // c":                  "b {\n} // c\n",
		"a = \"x\ty\"\n":               "a = \"x\ty\"\n",
	} {
		if got := laidOut(t, in); got != want {
			t.Errorf("%q\n becomes %q\n and not %q", in, got, want)
		}
		check(t, []byte(in))
	}
}

// TestRefused finds nothing to lay out where the text cannot be read.
func TestRefused(t *testing.T) {
	for slug, text := range map[string]string{
		"syntax":          "build \"bar\" {\n  unit = in\"\n",
		"not-utf8":        "a = \"\xff\"\n",
		"not-in-language": "a = <<X\nb\nX\n",
		"too-deep":        "a = " + strings.Repeat("[", 200) + strings.Repeat("]", 200) + "\n",
		// One long name would push thousands of = signs far to the right.
		"file-too-large": "b {\n" + strings.Repeat("c", 200_000) + " = 1\n" + numbered(20_000) + "}\n",
	} {
		out, findings := format.Format(source.File{Name: "bar.hcl", Text: []byte(text)})
		if out != nil || len(findings) == 0 || findings[0].Slug != slug || findings[0].Severity != finding.Error {
			t.Errorf("%s: %d bytes, findings %v", slug, len(out), findings)
		}
	}
}

func numbered(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "a%d = 1\n", i)
	}
	return b.String()
}

// TestTreeIsFormatted keeps every example as it would be laid out.
func TestTreeIsFormatted(t *testing.T) {
	seen := 0
	for _, dir := range []string{"examples", "cmd"} {
		err := filepath.WalkDir(filepath.Join(root, dir), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".hcl") {
				return err
			}
			seen++
			text, err := os.ReadFile(path)
			if got := laidOut(t, string(text)); got != string(text) {
				t.Errorf("%s: barwright fmt would change it\n%s", path, cmp.Diff(string(text), got))
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if seen < 6 {
		t.Errorf("only %d files were seen", seen)
	}
}

// tester is what tests, fuzz targets and properties have in common.
type tester interface {
	Helper()
	Fatalf(format string, args ...any)
}

// check states the property of every text: what can be read comes out with the
// same words, and laid out again it is the same.
func check(t tester, text []byte) {
	t.Helper()
	before := bytes.Clone(text)
	out, findings := format.Format(source.File{Name: "bar.hcl", Text: text})
	if !bytes.Equal(before, text) {
		t.Fatalf("the text was written to: %q", before)
	}
	if len(findings) > 0 {
		if out != nil {
			t.Fatalf("refused, and laid out: %q", text)
		}
		return
	}
	if diff := cmp.Diff(words(text), words(out)); diff != "" {
		t.Fatalf("the words differ:\n%s\n%q\n%q", diff, text, out)
	}
	if diags := parse(out); diags.HasErrors() {
		t.Fatalf("it cannot be read any more: %v\n%q", diags, out)
	}
	again, findings := format.Format(source.File{Name: "bar.hcl", Text: out})
	if len(findings) > 0 || !bytes.Equal(out, again) {
		t.Fatalf("laid out again it differs: %v\n%q\n%q\n%q", findings, text, out, again)
	}
	if strings.HasPrefix(string(out), "\n") || strings.HasSuffix(string(out), "\n\n") || len(out) > 0 && out[len(out)-1] != '\n' {
		t.Fatalf("an end is not tidy: %q", out)
	}
}

func parse(text []byte) hcl.Diagnostics {
	_, diags := hclsyntax.ParseConfig(text, "bar.hcl", hcl.InitialPos)
	return diags
}

// words lists the tokens of a text as the library's own scanner finds them.
// New lines in a row count as one, and so do blanks in comments; those at the
// ends of the text do not count.
func words(text []byte) []string {
	tokens, _ := hclsyntax.LexConfig(text, "bar.hcl", hcl.InitialPos)
	const end = "new line"
	out := []string{end}
	add := func(word string) {
		if word != end || out[len(out)-1] != end {
			out = append(out, word)
		}
	}
	for _, t := range tokens {
		word := string(t.Bytes)
		switch t.Type {
		case hclsyntax.TokenNewline:
			add(end)
		case hclsyntax.TokenComment:
			add(strings.Join(strings.Fields(word), " "))
			if strings.HasSuffix(word, "\n") {
				add(end)
			}
		case hclsyntax.TokenEOF:
			add(end)
		default:
			add(t.Type.String() + " " + strings.ReplaceAll(word, "\r\n", "\n"))
		}
	}
	return out
}

// seeds are all descriptions of the tree: examples, and those in archives.
func seeds(f *testing.F) [][]byte {
	f.Helper()
	var out [][]byte
	for _, dir := range []string{"examples", "testdata", "lang", "cmd"} {
		err := filepath.WalkDir(filepath.Join(root, dir), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			text, err := os.ReadFile(path)
			switch filepath.Ext(path) {
			case ".hcl":
				out = append(out, text)
			case ".txtar":
				for _, file := range txtar.Parse(text).Files {
					if strings.HasSuffix(file.Name, ".hcl") {
						out = append(out, file.Data)
					}
				}
			}
			return err
		})
		if err != nil {
			f.Fatal(err)
		}
	}
	if len(out) < 100 {
		f.Fatalf("only %d descriptions found", len(out))
	}
	return out
}

// FuzzFormat feeds anything; [check] holds for it.
func FuzzFormat(f *testing.F) {
	for _, text := range seeds(f) {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text []byte) { check(t, text) })
}

// TestFormatRandom lays out texts that are put together from words and white
// space at random, most of which can be read.
func TestFormatRandom(t *testing.T) {
	readable := 0
	rapid.Check(t, func(t *rapid.T) {
		text := []byte(body(t, 3))
		if _, findings := lang.WellFormed(source.File{Name: "bar.hcl", Text: text}); len(findings) == 0 {
			readable++
		}
		check(t, text)
	})
	if readable < 50 {
		t.Errorf("only %d texts could be read", readable)
	}
}

func body(t *rapid.T, depth int) string {
	var b strings.Builder
	for range rapid.IntRange(0, 4).Draw(t, "items") {
		b.WriteString(gap(t, true))
		name := rapid.StringMatching(`[a-z]{1,6}`).Draw(t, "name")
		if depth > 0 && rapid.Bool().Draw(t, "block") {
			b.WriteString(name + gap(t, false) + `"x"` + gap(t, false) + "{" + end(t) + body(t, depth-1) + gap(t, true) + "}" + end(t))
		} else {
			b.WriteString(name + gap(t, false) + "=" + gap(t, false) + value(t, depth) + end(t))
		}
	}
	return b.String()
}

func value(t *rapid.T, depth int) string {
	leaf := []string{"1", "a", "a.b", `"7' 11 1/2\""`, `"${a}x"`, "-1", "true", "rest", "f(a, 2)"}
	if depth == 0 {
		return rapid.SampledFrom(leaf).Draw(t, "leaf")
	}
	inner := func() string { return gap(t, false) + value(t, depth-1) + gap(t, false) }
	switch rapid.IntRange(0, 6).Draw(t, "value") {
	case 0:
		return "[" + gap(t, true) + inner() + "," + gap(t, true) + inner() + gap(t, true) + "]"
	case 1:
		return "{" + gap(t, true) + "k" + gap(t, false) + "=" + inner() + end(t) + "}"
	case 2:
		return "(" + gap(t, true) + inner() + gap(t, true) + rapid.SampledFrom([]string{"+", "-", "*", "/", "<", "=="}).Draw(t, "sign") + gap(t, true) + inner() + gap(t, true) + ")"
	case 3:
		return inner() + "?" + inner() + ":" + inner()
	case 4:
		return "-" + gap(t, false) + value(t, depth-1)
	}
	return rapid.SampledFrom(leaf).Draw(t, "leaf")
}

// gap is white space, of several lines where that is allowed.
func gap(t *rapid.T, lines bool) string {
	choices := []string{" ", "", "  ", "\t", " /* c */ "}
	if lines {
		choices = append(choices, "\n", "\n\n\n", " # c\n", "\r\n", " \t\n// c\t\n\n")
	}
	return rapid.SampledFrom(choices).Draw(t, "gap")
}

// end ends a line.
func end(t *rapid.T) string {
	return rapid.SampledFrom([]string{"\n", " \n", "\n\n", " # c \n", "\r\n", "\n\n\n\n"}).Draw(t, "end")
}
