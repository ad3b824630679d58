package schema_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"barwright/lang/schema"
)

var update = flag.Bool("update", false, "rewrite the reference in SPEC.md")

const (
	begins = "<!-- reference begins -->\n"
	ends   = "<!-- reference ends -->\n"
)

// TestReferenceIsCurrent compares the reference in SPEC.md with the table of
// the language.
func TestReferenceIsCurrent(t *testing.T) {
	path := filepath.Join("..", "..", "SPEC.md")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	before, rest, found := strings.Cut(string(text), begins)
	have, after, ended := strings.Cut(rest, ends)
	if !found || !ended {
		t.Fatalf("SPEC.md lacks the lines %q and %q", begins, ends)
	}
	var want bytes.Buffer
	if err := schema.WriteReference(&want); err != nil {
		t.Fatal(err)
	}
	if have == want.String() {
		return
	}
	if !*update {
		t.Fatalf("section 5 of SPEC.md is not what the table says; rewrite it with: go test ./lang/schema -update\n%s",
			firstDifference(have, want.String()))
	}
	if err := os.WriteFile(path, []byte(before+begins+want.String()+ends+after), 0o666); err != nil {
		t.Fatal(err)
	}
}

func firstDifference(have, want string) string {
	h, w := strings.Split(have, "\n"), strings.Split(want, "\n")
	for i := range min(len(h), len(w)) {
		if h[i] != w[i] {
			return "have: " + h[i] + "\nwant: " + w[i]
		}
	}
	return "one of them ends earlier"
}

// TestTableIsSound looks for entries of the table that the reader or the
// reference could not make sense of.
func TestTableIsSound(t *testing.T) {
	var attrs func(where string, list []schema.Attr)
	attrs = func(where string, list []schema.Attr) {
		seen := map[string]bool{}
		for _, a := range list {
			at := where + "." + a.Name
			switch {
			case seen[a.Name]:
				t.Errorf("%s stands twice", at)
			case (a.Type == schema.Choice) != (len(a.Choices) > 0):
				t.Errorf("%s: words belong to a Choice, and a Choice needs them", at)
			case (a.Type == schema.Ref || a.Type == schema.RefList) != (len(a.Refs) > 0):
				t.Errorf("%s: kinds belong to a Ref, and a Ref needs them", at)
			case (a.Type == schema.Object || a.Type == schema.Series) != (len(a.Fields) > 0):
				t.Errorf("%s: fields belong to an Object, and an Object needs them", at)
			case a.Required && a.Default != "":
				t.Errorf("%s is required and has a default", at)
			case a.Metric != "" && a.Default == "":
				t.Errorf("%s has a metric default only", at)
			}
			for _, kind := range a.Refs {
				if !known(schema.Root(), kind) {
					t.Errorf("%s may name a %q, which is no kind of block", at, kind)
				}
			}
			seen[a.Name] = true
			attrs(at, a.Fields)
		}
	}
	kinds := map[string]bool{}
	var blocks func(list []*schema.Block)
	blocks = func(list []*schema.Block) {
		for _, b := range list {
			if b.Doc == "" {
				t.Errorf("%s has no meaning", b.Kind)
			}
			kinds[b.Kind] = true
			attrs(b.Kind, b.Attrs)
			blocks(b.Blocks)
		}
	}
	attrs("a file", schema.FileAttrs())
	blocks(schema.Root())
	if len(kinds) < 10 {
		t.Errorf("only %d kinds of block were seen", len(kinds))
	}
}

func known(blocks []*schema.Block, kind string) bool {
	for _, b := range blocks {
		if b.Kind == kind || known(b.Blocks, kind) {
			return true
		}
	}
	return false
}
