// Command barwright compiles the description of a built-in bar into what the
// shop, the router, the store and the person on the floor need.
package main

import "os"

func main() {
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
