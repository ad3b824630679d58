package finding

// aboutKneeOutlets holds what can be wrong with electrical boxes in a knee wall.
var aboutKneeOutlets = []Section{}
