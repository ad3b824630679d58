package main

import (
	"fmt"

	"barwright/lang/finding"
)

func explainCommand() command {
	return command{
		name: "explain", args: "[SLUG...]", about: "tell what a finding means, and how to mend it",
		help: `Tells what the findings of each SLUG mean, why it matters, the usual causes and
how to mend it. Without a SLUG all are listed, one line each.

  barwright explain run-too-long
`,
		run: explain,
	}
}

func explain(o options, std streams) int {
	style := finding.Style{}
	if len(o.args) == 0 {
		if err := finding.WriteIndex(std.out, style); err != nil {
			return failed(std, err)
		}
		return exitClean
	}
	status := exitClean
	for i, slug := range o.args {
		rule, section, ok := finding.Lookup(slug)
		if !ok {
			status = misuse(std, noFinding(slug))
			continue
		}
		if i > 0 {
			fmt.Fprintln(std.out)
		}
		if err := finding.WriteExplanation(std.out, rule, section, style); err != nil {
			return failed(std, err)
		}
	}
	return status
}

func noFinding(slug string) string {
	text := fmt.Sprintf("there is no finding %q", slug)
	if near := finding.Nearest(slug, finding.Slugs()); near != "" {
		return text + fmt.Sprintf(" (did you mean %s?)", near)
	}
	return text + "; barwright explain lists all"
}
