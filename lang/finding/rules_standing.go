package finding

// aboutStanding holds the rules of SPEC.md 11.2.
var aboutStanding []Section
