package completion

import (
	"fmt"
	"strings"
)

const fishHead = `# fish completion for barwright. Once:
#   barwright completion fish > ~/.config/fish/completions/barwright.fish

function __barwright_command -d 'whether the line has this command'
    set -l words (commandline -opc)
    test "$words[2]" = "$argv[1]"
end

function __barwright_none -d 'whether the line has no command yet'
    test (count (commandline -opc)) -eq 1
end

function __barwright_ask -d 'what the descriptions on the line hold: givens, or names'
    set -l words (commandline -opc)
    set -l paths
    for word in $words[3..-1]
        test -e $word; and set -a paths $word
    end
    $words[1] completion $argv[1] $paths 2>/dev/null
end

function __barwright_givens -d 'the names of givens, with their ='
    for name in (__barwright_ask givens)
        echo $name=
    end
end

function __barwright_builds -d 'descriptions, records, branches and tags'
    __fish_complete_suffix .hcl
    __fish_complete_suffix .json
    git for-each-ref --format='%(refname:short)' refs/heads refs/tags 2>/dev/null
end

complete -c barwright -f
`

func fish(commands []Command) string {
	var out strings.Builder
	out.WriteString(fishHead)
	for _, c := range commands {
		fmt.Fprintf(&out, "\ncomplete -c barwright -n __barwright_none -a %s -d %s\n", c.Name, fishQuote(c.About))
		here := fmt.Sprintf("complete -c barwright -n '__barwright_command %s'", c.Name)
		for _, f := range c.Flags {
			out.WriteString(here)
			if f.Short != "" {
				out.WriteString(" -s " + f.Short)
			}
			out.WriteString(" -l " + f.Long)
			if f.Takes != nil {
				out.WriteString(" -x" + fishAction(*f.Takes))
			}
			fmt.Fprintf(&out, " -d %s\n", fishQuote(f.About))
		}
		for _, v := range c.Args {
			if action := fishAction(v); action != "" {
				fmt.Fprintf(&out, "%s%s\n", here, action)
			}
		}
	}
	fmt.Fprintf(&out, "\ncomplete -c barwright -n __barwright_none -a help -d %s\n", fishQuote("tell about all commands"))
	return out.String()
}

func fishAction(v Value) string {
	switch v.Kind {
	case Path:
		return " -a '(__fish_complete_suffix .hcl)'"
	case Build:
		return " -a '(__barwright_builds)'"
	case File:
		return " -a '(__fish_complete_path (commandline -ct))'"
	case Folder:
		return " -a '(__fish_complete_directories (commandline -ct))'"
	case Given:
		return " -a '(__barwright_givens)'"
	case Name:
		return " -a '(__barwright_ask names)'"
	case Word:
		return " -a " + fishQuote(strings.Join(v.Words, " "))
	}
	return ""
}

// fishQuote puts a text into fish's single quotes, in which a backslash and a
// quote stand behind a backslash.
func fishQuote(text string) string {
	return "'" + strings.NewReplacer(`\`, `\\`, "'", `\'`).Replace(text) + "'"
}
