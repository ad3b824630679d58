package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"barwright/compile"
	"barwright/compile/model"
	"barwright/compile/paper"
	"barwright/compile/view"
	"barwright/emit/findings"
	"barwright/lang"
	"barwright/lang/finding"
)

// findingForms are the ways to print findings.
var findingForms = []string{"text", "json", "sarif"}

func findingFlags(f *pflag.FlagSet, o *options) {
	f.StringVar(&o.format, "format", "text", "print findings as `text|json|sarif`")
}

// result is one build as far as it came.
type result struct {
	path     string
	src      *lang.Source
	model    *model.Model   // nil where findings stop the build
	findings finding.List   // sorted
	err      error          // view: what kept the text from being read or compiled
	pictures *view.Pictures // view: what draws those of a large build; nil where they are drawn
	drawings []view.Titled  // build: what drew the model's views
	out      string         // the folder that was written; empty where none was
	written  []string       // the files in it
}

// report prints what becomes of the builds: as text while they are compiled,
// or for programs, as one document at the end.
type report struct {
	options
	std    streams
	builds []findings.Build // for programs
	status int
}

// jobCompiler makes a model, and where they are asked for its drawings, as compile.Job.Compile does.
type jobCompiler func(compile.Job, *lang.Source) (*model.Model, []view.Titled, finding.List)

// each compiles the builds, several at once, and hands on those without errors; one
// that fails does not stop the others. What is printed is in the order of the arguments,
// and the same as if they were compiled one by one. The worst exit status counts.
func each(o options, std streams, compiled jobCompiler, use func(*result) error) int {
	switch {
	case len(o.args) == 0:
		return misuse(std, "name a description: a file, or a folder of *.hcl files")
	case !slices.Contains(findingForms, o.format):
		return misuse(std, fmt.Sprintf("--format is text, json or sarif, not %q", o.format))
	case o.paper != "" && !slices.Contains(paper.Names[:], o.paper):
		return misuse(std, fmt.Sprintf("--paper is %s, not %q", strings.Join(paper.Names[:], " or "), o.paper))
	case o.layout != "" && !slices.Contains(layouts, o.layout):
		return misuse(std, o.noLayout())
	}
	if text := o.unusable(); text != "" {
		return misuse(std, text)
	}
	r := report{options: o, std: std}
	std.line.Expect(len(o.args))
	inOrder(len(o.args), func(i int) *told { return o.one(o.args[i], std, compiled, use) }, r.tell)
	if err := r.end(); err != nil {
		return failed(std, err)
	}
	return r.status
}

func (o options) forPeople() bool { return o.format == "text" }

// told is what comes of one build.
type told struct {
	out, err bytes.Buffer    // what is printed
	build    *findings.Build // for programs; nil where the files could not be read
	status   int
}

// tell prints what came of the i-th build.
func (r *report) tell(i int, t *told) {
	if i > 0 && r.forPeople() {
		io.WriteString(r.std.err, "\n")
	}
	r.status = max(r.status, t.status)
	if _, err := t.err.WriteTo(r.std.err); err != nil {
		r.status = max(r.status, failed(r.std, err))
	}
	if _, err := t.out.WriteTo(r.std.out); err != nil {
		r.status = max(r.status, failed(r.std, err))
	}
	if t.build != nil {
		r.builds = append(r.builds, *t.build)
	}
}

// one compiles one build.
func (o options) one(path string, std streams, compiled jobCompiler, use func(*result) error) *told {
	std.line.Say(path, "reading")
	defer std.line.Done(path)
	t := new(told)
	std.out, std.err = &t.out, &t.err
	job := compile.Job{Effort: o.effort(), Tell: func(stage string) { std.line.Say(path, stage) }}
	var drawings []view.Titled
	b, err := o.solve(path, func(src *lang.Source) (m *model.Model, found finding.List) {
		m, drawings, found = compiled(job, src)
		return m, found
	})
	b.drawings = drawings
	if err != nil {
		t.status = failed(std, err)
		return t
	}
	if o.forPeople() {
		err = b.answer(std)
	}
	if err == nil && b.model != nil {
		err = use(&b)
	}
	switch {
	case err != nil:
		t.status = failed(std, err)
	case b.model == nil:
		t.status = exitFindings
		if o.forPeople() {
			b.stopped(std)
		}
	case o.forPeople():
		fmt.Fprintln(std.out, b.line())
	}
	if !o.forPeople() {
		build := o.forPrograms(&b)
		t.build = &build
	}
	return t
}

// stopped says that errors stopped a build.
func (b *result) stopped(std streams) {
	fmt.Fprintf(std.err, "\n%s: %s. Nothing was written.\n", oneLine(b.path), finding.Counted(b.findings.Count(finding.Error), "error"))
	if others := beside(b.path); others > 0 {
		fmt.Fprintf(std.err, "Beside it lie %s; name the folder to read them too.\n", finding.Counted(others, "*.hcl file"))
	}
}

// mostAnswers is how many findings a person is shown at once.
const mostAnswers = 100

// answer prints the findings of a build for a person.
func (b *result) answer(std streams) error {
	shown := b.findings[:min(len(b.findings), mostAnswers)]
	err := finding.Render(std.err, shown, b.src.Files, std.style())
	if more := len(b.findings) - len(shown); more > 0 {
		fmt.Fprintf(std.err, "\nAnd %s more; barwright check --format json lists them all.\n", finding.Counted(more, "finding"))
	}
	return err
}

// beside counts the other descriptions in the folder of a file; 0 where the
// path is a folder.
func beside(path string) int {
	info, err := os.Stat(path)
	if err != nil || info.IsDir() {
		return 0
	}
	return max(len(hclFiles(filepath.Dir(path)))-1, 0)
}

// line is a build without errors in one line.
func (b *result) line() string {
	out := b.path + ": " + tally(b.model)
	if b.out != "" {
		out += fmt.Sprintf("; %d files in %s", len(b.written), b.out)
	}
	return oneLine(out)
}

// oneLine is a text that may hold the name of any file, for a line of a terminal.
func oneLine(text string) string { return strings.ReplaceAll(finding.Clean(text), "\n", " ") }

// end prints the document for programs.
func (r *report) end() error {
	if r.forPeople() {
		return nil
	}
	if r.format == "sarif" {
		return findings.SARIF(r.std.out, r.builds, r.status < exitFiles)
	}
	return findings.JSON(r.std.out, r.builds)
}

func (o options) forPrograms(b *result) findings.Build {
	out := findings.Build{
		Path: filepath.ToSlash(b.path), Findings: b.findings, Solved: b.model != nil,
		Out: filepath.ToSlash(b.out), Written: b.written,
	}
	if b.model != nil {
		out.Parts, out.Programs = len(b.model.Parts), len(b.model.Programs)+len(b.model.Routings)
	}
	dir := folderOf(b.path)
	for _, f := range b.src.Files {
		out.Files = append(out.Files, findings.File{Name: f.Name, Path: o.pathOf(dir, f.Name), Text: f.Text})
	}
	return out
}

// pathOf is where a file of a build lies, from where the command runs; empty
// for the words of the command line, which lie nowhere.
func (o options) pathOf(dir, name string) string {
	if name == setFlag {
		return ""
	}
	if base, ok := strings.CutPrefix(name, setFilePrefix); ok {
		for _, file := range o.setFiles {
			if filepath.Base(file) == base {
				return filepath.ToSlash(file)
			}
		}
	}
	return path.Join(filepath.ToSlash(dir), name)
}
