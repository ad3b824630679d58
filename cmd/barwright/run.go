package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"

	"barwright/lang/finding"
)

// Exit statuses.
const (
	exitClean    = 0
	exitFindings = 1 // findings that stop the build
	exitMisuse   = 2
	exitFiles    = 3 // could not read or write
)

// streams is where the program prints.
type streams struct {
	out, err io.Writer
	color    bool
}

func (s streams) style() finding.Style { return finding.Style{Color: s.color} }

const usage = `barwright compiles the description of a built-in bar.

  barwright build PATH... -o DIR   write everything into DIR
  barwright check PATH...          look for mistakes, write nothing

A PATH is a file, or a folder with all its *.hcl files: one build each. Several
builds go into folders of their own under DIR.

  -o, --out DIR          where to write; made, or replaced whole
      --set NAME=VALUE   give a given another value: --set bar_top=43
  -h, --help             this text

Exit status: 0 clean, 1 findings that stop the build, 2 misuse, 3 could not
read or write. Findings are printed on standard error, results on standard
output.

A first build:  barwright build examples/boatshed -o out
`

// run is the program: it takes the arguments and returns the exit status.
func run(args []string, std streams) int {
	if len(args) == 0 {
		fmt.Fprint(std.err, usage)
		return exitMisuse
	}
	command, args := args[0], args[1:]
	switch command {
	case "build":
		return withOptions(args, std, true, build)
	case "check":
		return withOptions(args, std, false, check)
	case "help", "-h", "--help":
		fmt.Fprint(std.out, usage)
		return exitClean
	}
	mend := ""
	if near := finding.Nearest(command, []string{"build", "check", "help"}); near != "" {
		mend = fmt.Sprintf(" (did you mean %s?)", near)
	}
	return misuse(std, fmt.Sprintf("there is no command %q%s", command, mend))
}

// options is what the command line says.
type options struct {
	paths []string
	out   string
	set   []override
}

// override is a given and its value from the command line.
type override struct{ name, value string }

func withOptions(args []string, std streams, writes bool, do func(options, streams) int) int {
	var o options
	var set []string
	flags := pflag.NewFlagSet("barwright", pflag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.StringArrayVar(&set, "set", nil, "")
	if writes {
		flags.StringVarP(&o.out, "out", "o", "", "")
	}
	switch err := flags.Parse(args); {
	case errors.Is(err, pflag.ErrHelp):
		fmt.Fprint(std.out, usage)
		return exitClean
	case err != nil:
		return misuse(std, err.Error())
	}
	for _, arg := range set {
		name, value, ok := strings.Cut(arg, "=")
		if !ok || name == "" {
			return misuse(std, fmt.Sprintf("--set %q is not NAME=VALUE", arg))
		}
		o.set = append(o.set, override{name, value})
	}
	o.paths = flags.Args()
	switch {
	case len(o.paths) == 0:
		return misuse(std, "name a description: a file, or a folder of *.hcl files")
	case writes && o.out == "":
		return misuse(std, "say where to write: -o DIR")
	}
	return do(o, std)
}

func misuse(std streams, text string) int {
	fmt.Fprintf(std.err, "barwright: %s\nTry barwright --help.\n", text)
	return exitMisuse
}

func failed(std streams, err error) int {
	fmt.Fprintf(std.err, "barwright: %v\n", err)
	return exitFiles
}
