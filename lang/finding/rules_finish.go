package finding

// aboutFinish holds the rules of SPEC.md 11.4.
var aboutFinish []Section
