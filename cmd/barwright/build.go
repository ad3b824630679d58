package main

import (
	"context"
	"fmt"
	"path/filepath"
	"runtime/debug"
	"strings"

	"github.com/spf13/pflag"

	"barwright/cmd/barwright/folder"
	"barwright/compile"
	"barwright/compile/model"
	"barwright/lang/finding"
)

func buildCommand() command {
	return command{
		name: "build", args: "PATH... -o DIR", about: "write everything into DIR",
		help: `Compiles each PATH and writes its folder: the page to look at, drawings and
papers for the floor, cut files, router programs, cut list and bill. A folder is
written all or nothing; one that holds a file which barwright did not write is
refused. Several builds run at once, as many as there are processors, and print
in the order of their names here.
`,
		flags: func(f *pflag.FlagSet, o *options) {
			f.StringVarP(&o.out, "out", "o", "", "`DIR` to write; made, or replaced whole")
			f.StringVar(&o.paper, "paper", "", "print drawings and papers for the floor on `A4|A3|letter|tabloid`, whatever the description says")
			inputFlags(f, o)
			layoutFlag(f, o)
			f.BoolVar(&o.fullScale, "full-scale", false, "write poles.pdf too: story poles at full size, over several papers")
			findingFlags(f, o)
		},
		run: build,
	}
}

// build compiles every build and writes those without errors.
func build(o options, std streams) int {
	if o.out == "" {
		return misuse(std, "say where to write: -o DIR")
	}
	taken := map[string]string{} // lookup only
	for _, path := range o.args {
		dir := outFolder(o, path)
		if dir == "" {
			return misuse(std, fmt.Sprintf("%s has no name that its folder in %s could have", path, o.out))
		}
		if other, ok := taken[strings.ToLower(dir)]; ok {
			return misuse(std, fmt.Sprintf("%s and %s would both be written to %s", other, path, dir))
		}
		taken[strings.ToLower(dir)] = path
	}
	return each(o, std, compile.Job.Compile, func(b *result) error {
		std.line.Say(b.path, "writing")
		if b.model.Large() {
			debug.SetGCPercent(garbageLarge)
		}
		files, err := outputs(b.model, b.drawings, o.paper)
		b.drawings = nil // what was painted for them takes much memory
		if err != nil {
			return err
		}
		if o.fullScale {
			files = append(files, fullScale(b.model, o.paper)...)
		}
		dir := outFolder(o, b.path)
		err = std.ending.write(func(ctx context.Context) error { return folder.Replace(ctx, dir, files) })
		if err != nil {
			return err
		}
		b.out = dir
		for _, f := range files {
			b.written = append(b.written, f.Name)
		}
		return nil
	})
}

// outFolder is where a build goes: the folder asked for, or one of its own in
// it where there are several builds; empty where that has no name.
func outFolder(o options, path string) string {
	if len(o.args) == 1 {
		return o.out
	}
	if whole, err := filepath.Abs(path); err == nil { // "." and ".." have names too
		path = whole
	}
	name := strings.TrimSuffix(filepath.Base(path), ".hcl")
	if name == "" || name == string(filepath.Separator) {
		return ""
	}
	return filepath.Join(o.out, name)
}

// tally is a build in one line.
func tally(m *model.Model) string {
	parts := []string{finding.Counted(len(m.Parts), "part"), finding.Counted(len(m.Programs)+len(m.Routings), "router program")}
	for _, severity := range []finding.Severity{finding.Warning, finding.Note} {
		if n := m.Findings.Count(severity); n > 0 {
			parts = append(parts, finding.Counted(n, severity.String()))
		}
	}
	return strings.Join(parts, ", ")
}
