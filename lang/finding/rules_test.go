package finding

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "rewrite the list of findings in SPEC.md, and the golden files")

const specPath = "../../SPEC.md"

func readSpec(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile(specPath)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// TestTableIsSound holds every entry of the table to the manner of the others.
func TestTableIsSound(t *testing.T) {
	word := regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	seen := map[string]bool{}
	for _, s := range Sections() {
		if len(s.Rules) == 0 {
			t.Errorf("section %s has no rules", s.Number)
		}
		for _, r := range s.Rules {
			switch {
			case !word.MatchString(r.Slug):
				t.Errorf("%q is no slug in plain words", r.Slug)
			case seen[r.Slug]:
				t.Errorf("%s stands twice", r.Slug)
			case r.Says == "" || strings.HasSuffix(r.Says, ".") || len(r.Says) > 75:
				t.Errorf("%s: what it says is no short line without a full stop: %q", r.Slug, r.Says)
			case len(strings.Fields(r.Explains)) < 20:
				t.Errorf("%s is hardly explained", r.Slug)
			case (r.Wrong == "") != (r.Right == "") || r.Wrong == r.Right && r.Wrong != "":
				t.Errorf("%s: an example shows the mistake and what mends it", r.Slug)
			case slices.Contains(r.Milder, r.Severity):
				t.Errorf("%s can be a thing twice", r.Slug)
			}
			for _, paragraph := range r.Paragraphs() {
				if !strings.HasSuffix(paragraph, ".") || strings.Contains(paragraph, "`") {
					t.Errorf("%s: a paragraph is whole sentences of plain text: %q", r.Slug, paragraph)
				}
			}
			for line := range strings.SplitSeq(r.Wrong+"\n"+r.Right, "\n") {
				if len(line) > 72 {
					t.Errorf("%s: too long for an example: %s", r.Slug, line)
				}
			}
			seen[r.Slug] = true
		}
	}
	if len(seen) < 80 {
		t.Errorf("only %d rules were seen", len(seen))
	}
}

// TestCautions demands that rules of wiring, water, structure, load and the
// router say what decides in the end.
func TestCautions(t *testing.T) {
	touching := regexp.MustCompile(`(?i)\b(outlet|pipe|router|bit|stud|plate|support|knee wall|steel|anchor)s?\b`)
	exempt := []string{ // these only speak of such things as an example, or of the text
		"box-too-small", "not-a-count", "too-large", "too-many", "name-taken", "part-too-large", "run-too-long",
	}
	for _, s := range Sections() {
		for _, r := range s.Rules {
			need := touching.MatchString(r.Says+" "+r.Explains) && !slices.Contains(exempt, r.Slug)
			if need && !strings.Contains(r.Caution, "decide") {
				t.Errorf("%s touches people's safety and does not say what decides", r.Slug)
			}
			if r.Caution == "" && slices.Contains([]string{"6.6", "6.7", "6.8", "6.9", "7.3", "11.3", "11.7", "11.8", "11.9", "11.10", "11.11"}, s.Number) {
				t.Errorf("%s stands in section %s and has no caution", r.Slug, s.Number)
			}
		}
	}
}

// TestSectionsAreInSpec looks up the headings that the table names.
func TestSectionsAreInSpec(t *testing.T) {
	spec := readSpec(t)
	var before []int
	for _, s := range Sections() {
		if !regexp.MustCompile(`(?m)^#+ ` + regexp.QuoteMeta(s.Number+" "+s.Title) + `$`).MatchString(spec) {
			t.Errorf("SPEC.md has no heading %q", s.Number+" "+s.Title)
		}
		var number []int
		for part := range strings.SplitSeq(s.Number, ".") {
			n, err := strconv.Atoi(part)
			if err != nil {
				t.Fatal(err)
			}
			number = append(number, n)
		}
		if slices.Compare(before, number) >= 0 {
			t.Errorf("section %s does not stand in the order of SPEC.md", s.Number)
		}
		before = number
	}
}

const (
	begins = "<!-- findings begin -->\n"
	ends   = "<!-- findings end -->\n"
)

// TestListIsCurrent compares the list of findings in SPEC.md with the table.
func TestListIsCurrent(t *testing.T) {
	before, rest, found := strings.Cut(readSpec(t), begins)
	have, after, ended := strings.Cut(rest, ends)
	if !found || !ended {
		t.Fatalf("SPEC.md lacks the lines %q and %q", begins, ends)
	}
	var want strings.Builder
	if err := WriteTable(&want); err != nil {
		t.Fatal(err)
	}
	if have == want.String() {
		return
	}
	if !*update {
		t.Fatalf("section 9.2 of SPEC.md is not what the table says; rewrite it with: go test ./lang/finding -update\n%s",
			cmp.Diff(have, want.String()))
	}
	if err := os.WriteFile(specPath, []byte(before+begins+want.String()+ends+after), 0o666); err != nil {
		t.Fatal(err)
	}
}

// TestExplanation compares what is printed of a few rules, and of all in one
// line each, with what is kept.
func TestExplanation(t *testing.T) {
	golden := func(name, got string) {
		t.Helper()
		path := filepath.Join("testdata", name)
		if *update {
			if err := os.WriteFile(path, []byte(got), 0o666); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
	for _, slug := range []string{"run-too-long", "support-over-stud", "decimals-out-of-range"} {
		golden("explain-"+slug+".txt", explained(t, slug))
	}
	var index strings.Builder
	if err := WriteIndex(&index, Style{}); err != nil {
		t.Fatal(err)
	}
	golden("explain-all.txt", index.String())
}

func explained(t *testing.T, slug string) string {
	t.Helper()
	rule, section, ok := Lookup(slug)
	if !ok {
		t.Fatalf("%s is not in the table", slug)
	}
	var out strings.Builder
	if err := WriteExplanation(&out, rule, section, Style{}); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestExplanationsFitTheScreen(t *testing.T) {
	for _, slug := range Slugs() {
		text := explained(t, slug)
		for line := range strings.SplitSeq(text, "\n") {
			if Columns(line) > 80 || strings.TrimRight(line, " ") != line {
				t.Errorf("%s: a line is too long or ends in blanks: %q", slug, line)
			}
		}
		if strings.Contains(text, "\n\n\n") || !strings.Contains(text, "Stated in: SPEC.md, section ") {
			t.Errorf("%s is explained as\n%s", slug, text)
		}
	}
}

func TestLookup(t *testing.T) {
	if _, _, ok := Lookup("few-studs"); ok {
		t.Error("a slug that is not in the table was found")
	}
	for _, slug := range Slugs() {
		if r, s, ok := Lookup(slug); !ok || r.Slug != slug || s.Number == "" {
			t.Errorf("%s is not found", slug)
		}
	}
}
