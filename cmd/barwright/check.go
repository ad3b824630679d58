package main

import (
	"github.com/spf13/pflag"

	"barwright/compile"
	"barwright/compile/model"
	"barwright/compile/view"
	"barwright/lang"
	"barwright/lang/finding"
)

func checkCommand() command {
	return command{
		name: "check", args: "PATH...", about: "look for mistakes, write nothing",
		help: "Compiles each PATH and prints what is wrong with it.\n",
		flags: func(f *pflag.FlagSet, o *options) {
			inputFlags(f, o)
			layoutFlag(f, o)
			findingFlags(f, o)
		},
		run: func(o options, std streams) int {
			return each(o, std, checked, func(*result) error { return nil })
		},
	}
}

func checked(j compile.Job, src *lang.Source) (*model.Model, []view.Titled, finding.List) {
	m, findings := j.Check(src)
	return m, nil, findings
}
