package finding

import (
	"bytes"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barwright/lang/source"
)

// at is the place of the first words in a text of the file bar.hcl.
func at(t *testing.T, text, words string) source.Range {
	t.Helper()
	from := strings.Index(text, words)
	if from < 0 {
		t.Fatalf("%q is not in the text", words)
	}
	pos := func(b int) source.Pos {
		before := text[:b]
		return source.Pos{Line: 1 + strings.Count(before, "\n"), Column: 1 + utf8.RuneCountInString(before[strings.LastIndex(before, "\n")+1:]), Byte: b}
	}
	return source.Range{File: "bar.hcl", Start: pos(from), End: pos(from + len(words))}
}

func render(t *testing.T, text string, style Style, l ...Finding) string {
	t.Helper()
	var out bytes.Buffer
	if err := Render(&out, l, source.Files{{Name: "bar.hcl", Text: []byte(text)}}, style); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestRender(t *testing.T) {
	long := "  width = [" + strings.Repeat("10, ", 60) + "FAULT, " + strings.Repeat("20, ", 60) + "]\n"
	for _, c := range []struct {
		name, text, words string
		caret, width      int
		want              string // the snippet, with the marks
	}{
		{"words in the middle", "run \"a\" {\n  depth = 24 # deep\n}\n", "24", 0, 0,
			"  bar.hcl:2  depth = 24 # deep\n                     ^^\n"},
		{"one character of the words", "  depth = \"24 ix\"\n", "\"24 ix\"", 4, 0,
			"  bar.hcl:1  depth = \"24 ix\"\n                         ^\n"},
		{"a caret beyond the words stays in them", "  depth = \"24\"\n", "\"24\"", 9, 0,
			"  bar.hcl:1  depth = \"24\"\n                        ^\n"},
		{"tabs before and between", "\t\tdepth\t= 24\n", "24", 0, 0,
			"  bar.hcl:1  depth = 24\n                     ^^\n"},
		{"carriage returns", "depth = 24\r\nwidth = 3\r\n", "24", 0, 0,
			"  bar.hcl:1  depth = 24\n                     ^^\n"},
		{"control characters", "a = \"\x1b[31m\x07\" + 3\n", "3\n", 0, 0,
			"  bar.hcl:1  a = \" [31m \" + 3\n                            ^\n"},
		{"a turn of writing direction", "a = \"\u202e\u200f\" + 3\n", "3\n", 0, 0,
			"  bar.hcl:1  a = \"␣␣\" + 3\n                        ^\n"},
		{"bytes that are not UTF-8, and the sign for them", "a = \"\xff\ufffd\" + 3\n", "3\n", 0, 0,
			"  bar.hcl:1  a = \"?\ufffd\" + 3\n                        ^\n"},
		{"narrow letters of several bytes", "a = \"äöü\" + 3\n", "\"äöü\"", 0, 0,
			"  bar.hcl:1  a = \"äöü\" + 3\n                 ^^^^^\n"},
		{"a caret on one of them", "a = \"3ö\"\n", "\"3ö\"", 2, 0,
			"  bar.hcl:1  a = \"3ö\"\n                   ^\n"},
		{"wide letters", "a = \"茶の間\" + 3\n", "3\n", 0, 0,
			"  bar.hcl:1  a = \"茶の間\" + 3\n                            ^\n"},
		{"wide words", "a = \"茶の間\" + 3\n", "\"茶の間\"", 0, 0,
			"  bar.hcl:1  a = \"茶の間\" + 3\n                 ^^^^^^^^\n"},
		{"letters with accents of their own", "a = \"e\u0301\" + 3\n", "3\n", 0, 0,
			"  bar.hcl:1  a = \"e\u0301\" + 3\n                       ^\n"},
		{"several lines", "a = [\n  1,\n]\nb = 2\n", "[\n  1,\n]", 0, 0,
			"  bar.hcl:1  a = [\n                 ^\n"},
		{"the end of a line", "a =\nb = 2\n", "\nb", 0, 0,
			"  bar.hcl:1  a =\n                ^\n"},
		{"the end of the file", "a = \"x\n", "\n", 0, 0,
			"  bar.hcl:1  a = \"x\n                   ^\n"},
		{"the middle of a long line", long, "FAULT", 0, 80,
			"  bar.hcl:1  … 10, 10, 10, 10, 10, FAULT, 20, 20, 20, 20, 20, 20, 20, 20, 20, 2…\n                                   ^^^^^\n"},
		{"the middle of a line of a megabyte", strings.Repeat("10, ", 1<<17) + "FAULT, " + strings.Repeat("20, ", 1<<17) + "\n", "FAULT", 0, 80,
			"  bar.hcl:1  … 10, 10, 10, 10, 10, FAULT, 20, 20, 20, 20, 20, 20, 20, 20, 20, 2…\n                                   ^^^^^\n"},
		{"the start of a long line", long, "width", 0, 80,
			"  bar.hcl:1  width = [10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, …\n             ^^^^^\n"},
		{"the end of a long line", long, "]", 0, 80,
			"  bar.hcl:1  …20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, ]\n" + strings.Repeat(" ", 78) + "^\n"},
		{"words longer than the width", long, strings.TrimSpace(long), 0, 80,
			"  bar.hcl:1  width = [10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, …\n             " + strings.Repeat("^", 65) + "\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := Finding{Severity: Error, Slug: "test", At: at(t, c.text, c.words), Caret: c.caret, Text: "Text."}
			got := render(t, c.text, Style{Width: c.width}, f)
			if diff := cmp.Diff("error: test\n\n"+c.want+"  Text.\n\n  Why:  barwright explain test\n", got); diff != "" {
				t.Errorf("%s\ngot:\n%s", diff, got)
			}
		})
	}
}

