package finding

// aboutSpacing holds what can be wrong with things that are to stand evenly.
var aboutSpacing = []Section{}
