// Command barwright compiles the description of a built-in bar into what the
// shop, the router, the store and the person on the floor need.
package main

import (
	"os"
	"runtime/debug"
)

// garbage is how much a heap may grow, in hundredths of what lives on it, before it is gone through:
// more than Go's usual 100, for a run is over soon.
const garbage = 300

func main() {
	debug.SetGCPercent(garbage)
	colored := os.Getenv("NO_COLOR") == ""
	os.Exit(run(os.Args[1:], streams{
		in: os.Stdin, out: os.Stdout, err: os.Stderr,
		outColor: colored && isTerminal(os.Stdout), color: colored && isTerminal(os.Stderr),
	}))
}

// isTerminal reports whether a person reads the stream.
func isTerminal(f *os.File) bool {
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
