package finding

// aboutSkins holds what can be wrong with what covers a knee wall's framing.
var aboutSkins = []Section{}
