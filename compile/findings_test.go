package compile_test

import (
	"bytes"
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"barwright/compile/solve"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

var update = flag.Bool("update", false, "write the findings as they are into testdata/findings")

const findingsDir = "../testdata/findings"

// answer reads and solves the files of one build and renders what is found.
func answer(t *testing.T, files source.Files) (finding.List, string) {
	t.Helper()
	src, findings := lang.Read(files)
	if !findings.HasErrors() {
		findings = append(findings, solve.Solve(src).Findings...)
	}
	findings.Sort()
	var out bytes.Buffer
	if err := finding.Render(&out, findings, src.Files, finding.Style{Width: 80}); err != nil {
		t.Fatal(err)
	}
	return findings, out.String()
}

// under returns the descriptions of an archive that are in a folder.
func under(a *txtar.Archive, folder string) source.Files {
	var files source.Files
	for _, f := range a.Files {
		if dir, name := filepath.Split(f.Name); dir == folder && strings.HasSuffix(name, ".hcl") {
			files = append(files, source.File{Name: name, Text: f.Data})
		}
	}
	files.Sort()
	return files
}

// TestFindings has one archive for each mistake: the description, want with
// the full answer, and, where the answer names a mend, the description after
// it under mended/, which must have no errors.
func TestFindings(t *testing.T) {
	for _, path := range archives(t) {
		t.Run(strings.TrimSuffix(filepath.Base(path), ".txtar"), func(t *testing.T) {
			a, err := txtar.ParseFile(path)
			if err != nil {
				t.Fatal(err)
			}
			files := under(a, "")
			if len(files) == 0 {
				t.Fatal("no description in the archive")
			}
			findings, got := answer(t, files)
			if len(findings) == 0 {
				t.Fatal("nothing was found")
			}
			checkRanges(t, findings, files)
			checkMended(t, a, findings)
			at := slices.IndexFunc(a.Files, func(f txtar.File) bool { return f.Name == "want" })
			if at < 0 {
				at = len(a.Files)
				a.Files = append(a.Files, txtar.File{Name: "want"})
			}
			if *update {
				a.Files[at].Data = []byte(got)
				if err := os.WriteFile(path, txtar.Format(a), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			if diff := cmp.Diff(string(a.Files[at].Data), got); diff != "" {
				t.Errorf("the findings are not those of want (-want +got):\n%s", diff)
			}
		})
	}
}

func archives(t *testing.T) []string {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(findingsDir, "*.txtar"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("no archives in %s: %v", findingsDir, err)
	}
	return paths
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

// checkMended demands that the description is sound once the mend is followed.
func checkMended(t *testing.T, a *txtar.Archive, before finding.List) {
	t.Helper()
	files := under(a, "mended/")
	if len(files) == 0 {
		return
	}
	after, text := answer(t, files)
	for _, f := range before {
		gone := !slices.ContainsFunc(after, func(g finding.Finding) bool { return f.Slug == g.Slug && f.Text == g.Text })
		if after.HasErrors() || !gone {
			t.Errorf("after following the mends:\n%s", text)
			return
		}
	}
}

// TestEverySlugHasACase reads the slugs out of the code, so that no finding is
// added without an archive that shows it.
func TestEverySlugHasACase(t *testing.T) {
	shown := map[string]bool{}
	for _, path := range archives(t) {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range regexp.MustCompile(`(?m)^(?:error|warning|note): ([a-z-]+)$`).FindAllSubmatch(text, -1) {
			shown[string(m[1])] = true
		}
	}
	elsewhere := []string{"not-utf8", "file-too-large"} // TestUnreadableFiles
	said := regexp.MustCompile(`(?:Errorf|Warnf|Notef|fail|refuse)\("([a-z0-9-]+)"`)
	for _, root := range []string{"../lang", "solve"} {
		err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			code, err := os.ReadFile(path)
			for _, m := range said.FindAllSubmatch(code, -1) {
				if slug := string(m[1]); !shown[slug] && !slices.Contains(elsewhere, slug) {
					t.Errorf("%s: no archive in testdata/findings shows %s", path, slug)
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
`},
		{"half a character at the end", "build \"bär\" {\n  unit = \"in\"\n}\n# \xc3", `error: not-utf8

  bar.hcl:4  # ?
               ^
  The byte here is not UTF-8 text.

  Mend: save the file as UTF-8
`},
		{"too large", "build \"b\" {\n  unit = \"in\"\n}\n" + strings.Repeat("#\n", lang.MaxFileBytes/2), `error: file-too-large

  bar.hcl:1  build "b" {
             ^
  The file is larger than 1048576 bytes, which is the most that is read.

  Mend: split the description into several files
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
