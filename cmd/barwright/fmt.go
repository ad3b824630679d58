package main

import (
	"bytes"
	"context"
	"fmt"
	"path/filepath"

	"github.com/spf13/pflag"

	"barwright/cmd/barwright/inplace"
	"barwright/lang/finding"
	"barwright/lang/format"
	"barwright/lang/source"
)

func fmtCommand() command {
	return command{
		name: "fmt", args: "PATH...", about: "lay descriptions out neatly",
		help: `Lays out each PATH, a file or all *.hcl files of a folder, and prints the names
of those that changed. White space is all that changes: words, their order and
comments stay. A PATH of - lays out what comes on standard input and prints it.
A file that cannot be read is left as it is; the exit status is then 1. With
--check it is 1 too where anything would change.
`,
		flags: func(f *pflag.FlagSet, o *options) {
			f.BoolVar(&o.check, "check", false, "write nothing; name what would change")
		},
		run:   layOut,
		doing: "laying out",
	}
}

// layOut lays out each file; one that fails does not stop the others. The
// worst exit status counts.
func layOut(o options, std streams) int {
	if len(o.args) == 0 {
		return misuse(std, "name a description: a file, a folder of *.hcl files, or - for standard input")
	}
	status := exitClean
	for _, path := range o.args {
		names, err := descriptions(path)
		if err != nil {
			status = max(status, failed(std, err))
		}
		for _, name := range names {
			status = max(status, layOutFile(name, o, std))
		}
	}
	return status
}

const standardInput = "-"

// descriptions lists the files that a path stands for.
func descriptions(path string) ([]string, error) {
	if path == standardInput {
		return []string{path}, nil
	}
	names, _, err := filesOf(path)
	return names, err
}

func layOutFile(name string, o options, std streams) int {
	before, err := readText(name, std)
	if err != nil {
		return failed(std, err)
	}
	file := source.File{Name: filepath.ToSlash(name), Text: before}
	if name == standardInput {
		file.Name = "standard input"
	}
	text, findings := format.Format(file)
	switch changed := !bytes.Equal(text, before); {
	case len(findings) > 0:
		findings.Sort()
		if err := finding.Render(std.err, findings, source.Files{file}, std.style()); err != nil {
			return failed(std, err)
		}
		return exitFindings
	case name == standardInput && !o.check:
		_, err = std.out.Write(text)
	case !changed:
	case o.check:
		fmt.Fprintln(std.out, name)
		return exitFindings
	default:
		err = std.ending.write(func(context.Context) error { return inplace.Replace(name, before, text) })
		if err == nil {
			_, err = fmt.Fprintln(std.out, name)
		}
	}
	if err != nil {
		return failed(std, err)
	}
	return exitClean
}

func readText(name string, std streams) ([]byte, error) {
	if name != standardInput {
		return readFile(name)
	}
	if std.in == nil {
		return nil, nil
	}
	return bounded("standard input", std.in)
}