func TestRenderWhole(t *testing.T) {
	text := "wall \"north\" {\n  length = 100\n}\nrun \"back\" {\n  width = \"101\"\n}\n"
	l := List{
		{Severity: Error, Slug: "run-too-long", At: at(t, text, "\"101\""), Text: "The run is 101 in long, but its wall has room for 100 in: 1 in too long, which is a long text.",
			Related: []Related{{at(t, text, "100"), "the wall's length"}, {at(t, text, "wall"), "a remark that is too long to stand on the line of the place"}},
			Mend:    "make it shorter, or the wall longer, whichever of the two seems the easier way out to you"},
		{Severity: Warning, Slug: "no-place", Text: "Two\nlines."},
		{Severity: Note, Slug: "no-file", At: source.Range{File: "gone.hcl", Start: source.Pos{Line: 3, Byte: 40}, End: source.Pos{Line: 3, Byte: 44}}, Text: "x"},
	}
	want := `error: run-too-long

  bar.hcl:5  width = "101"
                     ^^^^^
  The run is 101 in long, but its wall has room for 100
  in: 1 in too long, which is a long text.

  bar.hcl:2  length = 100   (the wall's length)

  bar.hcl:1  wall "north" {
  (a remark that is too long to stand on the line of
  the place)

  Mend: make it shorter, or the wall longer, whichever
        of the two seems the easier way out to you
  Why:  barwright explain run-too-long

warning: no-place

  Two
  lines.

  Why:  barwright explain no-place

note: no-file

  gone.hcl:3
              ^
  x

  Why:  barwright explain no-file
`
	got := render(t, text, Style{Width: 55}, l...)
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	plain := stripColor(render(t, text, Style{Width: 55, Color: true}, l...))
	if diff := cmp.Diff(want, plain); diff != "" {
		t.Errorf("with its colours taken off:\n%s", diff)
	}
	if render(t, text, Style{}, l...) != render(t, text, Style{Width: 80}, l...) {
		t.Error("the width is not 80 where none is given")
	}
	if got := render(t, text, Style{}); got != "" {
		t.Errorf("no findings print %q", got)
	}
}

func stripColor(text string) string {
	for _, code := range []string{reset, bold, dim, tint[Note], tint[Warning], tint[Error]} {
		text = strings.ReplaceAll(text, code, "")
	}
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		lines[i] = strings.TrimRight(line, " ")
	}
	return strings.Join(lines, "\n")
}

// TestRenderAnything prints findings on any bytes: nothing that steers a
// terminal comes out, snippets keep within the width, and marks stand below
// what is shown.
func TestRenderAnything(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		text := rapid.SliceOfN(rapid.SampledFrom([]byte("ab \t\n\r\x1b\x00\x7f\xc3\xa4\xe8\x8c\xb6\xe2\x80\xae\xcc\x81\xff\"")), 0, 300).Draw(r, "text")
		from := rapid.IntRange(0, len(text)).Draw(r, "from")
		to := rapid.IntRange(from, len(text)).Draw(r, "to")
		line := func(b int) source.Pos { return source.Pos{Line: 1 + bytes.Count(text[:b], []byte("\n")), Byte: b} }
		f := Finding{Slug: "s", At: source.Range{File: "bar.hcl", Start: line(from), End: line(to)},
			Caret: rapid.IntRange(-1, 20).Draw(r, "caret"), Text: rapid.String().Draw(r, "words"), Mend: rapid.String().Draw(r, "mend")}
		f.Related = []Related{{f.At, rapid.String().Draw(r, "remark")}}
		got := render(t, string(text), Style{Width: 60}, f)
		if !utf8.ValidString(got) {
			r.Fatalf("not UTF-8: %q", got)
		}
		for _, c := range got {
			if c != '\n' && unicode.IsControl(c) || unicode.Is(unicode.Bidi_Control, c) {
				r.Fatalf("%U comes out in %q", c, got)
			}
		}
		lines := strings.Split(got, "\n")
		if Columns(lines[2]) > 60 || Columns(lines[3]) > 61 {
			r.Fatalf("too wide:\n%s", got)
		}
	})
}
