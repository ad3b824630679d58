package completion

import (
	"fmt"
	"strings"
)

const bashHead = `# bash completion for barwright. In ~/.bashrc:
#   source <(barwright completion bash)

# What fits from the lines of standard input is offered.
_barwright_offer() {
  local line
  while IFS= read -r line; do COMPREPLY+=("$line"); done
}

_barwright_words() { _barwright_offer < <(compgen -W "$1" -- "$cur"); }

_barwright_files() {
  compopt -o filenames 2>/dev/null
  _barwright_offer < <(compgen -f -- "$cur")
}

_barwright_folders() {
  compopt -o filenames 2>/dev/null
  _barwright_offer < <(compgen -d -- "$cur")
}

_barwright_paths() {
  _barwright_folders
  _barwright_offer < <(compgen -f -X '!*.hcl' -- "$cur")
}

_barwright_builds() {
  _barwright_paths
  _barwright_offer < <(compgen -f -X '!*.json' -- "$cur")
  # Word by word: what a branch is called must not be read as part of the script.
  local ref
  while IFS= read -r ref; do
    [[ $ref == "$cur"* ]] && COMPREPLY+=("$ref")
  done < <(git for-each-ref --format='%%(refname:short)' refs/heads refs/tags 2>/dev/null)
}

# What the descriptions on the line hold: givens, or names.
_barwright_ask() {
  local word paths=()
  for word in "${COMP_WORDS[@]:2}"; do
    [[ -e $word ]] && paths+=("$word")
  done
  "${COMP_WORDS[0]}" completion "$1" "${paths[@]}" 2>/dev/null
}

_barwright_givens() {
  compopt -o nospace 2>/dev/null
  _barwright_offer < <(compgen -S = -W "$(_barwright_ask givens)" -- "$cur")
}

_barwright_names() { _barwright_words "$(_barwright_ask names)"; }

_barwright() {
  local cur=${COMP_WORDS[COMP_CWORD]} flag=${COMP_WORDS[COMP_CWORD-1]}
  COMPREPLY=()
  if ((COMP_CWORD == 1)); then
    _barwright_words %s
    return
  fi
  # An = is a word of its own here, as in --out=DIR.
  if [[ $cur == = ]]; then
    cur=
  elif [[ $flag == = ]]; then
    flag=${COMP_WORDS[COMP_CWORD-2]}
  fi
  if [[ $flag != "${COMP_WORDS[COMP_CWORD-1]}" || ${COMP_WORDS[COMP_CWORD]} == = ]] && [[ $flag != -* ]]; then
    return
  fi

  local flags= valued=
  case ${COMP_WORDS[1]} in
`

const bashMiddle = `  esac

  case "${COMP_WORDS[1]} $flag" in
`

const bashArgs = `  esac
  if [[ " $valued " == *" $flag "* ]]; then
    return
  fi
  if [[ $cur == -* ]]; then
    _barwright_words "$flags"
    return
  fi

  # Arguments before this one: neither flags nor what flags take.
  local i word taken= count=1
  for ((i = 2; i < COMP_CWORD; i++)); do
    word=${COMP_WORDS[i]}
    if [[ $word == = ]]; then
      taken=yes
    elif [[ $taken ]]; then
      taken=
    elif [[ " $valued " == *" $word "* ]]; then
      taken=yes
    elif [[ $word != -?* ]]; then
      ((count++))
    fi
  done
  case "${COMP_WORDS[1]} $count" in
`

const bashTail = `  esac
}

complete -F _barwright barwright
`

func bash(commands []Command) string {
	var names []string
	var flags, values, args strings.Builder
	for _, c := range commands {
		names = append(names, c.Name)
		var all, valued []string
		for _, f := range c.Flags {
			all = append(all, f.names()...)
			if f.Takes == nil {
				continue
			}
			valued = append(valued, f.names()...)
			if action := bashAction(*f.Takes); action != "" {
				var cases []string
				for _, name := range f.names() {
					cases = append(cases, quote(c.Name+" "+name))
				}
				fmt.Fprintf(&values, "    %s) %s; return ;;\n", strings.Join(cases, "|"), action)
			}
		}
		fmt.Fprintf(&flags, "    %s)\n      flags=%s\n", c.Name, quote(strings.Join(all, " ")))
		if len(valued) > 0 {
			fmt.Fprintf(&flags, "      valued=%s\n", quote(strings.Join(valued, " ")))
		}
		flags.WriteString("      ;;\n")
		for i, v := range c.Args {
			if action := bashAction(v); action != "" {
				place := quote(fmt.Sprintf("%s %d", c.Name, i+1))
				if c.Repeats && i == len(c.Args)-1 {
					place = quote(c.Name+" ") + "*"
				}
				fmt.Fprintf(&args, "    %s) %s ;;\n", place, action)
			}
		}
	}
	head := fmt.Sprintf(bashHead, quote(strings.Join(append(names, "help"), " ")))
	return head + flags.String() + bashMiddle + values.String() + bashArgs + args.String() + bashTail
}

func bashAction(v Value) string {
	switch v.Kind {
	case Path:
		return "_barwright_paths"
	case Build:
		return "_barwright_builds"
	case File:
		return "_barwright_files"
	case Folder:
		return "_barwright_folders"
	case Given:
		return "_barwright_givens"
	case Name:
		return "_barwright_names"
	case Word:
		return "_barwright_words " + quote(strings.Join(v.Words, " "))
	}
	return ""
}
