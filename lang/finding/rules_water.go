package finding

// aboutWater holds the rules of SPEC.md 11.10.
var aboutWater []Section
