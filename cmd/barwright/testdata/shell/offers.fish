# Prints what fish offers at the end of a line, one a line.
barwright completion fish | source
complete -C $argv[1]
