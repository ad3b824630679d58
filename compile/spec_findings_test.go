package compile_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"barwright/compile"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// TestFindingsAreInTheTable compares the table of all findings, from which the
// list in SPEC.md and what explain prints are made, with the slugs in the
// source, both ways, severities included.
func TestFindingsAreInTheTable(t *testing.T) {
	inSource := slugsInSource(t)
	if len(inSource) < 30 {
		t.Fatalf("only %d slugs were found in the source", len(inSource))
	}
	for slug, severities := range inSource {
		rule, _, ok := finding.Lookup(slug)
		switch have := strings.Join(severities, " or "); {
		case !ok:
			t.Errorf("a finding says %s, which is not in the table in lang/finding", slug)
		case have != rule.Severities():
			t.Errorf("severity of %s: the table says %q, the source %q", slug, rule.Severities(), have)
		}
	}
	for _, slug := range finding.Slugs() {
		if inSource[slug] == nil {
			t.Errorf("the table lists %s, which no source file says", slug)
		}
	}
}

// TestExamplesOfFindings puts the example of each explanation beside the bar
// of SPEC.md, or into its empty room where the example has runs of its own: the
// mistake is answered with its slug, and once mended nothing stops the build.
func TestExamplesOfFindings(t *testing.T) {
	s := readSpec(t)
	with := func(text string) finding.List {
		beside := s.named(t, "bar")
		if strings.HasPrefix(text, "run ") {
			beside = s.named(t, "room")
		}
		src, findings := lang.Read(append(beside, source.File{Name: "example.hcl", Text: []byte(text + "\n")}))
		if !findings.HasErrors() {
			_, findings = compile.Compile(src)
		}
		return findings
	}
	says := func(slug string) func(finding.Finding) bool {
		return func(f finding.Finding) bool { return f.Slug == slug && f.At.File == "example.hcl" }
	}
	shown := 0
	for _, section := range finding.Sections() {
		for _, r := range section.Rules {
			if r.Wrong == "" {
				continue
			}
			shown++
			if wrong := with(r.Wrong); !slices.ContainsFunc(wrong, says(r.Slug)) {
				t.Errorf("the example of %s is answered\n%v", r.Slug, wrong)
			}
			if right := with(r.Right); right.HasErrors() || slices.ContainsFunc(right, says(r.Slug)) {
				t.Errorf("the mended example of %s is answered\n%v", r.Slug, right)
			}
		}
	}
	if shown < 30 {
		t.Errorf("only %d examples were seen", shown)
	}
}

// maker is a function that makes a finding of the slug in one of its arguments.
type maker struct {
	argument int
	severity string
}

// slugsInSource gathers the slugs of all findings and refusals, each with its
// severities: the literals that are handed to Errorf, Warnf and Notef of a
// finding list, to functions that hand them on, or to a Refusal as its Kind.
func slugsInSource(t *testing.T) map[string][]string {
	t.Helper()
	out := map[string][]string{}
	for _, files := range packages(t) {
		makers := map[string]maker{"Errorf": {0, "error"}, "Warnf": {0, "warning"}, "Notef": {0, "note"}}
		for known := 0; known < len(makers); {
			known = len(makers)
			for _, f := range files {
				s := &search{makers: makers, slugs: out, t: t}
				ast.Walk(s, f)
			}
		}
	}
	return out
}

// packages parses the files of each package below that is not a test's.
func packages(t *testing.T) [][]*ast.File {
	t.Helper()
	set := token.NewFileSet()
	byFolder := map[string][]*ast.File{}
	for _, root := range []string{"../lang", "../compile", "../emit", "../cmd"} {
		err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			folder := filepath.Dir(path)
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || strings.HasSuffix(folder, "test") {
				return err
			}
			f, err := parser.ParseFile(set, path, nil, parser.SkipObjectResolution)
			byFolder[folder] = append(byFolder[folder], f)
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	var out [][]*ast.File
	for _, files := range byFolder {
		out = append(out, files)
	}
	return out
}

// search walks through the source; functions are those that it stands in.
type search struct {
	makers    map[string]maker
	slugs     map[string][]string
	functions []function
	t         *testing.T
}

type function struct {
	name   string
	params []string
}

func (s *search) Visit(n ast.Node) ast.Visitor {
	switch n := n.(type) {
	case *ast.FuncDecl:
		return s.in(n.Name.Name, n.Type)
	case *ast.AssignStmt:
		for i, right := range n.Rhs {
			name, isName := n.Lhs[min(i, len(n.Lhs)-1)].(*ast.Ident)
			if literal, ok := right.(*ast.FuncLit); ok && isName {
				ast.Walk(s.in(name.Name, literal.Type), literal.Body)
				return nil
			}
		}
	case *ast.CallExpr:
		if m, ok := s.makers[calledName(n)]; ok && m.argument < len(n.Args) {
			s.said(n.Args[m.argument], m.severity)
		}
	case *ast.CompositeLit:
		if name, ok := n.Type.(*ast.Ident); ok && name.Name == "Refusal" {
			for _, e := range n.Elts {
				if field, ok := e.(*ast.KeyValueExpr); ok && field.Key.(*ast.Ident).Name == "Kind" {
					s.said(field.Value, "error")
				}
			}
		}
	}
	return s
}

func (s *search) in(name string, typ *ast.FuncType) *search {
	f := function{name: name}
	for _, field := range typ.Params.List {
		for _, n := range field.Names {
			f.params = append(f.params, n.Name)
		}
	}
	inner := *s
	inner.functions = append(slices.Clone(s.functions), f)
	return &inner
}

// calledName is the name of the function or method that is called; formatting
// errors is no finding.
func calledName(call *ast.CallExpr) string {
	switch f := call.Fun.(type) {
	case *ast.Ident:
		return f.Name
	case *ast.SelectorExpr:
		if of, ok := f.X.(*ast.Ident); ok && of.Name == "fmt" {
			return ""
		}
		return f.Sel.Name
	}
	return ""
}

// said notes a slug that is written out. One that a function was handed makes
// that function one to look at.
func (s *search) said(slug ast.Expr, severity string) {
	switch slug := slug.(type) {
	case *ast.BasicLit:
		text, err := strconv.Unquote(slug.Value)
		if err != nil {
			s.t.Fatal(err)
		}
		if !slices.Contains(s.slugs[text], severity) {
			s.slugs[text] = append(s.slugs[text], severity)
			gravest := []string{"error", "warning", "note"}
			slices.SortFunc(s.slugs[text], func(a, b string) int { return slices.Index(gravest, a) - slices.Index(gravest, b) })
		}
		return
	case *ast.Ident:
		for _, f := range slices.Backward(s.functions) {
			if at := slices.Index(f.params, slug.Name); at >= 0 {
				s.makers[f.name] = maker{at, severity}
				return
			}
		}
	case *ast.SelectorExpr:
		if slug.Sel.Name == "Kind" {
			return // of a Refusal, which is looked at where it is made
		}
	}
	s.t.Errorf("a slug is neither written out nor handed on: %v", slug)
}
