package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"barwright/cmd/barwright/folder"
	"barwright/compile/model"
	"barwright/lang/finding"
)

func buildCommand() command {
	return command{
		name: "build", args: "PATH... -o DIR", about: "write everything into DIR",
		help: `Compiles each PATH and writes its folder: the page to look at, cut files, router
programs, cut list and bill. A folder is written all or nothing; one that holds
a file which barwright did not write is refused.
`,
		flags: func(f *pflag.FlagSet, o *options) {
			f.StringVarP(&o.out, "out", "o", "", "`DIR` to write; made, or replaced whole")
			inputFlags(f, o)
		},
		run: build,
	}
}

func checkCommand() command {
	return command{
		name: "check", args: "PATH...", about: "look for mistakes, write nothing",
		help:  "Compiles each PATH and prints what is wrong with it.\n",
		flags: inputFlags,
		run: func(o options, std streams) int {
			return each(o, std, func(path string, m *model.Model) error {
				_, err := fmt.Fprintf(std.out, "%s: %s\n", path, tally(m))
				return err
			})
		},
	}
}

// inputFlags are those of every command that compiles a description.
func inputFlags(f *pflag.FlagSet, o *options) {
	f.StringArrayVar(&o.set, "set", nil, "give a given another value: `NAME=VALUE`")
}

// build compiles every build and writes those without errors.
func build(o options, std streams) int {
	if o.out == "" {
		return misuse(std, "say where to write: -o DIR")
	}
	taken := map[string]string{} // lookup only
	for _, path := range o.args {
		dir := outFolder(o, path)
		if other, ok := taken[strings.ToLower(dir)]; ok {
			return misuse(std, fmt.Sprintf("%s and %s would both be written to %s", other, path, dir))
		}
		taken[strings.ToLower(dir)] = path
	}
	return each(o, std, func(path string, m *model.Model) error {
		files, err := outputs(m)
		if err != nil {
			return err
		}
		dir := outFolder(o, path)
		if err := folder.Replace(dir, files); err != nil {
			return err
		}
		_, err = fmt.Fprintf(std.out, "%s: %s; %d files in %s\n", path, tally(m), len(files), dir)
		return err
	})
}

// each compiles the builds one by one; one that fails does not stop the
// others. The worst exit status counts.
func each(o options, std streams, use func(path string, m *model.Model) error) int {
	if len(o.args) == 0 {
		return misuse(std, "name a description: a file, or a folder of *.hcl files")
	}
	for _, arg := range o.set {
		if name, _, ok := strings.Cut(arg, "="); !ok || name == "" {
			return misuse(std, fmt.Sprintf("--set %q is not NAME=VALUE", arg))
		}
	}
	status := exitClean
	for i, path := range o.args {
		if len(o.args) > 1 && i > 0 {
			io.WriteString(std.err, "\n")
		}
		m, findings, err := load(path, o, std)
		if err == nil && m != nil {
			err = use(path, m)
		}
		switch {
		case err != nil:
			status = max(status, failed(std, err))
		case m == nil:
			fmt.Fprintf(std.err, "\n%s: %s. Nothing was written.\n", path, counted(findings.Count(finding.Error), "error"))
			status = max(status, exitFindings)
		}
	}
	return status
}

// outFolder is where a build goes: the folder asked for, or one of its own in
// it where there are several builds.
func outFolder(o options, path string) string {
	if len(o.args) == 1 {
		return o.out
	}
	name := filepath.Base(filepath.Clean(path))
	return filepath.Join(o.out, strings.TrimSuffix(name, ".hcl"))
}

// tally is a build in one line.
func tally(m *model.Model) string {
	parts := []string{counted(len(m.Parts), "part"), counted(len(m.Programs), "router program")}
	for _, severity := range []finding.Severity{finding.Warning, finding.Note} {
		if n := m.Findings.Count(severity); n > 0 {
			parts = append(parts, counted(n, severity.String()))
		}
	}
	return strings.Join(parts, ", ")
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
