package finding

// aboutWiring holds the rules of SPEC.md 11.9.
var aboutWiring []Section
