package schema

var limitsOfWiring = []Attr{}
