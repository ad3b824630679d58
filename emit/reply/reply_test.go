package reply_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"barwright/compile"
	"barwright/compile/ask"
	"barwright/compile/edittest"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/compile/view/viewtest"
	"barwright/emit/reply"
	"barwright/lang"
)

var update = flag.Bool("update", false, "rewrite what is shown of the examples")

const root = "../.."

// example opens the book of an example; set are NAME=VALUE.
func example(t *testing.T, name string, set ...string) *ask.Book {
	t.Helper()
	dir := filepath.Join(root, "examples", name)
	files := edittest.Folder(t, dir)
	if len(files) == 0 {
		t.Fatalf("there is no example %s", name)
	}
	src, findings := lang.ReadTree(files, func(name string) ([]byte, error) {
		return os.ReadFile(filepath.Join(dir, filepath.FromSlash(name)))
	})
	for _, s := range set {
		name, value, _ := strings.Cut(s, "=")
		findings = append(findings, src.Override("--set", name, value)...)
	}
	m, more := compile.Compile(src)
	if m == nil {
		t.Fatal(findings, more)
	}
	return ask.Open(values.Explain(src), m)
}

// shown answers a line of a command: names, --set NAME=VALUE, --format json.
func shown(t *testing.T, build, line string) string {
	t.Helper()
	var names, set []string
	print := reply.Text
	words := strings.Fields(line)
	for i := 0; i < len(words); i++ {
		switch words[i] {
		case "--set":
			i++
			set = append(set, words[i])
		case "--json":
			print = reply.JSON
		case `""`:
			names = append(names, "")
		default:
			names = append(names, words[i])
		}
	}
	book := example(t, build, set...)
	var replies []model.Reply
	for _, name := range names {
		r, ok := book.Ask(name)
		if !ok {
			t.Fatalf("%s has nothing called %q", build, name)
		}
		replies = append(replies, r)
	}
	var out bytes.Buffer
	if err := print(&out, replies); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// TestShown compares what is shown of the examples with testdata. Each archive
// is named after its example, and each file in it after what is asked; the
// comment at its head works figures out by hand.
func TestShown(t *testing.T) {
	for _, build := range []string{"boatshed", "servery"} {
		path := filepath.Join("testdata", build+".txtar")
		a, err := txtar.ParseFile(path)
		if err != nil || len(a.Files) < 5 {
			t.Fatalf("%s: %v", path, err)
		}
		for i := range a.Files {
			f := &a.Files[i]
			have := shown(t, build, f.Name)
			if *update {
				f.Data = []byte(have)
			}
			if diff := cmp.Diff(string(f.Data), have); diff != "" {
				t.Errorf("%s, %s (-want +have):\n%s", build, f.Name, diff)
			}
		}
		if *update {
			if err := os.WriteFile(path, txtar.Format(a), 0o666); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// TestEverythingCanBeShown shows every name of both examples, and of a bar with
// all its fittings, as text and as JSON.
func TestEverythingCanBeShown(t *testing.T) {
	for build, book := range map[string]*ask.Book{
		"boatshed": example(t, "boatshed"), "servery": example(t, "servery"), "fitted": ask.Open(nil, viewtest.Fitted()),
	} {
		seen := map[string]bool{}
		var walk func(asked string)
		walk = func(asked string) {
			r, ok := book.Ask(asked)
			if !ok {
				t.Fatalf("%s: %q was listed, and has no answer", build, asked)
			}
			checkText(t, build, r)
			checkJSON(t, build, r)
			for _, a := range r.Answers {
				if !seen[a.Name] {
					seen[a.Name] = true
					walk(a.Name)
				}
			}
		}
		walk("")
		if len(seen) < 800 {
			t.Errorf("%s: only %d names were shown", build, len(seen))
		}
	}
}

// checkText demands lines that a terminal has room for, unless a single word
// is longer.
func checkText(t *testing.T, build string, r model.Reply) {
	t.Helper()
	var out bytes.Buffer
	if err := reply.Text(&out, []model.Reply{r}); err != nil || out.Len() == 0 {
		t.Fatalf("%s: %q is shown as %q, %v", build, r.Asked, out.String(), err)
	}
	for line := range strings.Lines(out.String()) {
		if n := utf8.RuneCountInString(line) - 1; n > 80 {
			t.Errorf("%s: %q has a line of %d characters: %s", build, r.Asked, n, line)
		}
	}
	if strings.Contains(out.String(), "in error") {
		t.Errorf("%s: %q is in error", build, r.Asked)
	}
}

// checkJSON reads the JSON form back: of a value, all that it follows from is
// there.
func checkJSON(t *testing.T, build string, r model.Reply) {
	t.Helper()
	var out bytes.Buffer
	if err := reply.JSON(&out, []model.Reply{r}); err != nil {
		t.Fatal(err)
	}
	var doc struct {
		Version int `json:"barwright_show"`
		Replies []struct {
			Answers []struct {
				Name, Kind, Value string
				MM                []float64
				From              []string
			}
		}
	}
	if err := json.Unmarshal(out.Bytes(), &doc); err != nil || doc.Version != reply.Version || len(doc.Replies) != 1 {
		t.Fatalf("%s: %q: %v", build, r.Asked, err)
	}
	there := map[string]bool{}
	for _, a := range doc.Replies[0].Answers {
		there[a.Name] = true
		if a.Kind == "length" && (len(a.MM) != 1 || a.Value == "") {
			t.Errorf("%s: %s has no length", build, a.Name)
		}
	}
	for _, a := range doc.Replies[0].Answers {
		for _, from := range a.From {
			if !r.Lists && !there[from] {
				t.Errorf("%s: the JSON of %q lacks %s", build, r.Asked, from)
			}
		}
	}
}

// TestLongChains bounds what is printed.
func TestLongChains(t *testing.T) {
	name := func(i int) string { return fmt.Sprintf("a.n%d", i) }
	var deep []model.Answer
	for i := range 40 {
		deep = append(deep, model.Answer{Name: name(i), Kind: model.AsNumber, Text: "1", From: []string{name(i + 1)}})
	}
	wide := []model.Answer{{Name: "a.sum", Kind: model.AsNumber, Text: "1"}}
	for i := range 1000 {
		wide[0].From = append(wide[0].From, name(i))
		wide = append(wide, model.Answer{Name: name(i), Kind: model.AsNumber, Text: "1"})
	}
	for _, answers := range [][]model.Answer{deep, wide} {
		var out bytes.Buffer
		if err := reply.Text(&out, []model.Reply{{Asked: answers[0].Name, Answers: answers}}); err != nil {
			t.Fatal(err)
		}
		if n := strings.Count(out.String(), "\n"); n > 220 || !strings.Contains(out.String(), "cut short") {
			t.Errorf("%d lines:\n%s", n, out.String())
		}
	}
}
