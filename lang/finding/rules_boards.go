package finding

// aboutBoards holds the rules of SPEC.md 11.8.
var aboutBoards []Section
