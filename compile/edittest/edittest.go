// Package edittest reads descriptions for tests, and changes them as a text of edits says.
package edittest

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"barwright/lang/source"
)

// Root is the folder of go.mod, above that of the test.
func Root(t testing.TB) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
		up := filepath.Dir(dir)
		if up == dir {
			t.Fatal("no go.mod above the test")
		}
		dir = up
	}
}

// Folder reads the descriptions of a folder, in the order of their names.
func Folder(t testing.TB, folder string) source.Files {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(folder, "*.hcl"))
	if err != nil {
		t.Fatal(err)
	}
	var files source.Files
	for _, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, source.File{Name: filepath.Base(path), Text: text})
	}
	files.Sort()
	return files
}

// Edited changes files as a text of groups says, which empty lines part: lines
// that begin with "- " are found in one place of one file, and "+ " lines stand
// there instead; a group of "+ " lines alone is added to the end of the first file, or,
// where it is a limits block and there is one, to that.
// What stands before the first letter of a line need not be given; where the words
// stand nowhere else, one space is as good as more.
func Edited(t testing.TB, files source.Files, text string) source.Files {
	t.Helper()
	files = slices.Clone(files)
	for group := range strings.SplitSeq(strings.TrimSpace(text), "\n\n") {
		var from, to []string
		for line := range strings.SplitSeq(group, "\n") {
			switch old, taken := strings.CutPrefix(line, "-"); {
			case taken:
				from = append(from, strings.TrimSpace(old))
			case strings.HasPrefix(line, "+"):
				to = append(to, strings.TrimSpace(line[1:]))
			case !strings.HasPrefix(line, "#"):
				t.Fatalf("an edit begins with neither - nor +: %q", line)
			}
		}
		if len(from) == 0 && strings.HasPrefix(to[0], "limits {") && ownLimits.Match(files[0].Text) {
			inner := strings.TrimSuffix(strings.TrimPrefix(strings.Join(to, "\n"), "limits {"), "}")
			files[0].Text = ownLimits.ReplaceAllLiteral(files[0].Text, []byte("limits {\n"+strings.TrimSpace(inner)+"\n"))
			continue
		}
		if len(from) == 0 {
			files[0].Text = []byte(string(files[0].Text) + "\n" + strings.Join(to, "\n") + "\n")
			continue
		}
		found := 0
		for _, space := range []string{" ", " +"} {
			for i, f := range files {
				old := asWritten(from, space)
				if n := len(old.FindAllIndex(f.Text, -1)); n > 0 {
					found += n
					files[i].Text = old.ReplaceAllLiteral(f.Text, []byte(strings.Join(to, "\n")))
				}
			}
			if found > 0 {
				break
			}
		}
		if found != 1 {
			t.Fatalf("%q stands in %d places", strings.Join(from, "\n"), found)
		}
	}
	return files
}

// ownLimits is the beginning of a limits block of some lines.
var ownLimits = regexp.MustCompile(`(?m)^limits \{.*\n`)

// asWritten matches lines whatever stands before their first letters, with a space
// between words as it is said.
func asWritten(lines []string, space string) *regexp.Regexp {
	quoted := make([]string, len(lines))
	for i, line := range lines {
		quoted[i] = strings.ReplaceAll(regexp.QuoteMeta(line), " ", space)
	}
	return regexp.MustCompile(strings.Join(quoted, `\n\s*`))
}
