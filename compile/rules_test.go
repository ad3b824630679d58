package compile_test

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"barwright/compile"
	"barwright/compile/edittest"
	"barwright/compile/rule/all"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

const rulesDir = "../testdata/rules"

// ruleCase is an archive in testdata/rules/SLUG. Its comment begins with what it
// is: "passes: …", "fails: …", or just on the limit "within: …" and "over: …"; the
// working of its figures follows. It changes one of the good descriptions:
//
//	base    a folder of testdata/rules/base
//	change  the edits, see edittest.Edited
//	want    what is found beyond what the base has for itself; nothing where it is missing
//	mended  further edits, that follow the mend: the slug is gone, and nothing new is warned of
type ruleCase struct {
	specCase
	slug, kind string
}

var ruleHead = regexp.MustCompile(`^(passes|fails|within|over): .+\n`)

func ruleCases(t *testing.T) []ruleCase {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(rulesDir, "*", "*.txtar"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("no cases in %s: %v", rulesDir, err)
	}
	var out []ruleCase
	for _, path := range paths {
		a, err := txtar.ParseFile(path)
		if err != nil {
			t.Fatal(err)
		}
		m := ruleHead.FindSubmatch(a.Comment)
		if m == nil {
			t.Fatalf("%s does not begin with passes, fails, within or over", path)
		}
		out = append(out, ruleCase{specCase{path: path, archive: a}, filepath.Base(filepath.Dir(path)), string(m[1])})
	}
	return out
}

// baseFiles reads the description that a case changes.
func baseFiles(t *testing.T, name string) source.Files {
	t.Helper()
	folder := filepath.Join(rulesDir, "base", name)
	files := edittest.Folder(t, folder)
	if len(files) == 0 {
		t.Fatalf("no description in %s", folder)
	}
	return files
}

// judged reads, solves and judges files.
func judged(files source.Files) (*lang.Source, finding.List) {
	src, findings := lang.Read(files)
	if !src.Lost {
		_, more := compile.Check(src)
		findings = append(findings, more...)
	}
	findings.Sort()
	return src, findings
}

// soundBase remembers what is found in each base; lookup only.
var soundBase = map[string]finding.List{}

// brought are the findings that a change brought: those that the base has not.
func brought(t *testing.T, base string, after finding.List) finding.List {
	t.Helper()
	before, known := soundBase[base]
	if !known {
		_, before = judged(baseFiles(t, base))
		soundBase[base] = before
	}
	return slices.DeleteFunc(slices.Clone(after), func(f finding.Finding) bool {
		return slices.ContainsFunc(before, func(g finding.Finding) bool { return f.Slug == g.Slug && f.Text == g.Text })
	})
}

// TestRuleCases holds each rule to its cases.
func TestRuleCases(t *testing.T) {
	for _, c := range ruleCases(t) {
		t.Run(c.slug+"/"+c.name(), func(t *testing.T) {
			base := strings.TrimSpace(strings.Join(c.lines("base"), ""))
			change, _ := c.file("change")
			files := edittest.Edited(t, baseFiles(t, base), change)
			src, findings := judged(files)
			checkRanges(t, findings, files)
			findings = brought(t, base, findings)
			has := slices.ContainsFunc(findings, func(f finding.Finding) bool { return f.Slug == c.slug })
			if should := c.kind == "fails" || c.kind == "over"; has != should {
				t.Errorf("it %s, but the finding is there: %v", c.kind, has)
			}
			have := solved{src: src, findings: findings}.text(t)
			want, _ := c.file("want")
			if *update && (want != "" || have != "") {
				c.write(t, "want", have)
				want = have
			}
			if diff := cmp.Diff(want, have); diff != "" {
				t.Errorf("the findings are not those of want (-want +got):\n%s", diff)
			}
			if mend, ok := c.file("mended"); ok {
				src, after := judged(edittest.Edited(t, files, mend))
				after = brought(t, base, after)
				spoilt := func(f finding.Finding) bool { return f.Slug == c.slug || graver(f, findings) }
				if slices.ContainsFunc(after, spoilt) {
					t.Errorf("after following the mend:\n%s", solved{src: src, findings: after}.text(t))
				}
			}
		})
	}
}

