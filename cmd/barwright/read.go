package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"barwright/compile"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// readPath reads the files of one build: a file, or all *.hcl of a folder.
// Their names are those inside the folder, so that nothing written depends on
// where the folder lies.
func readPath(path string) (source.Files, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	names := []string{path}
	if info.IsDir() {
		if names, err = filepath.Glob(filepath.Join(escapeGlob(path), "*.hcl")); err != nil {
			return nil, err
		}
		if len(names) == 0 {
			return nil, fmt.Errorf("%s: the folder has no *.hcl files", path)
		}
	}
	var files source.Files
	for _, name := range names {
		text, err := readBounded(name)
		if err != nil {
			return nil, err
		}
		files = append(files, source.File{Name: filepath.Base(name), Text: text})
	}
	files.Sort()
	return files, nil
}

// escapeGlob keeps the letters of a path from meaning a pattern.
func escapeGlob(path string) string {
	return strings.NewReplacer(`\`, `\\`, `*`, `\*`, `?`, `\?`, `[`, `\[`).Replace(path)
}

// readBounded reads one byte more than a description may have, so that a
// larger file is refused without being read.
func readBounded(name string) ([]byte, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, lang.MaxFileBytes+1))
	if err != nil {
		return nil, fmt.Errorf("read %s: %w", name, err)
	}
	return text, nil
}

// load reads and compiles one build and prints its findings. The model is nil
// where they stop it.
func load(path string, o options, std streams) (*model.Model, finding.List, error) {
	files, err := readPath(path)
	if err != nil {
		return nil, nil, err
	}
	src, findings := lang.Read(files)
	for _, arg := range o.set {
		name, value, _ := strings.Cut(arg, "=")
		findings = append(findings, src.Override(name, value)...)
	}
	var m *model.Model
	if !findings.HasErrors() {
		m, findings = compile.Compile(src)
	}
	findings.Sort()
	return m, findings, finding.Render(std.err, findings, src.Files, std.style())
}
