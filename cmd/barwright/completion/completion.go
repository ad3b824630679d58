// Package completion writes the scripts with which bash, zsh and fish complete
// a command line. It takes the commands with their flags, and knows nothing
// else of the program; only what stands in a description is asked for when it
// is needed, by running "barwright completion givens PATH..." or "names".
package completion

import (
	"fmt"
	"io"
	"strings"
)

// Kind is what can stand in a place of the command line.
type Kind int

const (
	Other  Kind = iota // nothing that could be listed
	Path               // a description: a file *.hcl, or a folder
	File               // any file
	Folder             // a folder
	Word               // one of Value.Words
	Given              // NAME=VALUE, with the name of a given
	Name               // a name that can be asked for
	Build              // a Path, a record *.json, or a branch or tag of the repository at hand
)

// Value is what an argument or a flag takes.
type Value struct {
	Kind  Kind
	Label string   // as the help calls it: "DIR"
	Words []string // of a Word
}

// Flag is one flag of a command.
type Flag struct {
	Long, Short string // without hyphens; Short may be empty
	About       string
	Takes       *Value // nil for a switch
	Repeats     bool
}

// Command is one command. The last of its arguments stands for all that
// follow where Repeats says so.
type Command struct {
	Name, About string
	Flags       []Flag
	Args        []Value
	Repeats     bool
}

// Shells lists the shells that there are scripts for.
func Shells() []string { return []string{"bash", "zsh", "fish"} }

// Write writes the script for a shell. It reports an unknown shell, and the
// first error of w.
func Write(w io.Writer, shell string, commands []Command) error {
	var script string
	switch shell {
	case "bash":
		script = bash(commands)
	case "zsh":
		script = zsh(commands)
	case "fish":
		script = fish(commands)
	default:
		return fmt.Errorf("there is no completion for %q", shell)
	}
	_, err := io.WriteString(w, script)
	return err
}

// quote puts a text into the quotes of bash and zsh.
func quote(text string) string { return "'" + strings.ReplaceAll(text, "'", `'\''`) + "'" }

// names lists a flag as it is typed, the short form first.
func (f Flag) names() []string {
	if f.Short == "" {
		return []string{"--" + f.Long}
	}
	return []string{"-" + f.Short, "--" + f.Long}
}
