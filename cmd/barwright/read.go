package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// filesOf lists the files of one build: a file, or all *.hcl of a folder, and
// the folder that they lie in.
func filesOf(path string) (names []string, dir string, err error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, "", err
	case !info.IsDir():
		return []string{path}, filepath.Dir(path), nil
	}
	if names = hclFiles(path); len(names) == 0 {
		return nil, path, fmt.Errorf("%s: the folder has no *.hcl files", path)
	}
	return names, path, nil
}

// hclFiles lists the *.hcl of a folder.
func hclFiles(dir string) []string {
	names, _ := filepath.Glob(filepath.Join(escapeGlob(dir), "*.hcl")) // the pattern is sound
	return names
}

// folderOf is the folder that a build's files lie in, whether or not they are there.
func folderOf(path string) string {
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return path
	}
	return filepath.Dir(path)
}

// readPath reads the files of one build. Their names are those inside the
// folder, so that nothing written depends on where the folder lies. A file that
// is named may lie anywhere; those of a folder are kept inside its tree.
func readPath(path string) (source.Files, *tree, error) {
	names, dir, err := filesOf(path)
	if err != nil {
		return nil, nil, err
	}
	t, err := openTree(dir)
	if err != nil {
		return nil, nil, err
	}
	var files source.Files
	for _, name := range names {
		text, err := t.own(name, name == path)
		if err != nil {
			t.close()
			return nil, nil, err
		}
		files = append(files, source.File{Name: filepath.Base(name), Text: text})
	}
	files.Sort()
	return files, t, nil
}

// escapeGlob keeps the letters of a path from meaning a pattern.
func escapeGlob(path string) string {
	return strings.NewReplacer(`\`, `\\`, `*`, `\*`, `?`, `\?`, `[`, `\[`).Replace(path)
}

// bounded reads one byte more than a description may have, so that a larger
// file is refused without being read.
func bounded(name string, r io.Reader) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(r, lang.MaxFileBytes+1))
	if err != nil {
		return nil, fmt.Errorf("read %s: %w", name, err)
	}
	return text, nil
}

// Files of a Source that do not lie in its folder.
const (
	setFlag       = "--set"       // the words of the command line
	setFilePrefix = "--set-file " // stands before the name of a file of givens
)

// source reads one build with what it takes in and what the command line sets.
func (o options) source(path string) (*lang.Source, finding.List, error) {
	files, t, err := readPath(path)
	if err != nil {
		return nil, nil, err
	}
	defer t.close()
	return o.read(files, t.open)
}

func (o options) read(files source.Files, open lang.Open) (*lang.Source, finding.List, error) {
	given, err := o.givens()
	if err != nil {
		return nil, nil, err
	}
	src, findings := o.parse(files, given, open)
	return src, findings, nil
}

// parse reads one build of its own files, those of givens, and what it takes in.
func (o options) parse(files, given source.Files, open lang.Open) (*lang.Source, finding.List) {
	src, findings := lang.ReadTree(files, open)
	return src, append(findings, o.override(src, given)...)
}

// givens reads the files of givens that the command line names.
func (o options) givens() (files source.Files, err error) {
	for _, name := range o.setFiles {
		text, err := readFile(name)
		if err != nil {
			return nil, err
		}
		files = append(files, source.File{Name: setFilePrefix + filepath.Base(name), Text: text})
	}
	return files, nil
}

// override sets what the command line does, by the files of givens that it names too. Elsewhere are givens
// of another build that it is for too.
func (o options) override(src *lang.Source, given source.Files, elsewhere ...string) (findings finding.List) {
	for _, f := range given {
		findings = append(findings, src.OverrideFile(f, elsewhere...)...)
	}
	return append(findings, set(src, setFlag, o.set, elsewhere...)...)
}

func set(src *lang.Source, flag string, args []string, elsewhere ...string) (findings finding.List) {
	for _, arg := range args {
		name, value, _ := strings.Cut(arg, "=")
		findings = append(findings, src.Override(flag, name, value, elsewhere...)...)
	}
	return findings
}

// compiler makes a model of a description, as compile.Compile or compile.Check do.
type compiler func(*lang.Source) (*model.Model, finding.List)

// solve reads and compiles one build.
func (o options) solve(path string, compiled compiler) (result, error) {
	src, findings, err := o.source(path)
	if err != nil {
		return result{}, err
	}
	return solved(path, src, findings, compiled), nil
}

// solved compiles what was read, and keeps all findings.
func solved(path string, src *lang.Source, findings finding.List, compiled compiler) result {
	b := result{path: path, src: src, findings: findings}
	if !src.Lost {
		m, more := compiled(src)
		b.model, b.findings = m, append(findings, more...)
	}
	if b.findings.HasErrors() {
		b.model = nil
	}
	b.findings.Sort()
	return b
}
