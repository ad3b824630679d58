# Prints what bash is offered for the words of a line, one a line.
source <(barwright completion bash)
COMP_WORDS=(barwright "$@")
COMP_CWORD=$#
_barwright
printf '%s\n' "${COMPREPLY[@]}"
