package finding

// aboutScrews holds the rules of SPEC.md 11.6.
var aboutScrews []Section
