package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"barwright/cmd/barwright/progress"
	"barwright/lang/finding"
)

// Exit statuses.
const (
	exitClean    = 0
	exitFindings = 1 // findings that stop the build
	exitMisuse   = 2
	exitFiles    = 3 // could not read or write

	exitSignal = 128 // and the signal's number: interrupted by it
)

// streams is what the program reads and where it prints.
type streams struct {
	in       io.Reader
	out, err io.Writer
	outColor bool
	color    bool // of err
	line     *progress.Line
	ending   *ending
}

func (s streams) style() finding.Style    { return finding.Style{Color: s.color} }
func (s streams) outStyle() finding.Style { return finding.Style{Color: s.outColor} }

// command is one thing that the program can do. Each has a file of its own.
type command struct {
	name  string
	args  string // "PATH... -o DIR"
	about string // one line, for the overview
	help  string // what follows the usage line in the command's own help
	flags func(*pflag.FlagSet, *options)
	run   func(options, streams) int
	doing string // what a terminal is told while it takes long; empty where that is told otherwise
	ends  bool   // of its own accord, when it is interrupted
}

// commands is in the order of the help.
func commands() []command {
	return []command{buildCommand(), checkCommand(), showCommand(), diffCommand(), layoutCommand(), viewCommand(), explainCommand(), fmtCommand(), newCommand(), completionCommand()}
}

// options is what the command line says.
type options struct {
	args []string
	out  string
	set  []string // NAME=VALUE
	// setFiles are files of NAME = VALUE; what set says counts before them.
	setFiles  []string
	format    string // of what is printed
	fullScale bool   // build: story poles at full size too
	layout    string // how long is searched for layouts
	paper     string // that drawings are printed on
	check     bool   // lay out: write nothing
	unit      string // of a new description
	lines     bool   // show the whole build, one thing a line

	// Of a comparison:
	setOld, setNew []string // NAME=VALUE in one of the two
	cut            string   // the list of pieces that have been cut
	within         string   // what counts as equal
	exitCode       bool     // status 1 where the builds differ

	listing // of a plain cut list

	port string // to serve a view on; empty for the usual one
}

const overviewEnd = `
A PATH is a file, or a folder with all its *.hcl files: one build each. Several
builds go into folders of their own under DIR.

barwright COMMAND --help tells more about a command.

Exit status: 0 clean, 1 findings that stop the build, or what fmt --check and
diff --exit-code look for, 2 misuse, 3 could not read or write; of several builds
the worst. An interrupt, as Ctrl-C, leaves what was not finished as it was; a
shell then tells 130, or 143 after SIGTERM. Findings are printed on standard
error, results on standard output, and so are findings for programs: --format
json, --format sarif. What takes longer is told on one line of a terminal.
NO_COLOR turns colour off. barwright explain SLUG tells what a finding means.

A first build:  barwright build examples/boatshed -o out
`

func overview() string {
	var b strings.Builder
	b.WriteString("barwright compiles the description of a built-in bar.\n\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "  barwright %-28s %s\n", c.name+" "+c.args, c.about)
	}
	b.WriteString(overviewEnd)
	return b.String()
}

// run is the program: it takes the arguments and returns the exit status.
func run(args []string, std streams) int {
	if len(args) == 0 {
		fmt.Fprint(std.err, overview())
		return exitMisuse
	}
	name, args := args[0], args[1:]
	if name == "help" || name == "-h" || name == "--help" {
		fmt.Fprint(std.out, overview())
		return exitClean
	}
	var names []string
	for _, c := range commands() {
		if c.name == name {
			return c.start(args, std)
		}
		names = append(names, c.name)
	}
	mend := ""
	if near := finding.Nearest(name, append(names, "help")); near != "" {
		mend = fmt.Sprintf(" (did you mean %s?)", near)
	}
	return misuse(std, fmt.Sprintf("there is no command %q%s", name, mend))
}

// start reads a command's flags and runs it.
func (c command) start(args []string, std streams) int {
	var o options
	flags := pflag.NewFlagSet(c.name, pflag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.SortFlags = false
	if c.flags != nil {
		c.flags(flags, &o)
	}
	switch err := flags.Parse(args); {
	case errors.Is(err, pflag.ErrHelp):
		fmt.Fprintf(std.out, "Usage: barwright %s %s\n\n%s", c.name, c.args, c.help)
		if usages := flags.FlagUsagesWrapped(80); usages != "" {
			fmt.Fprintf(std.out, "\n%s", usages)
		}
		return exitClean
	case err != nil:
		return misuse(std, err.Error())
	}
	o.args = flags.Args()
	if c.ends {
		return c.run(o, std)
	}
	if c.doing != "" && !slices.Contains(o.args, standardInput) { // who types sees what is typed
		std.line.Say("", c.doing)
	}
	return interruptible(std, func(std streams) int { return c.run(o, std) })
}

func misuse(std streams, text string) int {
	fmt.Fprintf(std.err, "barwright: %s\nTry barwright --help.\n", text)
	return exitMisuse
}

// misused is an error of the command line that shows only once files are read.
type misused string

func (m misused) Error() string { return string(m) }

// failed tells an error, and gives the exit status.
func failed(std streams, err error) int {
	if wrong := misused(""); errors.As(err, &wrong) {
		return misuse(std, wrong.Error())
	}
	if errors.Is(err, context.Canceled) { // who was interrupted is told so elsewhere
		return exitFiles
	}
	fmt.Fprintf(std.err, "barwright: %s\n", finding.Clean(err.Error()))
	return exitFiles
}
