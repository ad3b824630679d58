package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"barwright/cmd/barwright/completion"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/finding"
)

func completionCommand() command {
	return command{
		name: "completion", args: strings.Join(completion.Shells(), "|"), about: "print a script that completes command lines",
		help: `Prints a script with which the shell completes commands, flags, paths and names;
after --set, those of givens. It begins by saying where it goes; in bash and zsh:

  source <(barwright completion bash)
`,
		run: complete,
	}
}

// complete prints the script for a shell. The scripts themselves ask for what
// a description holds, with "completion givens PATH..." and "names".
func complete(o options, std streams) int {
	if len(o.args) > 0 {
		switch shell := o.args[0]; {
		case shell == "givens":
			return offer(o.args[1:], std, (*lang.Source).GivenNames)
		case shell == "names":
			return offer(o.args[1:], std, namesOf)
		case len(o.args) == 1 && slices.Contains(completion.Shells(), shell):
			if err := completion.Write(std.out, shell, completions()); err != nil {
				return failed(std, err)
			}
			return exitClean
		}
	}
	return misuse(std, "name one shell: "+strings.Join(completion.Shells(), ", "))
}

// offer prints what builds hold, a line each; without a path, the build in the
// folder that the command runs in. One that cannot be read holds nothing:
// nobody asked for its findings.
func offer(paths []string, std streams, of func(*lang.Source) []string) int {
	if len(paths) == 0 {
		paths = []string{"."}
	}
	for _, path := range paths {
		src, _, err := options{}.source(path)
		if err != nil || src == nil || src.Lost {
			continue
		}
		for _, line := range of(src) {
			fmt.Fprintln(std.out, line)
		}
	}
	return exitClean
}

func namesOf(src *lang.Source) []string {
	var out []string
	for _, a := range values.Explain(src) {
		out = append(out, a.Name)
	}
	return out
}

// completions says of each command what can stand where, as its flags and its
// line of help tell.
func completions() []completion.Command {
	var out []completion.Command
	for _, c := range commands() {
		set := pflag.NewFlagSet(c.name, pflag.ContinueOnError)
		set.SortFlags = false
		if c.flags != nil {
			c.flags(set, &options{})
		}
		set.BoolP("help", "h", false, "tell about this command")
		to := completion.Command{Name: c.name, About: c.about}
		set.VisitAll(func(f *pflag.Flag) { to.Flags = append(to.Flags, flagOf(f)) })
		for _, word := range strings.Fields(c.args) {
			if strings.HasPrefix(word, "-") {
				break // flags speak for themselves
			}
			var label string
			label, to.Repeats = strings.CutSuffix(strings.Trim(word, "[]"), "...")
			to.Args = append(to.Args, valueOf(label))
		}
		out = append(out, to)
	}
	return out
}

func flagOf(f *pflag.Flag) completion.Flag {
	label, about := pflag.UnquoteUsage(f)
	to := completion.Flag{
		Long: f.Name, Short: f.Shorthand, About: about,
		Repeats: strings.HasSuffix(f.Value.Type(), "Array") || strings.HasSuffix(f.Value.Type(), "Slice"),
	}
	if f.NoOptDefVal == "" {
		takes := valueOf(label)
		to.Takes = &takes
	}
	return to
}

// valueOf tells from what the help calls a value what it can be.
func valueOf(label string) completion.Value {
	v := completion.Value{Label: label}
	switch {
	case strings.Contains(label, "|"):
		v.Kind, v.Words = completion.Word, strings.Split(label, "|")
	case label == "SLUG":
		v.Kind, v.Words = completion.Word, finding.Slugs()
	case label == "PATH":
		v.Kind = completion.Path
	case label == "OLD" || label == "NEW":
		v.Kind = completion.Build
	case label == "FILE" || label == "LIST":
		v.Kind = completion.File
	case label == "DIR":
		v.Kind = completion.Folder
	case label == "NAME":
		v.Kind = completion.Name
	case label == "NAME=VALUE":
		v.Kind = completion.Given
	}
	return v
}
