package main

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"barwright/compile"
	"barwright/compile/nesting"
)

// inputFlags are those of every command that compiles a description.
func inputFlags(f *pflag.FlagSet, o *options) {
	f.StringArrayVar(&o.set, "set", nil, "give a given another value: `NAME=VALUE`")
	f.StringArrayVar(&o.setFiles, "set-file", nil, "give givens the values in `FILE`: NAME = VALUE, a line each")
}

// layouts are how long is searched for layouts of sheets.
var layouts = []string{"quick", "long"}

func layoutFlag(f *pflag.FlagSet, o *options) {
	f.StringVar(&o.layout, "layout", "quick", "search for layouts of sheets as long as `quick|long`; long takes some seconds a board")
}

// noLayout says that a layout is none of these.
func (o options) noLayout() string {
	return fmt.Sprintf("--layout is %s, not %q", strings.Join(layouts, " or "), o.layout)
}

func (o options) effort() compile.Effort {
	if o.layout == "long" {
		return nesting.Long
	}
	return nesting.Quick
}

// unusable says what is wrong with the inputs, empty where nothing is.
func (o options) unusable() string {
	for _, flag := range []struct {
		name string
		args []string
	}{{"--set", o.set}, {"--set-old", o.setOld}, {"--set-new", o.setNew}} {
		for _, arg := range flag.args {
			if name, value, ok := strings.Cut(arg, "="); !ok || name == "" || strings.TrimSpace(value) == "" {
				return fmt.Sprintf("%s %q is not NAME=VALUE", flag.name, arg)
			}
		}
	}
	return ""
}