// graver reports whether a finding is an error, or a warning of a kind that there was none of
// before, though nothing kept the rules from looking.
func graver(f finding.Finding, before finding.List) bool {
	judged := f.Severity == finding.Warning && !before.HasErrors()
	return f.Severity == finding.Error || judged && !slices.ContainsFunc(before, func(g finding.Finding) bool { return f.Slug == g.Slug && g.Severity >= f.Severity })
}

// TestRulesHaveCases demands of each rule one case that passes, one that fails and
// both sides of its limit; of those in withoutLimit the first two.
func TestRulesHaveCases(t *testing.T) {
	kinds := map[string][]string{}
	for _, c := range ruleCases(t) {
		kinds[c.slug] = append(kinds[c.slug], c.kind)
	}
	without := strings.Fields(withoutLimit)
	for _, r := range all.Rules() {
		if _, section, ok := finding.Lookup(r.Slug); !ok || !strings.HasPrefix(section.Number, "11.") {
			t.Errorf("%s is not in the table of findings, or not in chapter 11", r.Slug)
		}
		kinds[r.Slug] = append(kinds[r.Slug], "")
	}
	for slug, have := range kinds {
		need := []string{"passes", "fails", "within", "over"}
		if slices.Contains(without, slug) {
			need = need[:2]
		}
		for _, kind := range need {
			if !slices.Contains(have, kind) {
				t.Errorf("%s has no case that is %q", slug, kind)
			}
		}
		if r, _, _ := finding.Lookup(slug); r.Source == "" {
			t.Errorf("%s does not say its source", slug)
		}
	}
}

// withoutLimit are the rules that judge no figure: there is nothing to be just
// within. One line for each section of SPEC.md.
const withoutLimit = `
studs-unknown box-held-by-nothing free-end-loose
wide-head-shows wide-head-in-the-way joint-screw-shows
wiring-not-judged ground-fault-area box-volume-unknown plug-out-of-reach cable-near-water
seam-shows hinged-unused
water-not-judged sink-without-vent drain-through-boards sink-without-water sink-without-drain drain-into-water
floor-screws-missing stone-screwed
buried-behind-boards
`

// TestExamplesAreJudgedSound has the shipped descriptions raise nothing but what
// they mean to show.
func TestExamplesAreJudgedSound(t *testing.T) {
	means := map[string][]string{ // lookup only
		"../examples/boatshed": {"filler-bevelled", "studs-moved"},
		"../examples/servery":  {"corner-leans-in", "blocks-to-pack"},
	}
	seen := 0
	for _, pattern := range []string{"../examples/*", "../examples/steps/*", "../cmd/barwright/starter/*"} {
		folders, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, folder := range folders {
			files := edittest.Folder(t, folder)
			if len(files) == 0 {
				continue
			}
			seen++
			var have []string
			_, findings := judged(files)
			for _, f := range findings {
				have = append(have, f.Slug)
			}
			if diff := cmp.Diff(means[folder], have); diff != "" {
				t.Errorf("%s (-want +got):\n%s", folder, diff)
			}
		}
	}
	if seen < 10 {
		t.Errorf("only %d descriptions were seen", seen)
	}
}

// TestPhrases holds the table of what is asked to the rules that there are: every
// slug that it names has cases, and every rule is named.
func TestPhrases(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(rulesDir, "phrases.txt"))
	if err != nil {
		t.Fatal(err)
	}
	cases := map[string]bool{}
	for _, c := range ruleCases(t) {
		cases[c.slug] = true
	}
	named := map[string]bool{}
	for line := range strings.Lines(string(text)) {
		phrase, answer, ok := strings.Cut(strings.TrimSpace(line), ": ")
		if !ok || strings.HasPrefix(line, "#") {
			continue
		}
		slugs, what, counted := strings.Cut(answer, "counted: ")
		if strings.TrimSpace(slugs) == "" && (!counted || what == "") {
			t.Errorf("%s has no rule", phrase)
		}
		for _, slug := range strings.Fields(slugs) {
			named[slug] = true
			if !cases[slug] {
				t.Errorf("%s: %s has no cases", phrase, slug)
			}
		}
	}
	for _, r := range all.Rules() {
		if !named[r.Slug] && r.Slug != "hinged-unused" { // the language's own
			t.Errorf("no phrase asks for %s", r.Slug)
		}
	}
}
