package main

import (
	"cmp"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"barwright/compile"
	"barwright/compile/ask"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/emit/reply"
	"barwright/emit/worklist"
	"barwright/lang/finding"
)

func showCommand() command {
	return command{
		name: "show", args: "[PATH] [NAME...]", about: "tell a value, and what it follows from",
		help: `Tells what each NAME stands for in a description: a value as written and as
solved, with all that it follows from. The name of a block lists its values, one
that ends in a dot what it may go on with; without a NAME all blocks are listed.
What is known only once everything stands in its place is under "placed", and
under part.LABEL or a part's label alone. "work" alone is the order of work,
"setting" what is shimmed and cut to fit and in which order all is set, "ways"
those of cables, cords and drains.

PATH is a file, or a folder with all its *.hcl files, or a folder that build wrote
or the model.json in it; where it is left out, the folder that the command runs
in. The first argument is the PATH where a file or a folder is called so.

With --lines all is told, one thing a line, of a PATH without a NAME, for git to
compare (textconv). A single file is read alone then: what is no build without
other files, or takes some in, is laid out as fmt does.

  barwright show examples/boatshed knee_wall.bar.top
  barwright show examples/boatshed cabinet.beans CUPS-L
`,
		flags: func(f *pflag.FlagSet, o *options) {
			f.StringVar(&o.format, "format", "text", "print answers as `text|json`")
			f.BoolVar(&o.lines, "lines", false, "print the whole build, one thing a line")
			inputFlags(f, o)
		},
		run:   show,
		doing: "solving",
	}
}

// lists are what is shown whole, by the name that is asked for alone; lookup only.
var lists = map[string]func(io.Writer, *model.Model) error{
	"work": worklist.Text, "setting": worklist.Setting, "ways": worklist.Ways,
}

// show answers names. What is sound is shown also where findings stop the
// build.
func show(o options, std streams) int {
	if o.lines {
		return showLines(o, std)
	}
	path, names, wrong := pathAndNames(o.args)
	if o.format != "text" && o.format != "json" {
		wrong = fmt.Sprintf("--format is text or json, not %q", o.format)
	}
	if wrong = cmp.Or(wrong, o.unusable()); wrong != "" {
		return misuse(std, wrong)
	}
	book, m, status := o.open(path, std)
	if book == nil {
		return status
	}
	if list := lists[strings.Join(names, " ")]; list != nil && m != nil && o.format == "text" {
		if err := list(std.out, m); err != nil {
			return failed(std, err)
		}
		return status
	}
	replies, worst := answer(book, names, m != nil, std)
	write := reply.Text
	if o.format == "json" {
		write = reply.JSON
	}
	if err := write(std.out, replies); err != nil {
		return failed(std, err)
	}
	return max(status, worst)
}

// open finds what can be asked of a path, and its model where the build is sound. There
// is no book where nothing can be read.
func (o options) open(path string, std streams) (book *ask.Book, sound *model.Model, status int) {
	m, is, err := o.readRecord(path)
	switch {
	case err != nil:
		return nil, nil, failed(std, err)
	case is:
		return ask.OfRecord(m), m, exitClean
	}
	b, err := o.solve(path, compile.Asked)
	if err == nil && b.model == nil {
		status = exitFindings
		err = finding.Render(std.err, b.findings, b.src.Files, std.style())
	}
	switch {
	case err != nil:
		return nil, nil, failed(std, err)
	case b.src.Lost:
		return nil, nil, status
	}
	return ask.Open(values.Explain(b.src), b.model), b.model, status
}

// answer looks names up; those that are not there are told, and do not stop
// the others.
func answer(book *ask.Book, names []string, sound bool, std streams) ([]model.Reply, int) {
	status := exitClean
	var replies []model.Reply
	for _, name := range names {
		r, ok := book.Ask(name)
		switch {
		case ok:
			replies = append(replies, r)
		case !sound && ask.NeedsPlacing(name):
			fmt.Fprintf(std.err, "barwright: %s is known once the build has no errors\n", name)
			status = max(status, exitFindings)
		default:
			mend := "barwright show PATH lists what there is"
			if meant := book.Meant(name); meant != "" {
				mend = fmt.Sprintf("did you mean %s?", meant)
			}
			fmt.Fprintf(std.err, "barwright: there is nothing called %q (%s)\n", name, mend)
			status = exitMisuse
		}
	}
	return replies, status
}

// pathAndNames parts the arguments; wrong says why that cannot be done.
func pathAndNames(args []string) (path string, names []string, wrong string) {
	here, _ := filepath.Glob("*.hcl")
	switch {
	case len(args) > 0 && isPath(args[0]):
		path, args = args[0], args[1:]
	case len(here) > 0:
		path = "."
	case len(args) > 0:
		return "", nil, fmt.Sprintf("%s is no file or folder, and there are no *.hcl files here", args[0])
	default:
		return "", nil, "name a description: a file, or a folder of *.hcl files"
	}
	if len(args) == 0 {
		args = []string{""}
	}
	return path, args, ""
}

// isPath tells a path from a name: it is there, or no name looks like it.
func isPath(arg string) bool {
	_, err := os.Stat(arg)
	return err == nil || strings.ContainsAny(arg, `/\`) || strings.HasSuffix(arg, ".hcl") || strings.HasSuffix(arg, ".json")
}
