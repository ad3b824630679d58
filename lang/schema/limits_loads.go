package schema

var limitsOfLoads = []Attr{}
