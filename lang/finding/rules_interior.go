package finding

// aboutInterior holds what can be wrong with dividers, shelves and the rows of pins that carry them.
var aboutInterior = []Section{}
