// Command barwright compiles the description of a built-in bar into what the
// shop, the router, the store and the person on the floor need.
package main

import (
	"os"
	"runtime/debug"
	"time"

	"barwright/cmd/barwright/progress"
)

// garbage is how much a heap may grow, in hundredths of what lives on it, before it is gone through:
// more than Go's usual 100, for a run is over soon.
const garbage = 300

// garbageLarge is that for a large build while its files are written: what lives on the heap is most then, and
// to go through it more often takes no more time than it takes a system to hand out as much memory more.
const garbageLarge = 100

func main() {
	debug.SetGCPercent(garbage)
	colored := os.Getenv("NO_COLOR") == ""
	std := streams{
		in: os.Stdin, out: os.Stdout, err: os.Stderr,
		outColor: colored && isTerminal(os.Stdout), color: colored && isTerminal(os.Stderr),
	}
	if term := os.Getenv("TERM"); isTerminal(os.Stderr) && term != "" && term != "dumb" {
		std.line = progress.New(os.Stderr)
		std.out, std.err = std.line.Before(os.Stdout), std.line.Before(os.Stderr)
		go std.line.Follow(time.Tick(progress.Every))
	}
	status := run(os.Args[1:], std)
	std.line.End()
	endBySignal(status)
	os.Exit(status)
}

// isTerminal reports whether a person reads the stream.
func isTerminal(f *os.File) bool {
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
