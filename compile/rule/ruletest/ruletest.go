// Package ruletest solves builds for the tests of rules.
package ruletest

import (
	"os"
	"path/filepath"
	"strings"

	"pgregory.net/rapid"

	"barwright/compile/rule"
	"barwright/compile/solve"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// Example reads a description that cases of rules change, by its name, with some of
// its text replaced. It is called from a folder beside this one.
func Example(t rapid.TB, name string, replace ...string) source.Files {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join("../../../testdata/rules/base", name, "*.hcl"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("no example %s: %v", name, err)
	}
	var files source.Files
	for _, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, source.File{Name: filepath.Base(path), Text: []byte(strings.NewReplacer(replace...).Replace(string(text)))})
	}
	files.Sort()
	return files
}

// Bar is a description in one file.
func Bar(text string) source.Files {
	return source.Files{{Name: "bar.hcl", Text: []byte(text)}}
}

// Build solves a description, in which no error may be.
func Build(t rapid.TB, files source.Files) *rule.Build {
	t.Helper()
	src, findings := lang.Read(files)
	if findings.HasErrors() {
		t.Fatal(findings)
	}
	solution := solve.Solve(src)
	if solution.Model == nil || solution.Findings.HasErrors() {
		t.Fatal(solution.Findings)
	}
	return rule.NewBuild(solution.Values, solution.Model, &finding.List{})
}

// Judged is what rules find in a description, in which no error may be.
func Judged(t rapid.TB, rules []rule.Rule, files source.Files) finding.List {
	t.Helper()
	b := Build(t, files)
	for _, r := range rules {
		r.Look(b)
	}
	return *b.Findings
}
