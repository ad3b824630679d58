# Types each line into a zsh of its own terminal, presses tab, and prints what
# the line has become between < and >.
zmodload zsh/zpty
zpty z zsh -f -i
zpty -w z 'PS1=; unset zle_bracketed_paste; autoload -Uz compinit; compinit -D -u; unsetopt beep list_beep auto_menu'
zpty -w z 'source <(barwright completion zsh); bindkey -e'
zpty -w z 'became() { print -r -- "<$BUFFER>"; zle kill-buffer }; zle -N became; bindkey "^Xb" became'
# The line editor itself says when it listens; what is typed before, the
# terminal may take for its own.
zpty -w z 'zle-line-init() { print -r -- RE""ADY; zle -D zle-line-init }; zle -N zle-line-init'
zpty -r z out '*READY*'
for line in "$@"; do
  zpty -w -n z "$line"$'\t\C-xb'
  zpty -r z out '*<*>*'
  out=${out%>*}
  print -r -- "<${out##*<}>"
done
zpty -d z
