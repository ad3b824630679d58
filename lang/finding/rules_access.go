package finding

// aboutAccess holds the rules of SPEC.md 11.3.
var aboutAccess []Section
