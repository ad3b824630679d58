package findings

import (
	"bytes"
	"encoding/json"
	"flag"
	"io"
	"net/url"
	"os"
	"path"
	"path/filepath"
	"strings"
	"testing"
	"unicode"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barwright/lang/finding"
	"barwright/lang/source"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// at is the place of some words in a file.
func at(f File, words string) source.Range {
	from := strings.Index(string(f.Text), words)
	pos := func(b int) source.Pos {
		return source.Pos{Line: 1 + bytes.Count(f.Text[:b], []byte("\n")), Column: 99, Byte: b}
	}
	return source.Range{File: f.Name, Start: pos(from), End: pos(from + len(words))}
}

// samples are builds with all that a document can hold.
func samples() []Build {
	bar := File{"bar.hcl", "the shed #1/bar.hcl", []byte("a = \"e\u0301 茶\" + \"3 ix\"\r\n\tb = 🪚 + 24\n")}
	stock := File{"../stock.hcl", "stock.hcl", []byte("sheet \"ply\" {}\n")}
	words := File{"--set", "", []byte("width=-3\nheight=4\n")}
	return []Build{
		{
			Path: "the shed #1", Files: []File{stock, words, bar},
			Findings: finding.List{
				{Severity: finding.Error, Slug: "negative", At: at(words, "-3"), Text: "width is -3 in."},
				{Severity: finding.Note, Slug: "room-open", Text: "It has no place."},
				{Severity: finding.Error, Slug: "unreadable-length", At: at(bar, `"3 ix"`), Caret: 3, Text: "\u202eix\u009b is no unit.", Mend: "wall \"…\" { width = <3> & more }"},
				{Severity: finding.Warning, Slug: "support-over-stud", At: at(bar, "24"), Text: "Two\nlines.",
					Related: []finding.Related{{At: at(stock, `"ply"`), Text: "the stock"}, {At: at(words, "height=4"), Text: "said here"}}},
			},
		},
		{Path: "empty"},
		{Path: "good", Solved: true, Parts: 7, Programs: 0, Out: "out/good", Written: []string{"index.html", "parts/A-L.dxf"}},
	}
}

func golden(t *testing.T, name string, write func(io.Writer) error) {
	t.Helper()
	var out bytes.Buffer
	if err := write(&out); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(file, out.Bytes(), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), out.String()); diff != "" {
		t.Errorf("%s (-want +got):\n%s", name, diff)
	}
}

func TestGolden(t *testing.T) {
	golden(t, "findings.json", func(w io.Writer) error { return JSON(w, samples()) })
	golden(t, "findings.sarif", func(w io.Writer) error { return SARIF(w, samples(), false) })
}

// TestSpots walks through texts and finds each place again by its line and its
// code point.
func TestSpots(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		runes := rapid.SliceOf(rapid.SampledFrom([]rune("ab\n\r\té茶🪚\u0301\u200d"))).Draw(t, "text")
		n := rapid.IntRange(0, len(runes)).Draw(t, "place")
		text := string(runes)
		got := spotAt([]byte(text), source.Pos{Byte: len(string(runes[:n]))})
		line, column := 1, 1
		for _, c := range runes[:n] {
			column++
			if c == '\n' {
				line, column = line+1, 1
			}
		}
		if got != (spot{line, column}) {
			t.Fatalf("%v, want %d:%d", got, line, column)
		}
	})
	if got := spotAt(nil, source.Pos{Line: 3, Column: 4, Byte: 40}); got != (spot{3, 4}) {
		t.Errorf("where the text is not known: %v", got)
	}
}

// TestURIs has net/url read back what was written: a relative reference to the
// same path, or a file URI.
func TestURIs(t *testing.T) {
	for file, want := range map[string]string{
		"shed/bar.hcl": "shed/bar.hcl", "../a b#?/%41.hcl": "../a%20b%23%3F/%2541.hcl", "é.hcl": "%C3%A9.hcl",
		"a:b.hcl": "./a:b.hcl", "/abs/bar.hcl": "file:///abs/bar.hcl", `c\d.hcl`: "c%5Cd.hcl",
	} {
		if got := uri(file); got != want {
			t.Errorf("%s is %s, want %s", file, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		file := path.Clean(rapid.StringOfN(rapid.RuneFrom([]rune("ab./ :#?%é\\[]&=")), 1, 20, -1).Draw(t, "path"))
		got := uri(file)
		read, err := url.Parse(got)
		if err != nil || path.Clean(read.Path) != file || read.Host != "" || read.RawQuery != "" || read.Fragment != "" {
			t.Fatalf("%q became %q: %v, %v", file, got, read, err)
		}
	})
}

// TestNothingSteersATerminal writes any text and reads it back as it was.
func TestNothingSteersATerminal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		var out bytes.Buffer
		if err := JSON(&out, []Build{{Path: text}}); err != nil {
			t.Fatal(err)
		}
		for _, c := range out.String() {
			if c != '\n' && unicode.IsControl(c) || unicode.Is(unicode.Bidi_Control, c) {
				t.Fatalf("%U comes out", c)
			}
		}
		var read document
		if err := json.Unmarshal(out.Bytes(), &read); err != nil || read.Builds[0].Path != text {
			t.Fatalf("%q is read back as %q: %v", text, read.Builds[0].Path, err)
		}
	})
}

func TestNoRule(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("a finding of no rule is written")
		}
	}()
	_ = SARIF(io.Discard, []Build{{Findings: finding.List{{Slug: "few-studs"}}}}, true)
}
