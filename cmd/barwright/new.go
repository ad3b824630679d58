package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"barwright/cmd/barwright/starter"
)

func newCommand() command {
	return command{
		name: "new", args: "DIR", about: "write a first description to change",
		help: `Writes a small description with comments into DIR: the bar, what the store has,
the machines at hand. It builds as it is. A DIR that holds something is refused.
`,
		flags: func(f *pflag.FlagSet, o *options) {
			f.StringVar(&o.unit, "unit", starter.Units()[0], "what bare numbers mean in it: `"+strings.Join(starter.Units(), "|")+"`")
		},
		run: begin,
	}
}

// begin writes the starter and says how to go on.
func begin(o options, std streams) int {
	switch {
	case len(o.args) != 1:
		return misuse(std, "name one folder to write into")
	case !slices.Contains(starter.Units(), o.unit):
		return misuse(std, fmt.Sprintf("--unit %q is none of %s", o.unit, strings.Join(starter.Units(), ", ")))
	}
	dir := o.args[0]
	if err := starter.Write(dir, o.unit); err != nil {
		return failed(std, err)
	}
	fmt.Fprintf(std.out, `%s holds %s.

Build it, and look at out/index.html:   barwright build %[3]s -o out
Change a number and look for mistakes:  barwright check %[3]s
Lay the text out neatly:                barwright fmt %[3]s
`, dir, strings.Join(starter.Names(), ", "), quoted(dir))
	return exitClean
}

// quoted is a path as it can be typed: in quotes where it holds a blank or the
// like.
func quoted(path string) string {
	plain := func(c rune) bool {
		return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || strings.ContainsRune("./_-", c) || c > '~'
	}
	if strings.IndexFunc(path, func(c rune) bool { return !plain(c) }) < 0 {
		return path
	}
	return "'" + strings.ReplaceAll(path, "'", `'\''`) + "'"
}
