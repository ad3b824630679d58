package main

import (
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"barwright/compile/model"
	"barwright/compile/paper"
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
	model    *model.Model // nil where findings stop the build
	findings finding.List // sorted
	err      error        // view: what kept the text from being read or compiled
	out      string       // the folder that was written; empty where none was
	written  []string     // the files in it
}

// report prints what becomes of the builds: as text while they are compiled,
// or for programs, as one document at the end.
type report struct {
	options
	std     streams
	results []result
	status  int
}

// each compiles the builds one by one and hands on those without errors; one
// that fails does not stop the others. The worst exit status counts.
func each(o options, std streams, compiled compiler, use func(*result) error) int {
	switch {
	case len(o.args) == 0:
		return misuse(std, "name a description: a file, or a folder of *.hcl files")
	case !slices.Contains(findingForms, o.format):
		return misuse(std, fmt.Sprintf("--format is text, json or sarif, not %q", o.format))
	case o.paper != "" && !slices.Contains(paper.Names[:], o.paper):
		return misuse(std, fmt.Sprintf("--paper is %s, not %q", strings.Join(paper.Names[:], " or "), o.paper))
	case o.layout != "" && !slices.Contains(layouts, o.layout):
		return misuse(std, fmt.Sprintf("--layout is quick or long, not %q", o.layout))
	}
	if text := o.unusable(); text != "" {
		return misuse(std, text)
	}
	r := report{options: o, std: std}
	for i, path := range o.args {
		if i > 0 && r.forPeople() {
			io.WriteString(std.err, "\n")
		}
		r.one(path, compiled, use)
	}
	if err := r.end(); err != nil {
		return failed(std, err)
	}
	return r.status
}

func (r *report) forPeople() bool { return r.format == "text" }

func (r *report) one(path string, compiled compiler, use func(*result) error) {
	b, err := r.solve(path, compiled)
	if err != nil {
		r.status = max(r.status, failed(r.std, err))
		return
	}
	if r.forPeople() {
		err = b.answer(r.std)
	}
	if err == nil && b.model != nil {
		err = use(&b)
	}
	switch {
	case err != nil:
		r.status = max(r.status, failed(r.std, err))
	case b.model == nil:
		r.status = max(r.status, exitFindings)
		if r.forPeople() {
			fmt.Fprintf(r.std.err, "\n%s: %s. Nothing was written.\n", path, finding.Counted(b.findings.Count(finding.Error), "error"))
			if others := beside(path); others > 0 {
				fmt.Fprintf(r.std.err, "Beside it lie %s; name the folder to read them too.\n", finding.Counted(others, "*.hcl file"))
			}
		}
	case r.forPeople():
		fmt.Fprintln(r.std.out, b.line())
	}
	r.results = append(r.results, b)
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
	return out
}

// end prints the document for programs.
func (r *report) end() error {
	if r.forPeople() {
		return nil
	}
	builds := make([]findings.Build, len(r.results))
	for i := range r.results {
		builds[i] = r.forPrograms(&r.results[i])
	}
	if r.format == "sarif" {
		return findings.SARIF(r.std.out, builds, r.status < exitFiles)
	}
	return findings.JSON(r.std.out, builds)
}

func (r *report) forPrograms(b *result) findings.Build {
	out := findings.Build{
		Path: filepath.ToSlash(b.path), Findings: b.findings, Solved: b.model != nil,
		Out: filepath.ToSlash(b.out), Written: b.written,
	}
	if b.model != nil {
		out.Parts, out.Programs = len(b.model.Parts), len(b.model.Programs)+len(b.model.Routings)
	}
	dir := folderOf(b.path)
	for _, f := range b.src.Files {
		out.Files = append(out.Files, findings.File{Name: f.Name, Path: r.pathOf(dir, f.Name), Text: f.Text})
	}
	return out
}

// pathOf is where a file of a build lies, from where the command runs; empty
// for the words of the command line, which lie nowhere.
func (r *report) pathOf(dir, name string) string {
	if name == setFlag {
		return ""
	}
	if base, ok := strings.CutPrefix(name, setFilePrefix); ok {
		for _, file := range r.setFiles {
			if filepath.Base(file) == base {
				return filepath.ToSlash(file)
			}
		}
	}
	return path.Join(filepath.ToSlash(dir), name)
}
