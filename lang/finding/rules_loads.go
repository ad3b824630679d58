package finding

// aboutLoads holds the rules of SPEC.md 11.7.
var aboutLoads []Section
