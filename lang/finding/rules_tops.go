package finding

// aboutTops holds what can be wrong with what is cut out of slabs, and how they are pieced.
var aboutTops = []Section{}
