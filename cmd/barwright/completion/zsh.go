package completion

import (
	"fmt"
	"strings"
)

const zshHead = `#compdef barwright
# zsh completion for barwright. In ~/.zshrc, after compinit:
#   source <(barwright completion zsh)
# or write it to a file _barwright in a folder of $fpath.

_barwright_paths() { _files -g '*.hcl' }

_barwright_builds() {
  local -a refs
  refs=(${(f)"$(git for-each-ref --format='%(refname:short)' refs/heads refs/tags 2>/dev/null)"})
  compadd -- $refs
  _files -g '*.(hcl|json)'
}

# What the descriptions on the line hold: givens, or names.
_barwright_ask() {
  local word
  local -a paths
  for word in $words[2,-1]; do
    [[ -e $word ]] && paths+=($word)
  done
  reply=(${(f)"$($program completion $1 $paths 2>/dev/null)"})
}

_barwright_givens() {
  local -a reply
  _barwright_ask givens
  compadd -S '=' -- $reply
}

_barwright_names() {
  local -a reply
  _barwright_ask names
  compadd -- $reply
}

_barwright() {
  local program=$words[1] curcontext=$curcontext
  local -a commands
  commands=(
`

const zshMiddle = `  )
  if (( CURRENT == 2 )); then
    _describe -t commands command commands
    return
  fi
  shift words
  (( CURRENT-- ))
  case $words[1] in
`

const zshTail = `  esac
}

if [[ $funcstack[1] == _barwright ]]; then
  _barwright "$@"
else
  compdef _barwright barwright
fi
`

func zsh(commands []Command) string {
	var out strings.Builder
	out.WriteString(zshHead)
	for _, c := range commands {
		fmt.Fprintf(&out, "    %s\n", quote(c.Name+":"+zshText(c.About)))
	}
	fmt.Fprintf(&out, "    %s\n", quote("help:tell about all commands"))
	out.WriteString(zshMiddle)
	for _, c := range commands {
		fmt.Fprintf(&out, "    %s)\n      _arguments -s -S", c.Name)
		for _, f := range c.Flags {
			out.WriteString(" \\\n        " + zshFlag(f))
		}
		for i, v := range c.Args {
			place := fmt.Sprint(i + 1)
			if c.Repeats && i == len(c.Args)-1 {
				place = "*"
			}
			out.WriteString(" \\\n        " + quote(place+zshValue(v)))
		}
		out.WriteString("\n      ;;\n")
	}
	return out.String() + zshTail
}

// zshFlag is a flag as _arguments reads it: '*--set=[about]:NAME=VALUE:action',
// and for a flag with two names '(-o --out)'{-o,--out=}'[about]…'.
func zshFlag(f Flag) string {
	names := f.names()
	value := ""
	if f.Takes != nil {
		names[len(names)-1] += "="
		value = zshValue(*f.Takes)
	}
	about := "[" + zshText(f.About) + "]" + value
	before := ""
	if f.Repeats {
		before = "*"
	}
	if len(names) == 1 {
		return quote(before + names[0] + about)
	}
	if !f.Repeats {
		before = "(" + strings.Join(f.names(), " ") + ")"
	}
	return quote(before) + "{" + strings.Join(names, ",") + "}" + quote(about)
}

func zshValue(v Value) string {
	action := map[Kind]string{ // lookup only
		Path: "_barwright_paths", Build: "_barwright_builds", File: "_files", Folder: "_files -/", Given: "_barwright_givens", Name: "_barwright_names",
		Word: "(" + strings.Join(v.Words, " ") + ")", Other: " ",
	}[v.Kind]
	return ":" + zshText(v.Label) + ":" + action
}

// zshText keeps a text from ending its field.
func zshText(text string) string {
	return strings.NewReplacer(`\`, `\\`, "[", `\[`, "]", `\]`, ":", `\:`).Replace(text)
}
