package compile_test

import (
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

var update = flag.Bool("update", false, "write the findings as they are into testdata/spec")

// answer reads and solves the files of one build and renders what is found.
func answer(t *testing.T, files source.Files) (finding.List, string) {
	t.Helper()
	s := finished(lang.Read(files))
	return s.findings, s.text(t)
}

// checkRanges demands that all places lie in the files, in order.
func checkRanges(t *testing.T, findings finding.List, files source.Files) {
	t.Helper()
	for i, f := range findings {
		places := []source.Range{f.At}
		for _, r := range f.Related {
			places = append(places, r.At)
		}
		for _, at := range places {
			if at.Start.Byte < 0 || at.Start.Byte > at.End.Byte || at.End.Byte > len(files.Text(at.File)) {
				t.Errorf("%s: %v is no place in %s", f.Slug, at, at.File)
			}
		}
		if i > 0 && f.At.Compare(findings[i-1].At) < 0 {
			t.Errorf("%s stands after %s, but its place is before", f.Slug, findings[i-1].Slug)
		}
	}
}

// TestEverySlugHasACase reads the slugs out of the code, so that no finding is
// added without an archive that shows it.
func TestEverySlugHasACase(t *testing.T) {
	shown := map[string]bool{}
	for _, c := range specCases(t) {
		want, _ := c.file("want")
		for _, m := range regexp.MustCompile(`(?m)^(?:error|warning|note): ([a-z0-9-]+)$`).FindAllStringSubmatch(want, -1) {
			shown[m[1]] = true
		}
	}
	elsewhere := []string{"not-utf8", "file-too-large"} // TestUnreadableFiles
	said := regexp.MustCompile(`(?:Errorf|Warnf|Notef|fail|refuse)\("([a-z0-9-]+)"`)
	for _, root := range []string{"../lang", "solve"} {
		err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			if err == nil && d.IsDir() && d.Name() == "cutlist" { // no description; it has tables of its own
				return filepath.SkipDir
			}
			if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			code, err := os.ReadFile(path)
			for _, m := range said.FindAllSubmatch(code, -1) {
				if slug := string(m[1]); !shown[slug] && !slices.Contains(elsewhere, slug) {
					t.Errorf("%s: no archive in testdata/spec shows %s", path, slug)
				}
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
}

// TestUnreadableFiles has the files that an archive cannot hold.
func TestUnreadableFiles(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"a byte that is not UTF-8", "build \"b\xe4r\" {\n  unit = \"in\"\n}\n", `error: not-utf8

  bar.hcl:1  build "b?r" {
                     ^
  The byte here is not UTF-8 text.

  Mend: save the file as UTF-8
  Why:  barwright explain not-utf8
`},
		{"half a character at the end", "build \"bär\" {\n  unit = \"in\"\n}\n# \xc3", `error: not-utf8

  bar.hcl:4  # ?
               ^
  The byte here is not UTF-8 text.

  Mend: save the file as UTF-8
  Why:  barwright explain not-utf8
`},
		{"too large", "build \"b\" {\n  unit = \"in\"\n}\n" + strings.Repeat("#\n", lang.MaxFileBytes/2), `error: file-too-large

  bar.hcl:1  build "b" {
             ^
  The file is larger than 1048576 bytes, which is the most that is read.

  Mend: split the description into several files
  Why:  barwright explain file-too-large
`},
	} {
		t.Run(c.name, func(t *testing.T) {
			files := source.Files{{Name: "bar.hcl", Text: []byte(c.text)}}
			findings, got := answer(t, files)
			checkRanges(t, findings, files)
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestDeepest accepts what stands just within the limit of nesting, and
// refuses one step more.
func TestDeepest(t *testing.T) {
	brackets := func(n int) string { return strings.Repeat("(", n) + "1" + strings.Repeat(")", n) }
	// The block's own brace counts too.
	if findings, got := answer(t, givenA(brackets(lang.MaxNesting-1))); len(findings) > 0 {
		t.Errorf("%d brackets within a block are refused:\n%s", lang.MaxNesting-1, got)
	}
	if findings, _ := answer(t, givenA(brackets(lang.MaxNesting))); len(findings) != 1 || findings[0].Slug != "too-deep" {
		t.Errorf("%d brackets within a block: %v", lang.MaxNesting, findings)
	}
	// Many short rows are not one long one.
	if findings, got := answer(t, givenA("["+strings.Repeat("-1 + 1, ", 50_000)+"]")); len(findings) > 0 {
		t.Errorf("a long list is refused:\n%s", got)
	}
}

// TestHostile has long texts that would take a reader too deep. Each must give
// one answer, and soon.
func TestHostile(t *testing.T) {
	for _, part := range []string{"1+", "-", "!", "true?1:", "1==", "f(", "[", "{a=", `"${`, "a.", "a.*."} {
		if findings, _ := answer(t, givenA(strings.Repeat(part, 100_000)+"1")); len(findings) != 1 || findings[0].Slug != "too-deep" {
			t.Errorf("%s and so on: %v", part, findings)
		}
	}
	if findings, _ := answer(t, givenA(`"`+strings.Repeat("%{if true}", 90_000)+`"`)); len(findings) != 1 || findings[0].Slug != "too-deep" {
		t.Errorf("if within if: %v", findings)
	}
	if findings, _ := answer(t, givenA("a"+strings.Repeat("[0]", 200_000))); len(findings) != 1 {
		t.Errorf("steps into a list: %d findings", len(findings))
	}
}

func givenA(value string) source.Files {
	return source.Files{{Name: "bar.hcl", Text: []byte("build \"b\" {\n  unit = \"in\"\n}\ngiven {\n  a = " + value + "\n}\n")}}
}
