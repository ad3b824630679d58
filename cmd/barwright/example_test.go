package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"barwright/cmd/barwright/folder"
	"barwright/compile"
	"barwright/compile/model"
	"barwright/compile/paper"
	"barwright/compile/view"
	"barwright/emit/dxf/dxftest"
	"barwright/emit/ngc/ngctest"
	"barwright/emit/page"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"
)

var examples = []string{"boatshed", "servery"}

func example(name string) string { return filepath.Join(root, "examples", name) }

// compiled compiles an example; it must have neither errors nor warnings.
func compiled(t *testing.T, name string) *model.Model {
	t.Helper()
	src, findings, err := options{}.source(example(name))
	if err != nil {
		t.Fatal(err)
	}
	if len(findings) > 0 {
		t.Fatalf("%s: %v", name, findings)
	}
	m, findings := compile.Compile(src)
	if m == nil {
		t.Fatalf("%s: %v", name, findings)
	}
	return m
}

// built builds an example into a new folder.
func built(t testing.TB, name string) string {
	t.Helper()
	out := filepath.Join(t.TempDir(), "out")
	var stdout, stderr bytes.Buffer
	if status := run([]string{"build", example(name), "-o", out}, streams{out: &stdout, err: &stderr}); status != exitClean {
		t.Fatalf("build %s: exit status %d\n%s", name, status, stderr.String())
	}
	return out
}

