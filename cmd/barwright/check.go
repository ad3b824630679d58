package main

import (
	"github.com/spf13/pflag"

	"barwright/compile"
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
			return each(o, std, compile.Job.Check, func(*result) error { return nil })
		},
	}
}
