package main

import (
	"bytes"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

const root = "../.."

// goFile is one parsed file of the tree.
type goFile struct {
	path string // from the root, with forward slashes
	text []byte
	ast  *ast.File
	set  *token.FileSet
}

func (f goFile) isTest() bool {
	// A package NAMEtest serves tests only, and so does manybuild.
	dir := filepath.ToSlash(filepath.Dir(f.path))
	return strings.HasSuffix(f.path, "_test.go") || strings.HasSuffix(dir, "test") || dir == "compile/manybuild"
}

func goFiles(t *testing.T) []goFile {
	t.Helper()
	var out []goFile
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") {
			return err
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		set := token.NewFileSet()
		parsed, err := parser.ParseFile(set, path, text, parser.ParseComments)
		rel, _ := filepath.Rel(root, path)
		out = append(out, goFile{filepath.ToSlash(rel), text, parsed, set})
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(out) < 50 {
		t.Fatalf("only %d files found: the walk is broken", len(out))
	}
	return out
}

// TestImportDirection keeps the one way through the house: cmd, emit, compile,
// lang. Do not edit the policy to make a build pass.
func TestImportDirection(t *testing.T) {
	layers := map[string]int{"lang": 0, "compile": 1, "emit": 2, "cmd": 3}
	// What an emitter may know: the solved model, never the solver or the
	// syntax.
	emitMay := map[string]bool{
		"compile/model": true, "compile/geom": true,
		"lang/length": true, "lang/source": true, "lang/finding": true, "lang/latin": true,
	}
	for _, f := range goFiles(t) {
		if f.isTest() {
			continue
		}
		layer, _, _ := strings.Cut(f.path, "/")
		for _, spec := range f.ast.Imports {
			path, _ := strconv.Unquote(spec.Path.Value)
			ours, ok := strings.CutPrefix(path, "barwright/")
			switch {
			case ok:
				to, _, _ := strings.Cut(ours, "/")
				if layers[to] > layers[layer] {
					t.Errorf("%s imports %s: against the one way through", f.path, path)
				}
				if layer == "emit" && to != "emit" && !emitMay[ours] {
					t.Errorf("%s imports %s: an emitter only formats", f.path, path)
				}
			case layer != "lang" && (strings.HasPrefix(path, "github.com/hashicorp/hcl") || strings.HasPrefix(path, "github.com/zclconf")):
				t.Errorf("%s imports %s: syntax stays in lang", f.path, path)
			}
		}
	}
}

// TestForbidden keeps out, but of programs that measure and of a server's patience, what would make output depend on anything but the
// description.
func TestForbidden(t *testing.T) {
	calls := map[string]string{
		"time.Now": "output is no function of the clock", "os.Getenv": "main alone reads the environment",
		"rand.": "output is no function of chance", "os.Hostname": "no host names",
	}
	for _, f := range goFiles(t) {
		if f.isTest() || f.path == "cmd/barwright/main.go" || f.path == "cmd/barwright/loopback/loopback.go" || strings.HasSuffix(f.path, "/bench/main.go") {
			continue
		}
		for call, why := range calls {
			if bytes.Contains(f.text, []byte(call)) {
				t.Errorf("%s uses %s: %s", f.path, call, why)
			}
		}
		for _, d := range f.ast.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Recv == nil && fn.Name.Name == "init" {
				t.Errorf("%s has an init function", f.path)
			}
		}
	}
}

// TestSmallFiles keeps files such that a reader can hold them in the head.
func TestSmallFiles(t *testing.T) {
	for _, f := range goFiles(t) {
		if lines := bytes.Count(f.text, []byte("\n")); lines > 400 && !f.isTest() {
			t.Errorf("%s has %d lines; split it", f.path, lines)
		}
	}
}

// TestPackageComments demands that each package says what it takes, gives and
// does not do.
func TestPackageComments(t *testing.T) {
	said := map[string]bool{}
	for _, f := range goFiles(t) {
		dir := filepath.ToSlash(filepath.Dir(f.path))
		said[dir] = said[dir] || f.ast.Doc != nil
	}
	for dir, ok := range said {
		if !ok {
			t.Errorf("package %s has no comment", dir)
		}
	}
}

// TestDevelopersTellTheTree holds DEVELOPERS.md to the tree: each package stands there by its last name, and each
// path and file that it names is there, but for what lies beside the project.
func TestDevelopersTellTheTree(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(root, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	words := regexp.MustCompile("`([^`\n]+)`").FindAllStringSubmatch(string(text), -1)
	packages, files := map[string]bool{}, map[string]bool{} // by path and by name; lookup only
	for _, f := range goFiles(t) {
		packages[path.Dir(f.path)], files[path.Base(f.path)] = true, true
	}
	told := map[string]bool{} // last names; lookup only
	for _, w := range words {
		told[path.Base(w[1])] = true
		name, _, _ := strings.Cut(w[1], " ")
		switch {
		case strings.ContainsAny(w[1], "^{(:") || strings.HasPrefix(name, "shared/") || strings.Contains(w[1], "SLUG"):
		case strings.HasSuffix(name, ".go") && !strings.Contains(name, "/"):
			if matches, _ := filepath.Glob(filepath.Join(root, "lang/finding", name)); !files[name] && len(matches) == 0 {
				t.Errorf("DEVELOPERS.md names %s, which is not there", name)
			}
		case strings.Contains(name, "/"):
			beside, _ := filepath.Glob(filepath.Join(root, "emit", name))
			if matches, _ := filepath.Glob(filepath.Join(root, name)); len(matches)+len(beside) == 0 {
				t.Errorf("DEVELOPERS.md names %s, which is not there", name)
			}
		}
	}
	for name := range packages {
		if !told[path.Base(name)] {
			t.Errorf("DEVELOPERS.md does not tell of package %s", name)
		}
	}
}

// TestNothingOfTheWorkplace keeps paths of a machine out of the tree.
func TestNothingOfTheWorkplace(t *testing.T) {
	for _, f := range goFiles(t) {
		for _, word := range []string{"/ho" + "me/", "/wo" + "rk/", "/ro" + "ot/"} {
			if bytes.Contains(f.text, []byte(word)) {
				t.Errorf("%s contains %q", f.path, word)
			}
		}
	}
}
