package finding

// aboutFronts holds what can be wrong with doors, drawers and false fronts.
var aboutFronts = []Section{}