// filesIn reads all files below a folder.
func filesIn(t *testing.T, dir string) map[string][]byte {
	t.Helper()
	out := map[string][]byte{}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		rel, _ := filepath.Rel(dir, path)
		out[filepath.ToSlash(rel)], err = os.ReadFile(path)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestExamplesWriteEverything looks for each file that a build promises.
func TestExamplesWriteEverything(t *testing.T) {
	for _, name := range examples {
		t.Run(name, func(t *testing.T) {
			m := compiled(t, name)
			files := filesIn(t, built(t, name))
			want := []string{"index.html", "bill.csv", "bill.json", "cutlist.csv", "labels.html", "site.pdf", "work.txt", "drawings.pdf", "model.json", "manifest.json", "router/setup.txt", "sheets/parts.csv", "sheets/cuts.csv"}
			for _, p := range m.Parts {
				want = append(want, "parts/"+p.Label+".dxf")
				if p.FarBores() {
					want = append(want, "parts/"+p.Label+"-far.dxf")
				}
			}
			for _, p := range m.Programs {
				want = append(want, "router/"+p.Name+".ngc")
			}
			for _, p := range paper.Drawings(m, view.Drawings(m), paper.Formats[m.Build.Paper]) {
				want = append(want, "drawings/"+p.Name+".svg")
			}
			for _, l := range m.Layouts {
				stock, isSheet := strings.CutPrefix(l.Stock, "sheet.")
				for k := 1; isSheet && k <= len(l.Blanks); k++ {
					want = append(want, fmt.Sprintf("sheets/%s-%d.dxf", stock, k), fmt.Sprintf("sheets/%s-%d.svg", stock, k))
				}
			}
			if len(m.Programs) < 4 || len(m.Parts) < 40 {
				t.Errorf("%d programs and %d parts: the example has shrunk", len(m.Programs), len(m.Parts))
			}
			for _, file := range want {
				if len(files[file]) == 0 {
					t.Errorf("%s is missing or empty", file)
				}
			}
			if len(files) != len(want) {
				t.Errorf("%d files are written, %d are promised", len(files), len(want))
			}
		})
	}
}

// TestExamplesRepeat demands the same bytes from a second build, at any
// parallelism.
func TestExamplesRepeat(t *testing.T) {
	for _, name := range examples {
		first := filesIn(t, built(t, name))
		for _, procs := range []int{1, 2, 4} {
			old := runtime.GOMAXPROCS(procs)
			again := filesIn(t, built(t, name))
			runtime.GOMAXPROCS(old)
			if len(again) != len(first) {
				t.Errorf("%s with %d processors: %d files, not %d", name, procs, len(again), len(first))
			}
			for file, text := range first {
				if !bytes.Equal(text, again[file]) {
					t.Errorf("%s with %d processors: %s differs", name, procs, file)
				}
			}
		}
	}
}

// TestExamplesSayNothingOfTheMachine looks for what no output may hold.
func TestExamplesSayNothingOfTheMachine(t *testing.T) {
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	host, _ := os.Hostname()
	for _, name := range examples {
		for file, text := range filesIn(t, built(t, name)) {
			if bytes.Contains(text, []byte(dir)) || host != "" && len(host) > 4 && bytes.Contains(text, []byte(host)) {
				t.Errorf("%s: %s names this machine", name, file)
			}
		}
	}
}

// TestExamplesOutsideDXF has every panel of both examples audited by an
// independent reader, in both versions, and compares areas and boxes with the model.
func TestExamplesOutsideDXF(t *testing.T) {
	for _, name := range examples {
		for _, r2000 := range []bool{false, true} {
			t.Run(fmt.Sprintf("%s r2000 %t", name, r2000), func(t *testing.T) {
				m, out := compiled(t, name), filepath.Join(t.TempDir(), "out")
				m.Table.R2000 = r2000
				written, err := outputs(m, view.Drawings(m), "")
				if err != nil {
					t.Fatal(err)
				}
				if err := folder.Replace(t.Context(), out, written); err != nil {
					t.Fatal(err)
				}
				auditParts(t, m, filepath.Join(out, "parts"))
			})
		}
	}
}

func auditParts(t *testing.T, m *model.Model, dir string) {
	var files, farFiles []string
	var far []*model.Part
	for i := range m.Parts {
		p := &m.Parts[i]
		files = append(files, filepath.Join(dir, p.Label+".dxf"))
		if p.FarBores() {
			far = append(far, p)
			farFiles = append(farFiles, filepath.Join(dir, p.Label+"-far.dxf"))
		}
	}
	version := "AC1009"
	if m.Table.R2000 {
		version = "AC1015"
	}
	for i, result := range dxftest.Inspect(t, append(files, farFiles...)) {
		if i < len(files) {
			result.Check(t, &m.Parts[i])
		} else {
			result.CheckFar(t, far[i-len(files)])
		}
		if result.Version != version {
			t.Errorf("%s is %s, not %s", result.File, result.Version, version)
		}
	}
}

// TestExamplesOutsidePrograms has every router program of both examples
// simulated by an independent reader: no gouge, no remainder.
func TestExamplesOutsidePrograms(t *testing.T) {
	for _, name := range examples {
		t.Run(name, func(t *testing.T) {
			m, out := compiled(t, name), built(t, name)
			for i := range m.Programs {
				text, err := os.ReadFile(filepath.Join(out, "router", m.Programs[i].Name+".ngc"))
				if err != nil {
					t.Fatal(err)
				}
				ngctest.Inspect(t, text, &m.Programs[i])
				ngctest.Interpret(t, text, &m.Programs[i])
			}
		})
	}
}

// TestReadmePicture keeps the README's picture what the example draws.
func TestReadmePicture(t *testing.T) {
	m := compiled(t, "boatshed")
	var picture bytes.Buffer
	for i := range m.Views {
		if m.Views[i].Name == "plan" {
			if err := page.WriteDrawing(&picture, &m.Views[i]); err != nil {
				t.Fatal(err)
			}
		}
	}
	file := filepath.Join(example("boatshed"), "picture.svg")
	if *update {
		if err := os.WriteFile(file, picture.Bytes(), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if have, _ := os.ReadFile(file); picture.Len() == 0 || !bytes.Equal(have, picture.Bytes()) {
		t.Errorf("%s is not what the example draws; go test ./cmd/barwright -update rewrites it", file)
	}
}

// TestReadmeAnswers keeps the README's answers to mistakes what is answered.
func TestReadmeAnswers(t *testing.T) {
	readme, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	for _, mistake := range []struct{ right, wrong, begins, ends string }{
		{"width    = 42", "width    = 82", "error: run-too-long\n", "explain run-too-long\n"},
		{"  filler \"wall\" { width = 1.5 }", "  #", "warning: door-meets\n", "explain door-meets\n"},
	} {
		dir := t.TempDir()
		for name, text := range filesIn(t, example("boatshed")) {
			wrong := strings.Replace(string(text), mistake.right, mistake.wrong, 1)
			if err := os.WriteFile(filepath.Join(dir, name), []byte(wrong), 0o666); err != nil {
				t.Fatal(err)
			}
		}
		var stdout, stderr bytes.Buffer
		run([]string{"check", dir}, streams{out: &stdout, err: &stderr})
		_, answer, found := strings.Cut(stderr.String(), mistake.begins)
		answer, _, ends := strings.Cut(answer, mistake.ends)
		if !found || !ends {
			t.Fatalf("no answer %s in:\n%s", mistake.begins, stderr.String())
		}
		if want := indented(mistake.begins + answer + mistake.ends); !strings.Contains(string(readme), want) {
			t.Errorf("the README lacks this answer:\n%s", want)
		}
	}
}

// TestReadmeRevision keeps the README's comparison with a revision what is answered.
func TestReadmeRevision(t *testing.T) {
	readme, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	dir := committed(t, "boatshed")
	bar := filepath.Join("examples", "boatshed", "bar.hcl")
	text, err := os.ReadFile(filepath.Join(dir, bar))
	if err != nil {
		t.Fatal(err)
	}
	higher := strings.Replace(string(text), `outlet "kettle" { at = [14.5, 17] }`, `outlet "kettle" { at = [14.5, 19] }`, 1)
	if err := os.WriteFile(filepath.Join(dir, bar), []byte(higher), 0o666); err != nil {
		t.Fatal(err)
	}
	t.Chdir(dir)
	var stdout, stderr bytes.Buffer
	if status := run([]string{"diff", "HEAD", "examples/boatshed"}, streams{out: &stdout, err: &stderr}); status != exitClean {
		t.Fatalf("exit status %d\n%s", status, stderr.String())
	}
	if want := indented(stdout.String()); stdout.Len() == 0 || !strings.Contains(string(readme), want) {
		t.Errorf("the README lacks this answer:\n%s", want)
	}
}

// TestRevisionsOfExamples holds what a person reads of real edits.
func TestRevisionsOfExamples(t *testing.T) {
	var got txtar.Archive
	for _, edit := range [...]struct{ of, set string }{
		{"boatshed", "bar_top=43"}, {"boatshed", "counter_top=35"}, {"servery", "bar_top=1130"},
	} {
		var stdout, stderr bytes.Buffer
		args := []string{"diff", "--set-new", edit.set, example(edit.of), example(edit.of)}
		if status := run(args, streams{out: &stdout, err: &stderr}); status != exitClean {
			t.Fatalf("exit status %d\n%s", status, stderr.String())
		}
		got.Files = append(got.Files, txtar.File{Name: edit.of + " " + edit.set, Data: stdout.Bytes()})
	}
	path := filepath.Join("testdata", "revisions.txtar")
	if *update {
		if err := os.WriteFile(path, txtar.Format(&got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(txtar.Format(&got))); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
}

// TestDiffColour demands that colour is for a person at a terminal alone: results go to
// standard output, whatever standard error is.
func TestDiffColour(t *testing.T) {
	for _, std := range []streams{{}, {color: true}, {outColor: true}} {
		var stdout, stderr bytes.Buffer
		std.out, std.err = &stdout, &stderr
		run([]string{"diff", "--set-new", "bar_top=43", example("boatshed"), example("boatshed")}, std)
		if colored := strings.Contains(stdout.String(), "\x1b["); stdout.Len() == 0 || colored != std.outColor {
			t.Errorf("with colour %v of standard output it is %v: %s", std.outColor, colored, stderr.String())
		}
	}
}

// committed makes a repository with an example in its first commit.
func committed(t *testing.T, name string) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.CopyFS(filepath.Join(dir, "examples", name), os.DirFS(example(name))); err != nil {
		t.Fatal(err)
	}
	inGit(t, dir, []string{"init", "-q"}, []string{"add", "."}, []string{"commit", "-qm", "As planned"})
	return dir
}

// indented is a text as the README shows it.
func indented(text string) string {
	var out strings.Builder
	for line := range strings.Lines(text) {
		if line != "\n" {
			line = "    " + line
		}
		out.WriteString(line)
	}
	return out.String()
}

// TestReadmeCommands keeps the two commands of the README in it.
func TestReadmeCommands(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	for _, command := range []string{"go run ./cmd/barwright build examples/boatshed -o out", "go test ./..."} {
		if !strings.Contains(string(text), command) {
			t.Errorf("the README lacks: %s", command)
		}
	}
}
