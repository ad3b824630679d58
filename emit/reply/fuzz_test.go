package reply_test

import (
	"bytes"
	"encoding/json"
	"path/filepath"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/rogpeppe/go-internal/txtar"

	"barwright/compile"
	"barwright/compile/ask"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/emit/reply"
	"barwright/lang"
	"barwright/lang/source"
)

// FuzzShow shows all names of whatever description: each that is listed has an
// answer, what is printed is text without control characters, and the JSON form
// is JSON.
func FuzzShow(f *testing.F) {
	archives, err := filepath.Glob(filepath.Join(root, "testdata", "spec", "*.txtar"))
	if err != nil || len(archives) == 0 {
		f.Fatalf("no seeds: %v", err)
	}
	for _, path := range archives {
		a, err := txtar.ParseFile(path)
		if err != nil {
			f.Fatal(err)
		}
		for _, file := range a.Files {
			if strings.HasSuffix(file.Name, ".hcl") {
				f.Add(string(file.Data))
			}
		}
	}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 10_000 {
			return
		}
		src, _ := lang.Read(source.Files{{Name: "bar.hcl", Text: []byte(text)}})
		if src.Lost {
			return
		}
		m, _ := compile.Compile(src)
		book := ask.Open(values.Explain(src), m)
		overview, ok := book.Ask("")
		if !ok {
			return // there are no blocks
		}
		replies := []model.Reply{overview}
		for _, a := range overview.Answers {
			r, ok := book.Ask(a.Name)
			if !ok {
				t.Fatalf("%q is listed, and has no answer", a.Name)
			}
			replies = append(replies, r)
		}
		checkPrinted(t, replies)
		var lines bytes.Buffer
		if err := reply.Lines(&lines, book.All(), m); err != nil {
			t.Fatal(err)
		}
		harmless(t, lines.String())
	})
}

func harmless(t *testing.T, text string) {
	t.Helper()
	for _, c := range text {
		if c != '\n' && unicode.IsControl(c) || c == utf8.RuneError {
			t.Fatalf("%q is printed", c)
		}
	}
}

func checkPrinted(t *testing.T, replies []model.Reply) {
	t.Helper()
	var out bytes.Buffer
	if err := reply.Text(&out, replies); err != nil {
		t.Fatal(err)
	}
	harmless(t, out.String())
	out.Reset()
	if err := reply.JSON(&out, replies); err != nil || !json.Valid(out.Bytes()) {
		t.Fatalf("the JSON form is none: %v", err)
	}
}
