package reply_test

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile"
	"barwright/compile/ask"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/emit/reply"
	"barwright/lang"
	"barwright/lang/source"
)

var (
	specExample = regexp.MustCompile("(?s)```hcl name=\"(shop|room|bar)\"[^\n]*\n(.*?)\n```")
	specShow    = regexp.MustCompile(`(?s)\n    \$ barwright show bar ([^\n]*)\n((?:    [^\n]*\n|\n)*)`)
	specName    = regexp.MustCompile("(?m)^\\| (`[^|]*`) \\| ")
)

// TestSpec compares what SPEC.md shows of its example "bar" with what is shown,
// and asks for each name of its table.
func TestSpec(t *testing.T) {
	path := filepath.Join(root, "SPEC.md")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	book := specBook(t, string(text))
	shows := specShow.FindStringSubmatchIndex(string(text))
	if shows == nil {
		t.Fatal("SPEC.md shows nothing")
	}
	asked, from, to := string(text[shows[2]:shows[3]]), shows[4], shows[5]
	have := "    " + strings.ReplaceAll(strings.TrimRight(printed(t, book, strings.Fields(asked)), "\n"), "\n", "\n    ") + "\n"
	have = strings.ReplaceAll(have, "    \n", "\n")
	if *update {
		after := strings.TrimLeft(string(text[to:]), "\n")
		if err := os.WriteFile(path, []byte(string(text[:from])+have+"\n"+after), 0o666); err != nil {
			t.Fatal(err)
		}
	} else if diff := cmp.Diff(strings.TrimRight(string(text[from:to]), "\n"), strings.TrimRight(have, "\n")); diff != "" {
		t.Errorf("SPEC.md, %s (-want +have):\n%s", asked, diff)
	}
	tried := 0
	_, section, _ := strings.Cut(string(text), "### 10.4")
	section, _, _ = strings.Cut(section, "\n## ")
	for _, row := range specName.FindAllStringSubmatch(section, -1) {
		for _, name := range strings.Split(row[1], ", ") {
			tried++
			if _, ok := book.Ask(strings.Trim(name, "`")); !ok {
				t.Errorf("SPEC.md names %s, which is not there", name)
			}
		}
	}
	if tried < 6 {
		t.Errorf("only %d names were found in the table of SPEC.md", tried)
	}
}

func specBook(t *testing.T, text string) *ask.Book {
	t.Helper()
	var files source.Files
	for _, example := range specExample.FindAllStringSubmatch(text, -1) {
		files = append(files, source.File{Name: example[1] + ".hcl", Text: []byte(example[2] + "\n")})
	}
	src, findings := lang.Read(files)
	m, more := compile.Compile(src)
	if len(files) != 3 || m == nil {
		t.Fatal(len(files), findings, more)
	}
	return ask.Open(values.Explain(src), m)
}

func printed(t *testing.T, book *ask.Book, names []string) string {
	t.Helper()
	var replies []model.Reply
	for _, name := range names {
		r, ok := book.Ask(name)
		if !ok {
			t.Fatalf("there is nothing called %q", name)
		}
		replies = append(replies, r)
	}
	var out bytes.Buffer
	if err := reply.Text(&out, replies); err != nil {
		t.Fatal(err)
	}
	return out.String()
}
