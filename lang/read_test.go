package lang

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/lang/length"
	"barwright/lang/source"
)

func read(t *testing.T, files ...source.File) *Source {
	t.Helper()
	src, findings := Read(files)
	if len(findings) > 0 {
		t.Fatalf("%v", findings)
	}
	return src
}

func file(name, text string) source.File { return source.File{Name: name, Text: []byte(text)} }

const stock = `unit = "mm"

sheet "birch" {
  thickness = 18
  size      = [2440, 1220]
}
`

const bar = `build "bär" {
  unit = "in"
}

room {
  wall "north" {
    length = "8ft"
    outlet "tea" { at = [14.5, 17] }
  }
}
`

// TestReadKeepsTheText checks what a Source says of the text: blocks in the
// order of the files, attributes in the order of the lines, each with its place
// and its unit.
func TestReadKeepsTheText(t *testing.T) {
	src := read(t, file("bar.hcl", bar), file("stock.hcl", stock))
	var got []string
	src.Each(func(b *Block) {
		line := b.Path() + " | " + b.Unit.String() + " | " + words(src, b.Head) + " | " + words(src, b.NameAt)
		for _, a := range b.Attrs {
			line += " | " + words(src, a.NameAt) + ": " + words(src, a.Expr.At)
			if a.Spec.Name != a.Name || a.Expr.Unit != b.Unit || a.Overridden {
				t.Errorf("%s of %s: %+v", a.Name, b.Path(), a)
			}
		}
		got = append(got, line)
	})
	want := []string{
		`build.bär | in | build "bär" | "bär" | unit: "in"`,
		`room | in | room | room`,
		`wall.north | in | wall "north" | "north" | length: "8ft"`,
		`wall.north outlet.tea | in | outlet "tea" | "tea" | at: [14.5, 17]`,
		`sheet.birch | mm | sheet "birch" | "birch" | thickness: 18 | size: [2440, 1220]`,
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if src.Unit != length.Inches {
		t.Errorf("the build is in %v", src.Unit)
	}
	tea := src.Top("room")[0].Inner("wall")[0].Inner("outlet")[0]
	if tea.Key() != "outlet.tea" || tea.Parent.Key() != "wall.north" || tea.Describe() != `outlet "tea"` || tea.Attr("box") != nil || tea.Attr("at") == nil {
		t.Errorf("%+v", tea)
	}
	if at := tea.Head.Start; at != (source.Pos{Line: 8, Column: 5, Byte: strings.Index(bar, "outlet")}) {
		t.Errorf("the outlet stands at %+v", at)
	}
}

func words(src *Source, at source.Range) string {
	return string(src.Files.Text(at.File)[at.Start.Byte:at.End.Byte])
}

// TestUnits checks what a bare number means: the file's own unit before the
// build's, and the build's whichever file states it.
func TestUnits(t *testing.T) {
	for _, c := range []struct {
		name  string
		files []source.File
		want  string // the unit of the sheet, and the build's
	}{
		{"the build's, from another file", []source.File{file("a.hcl", strings.TrimPrefix(stock, "unit = \"mm\"\n")), file("b.hcl", bar)}, "in in"},
		{"the file's own", []source.File{file("a.hcl", stock), file("b.hcl", bar)}, "mm in"},
		{"of a file that is all", []source.File{file("a.hcl", strings.Replace(stock, "mm", "cm", 1)+strings.Replace(bar, `"in"`, `"ft"`, 1))}, "cm ft"},
	} {
		src := read(t, c.files...)
		if got := src.Top("sheet")[0].Unit.String() + " " + src.Unit.String(); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// TestReadTwice demands the same findings in the same order: the syntax library
// keeps attributes in maps.
func TestReadTwice(t *testing.T) {
	text := bar + "sheet \"a\" {\n  one = 1\n  two = 2\n  three = 3\n  four = 4\n  five = 5\n}\n"
	_, first := Read(source.Files{file("bar.hcl", text)})
	if len(first) < 5 {
		t.Fatalf("%v", first)
	}
	for range 50 {
		_, again := Read(source.Files{file("bar.hcl", text)})
		if diff := cmp.Diff(first, again); diff != "" {
			t.Fatal(diff)
		}
	}
}

// TestOverrideIsAFile checks that each value set on the command line becomes a
// line of its own, with its place, and that the files that were read stay.
func TestOverrideIsAFile(t *testing.T) {
	files := source.Files{file("bar.hcl", "build \"b\" {\n  unit = \"in\"\n}\ngiven {\n  width = 30\n  depth = 24\n}\n")}
	before := string(files[0].Text)
	src := read(t, files...)
	for _, set := range [][2]string{{"width", "7' 6\""}, {"depth", "given.width * 2"}, {"width", "19 1/2in"}} {
		if findings := src.Override("--set", set[0], set[1]); len(findings) > 0 {
			t.Fatal(findings)
		}
	}
	if got, want := string(src.Files.Text("--set")), "width=7' 6\"\ndepth=given.width * 2\nwidth=19 1/2in\n"; got != want {
		t.Errorf("the command line reads %q, want %q", got, want)
	}
	if len(files) != 1 || len(src.Files) != 2 || string(src.Files[0].Text) != before {
		t.Errorf("files: %v", src.Files)
	}
	given := src.Top("given")[0]
	for name, want := range map[string]struct {
		words string
		line  int
	}{"width": {"19 1/2in", 3}, "depth": {"given.width * 2", 2}} {
		a := given.Attr(name)
		if words(src, a.Expr.At) != want.words || a.Expr.At.Start.Line != want.line || !a.Overridden {
			t.Errorf("%s comes from %q at %+v", name, words(src, a.Expr.At), a.Expr.At)
		}
	}
	findings := src.Override("--set", "widht", "3")
	if len(findings) != 1 || findings[0].Slug != "unknown-name" || words(src, findings[0].At) != "widht" || findings[0].At.Start.Line != 4 || findings[0].Mend != `did you mean "width"?` {
		t.Errorf("%+v", findings)
	}
}
