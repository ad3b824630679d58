package finding

// aboutEnds holds what can be wrong with end panels, and how fillers meet a wall that is not square.
var aboutEnds = []Section{}
